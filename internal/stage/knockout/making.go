package knockout

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Chosen: what a Making that says nothing gets.
const (
	DefaultMargin      units.Length = 10
	DefaultSpacing     units.Length = 2
	DefaultStagger     units.Length = 75
	DefaultSmallest    units.Length = 120
	DefaultClearance   units.Length = 0.15
	DefaultDowel       units.Length = 8
	DefaultDowelMargin units.Length = 12
	DefaultLand        units.Length = 40
	defaultEffort                   = 300
)

// customary are the diameters that dowels are sold in, mm.
var customary = []units.Length{6, 8, 10, 12, 16, 20, 25, 30}

// filled returns m with defaults in place of zeros. The margin is at least the
// cutter's diameter, so that it gets round parts at the edge.
func (m Making) filled(in Input) Making {
	set := func(v *units.Length, standard units.Length) {
		if !(*v > 0) || math.IsInf(float64(*v), 0) {
			*v = standard
		}
	}
	set(&m.Margin, DefaultMargin)
	set(&m.Spacing, DefaultSpacing)
	set(&m.Stagger, DefaultStagger)
	set(&m.Smallest, DefaultSmallest)
	set(&m.Clearance, DefaultClearance)
	set(&m.DowelMargin, DefaultDowelMargin)
	set(&m.Land, DefaultLand)
	dowel := DefaultDowel
	if in.Machine.Router {
		m.Margin = max(m.Margin, in.Machine.Cutter)
		for _, d := range customary {
			if d >= in.Machine.Cutter {
				dowel = max(dowel, d)
				break
			}
		}
	}
	set(&m.Dowel, dowel)
	if m.Seam != keyed && m.Seam != stepped {
		m.Seam = straight
	}
	if m.Turns != quarters && m.Turns != halves && m.Turns != noTurn {
		m.Turns = anyTurn
	}
	if m.Effort <= 0 {
		m.Effort = defaultEffort
	}
	return m
}

// gap returns the distance between parts on a sheet: the cutter's diameter and the
// spacing.
func (c *computer) gap() units.Length {
	if c.in.Machine.Router {
		return c.in.Machine.Cutter + c.in.Making.Spacing
	}
	return c.in.Making.Spacing
}

func (c *computer) kept() Kept {
	m := c.in.Making
	return Kept{Margin: m.Margin, Spacing: c.gap(), Stagger: m.Stagger, Smallest: m.Smallest, Clearance: m.Clearance, Dowel: m.Dowel, Seam: m.Seam, Turns: m.Turns}
}

// checks says what of machine and making cannot go well.
func (c *computer) checks() {
	c.flute()
	m := c.in.Making
	if c.in.Machine.Router && m.Dowel < c.in.Machine.Cutter && !m.NoDowels {
		c.say(smallDowel.At(finding.Where{Field: "knockout.dowel"}, "Dowels of %.1f mm need holes narrower than the cutter of %.1f mm.", m.Dowel, c.in.Machine.Cutter).
			Measured(float64(m.Dowel), float64(c.in.Machine.Cutter), "mm"))
	}
	if c.hopeless() {
		c.say(tooSmall.At(finding.Where{Field: "machine"}, "Bed and sheet leave room for pieces of %.0f x %.0f mm (%s); the smallest piece allowed is %.0f mm long.",
			c.room.x, c.room.y, c.room.by, m.Smallest).Measured(math.Max(c.room.x, c.room.y), float64(m.Smallest), "mm"))
	}
}

// leastRoomMM is the narrowest room in which seams are sought, mm. Chosen.
const leastRoomMM = 30

// hopeless reports whether the room is too small for the smallest piece allowed.
func (c *computer) hopeless() bool {
	return math.Max(c.room.x, c.room.y) < c.in.Making.Smallest.MM() || math.Min(c.room.x, c.room.y) < leastRoomMM
}

// bore takes the holes for dowels off shape.
func bore(shape geom.Region, ds []Dowel) geom.Region {
	out := make(geom.Region, len(shape))
	copy(out, shape)
	for _, d := range ds {
		at := geom.Point{X: d.X.MM(), Y: d.Y.MM()}
		for i := range out {
			if (geom.Region{out[i]}).Contains(at) {
				holes := append([]geom.Ring{}, out[i].Holes...)
				out[i].Holes = append(holes, circle(at, d.Diameter.MM()/2).Reversed())
			}
		}
	}
	return out
}
