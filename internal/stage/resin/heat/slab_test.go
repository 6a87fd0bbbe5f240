package heat

import (
	"context"
	"math"
	"testing"
)

// inert is a block of one material that does not react, poured at once.
func inert(nx, ny int, deep float64, s Solid, film float64) Case {
	d := make([]float64, nx*ny)
	for i := range d {
		d[i] = deep
	}
	return Case{NX: nx, NY: ny, StepMM: 2, DeepMM: d, Body: s, BodyMM: 4, Pour: s, Rate: func(a, t float64) float64 { return 0 },
		Pours: []Pour{{TempC: 60}}, EndH: 1, Air: Air{TempC: func(float64) float64 { return 20 }, Film: SteadyFilm(film)}}
}

func TestCoolingSlabKeepsItsBooks(t *testing.T) {
	s := Solid{1100, 1800, 0.2}
	c := inert(10, 10, 46, s, 10)
	r, err := Solve(context.Background(), c, Options{DZMM: 2})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d cells, %d steps, stored %.1f lost %.1f J", r.Cells, r.Steps, r.StoredJ, r.LostJ)
	if math.Abs(r.StoredJ+r.LostJ) > 1e-3*math.Abs(r.LostJ) {
		t.Errorf("stored %.3f J, lost %.3f J", r.StoredJ, r.LostJ)
	}
}
