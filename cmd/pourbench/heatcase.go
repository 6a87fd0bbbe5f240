package main

import (
	"math"

	"pourwright/internal/stage/resin/heat"
)

// Kinetics of the bench's resin, near a slow deep-pour one. Chosen.
const (
	benchK1, benchE1     = 4e-6, 50e3 // 1/s at benchAir, J/mol
	benchK2, benchE2     = 6e-6, 45e3
	benchM               = 0.9
	benchTg0, benchTg1   = -40.0, 70.0
	benchLambda          = 0.4
	benchAir, benchHeat  = 22.0, 330e3 // C, J/kg: the top of casting resins, for a lively problem
	benchFilm            = 8.5         // W/m2K
	benchHours           = 48.0
	benchLong, benchWide = 1400.0, 450.0 // mm
)

func benchRate(a, tempC float64) float64 {
	t := (1/(benchAir+273.15) - 1/(tempC+273.15)) / 8.314462618
	tg := benchTg0 + (benchTg1-benchTg0)*benchLambda*a/(1-(1-benchLambda)*a)
	left := math.Max(0, 1-a)
	return (benchK1*math.Exp(benchE1*t) + benchK2*math.Exp(benchE2*t)*math.Pow(math.Max(a, 0), benchM)) * left * left / (1 + math.Exp((tg-tempC-12)/7))
}

// benchDepth is an invented basin: floors 8 to 64 mm deep, 8 mm apart, along a bent axis;
// it begins 60 mm from the left end, widens to 400 mm and runs out at the right end.
func benchDepth(xMM, yMM float64) float64 {
	if xMM < 60 {
		return 0
	}
	axis := 225 + 15*math.Sin(xMM/190)
	half := 70 + 135*math.Sqrt(math.Min(1, (xMM-60)/900))
	u := math.Abs(yMM-axis) / half
	if u >= 1 {
		return 0
	}
	return 8 * math.Min(8, 1+math.Floor(13*(1-u*u)*math.Min(1, (xMM-60)/500)))
}

// basinCase is the basin on squares of stepMM, filled at once.
func basinCase(stepMM, scale float64) heat.Case {
	c := baseCase()
	c.NX, c.NY, c.StepMM = int(benchLong/stepMM), int(benchWide/stepMM), stepMM
	c.DeepMM = make([]float64, c.NX*c.NY)
	for j := range c.NY {
		for i := range c.NX {
			c.DeepMM[j*c.NX+i] = scale * benchDepth((float64(i)+0.5)*stepMM, (float64(j)+0.5)*stepMM)
		}
	}
	c.Walls, c.Wall, c.WallMM = []heat.Wall{{Edge: 1, FromMM: 0, ToMM: benchWide, DeepMM: 100}}, heat.Solid{RhoKGM3: 600, CJKGK: 1700, KWMK: 0.14}, 18
	return c
}

func baseCase() heat.Case {
	return heat.Case{
		Body: heat.Solid{RhoKGM3: 2000, CJKGK: 900, KWMK: 1.2}, BodyMM: 19, Pour: heat.Solid{RhoKGM3: 1100, CJKGK: 1900, KWMK: 0.2}, HJKG: benchHeat,
		Rate: benchRate, Set: func(a, _ float64) bool { return a > 0.6 }, Pours: []heat.Pour{{TempC: benchAir}}, EndH: benchHours,
		Air: heat.Air{TempC: func(float64) float64 { return benchAir }, Film: heat.SteadyFilm(benchFilm)},
	}
}

// boxCase is a box 200 x 200 mm, 64 mm of resin on 19 mm of body, films on every face.
func boxCase() heat.Case {
	c := baseCase()
	c.NX, c.NY, c.StepMM, c.DeepMM = 20, 20, 10, make([]float64, 400)
	for i := range c.DeepMM {
		c.DeepMM[i] = 64
	}
	return c
}
