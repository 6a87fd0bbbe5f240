package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/form"
	"pourwright/internal/units"
)

func (w *wiring) form() (string, []finding.Finding) {
	j := w.job
	var covered units.Area
	if w.basin() {
		covered = w.plan.Relief.Layers[0].Area
	}
	r, found := form.Compute(form.Input{
		Length: j.Length, Width: j.Width, Height: j.Height,
		Thickness: j.Form.Measured, Corner: j.Form.Corner, ButtOrder: j.Form.ButtOrder,
		SheetX: j.Form.Board.Length.Value, SheetY: j.Form.Board.Width.Value,
		Density: j.Form.Board.Density.Value, Kerf: j.Form.Kerf, Covered: covered,
	})
	w.plan.Form = r
	return fmt.Sprintf("%d kinds of panel, %s corners, board %.1f mm, %.1f kg", len(r.Panels), j.Form.Corner, j.Form.Measured, r.Mass), found
}
