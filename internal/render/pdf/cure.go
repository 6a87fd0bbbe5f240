package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// cure prints what the resin is computed to do, and the other ways of pouring.
func (b *book) cure() {
	r := b.plan.Resin
	k := r.Cure
	if !k.Computed {
		b.say("", 11, ink, "Waits are typical, the cure is not computed: the data sheet and a touch test decide.")
		return
	}
	b.say("", 11, ink, "The warmest place is in lift %d, %.0f h after the first pour. The dam's face reaches %.0f C.", k.PeakIn, k.PeakAt, k.Dam)
	b.Ln(2)
	b.rooms()
	var others []string
	for _, a := range r.Alternatives {
		if !a.Chosen {
			others = append(others, fmt.Sprintf("%s; %.1f h of hands", a.Sentence, a.Hands))
		}
	}
	b.Ln(2)
	if len(others) > 0 {
		b.say("", 10, ink, "Other ways: %s.", strings.Join(others, ". "))
	}
	b.say("", 9, soft, "%s with other rooms, rates, films and depths. %d cells of %.0f mm; a grid twice as wide differs by %.1f K. A touch test decides.", units.Count(k.Members, "run", "runs"), k.Error.Cells, k.Error.Grid, k.Error.Off)
}

// rooms prints what the same lifts do in other rooms.
func (b *book) rooms() {
	k := b.plan.Resin.Cure
	if len(k.Rooms) == 0 {
		return
	}
	t := table{b, []column{{"the same lifts in a room of", 50, false, "B", 12}, {"peak", 30, true, "", 12}, {"dam face", 30, true, "", 12}, {"hard", b.w - 2*margin - 110, true, "", 12}}, 12}
	t.heads()
	for _, x := range k.Rooms {
		peak := fmt.Sprintf("%.0f C", x.Peak)
		if x.Peak > k.Limit {
			peak = "too hot, " + peak
		}
		t.row(fmt.Sprintf("%.0f C", x.Room), peak, fmt.Sprintf("%.0f C", x.Dam), whenHard(x.Hard))
	}
}

func whenHard(d units.Duration) string {
	if d == 0 {
		return "not within the time computed"
	}
	return fmt.Sprintf("after %.0f h", d)
}

// A moment is something to do or to look for at a time after a pour.
type moment struct {
	after units.Duration
	what  string
	how   string
}

// moments lists what follows a lift, in the order of time.
func (b *book) moments(l resin.Lift) []moment {
	var out []moment
	for i, at := range l.Torch {
		m := moment{after: at, what: "Flame over it"}
		if i == 0 {
			m.how = "A hand's width above, moving all the time."
		}
		if i > 0 && i+1 == len(l.Torch) {
			m.how = "The last time: none later."
		}
		out = append(out, m)
	}
	last := l.Number == len(b.plan.Resin.Lifts)
	switch {
	case l.Gels == 0:
		out = append(out, moment{l.Wait, "Typical wait is over", "The data sheet and a touch test decide."})
	case last:
		out = append(out, moment{l.Wait, "Hard through", "Before that nothing is taken off, sanded or loaded. Test where it is shallow."})
	case l.Scuffed:
		out = append(out, moment{l.Wait, "Next lift from here", "It no longer bonds by itself: sand it dull all over, wipe it clean and dry, then pour."})
	default:
		out = append(out, moment{l.Wait, "Next lift from here", "A gloved finger leaves a mark and draws no thread."})
		if l.BondsUntil > 0 {
			out = append(out, moment{l.BondsUntil, "Next lift until here", missed})
		}
	}
	if l.Peak > 0 {
		at := 0
		for at < len(out) && out[at].after <= l.PeakAt {
			at++
		}
		warm := moment{l.PeakAt, fmt.Sprintf("Warmest, %.0f C", l.Peak), "Much hotter: move air over it, keep away what burns."}
		out = append(out[:at:at], append([]moment{warm}, out[at:]...)...)
	}
	return out
}

const missed = "Missed: let it harden, sand it dull all over, wipe it clean and dry, then pour."

// afterPour prints the hours after a lift as a list to tick, as times of day where the
// calendar has one, with room for the real ones.
func (b *book) afterPour(l resin.Lift) {
	start, dated := drawing.PourStep(b.plan, l.Number)
	b.keep(30)
	b.say("B", 13, ink, "After the pour")
	b.Ln(1)
	w := b.w - 2*margin
	t := table{b, []column{{"", 11, false, "", 16}, {"after the pour", 27, false, "B", 14}, {"as planned", 42, false, "", 12.5}, {"in fact", 24, false, "", 11}, {"what", w - 104, false, "B", 12.5}}, 12.5}
	t.heads()
	for _, m := range b.moments(l) {
		planned := ""
		if dated {
			planned = drawing.Later(start.Start, drawing.Forecast(m.after))
		}
		t.row(box, clock(m.after), planned, "________", m.what, m.how)
	}
	b.Ln(1.5)
	b.nextLift(l)
}

// nextLift says when the next lift is planned, and when that is not what was computed.
func (b *book) nextLift(l resin.Lift) {
	if l.Number == len(b.plan.Resin.Lifts) {
		return
	}
	next, ok := drawing.PourStep(b.plan, l.Number+1)
	if !ok {
		return
	}
	text := fmt.Sprintf("Lift %d is planned for %s.", l.Number+1, drawing.Later(next.Start, 0))
	if l.Gels > 0 && !l.Scuffed && l.BondsUntil == 0 {
		text += " By then this one still bonds. " + missed
	}
	b.say("", 11, ink, "%s", text)
	late := drawing.Lateness(b.plan, l.Number+1) - drawing.Lateness(b.plan, l.Number)
	if late > 1 || late < -1 {
		b.say("", 10, ink, "The cure was computed for a pour %.0f h %s than that: test by touch before pouring.", max(late, -late), map[bool]string{true: "earlier", false: "later"}[late > 0])
	}
}
