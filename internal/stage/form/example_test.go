package form_test

import (
	"fmt"

	"pourwright/internal/stage/form"
)

// Board sold as 18 mm measures 18.2 mm, and only the long sides grow by twice that.
func ExampleCompute() {
	r, _ := form.Compute(form.Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2, Corner: "butt", ButtOrder: "long", SheetX: 2440, SheetY: 1220, Density: 650})
	for _, p := range r.Panels {
		fmt.Printf("%d x %s %.1f x %.1f mm\n", p.Count, p.Name, p.Length, p.Width)
	}
	// Output:
	// 1 x base 1220.0 x 410.0 mm
	// 2 x long side 1256.4 x 448.2 mm
	// 2 x short side 410.0 x 448.2 mm
}
