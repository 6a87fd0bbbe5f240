// Package relief turns the outlines of a basin into layers, volumes and mouths.
package relief

import (
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the basin as drawn, in the outer box.
type Input struct {
	Length, Width, Height units.Length // outer box
	Shell                 units.Length // thickness of concrete under the deepest floor
	Steps                 []Step       // from the show face down
	Neck, Land, Island    units.Length // narrower places are located
	Tolerance             units.Length // how near to a side still meets it
}

// A Step is one drawn layer before it is checked against its neighbours.
type Step struct {
	Name   string
	Depth  units.Length // thickness of the step
	Region view.Region[view.Finished]
	Where  finding.Where // in the document
}

// Result is the basin as it will be cast.
type Result struct {
	Volume units.Volume `json:"volume_l"`
	Depth  units.Length `json:"depth_mm"`
	Layers []Layer      `json:"layers"`
	Mouths []Mouth      `json:"mouths"`
	Fill   []FillPoint  `json:"fill"`
	Narrow []Narrow     `json:"narrow"`
}

// A Layer is the basin between two depths below the show face.
type Layer struct {
	Number    int                        `json:"number"` // 1 at the show face
	Name      string                     `json:"name"`
	From      units.Length               `json:"from_mm"`
	To        units.Length               `json:"to_mm"`
	Area      units.Area                 `json:"area_mm2"`
	Perimeter units.Length               `json:"perimeter_mm"`
	Volume    units.Volume               `json:"volume_l"`
	Islands   int                        `json:"islands"`
	Region    view.Region[view.Finished] `json:"-"`
}

// A Mouth is where the basin runs off a side of the piece.
type Mouth struct {
	Side    view.Side    `json:"side"`
	Width   units.Length `json:"width_mm"` // at the show face
	Depth   units.Length `json:"depth_mm"` // deepest
	Opening units.Area   `json:"opening_mm2"`
	From    units.Length `json:"from_mm"` // along the side, finished view, from the lower coordinate
	Profile []geom.Point `json:"-"`       // the opening's outline: along the side, depth below the face
}

// A FillPoint is a kink of the hypsometric curve.
type FillPoint struct {
	Depth  units.Length `json:"depth_mm"` // of resin above the deepest floor
	Volume units.Volume `json:"volume_l"`
	Area   units.Area   `json:"area_mm2"` // of the layer that ends here going up
}

// A Narrow is a place narrower than a stated limit.
type Narrow struct {
	Kind  string       `json:"kind"` // neck, land, island
	Layer int          `json:"layer"`
	X     units.Length `json:"x_mm"` // finished view
	Y     units.Length `json:"y_mm"`
	Width units.Length `json:"width_mm"`
	Limit units.Length `json:"limit_mm"`
}
