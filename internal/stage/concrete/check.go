package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

const largest units.Length = 1e5 // mm; no shop casts a hundred metres

// known reports whether v is a number that can be worked with.
func known[Q ~float64](v Q) bool { return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0) }

// share returns f held between 0 and most, 0 where it is no number.
func share(f units.Fraction, most float64) float64 {
	if !known(f) {
		return 0
	}
	return math.Max(0, math.Min(most, float64(f)))
}

// checked returns the input with what cannot be worked with left out or set safe; a
// finding says so. The original is not changed.
func (c *computer) checked(in Input) Input {
	in.Coats = c.coatsThatAre(in.Coats)
	in.Zones = c.zonesThatAre(in.Zones, in.Coats, in.Height)
	in.Layers = c.nested(c.solidLayers(in.Layers, in.Height))
	return in
}

// coatsThatAre returns the coats that have a thickness.
func (c *computer) coatsThatAre(coats []Coat) []Coat {
	var out []Coat
	for i, coat := range coats {
		if !(coat.Thickness > 0) || coat.Thickness > largest {
			c.say(noThickness.At(finding.Where{Element: coat.Name}, "Coat %d (%s) is %.1f mm thick, so it is left out.", i+1, coat.Name, coat.Thickness))
			continue
		}
		out = append(out, coat)
	}
	if len(out) == 0 {
		c.say(noCoats.At(finding.Where{}, "No coat of concrete is given, so there is no shell."))
	}
	return out
}

// solidLayers returns the layers that have depth and area, clipped at the rim.
func (c *computer) solidLayers(layers []Layer, rim units.Length) []Layer {
	var out []Layer
	for i, l := range layers {
		from, to := max(0, l.From), min(l.To, rim)
		if !known(l.From) || !known(l.To) || to <= from || !(l.Region.Area() > 0) {
			c.say(noLayer.At(finding.Where{}, "Layer %d of the knockout, %.1f to %.1f mm, has no depth or no area inside the form, so it is left out.", i+1, l.From, l.To))
			continue
		}
		out = append(out, Layer{From: from, To: to, Region: l.Region})
	}
	return out
}

const sliver = 1.0 // mm2, what rounding to the grid may leave of an outline that touches another

// nested returns the layers grown so that each holds every deeper one: concrete
// cannot be cast under foam.
func (c *computer) nested(layers []Layer) []Layer {
	out := append([]Layer(nil), layers...)
	for i := len(out) - 2; i >= 0; i-- {
		upper, deeper := out[i].Region.Shape(), out[i+1].Region.Shape()
		over := geom.Subtract(deeper, upper).Area()
		if over <= sliver {
			continue
		}
		c.say(undercut.At(finding.Where{}, "Layer %d of the knockout reaches %.0f mm2 past layer %d, under which no concrete can be cast; what it covers counts as foam up to the show face.", i+2, over, i+1))
		out[i].Region = view.Of[view.Finished](geom.Union(upper, deeper))
	}
	return out
}
