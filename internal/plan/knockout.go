package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/stage/form"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
)

func (w *wiring) knockout() (string, []finding.Finding) {
	if !w.basin() {
		w.plan.Knockout = knockout.Empty()
		return notComputed, nil
	}
	r, found := remember(w, "knockout", w.knockoutInput(), knockout.Compute)
	w.plan.Knockout = r
	return fmt.Sprintf("%d parts of foam, %.2f kg, %d seams, %d new sheets", len(r.Parts), r.Mass, len(r.Seams), r.Buy), found
}

func (w *wiring) knockoutInput() knockout.Input {
	j := w.job
	k := j.Knockout
	in := knockout.Input{
		Length: j.Length, Width: j.Width, Foam: j.Foam.Measured,
		SheetX: j.Foam.Card.Length.Value, SheetY: j.Foam.Card.Width.Value, Density: j.Foam.Card.Density.Value,
		Machine: knockout.Machine{Router: k.Router, BedX: k.BedX, BedY: k.BedY, Cutter: j.Machine.Cutter.Value, Flute: j.Machine.Flute.Value},
		Making: knockout.Making{Margin: k.Margin, Spacing: k.Spacing, Stagger: k.Stagger, Smallest: k.Smallest, Seam: k.Seam,
			Clearance: k.Clearance, Dowel: k.Dowel, DowelMargin: k.DowelMargin, Hollow: k.Hollow, Land: k.Land, Turns: k.Turns},
		Cut: k.Cut,
	}
	for _, l := range w.plan.Relief.Layers {
		in.Layers = append(in.Layers, knockout.Layer{Number: l.Number, Name: l.Name, Depth: l.To - l.From, Region: l.Region})
	}
	for _, o := range j.Foam.Offcuts {
		one := knockout.Offcut{Name: o.Name}
		for _, p := range o.Outline {
			one.Outline = append(one.Outline, geom.Point{X: p[0].MM(), Y: p[1].MM()})
		}
		in.Offcuts = append(in.Offcuts, one)
	}
	return in
}

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
