package base

import (
	"pourwright/internal/cutlist"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Input is the shell from below, the carcass wanted and the supports.
type Input struct {
	Length, Width, Height units.Length // of the piece
	Shell                 units.Length
	Basin                 units.Length // depth of the basin
	Carcass               *Carcass     // nil: none is wanted
	Supports              []Support
	Cut                   cutlist.Input // stock, kerf and trim of the carcass's board; parts are added here
	Bars                  []Stock
	BarKerf               units.Length // of the metal saw
}

// Carcass is the base as the maker wants it.
type Carcass struct {
	Board     string
	Thickness units.Length // measured
	Density   units.Density
	Height    units.Length // 0: as high as the hollow and a reveal of 20 mm
	Clearance units.Length // to the shell's inside, on every side
	Dividers  int
	Joint     string       // butt, or groove
	Groove    units.Length // depth of the grooves
	Open      string       // side with storage openings: near, far, both or none
	Rail      units.Length // board left round an opening
}

// Support is a kind of cross support of square tube.
type Support struct {
	Name       string
	Tube       string
	Side, Wall units.Length
	MassPerM   float64
	Bar        units.Length // length sold
	Length     units.Length
	Count      int
	Bolt       units.Length   // nominal diameter: 6, 8, 10, 12
	FromEnd    units.Length   // of the holes; 0: over the middle of the carcass's side, or 40 mm
	At         []units.Length // along the length; empty: evenly
	Field      string
}

// Stock is bars that are owned.
type Stock struct {
	Tube   string
	Name   string
	Length units.Length
	Count  int
}

// Result is the base.
type Result struct {
	Wanted   bool                `json:"wanted"`
	Length   units.Length        `json:"length_mm"` // of the carcass, outside
	Width    units.Length        `json:"width_mm"`
	Height   units.Length        `json:"height_mm"`
	Reveal   units.Length        `json:"reveal_mm"` // how high the shell's foot stands over the floor
	Parts    []Part              `json:"parts"`
	Openings []Opening           `json:"openings"`
	Fixings  []Fixing            `json:"fixings"`
	Mass     units.Mass          `json:"mass_kg"`
	Feet     []geom.Point        `json:"feet"` // hull of what stands on the floor, FINISHED VIEW
	Supports []Tube              `json:"supports"`
	Cutting  cutlist.Result      `json:"cutting"`
	Bars     []cutlist.BarResult `json:"bars"`
}

// A Part is a board of the carcass.
type Part struct {
	Name      string       `json:"name"`
	Length    units.Length `json:"length_mm"`
	Width     units.Length `json:"width_mm"`
	Thickness units.Length `json:"thickness_mm"`
	Count     int          `json:"count"`
	Mass      units.Mass   `json:"mass_kg"` // of one
	Note      string       `json:"note"`
}

// An Opening is cut in a side of the carcass.
type Opening struct {
	Side   string       `json:"side"`
	X      units.Length `json:"x_mm"` // from the side's left end, seen from outside
	Y      units.Length `json:"y_mm"` // from its foot
	Length units.Length `json:"length_mm"`
	Height units.Length `json:"height_mm"`
}

// A Fixing is hardware.
type Fixing struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Where string `json:"where"`
}

// A Tube is one kind of cross support with its holes.
type Tube struct {
	Name    string         `json:"name"`
	Tube    string         `json:"tube"`
	Side    units.Length   `json:"side_mm"`
	Length  units.Length   `json:"length_mm"`
	Count   int            `json:"count"`
	Mass    units.Mass     `json:"mass_kg"` // of one
	At      []units.Length `json:"at_mm"`   // of the middles along the length, FINISHED VIEW
	Holes   []Hole         `json:"holes"`
	Section float64        `json:"section_mm3"` // corners taken sharp
	AtHole  float64        `json:"section_at_hole_mm3"`
}

// A Hole is drilled in a tube.
type Hole struct {
	Face     string       `json:"face"`  // lower or upper
	At       units.Length `json:"at_mm"` // from the tube's left end
	Diameter units.Length `json:"diameter_mm"`
	For      string       `json:"for"`
}

// Empty is a base that is not there.
func Empty() Result {
	return Result{Parts: []Part{}, Openings: []Opening{}, Fixings: []Fixing{}, Feet: []geom.Point{}, Supports: []Tube{},
		Cutting: cutlist.Empty(), Bars: []cutlist.BarResult{}}
}
