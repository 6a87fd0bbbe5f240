package cutlist

import (
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// A Part is wanted Count times from the board.
type Part struct {
	Name   string
	Length units.Length
	Width  units.Length
	Count  int
	Grain  bool // its length runs along the sheet's
	Bevels []saw.Bevel
}

// Stock is a board or a bar that is owned. A bar has no width.
type Stock struct {
	Name          string
	Length, Width units.Length
	Count         int
	Marks         []Mark
}

// A Mark is a part of an owned board that cannot be used: holes, damaged film.
type Mark struct {
	X, Y, Length, Width units.Length
	Why                 string
}

// Input is what is wanted from one board.
type Input struct {
	Board          string
	SheetX, SheetY units.Length // of a sheet that can be bought; 0: none can
	Price          float64      // of one sheet; 0 when not stated
	Parts          []Part
	Stock          []Stock
	Kerf           units.Length
	Trim           units.Length // of every edge, kerf included
	SmallestX      units.Length // an offcut below this is waste
	SmallestY      units.Length
	Narrowest      units.Length // strip that can still be held
	Field          string       // of the document, for findings
}

// Result is the plan of cuts of one board.
type Result struct {
	Board     string         `json:"board"`
	Kerf      units.Length   `json:"kerf_mm"`
	Trim      units.Length   `json:"trim_mm"`
	Sheets    []Sheet        `json:"sheets"`
	Cuts      []saw.Cut      `json:"cuts"`     // in the order of the saw
	Settings  []saw.Setting  `json:"settings"` // runs of cuts with the saw left alone
	Offcuts   []saw.Offcut   `json:"offcuts"`
	Remains   []Remain       `json:"remains"` // what is in the shop afterwards
	Bought    []saw.Purchase `json:"bought"`
	Buy       int            `json:"buy_sheets"`
	AtLeast   float64        `json:"at_least_price"` // no plan can be cheaper; a sheet without a price counts 1
	Proven    bool           `json:"proven"`
	Unplaced  []saw.Missing  `json:"unplaced"`
	Reasons   []saw.Reason   `json:"reasons"`
	Narrowest units.Length   `json:"narrowest_mm"`
}

// A Sheet is one board with what is cut from it.
type Sheet struct {
	ID         string       `json:"id"`
	Name       string       `json:"name"`
	Owned      bool         `json:"owned"`
	SizeX      units.Length `json:"size_x_mm"`
	SizeY      units.Length `json:"size_y_mm"`
	Used       float64      `json:"used"` // share of its area
	Placements []Placement  `json:"placements"`
	Offcuts    []Placement  `json:"offcuts"`
	Zones      []saw.Zone   `json:"zones"`
	Lines      []Line       `json:"lines"`
}

// A Placement is a rectangle of a sheet.
type Placement struct {
	Part   string       `json:"part"`
	X      units.Length `json:"x_mm"`
	Y      units.Length `json:"y_mm"`
	SizeX  units.Length `json:"size_x_mm"`
	SizeY  units.Length `json:"size_y_mm"`
	Turned bool         `json:"turned"` // its length runs up the sheet
}

// A Line is the middle of a cut with its number.
type Line struct {
	Cut int          `json:"cut"`
	X0  units.Length `json:"x0_mm"`
	Y0  units.Length `json:"y0_mm"`
	X1  units.Length `json:"x1_mm"`
	Y1  units.Length `json:"y1_mm"`
}

// A Remain is stock that is in the shop after the work.
type Remain struct {
	Name   string       `json:"name"`
	Length units.Length `json:"length_mm"`
	Width  units.Length `json:"width_mm"` // 0 for a bar
	Count  int          `json:"count"`
	New    bool         `json:"new"` // an offcut of this work
}

// Bars is what is wanted from bars of one section.
type Bars struct {
	Bar      string
	Length   units.Length // of a bar that can be bought; 0: none can
	Price    float64
	Parts    []Part // Width is not read
	Stock    []Stock
	Kerf     units.Length
	Trim     units.Length // of each end, kerf included
	Smallest units.Length
	Shortest units.Length // that can be clamped
	Field    string
}

// BarResult is the plan of cuts of one kind of bar.
type BarResult struct {
	Bar      string         `json:"bar"`
	Kerf     units.Length   `json:"kerf_mm"`
	Trim     units.Length   `json:"trim_mm"`
	Bars     []saw.CutBar   `json:"bars"`
	Offcuts  []saw.Offcut   `json:"offcuts"`
	Remains  []Remain       `json:"remains"`
	Bought   []saw.Purchase `json:"bought"`
	Buy      int            `json:"buy_bars"`
	Proven   bool           `json:"proven"`
	Unplaced []saw.Missing  `json:"unplaced"`
	Reasons  []saw.Reason   `json:"reasons"`
}

// Empty is the plan of nothing.
func Empty() Result {
	return Result{Sheets: []Sheet{}, Cuts: []saw.Cut{}, Settings: []saw.Setting{}, Offcuts: []saw.Offcut{}, Remains: []Remain{},
		Bought: []saw.Purchase{}, Proven: true, Unplaced: []saw.Missing{}, Reasons: []saw.Reason{}}
}
