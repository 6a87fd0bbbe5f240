// Package lanes holds the inner loops of the cure: what is done to a line of cells, eight
// at a time. Every loop is written twice, in Go and in vector instructions where the
// machine has them; both round alike, so that a plan does not depend on the machine.
//
// Lines begin and end at multiples of Width. Cells that hold nothing have capacities,
// conductances and factors of 0 and stay at 0.
package lanes

//go:generate go run -C ../../../../../tools ./lanes -pkg lanes -out ../internal/stage/resin/heat/lanes/loops_amd64.s -stubs ../internal/stage/resin/heat/lanes/loops_amd64.go

// Width is how many cells are worked on at a time.
const Width = 8

// A Cells is the state of a grid and what a step needs of it. Arrays are [y][z][x]; every
// index is that of a cell, the one before along y is Plane below it, the one over it NX.
type Cells struct {
	NX, Plane int

	Temp, TempNext         []float32 // K above a reference, before and after the step
	Cure, CureNext         []float32
	Rate, Before, RateNext []float32 // of cure, 1/s: at the step's beginning, one before, at its end
	Flow                   []float32 // what the sweeps turn into the change of temperature

	Cap, CapF  []float32 // heat capacity at the reference, and as the factors have it, J/K
	Mass       []float32 // of what reacts, kg
	GX, GY, GZ []float32 // conductance to the next cell, W/K; 0 to none
	Film       []float32 // to air, W/K

	PY, EY, FY []float32 // factors of the sweep along y, the first by the cell's capacity
	PZ, EZ, FZ []float32 // along z, the first times CapF

	HJKG, RiseJKGK2 float32 // heat of reaction, and what the capacity of a kg gains with a K
	RefC            float32
	Rates           Table

	none []float32 // a line of zeros
}

// A Table is a rate of reaction over cure and temperature: rows of Cures, TempSteps+1
// entries each, read by two-way linear interpolation. Rows lie evenly by the root of the
// cure up to LowCure, evenly above.
type Table struct {
	V  []float32
	To int // entries of a row that are filled
}

// The grid of a Table.
const (
	LowCure   = 1.0 / 32
	LowSteps  = 16
	PerCure   = 256
	CureSteps = LowSteps + 248
	ColdestC  = -30.0
	PerDegree = 2
	TempSteps = 720
	RowLength = TempSteps + 1
)

// A Seen is what Correct finds among reacting cells.
type Seen struct {
	Worst float32 // greatest correction, K; not a number where any is not
	Hot   float32 // warmest, K above the reference
}

// New returns the cells of ny rows of nz lines, nx to a line, a multiple of Width, without
// capacities, masses and conductances, which the caller sets.
func New(nx, ny, nz int) Cells {
	c := Cells{NX: nx, Plane: nx * nz, none: make([]float32, nx)}
	n := nx * ny * nz
	all := [...]*[]float32{&c.Temp, &c.TempNext, &c.Cure, &c.CureNext, &c.Rate, &c.Before, &c.RateNext, &c.Flow, &c.CapF,
		&c.Film, &c.PY, &c.EY, &c.FY, &c.PZ, &c.EZ, &c.FZ}
	room := make([]float32, len(all)*n)
	for k, v := range all {
		*v = room[k*n : (k+1)*n : (k+1)*n]
	}
	return c
}
