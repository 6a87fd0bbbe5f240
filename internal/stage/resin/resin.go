// Package resin turns the basin's fill curve into litres, lifts and buckets.
package resin

import (
	"pourwright/internal/material"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the basin, the resin card and how this shop pours.
type Input struct {
	Fill      []FillPoint // from the deepest floor up; the first is depth 0, volume 0
	TopArea   units.Area  // of the first layer, where overfill and shrink are paid
	Wetted    units.Area  // floors and risers that keep a film
	Card      material.Resin
	Bucket    units.Volume
	Freeboard units.Fraction
	Reserve   units.Fraction
	Overfill  units.Length
	Film      units.Length
	Gap       units.Length // no lift ends less than this above a terrace
	Room      units.Temperature

	Pot    units.Volume // of the vacuum pot; 0 without one
	Vacuum float64      // inHg below the atmosphere that the pump reaches
	Tint   Tint         // none for clear resin
	Slope  float64      // of the piece as it stands, along its length, mm per m
	Length units.Length // of the piece

	// What the cure is computed from; without Basin it is not.
	Basin    []Layer // from the show face down
	Width    units.Length
	Shell    units.Length // of concrete under the deepest floor
	Board    units.Length // thickness of the dam
	Dams     []Dam
	DamParts []Part // that the resin's heat reaches: facing, tape, release
	FoamLeft bool
	Foam     Part              // that is left
	Others   []material.Resin  // that the maker would also take
	Night    units.Temperature // of the room outside DayHours; only where these are stated
	DayHours units.Duration    // from eight in the morning on that the room is at Room; 0: all day
	History  []Stretch         // of the room from the first pour on, over and over; empty: none is known
	Limit    units.Temperature // peak that no lift may pass; 0 takes 60 C
	Pouring  units.Temperature // of the resin as poured
	Hours    Week              // when somebody is there
	Own      []OwnLift         // the maker's own lifts; empty: the planner chooses
}

// A Stretch is a time at one temperature.
type Stretch struct {
	Time units.Duration
	Temp units.Temperature
}

// A Layer is the basin between two depths below the show face.
type Layer struct {
	From, To units.Length
	Region   view.Region[view.Finished]
}

// A Dam closes a mouth.
type Dam struct {
	Side  view.Side
	From  units.Length // along the side, finished view, from the lower coordinate
	Width units.Length
	Depth units.Length // below the show face
}

// A FillPoint is a kink of the hypsometric curve.
type FillPoint struct {
	Depth  units.Length // above the deepest floor
	Volume units.Volume
}

// Result is what to buy and pour.
type Result struct {
	Volume   units.Volume `json:"volume_l"` // net: the basin to the rim
	Shrink   units.Volume `json:"shrink_l"`
	Overfill units.Volume `json:"overfill_l"`
	Film     units.Volume `json:"film_l"`
	Reserve  units.Volume `json:"reserve_l"`
	Order    units.Volume `json:"order_l"` // all of the above
	OrderKG  units.Mass   `json:"order_kg"`
	OrderUS  float64      `json:"order_us_gal"`
	OrderImp float64      `json:"order_imp_gal"`
	OrderA   units.Mass   `json:"order_a_kg"` // 0 when the ratio is not known, as all A and B
	OrderB   units.Mass   `json:"order_b_kg"`
	Resin    string       `json:"resin"`
	AToB     float64      `json:"b_per_100_a_by_mass"`
	Lifts    []Lift       `json:"lifts"`

	Cure         Cure          `json:"cure"`
	Alternatives []Alternative `json:"alternatives"`

	scheme *Scheme // chosen; nil where the cure was not computed

	Fields *Fields `json:"-"` // the cure in space and time; nil where it was not computed

	Stick    []Mark   `json:"stick"`    // depth marks of the pour stick, from the deepest floor up
	Cautions []string `json:"cautions"` // of safety, for the pour card

	Degas   *Degassing `json:"degas"` // null without a vacuum pot
	Shades  []Shade    `json:"tint_shades"`
	Shim    *Shim      `json:"shim"` // null where the piece stands level
	Bubbles []Bubble   `json:"bubbles"`
}

// A Bubble is how long a bubble of one size takes through the deepest lift.
type Bubble struct {
	Diameter units.Length   `json:"diameter_mm"`
	Rise     units.Duration `json:"rise_h"`
}

// A Lift is one pour.
type Lift struct {
	Number  int            `json:"number"`  // first poured first
	From    units.Length   `json:"from_mm"` // above the deepest floor
	To      units.Length   `json:"to_mm"`
	Depth   units.Length   `json:"depth_mm"` // To - From
	Volume  units.Volume   `json:"volume_l"`
	Pour    units.Volume   `json:"pour_l"`  // with the refill of the lift before, film and, on the last lift, its shrink and overfill
	Mass    units.Mass     `json:"mass_kg"` // of what is poured
	A       units.Mass     `json:"a_kg"`
	B       units.Mass     `json:"b_kg"`
	Tint    units.Mass     `json:"tint_kg"`
	Batches []Bucket       `json:"batches"`
	Wait    units.Duration `json:"wait_h"` // before the next lift; typical until the cure is computed

	// BondsUntil is until when the next lift bonds to this one without sanding; 0 for
	// the last lift and where the card does not say.
	BondsUntil units.Duration `json:"bonds_until_h"`

	// Computed with the cure; 0 where it was not. Hours after this lift's pour, but At.
	At      units.Duration    `json:"at_h"` // after the first pour, as planned
	Peak    units.Temperature `json:"peak_c"`
	PeakAt  units.Duration    `json:"peak_at_h"`
	Gels    units.Duration    `json:"gels_h"`
	Tacky   units.Duration    `json:"tack_free_h"`
	Scuffed bool              `json:"scuff"` // sand it dull before the next lift

	// What becomes of its surface when nothing comes after it, hours after this pour. It
	// can be poured over from RecoatFrom on, and bonds by itself until RecoatUntil.
	RecoatFrom  Moment `json:"recoat_from"`
	RecoatUntil Moment `json:"recoat_until"`
	TackFree    Moment `json:"tack_free"`
	Hard        Moment `json:"hard"`
	Sandable    Moment `json:"sandable"`
	Zones       []Zone `json:"zones"` // empty where the cure was not computed

	HoldBack units.Volume `json:"hold_back_l"` // of the pour, to top up with when the rest has shrunk

	// Torch is when to pass the flame over the surface for bubbles, after the pour.
	Torch []units.Duration `json:"torch_h"`
}

// A Bucket is one mixed batch of a lift.
type Bucket struct {
	Number  int          `json:"number"`
	Volume  units.Volume `json:"volume_l"`
	A       units.Mass   `json:"a_kg"`
	B       units.Mass   `json:"b_kg"`
	ScaleA  units.Mass   `json:"scale_a_kg"` // reading after A on a tared scale
	ScaleAB units.Mass   `json:"scale_ab_kg"`
	Tint    units.Mass   `json:"tint_kg"`
	Pulls   int          `json:"pulls"` // of the vacuum pot; 0 without one

	Free  units.Fraction `json:"free_share"` // of the bucket
	Stir  units.Duration `json:"stir_h"`
	Keeps units.Duration `json:"keeps_h"` // in the bucket before it thickens, at worst: no heat lost; 0 where not known
}
