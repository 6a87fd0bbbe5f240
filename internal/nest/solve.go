package nest

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
)

// A bin is one opened sheet with the things on it.
type bin struct {
	kind, number int
	things       []thing
	spread       spread
}

// A solver lays the pieces of one problem.
type solver struct {
	p      Problem
	ctx    context.Context
	cat    *catalog
	things []thing
	stock  []ground
	tol    float64
	bins   []*bin
	left   []thing
	rnd    random
	sought int
}

// Solve lays the pieces of p. Pieces that cannot be laid are returned with the reason; an
// error means that the problem itself is at fault. When ctx is cancelled Solve returns
// the best layout found so far and no error.
func Solve(ctx context.Context, p Problem) (Layout, error) {
	if err := p.check(); err != nil {
		return Layout{}, err
	}
	s := &solver{p: p, ctx: ctx, rnd: random(p.Seed)}
	var bad []Unplaced
	s.cat, s.things, bad = prepare(p.Pieces, p.SpacingMM)
	s.prepareStock()
	s.cat.seal()
	s.tol = tolerance(s.things)
	bad = append(bad, s.dropTooLarge()...)
	s.construct()
	s.empty()
	s.shorten()
	return s.layout(bad), nil
}

// check reports what is wrong with the problem as a whole.
func (p Problem) check() error {
	for _, v := range []struct {
		name string
		mm   float64
	}{{"spacing", p.SpacingMM}, {"margin at the edge", p.EdgeMM}} {
		if !(v.mm >= 0 && v.mm <= 1e4) {
			return fmt.Errorf("%w: the %s is %g mm, want 0 to 10 m", ErrProblem, v.name, v.mm)
		}
	}
	for i, s := range p.Sheets {
		for _, r := range s.Outline.Rings() {
			for _, q := range r {
				if !(math.Abs(q.X) <= 1e5 && math.Abs(q.Y) <= 1e5) {
					return fmt.Errorf("%w: sheet %d (%s): a corner is not a finite number, or is further than 100 m out", ErrProblem, i, s.Name)
				}
			}
		}
	}
	return nil
}

// dropTooLarge takes out the things that fit no sheet in any turn.
func (s *solver) dropTooLarge() []Unplaced {
	var bad []Unplaced
	fits := map[string]bool{}
	s.things = slices.DeleteFunc(s.things, func(t thing) bool {
		key := fmt.Sprint(t.poses)
		ok, known := fits[key]
		for k := 0; k < len(s.stock) && !ok && !known; k++ {
			ok = s.stock[k].quantity > 0 && s.alone(t, k)
		}
		fits[key] = ok
		if !ok {
			bad = append(bad, Unplaced{t.piece, s.whyNot(t)})
		}
		return !ok
	})
	return bad
}

// alone reports whether t finds a place on an empty sheet of a kind.
func (s *solver) alone(t thing, kind int) bool {
	return newBuilder(s.board([]thing{t}, kind)).lay(0)
}

func (s *solver) whyNot(t thing) string {
	n := 0
	for _, g := range s.stock {
		n += g.quantity
	}
	if n == 0 {
		return "there is no sheet to lay it on"
	}
	b := s.p.Pieces[t.piece].Shape.Outer.Box()
	return fmt.Sprintf("it fits no sheet in any turn allowed: as drawn it is %.1f x %.1f mm", b.Width(), b.Height())
}

// construct opens sheets one by one: those owned first, the smallest first, then of the
// others the kind on which the largest share of the sheet is used, and the smallest
// kind that takes all that is left.
func (s *solver) construct() {
	s.left = s.things
	slices.SortStableFunc(s.left, func(a, b thing) int { return cmp.Compare(b.size, a.size) })
	for len(s.left) > 0 && s.ctx.Err() == nil {
		best, rest := s.open()
		if best == nil {
			return
		}
		s.stock[best.kind].used++
		best.number = s.stock[best.kind].used
		s.bins, s.left = append(s.bins, best), rest
	}
}

// open returns the next sheet filled and what is left then.
func (s *solver) open() (best *bin, rest []thing) {
	score := math.Inf(-1)
	for _, k := range s.order() {
		g := &s.stock[k]
		if best != nil && g.owned != s.stock[best.kind].owned {
			break
		}
		b, left := s.fill(k, s.left)
		if b == nil {
			continue
		}
		if g.owned {
			return b, left
		}
		v := sizes(b.things) / g.area
		if len(left) == 0 {
			v = 2 + 1/(1+g.area)
		}
		if v > score {
			best, rest, score = b, left, v
		}
	}
	return best, rest
}

// order lists the kinds there is still a sheet of.
func (s *solver) order() []int {
	var out []int
	for k, g := range s.stock {
		if g.used < g.quantity {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		p, q := &s.stock[a], &s.stock[b]
		if p.owned != q.owned {
			if p.owned {
				return -1
			}
			return 1
		}
		return cmp.Compare(p.area, q.area)
	})
	return out
}

// fill lays what fits of a list on a new sheet; nil where nothing does.
func (s *solver) fill(kind int, list []thing) (*bin, []thing) {
	b := s.board(list, kind)
	u := newBuilder(b)
	out := &bin{kind: kind}
	var rest []thing
	failed := map[int]bool{} // first shape of the things that found no place
	for i, t := range list {
		if failed[t.poses[0].shape] || !u.lay(i) {
			failed[t.poses[0].shape] = true
			rest = append(rest, t)
			continue
		}
		out.things = append(out.things, t)
		out.spread.pose = append(out.spread.pose, b.pose[i])
		out.spread.x, out.spread.y = append(out.spread.x, b.x[i]), append(out.spread.y, b.y[i])
	}
	out.spread.length = b.length
	if len(out.things) == 0 {
		return nil, list
	}
	return out, rest
}

func sizes(things []thing) float64 {
	sum := 0.0
	for _, t := range things {
		sum += t.size
	}
	return sum
}

// board returns an empty sheet for a list of things.
func (s *solver) board(list []thing, kind int) *board {
	g := &s.stock[kind]
	all := append(slices.Clone(list), g.lacks...)
	b := newBoard(s.cat, all, len(list), g.length, g.width, s.tol)
	for i := range g.lacks {
		b.x[len(list)+i], b.y[len(list)+i] = g.lackX[i], g.lackY[i]
	}
	return b
}

// restore returns the board of a bin.
func (s *solver) restore(b *bin) *board {
	out := s.board(b.things, b.kind)
	n := len(b.things)
	copy(out.pose[:n], b.spread.pose[:n])
	copy(out.x[:n], b.spread.x[:n])
	copy(out.y[:n], b.spread.y[:n])
	out.measure()
	return out
}
