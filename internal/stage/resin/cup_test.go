package resin

import (
	"context"
	"math"
	"testing"

	"pourwright/internal/stage/resin/kinetics"
)

// TestPresetsInTheCup compares the cup, the film and the slab with the values that the
// presets were fitted with.
func TestPresetsInTheCup(t *testing.T) {
	for _, c := range []struct {
		name                  string
		k25, h, tg1           float64
		pot, gel, peak        float64
		f55, f70, f80         float64
		deep, onBoard, onConc float64
	}{
		{"coat", 2.529e-4, 280, 55, .42, .58, 141, 3.4, 5.3, 7.8, 6, 36, 30},
		{"cast", 7.235e-5, 300, 55, 1.67, 3.70, 58, 12, 18.5, 27, 25, 79, 49},
		{"deep50", 3.255e-5, 280, 52, 4.5, 16.7, 31, 27, 41, 60, 50, 83, 55},
		{"deep64", 4.687e-5, 280, 52, 2.9, 10.1, 35, 18.5, 28.5, 42, 64, 128, 116},
		{"deep100", 1.493e-5, 260, 50, 11, 42, 27, 58, 89, 131, 100, 90, 69},
	} {
		m := kinetics.Typical(c.k25, c.h*1000, c.tg1)
		cup, err := cupOf(context.Background(), m, 0.1, 25)
		if err != nil {
			t.Fatal(err)
		}
		b, err := slabPeak(context.Background(), m, c.deep, 22, board)
		if err != nil {
			t.Fatal(err)
		}
		k, _ := slabPeak(context.Background(), m, c.deep, 22, concrete)
		near := func(what string, ours, theirs, share, plus float64) {
			t.Helper()
			if math.Abs(ours-theirs) > share*theirs+plus {
				t.Errorf("%s, %s: %.3g, table %.3g", c.name, what, ours, theirs)
			}
		}
		t.Logf("%s: pot %.2f of %.2f h, gel %.2f of %.2f h, cup %.0f of %.0f C, slab %.0f of %.0f and %.0f of %.0f C", c.name, cup.pot, c.pot, cup.gel, c.gel, cup.peak, c.peak, b, c.onBoard, k, c.onConc)
		near("pot life", cup.pot, c.pot, 0.06, 0)
		near("gel", cup.gel, c.gel, 0.08, 0)
		near("cup's peak over the air", cup.peak-25, c.peak-25, 0.08, 0.5)
		near("film to .55", m.FilmTime(0.55, 22)/3600, c.f55, 0.01, 0.5)
		near("film to .70", m.FilmTime(0.70, 22)/3600, c.f70, 0.01, 0.5)
		near("film to .80", m.FilmTime(0.80, 22)/3600, c.f80, 0.01, 0.5)
		near("slab on board", b, c.onBoard, 0.05, 0.5)
		near("slab on concrete", k, c.onConc, 0.05, 0.5)
	}
}
