package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// cure prints what the resin is computed to do, below the lifts.
func (b *book) cure() {
	r := b.plan.Resin
	k := r.Cure
	b.Ln(2)
	b.say("B", 11, ink, "Peak %.0f C, %.0f h after the first pour, in lift %d; %.0f to %.0f C by what is not known exactly. Dam face %.0f C.", k.Peak, k.PeakAt, k.PeakIn, k.Low, k.High, k.Dam)
	for _, x := range k.Rooms {
		b.say("", 9, soft, "In a room of %.0f C: peak %.0f C, dam face %.0f C, hard %s.", x.Room, x.Peak, x.Dam, whenHard(x.Hard))
	}
	for _, a := range r.Alternatives {
		if !a.Chosen {
			b.say("", 9, soft, "Other way: %s; %.1f h of hands.", a.Sentence, a.Hands)
		}
	}
	b.say("", 8, soft, "%d cells of %.0f mm; a grid twice as wide differs by %.1f K.", k.Error.Cells, k.Error.Grid, k.Error.Off)
}

func whenHard(d units.Duration) string {
	if d == 0 {
		return "not within the time computed"
	}
	return fmt.Sprintf("after %.0f h", d)
}

// afterPour prints what to do and to look for once a lift is in.
func (b *book) afterPour(l resin.Lift) {
	if len(l.Torch) > 0 {
		var at []string
		for _, t := range l.Torch {
			at = append(at, clock(t))
		}
		b.say("", 9.5, ink, "Flame over the surface, moving all the time, at %s after the pour; none later.", strings.Join(at, ", "))
	}
	if l.Tint > 0 {
		b.say("", 9.5, ink, "Tint %.1f g in all, the same share in every bucket.", 1000*float64(l.Tint))
	}
	if d := b.plan.Resin.Degas; d != nil {
		b.say("", 9.5, ink, "Vacuum: at most %.1f l at once in the pot of %.1f l.", d.Pull, d.Pot)
	}
	switch {
	case l.Gels == 0:
		b.say("", 9.5, soft, "Typical wait: %.0f h. The data sheet and a touch test decide.", l.Wait)
	case l.Scuffed:
		b.say("", 9.5, ink, "Peaks at %.0f C after %s. Next lift after %s: sand this one dull first, it no longer bonds by itself.", l.Peak, clock(l.PeakAt), clock(l.Wait))
	case l.BondsUntil > 0:
		b.say("", 9.5, ink, "Peaks at %.0f C after %s. Next lift %s to %s after this pour: gelled, and it still bonds.", l.Peak, clock(l.PeakAt), clock(l.Wait), clock(l.BondsUntil))
	case l.Number < len(b.plan.Resin.Lifts):
		b.say("", 9.5, ink, "Peaks at %.0f C after %s. Next lift from %s after this pour on: gelled, and it still bonds then.", l.Peak, clock(l.PeakAt), clock(l.Wait))
	default:
		b.say("", 9.5, ink, "Peaks at %.0f C after %s. Hard through after %s.", l.Peak, clock(l.PeakAt), clock(l.Wait))
	}
}

// clock writes a time to five minutes below half a day, to the hour above.
func clock(d units.Duration) string {
	if d >= 12 {
		return fmt.Sprintf("%.0f h", d)
	}
	minutes := int(float64(d)*12+0.5) * 5
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d", minutes/60, minutes%60)
}
