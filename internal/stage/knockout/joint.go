package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A joint is a stretch of seam between two pieces of a layer, in form view.
type joint struct {
	a, b        geom.Point
	left, right int // pieces beside it, looking from a to b
	kind        string
	curve       geom.Ring
	keys        int
	why         string // why it is not as asked
}

func (j joint) length() float64 { return j.b.Sub(j.a).Norm() }

// A block is a layer cut into its pieces.
type block struct {
	course *course
	pieces []geom.Region
	joints []joint
	uncut  []geom.Polygon // for which no seam was found
}

// cutUp carries out the splits of a layer on its true outlines.
func (c *computer) cutUp(k *course) *block {
	b := &block{course: k}
	var seams []chord
	var flat []geom.Polygon
	for i, p := range k.shape {
		if k.sites[i] == nil {
			flat = append(flat, p)
			continue
		}
		ps, chords, _ := realise(p, k.splits[i])
		for _, q := range ps {
			if !c.room.fits(q.Outer) {
				b.uncut = append(b.uncut, q)
			}
		}
		flat, seams = append(flat, ps...), append(seams, chords...)
	}
	for _, p := range flat {
		b.pieces = append(b.pieces, geom.Region{p})
	}
	for _, s := range seams {
		b.joints = append(b.joints, b.between(s, seams)...)
	}
	slices.SortStableFunc(b.joints, func(x, y joint) int {
		p, q := x.a.Add(x.b), y.a.Add(y.b)
		return cmp.Or(cmp.Compare(math.Round(p.X), math.Round(q.X)), cmp.Compare(p.Y, q.Y))
	})
	return b
}

// leastJointMM is the shortest seam that counts, mm.
const leastJointMM = 0.01

// between returns the joints along s: one, or more where other seams end on it.
func (b *block) between(s chord, all []chord) []joint {
	p, q := s.from.at, s.to.at
	n := q.Sub(p).Norm()
	u := q.Sub(p).Mul(1 / n)
	at := []float64{0, n}
	for _, o := range all {
		for _, e := range []geom.Point{o.from.at, o.to.at} {
			if t := e.Sub(p).Dot(u); t > leastJointMM && t < n-leastJointMM && math.Abs(e.Sub(p).Cross(u)) < leastJointMM {
				at = append(at, t)
			}
		}
	}
	slices.Sort(at)
	var out []joint
	for i := 1; i < len(at); i++ {
		if at[i]-at[i-1] < leastJointMM {
			continue
		}
		j := joint{a: p.Add(u.Mul(at[i-1])), b: p.Add(u.Mul(at[i])), kind: straight}
		j.curve = geom.Ring{j.a, j.b}
		mid, side := j.a.Add(j.b).Mul(0.5), geom.Point{X: -u.Y, Y: u.X}.Mul(math.Min(0.5, j.length()/4))
		j.left, j.right = b.at(mid.Add(side)), b.at(mid.Sub(side))
		out = append(out, j)
	}
	return out
}

// at returns the piece that holds p, or the nearest.
func (b *block) at(p geom.Point) int {
	best, least := 0, math.Inf(1)
	for i, r := range b.pieces {
		if d := r.Distance(p); d < least {
			best, least = i, d
		}
	}
	return best
}

// turned returns the joint seen from its other end.
func (j joint) turned() joint {
	j.a, j.b, j.left, j.right = j.b, j.a, j.right, j.left
	j.curve = j.curve.Reversed()
	return j
}

// shapeJoints gives the layer's joints their keys or steps.
func (c *computer) shapeJoints(b *block, others [][2]geom.Point, above *geom.Locator) {
	if c.in.Making.Seam == straight {
		return
	}
	f := &fitter{c: c, b: b, wall: geom.NewLocator(b.course.shape), others: others, above: above}
	for i := range b.joints {
		f.own = i
		j := b.joints[i]
		if c.in.Making.Seam == keyed {
			b.joints[i] = f.keyed(j)
		} else {
			b.joints[i] = f.stepped(j)
		}
	}
}

// A fitter tries keys and steps on a joint.
type fitter struct {
	c      *computer
	b      *block
	own    int
	wall   *geom.Locator // the layer's outline
	others [][2]geom.Point
	above  *geom.Locator
}

// Chosen: room round keys, and one key for so much seam.
const (
	keyEdgeMM  = 8.0
	keyPitchMM = 160.0
	keyTryMM   = 4.0
)

// keyed returns j with as many keys as fit, on the side where more do; the key is part
// of the piece to the joint's right.
func (f *fitter) keyed(j joint) joint {
	best, places := j, []float64(nil)
	gap := -1.0
	for _, t := range []joint{j, j.turned()} {
		at := f.slots(t)
		if len(at) == 0 || !f.apply(t, at, false) {
			continue
		}
		if d := f.clear(t, at); len(at) > len(places) || len(at) == len(places) && d > gap {
			best, places, gap = t, at, d
		}
	}
	if len(places) == 0 {
		j.why = "no key fits here, so it is straight"
		return j
	}
	f.apply(best, places, true)
	best.kind, best.keys = keyed, len(places)
	best.curve = f.keyCurve(best, places)
	return best
}

// slots returns where along j keys fit to its left.
func (f *fitter) slots(j joint) []float64 {
	k := f.c.keyShape()
	end := k.half() + keyEdgeMM
	free := j.length() - 2*end
	if free < 0 {
		return nil
	}
	n := int(math.Max(1, math.Min(math.Round(j.length()/keyPitchMM), math.Floor(free/(2*k.half()+keyEdgeMM))+1)))
	var out []float64
	for i := range n {
		lo := end + free*float64(i)/float64(n)
		hi := end + free*float64(i+1)/float64(n)
		if i > 0 {
			lo = math.Max(lo, last(out, -1e9)+2*k.half()+keyEdgeMM)
		}
		if at, ok := f.slot(j, lo, hi); ok {
			out = append(out, at)
		}
	}
	return out
}

func last(xs []float64, none float64) float64 {
	if len(xs) == 0 {
		return none
	}
	return xs[len(xs)-1]
}

// slot returns the place between lo and hi for a key, the nearest to the middle that
// does not lie across an edge of the layer above, if any does not.
func (f *fitter) slot(j joint, lo, hi float64) (float64, bool) {
	best, least := 0.0, math.Inf(1)
	n := math.Max(1, math.Ceil((hi-lo)/keyTryMM))
	for i := 0.0; i <= n && hi >= lo; i++ {
		at := lo + (hi-lo)*i/n
		ok, across := f.free(j, at)
		cost := math.Abs(at - (lo+hi)/2)
		if across {
			cost += 1e6
		}
		if ok && cost < least {
			best, least = at, cost
		}
	}
	return best, !math.IsInf(least, 1)
}

// free reports whether a key at t along j stays inside its layer and off other
// seams, and whether an edge of the layer above crosses it.
func (f *fitter) free(j joint, t float64) (ok, across bool) {
	in, out := 0, 0
	for _, p := range f.key(j, t) {
		if f.wall.Boundary(p) < keyEdgeMM || !f.wall.Inside(p) {
			return false, false
		}
		for i, o := range f.b.joints {
			if i != f.own && distanceToLine(p, o.curve) < keyEdgeMM {
				return false, false
			}
		}
		if f.above != nil && f.above.Inside(p) {
			in++
		} else {
			out++
		}
	}
	return true, in > 0 && out > 0
}

// key returns the outline of a key at t along j.
func (f *fitter) key(j joint, t float64) geom.Ring {
	u := j.b.Sub(j.a).Mul(1 / j.length())
	return f.c.keyShape().outline().Map(frame{j.a.Add(u.Mul(t)), u}.at)
}

// clear returns how far keys at places keep from the seams of neighbouring layers.
func (f *fitter) clear(j joint, places []float64) float64 {
	least := math.Inf(1)
	for _, t := range places {
		for _, p := range f.key(j, t) {
			for _, o := range f.others {
				least = math.Min(least, distanceTo(p, o[0], o[1]))
			}
		}
	}
	return least
}

// apply adds keys at places along j to the piece on its right, makes their sockets in
// the piece on its left, and reports whether both remain whole and fit.
func (f *fitter) apply(j joint, places []float64, keep bool) bool {
	var keys geom.Region
	u := j.b.Sub(j.a).Mul(1 / j.length())
	half := f.c.keyShape().half()
	for _, t := range places {
		ring := f.key(j, t)
		fr := frame{j.a.Add(u.Mul(t)), u}
		ring = append(ring, fr.at(geom.Point{X: half, Y: -rootMM}), fr.at(geom.Point{X: -half, Y: -rootMM}))
		keys = geom.Union(keys, geom.Build([]geom.Ring{ring}, geom.NonZero))
	}
	return f.swap(j, keys, keep)
}

// rootMM is how far a key's outline reaches back into its own piece, mm.
const rootMM = 1

// swap gives the part of the left piece under add to the right one, less the clearance
// round it.
func (f *fitter) swap(j joint, add geom.Region, keep bool) bool {
	left, right := f.b.pieces[j.left], f.b.pieces[j.right]
	grown := geom.Union(right, geom.Intersect(add, geom.Union(left, right)))
	less := geom.Subtract(left, geom.Offset(add, f.c.in.Making.Clearance.MM(), arcTolMM/2))
	grown, less = dropCrumbs(grown), dropCrumbs(less)
	if len(grown) != 1 || len(less) != 1 || len(grown[0].Holes) != len(right[0].Holes) || len(less[0].Holes) != len(left[0].Holes) || !f.c.room.fits(grown[0].Outer) || !f.c.room.fits(less[0].Outer) {
		return false
	}
	if keep {
		f.b.pieces[j.left], f.b.pieces[j.right] = less, grown
	}
	return true
}

// crumbMM2 is the area of what rounding leaves, mm2.
const crumbMM2 = 1.0

// dropCrumbs returns r without polygons and holes of no size.
func dropCrumbs(r geom.Region) geom.Region {
	var out geom.Region
	for _, p := range r {
		if p.Area() < crumbMM2 {
			continue
		}
		q := geom.Polygon{Outer: p.Outer}
		for _, h := range p.Holes {
			if math.Abs(h.Area()) >= crumbMM2/10 {
				q.Holes = append(q.Holes, h)
			}
		}
		out = append(out, q)
	}
	return out
}

// keyCurve returns the line of j with its keys.
func (f *fitter) keyCurve(j joint, places []float64) geom.Ring {
	out := geom.Ring{j.a}
	for _, t := range places {
		out = append(out, f.key(j, t)...)
	}
	return append(out, j.b)
}

// stepped returns j with a step in its middle, to the side where both pieces remain
// whole and the seam keeps further from others.
func (f *fitter) stepped(j joint) joint {
	s := f.c.stepMM()
	best, gap := j, -1.0
	if j.length() > 3*s {
		for _, t := range []joint{j, j.turned()} {
			curve, add := f.step(t, s)
			if !f.swap(t, add, false) {
				continue
			}
			least := math.Inf(1)
			for _, o := range f.others {
				least = math.Min(least, lineGap(curve, geom.Ring{o[0], o[1]}))
			}
			if least > gap {
				best, gap = t, least
				best.curve, best.kind = curve, stepped
			}
		}
	}
	if best.kind != stepped {
		j.why = "no step fits here, so it is straight"
		return j
	}
	_, add := f.step(best, s)
	f.swap(best, add, true)
	best.keys = 1
	return best
}

// step returns the line of j with a step of s to its left in the middle, and what
// changes hands.
func (f *fitter) step(j joint, s float64) (curve geom.Ring, add geom.Region) {
	n := j.length()
	u := j.b.Sub(j.a).Mul(1 / n)
	fr := frame{j.a, u}
	line := stepLine(s).Map(func(p geom.Point) geom.Point { return geom.Point{X: p.X + (n-s)/2, Y: p.Y} })
	far := n + s
	for i := range f.b.course.shape { // the stepped line goes on to the outline
		b := f.b.course.shape[i].Outer.Box()
		far = math.Max(far, b.Width()+b.Height())
	}
	ring := append(slices.Clone(line), geom.Point{X: far, Y: s}, geom.Point{X: far, Y: -rootMM}, geom.Point{X: line[0].X, Y: -rootMM})
	add = geom.Intersect(geom.Build([]geom.Ring{ring.Map(fr.at)}, geom.NonZero), f.b.pieces[j.left])
	add = beside(add, fr.at(geom.Point{X: n/2 + s, Y: s / 4}))
	end := f.endOf(add, fr, s, n)
	curve = append(geom.Ring{j.a}, line.Map(fr.at)...)
	return append(curve, end), add
}

// beside keeps the polygon of r at p.
func beside(r geom.Region, p geom.Point) geom.Region {
	for _, q := range r {
		if (geom.Region{q}).Contains(p) {
			return geom.Region{q}
		}
	}
	return nil
}

// endOf returns where the stepped line leaves the foam.
func (f *fitter) endOf(add geom.Region, fr frame, s, n float64) geom.Point {
	best, far := fr.at(geom.Point{X: n, Y: s}), -1.0
	for _, ring := range add.Rings() {
		for _, p := range ring {
			d := p.Sub(fr.o)
			if y := fr.u.Cross(d); math.Abs(y-s) < 0.01 && d.Dot(fr.u) > far {
				best, far = p, d.Dot(fr.u)
			}
		}
	}
	return best
}

// distanceToLine returns the distance from p to an open line.
func distanceToLine(p geom.Point, l geom.Ring) float64 {
	least := math.Inf(1)
	for i := 1; i < len(l); i++ {
		least = math.Min(least, distanceTo(p, l[i-1], l[i]))
	}
	return least
}

// lineGap returns the least distance between two open lines; 0 where they cross.
func lineGap(a, b geom.Ring) float64 {
	least := math.Inf(1)
	for i := 1; i < len(a); i++ {
		for k := 1; k < len(b); k++ {
			least = math.Min(least, apart(a[i-1], a[i], b[k-1], b[k]))
		}
	}
	return least
}
