package knockout_test

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/view"
)

// A layer near the left end of the piece lies near the right end of the form.
func ExampleCompute() {
	pool := view.Of[view.Finished](geom.Rect(50, 100, 650, 300).Region())
	r, found := knockout.Compute(knockout.Input{
		Length: 1000, Width: 400, Foam: 24.6, SheetX: 1000, SheetY: 500, Density: 20,
		Layers: []knockout.Layer{{Number: 1, Name: "pool", Depth: 49.2, Region: pool}},
	})
	for _, p := range r.Parts {
		box := p.Region.Shape().Box()
		fmt.Printf("%s: x %.0f to %.0f mm in %s view, %d sheets thick, %.0f g\n", p.ID, box.Min.X, box.Max.X, p.Region.View(), p.Sheets, p.Mass.G())
	}
	fmt.Println(found[1].Text)
	// Output:
	// L1-A: x 350 to 950 mm in form view, 2 sheets thick, 118 g
	// If slurry of 2100 kg/m3 gets under the knockout it lifts with up to 120 N, as much as 12 kg weigh.
}
