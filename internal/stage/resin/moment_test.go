package resin

import (
	"context"
	"math"
	"testing"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/units"
)

func TestMomentSaysLaterThan(t *testing.T) {
	for _, c := range []struct {
		hour, since, end float64
		want             Moment
	}{
		{30, 10, 100, Moment{20, false}},
		{math.Inf(1), 10, 100, Moment{90, true}},
		{math.NaN(), 10, 100, Moment{90, true}},
		{5, 10, 100, Moment{0, false}}, // before the pour: at once
	} {
		if got := momentOf(c.hour, c.since, c.end); got != c.want {
			t.Errorf("%g h since %g of %g: %+v, want %+v", c.hour, c.since, c.end, got, c.want)
		}
	}
	if (Moment{H: 9, Later: true}).after(20) != true || (Moment{H: 9}).after(20) {
		t.Error("what comes later than 9 h may come after 20")
	}
}

// TestZones sorts invented columns by depth: three of 60 mm, one of 40, one of 12.
func TestZones(t *testing.T) {
	inf := math.Inf(1)
	col := func(deep, gel, hard float64) heat.Column {
		return heat.Column{DeepMM: deep, AreaM2: 1, GelH: gel, BondsH: gel + 20, TackyH: gel + 8, SetH: hard, SmoothH: inf}
	}
	zs := zonesOf([]heat.Column{col(60, 8, 20), col(12, 25, inf), col(60, 9, 21), col(40, 15, 30), col(60, 10, 24)}, 5, 100)
	if len(zs) != 3 || zs[0].Name != "deep" || zs[1].Name != "middle" || zs[2].Name != "shallow" {
		t.Fatalf("zones %+v", zs)
	}
	deep, shallow := zs[0], zs[2]
	if deep.From != 60 || deep.To != 60 || math.Abs(float64(deep.Share)-0.6) > 1e-9 || deep.Gels.H != 5 || deep.Bonds.H != 23 || deep.HalfHard.H != 16 || deep.Hard.H != 19 {
		t.Errorf("deep %+v", deep)
	}
	if !shallow.Hard.Later || shallow.Hard.H != 95 || !shallow.Sandable.Later || shallow.Gels.H != 20 {
		t.Errorf("shallow %+v", shallow)
	}
	if one := zonesOf([]heat.Column{col(30, 8, 20), col(31, 8, 20)}, 0, 100); len(one) != 1 || one[0].Name != "whole" {
		t.Errorf("one depth: %+v", one)
	}
	if none := zonesOf(nil, 0, 100); len(none) != 0 {
		t.Errorf("no columns: %+v", none)
	}
}

// TestEveryLiftTellsItsHours: no lift leaves a time out, covered or not, and a slow cure
// is followed on, or said to come later than what was followed.
func TestEveryLiftTellsItsHours(t *testing.T) {
	in := shore(t, "deep pour 50 mm", 12)
	in.Own = nil
	r, found := Run(context.Background(), in, nil)
	if !r.Cure.Computed {
		t.Fatal(codesOf(found))
	}
	for _, l := range r.Lifts {
		for name, m := range map[string]Moment{"gel": l.RecoatFrom, "recoat": l.RecoatUntil, "tack": l.TackFree, "hard": l.Hard, "sand": l.Sandable} {
			if !(m.H > 0) || !known(m.H) {
				t.Errorf("lift %d, %s: %+v", l.Number, name, m)
			}
		}
		if len(l.Zones) == 0 {
			t.Errorf("lift %d has no zones", l.Number)
		}
		for _, z := range l.Zones {
			if z.Gels.H > z.Tacky.H || z.HalfHard.H > z.Hard.H || z.Hard.H > z.Sandable.H || z.From > z.To || z.To > l.To+1 {
				t.Errorf("lift %d: %+v", l.Number, z)
			}
		}
	}
	last := r.Cure.Last
	if last == nil || last.When.H < r.Lifts[len(r.Lifts)-1].At {
		t.Errorf("last to harden: %+v", last)
	}
}

func TestTooLargeIsCoarsened(t *testing.T) {
	in := lagoon(t, "deep pour 50 mm")
	in.Length, in.Width = 6000, 2000
	o, _ := newOven(in)
	h := o.(*hearth)
	if h.fineMM < 20 || h.roughMM < 40 {
		t.Errorf("cells of %g and %g mm in 6 x 2 m", h.fineMM, h.roughMM)
	}
	c := &computer{in: in}
	c.in.Fill = c.checkedFill(in.Fill)
	r := Result{scheme: &Scheme{}, Cure: Cure{Limit: 60, Error: Numerics{Cells: 5, Grid: units.Length(h.fineMM), Asked: fineMM, Wide: units.Length(2 * h.fineMM), Off: 1.5}}}
	c.heatFindings(&r)
	if codes := codesOf(c.found); codes != "resin/cells-widened" {
		t.Errorf("found %q", codes)
	}
}
