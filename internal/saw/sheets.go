package saw

import "context"

// Turn says how a piece may lie on the sheet.
type Turn string

// The turns. The empty one means Either.
const (
	Either Turn = "either" // no grain: may turn by 90 degrees
	Along  Turn = "along"  // the piece's length runs along the sheet's length
	Across Turn = "across" // the piece's length runs across the sheet's length
)

// A Bevel is an edge of a piece that is cut again with the blade tilted, after
// the piece was cut square to its full size (the long face of the bevel).
type Bevel struct {
	Edge    Edge    `json:"edge"`
	TiltDeg float64 `json:"tilt_deg"` // from the square cut, 0..60
}

// Edge names an edge of a piece: the two ends limit its length, the two sides
// its width.
type Edge string

// The edges.
const (
	EndA  Edge = "end_a"
	EndB  Edge = "end_b"
	SideA Edge = "side_a"
	SideB Edge = "side_b"
)

// A Piece is wanted Count times. LengthMM need not be the longer side: it is the
// side that Turn speaks of.
type Piece struct {
	Name     string  `json:"name"`
	LengthMM float64 `json:"length_mm"`
	WidthMM  float64 `json:"width_mm"`
	Count    int     `json:"count"`
	Turn     Turn    `json:"turn"`
	Bevels   []Bevel `json:"bevels"`
}

// Trim is the width lost at each edge of a sheet, kerf included: X0 and X1 at
// the ends of its length, Y0 and Y1 at the edges of its width.
type Trim struct {
	X0MM float64 `json:"x0_mm"`
	X1MM float64 `json:"x1_mm"`
	Y0MM float64 `json:"y0_mm"`
	Y1MM float64 `json:"y1_mm"`
}

// TrimAll trims every edge by mm.
func TrimAll(mm float64) Trim { return Trim{mm, mm, mm, mm} }

// A Zone is a part of a sheet that no piece may use, in the sheet's own
// coordinates: X along its length, Y along its width, from its corner.
type Zone struct {
	XMM      float64 `json:"x_mm"`
	YMM      float64 `json:"y_mm"`
	LengthMM float64 `json:"length_mm"`
	WidthMM  float64 `json:"width_mm"`
	Why      string  `json:"why"`
}

// A Sheet is a size of stock: a board that can be bought, or one that is owned.
type Sheet struct {
	Name      string  `json:"name"`
	LengthMM  float64 `json:"length_mm"`
	WidthMM   float64 `json:"width_mm"`
	Count     int     `json:"count"`     // how many there are; not read when Unlimited
	Unlimited bool    `json:"unlimited"` // can be bought as often as needed
	Owned     bool    `json:"owned"`     // in the shop already: costs nothing
	Price     float64 `json:"price"`     // of one, in the shop's money; a bought sheet of price 0 counts as 1 sheet
	Trim      Trim    `json:"trim"`
	Zones     []Zone  `json:"zones"`
}

// A Size is a smallest rectangle: it holds for either way round.
type Size struct {
	LengthMM float64 `json:"length_mm"`
	WidthMM  float64 `json:"width_mm"`
}

// A SheetProblem asks for pieces of one board (one material and thickness).
type SheetProblem struct {
	Pieces           []Piece
	Stock            []Sheet
	KerfMM           float64 // width of the cut, 0..50
	SmallestOffcut   Size    // an offcut under this is waste
	NarrowestStripMM float64 // what can still be held against the fence
	Effort           Effort
}

// Effort bounds the search. The zero value is right for a shop's list.
type Effort struct {
	Rounds  int    // rounds of search for each combination of sheets; 0 means DefaultRounds
	Seed    uint64 // of the search's own generator
	Workers int    // searches side by side; 0 means 1. The result depends on it, not on the machine.
}

// Kind says what became of a part of a sheet.
type Kind string

// The kinds of part.
const (
	KindCut    Kind = "cut"    // is cut again
	KindPiece  Kind = "piece"  // a wanted piece at its size
	KindOffcut Kind = "offcut" // kept, has a name
	KindWaste  Kind = "waste"
)

// Axis names the direction that a cut divides.
type Axis string

// The axes. A cut that divides X runs along Y.
const (
	DivideX Axis = "x"
	DivideY Axis = "y"
)

// A Node is a part of a sheet, in the sheet's coordinates. A part of KindCut is
// divided at AtMM from its own corner: A keeps [0, AtMM], the blade takes
// [AtMM, AtMM+kerf], B is the rest and nil where the blade runs out of the edge.
type Node struct {
	XMM      float64 `json:"x_mm"`
	YMM      float64 `json:"y_mm"`
	LengthMM float64 `json:"length_mm"` // along X
	WidthMM  float64 `json:"width_mm"`  // along Y
	Kind     Kind    `json:"kind"`
	Name     string  `json:"name,omitempty"` // of the piece or offcut
	Piece    int     `json:"piece"`          // index into Pieces, -1 if none
	Turned   bool    `json:"turned"`         // the piece's length runs along Y
	Axis     Axis    `json:"axis,omitempty"` // of the cut
	AtMM     float64 `json:"at_mm"`          // of the cut
	Cut      int     `json:"cut,omitempty"`  // its number in SheetPlan.Cuts, from 1
	Trim     bool    `json:"trim,omitempty"` // this cut cleans an edge of the stock
	A        *Node   `json:"a,omitempty"`
	B        *Node   `json:"b,omitempty"`
}

// A CutSheet is one sheet of the stock with its tree of cuts.
type CutSheet struct {
	ID       string  `json:"id"`    // S1, S2 ... in the order of cutting
	Stock    int     `json:"stock"` // index into Stock
	Name     string  `json:"name"`
	LengthMM float64 `json:"length_mm"`
	WidthMM  float64 `json:"width_mm"`
	Owned    bool    `json:"owned"`
	Zones    []Zone  `json:"zones"`
	Tree     *Node   `json:"tree"`
	Used     float64 `json:"used"` // area of pieces over area of the sheet, 0..1
}

// An Offcut goes back to the stock under its name.
type Offcut struct {
	Name     string  `json:"name"`
	Sheet    string  `json:"sheet"` // ID
	LengthMM float64 `json:"length_mm"`
	WidthMM  float64 `json:"width_mm"`
}

// A Cut is one pass of the saw.
type Cut struct {
	Number     int     `json:"number"`
	Sheet      string  `json:"sheet"`       // ID
	Part       string  `json:"part"`        // what is cut: S1, S1.2 ...
	Axis       Axis    `json:"axis"`        // on the sheet
	FenceMM    float64 `json:"fence_mm"`    // size of the part that lies against the fence
	FenceSide  string  `json:"fence_side"`  // a or b: which part that is
	TiltDeg    float64 `json:"tilt_deg"`    // of the blade
	LengthMM   float64 `json:"length_mm"`   // of the cut
	Makes      string  `json:"makes"`       // names of what leaves the saw
	Trim       bool    `json:"trim"`        // cleans an edge of the stock
	Edge       Edge    `json:"edge"`        // of a bevel, else empty
	CannotHold bool    `json:"cannot_hold"` // both parts are under NarrowestStripMM
}

// A Setting is a run of cuts with the saw left alone.
type Setting struct {
	FenceMM float64 `json:"fence_mm"`
	TiltDeg float64 `json:"tilt_deg"`
	First   int     `json:"first"` // number of its first cut
	Last    int     `json:"last"`
	ReZero  string  `json:"re_zero"` // what to set and check before it
}

// A Purchase is a number of sheets of one size.
type Purchase struct {
	Stock int     `json:"stock"`
	Name  string  `json:"name"`
	Count int     `json:"count"`
	Price float64 `json:"price"` // of all
}

// Missing says how many of a piece found no place.
type Missing struct {
	Piece int    `json:"piece"`
	Name  string `json:"name"`
	Count int    `json:"count"`
}

// A SheetPlan is what to cut, in which order, out of what.
type SheetPlan struct {
	Sheets     []CutSheet `json:"sheets"`
	Cuts       []Cut      `json:"cuts"`
	Settings   []Setting  `json:"settings"`
	Offcuts    []Offcut   `json:"offcuts"`
	Bought     []Purchase `json:"bought"`
	Price      float64    `json:"price"`
	LowerPrice float64    `json:"lower_price"` // no plan can be cheaper
	Proven     bool       `json:"proven"`      // Price is the lowest possible
	Unplaced   []Missing  `json:"unplaced"`
	Reasons    []Reason   `json:"reasons"`
}

// Sheets plans the cutting. It never fails: what cannot be done stands in
// Unplaced and Reasons, and the rest is planned. It stops early, with the best
// plan so far, when ctx ends. Same problem, same plan.
func Sheets(ctx context.Context, p SheetProblem) SheetPlan {
	plan := SheetPlan{Sheets: []CutSheet{}, Cuts: []Cut{}, Settings: []Setting{}, Offcuts: []Offcut{},
		Bought: []Purchase{}, Unplaced: []Missing{}, Reasons: []Reason{}}
	s, missing, reasons := newShop(p)
	plan.Reasons = append(plan.Reasons, reasons...)
	plan.Unplaced = append(plan.Unplaced, missing...)
	if len(s.items) == 0 {
		plan.Proven = true
		return plan
	}
	d, lower := s.solve(ctx)
	s.write(&d, &plan)
	s.bill(&d, &plan)
	plan.LowerPrice, plan.Proven = lower, lower >= plan.Price
	s.explain(ctx, &d, &plan)
	return plan
}
