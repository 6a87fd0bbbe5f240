package heightmap

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// StepOptions says how the map is cut into steps.
type StepOptions struct {
	Thickness []units.Length // of the steps, from the show face down
	Smooth    units.Length   // cutter radius that outlines are rounded to; 0 leaves them
	Speck     units.Area     // smaller spots and islands are dropped; 0 keeps all
	Tolerance units.Length   // how far an outline may lie from its curve; 0 is 0.05 mm
}

// A Step is one layer of the basin from a map, in the map's coordinates: mm, origin
// in its lower left corner, y up, finished view.
type Step struct {
	From, To units.Length // below the show face
	Level    units.Length // the depth whose contour it follows
	Region   geom.Region
}

// A Report says what the cutting kept and dropped.
type Report struct {
	MapVolume   units.Volume   // under the bilinear surface of the map
	StackVolume units.Volume   // of the steps
	Error       units.Fraction // StackVolume over MapVolume, less 1
	Specks      int            // spots dropped, over all steps
	Islands     int            // islands filled, over all steps
	Dropped     units.Area     // of both
}

// The volume is kept to keepGoal of the map's, and at least to keepLimit; a search
// takes at most keepRounds cuts. Chosen: the limit is what a maker is promised, the
// goal a fifth of it.
const (
	keepGoal   = 0.001
	keepLimit  = 0.005
	keepRounds = 6
)

// farthest is how far from the middle of a step its level may move, as a share of
// the step. Chosen: beyond it a step would follow its own floor or ceiling.
const farthest = 0.45

// defaultTolerance is the chord error of outlines, mm. Chosen: the same as of curves
// in a drawing.
const defaultTolerance = 0.05

// Steps cuts m into steps. Steps below the deepest point of the map are left out,
// with a finding.
func (m Map) Steps(o StepOptions) ([]Step, Report, []finding.Finding) {
	where := finding.Where{File: m.Name}
	if len(o.Thickness) == 0 {
		return []Step{}, Report{}, []finding.Finding{badStep.At(where, "The map has no steps to be cut into.")}
	}
	for i, t := range o.Thickness {
		if !(t > 0) || math.IsInf(float64(t), 1) {
			return []Step{}, Report{}, []finding.Finding{badStep.At(where, "Step %d is %.4g mm thick.", i+1, float64(t))}
		}
	}
	if !(o.Smooth >= 0) || !(o.Speck >= 0) || !(o.Tolerance >= 0) || math.IsInf(float64(o.Smooth), 1) {
		return []Step{}, Report{}, []finding.Finding{badStep.At(where, "Steps rounded to %.4g mm, specks of %.4g mm2.", float64(o.Smooth), float64(o.Speck)).
			Do("Give the cutter radius and the speck area as positive measures.")}
	}
	c := newCutter(m.Depth, o)
	best := c.keepVolume()
	report := Report{
		MapVolume: units.FromMM3(c.target), StackVolume: units.FromMM3(best.volume),
		Specks: best.specks, Islands: best.islands, Dropped: units.Area(best.dropped),
	}
	if c.target > 0 {
		report.Error = units.Fraction(best.volume/c.target - 1)
	}
	return best.steps, report, c.findings(where, best, report)
}

// A cutter cuts one map again and again, with the levels shifted.
type cutter struct {
	opt    StepOptions
	field  grid.Field // of depth; padded beyond the frame where it meets it
	frame  geom.Region
	padded bool
	coarse grid.Field // every few nodes of the field, to see where to go
	target float64    // volume under the map, mm3
	depth  float64    // deepest
}

func newCutter(f grid.Field, o StepOptions) *cutter {
	if o.Tolerance == 0 {
		o.Tolerance = defaultTolerance
	}
	c := &cutter{opt: o, field: f, frame: f.Box().Region(), target: f.Volume()}
	_, c.depth = f.Range()
	c.coarse = thinned(f)
	if o.Smooth > 0 && meetsFrame(f, float64(o.Thickness[0])*(0.5-farthest)) {
		n := int(math.Ceil(3*float64(o.Smooth)/min(f.DX, f.DY))) + 1
		c.field, c.padded = f.Padded(min(n, maxPad)), true
	}
	return c
}

// maxPad bounds how many nodes a map is carried beyond its frame.
const maxPad = 500

// meetsFrame reports whether f is deeper than level anywhere on its frame.
func meetsFrame(f grid.Field, level float64) bool {
	for c := range f.Cols {
		if f.At(c, 0) > level || f.At(c, f.Rows-1) > level {
			return true
		}
	}
	for r := range f.Rows {
		if f.At(0, r) > level || f.At(f.Cols-1, r) > level {
			return true
		}
	}
	return false
}

// coarseNodes is how many nodes a side a map is thinned to for finding its way.
const coarseNodes = 400

func thinned(f grid.Field) grid.Field {
	k := max(1, (max(f.Cols, f.Rows)-1)/coarseNodes)
	if k == 1 {
		return f
	}
	out, err := grid.New((f.Cols-1)/k+1, (f.Rows-1)/k+1, f.DX*float64(k), f.DY*float64(k))
	if err != nil { // a long strip, too narrow to be thinned
		return f
	}
	for r := range out.Rows {
		for col := range out.Cols {
			out.Set(col, r, f.At(col*k, r*k))
		}
	}
	return out
}

// levels returns the depth each step follows with shift s.
func (c *cutter) levels(s float64) []float64 {
	var out []float64
	from := 0.0
	for _, t := range c.opt.Thickness {
		out = append(out, from+(0.5+s)*float64(t))
		from += float64(t)
	}
	return out
}

// rough returns the volume of the unrounded stack over the coarse field, mm3.
func (c *cutter) rough(s float64) float64 {
	sum := 0.0
	for i, level := range c.levels(s) {
		area, _ := c.coarse.Above(level)
		sum += area * float64(c.opt.Thickness[i])
	}
	return sum
}

// roughShift returns the shift at which the rough volume is v, by bisection; the
// volume falls as the shift grows.
func (c *cutter) roughShift(v float64) float64 {
	low, high := -farthest, farthest
	for range 20 {
		mid := (low + high) / 2
		if c.rough(mid) > v {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// keepVolume cuts with the shift that keeps the volume. The rough stack tells how
// volume goes with the shift; each cut tells by how much it is off, which the next
// aim makes good.
func (c *cutter) keepVolume() cut {
	best := cut{volume: math.Inf(1)}
	aim, last := c.target, math.Inf(1)
	for range keepRounds {
		s := c.roughShift(aim)
		if s == last {
			break
		}
		now := c.cut(s)
		if math.Abs(now.volume-c.target) < math.Abs(best.volume-c.target) {
			best = now
		}
		if math.Abs(best.volume-c.target) <= keepGoal*c.target {
			break
		}
		aim, last = aim+c.target-now.volume, s
	}
	return best
}
