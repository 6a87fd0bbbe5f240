// Package drawing turns a plan into display lists: lines, fills, texts and
// dimensions in millimetres. One drawing feeds the screen, the paper and the SVG
// files; those who render it decide nothing but how a style is inked.
package drawing

import "pourwright/internal/geom"

// Style names what a line or area means; renderers ink it.
type Style string

// The styles. Line weights follow the habits of ISO 128.
const (
	Outline   Style = "outline"  // visible edge
	Thin      Style = "thin"     // construction, leader, hatch
	Hidden    Style = "hidden"   // edge behind
	Centre    Style = "centre"   // axis
	Frame     Style = "frame"    // paper frame
	Concrete  Style = "concrete" // filled, warm grey
	Resin     Style = "resin"    // filled, water tint
	ResinDeep Style = "resin-deep"
	Foam      Style = "foam"    // filled, straw
	Board     Style = "board"   // filled, straw
	Caution   Style = "caution" // a bad spot, circled
	StopMark  Style = "stop"
)

// A Drawing is one figure.
type Drawing struct {
	Name  string   `json:"name"` // file-name word: plan-finished, plan-form, section, layer-1
	Title string   `json:"title"`
	Room  string   `json:"room"`  // the stage it belongs to: relief, knockout, form, base, concrete, resin
	View  string   `json:"view"`  // "finished", "form" or "": stamped on every figure that has one
	Box   geom.Box `json:"box"`   // of everything, mm, y up
	Scale float64  `json:"scale"` // lettered for printing at 1:Scale, a customary scale
	Items []Item   `json:"items"`
}

// An Item is one thing to draw; just one of its kinds is set.
type Item struct {
	Style Style      `json:"style"`
	Path  *Path      `json:"path,omitempty"`
	Text  *Text      `json:"text,omitempty"`
	Dim   *Dimension `json:"dimension,omitempty"`
	Spot  *Spot      `json:"spot,omitempty"`
}

// A Path is lines, or an area by the even-odd rule.
type Path struct {
	Rings  []geom.Ring `json:"rings"`
	Closed bool        `json:"closed"`
	Fill   bool        `json:"fill"`
	Hatch  bool        `json:"hatch"`           // section hatch over the fill
	Shade  float64     `json:"shade,omitempty"` // how deep a fill is inked, from 0 to 1
}

// A Text stands at At, mm; Size is its height in mm of the drawing, which is
// Lettering on paper at the drawing's scale.
type Text struct {
	At     geom.Point `json:"at"`
	Text   string     `json:"text"`
	Size   float64    `json:"size"`
	Anchor string     `json:"anchor"` // start, middle, end
	Turn   float64    `json:"turn"`   // degrees, counter-clockwise
}

// A Dimension measures from A to B along its line, which stands Offset mm to the
// left of the direction A to B.
type Dimension struct {
	A      geom.Point `json:"a"`
	B      geom.Point `json:"b"`
	Offset float64    `json:"offset"`
	Text   string     `json:"text"`
}

// A Spot circles a place.
type Spot struct {
	At     geom.Point `json:"at"`
	Radius float64    `json:"radius"`
	Label  string     `json:"label"`
}
