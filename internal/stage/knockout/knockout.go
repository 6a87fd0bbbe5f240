// Package knockout turns the layers of the basin into foam parts that fit the machine
// and the sheets, in form view.
package knockout

import (
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is the basin's layers, the foam they are cut from and how they are made.
type Input struct {
	Length   units.Length // of the piece, to turn it over
	Width    units.Length
	Layers   []Layer      // from the show face down
	Foam     units.Length // measured sheet thickness
	SheetX   units.Length
	SheetY   units.Length
	Density  units.Density
	Concrete units.Density // fresh, for the uplift; 0 takes 2100 kg/m3

	Offcuts []Offcut // used before new sheets
	Machine Machine
	Making  Making
	Cut     []string // parts that are cut already, by id or id/mark
}

// A Layer is one step of the basin.
type Layer struct {
	Number int
	Name   string
	Depth  units.Length // thickness
	Region view.Region[view.Finished]
}

// An Offcut is a piece of foam left from earlier work.
type Offcut struct {
	Name    string
	Outline geom.Ring // mm, either side up
}

// A Machine is what cuts the parts. The zero Machine is a hand: no bed, templates.
type Machine struct {
	Router     bool         // else paper templates and a saw
	BedX, BedY units.Length // usable area
	Cutter     units.Length // diameter
	Flute      units.Length
}

// Making is how the maker wants the parts made. Zero values take the defaults.
type Making struct {
	Margin      units.Length // kept free at the edges of bed and sheet; default 10 mm
	Spacing     units.Length // between parts beyond the cutter's diameter; default 2 mm
	Stagger     units.Length // between seams of neighbouring layers; default 75 mm
	Smallest    units.Length // least longer side of a piece; default 120 mm
	Seam        string       // straight, stepped or keyed; default straight
	Clearance   units.Length // of keys; default 0.15 mm
	Dowel       units.Length // diameter; default 8 mm, or the cutter's where that is larger
	DowelMargin units.Length // from hole to edge; default 12 mm
	NoDowels    bool
	Hollow      bool         // cut upper layers from the middles of lower ones
	Land        units.Length // glue land kept round a hollow; default 40 mm
	Turns       string       // any, 90, 180 or none: how parts may be turned on the sheet; default any
	Effort      int          // iterations of the nesting; default 300
}

// Result is the knockout.
type Result struct {
	Parts   []Part       `json:"parts"` // by layer, in a layer from left to right in form view
	Seams   []Seam       `json:"seams"` // by layer
	Sheets  []Sheet      `json:"sheets"`
	Offcuts []Keep       `json:"offcuts_kept"`
	Maps    []GlueMap    `json:"glue_maps"`       // one for each layer
	Glue    []string     `json:"glue_order"`      // part ids, largest outline first: it lies on the form's base
	Mass    units.Mass   `json:"mass_kg"`         // of the foam, hollows taken off
	Volume  units.Volume `json:"volume_l"`        // displaced: hollows count
	AtLeast int          `json:"sheets_at_least"` // whole new sheets by area alone
	Buy     int          `json:"sheets_new"`      // whole new sheets that the nesting takes
	Limits  Limits       `json:"limits"`
	Rules   Kept         `json:"kept"`
}

// Limits are the largest piece that can be cut.
type Limits struct {
	X     units.Length `json:"x_mm"` // 0: none
	Y     units.Length `json:"y_mm"`
	By    string       `json:"by"`    // bed, sheet, bed and sheet, or none
	Route string       `json:"route"` // router or templates
}

// Kept are the distances the plan was made with.
type Kept struct {
	Margin    units.Length `json:"margin_mm"`
	Spacing   units.Length `json:"spacing_mm"` // between parts, the cutter's diameter counted
	Stagger   units.Length `json:"stagger_mm"`
	Smallest  units.Length `json:"smallest_mm"`
	Clearance units.Length `json:"clearance_mm"`
	Dowel     units.Length `json:"dowel_mm"`
	Seam      string       `json:"seam"`
	Turns     string       `json:"turns"`
}

// A Part is one piece of foam.
type Part struct {
	ID         string                 `json:"id"`   // layer number and place in the layer, L1-A; a part that is cut keeps its own
	Mark       string                 `json:"mark"` // of its outline and thickness: another mark, another part
	Done       bool                   `json:"cut"`  // the document says it is cut
	Layer      int                    `json:"layer"`
	Thickness  units.Length           `json:"thickness_mm"`
	Area       units.Area             `json:"area_mm2"` // holes for dowels not taken off
	BoxX       units.Length           `json:"box_x_mm"`
	BoxY       units.Length           `json:"box_y_mm"`
	Mass       units.Mass             `json:"mass_kg"`
	Sheets     int                    `json:"thicknesses"` // sheets of foam stacked to make the thickness
	Neighbours []Neighbour            `json:"neighbours"`
	Dowels     []Dowel                `json:"dowels"`
	Left       []Left                 `json:"left_by_cutter"`
	ArrowTo    view.Side              `json:"arrow_to"` // the side of the piece that the label's arrow points to
	Region     view.Region[view.Form] `json:"-"`        // as cut, dowel holes taken off
	Outline    view.Region[view.Form] `json:"-"`        // without dowel holes
	LabelAt    view.Point[view.Form]  `json:"-"`

	pegs []peg
}

// A Neighbour is a part that this one touches.
type Neighbour struct {
	Part  string `json:"part"`
	Where string `json:"where"` // beside, under, over: seen in the form, under is nearer the base
}

// A Dowel is a hole that a part has in common with those it is doweled to.
type Dowel struct {
	X        units.Length `json:"x_mm"` // form view
	Y        units.Length `json:"y_mm"`
	Diameter units.Length `json:"diameter_mm"`
	With     string       `json:"with"`  // the part in the next layer
	Shows    bool         `json:"shows"` // on a ledge: cut the dowel flush and fill
}

// Left is foam that the cutter cannot take away.
type Left struct {
	Kind  string       `json:"kind"` // corner, channel or hole
	X     units.Length `json:"x_mm"` // form view
	Y     units.Length `json:"y_mm"`
	Width units.Length `json:"width_mm"` // of the channel or hole; of a corner, how far the foam stands out
	Area  units.Area   `json:"area_mm2"`
}

// A Seam joins two pieces of a layer. All places are in form view.
type Seam struct {
	ID        string        `json:"id"` // L1-S1
	Layer     int           `json:"layer"`
	Parts     []string      `json:"parts"`
	Kind      string        `json:"kind"`       // straight, stepped or keyed
	Line      [2]geom.Point `json:"line"`       // the straight line it follows
	Curve     geom.Ring     `json:"curve"`      // as cut, open, with its steps and keys
	Length    units.Length  `json:"length_mm"`  // of the line
	Visible   units.Length  `json:"visible_mm"` // prints in the concrete: on ledges and risers
	Width     units.Length  `json:"width_mm"`   // least width of foam it crosses
	Keys      int           `json:"keys"`
	Clearance units.Length  `json:"clearance_mm"`
	Staggers  []Stagger     `json:"staggers"`
	Why       string        `json:"why"`
}

// A Stagger is how far a seam stays from those of a neighbouring layer.
type Stagger struct {
	Layer    int          `json:"layer"`
	Distance units.Length `json:"distance_mm"` // to seams that it does not cross steeply
	Crosses  int          `json:"crosses"`     // seams crossed at more than 45 degrees: each bridges the other
}

// A Sheet is what lies on the bed at once: a whole sheet of foam, a blank sawn from
// one that is larger than the bed, or an offcut. Its places are in mm from its lower
// left corner, the side marked FORM SIDE of every part up.
type Sheet struct {
	Name       string         `json:"name"`       // sheet 1, sheet 1 blank 2, or the offcut's name
	Stock      string         `json:"stock"`      // sheet, blank or offcut
	Whole      int            `json:"whole"`      // number of the new sheet it is or is sawn from; 0 for an offcut
	WholeX     units.Length   `json:"whole_x_mm"` // size of the sheet it is or is sawn from
	WholeY     units.Length   `json:"whole_y_mm"`
	FromX      units.Length   `json:"from_x_mm"` // lower left corner of a blank in its sheet
	FromY      units.Length   `json:"from_y_mm"`
	SizeX      units.Length   `json:"size_x_mm"`
	SizeY      units.Length   `json:"size_y_mm"`
	Outline    geom.Ring      `json:"outline"`
	Placements []Placement    `json:"placements"`
	Used       units.Length   `json:"used_length_mm"`
	Share      units.Fraction `json:"used_share"`
	Keep       *Keep          `json:"offcut,omitempty"`
}

// A Placement is a part on a sheet: turned about the origin of form view, then moved.
type Placement struct {
	Part    string                 `json:"part"`
	Copy    int                    `json:"copy"` // 1 to the part's thicknesses
	Turn    float64                `json:"turn_deg"`
	X       units.Length           `json:"x_mm"`
	Y       units.Length           `json:"y_mm"`
	Region  view.Region[view.Form] `json:"-"` // on the sheet, dowel holes taken off
	LabelAt view.Point[view.Form]  `json:"-"`
}

// Keep is what is left of a sheet and worth keeping.
type Keep struct {
	Name  string       `json:"name"`
	SizeX units.Length `json:"size_x_mm"`
	SizeY units.Length `json:"size_y_mm"`
}

// A GlueMap says how the parts of a layer are glued.
type GlueMap struct {
	Layer  int      `json:"layer"`
	Order  []string `json:"order"`
	Checks []Check  `json:"checks"`
}

// A Check is a dimension to measure across a joint, form view.
type Check struct {
	Name   string       `json:"name"`
	Parts  []string     `json:"parts"`
	From   geom.Point   `json:"from"`
	To     geom.Point   `json:"to"`
	Length units.Length `json:"length_mm"`
}
