package saw

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A pass is a cut waiting for its turn.
type pass struct {
	slab  *slab
	unit  int
	fence int64 // ticks
	side  string
	bad   bool // cannot be held
	next  []int
	first bool // its part lies ready from the start
}

// An ordering is the cuts of a draft in the order of the saw.
type ordering struct {
	passes   []pass
	sequence []int
	settings []int // where in the sequence a new setting begins
	unheld   int
}

// order puts the square cuts in an order in which the fence moves little: at a
// setting it makes every cut that is or becomes ready, and goes next to the
// setting that leaves none behind, the widest of those.
func (s *shop) order(d *draft) ordering {
	var o ordering
	for u, tree := range d.trees {
		if tree != nil {
			s.collect(&o, tree, u, true)
		}
	}
	o.schedule()
	for i := range o.passes {
		if o.passes[i].bad {
			o.unheld++
		}
	}
	return o
}

func (s *shop) collect(o *ordering, p *slab, unit int, first bool) []int {
	if p == nil || p.kind != KindCut {
		return nil
	}
	i := len(o.passes)
	fence, side, bad := s.fence(p)
	o.passes = append(o.passes, pass{slab: p, unit: unit, fence: fence, side: side, bad: bad, first: first})
	next := append(s.collect(o, p.a, unit, false), s.collect(o, p.b, unit, false)...)
	o.passes[i].next = next
	return []int{i}
}

// fence returns the size of the half that goes against the fence: the one that is
// needed, unless it is too narrow to be held and the other is not.
func (s *shop) fence(p *slab) (int64, string, bool) {
	size, half := p.w, func(q *slab) int64 { return q.w }
	if p.axis == DivideY {
		size, half = p.h, func(q *slab) int64 { return q.h }
	}
	a, b := p.at, size-p.at-s.kerf
	if p.b != nil {
		b = half(p.b)
	}
	least := ticks(s.p.NarrowestStripMM)
	wanted := func(q *slab) bool { return q != nil && q.kind != KindWaste && q.kind != KindOffcut }
	if (!wanted(p.a) && wanted(p.b) || a < least) && b >= least && b > 0 {
		return b, "b", false
	}
	if a <= 0 {
		return max(b, 0), "b", b < least
	}
	return a, "a", a < least
}

func (o *ordering) schedule() {
	ready := map[int64][]int{}
	waiting := map[int64]int{} // cuts of a setting that are not made yet
	for i := range o.passes {
		waiting[o.passes[i].fence]++
		if o.passes[i].first {
			ready[o.passes[i].fence] = append(ready[o.passes[i].fence], i)
		}
	}
	for len(o.sequence) < len(o.passes) {
		fence := o.pick(ready, waiting)
		o.settings = append(o.settings, len(o.sequence))
		for len(ready[fence]) > 0 {
			i := ready[fence][0]
			ready[fence] = ready[fence][1:]
			o.sequence = append(o.sequence, i)
			waiting[fence]--
			for _, n := range o.passes[i].next {
				ready[o.passes[n].fence] = append(ready[o.passes[n].fence], n)
			}
		}
		delete(ready, fence)
	}
}

// pick returns the next fence.
func (o *ordering) pick(ready map[int64][]int, waiting map[int64]int) int64 {
	best, bestLeft, bestMade := int64(-1), 0, 0
	for fence := range ready {
		made := o.reach(ready[fence], fence)
		left := waiting[fence] - made
		if left > 0 {
			left = 1
		}
		c := cmp.Or(cmp.Compare(left, bestLeft), cmp.Compare(fence, best)*-1, bestMade-made)
		if best < 0 || c < 0 {
			best, bestLeft, bestMade = fence, left, made
		}
	}
	return best
}

// reach counts the cuts at this fence that become ready without another.
func (o *ordering) reach(from []int, fence int64) int {
	n := 0
	for _, i := range from {
		n++
		for _, j := range o.passes[i].next {
			if o.passes[j].fence == fence {
				n += o.reach([]int{j}, fence)
			}
		}
	}
	return n
}

// A writer turns the best draft into the plan: it names parts and offcuts and
// numbers the cuts.
type writer struct {
	s     *shop
	plan  *SheetPlan
	nodes map[*slab]*Node
	name  map[*slab]string
	ids   []string // of units
	parts []int    // named so far, by unit
	left  []int    // offcuts named so far, by unit
}

func (s *shop) write(d *draft, plan *SheetPlan) {
	w := writer{s: s, plan: plan, nodes: map[*slab]*Node{}, name: map[*slab]string{}, ids: make([]string, len(d.units)), parts: make([]int, len(d.units)), left: make([]int, len(d.units))}
	for u, tree := range d.trees {
		if tree == nil {
			continue
		}
		w.ids[u] = fmt.Sprintf("S%d", len(plan.Sheets)+1)
		w.name[tree] = w.ids[u]
		w.sheet(u, d.units[u], tree)
	}
	o := s.order(d)
	next := 0
	for n, i := range o.sequence {
		if next < len(o.settings) && o.settings[next] == n {
			plan.Settings = append(plan.Settings, Setting{FenceMM: mm(o.passes[i].fence), First: n + 1, ReZero: reZero(mm(o.passes[i].fence), 0)})
			next++
		}
		w.cut(&o.passes[i], n+1)
		plan.Settings[next-1].Last = n + 1
	}
	w.bevels(d)
}

func reZero(fenceMM, tiltDeg float64) string {
	if tiltDeg != 0 {
		return fmt.Sprintf("Tilt the blade to %.1f degrees, set the fence to %.1f mm, re-zero both, and check both on a trial cut in scrap.", tiltDeg, fenceMM)
	}
	return fmt.Sprintf("Set the fence to %.1f mm with the blade square, re-zero, and measure the first part that comes off.", fenceMM)
}

func (w *writer) sheet(u int, x unit, tree *slab) {
	k := &w.s.stock[x.kind]
	in := &w.s.p.Stock[k.index]
	c := CutSheet{ID: w.ids[u], Stock: k.index, Name: in.Name, LengthMM: in.LengthMM, WidthMM: in.WidthMM, Owned: in.Owned, Zones: append([]Zone{}, in.Zones...)}
	c.Tree = w.node(tree, u)
	used := 0.0
	tree.walk(func(p *slab) {
		if p.kind == KindPiece {
			used += mm(p.w) * mm(p.h)
		}
	})
	c.Used = used / (in.LengthMM * in.WidthMM)
	w.plan.Sheets = append(w.plan.Sheets, c)
}

func (w *writer) node(p *slab, u int) *Node {
	if p == nil {
		return nil
	}
	n := &Node{XMM: mm(p.x), YMM: mm(p.y), LengthMM: mm(p.w), WidthMM: mm(p.h), Kind: p.kind, Piece: -1, Trim: p.trim, Axis: p.axis, AtMM: mm(p.at)}
	w.nodes[p] = n
	switch p.kind {
	case KindPiece:
		n.Piece = w.s.owner[p.piece]
		n.Name = w.s.p.Pieces[n.Piece].Name
		n.Turned = p.turned != (w.s.p.Pieces[n.Piece].Turn == Across)
		w.name[p] = n.Name
	case KindOffcut:
		n.Name = fmt.Sprintf("%s-%c", w.ids[u], 'A'+rune(w.left[u]%26))
		if w.left[u] >= 26 {
			n.Name += fmt.Sprint(w.left[u] / 26)
		}
		w.left[u]++
		w.name[p] = n.Name
		w.plan.Offcuts = append(w.plan.Offcuts, Offcut{Name: n.Name, Sheet: w.ids[u], LengthMM: n.LengthMM, WidthMM: n.WidthMM})
	}
	n.A, n.B = w.node(p.a, u), w.node(p.b, u)
	return n
}

func (w *writer) cut(p *pass, number int) {
	s := p.slab
	w.nodes[s].Cut = number
	length := s.h
	if s.axis == DivideY {
		length = s.w
	}
	c := Cut{Number: number, Sheet: w.ids[p.unit], Part: w.name[s], Axis: s.axis, FenceMM: mm(p.fence), FenceSide: p.side, LengthMM: mm(length), Trim: s.trim, CannotHold: p.bad}
	var makes []string
	for _, half := range []*slab{s.a, s.b} {
		if half == nil {
			continue
		}
		if half.kind == KindCut {
			w.parts[p.unit]++
			w.name[half] = fmt.Sprintf("%s.%d", w.ids[p.unit], w.parts[p.unit])
		}
		if name := w.name[half]; name != "" {
			makes = append(makes, name)
		} else {
			makes = append(makes, "waste")
		}
	}
	c.Makes = strings.Join(makes, " + ")
	w.plan.Cuts = append(w.plan.Cuts, c)
}

// bevels adds the tilted cuts, after all square ones, grouped by tilt and fence.
func (w *writer) bevels(d *draft) {
	var cuts []Cut
	for u, tree := range d.trees {
		tree.walk(func(p *slab) {
			if p.kind == KindPiece {
				cuts = append(cuts, w.bevelsOf(u, p)...)
			}
		})
	}
	slices.SortStableFunc(cuts, func(a, b Cut) int {
		return cmp.Or(cmp.Compare(a.TiltDeg, b.TiltDeg), cmp.Compare(b.FenceMM, a.FenceMM))
	})
	for i, c := range cuts {
		c.Number = len(w.plan.Cuts) + 1
		if i == 0 || c.TiltDeg != cuts[i-1].TiltDeg || c.FenceMM != cuts[i-1].FenceMM {
			w.plan.Settings = append(w.plan.Settings, Setting{FenceMM: c.FenceMM, TiltDeg: c.TiltDeg, First: c.Number, ReZero: reZero(c.FenceMM, c.TiltDeg)})
		}
		w.plan.Settings[len(w.plan.Settings)-1].Last = c.Number
		w.plan.Cuts = append(w.plan.Cuts, c)
	}
}

func (w *writer) bevelsOf(u int, p *slab) []Cut {
	n := w.nodes[p]
	piece := &w.s.p.Pieces[n.Piece]
	var out []Cut
	for _, b := range piece.Bevels {
		if b.TiltDeg == 0 {
			continue
		}
		fence, length, axis := piece.WidthMM, piece.LengthMM, DivideY
		if b.Edge == EndA || b.Edge == EndB {
			fence, length, axis = piece.LengthMM, piece.WidthMM, DivideX
		}
		if n.Turned {
			axis = map[Axis]Axis{DivideX: DivideY, DivideY: DivideX}[axis]
		}
		out = append(out, Cut{Sheet: w.ids[u], Part: piece.Name, Axis: axis, FenceMM: fence, FenceSide: "a", TiltDeg: b.TiltDeg, LengthMM: length,
			Makes: piece.Name, Edge: b.Edge, CannotHold: fence < w.s.p.NarrowestStripMM})
	}
	return out
}
