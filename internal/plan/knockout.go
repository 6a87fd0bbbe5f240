package plan

import (
	"fmt"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
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
	w.placed(found)
	return fmt.Sprintf("%s of foam, %.2f kg, %s, %s", units.Count(len(r.Parts), "part", "parts"), r.Mass, units.Count(len(r.Seams), "seam", "seams"), units.Count(r.Buy, "new sheet", "new sheets")), found
}

// placed gives findings that speak of a field its place in the document, or that of
// the nearest group around it that is written.
func (w *wiring) placed(found []finding.Finding) {
	for i := range found {
		for at := found[i].Where.Field; at != "" && found[i].Where.File == ""; at = at[:max(0, strings.LastIndexAny(at, ".["))] {
			if p, ok := w.job.Places[at]; ok {
				found[i].Where.File, found[i].Where.Line, found[i].Where.Column = p.File, p.Line, p.Column
			}
		}
	}
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
