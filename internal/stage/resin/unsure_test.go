package resin

import (
	"context"
	"math"
	"testing"

	"pourwright/internal/material"
)

func TestSpreadOfACard(t *testing.T) {
	for _, c := range []struct{ low, high, want float64 }{
		{0, 0, 0.15}, {1, 1, 0.15}, {1, math.Exp(0.8), 0.2}, {1, 1.01, 0.03}, {1, 100, 0.4},
	} {
		if got := spread(material.Value[float64]{Low: c.low, High: c.high}, 0.15); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g to %g: %g, want %g", c.low, c.high, got, c.want)
		}
	}
}

func TestStrongInputsAndOutward(t *testing.T) {
	of := []Influence{{Peak: 1}, {Peak: -4}, {Peak: 0.1}, {Peak: 3}}
	if got := strong(of); len(got) != 3 || got[0] != 1 || got[1] != 3 || got[2] != 0 {
		t.Errorf("strong: %v", got)
	}
	z := outward(of, 2)
	norm, along := 0.0, 0.0
	for i := range z {
		norm, along = norm+z[i]*z[i], along+z[i]*of[i].Peak
	}
	if math.Abs(math.Sqrt(norm)-2) > 1e-12 || along <= 0 || z[1] >= 0 {
		t.Errorf("outward %v", z)
	}
	if z := outward([]Influence{{}, {}}, 2); z[0] != 0 {
		t.Errorf("nothing matters: %v", z)
	}
}

// TestBandOfTheShore: the influences have the signs that physics gives them, the slab
// bounds the basin, and the band is as wide as its influences make it.
func TestBandOfTheShore(t *testing.T) {
	in := shore(t, "deep pour 50 mm", 20)
	o, why := newOven(in)
	if o == nil {
		t.Fatal(why)
	}
	ctx := context.Background()
	pours := []Pour{{To: 32}, {From: 32, To: 64, At: 30}}
	plan, err := o.forecast(ctx, pours)
	if err != nil {
		t.Fatal(err)
	}
	b, err := o.band(ctx, pours, plan, nil)
	if err != nil {
		t.Fatal(err)
	}
	sum, sign := 0.0, map[string]float64{"temperature of room and resin": 1, "rate of reaction": 1, "heat of reaction": 1, "heat given to the air": -1, "depth": 1}
	for _, f := range b.Influences {
		sum += f.Peak * f.Peak
		if s := sign[f.Name]; s*f.Peak < 0 {
			t.Errorf("%s moves the peak by %.2f K", f.Name, f.Peak)
		}
	}
	if high := float64(b.High.Peak - plan.Peak); high < 0.8*nineOfTen*math.Sqrt(sum) || high > 3*nineOfTen*math.Sqrt(sum) {
		t.Errorf("one in ten is %.1f K hotter; influences of %.1f K", high, math.Sqrt(sum))
	}
	if b.Runs < 10 || b.Runs > 30 || b.Low.Peak > plan.Peak {
		t.Errorf("%d runs, low %.1f of %.1f", b.Runs, b.Low.Peak, plan.Peak)
	}
	low, high, bracket, err := o.extremes(ctx, pours, plan)
	if err != nil || low.Peak > plan.Peak || high.Peak < plan.Peak || bracket < plan.Peak {
		t.Errorf("%v: %.1f to %.1f about %.1f, slab %.1f", err, low.Peak, high.Peak, plan.Peak, bracket)
	}
}
