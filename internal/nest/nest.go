package nest

import (
	"errors"

	"pourwright/internal/geom"
)

// A Turning says which turns a piece may take.
type Turning int

// The turnings. Any tries multiples of 30 degrees.
const (
	TurnNone    Turning = iota // as drawn
	TurnHalf                   // 0 and 180 degrees
	TurnQuarter                // 0, 90, 180 and 270 degrees
	TurnAny
	TurnListed // those of Piece.TurnsDeg
)

// A Piece is one part to lay. Shape is one polygon, holes usable, mm.
type Piece struct {
	Name     string
	Shape    geom.Polygon
	Turning  Turning
	TurnsDeg []float64 // for TurnListed, degrees counter-clockwise
}

// A Sheet is a kind of stock. Its length runs along x.
type Sheet struct {
	Name     string
	Outline  geom.Region // usable area; any shape, holes are damage, mm
	Quantity int         // how many there are
	Owned    bool        // an offcut or a sheet already paid for: used before others are opened
}

// A Progress tells how far the work is.
type Progress struct {
	Done     float64 // share of the budget spent, 0 to 1
	Sheets   int     // sheets opened so far
	LengthMM float64 // used length of the last sheet
}

// A Problem is what to lay on what.
type Problem struct {
	Pieces    []Piece
	Sheets    []Sheet
	SpacingMM float64 // least distance between pieces: cutter diameter and margin, >= 0
	EdgeMM    float64 // least distance from a piece to the edge of the sheet, >= 0
	Seed      uint64
	// Iterations is how many times a piece may be sought a better place for; 0 lays
	// the pieces once, each as far left as it goes.
	Iterations int
	Threads    int            // at most this many at once; 0: as many as there are processors
	Progress   func(Progress) // may be nil; called from one goroutine at a time
	Spent      func() float64 // may be nil; share of the caller's own budget that is spent, 0 to 1
}

// A Placement says where a piece lies: its shape turned about its origin, then moved.
type Placement struct {
	Piece   int     `json:"piece"` // index into Problem.Pieces
	Sheet   int     `json:"sheet"` // index into Layout.Sheets
	TurnDeg float64 `json:"turn_deg"`
	XMM     float64 `json:"x_mm"`
	YMM     float64 `json:"y_mm"`
}

// An Opened is a sheet that carries pieces.
type Opened struct {
	Sheet    int         `json:"sheet"`     // index into Problem.Sheets
	Number   int         `json:"number"`    // which of that kind, from 1
	UsedMM   float64     `json:"used_mm"`   // length used, from the left end of the outline
	Rest     geom.Region `json:"rest"`      // what lies right of the used length and one spacing
	RestName string      `json:"rest_name"` // empty where nothing is left
}

// An Unplaced is a piece that lies nowhere, and why.
type Unplaced struct {
	Piece  int    `json:"piece"`
	Reason string `json:"reason"`
}

// A Layout is where the pieces lie. No two of its placements overlap or come closer than
// the spacing, to within 2 steps of geom.Grid.
type Layout struct {
	Placements []Placement `json:"placements"`
	Sheets     []Opened    `json:"sheets"`
	Unplaced   []Unplaced  `json:"unplaced"`
}

// ErrProblem marks a problem that cannot be worked on at all.
var ErrProblem = errors.New("nest")

// A Strip is one endless sheet: the pieces are laid across HeightMM as short as possible.
type Strip struct {
	Pieces     []Piece
	HeightMM   float64
	Seed       uint64
	Iterations int
	Threads    int
	Spent      func() float64
}

// A StripLayout lies between x = 0 and LengthMM and between y = 0 and the height.
type StripLayout struct {
	LengthMM   float64
	Placements []Placement
}
