package saw

import "context"

// A BarPiece is a length wanted Count times, each end cut square or at an angle.
// LengthMM is measured between the long points.
type BarPiece struct {
	Name     string  `json:"name"`
	LengthMM float64 `json:"length_mm"`
	Count    int     `json:"count"`
}

// A Bar is a length of stock.
type Bar struct {
	Name      string  `json:"name"`
	LengthMM  float64 `json:"length_mm"`
	Count     int     `json:"count"`
	Unlimited bool    `json:"unlimited"`
	Owned     bool    `json:"owned"`
	Price     float64 `json:"price"`   // of one; a bought bar of price 0 counts as 1 bar
	TrimMM    float64 `json:"trim_mm"` // lost at each end, kerf included
}

// A BarProblem asks for lengths of one section.
type BarProblem struct {
	Pieces           []BarPiece
	Stock            []Bar
	KerfMM           float64
	SmallestOffcutMM float64 // a remainder under this is waste
	ShortestHeldMM   float64 // what can still be clamped
	Effort           Effort
}

// A BarCut is one cut, AtMM from the bar's left end to the left of the kerf.
type BarCut struct {
	Number int     `json:"number"`
	AtMM   float64 `json:"at_mm"`
	StopMM float64 `json:"stop_mm"` // length from the cut end to the stop
	Piece  int     `json:"piece"`   // -1 for a cut that cleans the end
	Name   string  `json:"name"`
}

// A CutBar is one bar with its cuts from the left.
type CutBar struct {
	ID       string   `json:"id"` // B1, B2 ...
	Stock    int      `json:"stock"`
	Name     string   `json:"name"`
	LengthMM float64  `json:"length_mm"`
	Owned    bool     `json:"owned"`
	Cuts     []BarCut `json:"cuts"`
	RestMM   float64  `json:"rest_mm"`          // left at the right end, trim included
	Offcut   string   `json:"offcut,omitempty"` // its name when it is kept
}

// A BarPlan is what to cut out of which bar.
type BarPlan struct {
	Bars       []CutBar   `json:"bars"`
	Offcuts    []Offcut   `json:"offcuts"` // WidthMM 0
	Bought     []Purchase `json:"bought"`
	Price      float64    `json:"price"`
	LowerPrice float64    `json:"lower_price"` // no plan can be cheaper
	Proven     bool       `json:"proven"`
	Unplaced   []Missing  `json:"unplaced"`
	Reasons    []Reason   `json:"reasons"`
}

// Bars plans the cutting of bars, on the terms of Sheets.
func Bars(ctx context.Context, p BarProblem) BarPlan {
	return BarPlan{Bars: []CutBar{}, Offcuts: []Offcut{}, Bought: []Purchase{}, Unplaced: []Missing{}, Reasons: []Reason{}}
}
