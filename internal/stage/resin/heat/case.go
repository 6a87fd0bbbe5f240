// Package heat solves conduction with reaction in three dimensions and time: a body of
// columns, poured in layers, that heats itself while it cures and loses heat to air. It
// works on plain grids and knows nothing of what the body is for.
//
//	rho c dT/dt = div(k grad T) + rho H da/dt,  da/dt = rate(a, T)
//
// Space: cells of plan size DX with layers of their own thickness, homogenised from
// columns of a fine raster: heat capacities by exact overlaps, conductances by series and
// parallel paths through solid. Time: factorised Crank-Nicolson in delta form, the upright
// direction last, with the reaction held constant over a step (Adams-Bashforth predictor,
// Adams-Moulton corrector, one rate a step). The poured material's heat capacity grows with
// temperature: the sweeps take it as of late, and what they give to a cell is turned into
// its temperature by heat, so that none is lost. Steps are chosen by the corrector and by
// what conduction leaves out; the first ones of a new layer are damped.
package heat

import "math"

// A Solid is a material. SI units.
type Solid struct{ RhoKGM3, CJKGK, KWMK float64 }

// A Case is what is simulated. Depths are in mm below the top plane, which reacting
// layers fill to; x and y in mm from the raster's lower left corner.
type Case struct {
	NX, NY int
	StepMM float64   // side of a raster square
	DeepMM []float64 // depth of the floor of each square, row by row; 0 outside the hollow

	Body   Solid   // what the hollow is made in
	BodyMM float64 // its thickness round the hollow and under the top plane
	Pour   Solid
	// PourRiseJKGK2 is what the capacity of a kg of the poured material gains with a K:
	// Pour.CJKGK counts at 25 C.
	PourRiseJKGK2 float64
	HJKG          float64                        // heat of reaction of the poured material
	Rate          func(a, tempC float64) float64 // 1/s
	Set           func(a, tempC float64) bool    // whether it is hard
	Smooth        func(a float64) bool           // whether it can be sanded
	Walls         []Wall
	Wall          Solid
	WallMM        float64 // thickness of a wall
	Below         *Solid  // what fills the space under the body; nil for air

	Pours []Pour
	Air   Air
	EndH  float64 // simulated time
}

// A Pour fills the hollow from where it is to TopMM below the top plane.
type Pour struct{ AtH, TopMM, TempC, Cure float64 }

// A Wall closes the hollow at an edge of the raster: 0 left, 1 right, 2 lower, 3 upper,
// over FromMM to ToMM along the edge, down to DeepMM.
type Wall struct {
	Edge                 int
	FromMM, ToMM, DeepMM float64
}

// Air is what is round the body.
type Air struct {
	TempC func(hour float64) float64
	// Film returns W/m2K for a face warmer than the air by riseK: up 0, down 1, upright 2.
	Film  func(face int, surfaceC, airC float64) float64
	Scale float64 // of the films; 0 counts as 1
}

// Options are how finely.
type Options struct {
	DXMM    float64    // plan size of a cell; a multiple of the raster's step. 0 takes 10
	DZMM    float64    // thickest layer of the hollow; 0 takes 4
	TolK    float64    // error of a step; 0 takes 5e-4
	StepS   float64    // longest step; 0 takes an hour
	Body    int        // layers of the body below the deepest floor; 0 takes 4
	Cells   int        // most cells that may be built; 0 takes MostCells
	Threads int        // 0 takes 1
	Frames  []float64  // hours at which fields are kept
	Marks   [2]float64 // cures: when the mean of all poured passes them is told
	Rough   bool       // no fields, and no longer than until all is hard
	Tacky   bool       // no longer than until no surface is tacky
}

func (o Options) orDefaults(c Case) Options {
	if !(o.DXMM > 0) {
		o.DXMM = 10
	}
	o.DXMM = c.StepMM * math.Max(1, math.Round(o.DXMM/c.StepMM))
	if !(o.DZMM > 0) {
		o.DZMM = 4
	}
	if !(o.TolK > 0) {
		o.TolK = 5e-4
	}
	if o.Body <= 0 {
		o.Body = 4
	}
	if !(o.StepS > 0) {
		o.StepS = mostStep
	}
	if o.Cells <= 0 {
		o.Cells = MostCells
	}
	o.Threads = max(1, o.Threads)
	return o
}

// Limits of a case. A larger one is refused; Solve says so before it takes memory. A cell
// takes about 200 bytes, inactive ones too.
const (
	MostCells   = 1_800_000
	MostSteps   = 200_000
	mostSquares = 20_000_000
)
