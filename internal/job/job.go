// Package job is the document: what the maker decided. Document is the text as it
// stands in piece.yaml, every measure kept as typed; Resolve turns it into a Job,
// whose measures are quantities and whose materials are cards.
package job

import (
	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// A Job is a resolved document: every measure a quantity, every material a card
// with the maker's overrides applied. Readers of drawings and the stages get their
// input from it by way of package plan.
type Job struct {
	Name    string
	Version string
	Client  string
	Units   string // "mm" or "in": the system the maker works in
	Notes   string

	Length, Width, Height units.Length // outer box of the piece

	Coats    []Coat // from the mould outwards; their sum is the shell thickness
	Basin    Basin
	Foam     Foam
	Knockout Knockout
	Form     Form
	Mixing   Mixing
	Casting  Casting
	Resin    Resin
	Room     Room
	Shop     Shop
	Machine  material.Machine
	Outline  [][2]units.Length // convex, FINISHED VIEW; nil for the rectangle
	Stock    []Stock
	Base     *Base   // nil: none is wanted
	Extras   []Extra // supports, base and the like: delivered with the piece

	// Places maps a field path ("basin.steps[2].depth") to where it stands in the
	// document, for findings of later stages.
	Places map[string]finding.Where
}

// Shell returns the sum of the coats.
func (j Job) Shell() units.Length {
	var sum units.Length
	for _, c := range j.Coats {
		sum += c.Thickness
	}
	return sum
}

// A Coat is one layer of concrete, first against the mould.
type Coat struct {
	Name      string
	Thickness units.Length
	Mix       material.Mix
}

// Basin is the hollow that resin fills.
type Basin struct {
	Drawing    string       // file of outlines, relative to the document; or
	HeightMap  string       // file of heights, relative to the document
	Place      string       // "page": the drawing's page is the box; "centre"; or "at"
	AtX, AtY   units.Length // of the drawing's lower left corner in the box, for "at"
	Resolution float64      // user units per inch for unitless drawings; 96 unless said
	ChordError units.Length // 0.05 mm unless said
	Steps      []Step       // from the show face down

	// For a height map:
	MapLength, MapWidth units.Length // size of the map on the piece; 0: as a text grid states, or in proportion
	MapDepth            units.Length // from white (face) to black (deepest); 0: as a text grid states
	Speck               units.Area   // smaller spots are dropped
	Smooth              units.Length // cutter radius the outlines are smoothed to
}

// A Step is one layer of the basin.
type Step struct {
	Name     string
	Outlines []string     // ids, group ids or .classes in the drawing
	Islands  []string     // outlines left standing in this step
	Depth    units.Length // thickness of this step; the foam's measured thickness for "foam"
	IsFoam   bool         // depth was given as "foam"
}

// Foam is the knockout's sheet.
type Foam struct {
	Card        material.Foam
	Measured    units.Length // caliper thickness; nominal when not measured
	WasMeasured bool
	Offcuts     []Offcut
}

// Form is the panel form.
type Form struct {
	Board       material.Board
	Measured    units.Length // caliper thickness
	WasMeasured bool
	Kerf        units.Length
	Trim        units.Length // edge trim of a sheet
	Corner      string       // "butt" or "mitre"
	ButtOrder   string       // "long" (long sides run past) or "short"
	Making      Making
}

// Mixing is how concrete is mixed in this shop.
type Mixing struct {
	Tub       units.Volume   // full volume of the mixing tub
	Freeboard units.Fraction // of the tub left empty
	Spare     units.Fraction // extra mix for patches and what sticks to the tub
	People    int
}

// Resin is how resin is poured in this shop.
type Resin struct {
	Card      material.Resin
	Bucket    units.Volume
	Freeboard units.Fraction // of the bucket left empty for stirring
	Reserve   units.Fraction // bought beyond need
	Overfill  units.Length   // poured above the rim level, to be sanded off
	Film      units.Length   // wetting film left on concrete and in buckets, as a depth on the wetted area
	Gap       units.Length   // terrace guard: no lift ends this close above a terrace
	Pot       units.Volume   // of the vacuum pot; 0 without one
	Vacuum    float64        // inHg below the atmosphere
	Slope     float64        // out of level along the length, mm per m
	Tint      Tint
	Lifts     []Lift // the maker's own; empty: the planner chooses
	FoamLeft  bool
	PeakLimit units.Temperature
	Pouring   units.Temperature // of the resin as poured
	Others    []material.Resin  // that would also do
}

// Room is where it happens.
type Room struct {
	Temperature units.Temperature
	Humidity    units.Fraction // 0 when not stated
	Night       units.Temperature
	DayHours    units.Duration // 0: no night is stated
	Log         string         // file of logged temperatures, relative to the document
	History     []Stretch      // from the first coat on; a log takes its place
	Logged      bool
}

// Shop is when somebody is there.
type Shop struct {
	Start  string    // date of the first day, YYYY-MM-DD, or "" for day numbers only
	Hours  [7][]Span // Monday first; empty: closed
	Closed []string  // dates on which nobody is there, in order
	People []Person  // who works here; none: not stated
}

// A Person is one who works in the shop.
type Person struct {
	Name  string
	Hours [7][]Span // Monday first
	Away  []string  // dates, in order
}

// A Span is a stretch of a day, hours after midnight.
type Span struct{ From, To units.Duration }

// An Extra is a thing delivered with the piece.
type Extra struct {
	Name    string
	Mass    units.Mass // of all of them
	Tube    *material.Tube
	Length  units.Length // of one
	Count   int
	Bolt    units.Length   // nominal diameter
	FromEnd units.Length   // of the holes; 0: over the base's sides
	At      []units.Length // along the length; empty: evenly
	Field   string
}
