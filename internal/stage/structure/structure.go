// Package structure weighs the piece at every moment somebody lifts it.
package structure

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Input is what the other rooms found, as plain masses and volumes.
type Input struct {
	ShellVolume  units.Volume
	ShellDensity units.Density // cured
	ResinVolume  units.Volume  // in the piece at delivery
	ResinDensity units.Density
	FormMass     units.Mass
	FoamMass     units.Mass
	Extras       []Extra
	People       int
}

// Extra is a thing delivered with the piece.
type Extra struct {
	Name string
	Mass units.Mass
}

// Result is the masses.
type Result struct {
	Shell     units.Mass `json:"shell_kg"`
	Resin     units.Mass `json:"resin_kg"`
	Extras    units.Mass `json:"extras_kg"`
	Delivered units.Mass `json:"delivered_kg"` // shell + resin + extras
	Flip      units.Mass `json:"flip_kg"`      // shell + form + knockout, turned over before the form comes off
	Lifters   int        `json:"lifters"`      // people to turn it by the team rule
}

// Compute is pending.
func Compute(in Input) (Result, []finding.Finding) { panic("structure pending") }
