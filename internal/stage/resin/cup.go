package resin

import (
	"context"
	"math"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/stage/resin/kinetics"
)

// The cup of a pot-life test: 65 mm across, plastic thin enough to leave out, films 8
// W/m2K round its side and 4 below, natural convection and radiation above. The square
// column of the same section has more side than the round one, so its film is less by
// as much. Chosen.
const (
	cupAcrossMM = 65.0
	cupSide     = 8.0
	cupBottom   = 4.0
	potCure     = 0.15 // cure at which a pot can no longer be poured. Chosen
)

// A cupTest is what a cup of mixed resin does, hours and C.
type cupTest struct{ pot, gel, peak float64 }

// cupOf simulates massKG of resin mixed and kept at airC.
func cupOf(ctx context.Context, m kinetics.Model, massKG, airC float64) (cupTest, error) {
	side := cupAcrossMM * math.Sqrt(math.Pi) / 2
	round := math.Pi * cupAcrossMM / (4 * side)
	deep := massKG / m.RhoKGM3 / (side * side * 1e-6) * 1000
	n := 24
	top := heat.NaturalFilm(cupAcrossMM / 4 / 1000)
	c := heat.Case{NX: n, NY: n, StepMM: side / float64(n), DeepMM: level(n*n, deep), Body: board, Pour: heat.Solid{RhoKGM3: m.RhoKGM3, CJKGK: kinetics.HeatCapacity, KWMK: m.KWMK}, PourRiseJKGK2: kinetics.HeatCapacityRise,
		HJKG: m.HJKG, Rate: m.Rate, Set: func(a, _ float64) bool { return a >= kinetics.Gel }, Pours: []heat.Pour{{TempC: airC}},
		Air: heat.Air{TempC: func(float64) float64 { return airC }, Film: func(face int, s, a float64) float64 {
			switch face {
			case 0:
				return top(face, s, a)
			case 1:
				return cupBottom
			}
			return cupSide * round
		}}, EndH: endOf(m, airC)}
	r, err := heat.Solve(ctx, c, heat.Options{DXMM: c.StepMM, DZMM: 2, TolK: 1e-3, Rough: true, Marks: [2]float64{potCure, kinetics.Gel}})
	return cupTest{r.MarkH[0], r.MarkH[1], r.PeakC}, err
}

// level returns n squares of the same depth.
func level(n int, deepMM float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = deepMM
	}
	return out
}

// endOf is long enough for a thin film to gel.
func endOf(m kinetics.Model, airC float64) float64 {
	return math.Min(24*60, 2*m.FilmTime(kinetics.Gel, airC)/3600+24)
}

// slabLengthM is the area over perimeter of the slab of a data sheet, m. Chosen: a casting
// of half a metre.
const slabLengthM = 0.1

// slab is a wide slab of resin of that depth on 18 mm of a solid, in air of airC.
func slab(m kinetics.Model, deepMM, airC float64, under heat.Solid) heat.Case {
	film := heat.NaturalFilm(slabLengthM)
	return heat.Case{NX: 1, NY: 1, StepMM: 100, DeepMM: []float64{deepMM}, Body: under, BodyMM: 18, Pour: heat.Solid{RhoKGM3: m.RhoKGM3, CJKGK: kinetics.HeatCapacity, KWMK: m.KWMK}, PourRiseJKGK2: kinetics.HeatCapacityRise,
		HJKG: m.HJKG, Rate: m.Rate, Set: func(a, _ float64) bool { return a >= kinetics.Gel }, Pours: []heat.Pour{{TempC: airC}},
		Air: heat.Air{TempC: func(float64) float64 { return airC }, Film: func(face int, s, a float64) float64 {
			if face == 2 {
				return 0
			}
			return film(face, s, a)
		}}, EndH: endOf(m, airC)}
}

// slabPeak returns the peak of such a slab, C.
func slabPeak(ctx context.Context, m kinetics.Model, deepMM, airC float64, under heat.Solid) (float64, error) {
	r, err := heat.Solve(ctx, slab(m, deepMM, airC, under), heat.Options{DXMM: 100, DZMM: 2, TolK: 2e-3, Rough: true})
	return r.PeakC, err
}
