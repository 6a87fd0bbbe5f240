package toolpath

import (
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the sheets with the parts that lie on them, and the machine.
type Input struct {
	Piece   string // name, for the head of every program
	Sheets  []Sheet
	Machine Machine
	Carving *Carving // a height map to carve; nil: none
	// ChannelsSaid: what the cutter leaves in the parts was said by the stage that made them.
	ChannelsSaid bool
}

// A Sheet is what lies on the bed at once. Its places are in mm from its lower left
// corner, in form view.
type Sheet struct {
	Name         string
	SizeX, SizeY units.Length
	Outline      geom.Ring    // of an offcut; nil: the whole rectangle
	Thickness    units.Length // as measured
	Parts        []Part
}

// A Part is one piece of foam where it lies on its sheet.
type Part struct {
	ID     string
	Region view.Region[view.Form] // outline, holes and dowel holes
	// TabsOn are open lines on the sheet along which a tab may stand: seams without
	// keys, ends that lie against the form. Every other edge is a visible riser or a key.
	TabsOn []geom.Ring
}

// A Machine is the router as its card has it. Zero values take the defaults, those
// that the card ought to state with a finding.
type Machine struct {
	Name       string
	Router     bool         // false: no programs, no findings
	BedX, BedY units.Length // reach of the cutter's centre; 0: not checked
	Cutter     units.Length // diameter; without it there are no programs
	Flute      units.Length // 0: not checked
	Feed       units.Speed  // default 1524 mm/min (60 in/min)
	Plunge     units.Speed  // default a third of the feed
	MaxFeed    units.Speed  // 0: the rapid rate
	Rapid      units.Speed  // default 5000 mm/min; only times depend on it
	StepDown   units.Length // default 6.35 mm (1/4 in)
	SafeHeight units.Length // above the sheet; default 5 mm
	Overcut    units.Length // into the board below; default 0.3 mm
	Accel      float64      // mm/s2; default 250; only times depend on it
	ArcTol     units.Length // default 0.01 mm
	Ramp       units.Angle  // default 10 degrees
	Tabs       int          // for each outline; default 4, below 0 none
	TabWidth   units.Length // default 8 mm
	TabHeight  units.Length // default 3 mm
	Spindle    bool         // write M3 and M5
	Speed      float64      // rev/min; 0 writes no S
	Inch       bool         // write inches
	Against    bool         // conventional: the cutter turns against the feed; else climb
}

// Result is the programs.
type Result struct {
	Programs []Program      `json:"programs"` // one for each sheet that can be cut, in their order
	Minutes  units.Duration `json:"time_h"`   // of all, as estimated
	Used     Used           `json:"used"`
}

// Used are the settings the programs were made with.
type Used struct {
	Cutter     units.Length `json:"cutter_mm"`
	Feed       units.Speed  `json:"feed_mm_min"`
	Plunge     units.Speed  `json:"plunge_mm_min"`
	Rapid      units.Speed  `json:"rapid_mm_min"`
	StepDown   units.Length `json:"step_down_mm"`
	SafeHeight units.Length `json:"safe_height_mm"`
	Overcut    units.Length `json:"overcut_mm"`
	Accel      float64      `json:"accel_mm_s2"`
	ArcTol     units.Length `json:"arc_tolerance_mm"`
	Ramp       units.Angle  `json:"ramp_deg"`
	Direction  string       `json:"direction"` // climb or conventional
	Units      string       `json:"units"`     // of the programs: mm or in
}

// A Program cuts one sheet with one cutter.
type Program struct {
	File    string         `json:"file"` // sheet-1.nc
	Kind    string         `json:"kind"` // cut or carve
	Sheet   string         `json:"sheet"`
	Index   int            `json:"index"` // of the sheet in the Input; -1 for a carved block
	Parts   []string       `json:"parts"` // in the order of their outlines
	Cutter  units.Length   `json:"cutter_mm"`
	Stock   units.Length   `json:"stock_mm"` // thickness of the foam
	Passes  int            `json:"passes"`
	Bottom  units.Length   `json:"bottom_z_mm"` // lowest Z
	Safe    units.Length   `json:"safe_z_mm"`
	Box     geom.Box       `json:"box"`    // of the cutter's centre, mm
	Minutes units.Duration `json:"time_h"` // as estimated
	Cut     units.Length   `json:"cut_length_mm"`
	Travel  units.Length   `json:"travel_mm"` // across the sheet at the safe height
	Lines   int            `json:"lines"`
	Tabs    []Tab          `json:"tabs"`
	Moves   []Move         `json:"-"`
	Text    string         `json:"-"` // RS-274
	DryRun  DryRun         `json:"dry_run"`
}

// A DryRun goes once round the program's box at the safe height, to see that the
// cutter meets nothing.
type DryRun struct {
	File string `json:"file"` // sheet-1-dry-run.nc
	Text string `json:"-"`
}

// A Tab holds a part in its sheet.
type Tab struct {
	Part   string       `json:"part"`
	Place  int          `json:"placement"` // of the part among the sheet's
	X      units.Length `json:"x_mm"`      // on the cutter's path, at its middle
	Y      units.Length `json:"y_mm"`
	Width  units.Length `json:"width_mm"`
	Height units.Length `json:"height_mm"`
}

// A MoveKind is the motion word of a move.
type MoveKind int

// The motions; their numbers are those of the words G0 to G3.
const (
	Rapid MoveKind = iota
	Line
	Clockwise
	Counter
)

// A Move goes straight or round to (X, Y, Z), mm, rounded as it is written.
type Move struct {
	Kind    MoveKind
	X, Y, Z float64
	I, J    float64 // from the start to the centre of an arc
	Feed    float64 // mm/min; not of a rapid move
}
