package pdf

import (
	"fmt"
	"strings"
	"testing"

	"pourwright/internal/drawing"
	"pourwright/internal/plan"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// pourPages returns the pages of a pack that begin with a title, with what goes on of
// them.
func pourPages(all []string, title string) (out []string) {
	for _, page := range all {
		if strings.HasPrefix(strings.TrimSpace(page), title) {
			out = append(out, page)
		}
	}
	return out
}

func lacks(t *testing.T, page string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(strings.Join(strings.Fields(page), " "), w) {
			t.Errorf("the page does not say %q:\n%s", w, page)
		}
	}
}

func TestPourPages(t *testing.T) {
	p := example(t, "estuary-bench")
	for _, paper := range []string{"a4", "letter"} {
		all := pages(t, printed(t, p, paper))
		ready := strings.Join(pourPages(all, "Before pouring"), "")
		lacks(t, ready, "Level", "ml of water lost", "Marked stick, full size", "deepest floor, 0", fmt.Sprintf("%.2f l", p.Relief.Volume))
		for _, l := range p.Resin.Lifts {
			title := fmt.Sprintf("Pour lift %d of %d", l.Number, len(p.Resin.Lifts))
			own := pourPages(all, title)
			if len(own) != 1 {
				t.Fatalf("%s: %d pages of %q", paper, len(own), title)
			}
			lacks(t, own[0], "fill to", "Stir", "Flame over it", "none later", "sensitise", fmt.Sprintf("%.2f l", l.Pour))
			if step, ok := drawing.PourStep(p, l.Number); ok {
				lacks(t, own[0], drawing.Later(step.Start, 0), drawing.Later(step.End, drawing.Forecast(l.Torch[0])))
			}
			for _, x := range l.Batches {
				lacks(t, own[0], fmt.Sprintf("%d %.2f %.3f %.3f", x.Number, x.Volume, x.ScaleA, x.ScaleAB))
			}
		}
		lacks(t, pourPages(all, "Pour lift 1")[0], "Next lift from here", "Missed: let it harden", "Lift 2 is planned for")
		lacks(t, pourPages(all, "Pour lift 2")[0], "the rim", "Hard through")
	}
}

// TestOddPours prints pours that the example has none of.
func TestOddPours(t *testing.T) {
	lift := func() *plan.Plan {
		p := &plan.Plan{}
		p.Relief.Depth = 40
		p.Resin.Cure = resin.Cure{Computed: true, Peak: 95, Low: 70, High: 120, Limit: 60, Rooms: []resin.RoomCase{{Room: 28, Peak: 110}}}
		b := []resin.Bucket{{Number: 1, Volume: 2, ScaleA: 1.5, ScaleAB: 2.2, Tint: 0.0034, Pulls: 2}}
		p.Resin.Lifts = []resin.Lift{
			{Number: 1, To: 20, Depth: 20, Gels: 9, Wait: 9, BondsUntil: 20, Peak: 95, PeakAt: 5, Batches: b, Tint: 0.0034, Torch: []units.Duration{0.2}},
			{Number: 2, From: 20, To: 40, Depth: 20, At: 30, Batches: b, Wait: 24}}
		return p
	}
	windowed := lift()
	all := pages(t, printed(t, windowed, "a4"))
	lacks(t, pourPages(all, "Pour card")[0], "2 lifts, 2 buckets.", "too hot, 110 C", "not within the time computed")
	lacks(t, pourPages(all, "Pour lift 1")[0], "Next lift until here", "20 h", "Tint 3.4 g in all", "Warmest, 95 C", "1 2.00 3.4 1.500 2.200")
	lacks(t, pourPages(all, "Pour lift 2")[0], "30 h after lift 1", "Typical wait is over")

	scuffed := lift()
	scuffed.Resin.Lifts[0].Scuffed = true
	scuffed.Resin.Degas = &resin.Degassing{Pot: 10, Pull: 2}
	scuffed.Resin.Shim = &resin.Shim{Reading: 2, Under: 2.4, Off: 2.4}
	all = pages(t, printed(t, scuffed, "letter"))
	lacks(t, pourPages(all, "Pour lift 1")[0], "sand it dull all over", "at most 2.0 l at once", "pulls")
	lacks(t, pourPages(all, "Before pouring")[0], "a shim of 2.4 mm", "2.0 mm per metre")
	if strings.Contains(strings.Join(all, ""), "Next lift until here") {
		t.Error("a lift that is to be sanded still has a window")
	}

	typical := lift()
	typical.Resin.Cure = resin.Cure{}
	typical.Resin.Lifts = typical.Resin.Lifts[1:]
	lacks(t, pourPages(pages(t, printed(t, typical, "a4")), "Pour card")[0], "1 lift, 1 bucket.", "the cure is not computed")
}

// TestMoments holds the list of what follows a lift in the order of time.
func TestMoments(t *testing.T) {
	b := &book{plan: &plan.Plan{}}
	l := resin.Lift{Number: 1, Gels: 12, Wait: 12, BondsUntil: 30, Peak: 40, PeakAt: 6, Torch: []units.Duration{0.2, 0.5, 4}}
	b.plan.Resin.Lifts = []resin.Lift{l, {Number: 2}}
	ms := b.moments(l)
	if len(ms) != 6 {
		t.Fatalf("%d moments, want 6", len(ms))
	}
	for i := 1; i < len(ms); i++ {
		if ms[i].after < ms[i-1].after {
			t.Errorf("%q at %g h comes after %q at %g h", ms[i].what, ms[i].after, ms[i-1].what, ms[i-1].after)
		}
	}
}
