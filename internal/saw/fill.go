package saw

import (
	"cmp"
	"math"
	"slices"
)

// An item is one rectangle to be placed. Sizes hold one kerf.
type item struct {
	w, h  int64
	turns bool
	kind  int32   // equal for equal rectangles
	worth float64 // of having it placed; 0 means its area
}

func (t *item) area() int64 { return t.w * t.h }

// value is what it costs to leave the item out.
func (t *item) value() float64 {
	if t.worth > 0 {
		return t.worth
	}
	return float64(t.w * t.h)
}

// A filler places items into a given set of regions by ruin and recreate: it
// takes some items out, puts what lies outside back in where it fits best, and
// keeps the change or not by simulated annealing on the area left outside, less
// a little for free space that lies in one piece.
// Method: [schrimpf-2000]; insertion at any node of a slicing tree after [fleszar-2013].
type filler struct {
	items   []item
	regions []region
	out     []int32 // items outside
	dice    dice
	kinds   int
	unit    float64 // area of the largest region
	saved   []region
	touched []int32 // indexes of regions saved
	isSaved []bool
	oldOut  []int32
	failed  []bool // by kind, within one recreate
	key     []float64
	cost    float64
	rule    int
	rules   int // orders drawn from: the last ones need worths
}

func newFiller(items []item, regions []region, seed uint64) *filler {
	f := &filler{items: items, dice: dice{seed}, rules: 5, key: make([]float64, len(items))}
	for i := range items {
		f.kinds = max(f.kinds, int(items[i].kind)+1)
		f.out = append(f.out, int32(i))
	}
	f.failed = make([]bool, f.kinds)
	f.setRegions(regions)
	return f
}

func (f *filler) setRegions(regions []region) {
	f.regions = regions
	f.saved = make([]region, len(regions))
	f.isSaved = make([]bool, len(regions))
	f.unit = 1
	for i := range regions {
		f.unit = max(f.unit, float64(regions[i].w)*float64(regions[i].h))
	}
}

// roomWeight is the worth of free space in one piece against area outside.
// Chosen: by trials on random classes.
const roomWeight = 0.02

func (f *filler) evaluate() float64 {
	e := 0.0
	for _, i := range f.out {
		e += f.items[i].value()
	}
	e /= f.unit
	for i := range f.regions {
		x := float64(f.regions[i].free) / f.unit
		e -= roomWeight * x * x
	}
	return e
}

// A spot is a place found for an item.
type spot struct {
	region int
	at     int32
	join   join
	turned bool
	w, h   int64
	score  float64
}

// score ranks a free rectangle whose sides exceed the item's by dx and dy:
// smaller is better.
func (f *filler) score(dx, dy, w, h int64) float64 {
	switch f.rule {
	case 0:
		return float64(min(dx, dy)) + 1e-4*float64(max(dx, dy))
	case 1:
		return float64(dx+w)*float64(dy+h) - float64(w)*float64(h)
	case 2:
		return float64(max(dx, dy))
	}
	return float64(min(dx*h, dy*w))
}

// seek finds the best spot for an item of size w x h in region k.
func (f *filler) seek(k int, w, h int64, turned bool, best *spot) {
	r := &f.regions[k]
	if w > r.freeW || h > r.freeH {
		return
	}
	if r.root < 0 {
		f.propose(best, spot{region: k, at: -1, turned: turned, w: w, h: h}, r.w-w, r.h-h)
		return
	}
	for i := range r.parts {
		p := &r.parts[i]
		if p.join == dead || p.maxW < w || p.maxH < h {
			continue
		}
		above := leaf
		if p.parent >= 0 {
			above = r.parts[p.parent].join
		}
		if dx := p.maxW - p.w - w; dx >= 0 && above != joinX {
			f.propose(best, spot{region: k, at: int32(i), join: joinX, turned: turned, w: w, h: h}, dx, p.maxH-h)
		}
		if dy := p.maxH - p.h - h; dy >= 0 && above != joinY {
			f.propose(best, spot{region: k, at: int32(i), join: joinY, turned: turned, w: w, h: h}, p.maxW-w, dy)
		}
	}
}

func (f *filler) propose(best *spot, s spot, dx, dy int64) {
	s.score = f.score(dx, dy, s.w, s.h)
	if s.score < best.score && f.dice.next()&63 != 0 {
		*best = s
	}
}

// place puts the item where it fits best and reports whether it fits at all.
// With first it takes the first region that has room, in order.
func (f *filler) place(i int32, first bool) bool {
	t := &f.items[i]
	if f.failed[t.kind] {
		return false
	}
	best := spot{score: math.Inf(1)}
	area := t.area()
	for k := range f.regions {
		if r := &f.regions[k]; r.free < area {
			continue
		}
		f.seek(k, t.w, t.h, false, &best)
		if t.turns && t.w != t.h {
			f.seek(k, t.h, t.w, true, &best)
		}
		if first && !math.IsInf(best.score, 1) {
			break
		}
	}
	if math.IsInf(best.score, 1) {
		f.failed[t.kind] = true
		return false
	}
	f.save(best.region)
	f.regions[best.region].insert(best.at, best.join, i, best.turned, best.w, best.h)
	return true
}

// recreate puts back what it can of the items outside, in an order drawn anew.
func (f *filler) recreate() {
	clear(f.failed)
	f.rule = f.dice.below(4)
	f.order()
	first := f.dice.below(3) == 0
	kept := f.out[:0]
	for _, i := range f.out {
		if !f.place(i, first) {
			kept = append(kept, i)
		}
	}
	f.out = kept
}

// order sorts the items outside by one of four sizes, with some noise.
func (f *filler) order() {
	rule, noise := f.dice.below(f.rules), 0.3*f.dice.unit()
	for _, i := range f.out {
		t := &f.items[i]
		var v float64
		switch rule {
		case 0, 1:
			v = float64(t.area())
		case 2:
			v = float64(max(t.w, t.h))
		case 3:
			v = float64(t.w)
		case 4:
			v = float64(t.h)
		case 5:
			v = t.worth
		case 6:
			v = t.worth / float64(t.area())
		case 7:
			v = f.dice.unit()
		}
		f.key[i] = v * (1 + noise*(f.dice.unit()-0.5))
	}
	slices.SortFunc(f.out, func(a, b int32) int { return cmp.Compare(f.key[b], f.key[a]) })
}

// save keeps region k as it is now, to come back to.
func (f *filler) save(k int) {
	if f.isSaved[k] {
		return
	}
	f.isSaved[k] = true
	f.touched = append(f.touched, int32(k))
	f.saved[k].copyFrom(&f.regions[k])
}

func (f *filler) forget() {
	for _, k := range f.touched {
		f.isSaved[k] = false
	}
	f.touched = f.touched[:0]
}

func (f *filler) restore() {
	for _, k := range f.touched {
		f.regions[k], f.saved[k] = f.saved[k], f.regions[k]
	}
	f.out = append(f.out[:0], f.oldOut...)
	f.forget()
}
