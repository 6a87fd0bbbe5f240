package relief_test

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/stage/relief"
	"pourwright/internal/view"
)

// A basin of two steps that runs off the right end.
func ExampleCompute() {
	at := func(x0, y0, x1, y1 float64) view.Region[view.Finished] {
		return view.Of[view.Finished](geom.Rect(x0, y0, x1, y1).Region())
	}
	r, found := relief.Compute(relief.Input{
		Length: 1000, Width: 400, Height: 120, Shell: 19, Neck: 25, Land: 40, Island: 30, Tolerance: 0.01,
		Steps: []relief.Step{
			{Name: "high water", Depth: 24.6, Region: at(100, 80, 1003, 320)},
			{Name: "channel", Depth: 24.6, Region: at(300, 150, 1003, 250)},
		},
	})
	fmt.Printf("%.2f l, %.1f mm deep\n", r.Volume, r.Depth)
	for _, m := range r.Mouths {
		fmt.Printf("mouth on the %s side: %.0f mm wide, %.1f mm deep, %.0f mm2\n", m.Side, m.Width, m.Depth, m.Opening)
	}
	for _, p := range r.Fill {
		fmt.Printf("%.1f mm %.2f l\n", p.Depth, p.Volume)
	}
	fmt.Println(found[0].Text)
	// Output:
	// 7.04 l, 49.2 mm deep
	// mouth on the right side: 240 mm wide, 49.2 mm deep, 8364 mm2
	// 0.0 mm 0.00 l
	// 24.6 mm 1.72 l
	// 49.2 mm 7.04 l
	// The outline of step high water runs 3.0 mm past the side of the box and is cut off there.
}
