package toolpath_test

import (
	"fmt"
	"strings"

	"pourwright/internal/geom"
	"pourwright/internal/stage/toolpath"
	"pourwright/internal/view"
)

// A square of 100 mm with a hole for a dowel, cut out of 10 mm foam in two passes.
func Example() {
	square := geom.Rect(20, 20, 120, 120).Ring()
	hole := geom.Rect(66, 66, 74, 74).Ring().Reversed()
	r, _ := toolpath.Compute(toolpath.Input{Piece: "Square", Machine: toolpath.Machine{Router: true, Cutter: 6, Flute: 25, Feed: 1500, Plunge: 500, Tabs: -1},
		Sheets: []toolpath.Sheet{{Name: "sheet 1", SizeX: 300, SizeY: 200, Thickness: 10,
			Parts: []toolpath.Part{{ID: "L1-A", Region: view.Of[view.Form](geom.Region{{Outer: square, Holes: []geom.Ring{hole}}})}}}}})
	p := r.Programs[0]
	lines := strings.Split(strings.TrimSpace(p.Text), "\n")
	fmt.Printf("%s: %d passes to Z%.1f, %s ... %s\n", p.File, p.Passes, p.Bottom.MM(), lines[0], lines[len(lines)-1])
	// Output:
	// sheet-1.nc: 2 passes to Z-10.3, (Square - sheet 1) ... M2
}
