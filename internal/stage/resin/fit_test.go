package resin

import (
	"context"
	"errors"
	"math"
	"testing"

	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
)

// TestFitFindsWhatMadeTheData makes a sheet with a known resin and fits it.
func TestFitFindsWhatMadeTheData(t *testing.T) {
	m := kinetics.Typical(7.235e-5, 300e3, 55)
	cup, err := cupOf(context.Background(), m, 0.1, 25)
	if err != nil {
		t.Fatal(err)
	}
	s := Sheet{PotLife: units.Duration(cup.pot), Gel: units.Duration(cup.gel), CupPeak: units.Temperature(cup.peak),
		FilmSet: units.Duration(m.FilmTime(0.7, 22) / 3600), Heat: 300, Tg: 55}
	f, err := Fit(context.Background(), s)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%+v", f)
	if math.Abs(f.K25/7.235e-5-1) > 0.03 || math.Abs(f.Heat/300-1) > 0.03 || math.Abs(f.R/0.2-1) > 0.1 {
		t.Errorf("fitted %.3g /s, %.0f kJ/kg, r %.2f", f.K25, f.Heat, f.R)
	}
	for _, r := range f.Rows {
		if math.Abs(r.SD) > 0.1 {
			t.Errorf("%s is off by %.2f sd", r.Name, r.SD)
		}
	}
	if !(f.Slab.Low <= f.Slab.Peak && f.Slab.Peak <= f.Slab.High) || f.Slab.High-f.Slab.Low < 1 {
		t.Errorf("band %+v", f.Slab)
	}
}

// TestTestPourNarrowsTheBand: pot life alone leaves a wide band, a thermocouple a narrow one.
func TestTestPourNarrowsTheBand(t *testing.T) {
	m := kinetics.Typical(4e-5, 270e3, 52)
	cup, err := cupOf(context.Background(), m, 0.1, 25)
	if err != nil {
		t.Fatal(err)
	}
	pot := Sheet{PotLife: units.Duration(cup.pot), Rated: 0}
	pot.Rated = 40
	alone, err := Fit(context.Background(), pot)
	if err != nil {
		t.Fatal(err)
	}
	hours := []float64{0.1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 20, 24}
	temps, err := slabMiddle(context.Background(), m, 40, 22, 22, hours)
	if err != nil {
		t.Fatal(err)
	}
	test := pot
	test.TestDepth, test.TestAir = 40, 22
	for i, h := range hours {
		test.Test = append(test.Test, Reading{units.Duration(h), units.Temperature(temps[i])})
	}
	with, err := Fit(context.Background(), test)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("alone %+v, with a test pour %+v", alone.Slab, with.Slab)
	if with.Slab.High-with.Slab.Low >= (alone.Slab.High-alone.Slab.Low)/2 {
		t.Errorf("a test pour narrows the band from %+v only to %+v", alone.Slab, with.Slab)
	}
	truth, _ := slabPeak(context.Background(), m, 40, 22, board)
	if math.Abs(float64(with.Slab.Peak)-truth) > 3 {
		t.Errorf("peak %.1f, the resin's own %.1f", with.Slab.Peak, truth)
	}
}

func TestFitSaysWhatToMeasure(t *testing.T) {
	if _, err := Fit(context.Background(), Sheet{Density: 1100}); !errors.Is(err, ErrTooLittle) {
		t.Errorf("an empty sheet gives %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Fit(ctx, Sheet{PotLife: 2}); !errors.Is(err, context.Canceled) {
		t.Errorf("a stopped fit gives %v", err)
	}
}
