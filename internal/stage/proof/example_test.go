package proof_test

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/stage/proof"
	"pourwright/internal/view"
)

// A square of 20 mm is cut from foam of 10 mm, once all round; then the last side is
// forgotten: the middle of that side is 13 mm from the ways along its neighbours, of
// which the cutter's radius takes 3.
func ExampleCompute() {
	in := proof.Input{
		File: "square.nc", SizeX: 100, SizeY: 100, Thickness: 10, Cutter: 6, SafeHeight: 5,
		Parts: []proof.Part{{ID: "S", Region: view.Of[view.Form](geom.Rect(40, 40, 60, 60).Region())}},
	}
	begin := "G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nX37 Y37\nG1 Z-10.2 F300\nX63 F1500\nY63\nX37\n"
	for _, last := range []string{"Y37\n", ""} {
		in.Text = begin + last + "G0 Z5\nM2\n"
		r, found := proof.Compute(in)
		fmt.Println("verified:", r.Verified)
		for _, f := range found {
			fmt.Printf("%s, line %d: %s\n", f.Severity, f.Where.Line, f.Text)
		}
	}
	// Output:
	// verified: true
	// verified: false
	// stop, line 7: S is not cut free: 10.00 mm of foam are left at its edge; 0.05 mm are allowed.
}
