package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// longest is how long a piece of path is looked at in one go, mm: long ones would look
// into all cells of their box.
const longest = 4.0

// outlines returns the sides of all parts, each with its part's number.
func (s *simulation) outlines() []piece {
	var out []piece
	for i, p := range s.in.Parts {
		for _, ring := range p.Region.Shape().Rings() {
			for k, a := range ring {
				out = append(out, piece{a: a, b: ring[(k+1)%len(ring)], of: int32(i)})
			}
		}
	}
	return out
}

// A worst is the worst place of one kind on a part.
type worst struct {
	by   float64
	at   geom.Point
	line int32
}

func (w *worst) take(by float64, at geom.Point, line int32) {
	if by > w.by {
		*w = worst{by, at, line}
	}
}

// gouges finds how deep the cutter goes into each part.
func (s *simulation) gouges(cuts []piece) []worst {
	out := make([]worst, len(s.in.Parts))
	sides := newIndex(s.outlines(), 1)
	w := s.newInsides()
	near := geom.EmptyBox()
	for _, b := range w.boxes {
		near = near.Union(geom.Rect(b.Min.X-s.r, b.Min.Y-s.r, b.Max.X+s.r, b.Max.Y+s.r))
	}
	for _, c := range cuts {
		var ok bool
		if c.a, c.b, ok = clipped(near, c.a, c.b); !ok {
			continue
		}
		n := math.Max(1, math.Ceil(c.b.Sub(c.a).Norm()/longest))
		for k := 0.0; k < n; k++ {
			a, b := along(c.a, c.b, k/n), along(c.a, c.b, (k+1)/n)
			i, d := sides.nearest(a, b, s.r)
			in := w.at(a, b, d)
			switch mid := along(a, b, 0.5); {
			case in >= 0:
				out[in].take(s.r+w.locate[in].Boundary(mid), mid, c.of)
			case i >= 0:
				out[sides.pieces[i].of].take(s.r-d, mid, c.of)
			}
		}
	}
	return out
}

// clipped returns what of the stretch from a to b lies in box, or false.
func clipped(box geom.Box, a, b geom.Point) (geom.Point, geom.Point, bool) {
	v := b.Sub(a)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{v.X, box.Max.X - a.X}, {-v.X, a.X - box.Min.X}, {v.Y, box.Max.Y - a.Y}, {-v.Y, a.Y - box.Min.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return a, b, false
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		}
	}
	return along(a, b, t0), along(a, b, t1), t0 <= t1
}

func along(a, b geom.Point, t float64) geom.Point {
	switch t {
	case 0:
		return a
	case 1:
		return b
	}
	return a.Add(b.Sub(a).Mul(t))
}

// insides tells in which part, if any, the middle of the cutter is, while it goes along.
type insides struct {
	locate []*geom.Locator
	boxes  []geom.Box
	end    geom.Point // of the piece before
	part   int        // that it lay in, or -1
	begun  bool
}

func (s *simulation) newInsides() *insides {
	w := &insides{part: -1}
	for _, p := range s.in.Parts {
		w.locate = append(w.locate, geom.NewLocator(p.Region.Shape()))
		w.boxes = append(w.boxes, p.Region.Shape().Box())
	}
	return w
}

// at returns the part in which the piece from a to b lies, which stays d mm clear of all
// boundaries, or -1. A piece that goes on where the one before ended and crosses no
// boundary lies in the same one.
func (w *insides) at(a, b geom.Point, d float64) int {
	if d == 0 || !w.begun || a != w.end {
		w.part = w.find(along(a, b, 0.5))
	}
	w.end, w.begun = b, d > 0
	return w.part
}

func (w *insides) find(p geom.Point) int {
	for i, l := range w.locate {
		if b := w.boxes[i]; p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y && l.Inside(p) {
			return i
		}
	}
	return -1
}

// parts measures every part and reports what is wrong with it.
func (s *simulation) parts() []PartResult {
	cuts := s.cuts()
	gouged := s.gouges(cuts)
	t := s.newTracer(cuts)
	out := make([]PartResult, 0, len(s.in.Parts))
	for i, p := range s.in.Parts {
		r := PartResult{ID: p.ID, Tabs: []Tab{}}
		if g := gouged[i]; g.by > 0 {
			r.Gouged = units.Length(rounded(g.by))
			if g.by > s.tol {
				s.say(gouge, int(g.line), &g.at, "Line %d cuts %.2f mm into %s; %.2f mm are allowed.", g.line, g.by, p.ID, s.tol)
			}
		}
		t.trace(p, &r)
		out = append(out, r)
	}
	return out
}

// rounded drops what is below a ten-thousandth of a millimetre, the step of a file.
func rounded(v float64) float64 { return math.Round(v*1e4) / 1e4 }
