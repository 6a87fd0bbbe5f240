// Package form turns the outer box into panels cut from measured board.
package form

import (
	"pourwright/internal/units"
)

// Input is the box and the board.
type Input struct {
	Length, Width, Height units.Length // of the piece: the inside of the form
	Thickness             units.Length // of the board, measured
	Corner                string       // butt or mitre
	ButtOrder             string       // long or short: which pair runs past the other
	SheetX, SheetY        units.Length
	Density               units.Density
	Kerf                  units.Length
	Covered               units.Area // of the base by the knockout, which needs no wax
}

// Result is the form.
type Result struct {
	Panels  []Panel      `json:"panels"`
	Mass    units.Mass   `json:"mass_kg"`
	Seam    units.Length `json:"seam_mm"`     // inside corners to caulk
	Release units.Area   `json:"release_mm2"` // inside faces to wax, less what the knockout covers
	Sheets  int          `json:"sheets_at_least"`
}

// A Panel is one kind of board part.
type Panel struct {
	Name      string       `json:"name"` // base, long side, short side
	Length    units.Length `json:"length_mm"`
	Width     units.Length `json:"width_mm"`
	Thickness units.Length `json:"thickness_mm"`
	Count     int          `json:"count"`
	Mass      units.Mass   `json:"mass_kg"` // of one
	Bevel     string       `json:"bevel"`   // "" or where 45 degrees are cut
}
