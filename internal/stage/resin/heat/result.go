package heat

import "math"

// A Result is what happened. Hours are counted like Case.Pours; those that did not come
// are +Inf.
type Result struct {
	PeakC, PeakH          float64
	PeakX, PeakY, PeakZ   float64 // mm: in the case's raster; below the top plane
	PeakPour              int     // number of the pour it is in, from 0
	WallC, BelowC         float64 // warmest face at a wall, and warmest body on what is below
	Pours                 []PourResult
	Columns               []Column // poured columns, row by row
	CX, CY                int      // columns of cells
	CellMM                float64
	OffXMM, OffYMM        float64 // lower left corner of the first cell in the case's raster
	SetH, SmoothH         float64 // nearly all columns
	Cells, Steps          int
	HeatJ, LostJ, StoredJ float64 // set free, given to air, stored
	LayersMM              []float64
	Frames                []Frame
	MarkH                 [2]float64 // hours at which the mean cure passes Options.Marks
	CutYMM                float64    // where the cut of the frames lies
	DeepestMM             float64
}

// EnergyDefect is what the books leave open, as a share of the heat set free.
func (r Result) EnergyDefect() float64 {
	if r.HeatJ == 0 {
		return 0
	}
	return math.Abs(r.HeatJ-r.LostJ-r.StoredJ) / r.HeatJ
}

// PourResult is what became of one pour's surface, while it was the surface.
type PourResult struct {
	PeakC, PeakH float64
	GelH         float64 // nearly all of it has gelled
	BondsH       float64 // the first of it no longer bonds
	TackyH       float64 // nearly all of it is no longer tacky
}

// A Column is one cell of the plan that holds poured material.
type Column struct {
	I, J                                int
	DeepMM                              float64 // poured
	GelH, BondsH, TackyH, SetH, SmoothH float64 // of the last surface, and through the depth
	AreaM2                              float64
	CureADay                            float64 // least, a day after the last pour
}

// A Frame is the state at one hour: by column the warmest temperature and the least
// cure over the depth, and a cut along x. NaN where nothing is poured.
type Frame struct {
	Hour          float64
	TempC, Cure   []float32
	CutC, CutCure []float32 // [layer][i]
}
