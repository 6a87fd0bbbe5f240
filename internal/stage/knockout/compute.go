package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

const (
	wetDensity = 2100    // kg/m3, of fresh GFRC where the input states none. Source: [gfrc-guides]
	gravity    = 9.80665 // m/s2, standard
)

// Empty returns the result of no layers.
func Empty() Result {
	return Result{Parts: []Part{}, Seams: []Seam{}, Sheets: []Sheet{}, Offcuts: []Keep{}, Maps: []GlueMap{}, Glue: []string{}}
}

// Compute turns the layers over into form view, cuts those that do not fit bed and
// sheet, dowels and labels the parts and lays them on sheets. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	in.Making = in.Making.filled(in)
	c := &computer{in: in, flip: view.Flip{Length: in.Length.MM()}, room: limits(in), r: Empty()}
	c.r.Limits, c.r.Rules = c.room.limits(in.Machine.Router), c.kept()
	if len(in.Layers) == 0 {
		return c.r, c.found
	}
	c.checks()
	ks := c.courses()
	if !c.hopeless() {
		arrange(ks)
	}
	c.build(ks)
	if len(c.r.Parts) == 0 {
		return c.r, c.found
	}
	c.seams()
	c.judgeParts()
	c.glue()
	c.sayOffcuts()
	c.lay()
	c.buoyancy()
	c.say(touches.At(finding.Where{}, "The knockout is polystyrene foam: solvents, petrol, paraffin oil and petroleum jelly eat it."))
	return c.r, c.found
}

type computer struct {
	in     Input
	flip   view.Flip
	room   room
	r      Result
	blocks []*block
	first  []int   // of each layer's parts in r.Parts
	rank   [][]int // of a layer's pieces among its parts
	work   int     // of the search for seams
	found  []finding.Finding
}

func (c *computer) say(fs ...finding.Finding) { c.found = append(c.found, fs...) }

// build makes the parts of all layers with their holes, marks, ids and neighbours.
func (c *computer) build(ks []*course) {
	for i, k := range ks {
		b := c.cutUp(k)
		var above *geom.Locator
		if i+1 < len(ks) {
			above = geom.NewLocator(ks[i+1].shape)
		}
		c.shapeJoints(b, around(ks, i), above)
		c.blocks = append(c.blocks, b)
		c.layer(b)
	}
	hollows := c.hollows()
	c.dowel(hollows)
	for i := range c.r.Parts {
		c.finish(&c.r.Parts[i], hollows[i])
	}
	c.name()
	c.nameDowels()
	for i := range c.r.Parts {
		c.leaves(&c.r.Parts[i])
	}
	c.neighbours()
	c.judgeDowels()
}

// layer adds the parts of one layer.
func (c *computer) layer(b *block) {
	l := b.course.layer
	sheets, found := sheetsFor(l, c.in.Foam)
	c.say(found...)
	if sheets > 1 {
		c.say(stack.At(finding.Where{Element: l.Name}, "Layer %d is %.1f mm deep and the foam %.1f mm thick: every part of it is %d sheets glued on each other.", l.Number, l.Depth, c.in.Foam, sheets).
			Measured(float64(l.Depth), float64(c.in.Foam), "mm"))
	}
	order := make([]int, len(b.pieces))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return place(b.pieces[x].Box(), b.pieces[y].Box()) })
	rank := make([]int, len(order))
	c.first = append(c.first, len(c.r.Parts))
	for at, n := range order {
		rank[n] = at
		c.r.Parts = append(c.r.Parts, Part{Layer: l.Number, Thickness: l.Depth, Sheets: sheets, ArrowTo: view.Near,
			Outline: view.Of[view.Form](b.pieces[n]), Neighbours: []Neighbour{}, Dowels: []Dowel{}, Left: []Left{}})
	}
	c.rank = append(c.rank, rank)
	c.r.Volume += units.Area(b.course.shape.Area()).Times(l.Depth)
}

// labelTol is how near the label comes to the part's widest place, mm; less in small
// parts.
const labelTol = 1

// finish takes hollow and dowel holes off a part and measures it.
func (c *computer) finish(p *Part, hollow geom.Region) {
	shape := p.Outline.Shape()
	if len(hollow) > 0 {
		shape = geom.Subtract(shape, hollow)
		p.Outline = view.Of[view.Form](shape)
	}
	box := shape.Box()
	p.Area, p.BoxX, p.BoxY = units.Area(shape.Area()), units.Length(box.Width()), units.Length(box.Height())
	p.Mass = c.in.Density.Of(p.Area.Times(p.Thickness))
	c.r.Mass += p.Mass
	bored := bore(shape, p.Dowels)
	p.Region = view.Of[view.Form](bored)
	p.Mark = mark(bored, p.Thickness)
	label, _ := bored.Pole(math.Min(labelTol, math.Sqrt(shape.Area())/20))
	p.LabelAt = view.PointOf[view.Form](label)
}

// buoyancy says what lifts the knockout.
func (c *computer) buoyancy() {
	wet := c.in.Concrete
	if !(wet > 0) {
		wet = wetDensity
	}
	f := float64(Uplift(c.r.Volume, c.r.Mass, wet))
	c.say(uplift.At(finding.Where{}, "If slurry of %.0f kg/m3 gets under the knockout it lifts with up to %.0f N, as much as %.0f kg weigh.", wet, f, f/gravity).Measured(f, 0, "N"))
}

// Uplift returns the buoyancy of foam of volume v and mass m under a liquid of
// density d, N: F = (d v - m) g. Source: [analytic].
func Uplift(v units.Volume, m units.Mass, d units.Density) units.Force {
	return units.Force(max(0, float64(d.Of(v)-m)*gravity))
}

// neighbours says which parts touch: beside over a seam, under and over.
func (c *computer) neighbours() {
	ps := c.r.Parts
	add := func(i, j int, where string) {
		n := Neighbour{ps[j].ID, where}
		if i != j && !slices.Contains(ps[i].Neighbours, n) {
			ps[i].Neighbours = append(ps[i].Neighbours, n)
		}
	}
	for i, b := range c.blocks {
		for _, j := range b.joints {
			l, r := c.first[i]+c.rank[i][j.left], c.first[i]+c.rank[i][j.right]
			add(l, r, "beside")
			add(r, l, "beside")
		}
	}
	for i := range ps {
		for j := range ps {
			if ps[i].Layer+1 == ps[j].Layer && geom.Intersect(ps[i].Outline.Shape(), ps[j].Outline.Shape()).Area() > crumbMM2 {
				add(i, j, "over")
				add(j, i, "under")
			}
		}
	}
	for i := range ps {
		slices.SortStableFunc(ps[i].Neighbours, func(a, b Neighbour) int {
			return cmp.Or(cmp.Compare(a.Where, b.Where), cmp.Compare(a.Part, b.Part))
		})
	}
}

// judgeParts says which parts are smaller than allowed: pieces of outlines that were
// cut, not outlines drawn small.
func (c *computer) judgeParts() {
	least := c.in.Making.Smallest
	for _, s := range c.r.Seams {
		for _, id := range s.Parts {
			p := c.r.Parts[slices.IndexFunc(c.r.Parts, func(p Part) bool { return p.ID == id })]
			at := [2]float64{p.LabelAt.X, p.LabelAt.Y}
			f := smallPiece.At(finding.Where{Element: id, View: "form", At: &at}, "Part %s is %.0f mm long; no piece should be under %.0f mm.", id, max(p.BoxX, p.BoxY), least).
				Measured(float64(max(p.BoxX, p.BoxY)), float64(least), "mm")
			if max(p.BoxX, p.BoxY) < least && !slices.ContainsFunc(c.found, func(o finding.Finding) bool { return o.Text == f.Text }) {
				c.say(f)
			}
		}
	}
}
