package svg

import (
	"fmt"
	"math"

	"pourwright/internal/drawing"
)

// Ink is how a style looks: a fill from light to deep, a stroke of a width and a
// dash pattern in mm on paper. An empty Fill leaves an area open.
type Ink struct {
	Fill, Deep string // #rrggbb
	Stroke     string
	Width      float64
	Dash       []float64
}

// The few colours: ink and warm paper, one grey for concrete, one tint of water for
// resin, straw for foam and board, one colour for caution and one for stop.
const (
	Ground = "#faf6ec"
	Line   = "#26221c"
	amber  = "#a85a00"
	red    = "#a3161a"
)

// Palette inks every style. Line widths are those of ISO 128 for small sheets: 0.35
// for visible edges, 0.18 for the rest.
var Palette = map[drawing.Style]Ink{
	drawing.Outline:   {Stroke: Line, Width: 0.35},
	drawing.Thin:      {Stroke: Line, Width: 0.13},
	drawing.Hidden:    {Stroke: Line, Width: 0.18, Dash: []float64{2, 1}},
	drawing.Centre:    {Stroke: Line, Width: 0.18, Dash: []float64{5, 1, 0.6, 1}},
	drawing.Frame:     {Stroke: Line, Width: 0.18},
	drawing.Concrete:  {Fill: "#d6d0c5", Deep: "#d6d0c5", Stroke: Line, Width: 0.35},
	drawing.Resin:     {Fill: "#d5e8e9", Deep: "#7fb2bb", Stroke: Line, Width: 0.18},
	drawing.ResinDeep: {Fill: "#7fb2bb", Deep: "#7fb2bb", Stroke: Line, Width: 0.18},
	drawing.Foam:      {Fill: "#f6eed2", Deep: "#dfcb8d", Stroke: Line, Width: 0.25},
	drawing.Board:     {Fill: "#f3e9d3", Deep: "#e2d0a8", Stroke: Line, Width: 0.25},
	drawing.Caution:   {Stroke: amber, Width: 0.5},
	drawing.StopMark:  {Stroke: red, Width: 0.7},
}

// shaded returns the colour from k.Fill to k.Deep at shade, clipped to 0 to 1.
func (k Ink) shaded(shade float64) string {
	if k.Fill == "" {
		return "none"
	}
	var a, b [3]int
	if n, _ := fmt.Sscanf(k.Fill, "#%02x%02x%02x", &a[0], &a[1], &a[2]); n != 3 {
		return k.Fill
	}
	if n, _ := fmt.Sscanf(k.Deep, "#%02x%02x%02x", &b[0], &b[1], &b[2]); n != 3 {
		return k.Fill
	}
	s := math.Max(0, math.Min(1, shade))
	for i := range a {
		a[i] += int(math.Round(s * float64(b[i]-a[i])))
	}
	return fmt.Sprintf("#%02x%02x%02x", a[0], a[1], a[2])
}
