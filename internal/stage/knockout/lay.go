package knockout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// A slip is one thickness of a part that lies on a sheet.
type slip struct{ part, copy int }

// A bed is a piece of foam that parts are laid on.
type bed struct {
	Sheet
	room geom.Region // its outline less the margin
}

// lay lays the parts on offcuts and on as few new sheets as it finds.
func (c *computer) lay() {
	left := c.slips()
	for _, o := range c.in.Offcuts {
		if b, ok := c.offcut(o); ok {
			left = c.use(b, left)
		}
	}
	for n := 1; len(left) > 0; n++ {
		best, rest := c.sheet(n, left)
		if len(rest) == len(left) {
			break
		}
		c.r.Sheets = append(c.r.Sheets, best...)
		c.r.Buy, left = n, rest
	}
	for _, s := range left {
		c.unlaid(s)
	}
}

// slips lists what must be laid, the largest first, and what it takes by area.
func (c *computer) slips() []slip {
	var out []slip
	need := 0.0
	for i, p := range c.r.Parts {
		need += float64(p.Area) * float64(p.Sheets)
		for k := range p.Sheets {
			if !p.Done {
				out = append(out, slip{i, k + 1})
			}
		}
	}
	if sheet := float64(c.in.SheetX) * float64(c.in.SheetY); sheet > 0 && need < 1e6*sheet {
		c.r.AtLeast = int(math.Ceil(need/sheet - 1e-9))
	}
	slices.SortStableFunc(out, func(a, b slip) int { return cmp.Compare(c.r.Parts[b.part].Area, c.r.Parts[a.part].Area) })
	return out
}

// offcut returns an offcut ready to be laid on; false where nothing can be.
func (c *computer) offcut(o Offcut) (*bed, bool) {
	shape := geom.Build([]geom.Ring{o.Outline}, geom.NonZero)
	box := shape.Box()
	if len(shape) != 1 || c.in.hasBed() && !(room{x: c.in.Machine.BedX.MM(), y: c.in.Machine.BedY.MM(), turns: quarters}).holds(box.Width(), box.Height()) {
		c.say(unused.At(finding.Where{Element: o.Name, Field: "foam.offcuts"}, "Offcut %s of %.0f x %.0f mm is left alone: it is no plain outline or larger than the bed.", o.Name, box.Width(), box.Height()))
		return nil, false
	}
	shape = shape.Map(func(p geom.Point) geom.Point { return p.Sub(box.Min) }, false)
	return &bed{Sheet: Sheet{Name: o.Name, Stock: "offcut", SizeX: units.Length(box.Width()), SizeY: units.Length(box.Height()), Outline: shape[0].Outer, Placements: []Placement{}},
		room: geom.Offset(shape, -c.in.Making.Margin.MM(), 0.1)}, true
}

// use lays what fits on an offcut.
func (c *computer) use(b *bed, left []slip) []slip {
	rest := c.fill(b, left)
	if len(rest) < len(left) {
		c.close(b)
		c.r.Sheets = append(c.r.Sheets, b.Sheet)
	}
	return rest
}

// sheet lays what fits on the n-th new sheet, sawn into blanks in the way that takes
// most foam where it is larger than the bed.
func (c *computer) sheet(n int, left []slip) ([]Sheet, []slip) {
	var best []Sheet
	rest, most := left, 0.0
	for _, boxes := range c.sawings() {
		var sheets []Sheet
		l := left
		for k, box := range boxes {
			b := c.blank(n, k, len(boxes), box)
			l = c.fill(b, l)
			c.close(b)
			sheets = append(sheets, b.Sheet)
		}
		if laid := c.area(left) - c.area(l); laid > most+1e-6 {
			best, rest, most = sheets, l, laid
		}
	}
	return best, rest
}

func (c *computer) area(ss []slip) float64 {
	sum := 0.0
	for _, s := range ss {
		sum += float64(c.r.Parts[s.part].Area)
	}
	return sum
}

// sawings are the ways to saw a sheet into blanks that fit the bed: whole if it does,
// else in columns and rows of the bed's size with the bed lying either way.
func (c *computer) sawings() [][]geom.Box {
	x, y := c.in.SheetX.MM(), c.in.SheetY.MM()
	if !(x > 0 && y > 0) {
		return nil
	}
	bx, by := c.in.Machine.BedX.MM(), c.in.Machine.BedY.MM()
	if !c.in.hasBed() || x <= bx && y <= by || x <= by && y <= bx {
		return [][]geom.Box{{geom.Rect(0, 0, x, y)}}
	}
	out := [][]geom.Box{c.grid(x, y, bx, by)}
	if bx != by {
		out = append(out, c.grid(x, y, by, bx))
	}
	return out
}

// grid saws x by y into blanks of at most bx by by, those too narrow for anything left
// out.
func (c *computer) grid(x, y, bx, by float64) []geom.Box {
	var out []geom.Box
	least := 2*c.in.Making.Margin.MM() + leastBlankMM
	for v := 0.0; v < y-least; v += by {
		for u := 0.0; u < x-least; u += bx {
			out = append(out, geom.Rect(u, v, math.Min(u+bx, x), math.Min(v+by, y)))
		}
	}
	return out
}

// leastBlankMM is what a blank must have beyond its margins to be sawn at all. Chosen.
const leastBlankMM = 30

// blank returns the k-th of count pieces of the n-th sheet.
func (c *computer) blank(n, k, count int, box geom.Box) *bed {
	w, h, m := box.Width(), box.Height(), c.in.Making.Margin.MM()
	b := &bed{Sheet: Sheet{Name: fmt.Sprintf("sheet %d", n), Stock: "sheet", Whole: n, FromX: units.Length(box.Min.X), FromY: units.Length(box.Min.Y),
		SizeX: units.Length(w), SizeY: units.Length(h), Outline: geom.Rect(0, 0, w, h).Ring(), Placements: []Placement{}}}
	if count > 1 {
		b.Name, b.Stock = fmt.Sprintf("sheet %d blank %d", n, k+1), "blank"
	}
	if w > 2*m && h > 2*m {
		b.room = geom.Rect(m, m, w-m, h-m).Region()
	}
	return b
}

// leastKeptMM is the shorter side of what is worth keeping. Chosen.
const leastKeptMM = 120

// close measures what is used of a sheet and names what is left.
func (c *computer) close(b *bed) {
	area := 0.0
	for _, q := range b.Placements {
		area += q.Region.Area()
		b.Used = max(b.Used, units.Length(q.Region.Shape().Box().Max.X))
	}
	if whole := math.Abs(b.Outline.Area()); whole > 0 {
		b.Share = units.Fraction(area / whole)
	}
	if len(b.Placements) > 0 {
		b.Used = min(b.SizeX, b.Used+c.gap())
	}
	if b.Stock != "offcut" && min(b.SizeX-b.Used, b.SizeY) >= leastKeptMM {
		b.Keep = &Keep{Name: "rest of " + b.Name, SizeX: b.SizeX - b.Used, SizeY: b.SizeY}
	}
}

// place puts a slip on b, turned by degrees about the origin of form view, the lower
// left corner of its box at at.
func (c *computer) place(b *bed, s slip, degrees float64, at geom.Point) {
	p := c.r.Parts[s.part]
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	turn := func(q geom.Point) geom.Point { return geom.Point{X: q.X*cos - q.Y*sin, Y: q.X*sin + q.Y*cos} }
	move := at.Sub(p.Region.Shape().Map(turn, false).Box().Min)
	put := func(q geom.Point) geom.Point { return turn(q).Add(move) }
	b.Placements = append(b.Placements, Placement{Part: p.ID, Copy: s.copy, Turn: degrees, X: units.Length(move.X), Y: units.Length(move.Y),
		Region: view.Of[view.Form](p.Region.Shape().Map(put, false)), LabelAt: view.PointOf[view.Form](put(geom.Point(p.LabelAt)))})
}

// unlaid says that a part lies on no sheet.
func (c *computer) unlaid(s slip) {
	p := c.r.Parts[s.part]
	if s.copy > 1 {
		return
	}
	at := [2]float64{p.LabelAt.X, p.LabelAt.Y}
	c.say(nesting.At(finding.Where{Element: p.ID, View: "form", At: &at}, "Part %s of %.0f x %.0f mm fits no sheet of %.0f x %.0f mm in any turn allowed (%s), %.0f mm kept at the edges.",
		p.ID, p.BoxX, p.BoxY, c.in.SheetX, c.in.SheetY, c.in.Making.Turns, c.in.Making.Margin))
}
