package knockout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A slip is one thickness of a part that lies on a sheet.
type slip struct{ part, copy int }

// A bed is a piece of foam that parts are laid on.
type bed struct {
	Sheet
	room geom.Region // its outline less the margin
}

// lay lays the parts on offcuts and on as few new sheets as it finds. Sheets larger than
// the bed are sawn into blanks first, one for each part.
func (c *computer) lay() {
	left := c.slips()
	if c.sawing() {
		left = c.laySawn(left)
	} else {
		left = c.layWhole(left)
	}
	for _, s := range left {
		c.unlaid(s)
	}
}

// laySawn lays what fits on offcuts that lie on the bed and saws blanks for the rest.
func (c *computer) laySawn(left []slip) []slip {
	if len(c.in.Offcuts) > 0 {
		used, rest := c.best(left)
		c.keep(used)
		left = rest
	}
	if len(left) > 0 {
		left = c.saw(left, c.large())
	}
	return left
}

// layWhole lays parts on offcuts and whole sheets together.
func (c *computer) layWhole(left []slip) []slip {
	used, rest := c.best(left)
	c.keep(used)
	return rest
}

// keep adds boards that carry parts to the result.
func (c *computer) keep(used []*bed) {
	for _, b := range used {
		if b.Stock != "offcut" {
			c.r.Buy++
			b.Whole, b.Name = c.r.Buy, fmt.Sprintf("sheet %d", c.r.Buy)
		}
		c.close(b)
		if b.Keep != nil {
			c.r.Offcuts = append(c.r.Offcuts, *b.Keep)
		}
		c.r.Sheets = append(c.r.Sheets, b.Sheet)
	}
}

// rectangular reports whether a ring is its own box.
func rectangular(r geom.Ring) bool {
	b := r.Box()
	return !b.Empty() && math.Abs(math.Abs(r.Area())-b.Width()*b.Height()) < 1e-6*b.Width()*b.Height()
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

// offcuts returns the offcuts that can be laid on as they are.
func (c *computer) offcuts() []*bed {
	var out []*bed
	for _, o := range c.in.Offcuts {
		shape := geom.Build([]geom.Ring{o.Outline}, geom.NonZero)
		box := shape.Box()
		if len(shape) != 1 || c.in.hasBed() && !c.bedHolds(box.Width(), box.Height()) {
			continue
		}
		shape = shape.Map(func(p geom.Point) geom.Point { return p.Sub(box.Min) }, false)
		x, y := units.Length(box.Width()), units.Length(box.Height())
		out = append(out, &bed{Sheet: Sheet{Name: o.Name, Stock: "offcut", SizeX: x, SizeY: y, WholeX: x, WholeY: y, Outline: shape[0].Outer, Placements: []Placement{}},
			room: geom.Offset(shape, -c.in.Making.Margin.MM(), 0.1)})
	}
	return out
}

// large returns the offcuts that must be sawn: rectangles larger than the bed.
func (c *computer) large() []Offcut {
	var out []Offcut
	for _, o := range c.in.Offcuts {
		if b := o.Outline.Box(); rectangular(o.Outline) && !c.bedHolds(b.Width(), b.Height()) {
			out = append(out, o)
		}
	}
	return out
}

// sayOffcuts names the offcuts that are no use.
func (c *computer) sayOffcuts() {
	for i, o := range c.in.Offcuts {
		b := o.Outline.Box()
		plain := len(geom.Build([]geom.Ring{o.Outline}, geom.NonZero)) == 1
		if !plain || c.in.hasBed() && !c.bedHolds(b.Width(), b.Height()) && !(rectangular(o.Outline) && c.sawing()) {
			c.say(unused.At(finding.Where{Element: o.Name, Field: fmt.Sprintf("foam.offcuts[%d]", i)}, "Offcut %s is left alone: it is no plain outline, or larger than the bed and no rectangle to be sawn.", o.Name))
		}
	}
}

// board returns the n-th sheet or, at box in it, a blank of it.
func (c *computer) board(n int, box geom.Box) *bed {
	w, h, m := box.Width(), box.Height(), c.in.Making.Margin.MM()
	b := &bed{Sheet: Sheet{Name: fmt.Sprintf("sheet %d", n), Stock: "sheet", Whole: n, FromX: units.Length(box.Min.X), FromY: units.Length(box.Min.Y),
		SizeX: units.Length(w), SizeY: units.Length(h), Outline: geom.Rect(0, 0, w, h).Ring(), Placements: []Placement{}}}
	b.WholeX, b.WholeY = b.SizeX, b.SizeY
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
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	turn := func(q geom.Point) geom.Point { return geom.Point{X: q.X*cos - q.Y*sin, Y: q.X*sin + q.Y*cos} }
	c.put(b, s, degrees, at.Sub(c.r.Parts[s.part].Region.Shape().Map(turn, false).Box().Min))
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
