package knockout

import (
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Chosen, for dowels.
const (
	dowelTries  = 14  // places across the wider way of an overlap
	dowelLeast  = 3.0 // least distance between two, in diameters
	unevenMM    = 8.0 // by which the sides of the triangle of three differ
	playMM      = 2.0 // how far a hole may lie off and a part still goes on
	showCost    = 1e6 // a hole on a ledge shows
	holeCorners = 64
)

// A peg is a dowel between part low and the part up on it.
type peg struct {
	at      geom.Point
	low, up int
	layer   int // of low
	shows   bool
}

// dowel finds the holes of all pairs of parts that lie on each other and hands them to
// the parts. Which parts lie on each other is told by layer.
func (c *computer) dowel(hollows []geom.Region) {
	if c.in.Making.NoDowels {
		return
	}
	var pegs []peg
	for up := range c.r.Parts {
		var on []pair
		for low := range c.r.Parts {
			if c.r.Parts[low].Layer+1 == c.r.Parts[up].Layer {
				if p, ok := c.pair(low, up, hollows); ok {
					on = append(on, p)
				}
			}
		}
		pegs = append(pegs, c.pegs(on, pegs)...)
	}
	for _, p := range pegs {
		d := Dowel{X: units.Length(p.at.X), Y: units.Length(p.at.Y), Diameter: c.in.Making.Dowel}
		low, up := &c.r.Parts[p.low], &c.r.Parts[p.up]
		low.pegs, up.pegs = append(low.pegs, p), append(up.pegs, p)
		low.Dowels = append(low.Dowels, d)
		d.Shows = p.shows
		up.Dowels = append(up.Dowels, d)
	}
}

// A pair of parts, one on the other, and where their holes may be.
type pair struct {
	low, up int
	places  []spot
}

// A spot is a place for a hole.
type spot struct {
	at    geom.Point
	shows bool
}

// pair returns where parts low and up may have holes in common.
func (c *computer) pair(low, up int, hollows []geom.Region) (pair, bool) {
	a, b := c.r.Parts[low].Outline.Shape(), c.r.Parts[up].Outline.Shape()
	inset := c.in.Making.DowelMargin.MM() + c.in.Making.Dowel.MM()/2
	both := geom.Intersect(a, b)
	both = geom.Subtract(both, hollows[low])
	both = geom.Offset(both, -inset, 0.1)
	if len(both) == 0 {
		return pair{}, false
	}
	var cover geom.Region
	for i := range c.r.Parts {
		if c.r.Parts[i].Layer == c.r.Parts[up].Layer+1 {
			cover = geom.Union(cover, c.r.Parts[i].Outline.Shape())
		}
	}
	cover = geom.Offset(cover, -inset, 0.1)
	in, under := geom.NewLocator(both), geom.NewLocator(cover)
	p := pair{low: low, up: up}
	box := both.Box()
	step := math.Max(1, math.Max(box.Width(), box.Height())/dowelTries)
	for x := box.Min.X + step/2; x < box.Max.X; x += step {
		for y := box.Min.Y + math.Mod(x, step)/2; y < box.Max.Y+step; y += step {
			if at := (geom.Point{X: math.Round(x), Y: math.Round(y)}); in.Inside(at) {
				p.places = append(p.places, spot{at, !under.Inside(at)})
			}
		}
	}
	if at, _ := both.Pole(1); len(p.places) < 2 {
		p.places = append(p.places, spot{at, !under.Inside(at)})
	}
	return p, true
}

// pegs chooses the holes of one part on those below it: three where it lies on one
// part, two on each of several.
func (c *computer) pegs(on []pair, before []peg) []peg {
	var out []peg
	each := 2
	if len(on) == 1 {
		each = 3
	}
	for _, p := range on {
		for range each {
			if at, ok := c.next(p, before, out); ok {
				out = append(out, peg{at.at, p.low, p.up, c.r.Parts[p.low].Layer, at.shows})
			}
		}
	}
	return out
}

// next returns the place for one more hole of p: covered before shown, far from the
// holes both parts have, and so that no two distances between the part's holes are
// alike.
func (c *computer) next(p pair, before, own []peg) (spot, bool) {
	least := dowelLeast * c.in.Making.Dowel.MM()
	var near, mine []geom.Point
	for _, o := range slices.Concat(before, own) {
		if o.low == p.low || o.up == p.low || o.low == p.up || o.up == p.up {
			near = append(near, o.at)
		}
	}
	for _, o := range own {
		mine = append(mine, o.at)
	}
	mid := middleOf(p.places)
	best, most := spot{}, math.Inf(-1)
	for _, s := range p.places {
		far := math.Inf(1)
		for _, q := range near {
			far = math.Min(far, q.Sub(s.at).Norm())
		}
		if far < least {
			continue
		}
		worth := 0.0
		if len(mine) == 0 {
			worth = s.at.Sub(mid).Norm()
		}
		for i, q := range mine {
			if i == 0 || worth > q.Sub(s.at).Norm() {
				worth = q.Sub(s.at).Norm()
			}
		}
		if !uneven(append(slices.Clone(mine), s.at)) {
			worth -= showCost / 10
		}
		if s.shows {
			worth -= showCost
		}
		if worth > most {
			best, most = s, worth
		}
	}
	return best, !math.IsInf(most, -1)
}

func middleOf(places []spot) geom.Point {
	var sum geom.Point
	for _, s := range places {
		sum = sum.Add(s.at)
	}
	return sum.Mul(1 / math.Max(1, float64(len(places))))
}

// uneven reports whether a part with holes at ps goes on one way only: no turn and no
// turning over lays every hole on one. Fewer than three always have such a turn and
// pass here.
func uneven(ps []geom.Point) bool { return len(ps) < 3 || !turnable(ps, ps, unevenMM) }

// turnable reports whether pegs at from, moved stiffly in any way but none at all, turned
// over or not, all meet holes at onto within play mm.
func turnable(from, onto []geom.Point, play float64) bool {
	if len(from) < 2 {
		return true
	}
	a, b := from[0], from[1]
	for _, p := range from { // the pair furthest apart turns least under the play
		for _, q := range from {
			if q.Sub(p).Norm() > b.Sub(a).Norm() {
				a, b = p, q
			}
		}
	}
	for _, p := range onto {
		for _, q := range onto {
			if p == q || math.Abs(q.Sub(p).Norm()-b.Sub(a).Norm()) > play {
				continue
			}
			for _, over := range []bool{false, true} {
				m := moved(a, b, p, q, over)
				if lands(from, onto, m, play) && (over || m(a).Sub(a).Norm() > play || m(b).Sub(b).Norm() > play) {
					return true
				}
			}
		}
	}
	return false
}

// moved returns the stiff motion, turning over or not, that lays a on p and b towards q.
func moved(a, b, p, q geom.Point, over bool) func(geom.Point) geom.Point {
	u, v := b.Sub(a), q.Sub(p)
	u, v = u.Mul(1/u.Norm()), v.Mul(1/v.Norm())
	side := geom.Point{X: -v.Y, Y: v.X}
	if over {
		side = side.Mul(-1)
	}
	return func(r geom.Point) geom.Point {
		d := r.Sub(a)
		return p.Add(v.Mul(d.Dot(u))).Add(side.Mul(u.Cross(d)))
	}
}

func lands(from, onto []geom.Point, m func(geom.Point) geom.Point, play float64) bool {
	for _, f := range from {
		at := m(f)
		if !slices.ContainsFunc(onto, func(o geom.Point) bool { return o.Sub(at).Norm() <= play }) {
			return false
		}
	}
	return true
}

// nameDowels tells each hole which part it is shared with.
func (c *computer) nameDowels() {
	for i := range c.r.Parts {
		p := &c.r.Parts[i]
		for k, g := range p.pegs {
			other := g.low
			if other == i {
				other = g.up
			}
			p.Dowels[k].With = c.r.Parts[other].ID
		}
	}
}

// judgeDowels says which parts lack holes or could go on turned.
func (c *computer) judgeDowels() {
	if c.in.Making.NoDowels || len(c.in.Layers) < 2 {
		return
	}
	for i, p := range c.r.Parts {
		at := [2]float64{p.LabelAt.X, p.LabelAt.Y}
		where := finding.Where{Element: p.ID, View: "form", At: &at}
		var down, all []geom.Point
		for _, g := range p.pegs {
			all = append(all, g.at)
			if g.up == i {
				down = append(down, g.at)
			}
		}
		switch {
		case len(all) < 2:
			c.say(dowels.At(where, "Part %s has room for %d of the 2 dowels that hold it in place.", p.ID, len(all)).Measured(float64(len(all)), 2, "dowels"))
		case len(down) > 0 && turnable(down, all, playMM):
			c.say(dowels.At(where, "Part %s also goes on turned or upside down: its %d dowels below allow it.", p.ID, len(down)).As(finding.Note).
				Do("Look at the label: FORM SIDE up, the arrow to the %s side.", p.ArrowTo))
		}
	}
}

// circle returns a circle whose corners lie on it.
func circle(at geom.Point, r float64) geom.Ring {
	return arc(nil, at, r, 0, 2*math.Pi*(1-1.0/holeCorners), holeCorners-1)
}
