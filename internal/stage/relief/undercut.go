package relief

import (
	"cmp"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/view"
)

const (
	sliverMM = 0.06 // Chosen: a strip this thin is left where one curve is flattened twice, each time within 0.05 mm, and by the grid
	deepTol  = 0.05 // of an overhang, mm
	maxSaid  = 6    // places of one kind that get a finding each; the others are counted
)

// sliver reports whether p is, on the mean, thinner than sliverMM.
func sliver(p geom.Polygon) bool {
	return p.Area() <= sliverMM*geom.Region{p}.Perimeter()/2
}

// overhang is a piece of a step that reaches out under the layer above.
type overhang struct {
	area, far float64
	at        geom.Point
}

// under says where r, the region of s, reaches out under the layer above and cuts
// it back there.
func (c *computer) under(s Step, r view.Region[view.Finished], above Layer) view.Region[view.Finished] {
	diff := r.Subtract(above.Region).Shape()
	if len(diff) == 0 {
		return r
	}
	var over []overhang
	edge := geom.NewLocator(above.Region.Shape())
	for _, p := range diff {
		if sliver(p) {
			continue
		}
		at, far := geom.Region{p}.DeepestOutside(edge, deepTol)
		over = append(over, overhang{p.Area(), far, at})
	}
	slices.SortStableFunc(over, func(a, b overhang) int { return cmp.Compare(b.far, a.far) })
	c.sayUndercuts(s, over, above)
	cut := r.Intersect(above.Region)
	if len(over) > 0 && cut.Empty() {
		c.say(undercut.At(s.Where, "No part of step %s lies under %s, so it is left out.", s.Name, above.Name))
	}
	return cut
}

func (c *computer) sayUndercuts(s Step, over []overhang, above Layer) {
	rest := 0.0
	for i, o := range over {
		if i >= maxSaid {
			rest += o.area
			continue
		}
		c.say(undercut.At(at(s.Where, o.at), "Step %s reaches out up to %.1f mm under %s, over %.0f mm2.", s.Name, o.far, above.Name, o.area).Measured(o.far, 0, "mm"))
	}
	if n := len(over) - maxSaid; n > 0 {
		where := s.Where
		where.View, where.At = "", nil
		c.say(undercut.At(where, "Step %s reaches out under %s at %d more places, over %.0f mm2 in all.", s.Name, above.Name, n, rest).As(finding.Stop))
	}
}
