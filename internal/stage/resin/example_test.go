package resin_test

import (
	"fmt"

	"pourwright/internal/material"
	"pourwright/internal/stage/resin"
)

// A basin of 10 l, 70 mm deep, with a terrace just under its half, filled with a resin
// of 2 to 1 by volume in lifts of at most 50 mm.
func ExampleCompute() {
	card := material.Resin{Name: "deep"}
	card.Density.Value, card.DensityA.Value, card.DensityB.Value = 1100, 1130, 990
	card.RatioA.Value, card.RatioB.Value = 2, 1
	card.MinDepth.Value, card.MaxDepth.Value, card.Shrinkage.Value = 12, 50, 0.03
	r, _ := resin.Compute(resin.Input{
		Fill: []resin.FillPoint{{}, {Depth: 34.5, Volume: 3}, {Depth: 70, Volume: 10}},
		Card: card, Bucket: 20, Freeboard: 0.4, Reserve: 0.05, Gap: 1, Room: 20,
	})
	fmt.Printf("order %.2f l, %.2f US gal\n", r.Order, r.OrderUS)
	for _, l := range r.Lifts {
		fmt.Printf("lift %d: %.1f mm, %.2f l net, pour %.2f l = %.2f kg A + %.2f kg B\n", l.Number, l.Depth, l.Volume, l.Pour, l.A, l.B)
	}
	// Output:
	// order 10.82 l, 2.86 US gal
	// lift 1: 34.5 mm, 3.00 l net, pour 3.00 l = 2.29 kg A + 1.01 kg B
	// lift 2: 35.5 mm, 7.00 l net, pour 7.30 l = 5.58 kg A + 2.45 kg B
}
