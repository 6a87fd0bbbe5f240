package heat

import (
	"fmt"
	"math"
)

// Bounds of a case. Beyond them its numbers are no body's. Chosen, far out.
const (
	mostMM      = 10_000.0 // of any measure
	leastSquare = 0.01     // mm, of a square
	mostHours   = 24 * 400.0
	coldC       = -100.0
	hotC        = 2000.0
	mostFilm    = 1e7 // W/m2K
	mostHeat    = 1e12
	mostBall    = 2000 // squares in the body's thickness
)

// fault says what is wrong with a case.
func fault(format string, args ...any) error {
	return fmt.Errorf(format+": %w", append(args, ErrBadCase)...)
}

// among reports whether v is a number from lo to hi.
func among(v, lo, hi float64) bool { return v >= lo && v <= hi }

// check refuses a case that cannot be built or stepped.
func check(c Case, o Options) error {
	for _, f := range []func(Case) error{checkRaster, checkSolids, checkPours, checkAir} {
		if err := f(c); err != nil {
			return err
		}
	}
	if math.IsNaN(o.DXMM) || o.DXMM > mostMM {
		return fault("cells of %g mm", o.DXMM)
	}
	return nil
}

func checkRaster(c Case) error {
	switch {
	case !among(c.StepMM, leastSquare, mostMM) || !among(c.BodyMM, 0, mostMM) || !among(c.WallMM, 0, mostMM):
		return fault("squares of %g mm, body of %g mm, walls of %g mm", c.StepMM, c.BodyMM, c.WallMM)
	case c.NX < 1 || c.NY < 1 || c.NX > mostSquares/c.NY || len(c.DeepMM) != c.NX*c.NY:
		return fault("%d x %d squares, %d depths", c.NX, c.NY, len(c.DeepMM))
	case c.BodyMM/c.StepMM > mostBall || c.WallMM/c.StepMM > mostBall:
		return fault("body of %g mm, walls of %g mm, on squares of %g mm", c.BodyMM, c.WallMM, c.StepMM)
	}
	deepest := 0.0
	for i, d := range c.DeepMM {
		if !among(d, -mostMM, mostMM) {
			return fault("square %d is %g mm deep", i, d)
		}
		deepest = math.Max(deepest, d)
	}
	if deepest == 0 {
		return fault("nothing is hollow")
	}
	for _, w := range c.Walls {
		if w.Edge < 0 || w.Edge > 3 || math.IsNaN(w.FromMM+w.ToMM) || !among(w.DeepMM, -mostMM, mostMM) {
			return fault("a wall of %+v", w)
		}
	}
	return nil
}

func checkSolids(c Case) error {
	solids := []Solid{c.Body, c.Pour}
	if len(c.Walls) > 0 && c.WallMM > 0 {
		solids = append(solids, c.Wall)
	}
	if c.Below != nil {
		solids = append(solids, *c.Below)
	}
	for _, s := range solids {
		for _, v := range []float64{s.RhoKGM3, s.CJKGK, s.KWMK} {
			if !among(v, 1e-6, 1e9) {
				return fault("a solid of %+v", s)
			}
		}
	}
	if !among(c.PourRiseJKGK2, 0, 0.01*c.Pour.CJKGK) || !among(c.HJKG, 0, mostHeat) {
		return fault("heat of reaction %g J/kg, capacity rising by %g", c.HJKG, c.PourRiseJKGK2)
	}
	return nil
}

func checkPours(c Case) error {
	if len(c.Pours) == 0 || c.Rate == nil || !among(c.EndH, 1e-6, mostHours) {
		return fault("%d pours, to %g h, rate given: %v", len(c.Pours), c.EndH, c.Rate != nil)
	}
	for i, p := range c.Pours {
		switch {
		case !among(p.AtH, -mostHours, c.EndH) || !among(p.TopMM, -mostMM, mostMM) || !among(p.TempC, coldC, hotC) || !among(p.Cure, 0, 1):
			return fault("pour %d at %g h of %g h, to %g mm, %g C, cure %g", i+1, p.AtH, c.EndH, p.TopMM, p.TempC, p.Cure)
		case i > 0 && (p.AtH < c.Pours[i-1].AtH || p.TopMM > c.Pours[i-1].TopMM):
			return fault("pour %d at %g h to %g mm, before the one before or below it", i+1, p.AtH, p.TopMM)
		}
	}
	return nil
}

func checkAir(c Case) error {
	if c.Air.TempC == nil || c.Air.Film == nil {
		return fault("no air")
	}
	airC := c.Air.TempC(c.Pours[0].AtH)
	if !among(airC, coldC, hotC) || !among(c.Air.Scale, 0, 1000) {
		return fault("air of %g C, films times %g", airC, c.Air.Scale)
	}
	for f := range 3 {
		if h := c.Air.Film(f, airC, airC); !among(h, 0, mostFilm) {
			return fault("a film of %g W/m2K", h)
		}
	}
	return nil
}
