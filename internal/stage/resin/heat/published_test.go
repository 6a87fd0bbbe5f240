package heat

import (
	"context"
	"math"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/stage/resin/kinetics"
)

// column is a slab of resin with films above and below and nothing beside it.
func column(deepMM, up, down float64, m kinetics.Model, cp float64) Case {
	return Case{NX: 1, NY: 1, StepMM: 10, DeepMM: []float64{deepMM}, Body: Solid{1, 1, 1},
		Pour: Solid{m.RhoKGM3, cp, m.KWMK}, HJKG: m.HJKG, Rate: m.Rate, Set: func(a, _ float64) bool { return a >= kinetics.Gel },
		Pours: []Pour{{TempC: 22}}, EndH: 24, Air: Air{TempC: func(float64) float64 { return 22 }, Film: func(face int, _, _ float64) float64 { return [3]float64{up, down, 0}[face] }}}
}

// middle returns temperature and least cure of the middle layer at an hour, read from the cut.
func middle(t *testing.T, r Result, hour float64) (tempC, cure float64) {
	t.Helper()
	for _, f := range r.Frames {
		if f.Hour == hour {
			n := 0
			for _, v := range f.CutC {
				if v == v {
					n++
				}
			}
			lo, hi := (n-1)/2, n/2
			return float64(f.CutC[lo]+f.CutC[hi]) / 2, float64(f.CutCure[lo]+f.CutCure[hi]) / 2
		}
	}
	t.Fatalf("no frame at %g h", hour)
	return
}

func TestPublishedRoomTemperatureSlabs(t *testing.T) {
	m := kinetics.Typical(3.255e-5, 280e3, 52)
	m.NoSlowing = true
	r, err := Solve(context.Background(), column(50, 10, 2, m, 1900), Options{DXMM: 10, DZMM: 0.5, TolK: 1e-4, Frames: []float64{4, 6, 12}})
	if err != nil {
		t.Fatal(err)
	}
	t4, a4 := middle(t, r, 4)
	t6, a6 := middle(t, r, 6)
	t12, a12 := middle(t, r, 12)
	m2 := kinetics.Typical(7.235e-5, 280e3, 55)
	m2.NoSlowing = true
	r2, err := Solve(context.Background(), column(25, 10, 2, m2, 1900), Options{DXMM: 10, DZMM: 0.5, TolK: 1e-4})
	if err != nil {
		t.Fatal(err)
	}
	check := func(name string, ours, theirs float64, unit string, tol float64) published.Check {
		return published.Check{Room: "resin/heat", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "resin-presets", Place: "independent finite volumes, grid-converged"}
	}
	published.Run(t,
		check("50 mm slab, peak", r.PeakC, 119.79, "C", 0.5), check("50 mm slab, hour of the peak", r.PeakH, 7.15, "h", 0.05),
		check("50 mm slab, top gels", r.Columns[0].GelH, 6.92, "h", 0.05),
		check("50 mm slab, middle at 4 h", t4, 37.05, "C", 0.3), check("its cure", a4, 0.1466, "1", 0.002),
		check("50 mm slab, middle at 6 h", t6, 67.2, "C", 0.5), check("its cure at 6 h", a6, 0.448, "1", 0.005),
		check("50 mm slab, middle at 12 h", t12, 51.1, "C", 0.3), check("its cure at 12 h", a12, 0.9814, "1", 0.001),
		check("25 mm slab, peak", r2.PeakC, 114.29, "C", 0.5), check("25 mm slab, hour of the peak", r2.PeakH, 3.322, "h", 0.03),
	)
	if d := math.Abs(r.EnergyDefect()); d > 1e-3 {
		t.Errorf("energy defect %.2g", d)
	}
}

// TestPublishedFilms holds convection and radiation together against values worked apart
// for air of 22 C and a body of .1 m; they are given to 3 %.
func TestPublishedFilms(t *testing.T) {
	film := NaturalFilm(0.1)
	var cs []published.Check
	for _, x := range []struct {
		name     string
		face     int
		surfaceC float64
		want     float64
	}{
		{"hot side up, 25 C", 0, 25, 8.8}, {"hot side up, 40 C", 0, 40, 11.0}, {"hot side up, 60 C", 0, 60, 12.6}, {"hot side up, 80 C", 0, 80, 13.9},
		{"hot side down, 40 C", 1, 40, 8.5}, {"upright, 40 C", 2, 40, 11.0},
	} {
		cs = append(cs, published.Check{Room: "resin/heat", Name: "film, " + x.name, Ours: film(x.face, x.surfaceC, 22), Theirs: x.want, Unit: "W/m2K", Tol: 0.03 * x.want,
			Source: "mcadams", Place: "worked apart, with radiation at .93"})
	}
	published.Run(t, cs...)
}
