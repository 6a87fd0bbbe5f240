package knockout

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A course is one layer in form view while its seams are sought.
type course struct {
	layer  Layer
	shape  geom.Region // true, its polygons by position
	sites  []*site     // one for each polygon of shape; nil where it fits as it is
	splits []split     // beside sites
	seams  [][2]geom.Point
}

// cutting reports whether any outline of the layer must be cut.
func (k *course) cutting() bool {
	return slices.ContainsFunc(k.sites, func(s *site) bool { return s != nil })
}

// courses turns the layers over and prepares those that must be cut.
func (c *computer) courses() []*course {
	var out []*course
	for _, l := range c.in.Layers {
		out = append(out, &course{layer: l, shape: byPosition(c.flip.ToForm(l.Region).Shape())})
	}
	for i, k := range out {
		var above geom.Region
		if i+1 < len(out) {
			above = out[i+1].shape
		}
		k.splits = make([]split, len(k.shape))
		for _, p := range k.shape {
			k.sites = append(k.sites, c.site(p, k.layer, above))
		}
	}
	return out
}

// site prepares p, or returns nil if it fits as it is.
func (c *computer) site(p geom.Polygon, l Layer, above geom.Region) *site {
	if c.room.fits(p.Outer) {
		return nil
	}
	room := c.room
	room.x, room.y = room.x-spareMM, room.y-spareMM
	if room.turns == anyTurn { // pieces lie square on the bed: no angle to set them by
		room.turns = quarters
	}
	s := &site{poly: coarse(p, coarseMM), room: room, smallest: c.in.Making.Smallest.MM(), target: c.target(), riser: l.Depth.MM()}
	region := geom.Region{s.poly}
	s.necks = slices.DeleteFunc(region.NarrowPlaces(neckMM), func(n geom.Narrow) bool { return n.Joins < 2 })
	s.mouths = mouths(s.poly.Outer, c.in.Length.MM(), c.in.Width.MM())
	if len(above) > 0 {
		s.above = geom.NewLocator(above)
	}
	if len(s.poly.Holes) > 0 {
		var holes geom.Region
		for _, h := range s.poly.Holes {
			holes = append(holes, geom.Polygon{Outer: h})
		}
		s.holes, s.holeBox = geom.NewLocator(holes), holes.Box()
	}
	s.root, s.work = &node{poly: s.poly}, &c.work
	return s
}

// target is the distance sought between the lines of seams, so that keys on both still
// leave the stagger.
func (c *computer) target() float64 {
	t := c.in.Making.Stagger.MM()
	switch c.in.Making.Seam {
	case keyed:
		t += c.keyShape().depth()
	case stepped:
		t += 2 * c.stepMM()
	}
	return t
}

// coarse returns p with fewer corners, at most tol mm off, the largest polygon where it
// falls apart.
func coarse(p geom.Polygon, tol float64) geom.Polygon {
	best := p
	area := 0.0
	for _, q := range (geom.Region{p}).Simplify(tol) {
		if a := q.Area(); a > area {
			best, area = q, a
		}
	}
	return best
}

// atSideMM is how near to the box's side foam ends at it. Chosen.
const atSideMM = 0.5

// mouths returns the sides of ring that lie on the sides of a box of l by w mm.
func mouths(ring geom.Ring, l, w float64) [][2]geom.Point {
	var out [][2]geom.Point
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		on := func(u, v, at float64) bool { return math.Abs(u-at) < atSideMM && math.Abs(v-at) < atSideMM }
		if on(a.X, b.X, 0) || on(a.X, b.X, l) || on(a.Y, b.Y, 0) || on(a.Y, b.Y, w) {
			out = append(out, [2]geom.Point{a, b})
		}
	}
	return out
}

// sweeps is how often every layer is sought anew beside what its neighbours have
// become. Chosen: more change nothing in trials.
const sweeps = 3

// arrange seeks the seams of all layers. Each is sought beside those of its
// neighbours, from the base up and from the top down, and again until nothing changes;
// the cheaper of the two is kept.
func arrange(ks []*course) {
	if !slices.ContainsFunc(ks, (*course).cutting) {
		return
	}
	order := make([]int, len(ks))
	for i := range order {
		order[i] = i
	}
	up := settle(ks, order)
	if slices.ContainsFunc(ks, (*course).spent) {
		return
	}
	kept := snapshot(ks)
	clearSplits(ks)
	slices.Reverse(order)
	if settle(ks, order) >= up-1e-9 {
		restore(ks, kept)
	}
}

// settle seeks the layers in order until nothing changes and returns the cost of all.
func settle(ks []*course, order []int) float64 {
	for sweep := range sweeps {
		changed := false
		for _, i := range order {
			if sweep > 0 && ks[i].spent() {
				continue
			}
			changed = ks[i].seek(around(ks, i)) || changed
		}
		if !changed {
			break
		}
	}
	sum := 0.0
	for i, k := range ks {
		for j, s := range k.sites {
			if s != nil {
				s.neighbour = around(ks, i)
				sum += s.worth(k.splits[j])
			}
		}
	}
	return sum
}

// spent reports whether the searches have done their work.
func (k *course) spent() bool {
	return slices.ContainsFunc(k.sites, func(s *site) bool { return s != nil && *s.work >= mostWork })
}

// around returns the seams of the layers above and below the i-th.
func around(ks []*course, i int) [][2]geom.Point {
	var out [][2]geom.Point
	if i > 0 {
		out = append(out, ks[i-1].seams...)
	}
	if i+1 < len(ks) {
		out = append(out, ks[i+1].seams...)
	}
	return out
}

// seek seeks the layer's seams beside others and reports whether they changed.
func (k *course) seek(others [][2]geom.Point) bool {
	changed := false
	for i, s := range k.sites {
		if s == nil || s.room.count(s.poly.Outer.Box()) >= mostPieces {
			continue
		}
		if k.splits[i].cuts != nil && slices.Equal(s.neighbour, others) {
			continue
		}
		s.neighbour = others
		limit := math.Inf(1)
		if k.splits[i].cuts != nil {
			limit = s.worth(k.splits[i]) - 1
		}
		if got, ok := (&search{site: s}).split(s.root, 0, limit); ok {
			k.splits[i], changed = got, true
		}
	}
	k.seams = nil
	for i, s := range k.sites {
		if s != nil {
			_, chords, _ := realise(s.poly, k.splits[i])
			k.seams = append(k.seams, ends2(chords)...)
		}
	}
	return changed
}

// worth weighs a split of the site as its neighbours are now.
func (s *site) worth(sp split) float64 {
	sum := 0.0
	ps := []geom.Polygon{s.poly}
	for _, u := range sp.cuts {
		i := holding(ps, u.at)
		ch := cutAlong(ps[i], u.line, u.at)
		got := part(ps[i], ch)
		sum += perPiece*float64(len(got)-1) + s.pieces(got) + s.cost(ps[i].Rings(), ch)
		for _, c := range ch {
			sum += s.nearSeams(c)
		}
		ps = slices.Replace(ps, i, i+1, got...)
	}
	return sum
}

// realise cuts poly as sp says and returns the pieces and the seams; ok is false where
// a cut misses.
func realise(poly geom.Polygon, sp split) (ps []geom.Polygon, seams []chord, ok bool) {
	ps, ok = []geom.Polygon{poly}, true
	for _, u := range sp.cuts {
		i := holding(ps, u.at)
		ch := cutAlong(ps[i], u.line, u.at)
		if got := part(ps[i], ch); len(got) > 1 {
			ps = slices.Replace(ps, i, i+1, got...)
			seams = append(seams, ch...)
		} else {
			ok = false
		}
	}
	return ps, seams, ok
}

// holding returns which polygon holds p, or is nearest.
func holding(ps []geom.Polygon, p geom.Point) int {
	best, least := 0, math.Inf(1)
	for i, q := range ps {
		if d := (geom.Region{q}).Distance(p); d < least {
			best, least = i, d
		}
	}
	return best
}

func ends2(chords []chord) [][2]geom.Point {
	var out [][2]geom.Point
	for _, c := range chords {
		out = append(out, [2]geom.Point{c.from.at, c.to.at})
	}
	return out
}

func snapshot(ks []*course) []course {
	var out []course
	for _, k := range ks {
		one := *k
		one.splits = slices.Clone(k.splits)
		out = append(out, one)
	}
	return out
}

func restore(ks []*course, kept []course) {
	for i := range ks {
		*ks[i] = kept[i]
	}
}

func clearSplits(ks []*course) {
	for _, k := range ks {
		k.splits, k.seams = make([]split, len(k.shape)), nil
	}
}
