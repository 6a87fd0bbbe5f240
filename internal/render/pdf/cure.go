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
	b.say("", 11, ink, "The warmest place is in lift %d, %.0f h after the first pour. %s", k.PeakIn, k.PeakAt, contacts(k))
	b.Ln(2)
	b.rooms()
	var others []string
	for _, a := range r.Alternatives {
		if !a.Chosen {
			other := fmt.Sprintf("%s; %.1f h of hands", a.Sentence, a.Hands)
			if a.Why != "" {
				other += " (not taken: " + a.Why + ")"
			}
			others = append(others, other)
		}
	}
	b.Ln(2)
	if len(others) > 0 {
		b.say("", 10, ink, "Other ways: %s.", strings.Join(others, ". "))
	}
	b.say("", 9, soft, "%s%s. %d cells of %.0f mm; a grid twice as wide differs by %.1f K. A touch test decides.",
		hangsOn(k), units.Count(k.Members, "run", "runs"), k.Error.Cells, k.Error.Grid, k.Error.Off)
}

// contacts says how warm dam and foam get, and what they bear.
func contacts(k resin.Cure) string {
	text := fmt.Sprintf("The dam's face reaches %.0f C", k.Dam)
	if k.DamLimit > 0 {
		text += fmt.Sprintf(", in nine of ten cases below %.0f C; %s bears %.0f C", k.DamHigh, k.DamWeakest, k.DamLimit)
	}
	text += "."
	if k.Foam > 0 {
		text += fmt.Sprintf(" The foam reaches %.0f C of %.0f C.", k.Foam, k.FoamLimit)
	}
	return text
}

// hangsOn names the two things that the peak hangs on most.
func hangsOn(k resin.Cure) string {
	var parts []string
	for _, i := range k.Influences[:min(2, len(k.Influences))] {
		parts = append(parts, fmt.Sprintf("%s (%.2g %s more: %+.1f K)", i.Name, i.SD, i.Unit, i.Peak))
	}
	if len(parts) == 0 {
		return ""
	}
	return "The peak hangs most on " + strings.Join(parts, " and ") + ". "
}

// zones prints when each part of each lift's surface can be gone on with.
func (b *book) zones() {
	some := false
	for _, l := range b.plan.Resin.Lifts {
		some = some || len(l.Zones) > 0
	}
	if !some {
		return
	}
	w := b.w - 2*margin
	own, _ := b.systems()
	t := table{b, []column{{"lift", 13, false, "B", 11}, {"part, depth of resin", w - 13 - 4*27, false, "", 11}, {"gelled", 27, true, "", 11}, {"bonds until", 27, true, "", 11}, {"hard", 27, true, "", 11}, {"sandable", 27, true, "", 11}}, 11}
	b.keep(30)
	b.say("B", 12, ink, "Hours after each lift's pour, if nothing covers it")
	t.heads()
	for _, l := range b.plan.Resin.Lifts {
		for _, z := range l.Zones {
			bonds := hoursOf(z.Bonds)
			if z.Scuff {
				bonds = "sand it"
			}
			t.row(fmt.Sprint(l.Number), fmt.Sprintf("%s, %s to %s", z.Name, drawing.Measure(z.From, own), b.length(z.To)), hoursOf(z.Gels), bonds, hoursOf(z.Hard), hoursOf(z.Sandable))
		}
	}
}

// hoursOf writes a moment, or that it comes after the hours computed.
func hoursOf(m resin.Moment) string {
	if m.Later {
		return fmt.Sprintf("past %.0f h", m.H)
	}
	return clock(m.H)
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
	from := l.Wait
	if len(l.Zones) > 0 && !l.RecoatFrom.Later {
		from = l.RecoatFrom.H
	}
	switch {
	case l.Gels == 0:
		out = append(out, moment{l.Wait, "Typical wait is over", "The data sheet and a touch test decide."})
	case last:
		out = append(out, moment{l.Wait, "Hard through", "Test where it is shallow, before any load."})
	case l.Scuffed:
		out = append(out, moment{from, "Next lift from here", "It no longer bonds by itself: sand it dull all over, wipe it clean, pour."})
	default:
		out = append(out, moment{from, "Next lift from here", "A gloved finger marks it and draws no thread."})
		if until := bondsUntil(l); until > 0 {
			out = append(out, moment{until, "Next lift until here", missed})
		}
	}
	if l.Peak > 0 {
		at := 0
		for at < len(out) && out[at].after <= l.PeakAt {
			at++
		}
		warm := moment{l.PeakAt, fmt.Sprintf("Warmest, %.0f C", l.Peak), "Much hotter: fan on, clear away what burns."}
		out = append(out[:at:at], append([]moment{warm}, out[at:]...)...)
	}
	return out
}

// bondsUntil returns until when the next lift bonds by itself; 0 where no end is known.
func bondsUntil(l resin.Lift) units.Duration {
	if len(l.Zones) > 0 {
		if l.RecoatUntil.Later {
			return 0
		}
		return l.RecoatUntil.H
	}
	return l.BondsUntil
}

const missed = "Missed: let it harden, sand it dull, wipe, pour."

// afterPour prints the hours after a lift as a list to tick, as times of day where the
// calendar has one, with room for the real ones.
func (b *book) afterPour(l resin.Lift) {
	step, dated := drawing.PourStep(b.plan, l.Number)
	b.keep(30)
	b.say("B", 13, ink, "After the pour")
	b.Ln(1)
	w := b.w - 2*margin
	t := table{b, []column{{"", 11, false, "", 16}, {"after the pour", 25, false, "B", 14}, {"as planned", 40, false, "", 12.5}, {"in fact", 20, false, "", 11}, {"what", w - 96, false, "B", 12.5}}, 12.5}
	t.heads()
	for _, m := range b.moments(l) {
		planned := ""
		if dated {
			planned = drawing.Later(step.End, drawing.Forecast(m.after)) // the last bucket is in
		}
		t.row(box, clock(m.after), planned, "_______", m.what, m.how)
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
	if l.Gels > 0 && !l.Scuffed && bondsUntil(l) == 0 {
		text += " By then this one still bonds. " + missed
	}
	b.say("", 11, ink, "%s", text)
	late := drawing.Lateness(b.plan, l.Number+1) - drawing.Lateness(b.plan, l.Number)
	if late > 1 || late < -1 {
		b.say("", 10, ink, "The cure was computed for a pour %.0f h %s than that: test by touch before pouring.", max(late, -late), map[bool]string{true: "earlier", false: "later"}[late > 0])
	}
}
