package toolpath

import (
	"math"

	"pourwright/internal/geom"
)

// flattenMM is the chord error of moved outlines, mm. Chosen: with the arc tolerance
// it stays below what foam shows.
const flattenMM = 0.004

// Kinds of loops.
const (
	outlineLoop = "outline"
	holeLoop    = "hole"
	clearLoop   = "clear" // within a hole, so that no loose plug is left
	drillLoop   = "drill"
)

// A loop is one closed way of the cutter round a part or in a hole; of a drilled hole
// the path is empty and at is its middle.
type loop struct {
	kind   string
	part   int // index in the sheet
	ring   geom.Ring
	path   path
	at     geom.Point
	after  int // index of a loop that must come later: the hole or outline round this one; -1: none
	tabs   []span
	entry  float64 // mm along the path
	placed []Tab
}

// A span is a stretch of a path, mm from its beginning; to may pass the end.
type span struct{ from, to float64 }

func (l loop) drilled() bool { return l.kind == drillLoop }

// loopsOf returns the paths that cut shape: its outline moved out by radius.
//
// Rings of the moved region that turn right are holes, among them bays whose mouth
// the cutter does not pass; a hole that vanishes is drilled where the cutter fits.
func loopsOf(part int, shape geom.Region, radius, arcTol float64) []loop {
	tol := math.Min(flattenMM, arcTol/2)
	var out []loop
	for _, p := range geom.Offset(shape, radius, tol) {
		for k, ring := range p.Rings() {
			kind := outlineLoop
			if k > 0 {
				kind = holeLoop
			}
			out = append(out, loop{kind: kind, part: part, ring: ring, path: fit(ring, arcTol), after: -1})
			if k > 0 {
				out = append(out, clearing(part, ring, radius, arcTol, tol)...)
			}
		}
	}
	return append(out, drills(part, shape, radius, out)...)
}

// Chosen.
const (
	plugMM    = 12.0 // a plug narrower than this plus the cutter may be thrown about: it is cleared
	stepShare = 0.45 // of the cutter's diameter, between the ways of clearing
	drillMM   = 0.1  // a hole this much narrower than the cutter is still drilled
)

// clearing returns the ways within a hole that leave no plug, empty where the plug is
// large enough to lift out.
func clearing(part int, ring geom.Ring, radius, arcTol, tol float64) []loop {
	hole := geom.Region{{Outer: ring.Reversed()}}
	if _, deep := hole.Pole(0.05); deep > radius+plugMM/2 || deep <= radius {
		return nil
	}
	var out []loop
	for k := 1; ; k++ {
		inner := geom.Offset(hole, -float64(k)*2*radius*stepShare, tol)
		if len(inner) == 0 {
			return out
		}
		for _, p := range inner {
			way := p.Outer.Reversed()
			out = append(out, loop{kind: clearLoop, part: part, ring: way, path: fit(way, arcTol), after: -1})
		}
	}
}

// drills returns a plunge for each hole of shape that no loop runs in and the cutter
// fits.
func drills(part int, shape geom.Region, radius float64, loops []loop) []loop {
	var out []loop
	for _, p := range shape {
		for _, h := range p.Holes {
			hole := geom.Region{{Outer: h.Reversed()}}
			if entered(hole, loops) {
				continue
			}
			if at, deep := hole.Pole(0.01); deep >= radius-drillMM/2 {
				out = append(out, loop{kind: drillLoop, part: part, at: at, after: -1})
			}
		}
	}
	return out
}

// entered reports whether a path of holes begins inside hole.
func entered(hole geom.Region, loops []loop) bool {
	box := hole.Box()
	for _, l := range loops {
		if l.kind != holeLoop {
			continue
		}
		p := l.ring[0]
		if p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y && hole.Contains(p) {
			return true
		}
	}
	return false
}

// nest tells each loop which one must come after it: the smallest hole or outline
// round it.
func nest(loops []loop) {
	type outer struct {
		region geom.Region
		box    geom.Box
		area   float64
	}
	around := make([]outer, len(loops))
	for i, l := range loops {
		if l.drilled() {
			continue
		}
		r := l.ring
		if r.Area() < 0 {
			r = r.Reversed()
		}
		around[i] = outer{geom.Region{{Outer: r}}, r.Box(), r.Area()}
	}
	for i := range loops {
		p, own := loops[i].at, 0.0
		if !loops[i].drilled() {
			p, own = loops[i].ring[0], around[i].area
		}
		least := math.Inf(1)
		for j, o := range around {
			if j == i || o.area <= own || o.area >= least || p.X < o.box.Min.X || p.X > o.box.Max.X || p.Y < o.box.Min.Y || p.Y > o.box.Max.Y {
				continue
			}
			if o.region.Contains(p) {
				loops[i].after, least = j, o.area
			}
		}
	}
}

// orient turns every path to the wanted side: climb keeps the part on the cutter's
// right, so that outlines run clockwise and holes counter-clockwise.
func orient(loops []loop, against bool) {
	for i, l := range loops {
		if !against && !l.drilled() {
			loops[i].path = l.path.reversed()
		}
	}
}
