package saw

// A join says how two parts are put together: beside each other along X, along
// Y, or not at all.
type join uint8

const (
	leaf join = iota
	joinX
	joinY
	dead // a slot not in use
)

// A part is a node of a slicing tree: an item, or two parts side by side. Such a
// tree is a guillotine pattern read from its pieces up. Sizes hold one kerf.
type part struct {
	parent, a, b int32 // -1 for none
	item         int32
	join         join
	turned       bool
	w, h         int64 // the box of what lies in it
	maxW, maxH   int64 // how far that box may grow while all else stays as it is
}

// A region is a rectangle to be filled, with the slicing tree in it.
type region struct {
	w, h  int64
	root  int32 // -1 when empty
	parts []part
	spare []int32
	area  int64 // of the items
	free  int64 // area of the largest rectangle that can still be added
	freeW int64 // widest and highest rectangle that can still be added
	freeH int64
}

func newRegion(w, h int64) region {
	return region{w: w, h: h, root: -1, free: w * h, freeW: w, freeH: h}
}

// copyFrom makes r a copy of o and keeps the memory of r.
func (r *region) copyFrom(o *region) {
	parts, spare := append(r.parts[:0], o.parts...), append(r.spare[:0], o.spare...)
	*r = *o
	r.parts, r.spare = parts, spare
}

func (r *region) clear() {
	*r = region{w: r.w, h: r.h, root: -1, free: r.w * r.h, freeW: r.w, freeH: r.h, parts: r.parts[:0], spare: r.spare[:0]}
}

func (r *region) add(p part) int32 {
	if n := len(r.spare); n > 0 {
		i := r.spare[n-1]
		r.spare = r.spare[:n-1]
		r.parts[i] = p
		return i
	}
	r.parts = append(r.parts, p)
	return int32(len(r.parts) - 1)
}

func (r *region) drop(i int32) {
	r.parts[i].join = dead
	r.spare = append(r.spare, i)
}

// insert puts an item of size w x h beside part at, or into the empty region
// where at is -1. The caller has seen that it fits.
func (r *region) insert(at int32, j join, item int32, turned bool, w, h int64) {
	l := r.add(part{parent: -1, a: -1, b: -1, item: item, join: leaf, turned: turned, w: w, h: h})
	r.area += w * h
	if at < 0 {
		r.root = l
		r.refresh()
		return
	}
	up := r.parts[at].parent
	p := r.add(part{parent: up, a: at, b: l, item: -1, join: j})
	r.parts[at].parent, r.parts[l].parent = p, p
	r.replace(up, at, p)
	r.resize(p)
	r.refresh()
}

// replace makes child now stand where child old stood under up.
func (r *region) replace(up, old, now int32) {
	switch {
	case up < 0:
		r.root = now
	case r.parts[up].a == old:
		r.parts[up].a = now
	default:
		r.parts[up].b = now
	}
}

// remove takes the leaf out. The caller refreshes when it has taken out all.
func (r *region) remove(l int32) {
	p := &r.parts[l]
	r.area -= p.w * p.h
	up := p.parent
	r.drop(l)
	if up < 0 {
		r.root = -1
		return
	}
	join := &r.parts[up]
	other := join.a
	if other == l {
		other = join.b
	}
	top := join.parent
	r.parts[other].parent = top
	r.replace(top, up, other)
	r.drop(up)
	if top >= 0 {
		r.resize(top)
	}
}

// resize brings the boxes from part i up to the root up to date.
func (r *region) resize(i int32) {
	for ; i >= 0; i = r.parts[i].parent {
		p := &r.parts[i]
		a, b := &r.parts[p.a], &r.parts[p.b]
		if p.join == joinX {
			p.w, p.h = a.w+b.w, max(a.h, b.h)
		} else {
			p.w, p.h = max(a.w, b.w), a.h+b.h
		}
	}
}

// refresh brings the room to grow of every part up to date, and with it the
// largest rectangle that can still be added.
func (r *region) refresh() {
	r.free, r.freeW, r.freeH = 0, 0, 0
	if r.root < 0 {
		r.free, r.freeW, r.freeH = r.w*r.h, r.w, r.h
		return
	}
	r.grow(r.root, r.w, r.h)
}

func (r *region) grow(i int32, maxW, maxH int64) {
	p := &r.parts[i]
	p.maxW, p.maxH = maxW, maxH
	r.offer(maxW-p.w, maxH)
	r.offer(maxW, maxH-p.h)
	switch p.join {
	case joinX:
		slack := maxW - p.w
		r.grow(p.a, slack+r.parts[p.a].w, maxH)
		r.grow(p.b, slack+r.parts[p.b].w, maxH)
	case joinY:
		slack := maxH - p.h
		r.grow(p.a, maxW, slack+r.parts[p.a].h)
		r.grow(p.b, maxW, slack+r.parts[p.b].h)
	}
}

func (r *region) offer(w, h int64) {
	if w <= 0 || h <= 0 {
		return
	}
	r.free, r.freeW, r.freeH = max(r.free, w*h), max(r.freeW, w), max(r.freeH, h)
}
