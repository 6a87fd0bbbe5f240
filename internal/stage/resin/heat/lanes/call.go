package lanes

// React, Inflow, Back, Along, Down, Up and Correct are the parts of a step; each works on
// n cells from place `from` on, both multiples of Width. Factors must have been prepared.

// React sets the flow into cells to the heat of the rate expected over the step, W: the
// last two rates continued, w = dt / (2 dt before).
func (c *Cells) React(from, n int, w float32) {
	if wide && n > 0 {
		reactWide(&c.Flow[from], &c.Mass[from], &c.Rate[from], &c.Before[from], n, w, c.HJKG)
		return
	}
	c.react(from, n, w)
}

// Inflow adds what flows in from neighbours and air, and sweeps forward along y.
func (c *Cells) Inflow(from, n int, dt, air float32) {
	if wide && n > 0 {
		inflowWide(&c.Temp[from], &c.GX[from], &c.GY[from], &c.GZ[from], &c.Film[from], &c.PY[from], &c.EY[from], &c.Flow[from], c.NX, c.Plane, n, dt, air)
		return
	}
	c.inflow(from, n, dt, air)
}

// Back sweeps backward along y.
func (c *Cells) Back(from, n int) {
	if wide && n > 0 {
		backWide(&c.Flow[from], &c.Flow[from+c.Plane], &c.FY[from], n)
		return
	}
	c.back(from, n)
}

// Along sweeps a block of rows, at most Width, there and back along x, n cells of each,
// out of Flow into swept, whose first row is the block's. Work holds n times Width.
func (c *Cells) Along(from, rows, n int, pe, f, swept, work []float32) {
	if wide && rows == Width && n > 0 {
		alongWide(&swept[0], &c.Flow[from], &pe[0], &f[0], &work[0], c.NX, n)
		return
	}
	c.along(from, rows, n, pe, f, swept, work)
}

// Down sweeps downwards; shift leads to the layer over it, or is 0 in the first.
func (c *Cells) Down(from, n, shift int, swept []float32) {
	if wide && n > 0 {
		downWide(&c.Flow[from], &c.Flow[from+shift], &swept[0], &c.PZ[from], &c.EZ[from], n)
		return
	}
	c.down(from, n, shift, swept)
}

// Up sweeps upwards and takes the change into TempNext; shift leads to the layer under it,
// or is 0 in the last.
func (c *Cells) Up(from, n, shift int) {
	if wide && n > 0 {
		upWide(&c.Flow[from], &c.Flow[from+shift], &c.FZ[from], &c.Temp[from], &c.TempNext[from], n)
		return
	}
	c.up(from, n, shift)
}

// Correct turns the change of temperature of reacting cells into one of their heat and
// takes in the rate at the end of the step. It must follow Up.
func (c *Cells) Correct(from, n int, dt, w float32) Seen {
	if !wide || n == 0 {
		return c.correct(from, n, dt, w)
	}
	k := [22]float32{dt, w, c.HJKG, c.RiseJKGK2, c.RefC, c.Rates.lastTemp()} // and room for what is seen
	correctWide(&c.Flow[from], &c.Temp[from], &c.TempNext[from], &c.Cap[from], &c.CapF[from], &c.Mass[from],
		&c.Cure[from], &c.CureNext[from], &c.Rate[from], &c.Before[from], &c.RateNext[from], &c.Rates.V[0], n, &k)
	seen := Seen{k[6], k[6+Width]}
	for l := 1; l < Width; l++ {
		seen.Worst, seen.Hot = max(seen.Worst, k[6+l]), max(seen.Hot, k[6+Width+l])
	}
	return seen
}

// FactorY prepares the sweep along y of n cells, half = dt/2.
func (c *Cells) FactorY(from, n int, half float32) {
	if n == 0 {
		return
	}
	fore := from - c.Plane
	if wide {
		factorYWide(&c.CapF[from], &c.GY[fore], &c.GY[from], &c.FY[fore], &c.PY[from], &c.EY[from], &c.FY[from], n, half)
		return
	}
	factorLine(c.CapF[from:from+n], c.GY[fore:], c.GY[from:], c.none, c.FY[fore:], c.PY[from:], c.EY[from:], c.FY[from:], half, false)
}

// FactorZ prepares the sweep along z of n cells with the present films; first says that
// they lie in the first layer.
func (c *Cells) FactorZ(from, n int, first bool, half float32) {
	if n == 0 {
		return
	}
	before, fBefore := c.none, c.none
	if !first {
		before, fBefore = c.GZ[from-c.NX:], c.FZ[from-c.NX:]
	}
	if wide {
		factorZWide(&c.CapF[from], &before[0], &c.GZ[from], &c.Film[from], &fBefore[0], &c.PZ[from], &c.EZ[from], &c.FZ[from], n, half)
		return
	}
	factorLine(c.CapF[from:from+n], before, c.GZ[from:], c.Film[from:], fBefore, c.PZ[from:], c.EZ[from:], c.FZ[from:], half, true)
}

// FactorX prepares the sweep along x of a block of columns of Width cells each, with
// their capacities and conductances to the next column: pe holds two factors a column in
// turn, f the third.
func FactorX(cap, right, pe, f []float32, half float32) {
	if wide && len(cap) > 0 {
		factorXWide(&cap[0], &right[0], &pe[0], &f[0], len(cap), half)
		return
	}
	factorBlock(cap, right, pe, f, half)
}
