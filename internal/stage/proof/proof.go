package proof

import (
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is a program and what it is to make. Places are in the program's coordinates, mm,
// in form view: the sheet's lower left corner is the origin.
type Input struct {
	File string // for the places of findings
	Text string

	Parts      []Part
	Carving    *Carving     // what a ball cutter carves instead of parts; nil: none
	DryRun     bool         // it is to touch nothing: parts are left out
	SizeX      units.Length // of the sheet
	SizeY      units.Length
	Outline    geom.Ring    // of an offcut; nil: the whole rectangle
	StockTop   units.Length // Z of the sheet's upper side; the programs' own zero
	Thickness  units.Length
	Overcut    units.Length // allowed into the board below; 0 takes 1 mm
	BedX, BedY units.Length // reach of the cutter's middle; 0: not checked
	Cutter     units.Length // diameter
	Flute      units.Length // 0: not checked
	SafeHeight units.Length // above StockTop; rapid moves sideways are nowhere lower
	Rapid      units.Speed  // for the time; 0 takes 5000 mm/min
	MaxFeed    units.Speed  // 0: not checked
	Tolerance  units.Length // of gouged and uncut; 0 takes 0.05 mm
}

// A Part is one piece of foam on the sheet.
type Part struct {
	ID        string
	Region    view.Region[view.Form] // outline, holes and dowel holes
	Tabs      int                    // wanted on its outlines
	TabWidth  units.Length           // at most
	TabHeight units.Length           // at most
	TabsOn    []geom.Ring            // open lines along which a tab may stand; nil: anywhere
}

// Result is what the simulation saw.
type Result struct {
	File     string         `json:"file"`
	Verified bool           `json:"verified"` // it may be written out and run
	Minutes  units.Duration `json:"time_h"`   // at the stated speeds, without speeding up and slowing down: never too long
	Cut      units.Length   `json:"cut_length_mm"`
	Travel   units.Length   `json:"travel_mm"` // of rapid moves
	Deepest  units.Length   `json:"deepest_z_mm"`
	Box      geom.Box       `json:"box"` // of the cutter's middle while it cuts
	Lines    int            `json:"lines"`
	Moves    int            `json:"moves"`
	Parts    []PartResult   `json:"parts"`
	Carved   *Carved        `json:"carved,omitempty"`
}

// A PartResult is what the program does to one part.
type PartResult struct {
	ID     string       `json:"part"`
	Gouged units.Length `json:"gouged_mm"` // deepest cut into it; 0 if none
	Uncut  units.Length `json:"uncut_mm"`  // greatest width of foam left beyond what the cutter cannot reach
	Left   units.Length `json:"left_mm"`   // greatest width of foam left where the cutter is too thick
	Tabs   []Tab        `json:"tabs"`
}

// A Tab is a stretch of an outline that is not cut through.
type Tab struct {
	X      units.Length `json:"x_mm"` // on the outline, at its middle
	Y      units.Length `json:"y_mm"`
	Width  units.Length `json:"width_mm"` // least, across the cutter's path
	Height units.Length `json:"height_mm"`
}
