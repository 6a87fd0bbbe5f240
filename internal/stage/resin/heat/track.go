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

// Marks of cure, and shares that count as nearly all and as the first. Chosen.
const (
	gelCure   = 0.55
	tackCure  = 0.68
	bondCure  = 0.80
	nearlyAll = 0.98
	theFirst  = 0.02
)

type tracker struct {
	b       *body
	o       Options
	z       []float64
	res     Result
	steps   int
	columns []Column
	top     []int32 // topmost poured cell of each column
	bottom  []int32
	cutJ    int
	next    int     // frame
	heatJ   float64 // stored when the stage began
	curedKG float64
	hours   [3]float64 // of the last three steps, with the warmest cell's temperature
	tops    [3]float64
	extras  [2]float64 // what lies between cells, of the last two
	seen    int
	lastAt  int
	started bool
	across  int // columns of cells along x that may hold something
	pour    int
	dayH    float64
}

func newTracker(b *body, o Options, z []float64) *tracker {
	t := &tracker{b: b, o: o, z: z}
	inf := math.Inf(1)
	t.res = Result{MarkH: [2]float64{inf, inf}, PeakC: math.Inf(-1), WallC: math.Inf(-1), BelowC: math.Inf(-1), LayersMM: z, CellMM: o.DXMM,
		OffXMM: -float64(b.offX) * b.c.StepMM, OffYMM: -float64(b.offY-b.border) * b.c.StepMM}
	t.across = (b.nx + b.border - 1) / b.border
	return t
}

// stage begins a new stage of filling.
func (t *tracker) stage(s *stepper, pour int, atH float64) {
	if t.started {
		t.close()
	}
	t.seen = 0
	t.started, t.pour, t.dayH = true, pour, atH+24
	t.res.Pours = append(t.res.Pours, PourResult{PeakC: math.Inf(-1)})
	t.res.CX, t.res.CY, t.res.Cells = t.across, s.ny-2, active(s.grid)
	t.columns, t.top, t.bottom = t.columns[:0], t.top[:0], t.bottom[:0]
	inf := math.Inf(1)
	for j := range s.ny {
		for i := range s.nx {
			top, bottom, mass := -1, -1, 0.0
			for k := range s.nz {
				if at := s.index(i, j, k); s.Mass[at] > 0 {
					if top < 0 {
						top = at
					}
					bottom, mass = at, mass+float64(s.Mass[at])
				}
			}
			if top < 0 {
				continue
			}
			area := float64(s.Mass[top]) / (t.b.c.Pour.RhoKGM3 * t.height(s, top))
			t.columns = append(t.columns, Column{I: i, J: j - 1, AreaM2: area, DeepMM: 1000 * mass / t.b.c.Pour.RhoKGM3 / area,
				GelH: inf, BondsH: inf, TackyH: inf, SetH: inf, SmoothH: inf})
			t.top, t.bottom = append(t.top, int32(top)), append(t.bottom, int32(bottom))
		}
	}
	t.cutJ = t.widest(s) - 1
}

func active(g *grid) int {
	n := 0
	for _, c := range g.cap {
		if c > 0 {
			n++
		}
	}
	return n
}

// height returns the height of a cell's layer, m.
func (t *tracker) height(s *stepper, at int) float64 {
	k := at / s.nx % s.nz
	return (s.zMM[k+1] - s.zMM[k]) / 1000
}

// widest returns the row of cells that holds most poured mass: where the cut goes.
func (t *tracker) widest(s *stepper) int {
	best, most := 0, -1.0
	for j := range s.ny {
		sum := 0.0
		for at := j * s.nz * s.nx; at < (j+1)*s.nz*s.nx; at++ {
			sum += float64(s.Mass[at])
		}
		if sum > most {
			best, most = j, sum
		}
	}
	return best
}

// close takes the surface's times into the result of the stage's pour.
func (t *tracker) close() {
	p := &t.res.Pours[t.pour]
	n := len(t.columns)
	gel, bonds, tacky, w := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i, c := range t.columns {
		gel[i], bonds[i], tacky[i], w[i] = c.GelH, c.BondsH, c.TackyH, c.AreaM2
	}
	p.GelH, p.BondsH, p.TackyH = quantile(gel, w, nearlyAll), quantile(bonds, w, theFirst), quantile(tacky, w, nearlyAll)
}

// step looks at a step from hour t of length dt that is about to be accepted.
func (t *tracker) step(s *stepper, hour, dt, airC float64) {
	t.steps++
	t.res.LostJ += s.lossJ(airC)
	t.peaks(s, hour+dt)
	t.means(s, hour, dt)
	for n := range t.columns {
		t.column(s, n, hour, dt)
	}
	for t.next < len(t.o.Frames) && t.o.Frames[t.next] <= hour+dt && !t.o.Rough {
		share := float32(min(1, max(0, (t.o.Frames[t.next]-hour)/dt)))
		t.res.Frames = append(t.res.Frames, t.frame(s, t.o.Frames[t.next], share))
		t.next++
	}
}

// open and shut keep the books of a stage: what is stored and cured at its ends.
func (t *tracker) open(s *stepper) { t.heatJ, t.curedKG = s.contents() }

func (t *tracker) shut(s *stepper) {
	heat, cured := s.contents()
	t.res.StoredJ += heat - t.heatJ
	t.res.HeatJ += (cured - t.curedKG) * float64(s.HJKG)
}

// means follows the mean cure, where marks of it are asked for.
func (t *tracker) means(s *stepper, hour, dt float64) {
	if t.o.Marks == [2]float64{} {
		return
	}
	mass, a, b := 0.0, 0.0, 0.0
	for at, m := range s.Mass {
		mass, a, b = mass+float64(m), a+float64(m*s.Cure[at]), b+float64(m*s.CureNext[at])
	}
	for i, mark := range t.o.Marks {
		if math.IsInf(t.res.MarkH[i], 1) && b >= mark*mass {
			t.res.MarkH[i] = hour + dt*min(1, max(0, (mark*mass-a)/math.Max(b-a, 1e-12)))
		}
	}
}

// peaks looks for the warmest poured cell, wall face and body below.
func (t *tracker) peaks(s *stepper, hour float64) {
	if at, v := s.hottest(); at >= 0 {
		t.crest(s, at, hour, v)
	}
	for _, c := range s.toWall {
		v := float64(c.share*s.TempNext[c.cell]+(1-c.share)*s.TempNext[c.wall]) + s.refC
		t.res.WallC = max(t.res.WallC, v)
	}
	for _, at := range s.toBelow {
		t.res.BelowC = max(t.res.BelowC, float64(s.TempNext[at])+s.refC)
	}
}

// crest follows the warmest poured cell from step to step. Where it has just passed a
// crest, a parabola through three steps gives its height and hour; another one upwards
// through the cells over and under it adds what lies between their middles.
func (t *tracker) crest(s *stepper, at int, hour, v float64) {
	extra := t.between(s, at)
	t.hours, t.tops = [3]float64{t.hours[1], t.hours[2], hour}, [3]float64{t.tops[1], t.tops[2], v}
	t.extras = [2]float64{t.extras[1], extra}
	p := &t.res.Pours[t.pour]
	t.higher(s, at, p, v+extra, hour)
	if h := t.hours; t.seen >= 2 && t.tops[1] > t.tops[0] && t.tops[1] >= v {
		x, y := vertex(h[0]-h[1], h[2]-h[1], t.tops[0]-t.tops[1], v-t.tops[1])
		if y+t.tops[1]+t.extras[0] > p.PeakC || h[1] == p.PeakH {
			t.higher(s, t.lastAt, p, t.tops[1]+y+t.extras[0], h[1]+x)
		}
	}
	t.seen, t.lastAt = t.seen+1, at
}

// higher takes a temperature into the peaks where it is one.
func (t *tracker) higher(s *stepper, at int, p *PourResult, v, hour float64) {
	if v <= p.PeakC {
		return
	}
	p.PeakC, p.PeakH = v, hour
	if v > t.res.PeakC {
		t.res.PeakC, t.res.PeakH, t.res.PeakPour = v, hour, t.pour
		t.place(s, at)
	}
}

// vertex returns where, and how far above, a parabola through (a, ya), (0, 0) and
// (b, yb) has its top, a < 0 < b.
func vertex(a, b, ya, yb float64) (x, y float64) {
	curve := (yb/b - ya/a) / (b - a)
	if !(curve < 0) {
		return 0, 0
	}
	slope := ya/a - curve*a
	x = min(max(-slope/(2*curve), a), b)
	return x, slope*x + curve*x*x
}

// between returns how much warmer than its cell the top of a parabola through a cell and
// the poured ones over and under it is.
func (t *tracker) between(s *stepper, at int) float64 {
	k := at / s.nx % s.nz
	if k == 0 || k+1 == s.nz || s.Mass[at-s.nx] == 0 || s.Mass[at+s.nx] == 0 {
		return 0
	}
	mid := func(k int) float64 { return (s.zMM[k] + s.zMM[k+1]) / 2 }
	v := s.TempNext
	_, y := vertex(mid(k-1)-mid(k), mid(k+1)-mid(k), float64(v[at-s.nx]-v[at]), float64(v[at+s.nx]-v[at]))
	return y
}

func (t *tracker) place(s *stepper, at int) {
	i, k, j := at%s.nx, at/s.nx%s.nz, at/s.nx/s.nz
	t.res.PeakX = t.res.OffXMM + (float64(i)+0.5)*t.o.DXMM
	t.res.PeakY = t.res.OffYMM + (float64(j-1)+0.5)*t.o.DXMM
	t.res.PeakZ = (s.zMM[k] + s.zMM[k+1]) / 2
	for n, p := range t.b.c.Pours[:t.pour+1] {
		if p.TopMM <= s.zMM[k]+hair {
			t.res.PeakPour = n
			break
		}
	}
}

// column follows the surface and the depth of one column.
func (t *tracker) column(s *stepper, n int, hour, dt float64) {
	c := &t.columns[n]
	top := t.top[n]
	a, b := float64(s.Cure[top]), float64(s.CureNext[top])
	passes := func(at *float64, mark float64) {
		if math.IsInf(*at, 1) && b >= mark {
			*at = hour + dt*min(1, max(0, (mark-a)/math.Max(b-a, 1e-12)))
		}
	}
	passes(&c.GelH, gelCure)
	passes(&c.TackyH, tackCure)
	passes(&c.BondsH, bondCure)
	if math.IsInf(c.SetH, 1) && t.all(s, n, t.b.c.Set) {
		c.SetH = hour + dt
	}
	if t.b.c.Smooth != nil && math.IsInf(c.SmoothH, 1) && t.all(s, n, func(a, _ float64) bool { return t.b.c.Smooth(a) }) {
		c.SmoothH = hour + dt
	}
	if hour < t.dayH && hour+dt >= t.dayH {
		least := 1.0
		for at := top; at <= t.bottom[n]; at += int32(s.nx) {
			least = min(least, float64(s.CureNext[at]))
		}
		c.CureADay = least
	}
}

// all reports whether a test holds through the depth of a column.
func (t *tracker) all(s *stepper, n int, test func(a, tempC float64) bool) bool {
	if test == nil {
		return false
	}
	for at := t.top[n]; at <= t.bottom[n]; at += int32(s.nx) {
		if s.Mass[at] > 0 && !test(float64(s.CureNext[at]), float64(s.TempNext[at])+s.refC) {
			return false
		}
	}
	return true
}

// settled reports whether nothing more happens: all is hard and can be sanded, and a day
// has passed.
func (t *tracker) settled(s *stepper, hour float64) bool {
	if hour < t.dayH || t.steps%8 != 0 {
		return false
	}
	for _, c := range t.columns {
		if t.o.Tacky {
			if math.IsInf(c.TackyH, 1) {
				return false
			}
			continue
		}
		if t.o.Rough && !math.IsInf(c.SetH, 1) {
			continue
		}
		if math.IsInf(c.SetH, 1) || (t.b.c.Smooth != nil && math.IsInf(c.SmoothH, 1)) {
			return false
		}
	}
	return t.o.Rough || t.next >= len(t.o.Frames)
}

// frame is the state at a share of the step.
func (t *tracker) frame(s *stepper, hour float64, share float32) Frame {
	f := Frame{Hour: hour, TempC: blank(t.across * (s.ny - 2)), Cure: blank(t.across * (s.ny - 2)), CutC: blank(t.across * s.nz), CutCure: blank(t.across * s.nz)}
	mix := func(a, b float32) float32 { return a + share*(b-a) }
	for n, c := range t.columns {
		hot, least := float32(math.Inf(-1)), float32(1)
		for at := t.top[n]; at <= t.bottom[n]; at += int32(s.nx) {
			if s.Mass[at] == 0 {
				continue
			}
			temp, cure := mix(s.Temp[at], s.TempNext[at])+float32(s.refC), mix(s.Cure[at], s.CureNext[at])
			hot, least = max(hot, temp), min(least, cure)
			if c.J == t.cutJ {
				k := int(at) / s.nx % s.nz
				f.CutC[k*t.across+c.I], f.CutCure[k*t.across+c.I] = temp, cure
			}
		}
		f.TempC[c.J*t.across+c.I], f.Cure[c.J*t.across+c.I] = hot, least
	}
	return f
}

func blank(n int) []float32 {
	out := make([]float32, n)
	for i := range out {
		out[i] = float32(math.NaN())
	}
	return out
}

// result closes the books.
func (t *tracker) result(s *stepper) Result {
	t.close()
	r := t.res
	r.Columns, r.Steps, r.DeepestMM = t.columns, t.steps, t.b.deepestMM
	r.CutYMM = r.OffYMM + (float64(t.cutJ)+0.5)*t.o.DXMM
	n := len(t.columns)
	set, smooth, w := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, c := range t.columns {
		set[i], smooth[i], w[i] = c.SetH, c.SmoothH, c.AreaM2
	}
	r.SetH, r.SmoothH = quantile(set, w, nearlyAll), quantile(smooth, w, nearlyAll)
	return r
}
