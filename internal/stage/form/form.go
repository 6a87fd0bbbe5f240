// Package form turns the outer box into panels cut from measured board.
package form

import (
	"pourwright/internal/cutlist"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the box, the board and what touches the form.
type Input struct {
	Length, Width, Height units.Length // of the piece: the inside of the form
	Outline               []geom.Point // of the piece in FINISHED VIEW, convex, straight sides; nil for the rectangle
	Thickness             units.Length // of the board, measured
	Corner                string       // butt or mitre
	ButtOrder             string       // long or short: which pair runs past the other
	Seat                  string       // outside: sides cover the base's edge ("" too); on: they stand on the base
	SheetX, SheetY        units.Length
	Density               units.Density
	Kerf                  units.Length
	Covered               units.Area  // of the base by the knockout, which needs no wax
	MostTilt              units.Angle // of the saw's blade; 0: 45 degrees

	Board   Board
	Mix     Mix
	Screw   Screw
	Batten  Batten
	Bow     units.Length // most that a wall may bow; 0: 1 mm
	Bead    units.Length // radius of the caulk in corners; 0: 5 mm
	Wax     Coat
	Release Coat
	Foot    units.Length // round the knockout where it stands on the base, to be beaded

	Mouths  []Mouth
	Dam     DamRules
	Resin   Resin
	Inserts []Insert
	Shell   units.Length
	Basin   []Layer // from the show face down, for cover

	Cut cutlist.Input // stock, kerf and trim; the panels are added here
}

// Board is what the form board can bear.
type Board struct {
	Name    string
	Modulus units.Pressure // in bending; 0: not known, bowing is not checked
	Gravity float64        // for withdrawal; 0: density over 1000
	Edge    float64        // share of the withdrawal that holds in the edge; 0: 0.6
}

// Mix is how the walls are pressed.
type Mix struct {
	Density  units.Density // of the fresh mix
	Flowable bool          // else packed by hand
}

// Screw is the screw that joins panels.
type Screw struct {
	Name             string
	Diameter, Length units.Length
}

// Batten is lumber on edge behind a wall: Width along the wall, Depth away from it.
type Batten struct {
	Width, Depth units.Length
	Modulus      units.Pressure
}

// A Coat is wax or release.
type Coat struct {
	Name     string
	Coverage float64 // m2 per litre
}

// Mouth is where the basin runs off a side.
type Mouth struct {
	Side    view.Side
	From    units.Length // along the side, finished view, from the lower coordinate
	Width   units.Length
	Depth   units.Length
	Opening units.Area
	Profile []geom.Point // along the side, and depth below the face as negative height
}

// DamRules are the maker's rules for dams.
type DamRules struct {
	Board     string
	Thickness units.Length
	Lap       units.Length // of the dam on the concrete; 0: 40 mm
	Above     units.Length // over the face; 0: 15 mm

	Liner string            // of its face; "" for the usual tape
	Most  units.Temperature // that board and liner bear; 0: 60 C
}

// Resin is what stands against a dam.
type Resin struct {
	Density   units.Density
	Viscosity float64           // Pa s; 0: 0.5
	Fluid     units.Duration    // until it gels; 0: 12 h
	Peak      units.Temperature // predicted at the dam, or the limit set for it; 0: not known
}

// An Insert is a part cast into the shell or fixed to it.
type Insert struct {
	Name     string
	Kind     string       // insert, cable or seat
	X, Y     units.Length // FINISHED VIEW
	Diameter units.Length
	Depth    units.Length // into the concrete from its back; a cable way goes through
	Field    string
}

// Layer is a step of the basin for checks of cover.
type Layer struct {
	From, To units.Length
	Region   view.Region[view.Finished]
}

// Result is the form.
type Result struct {
	Panels  []Panel      `json:"panels"`
	Mass    units.Mass   `json:"mass_kg"`
	Seam    units.Length `json:"seam_mm"`     // inside corners to caulk
	Release units.Area   `json:"release_mm2"` // inside faces to wax, less what the knockout covers
	Sheets  int          `json:"sheets_at_least"`

	Seat     string         `json:"seat"`    // outside or on
	Outline  []geom.Point   `json:"outline"` // inside of the form, FORM VIEW
	Walls    []Wall         `json:"walls"`   // round the form, FORM VIEW
	Pressure string         `json:"pressure"`
	Screws   Hardware       `json:"screws"`
	Battens  []BattenPart   `json:"battens"`
	Assembly []Step         `json:"assembly"`
	Seams    []Seam         `json:"seams"`
	Bought   []Supply       `json:"supplies"`
	Readings []Reading      `json:"readings"`
	Dams     []Dam          `json:"dams"`
	Inserts  []Placed       `json:"inserts"`
	Cutting  cutlist.Result `json:"cutting"`
}

// A Panel is one kind of board part.
type Panel struct {
	Name      string       `json:"name"` // base, long side, short side
	Length    units.Length `json:"length_mm"`
	Width     units.Length `json:"width_mm"`
	Thickness units.Length `json:"thickness_mm"`
	Count     int          `json:"count"`
	Mass      units.Mass   `json:"mass_kg"` // of one
	Bevel     string       `json:"bevel"`   // "" or where and how steep it is cut

	Marks   []string      `json:"marks"`       // one for each piece
	Outline []geom.Point  `json:"outline"`     // of a base that is no rectangle, FORM VIEW; empty else
	Tilts   []units.Angle `json:"tilts_deg"`   // of the blade at the left and right end, inside face up; empty when square
	Lines   []ScrewLine   `json:"screw_lines"` // inside face up, from the lower left corner
}

// A ScrewLine is a row of screws.
type ScrewLine struct {
	X0     units.Length `json:"x0_mm"`
	Y0     units.Length `json:"y0_mm"`
	X1     units.Length `json:"x1_mm"`
	Y1     units.Length `json:"y1_mm"`
	Count  int          `json:"count"`
	Into   string       `json:"into"`         // mark of the panel that holds the thread
	Hidden bool         `json:"from_outside"` // driven from outside
}

// A Wall is one side of the form where it stands.
type Wall struct {
	Mark       string         `json:"mark"`
	Panel      string         `json:"panel"`
	Place      string         `json:"place"` // near, far, left, right in FORM VIEW; "" for other outlines
	From       geom.Point     `json:"from"`  // inside edge, counter-clockwise, FORM VIEW
	To         geom.Point     `json:"to"`
	Load       units.Pressure `json:"load_kpa"` // at its foot, kPa
	Bow        units.Length   `json:"bow_mm"`   // board, between what holds it
	BattenBow  units.Length   `json:"batten_bow_mm"`
	Limit      units.Length   `json:"bow_limit_mm"`
	Bare       units.Length   `json:"bow_without_battens_mm"`
	Uprights   int            `json:"uprights"`
	Rail       bool           `json:"rail"`
	FootForce  float64        `json:"foot_force_n_per_m"`
	EndForce   float64        `json:"end_force_n_per_m"`
	Allowable  float64        `json:"screw_allowable_n"`
	FootScrews int            `json:"foot_screws"`
	EndScrews  int            `json:"end_screws"` // at each end
	Spacing    units.Length   `json:"screw_spacing_mm"`
}

// Hardware is what is driven into the form.
type Hardware struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
}

// A BattenPart is lumber to cut.
type BattenPart struct {
	Name   string       `json:"name"` // upright or rail
	Wall   string       `json:"wall"`
	Length units.Length `json:"length_mm"`
	Width  units.Length `json:"width_mm"`
	Depth  units.Length `json:"depth_mm"`
	Count  int          `json:"count"`
}

// A Step is one step of putting the form together.
type Step struct {
	Number int    `json:"number"`
	Panel  string `json:"panel"` // mark, or "" for work on the whole
	Text   string `json:"text"`
}

// A Seam is a corner to caulk.
type Seam struct {
	Name   string       `json:"name"`
	Length units.Length `json:"length_mm"`
	Radius units.Length `json:"radius_mm"`
	Volume units.Volume `json:"volume_l"` // of the true fillet
	After  string       `json:"after"`    // mark of the panel that closes it
}

// A Supply is what is used up.
type Supply struct {
	Name   string  `json:"name"`
	Role   string  `json:"role"` // caulk, wax or release
	Need   float64 `json:"need"`
	Unit   string  `json:"unit"`
	Pieces int     `json:"pieces"` // cartridges; 0 where it is no counted thing
}

// A Reading is what to measure on the standing form.
type Reading struct {
	Name   string       `json:"name"`
	Target units.Length `json:"target_mm"`
	Limit  units.Length `json:"limit_mm"` // most it may be off
	How    string       `json:"how"`
}

// A Dam closes a mouth while resin is poured.
type Dam struct {
	Mark     string         `json:"mark"`
	Side     view.Side      `json:"side"`
	From     units.Length   `json:"from_mm"` // of the board along the side, finished view
	Length   units.Length   `json:"length_mm"`
	Height   units.Length   `json:"height_mm"`
	Top      units.Length   `json:"above_face_mm"`
	LapLeft  units.Length   `json:"lap_left_mm"` // towards the lower coordinate
	LapRight units.Length   `json:"lap_right_mm"`
	LapFoot  units.Length   `json:"lap_foot_mm"`
	Seal     units.Length   `json:"seal_mm"`
	Force    float64        `json:"force_n"`
	Pressure units.Pressure `json:"pressure_kpa"` // at the deepest point
	Gap      units.Length   `json:"leak_gap_mm"`
	Leak     float64        `json:"leak_ml"`       // of resin through that gap until it gels
	Water    float64        `json:"water_test_ml"` // most water that may be lost in the test
	Test     units.Duration `json:"water_test_h"`
	Clamps   int            `json:"clamps"`
	Board    string         `json:"board"`
	Liner    string         `json:"liner"`
	Profile  []geom.Point   `json:"-"` // of the opening
}

// Placed is an insert with its place in both views.
type Placed struct {
	Name      string       `json:"name"`
	Kind      string       `json:"kind"`
	X         units.Length `json:"x_mm"` // FINISHED VIEW
	Y         units.Length `json:"y_mm"`
	FormX     units.Length `json:"form_x_mm"`
	FormY     units.Length `json:"form_y_mm"`
	Diameter  units.Length `json:"diameter_mm"`
	Cover     units.Length `json:"cover_mm"` // of concrete over its tip; 0 for a way through
	EdgeCover units.Length `json:"edge_cover_mm"`
	Water     units.Length `json:"basin_distance_mm"` // to the basin at the side; below zero under it
}
