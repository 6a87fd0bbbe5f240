package resin

import (
	"cmp"
	"fmt"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A Part is something the warm resin touches and the most it bears.
type Part struct {
	Name string
	Most units.Temperature
}

// What is taken where nothing is stated. Source: [practice], from memory: edge banding's
// glue lets go at 60 to 80 C, tape's at about 70; polystyrene shrinks from a contact of
// 70 C.
var (
	bareEdge    = Part{"the edge banding of a faced board", 60}
	polystyrene = Part{"polystyrene", 70}
)

// spoils is how far over its limit a face is when the dam is likely to leak or bond fast
// and not only to mark, K. Chosen.
const spoils units.Temperature = 15

// damPart returns the part of the dam that bears least.
func (c *computer) damPart() Part {
	parts := slices.DeleteFunc(slices.Clone(c.in.DamParts), func(p Part) bool { return !known(p.Most) || p.Most <= 0 })
	if len(parts) == 0 {
		return bareEdge
	}
	return slices.MinFunc(parts, func(a, b Part) int { return cmp.Compare(a.Most, b.Most) })
}

// foam returns the foam that is left under the shell; none is taken to bear more than
// polystyrene does in contact.
func (c *computer) foam() Part {
	f := c.in.Foam
	if f.Name == "" {
		f.Name = polystyrene.Name
	}
	if !known(f.Most) || f.Most <= 0 || f.Most > polystyrene.Most {
		f.Most = polystyrene.Most
	}
	return f
}

func (c *computer) guard() Guard {
	return Guard{Peak: c.limit(), Dam: c.damPart().Most, Foam: c.foam().Most}
}

// deepestDam returns the dam with most resin against it.
func (c *computer) deepestDam() Dam {
	if len(c.in.Dams) == 0 {
		return Dam{}
	}
	return slices.MaxFunc(c.in.Dams, func(a, b Dam) int { return cmp.Compare(a.Depth, b.Depth) })
}

// contact holds the dam's face and the foam against what they bear.
func (c *computer) contact(k Cure) {
	if d := c.deepestDam(); len(c.in.Dams) > 0 {
		c.touches(damHot, k.Dam, k.DamHigh, c.damPart(), "dam",
			fmt.Sprintf("The dam's face on the %s side, where the resin is %.0f mm deep,", d.Side, d.Depth))
	}
	if c.in.FoamLeft {
		c.touches(foamHot, k.Foam, k.FoamHigh, c.foam(), "resin.foam", "The foam left under the shell")
	}
}

// touches says when a face passes what its part bears: as planned, a caution, and where
// it does so by far a stop; in one case of ten, a note, and by far a caution.
func (c *computer) touches(rule finding.Rule, planned, high units.Temperature, part Part, element, what string) {
	where := finding.Where{Element: element}
	switch {
	case planned > part.Most:
		f := rule.At(where, "%s gets %.0f C, up to %.0f C by what is not known exactly; %s bears %.0f C.", what, planned, high, part.Name, part.Most).Measured(float64(planned), float64(part.Most), "C")
		if planned > part.Most+spoils {
			f = f.As(finding.Stop)
		}
		c.say(f)
	case high > part.Most:
		f := rule.At(where, "%s gets %.0f C as planned, which %s bears, but one time in ten more than %.0f C; %.0f C is its limit.", what, planned, part.Name, high, part.Most).Measured(float64(high), float64(part.Most), "C")
		if high <= part.Most+spoils {
			f = f.As(finding.Note)
		}
		c.say(f)
	}
}
