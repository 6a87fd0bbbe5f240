package relief

import (
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// narrow locates necks of the water, lands and islands of the concrete, layer by
// layer, to simplifyMM.
func (c *computer) narrow(layers []Layer) []Narrow {
	out := []Narrow{}
	for _, l := range layers {
		corners := 0
		for _, ring := range l.Region.Shape().Rings() {
			corners += len(ring)
		}
		if corners > maxSought {
			c.say(notSought.At(finding.Where{Element: l.Name}, "Layer %d has %d corners, more than the %d up to which narrow places are looked for.", l.Number, corners, maxSought))
			continue
		}
		water := l.Region.Shape().Simplify(simplifyMM)
		for _, n := range water.NarrowPlaces(c.in.Neck.MM()) {
			out = append(out, c.place(neck, "neck", "The basin", l, n, c.in.Neck))
		}
		var lands, islands geom.Region
		for _, p := range geom.Subtract(c.box.Region(), water) {
			if b := p.Outer.Box(); b.Min.X > 0 && b.Min.Y > 0 && b.Max.X < c.box.Max.X && b.Max.Y < c.box.Max.Y {
				islands = append(islands, p)
			} else {
				lands = append(lands, p)
			}
		}
		for _, n := range lands.NarrowPlaces(c.in.Land.MM()) {
			out = append(out, c.place(land, "land", "The land", l, n, c.in.Land))
		}
		for _, n := range islands.NarrowPlaces(c.in.Island.MM()) {
			out = append(out, c.place(island, "island", "The island", l, n, c.in.Island))
		}
	}
	return out
}

func (c *computer) place(rule finding.Rule, kind, what string, l Layer, n geom.Narrow, limit units.Length) Narrow {
	c.say(rule.At(at(finding.Where{Element: l.Name}, n.At), "%s is only %.1f mm wide here in layer %d; under %.0f mm is narrow.", what, n.Width, l.Number, limit).
		Measured(n.Width, float64(limit), "mm"))
	return Narrow{Kind: kind, Layer: l.Number, X: units.Length(n.At.X), Y: units.Length(n.At.Y), Width: units.Length(n.Width), Limit: limit}
}
