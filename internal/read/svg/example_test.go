package svg_test

import (
	"fmt"

	"pourwright/internal/read/svg"
)

func ExampleInspect() {
	drawing := `<svg xmlns="http://www.w3.org/2000/svg" width="1220mm" height="410mm" viewBox="0 0 1220 410">
  <rect id="pool" x="60" y="60" width="1100" height="290"/>
  <circle id="isle" cx="400" cy="200" r="50"/>
</svg>`
	in, err := svg.Inspect("pool.svg", []byte(drawing), svg.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range in.Outlines {
		fmt.Printf("%s: %.1f mm2, closed %v, holes %v\n", o.ID, o.AreaMM2, o.Closed, o.Holes)
	}
	fmt.Println(in.ScaleCheck)
	// Output:
	// pool: 319000.0 mm2, closed true, holes [isle]
	// isle: 7854.0 mm2, closed true, holes []
	// longest outline 1100.0 mm
}
