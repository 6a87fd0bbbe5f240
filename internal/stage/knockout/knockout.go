// Package knockout turns the layers of the basin into foam parts, in form view.
package knockout

import (
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the basin's layers and the foam they are cut from.
type Input struct {
	Length   units.Length // of the piece, to turn it over
	Width    units.Length
	Layers   []Layer      // from the show face down
	Foam     units.Length // measured sheet thickness
	SheetX   units.Length
	SheetY   units.Length
	Density  units.Density
	Concrete units.Density // fresh, for the uplift; 0 takes 2100 kg/m3
}

// A Layer is one step of the basin.
type Layer struct {
	Number int
	Name   string
	Depth  units.Length // thickness
	Region view.Region[view.Finished]
}

// Result is the knockout.
type Result struct {
	Parts  []Part       `json:"parts"`      // by layer, in a layer from left to right in form view
	Glue   []string     `json:"glue_order"` // part ids, largest outline first: it lies on the form's base
	Mass   units.Mass   `json:"mass_kg"`
	Volume units.Volume `json:"volume_l"`
	Sheets int          `json:"sheets_at_least"` // by area; the nesting decides
}

// A Part is one piece of foam.
type Part struct {
	ID        string                 `json:"id"` // stable: layer number and place in the layer, L1-A
	Layer     int                    `json:"layer"`
	Thickness units.Length           `json:"thickness_mm"`
	Area      units.Area             `json:"area_mm2"`
	BoxX      units.Length           `json:"box_x_mm"`
	BoxY      units.Length           `json:"box_y_mm"`
	Mass      units.Mass             `json:"mass_kg"`
	Sheets    int                    `json:"thicknesses"` // sheets of foam stacked to make the thickness
	Region    view.Region[view.Form] `json:"-"`
	LabelAt   view.Point[view.Form]  `json:"-"`
}
