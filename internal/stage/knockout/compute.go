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

const (
	wetDensity = 2100    // kg/m3, of fresh GFRC where the input states none. Source: [gfrc-guides]
	gravity    = 9.80665 // m/s2, standard
)

// Empty returns the result of no layers.
func Empty() Result {
	return Result{Parts: []Part{}, Seams: []Seam{}, Sheets: []Sheet{}, Maps: []GlueMap{}, Glue: []string{}}
}

// Compute turns the layers over into form view and makes one part of every
// connected piece. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	c := &computer{in: in, flip: view.Flip{Length: in.Length.MM()}, r: Empty()}
	for _, l := range in.Layers {
		c.layer(l)
	}
	if sheet := float64(in.SheetX) * float64(in.SheetY); sheet > 0 && c.need < 1e6*sheet {
		c.r.AtLeast = int(math.Ceil(c.need/sheet - 1e-9))
	}
	c.r.Glue = glueOrder(c.r.Parts)
	if len(c.r.Parts) > 0 {
		c.buoyancy()
		c.say(touches.At(finding.Where{}, "The knockout is polystyrene foam: solvents, petrol, paraffin oil and petroleum jelly eat it."))
	}
	return c.r, c.found
}

type computer struct {
	in    Input
	flip  view.Flip
	r     Result
	need  float64   // mm2 of sheet
	seams []float64 // places along x of the seams in the layer above, form view
	found []finding.Finding
}

func (c *computer) say(fs ...finding.Finding) { c.found = append(c.found, fs...) }

// layer adds the parts of l.
func (c *computer) layer(l Layer) {
	sheets, found := sheetsFor(l, c.in.Foam)
	c.say(found...)
	var seams []float64
	for i, poly := range byPosition(c.flip.ToForm(l.Region).Shape()) {
		p := c.part(l, i, poly, sheets)
		seams = append(seams, c.joints(p, poly)...)
		c.need += float64(p.Area) * float64(p.Sheets)
		c.r.Parts = append(c.r.Parts, p)
		c.r.Mass += p.Mass
		c.r.Volume += p.Area.Times(p.Thickness)
	}
	c.seams = seams
}

// byPosition orders polygons from left to right, then up, by the middle of their box
// to the millimetre: small changes of an outline do not rename its parts.
func byPosition(r geom.Region) geom.Region {
	out := slices.Clone(r)
	slices.SortStableFunc(out, func(a, b geom.Polygon) int {
		p, q := a.Outer.Box().Center(), b.Outer.Box().Center()
		return cmp.Or(cmp.Compare(math.Round(p.X), math.Round(q.X)), cmp.Compare(math.Round(p.Y), math.Round(q.Y)))
	})
	return out
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

// part measures the i-th piece of l, which sheets thicknesses of foam make.
func (c *computer) part(l Layer, i int, poly geom.Polygon, sheets int) Part {
	region := geom.Region{poly}
	box := poly.Outer.Box()
	label, _ := region.Pole(math.Min(labelTol, math.Sqrt(poly.Area())/20))
	p := Part{ID: fmt.Sprintf("L%d-%s", l.Number, letters(i)), Layer: l.Number, Thickness: l.Depth, Area: units.Area(poly.Area()),
		BoxX: units.Length(box.Width()), BoxY: units.Length(box.Height()), Sheets: sheets,
		Neighbours: []Neighbour{}, Dowels: []Dowel{}, Left: []Left{}, ArrowTo: view.Near,
		Region: view.Of[view.Form](region), Outline: view.Of[view.Form](region), LabelAt: view.PointOf[view.Form](label)}
	p.Mass = c.in.Density.Of(p.Area.Times(l.Depth))
	return p
}

// labelTol is how near the label comes to the part's widest place, mm; less in small
// parts.
const labelTol = 1

// letters returns A, B ... Z, AA, AB ...
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + string(rune('A'+i%26))
}

// glueOrder lists the parts as they are glued: largest outline first, which lies on
// the form's base, then the layers above it.
func glueOrder(parts []Part) []string {
	order := slices.Clone(parts)
	slices.SortStableFunc(order, func(a, b Part) int {
		return cmp.Or(cmp.Compare(a.Layer, b.Layer), cmp.Compare(b.Area, a.Area))
	})
	ids := []string{}
	for _, p := range order {
		ids = append(ids, p.ID)
	}
	return ids
}
