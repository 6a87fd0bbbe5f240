package concrete_test

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/view"
)

// A tray of 600 x 400 x 120 mm with one step of 40 mm, cast 12 mm thick with a bagged
// mix that takes 13 to 16 kg of water for 100 kg.
func ExampleCompute() {
	blend := material.Mix{Name: "bagged", Kind: material.Bagged, Ingredients: []material.Ingredient{
		{Name: "dry blend", Role: "blend", Parts: material.Value[float64]{Value: 100}, SG: material.Value[float64]{Value: 2.8}}}}
	blend.WaterMin.Value, blend.WaterMax.Value, blend.Air.Value = 0.13, 0.16, 0.05
	step := view.Of[view.Finished](geom.Rect(100, 100, 500, 300).Region())
	r, _ := concrete.Compute(concrete.Input{
		Length: 600, Width: 400, Height: 120, Tub: 20, Freeboard: 0.3,
		Layers: []concrete.Layer{{From: 0, To: 40, Region: step}},
		Coats:  []concrete.Coat{{Name: "all", Thickness: 12, Mix: blend}},
	})
	fmt.Printf("%.1f l of concrete, %.1f %% less than area times thickness\n", r.ShellVolume, 100*(1-1/(1+r.NaiveOver)))
	b := r.Batches[0]
	fmt.Printf("%.2f kg: %.2f kg of water first, up to %.2f, never above %.2f\n", b.Mass, b.WaterFirst, b.WaterUpTo, b.WaterNever)
	// Output:
	// 6.0 l of concrete, 5.8 % less than area times thickness
	// 12.92 kg: 1.31 kg of water first, up to 1.64, never above 1.80
}
