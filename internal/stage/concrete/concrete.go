// Package concrete turns the mould's surfaces into coats, volumes and batches.
package concrete

import (
	"pourwright/internal/material"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the mould and how this shop mixes.
type Input struct {
	Length, Width, Height units.Length
	Layers                []Layer // of the basin, from the show face down
	Coats                 []Coat
	Tub                   units.Volume
	Freeboard             units.Fraction
	Spare                 units.Fraction
	People                int
	Temperature           units.Temperature

	Zones    []Zone         // where the shell is thicker or thinner than its coats add up to
	Stated   units.Length   // thickness of the shell as the maker states it; 0: what the coats add up to
	Mixer    units.Mass     // most that the mixer takes at once; 0: as the tub
	PackRate float64        // m2 an hour that one person packs of one coat; 0: usual
	Scale    units.Mass     // smallest step of the scale; 0: usual
	Patch    units.Mass     // dry mix of the face kept back for patches
	Climate  Climate        // temperatures from the first coat on; empty: Temperature throughout
	Humidity units.Fraction // of the shop's air; 0: not stated
	Draught  float64        // km/h of air over the work
	MixTemp  units.Temperature
	HasMix   bool // MixTemp is stated
	Needs    Needs
	Records  []Record
	DryDays  units.Duration // planned for drying; 0: usual
	Scrim    Scrim
	Bare     []string // kinds of surface that are not sealed beyond the basin's own: face, wall
	Necks    []Spot   // narrow places of the relief, finished view
	Mouths   []Edge
}

// A Layer is the knockout between two depths.
type Layer struct {
	From, To units.Length
	Region   view.Region[view.Finished]
}

// A Coat is one layer of concrete, first against the mould.
type Coat struct {
	Name      string
	Thickness units.Length
	Mix       material.Mix
}

// A Zone is a part of the shell of another thickness than its coats add up to. The
// first coat keeps its thickness everywhere; the others share the difference.
type Zone struct {
	Surface   string       // top: face and basin floors, at right angles to them; heel: the sides next to the foot
	Thickness units.Length // of all coats together
	Height    units.Length // of a heel, up from the foot
}

// Climate is a history of temperatures from the first coat on. After its end it holds
// its last temperature, or starts again where it repeats.
type Climate struct {
	Stretches []Stretch
	Repeats   bool
	From      string // constant, day and night, logged
}

// Needs are the strengths that the work asks of the concrete, MPa in compression; 0:
// usual.
type Needs struct{ Demould, Flip, Work float64 }

// A Record is what the maker found at an earlier casting of the same mix.
type Record struct {
	Age         units.Duration    // after casting
	Temperature units.Temperature // of the shop meanwhile
	Strength    float64           // MPa, as tested
}

// Scrim is how open mesh is laid inside the backer.
type Scrim struct {
	Use  bool
	Roll units.Length // width of the roll; 0: usual
	Lap  units.Length // of two pieces; 0: usual
}

// A Spot is a place in finished view, mm.
type Spot struct {
	X, Y, Width units.Length
}

// An Edge is where the basin runs off a side of the piece: along the side in finished
// view, from its lower coordinate.
type Edge struct {
	Side        string // left, right, near, far
	From, Width units.Length
}
