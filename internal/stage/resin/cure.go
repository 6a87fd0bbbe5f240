package resin

import (
	"pourwright/internal/units"
)

// A Cure is what becomes of the resin: computed by the three-dimensional model of
// stage/resin/heat. Times are hours after the first pour.
type Cure struct {
	Computed bool              `json:"computed"`
	Limit    units.Temperature `json:"limit_c"` // no lift may pass it
	Peak     units.Temperature `json:"peak_c"`
	Low      units.Temperature `json:"peak_low_c"` // the band: 80 % of the members lie between
	High     units.Temperature `json:"peak_high_c"`
	Members  int               `json:"band_members"`
	PeakAt   units.Duration    `json:"peak_at_h"`
	PeakIn   int               `json:"peak_in_lift"`
	PeakX    units.Length      `json:"peak_x_mm"` // finished view
	PeakY    units.Length      `json:"peak_y_mm"`
	PeakZ    units.Length      `json:"peak_height_mm"` // above the deepest floor
	Dam      units.Temperature `json:"dam_face_c"`
	Foam     units.Temperature `json:"foam_c"` // 0 where the foam was taken out
	Sandable units.Duration    `json:"sandable_h"`
	Last     *Soft             `json:"last_to_harden"` // null where all hardens within the run
	Soft     []Soft            `json:"soft_places"`    // shallow places that lag behind
	Rooms    []RoomCase        `json:"rooms"`
	Error    Numerics          `json:"numerics"`
}

// A Soft place is a part of the basin that stays soft when the deep ones are hard.
type Soft struct {
	X    units.Length   `json:"x_mm"` // finished view
	Y    units.Length   `json:"y_mm"`
	Deep units.Length   `json:"resin_mm"`
	At24 float64        `json:"conversion_at_24_h"`
	Hard units.Duration `json:"hard_at_h"` // 0: not within the run
}

// A RoomCase is what the same pours do in a room at another temperature.
type RoomCase struct {
	Room units.Temperature `json:"room_c"`
	Peak units.Temperature `json:"peak_c"`
	Dam  units.Temperature `json:"dam_face_c"`
	Hard units.Duration    `json:"hard_at_h"` // 0: not within the run
}

// Numerics say how finely the cure was computed and what that leaves open.
type Numerics struct {
	Cells  int               `json:"cells"`
	Steps  int               `json:"steps"`
	Grid   units.Length      `json:"grid_mm"`
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
}
