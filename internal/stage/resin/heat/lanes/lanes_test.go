package lanes

import (
	"math"
	"testing"
)

// A dice is a small generator of numbers for tests.
type dice uint64

func (d *dice) next() float32 {
	*d = *d*6364136223846793005 + 1442695040888963407
	return float32(uint32(*d>>33)) / (1 << 31)
}

// random returns cells with gaps of nothing in them and a state as in the middle of a run.
func random(nx, ny, nz int, seed dice) *Cells {
	c, d := New(nx, ny, nz), &seed
	for _, v := range []*[]float32{&c.Cap, &c.Mass, &c.GX, &c.GY, &c.GZ} {
		*v = make([]float32, nx*ny*nz)
	}
	c.HJKG, c.RiseJKGK2, c.RefC = 3e5, 3, 22
	c.Rates = Table{V: make([]float32, (CureSteps+1)*RowLength+Width), To: 300}
	for i := range c.Rates.V {
		c.Rates.V[i] = 1e-5 * (1 + d.next())
	}
	for j := 1; j < ny-1; j++ {
		for at := j * c.Plane; at < (j+1)*c.Plane; at++ {
			if d.next() < 0.2 {
				continue
			}
			c.Cap[at], c.Film[at] = 1+d.next(), max(0, d.next()-0.5)
			if d.next() < 0.5 {
				c.Mass[at] = 1e-3 * d.next()
			}
			c.CapF[at] = c.Cap[at] + 10*c.Mass[at]
			c.Temp[at], c.Cure[at] = 40*d.next(), d.next()*d.next()*d.next()
			c.Rate[at], c.Before[at] = 2e-5*d.next(), 2e-5*d.next()
		}
	}
	link := func(g []float32, shift int, ok func(at int) bool) {
		for at := range g {
			if ok(at) && c.Cap[at] > 0 && at+shift < len(g) && c.Cap[at+shift] > 0 {
				g[at] = d.next() / 100
			}
		}
	}
	link(c.GX, 1, func(at int) bool { return at%nx+1 < nx })
	link(c.GZ, nx, func(at int) bool { return at/nx%nz+1 < nz })
	link(c.GY, c.Plane, func(at int) bool { return true })
	return &c
}

// step does all of a step, line by line.
func step(c *Cells, nz int, dt float32) []Seen {
	nx, rows := c.NX, len(c.Cap)/c.Plane
	all := func(do func(from, k int)) {
		for line := nz; line < (rows-1)*nz; line++ {
			do(line*nx, line%nz)
		}
	}
	all(func(from, k int) { c.FactorY(from, nx, dt/2) })
	all(func(from, k int) { c.FactorZ(from, nx, k == 0, dt/2) })
	all(func(from, k int) { c.React(from, nx, 0.5) })
	all(func(from, k int) { c.Inflow(from, nx, dt, 3) })
	for line := (rows-1)*nz - 1; line >= nz; line-- {
		c.Back(line*nx, nx)
	}
	swept, work := make([]float32, c.Plane), make([]float32, nx*Width)
	var seen []Seen
	for j := 1; j < rows-1; j++ {
		for k := 0; k < nz; k += Width {
			k = min(k, nz-Width)
			cap, right := make([]float32, nx*Width), make([]float32, nx*Width)
			for l := range Width {
				for i := range nx {
					at := j*c.Plane + (k+l)*nx + i
					cap[i*Width+l], right[i*Width+l] = c.CapF[at], c.GX[at]
				}
			}
			pe, f := make([]float32, 2*nx*Width), make([]float32, nx*Width)
			FactorX(cap, right, pe, f, dt/2)
			c.Along(j*c.Plane+k*nx, Width, nx, pe, f, swept[k*nx:], work)
		}
		for k := range nz {
			c.Down(j*c.Plane+k*nx, nx, -nx*min(k, 1), swept[k*nx:])
		}
		for k := nz - 1; k >= 0; k-- {
			c.Up(j*c.Plane+k*nx, nx, nx*min(nz-1-k, 1))
			seen = append(seen, c.Correct(j*c.Plane+k*nx, nx, dt, 0.5))
		}
	}
	return seen
}

func both(t *testing.T, run func() *Cells, more func(*Cells) []Seen) {
	t.Helper()
	if !wide {
		t.Skip("this machine has no vector instructions known here")
	}
	a := run()
	seenA := more(a)
	wide = false
	b := run()
	seenB := more(b)
	wide = true
	for i := range seenA {
		if bits(seenA[i].Worst) != bits(seenB[i].Worst) || bits(seenA[i].Hot) != bits(seenB[i].Hot) {
			t.Fatalf("line %d: %v by vectors, %v one by one", i, seenA[i], seenB[i])
		}
	}
	for name, v := range map[string][2][]float32{"flow": {a.Flow, b.Flow}, "temperature": {a.TempNext, b.TempNext}, "cure": {a.CureNext, b.CureNext},
		"rate": {a.RateNext, b.RateNext}, "p": {a.PZ, b.PZ}, "e": {a.EY, b.EY}, "f": {a.FZ, b.FZ}} {
		for i := range v[0] {
			if bits(v[0][i]) != bits(v[1][i]) {
				t.Fatalf("%s of cell %d: %v by vectors, %v one by one", name, i, v[0][i], v[1][i])
			}
		}
	}
}

// bits tells numbers apart; all that are none are alike.
func bits(v float32) uint32 {
	if v != v {
		return 0x7fc00000
	}
	return math.Float32bits(v)
}

func TestVectorsRoundLikeSingleNumbers(t *testing.T) {
	for seed := range dice(20) {
		nz := 8 + 3*int(seed%5)
		both(t, func() *Cells { return random(24, 5, nz, seed) }, func(c *Cells) []Seen { return step(c, nz, 100+1000*float32(seed)) })
	}
}

// What is not a number is seen, by both.
func TestNotANumberIsSeen(t *testing.T) {
	for _, spoil := range []func(c *Cells, at int){
		func(c *Cells, at int) { c.Temp[at] = float32(math.NaN()) },
		func(c *Cells, at int) { c.Temp[at] = float32(math.Inf(1)) },
		func(c *Cells, at int) { c.Cure[at] = float32(math.Inf(1)) },
		func(c *Cells, at int) { c.Flow[at] = float32(math.NaN()) },
	} {
		run := func() *Cells {
			c := random(16, 5, 9, 7)
			for at := range c.Mass {
				if at > 2*c.Plane && c.Mass[at] > 0 {
					spoil(c, at)
					break
				}
			}
			return c
		}
		last := func(c *Cells) []Seen { return []Seen{c.Correct(2*c.Plane, c.Plane, 100, 0.5)} }
		both(t, run, last)
		if seen := last(run()); seen[0].Worst == seen[0].Worst {
			t.Errorf("worst %v", seen[0].Worst)
		}
	}
}

// The change of temperature holds as much heat as flows in: E = C0 u + s (t + u/2) u.
func TestHeatIsKept(t *testing.T) {
	c := random(16, 5, 9, 3)
	c.HJKG = 0
	for i := range c.Flow {
		if c.Mass[i] > 0 {
			c.Flow[i] = 30 - c.Temp[i]
		}
	}
	c.Correct(c.Plane, 3*c.Plane, 100, 0)
	for i, m := range c.Mass {
		if m == 0 || i < c.Plane {
			continue
		}
		u, s := float64(c.TempNext[i]-c.Temp[i]), float64(m)*3
		got, want := float64(c.Cap[i])*u+s*(float64(c.Temp[i])+u/2)*u, float64(c.CapF[i]*c.Flow[i])
		if math.Abs(got-want) > 1e-5*math.Max(1, math.Abs(want)) {
			t.Fatalf("cell %d takes %v J of %v", i, got, want)
		}
	}
}

func BenchmarkStep(b *testing.B) {
	c := random(144, 47, 25, 1)
	b.SetBytes(144 * 45 * 25 * 124)
	for range b.N {
		step(c, 25, 300)
	}
}
