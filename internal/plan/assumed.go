package plan

import (
	"fmt"

	"pourwright/internal/job"
	"pourwright/internal/material"
)

// assumed lists the values that decide the plan and that nobody has measured, in
// building order: the "measure first" list.
func assumed(j *job.Job) []Assumed {
	out := []Assumed{}
	add := func(known bool, what, value, source, field string) {
		if !known {
			out = append(out, Assumed{What: what, Value: value, Origin: string(material.Typical), Source: source, Field: field})
		}
	}
	add(j.Form.WasMeasured, "form board thickness, by caliper", fmt.Sprintf("%.1f mm", j.Form.Measured), j.Form.Board.Thickness.Source, "form.measured")
	add(j.Foam.WasMeasured, "foam sheet thickness, by caliper", fmt.Sprintf("%.1f mm", j.Foam.Measured), j.Foam.Card.Thickness.Source, "foam.measured")
	card := j.Resin.Card
	add(card.DensityA.Origin != material.Typical, "density of resin part A, from its data sheet", fmt.Sprintf("%.0f kg/m3", card.DensityA.Value), card.DensityA.Source, "resin.density_a")
	add(card.DensityB.Origin != material.Typical, "density of resin part B, from its data sheet", fmt.Sprintf("%.0f kg/m3", card.DensityB.Value), card.DensityB.Source, "resin.density_b")
	add(card.MaxDepth.Origin != material.Typical, "greatest depth of one lift, from the resin's data sheet", fmt.Sprintf("%.0f mm", card.MaxDepth.Value), card.MaxDepth.Source, "resin.max_depth")
	add(card.K25.Origin != material.Typical || card.K25.Value == 0, "how fast the resin cures, fitted to its data sheet or a test pour (shelf fit)", fmt.Sprintf("%.3g /s at 25 C", card.K25.Value), card.K25.Source, "materials")
	seen := map[string]bool{}
	for _, c := range j.Coats {
		if c.Mix.Cured.Origin == material.Typical && !seen[c.Mix.Name] {
			seen[c.Mix.Name] = true
			add(false, "cured density of "+c.Mix.Name+", from a test bar", fmt.Sprintf("%.0f kg/m3", c.Mix.Cured.Value), c.Mix.Cured.Source, "materials")
		}
	}
	return out
}
