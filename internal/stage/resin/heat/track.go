package heat

import "math"

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
