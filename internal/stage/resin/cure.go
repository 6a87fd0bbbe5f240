package resin

import (
	"pourwright/internal/units"
)

// A Cure is what becomes of the resin: computed by the three-dimensional model of
// stage/resin/heat. Times are hours after the first pour.
type Cure struct {
	Computed bool              `json:"computed"`
	Clock    units.Duration    `json:"first_pour_clock_h"` // hour of the day at which the first lift is poured
	Limit    units.Temperature `json:"limit_c"`            // no lift may pass it
	Peak     units.Temperature `json:"peak_c"`
	Low      units.Temperature `json:"peak_low_c"` // the band: 80 % of the members lie between
	High     units.Temperature `json:"peak_high_c"`
	Members  int               `json:"band_members"`
	Column   units.Temperature `json:"column_peak_c"` // of an endless slab of the same lifts: no place gets as warm
	// Influences says what the band comes from, the strongest first.
	Influences []Influence       `json:"influences"`
	PeakAt     units.Duration    `json:"peak_at_h"`
	PeakIn     int               `json:"peak_in_lift"`
	PeakX      units.Length      `json:"peak_x_mm"` // finished view
	PeakY      units.Length      `json:"peak_y_mm"`
	PeakZ      units.Length      `json:"peak_height_mm"` // above the deepest floor
	Dam        units.Temperature `json:"dam_face_c"`
	DamHigh    units.Temperature `json:"dam_high_c"`  // nine of ten cases stay below
	DamLimit   units.Temperature `json:"dam_limit_c"` // of its weakest part; 0 without a dam
	// DamWeakest names that part, and DamSide the side of the deepest dam.
	DamWeakest string            `json:"dam_weakest"`
	DamSide    string            `json:"dam_side"`
	Foam       units.Temperature `json:"foam_c"` // 0 where the foam was taken out
	FoamHigh   units.Temperature `json:"foam_high_c"`
	FoamLimit  units.Temperature `json:"foam_limit_c"`
	FoamName   string            `json:"foam_name"`
	Sandable   units.Duration    `json:"sandable_h"`
	Last       *Soft             `json:"last_to_harden"` // null where all hardens within the run
	Soft       []Soft            `json:"soft_places"`    // shallow places that lag behind
	Zones      []Zone            `json:"zones"`          // of the last surface; hours after the first pour
	Rooms      []RoomCase        `json:"rooms"`
	Error      Numerics          `json:"numerics"`
}

// A Soft place is a part of the basin that stays soft when the deep ones are hard.
type Soft struct {
	X    units.Length   `json:"x_mm"` // finished view
	Y    units.Length   `json:"y_mm"`
	Deep units.Length   `json:"resin_mm"`
	At24 float64        `json:"conversion_at_24_h"`
	Hard units.Duration `json:"hard_at_h"` // 0: not within the run
	When Moment         `json:"hard"`
}

// A RoomCase is what the same pours do in a room at another temperature.
type RoomCase struct {
	Room units.Temperature `json:"room_c"`
	Peak units.Temperature `json:"peak_c"`
	Dam  units.Temperature `json:"dam_face_c"`
	Hard units.Duration    `json:"hard_at_h"` // 0: not within the run
	Foam units.Temperature `json:"foam_c"`
	When Moment            `json:"hard"`
	// Within says whether all limits still hold.
	Within bool `json:"within_limits"`
}

// Numerics say how finely the cure was computed and what that leaves open.
type Numerics struct {
	Cells  int               `json:"cells"`
	Steps  int               `json:"steps"`
	Grid   units.Length      `json:"grid_mm"`
	Asked  units.Length      `json:"asked_grid_mm"`    // of a basin that is not too large
	Wide   units.Length      `json:"coarse_grid_mm"`   // of the second grid
	Coarse units.Temperature `json:"coarse_peak_c"`    // on a grid twice as wide
	Off    units.Temperature `json:"peak_uncertain_c"` // difference between the two grids
	Energy float64           `json:"energy_defect"`    // of the heat set free
}

// An Alternative is another way of pouring, with its price.
type Alternative struct {
	Lifts    []units.Length    `json:"lifts_mm"`
	At       []units.Duration  `json:"poured_at_h"`
	Peak     units.Temperature `json:"peak_c"`
	Dam      units.Temperature `json:"dam_face_c"`
	Done     units.Duration    `json:"hard_at_h"` // 0: not within the run
	Scuff    []int             `json:"scuff_lifts"`
	Hands    units.Duration    `json:"hands_h"`
	Within   bool              `json:"within_limits"`
	Chosen   bool              `json:"chosen"`
	Sentence string            `json:"sentence"`

	Resin   string            `json:"resin"`
	Kind    string            `json:"kind"` // chosen, least elapsed, fewest lifts, coolest, another resin, or other
	Low     units.Temperature `json:"peak_low_c"`
	High    units.Temperature `json:"peak_high_c"`
	DamHigh units.Temperature `json:"dam_high_c"`
	Column  units.Temperature `json:"column_peak_c"`
	Sure    bool              `json:"sure"` // nine of ten cases keep within the limits
	When    Moment            `json:"hard"`
	Buckets int               `json:"buckets"`
	Clock   units.Duration    `json:"first_pour_clock_h"` // hour of the day at which the first lift is best poured
	Why     string            `json:"why_not"`            // "" where it is chosen
}
