package saw

import (
	"cmp"
	"slices"
)

// A slab is a part of a sheet in ticks, at its true size without kerf.
type slab struct {
	x, y, w, h int64
	kind       Kind // empty: a region still to be filled, number piece
	piece      int32
	turned     bool
	axis       Axis
	at         int64
	trim       bool
	a, b       *slab
}

// divide cuts s at distance at along axis; a half without size is nil.
func (s *slab) divide(axis Axis, at, kerf int64) (a, b *slab) {
	s.kind, s.axis, s.at = KindCut, axis, at
	if axis == DivideX {
		s.a = slabOf(s.x, s.y, at, s.h)
		s.b = slabOf(s.x+at+kerf, s.y, s.w-at-kerf, s.h)
	} else {
		s.a = slabOf(s.x, s.y, s.w, at)
		s.b = slabOf(s.x, s.y+at+kerf, s.w, s.h-at-kerf)
	}
	return s.a, s.b
}

func slabOf(x, y, w, h int64) *slab {
	if w <= 0 || h <= 0 {
		return nil
	}
	return &slab{x: x, y: y, w: w, h: h, kind: KindWaste, piece: -1}
}

// walk visits s and all under it, a before b.
func (s *slab) walk(visit func(*slab)) {
	if s == nil {
		return
	}
	visit(s)
	s.a.walk(visit)
	s.b.walk(visit)
}

// A layer turns the slicing tree of a region into cuts: it decides where the
// slack of every part is cut off, so that what is left over is large.
type layer struct {
	r      *region
	kerf   int64
	useful func(w, h int64) bool
	frugal bool // too many parts to weigh every choice
	memo   map[layKey]choice
	dummy  int32 // an item that stands for an offcut, -1 for none
}

type layKey struct {
	part int32
	w, h int64
}

// A choice is what to do first with a part, and what that is worth: the sum of
// the squares of the areas of useful offcuts, so that few large ones win.
// Of equal worth the one with fewer cuts is taken.
type choice struct {
	act   act
	worth float64
	cuts  int
}

type act uint8

const (
	actDone  act = iota // the part fills its slab
	actSplit            // separate the halves, slack to b
	actGive             // separate the halves, slack to a
	actX                // cut off slack along X
	actY                // cut off slack along Y
)

// manyParts is where a layer stops weighing choices: the number of choices
// grows with the square of the parts. Chosen.
const manyParts = 160

func newLayer(r *region, kerf int64, useful func(w, h int64) bool) *layer {
	return &layer{r: r, kerf: kerf, useful: useful, frugal: len(r.parts)-len(r.spare) > manyParts, memo: map[layKey]choice{}, dummy: -1}
}

func (l *layer) worth(w, h int64) float64 {
	if w <= 0 || h <= 0 || !l.useful(w, h) {
		return 0
	}
	a := mm(w) * mm(h)
	return a * a
}

// net returns the true size of what lies in part i.
func (l *layer) net(i int32) (w, h int64) { return l.r.parts[i].w - l.kerf, l.r.parts[i].h - l.kerf }

// choose returns the best first act for part i in a slab of w x h.
func (l *layer) choose(i int32, w, h int64) choice {
	key := layKey{i, w, h}
	if c, ok := l.memo[key]; ok {
		return c
	}
	best := choice{worth: -1}
	for a := actDone; a <= actY; a++ {
		c, ok := l.try(a, i, w, h)
		if ok && (c.worth > best.worth || c.worth == best.worth && c.cuts < best.cuts) {
			best = c
			if l.frugal {
				break
			}
		}
	}
	l.memo[key] = best
	return best
}

// try returns what comes of an act, and whether it can be done.
func (l *layer) try(a act, i int32, w, h int64) (choice, bool) {
	p := &l.r.parts[i]
	pw, ph := l.net(i)
	switch {
	case a == actDone && p.join == leaf && p.item == l.dummy:
		return choice{act: a, worth: l.worth(w, h)}, true
	case a == actDone:
		return choice{act: a}, p.join == leaf && w == pw && h == ph
	case a == actX && w > pw:
		c := l.choose(i, pw, h)
		return choice{a, l.worth(w-pw-l.kerf, h) + c.worth, c.cuts + 1}, true
	case a == actY && h > ph:
		c := l.choose(i, w, ph)
		return choice{a, l.worth(w, h-ph-l.kerf) + c.worth, c.cuts + 1}, true
	case (a == actSplit || a == actGive) && p.join != leaf:
		aw, ah, bw, bh := l.halves(a, i, w, h)
		if a == actGive && (p.join == joinX && w == pw || p.join == joinY && h == ph) {
			return choice{}, false
		}
		c, d := l.choose(p.a, aw, ah), l.choose(p.b, bw, bh)
		return choice{a, c.worth + d.worth, c.cuts + d.cuts + 1}, true
	}
	return choice{}, false
}

// halves returns the sizes of the slabs of both halves of part i.
func (l *layer) halves(a act, i int32, w, h int64) (aw, ah, bw, bh int64) {
	p := &l.r.parts[i]
	aw, ah = l.net(p.a)
	bw, bh = l.net(p.b)
	if p.join == joinX {
		if a == actGive {
			return w - bw - l.kerf, h, bw, h
		}
		return aw, h, w - aw - l.kerf, h
	}
	if a == actGive {
		return w, h - bh - l.kerf, w, bh
	}
	return w, ah, w, h - ah - l.kerf
}

// lay cuts slab s into what lies in part i.
func (l *layer) lay(s *slab, i int32) {
	p := &l.r.parts[i]
	pw, ph := l.net(i)
	switch c := l.choose(i, s.w, s.h); c.act {
	case actX:
		a, b := s.divide(DivideX, pw, l.kerf)
		l.rest(b)
		l.lay(a, i)
	case actY:
		a, b := s.divide(DivideY, ph, l.kerf)
		l.rest(b)
		l.lay(a, i)
	case actDone:
		s.kind, s.piece, s.turned = KindPiece, p.item, p.turned
		if p.item == l.dummy {
			s.piece, s.turned = -1, false
			l.rest(s)
		}
	default:
		aw, ah, _, _ := l.halves(c.act, i, s.w, s.h)
		axis, at := DivideX, aw
		if p.join == joinY {
			axis, at = DivideY, ah
		}
		a, b := s.divide(axis, at, l.kerf)
		l.lay(a, p.a)
		l.lay(b, p.b)
	}
}

func (l *layer) rest(s *slab) {
	if s == nil {
		return
	}
	s.kind = KindWaste
	if l.useful(s.w, s.h) {
		s.kind = KindOffcut
	}
}

// fill cuts slab s into the pieces of the whole region.
func (l *layer) fill(s *slab) {
	if l.r.root < 0 {
		l.rest(s)
		return
	}
	l.r.peel(l.r.root)
	l.lay(s, l.r.root)
}

// peel rebuilds every row of parts under i so that the first cut takes off the
// first part of the row, the next the second and so on, equal parts after each
// other: then the fence stands at the sizes of the parts and not of their sums.
// Boxes stay as they are.
func (r *region) peel(i int32) {
	p := r.parts[i]
	if p.join == leaf {
		return
	}
	row := r.row(i, p.join, nil)
	for _, c := range row {
		r.peel(c)
	}
	slices.SortStableFunc(row, func(a, b int32) int {
		x, y := &r.parts[a], &r.parts[b]
		if p.join == joinY {
			return cmp.Or(cmp.Compare(y.w, x.w), cmp.Compare(y.h, x.h))
		}
		return cmp.Or(cmp.Compare(y.h, x.h), cmp.Compare(y.w, x.w))
	})
	r.chain(i, row)
}

// row returns the parts that stand in one row under i, and frees the joins
// between them but i itself.
func (r *region) row(i int32, j join, out []int32) []int32 {
	p := r.parts[i]
	for _, c := range []int32{p.a, p.b} {
		if r.parts[c].join == j {
			out = r.row(c, j, out)
			r.drop(c)
		} else {
			out = append(out, c)
		}
	}
	return out
}

// chain makes i the join of the first of the row with the join of the rest.
func (r *region) chain(i int32, row []int32) {
	j := r.parts[i].join
	rest := row[1]
	if len(row) > 2 {
		rest = r.add(part{join: j, item: -1})
		r.chain(rest, row[1:])
	}
	p := &r.parts[i]
	p.a, p.b = row[0], rest
	r.parts[p.a].parent, r.parts[p.b].parent = i, i
	a, b := &r.parts[p.a], &r.parts[p.b]
	if j == joinX {
		p.w, p.h = a.w+b.w, max(a.h, b.h)
	} else {
		p.w, p.h = max(a.w, b.w), a.h+b.h
	}
}
