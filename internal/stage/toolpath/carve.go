package toolpath

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// Heights is a field of z over a block of foam: 0 at its top, below it negative; form
// view, mm from the block's lower left corner. A place that is not a number is left.
type Heights = grid.Field

// Carving is a height map to be carved with a ball cutter instead of cut in layers.
type Carving struct {
	Name    string
	Heights Heights
	Stock   units.Length // thickness of the block
	Ball    units.Length // diameter of the ball cutter
	Scallop units.Length // height of the ridges between ways on level ground; default 0.2 mm
}

// Chosen.
const (
	usualScallop = 0.2  // mm
	allowanceMM  = 0.5  // left by roughing for finishing
	roughShare   = 0.45 // of the ball's diameter, between ways of roughing
	samplesInR   = 6    // places along a way in the ball's radius
	seesMM       = 1e-6
)

// A carver has the heights of the ball's tip over the block.
type carver struct {
	c       *computer
	v       Carving
	radius  float64
	f       Heights // on a lattice fine enough for the ball
	offsets []offset
	along   bool      // ways run along x
	ways    [][]place // the tip's places, way by way
	gap     float64   // between ways, mm
}

// A place is a position of the tip.
type place struct{ x, y, z float64 }

// carve writes the program that carves v.
//
//	tip(x, y) = max over |d| <= R of  z(x + dx, y + dy) + sqrt(R^2 - d^2) - R
//	ways lie   2 sqrt(h (2 R - h))   apart, h the scallop
func (c *computer) carve(v Carving) (Program, bool) {
	if v.Scallop == 0 {
		v.Scallop = usualScallop
	}
	if !c.carves(v) {
		return Program{}, false
	}
	k := &carver{c: c, v: v, radius: v.Ball.MM() / 2}
	k.f = lattice(v.Heights, k.radius)
	k.offsets = ballOffsets(k.f, k.radius)
	k.layWays()
	pen := newPen(c.m.Inch, c.m.SafeHeight.MM())
	levels := k.rough(pen)
	k.finish(pen)
	low, _ := k.f.Range()
	p := Program{File: c.fileName(v.Name), Kind: "carve", Sheet: v.Name, Index: -1, Parts: []string{}, Tabs: []Tab{},
		Cutter: v.Ball, Stock: v.Stock, Passes: levels + 1, Bottom: units.Length(low), Safe: c.m.SafeHeight, Box: k.f.Box()}
	p.Travel = units.Length(rapidLength(pen.moves))
	c.finish(&p, pen, k.head())
	return p, true
}

// carves reports whether v can be carved, and says why not.
func (c *computer) carves(v Carving) bool {
	where := finding.Where{Element: v.Name}
	low, high := v.Heights.Range()
	stop := func(format string, args ...any) bool {
		c.say(noCarving.At(where, format, args...))
		return false
	}
	switch {
	case len(v.Heights.Z) == 0 || len(v.Heights.Z) != v.Heights.Cols*v.Heights.Rows || v.Heights.Cols < 2 || v.Heights.Rows < 2 ||
		!positive(v.Heights.DX) || !positive(v.Heights.DY) || math.IsNaN(low) || math.IsInf(low, 0) || math.IsInf(high, 0):
		return stop("The height map of %s has no heights: it is not carved.", v.Name)
	case !positive(v.Ball.MM()) || !positive(v.Scallop.MM()) || v.Scallop >= v.Ball/2:
		return stop("A ball of %.2f mm with ridges of %.2f mm cannot carve %s.", v.Ball, v.Scallop, v.Name)
	case high > seesMM || -low > v.Stock.MM()+slackMM:
		return stop("The height map of %s goes from %.1f to %.1f mm and the block is %.1f mm thick: it is not carved.", v.Name, low, high, v.Stock)
	case c.m.Flute > 0 && -low > c.m.Flute.MM():
		return stop("The flutes are %.1f mm long and %s is carved %.1f mm deep: it is not carved.", c.m.Flute, v.Name, -low)
	}
	b := v.Heights.Box()
	if c.m.BedX > 0 && b.Max.X > c.m.BedX.MM()+slackMM || c.m.BedY > 0 && b.Max.Y > c.m.BedY.MM()+slackMM {
		c.say(offBed.At(where, "Carving %s takes %.1f x %.1f mm and the bed gives %.1f x %.1f mm: it is not carved.", v.Name, b.Max.X, b.Max.Y, c.m.BedX, c.m.BedY))
		return false
	}
	return true
}

func (k *carver) head() []string {
	out := []string{
		k.c.in.Piece + " - " + k.v.Name,
		"FORM SIDE up: the block is seen as the form is looked into",
		fmt.Sprintf("Carved in ways %.2f mm apart, ridges of %.2f mm on level ground", k.gap, k.v.Scallop),
		fmt.Sprintf("Ball cutter %.3f mm diameter <%.4f in>, Z of its tip", k.v.Ball, k.v.Ball.MM()/25.4),
		fmt.Sprintf("Block %.2f mm thick", k.v.Stock),
	}
	return append(out, k.c.cautions()...)
}

// rapidLength returns the length of rapid moves across, mm.
func rapidLength(moves []Move) float64 {
	sum, at := 0.0, geom.Point{}
	for _, m := range moves {
		to := geom.Point{X: m.X, Y: m.Y}
		if m.Kind == Rapid && !math.IsNaN(to.X) {
			sum += apart(at, to)
		}
		at = to
	}
	return sum
}
