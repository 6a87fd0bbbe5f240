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

// Result is what to mix.
type Result struct {
	CastSurface units.Area     `json:"cast_surface_mm2"`
	Surfaces    Surfaces       `json:"surfaces"`
	Shell       units.Length   `json:"shell_thickness_mm"`
	ShellVolume units.Volume   `json:"shell_volume_l"`
	Naive       units.Volume   `json:"area_times_thickness_l"`
	NaiveOver   units.Fraction `json:"area_times_thickness_over"` // naive / true - 1
	Converged   units.Fraction `json:"converged_to"`              // relative change at the last halving
	Coats       []CoatResult   `json:"coats"`
	Recipes     []Recipe       `json:"recipes"`
	Batches     []Batch        `json:"batches"`
	ShellMass   units.Mass     `json:"shell_kg"`
}

// Surfaces is the mould's area by kind.
type Surfaces struct {
	Face  units.Area `json:"face_mm2"`  // form base outside the knockout: the show face
	Floor units.Area `json:"floor_mm2"` // tops of the knockout: basin floors
	Riser units.Area `json:"riser_mm2"` // upright sides of the knockout
	Wall  units.Area `json:"wall_mm2"`  // form sides less the mouths
}

// CoatResult is one coat's concrete in place.
type CoatResult struct {
	Name      string       `json:"name"`
	Mix       string       `json:"mix"`
	Thickness units.Length `json:"thickness_mm"`
	Volume    units.Volume `json:"volume_l"`
	Mass      units.Mass   `json:"mass_kg"`   // wet, in place
	ToMix     units.Mass   `json:"to_mix_kg"` // with spare
}

// Recipe is a mix by absolute volume.
type Recipe struct {
	Mix        string         `json:"mix"`
	Parts      []Part         `json:"parts_per_m3"`
	WetDensity units.Density  `json:"wet_density_kg_m3"`
	WaterRatio float64        `json:"water_to_cementitious"` // or to dry blend for a bagged mix
	Polymer    float64        `json:"polymer_solids_to_cementitious"`
	Fibre      float64        `json:"fibre_of_total"`
	Air        units.Fraction `json:"air"`
}

// Batch is one tub.
type Batch struct {
	Number     int          `json:"number"` // in building order
	Coat       string       `json:"coat"`
	Of         int          `json:"of"` // batches in this coat
	Mass       units.Mass   `json:"mass_kg"`
	Volume     units.Volume `json:"volume_l"`
	Parts      []Part       `json:"parts"`
	WaterFirst units.Mass   `json:"water_first_kg"` // 80 % at the start
	WaterUpTo  units.Mass   `json:"water_up_to_kg"` // the recipe's water
	WaterNever units.Mass   `json:"water_never_above_kg"`
}

// Part is one ingredient weighed.
type Part struct {
	Name string     `json:"name"`
	Role string     `json:"role"`
	Mass units.Mass `json:"mass_kg"`
}
