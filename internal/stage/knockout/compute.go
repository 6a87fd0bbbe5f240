package knockout

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

const (
	slackMM    = 0.3  // Chosen: how far a layer may miss a whole number of sheets; caulk and sanding take it up
	wetDensity = 2100 // kg/m3, of fresh GFRC for the uplift. Source: [gfrc-guides]
	gravity    = 9.80665
)

// Compute turns the layers over into form view and makes one part of every
// connected piece. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Parts: []Part{}, Glue: []string{}}
	var found []finding.Finding
	flip := view.Flip{Length: in.Length.MM()}
	need := 0.0 // mm2 of sheet
	for _, l := range in.Layers {
		sheets, f := sheetsFor(l, in.Foam)
		found = append(found, f...)
		for i, poly := range flip.ToForm(l.Region).Shape() {
			p := part(in, l, i, poly, sheets)
			found = append(found, tooLarge(in, p)...)
			need += float64(p.Area) * float64(max(sheets, 1))
			r.Parts = append(r.Parts, p)
			r.Mass += p.Mass
			r.Volume += p.Area.Times(p.Thickness)
		}
	}
	if sheet := float64(in.SheetX) * float64(in.SheetY); sheet > 0 && !math.IsNaN(need) {
		r.Sheets = int(math.Ceil(need/sheet - 1e-9))
	}
	r.Glue = glueOrder(r.Parts)
	if len(r.Parts) > 0 {
		found = append(found, uplift.At(finding.Where{}, "If slurry gets under the knockout it lifts with up to %.0f N.", float64(Uplift(r.Volume, r.Mass, wetDensity))),
			touches.At(finding.Where{}, "The knockout is polystyrene foam: solvents, petrol, paraffin oil and petroleum jelly eat it."))
	}
	return r, found
}

// Uplift returns the buoyancy of foam of volume v and mass m under a liquid of
// density d, N: F = (d v - m) g. Source: [analytic].
func Uplift(v units.Volume, m units.Mass, d units.Density) units.Force {
	return units.Force(max(0, float64(d.Of(v)-m)*gravity))
}

func part(in Input, l Layer, i int, poly geom.Polygon, sheets int) Part {
	region := view.Of[view.Form](geom.Region{poly})
	box := poly.Outer.Box()
	p := Part{ID: fmt.Sprintf("L%d-%s", l.Number, letters(i)), Layer: l.Number, Thickness: l.Depth, Area: units.Area(poly.Area()),
		BoxX: units.Length(box.Width()), BoxY: units.Length(box.Height()), Sheets: sheets, Region: region,
		LabelAt: view.PointOf[view.Form](labelPoint(poly))}
	p.Mass = in.Density.Of(p.Area.Times(l.Depth))
	return p
}

// letters returns A, B ... Z, AA, AB ...
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + string(rune('A'+i%26))
}

// labelPoint returns a point inside poly, in the middle of its longest stretch along
// one of a few horizontal lines.
func labelPoint(poly geom.Polygon) geom.Point {
	box := poly.Outer.Box()
	best, at := 0.0, poly.Outer[0]
	const lines = 9
	for k := 1; k <= lines; k++ {
		y := box.Min.Y + box.Height()*float64(k)/(lines+1) + geom.Grid/3
		var xs []float64
		for _, ring := range poly.Rings() {
			for i, a := range ring {
				if b := ring[(i+1)%len(ring)]; (a.Y <= y) != (b.Y <= y) {
					xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
				}
			}
		}
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			if w := xs[i+1] - xs[i]; w > best {
				best, at = w, geom.Point{X: (xs[i] + xs[i+1]) / 2, Y: y}
			}
		}
	}
	return at
}

// glueOrder lists the parts as they are glued: largest outline first, which lies on
// the form's base, then the layers above it.
func glueOrder(parts []Part) []string {
	order := slices.Clone(parts)
	slices.SortStableFunc(order, func(a, b Part) int {
		switch {
		case a.Layer != b.Layer:
			return a.Layer - b.Layer
		case a.Area > b.Area:
			return -1
		case a.Area < b.Area:
			return 1
		}
		return 0
	})
	ids := []string{}
	for _, p := range order {
		ids = append(ids, p.ID)
	}
	return ids
}

// sheetsFor returns how many sheets make the layer's thickness.
func sheetsFor(l Layer, foam units.Length) (int, []finding.Finding) {
	if !(foam > 0) || !(l.Depth > 0) {
		return 1, nil
	}
	n := math.Max(1, math.Round(float64(l.Depth/foam)))
	if miss := float64(l.Depth) - n*float64(foam); math.Abs(miss) > slackMM {
		up := math.Ceil(float64(l.Depth/foam) - 1e-9)
		return int(up), []finding.Finding{thickness.At(finding.Where{Element: l.Name},
			"Layer %d is %.1f mm deep and the foam is %.1f mm by caliper: %.0f sheets miss it by %+.1f mm.", l.Number, l.Depth, foam, n, -miss).
			Measured(float64(l.Depth), n*float64(foam), "mm").
			Do("Make the step %.1f mm deep, or plane %.0f sheets down to %.1f mm.", n*float64(foam), up, l.Depth)}
	}
	return int(n), nil
}

// tooLarge says which part no sheet holds.
func tooLarge(in Input, p Part) []finding.Finding {
	if !(in.SheetX > 0 && in.SheetY > 0) {
		return nil
	}
	long, short := max(p.BoxX, p.BoxY), min(p.BoxX, p.BoxY)
	if long <= max(in.SheetX, in.SheetY) && short <= min(in.SheetX, in.SheetY) {
		return nil
	}
	return []finding.Finding{seam.At(finding.Where{Element: p.ID}, "Part %s is %.0f x %.0f mm and the sheet %.0f x %.0f mm, so it needs a seam.", p.ID, p.BoxX, p.BoxY, in.SheetX, in.SheetY)}
}
