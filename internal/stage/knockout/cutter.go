package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Chosen, for what the cutter leaves.
const (
	leftTolMM  = 0.02 // flattening
	leftMM     = 0.3  // foam that stands out less is sanded off with the rest
	leftSaid   = 4    // findings for one part
	leftListed = 40   // places listed for one part
)

// leaves locates what a round cutter leaves of the foam it should take away: in inside
// corners, in channels narrower than the cutter, in holes it does not enter.
//
//	left = closing of the part by a disc of the cutter's radius, less the part
func (c *computer) leaves(p *Part) {
	r := c.in.Machine.Cutter.MM() / 2
	if !c.in.Machine.Router || !(r > 0) {
		return
	}
	shape := p.Outline.Shape()
	closed := geom.Offset(geom.Offset(shape, r, leftTolMM), -r, leftTolMM)
	wall := geom.NewLocator(closed)
	left := geom.Subtract(closed, shape)
	var narrow []geom.Narrow
	if slices.ContainsFunc(left, func(q geom.Polygon) bool { return depthIn(q, wall) > leftMM || q.Area() > r*r }) {
		narrow = channels(shape, r)
	}
	for _, q := range left {
		if l, ok := leftIn(q, wall, narrow); ok {
			p.Left = append(p.Left, l)
		}
	}
	slices.SortStableFunc(p.Left, func(a, b Left) int {
		return cmp.Or(rank(a.Kind)-rank(b.Kind), cmp.Compare(b.Area, a.Area), cmp.Compare(a.X, b.X))
	})
	if len(p.Left) > leftListed {
		p.Left = p.Left[:leftListed]
	}
	c.sayLeft(*p)
}

// rank orders the kinds: the worst first.
func rank(kind string) int { return slices.Index([]string{"hole", "channel", "corner"}, kind) }

// channels returns where the space round the part is narrower than the cutter.
func channels(shape geom.Region, r float64) []geom.Narrow {
	b := shape.Box()
	around := geom.Subtract(geom.Rect(b.Min.X-4*r, b.Min.Y-4*r, b.Max.X+4*r, b.Max.Y+4*r).Region(), shape)
	return around.NarrowPlaces(2 * r)
}

// leftIn measures one piece of what is left; false where it is sanded off anyway.
func leftIn(q geom.Polygon, wall *geom.Locator, narrow []geom.Narrow) (Left, bool) {
	at := deepest(q, wall)
	depth := wall.Boundary(at)
	l := Left{Kind: "corner", Width: units.Length(depth), X: units.Length(at.X), Y: units.Length(at.Y), Area: units.Area(q.Area())}
	for _, n := range narrow {
		if (geom.Region{q}).Distance(n.At) < 2*leftTolMM {
			l.Kind, l.Width, l.X, l.Y = "channel", units.Length(n.Width), units.Length(n.At.X), units.Length(n.At.Y)
			if n.Whole {
				l.Kind = "hole"
			}
			return l, true
		}
	}
	return l, depth > leftMM
}

// deepest returns the corner of q furthest from a boundary.
func deepest(q geom.Polygon, wall *geom.Locator) geom.Point {
	return slices.MaxFunc(q.Outer, func(a, b geom.Point) int { return cmp.Compare(wall.Boundary(a), wall.Boundary(b)) })
}

func depthIn(q geom.Polygon, wall *geom.Locator) float64 { return wall.Boundary(deepest(q, wall)) }

// sayLeft says where the cutter does not come, worst first, and what all corners leave.
func (c *computer) sayLeft(p Part) {
	said, corners, most := 0, 0, Left{}
	for _, l := range p.Left {
		at := [2]float64{l.X.MM(), l.Y.MM()}
		where := finding.Where{Element: p.ID, View: "form", At: &at}
		switch {
		case l.Kind == "corner":
			corners++
			if l.Width > most.Width {
				most = l
			}
		case said < leftSaid:
			said++
			c.say(channel.At(where, "A %s of part %s is %.1f mm wide and the cutter %.1f mm: %.0f mm2 of foam stay.", l.Kind, p.ID, l.Width, c.in.Machine.Cutter, l.Area).
				Measured(float64(l.Width), float64(c.in.Machine.Cutter), "mm").
				Do("Use a cutter of at most %.0f mm, widen the place in the drawing, or cut it out by knife.", math.Max(1, math.Floor(float64(l.Width)))))
		}
	}
	if corners > 0 {
		at := [2]float64{most.X.MM(), most.Y.MM()}
		c.say(corner.At(finding.Where{Element: p.ID, View: "form", At: &at}, "The cutter of %.1f mm leaves foam in %d inside corners of part %s, standing out up to %.1f mm, the most here.",
			c.in.Machine.Cutter, corners, p.ID, most.Width).Measured(float64(most.Width), leftMM, "mm"))
	}
}

// flute says whether the cutter is long enough for the foam.
func (c *computer) flute() {
	m := c.in.Machine
	if !m.Router || !(m.Flute > 0) || !(c.in.Foam > 0) || m.Flute >= c.in.Foam {
		return
	}
	c.say(flute.At(finding.Where{Field: "machine"}, "The cutter's flutes are %.1f mm long and the foam is %.1f mm thick.", m.Flute, c.in.Foam).
		Measured(float64(m.Flute), float64(c.in.Foam), "mm").
		Do("Use a cutter with flutes of at least %.0f mm, or thinner foam.", math.Ceil(float64(c.in.Foam))))
}
