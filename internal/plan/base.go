package plan

import (
	"fmt"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/stage/base"
	"pourwright/internal/units"
)

func (w *wiring) base() (string, []finding.Finding) {
	r, found := remember(w, "base", w.baseInput(), base.Compute)
	w.placed(found)
	w.plan.Base = r
	tubes := 0
	for _, t := range r.Supports {
		tubes += t.Count
	}
	if !r.Wanted {
		return fmt.Sprintf("no carcass planned; %s", units.Count(tubes, "cross support", "cross supports")), found
	}
	return fmt.Sprintf("carcass %.0f x %.0f x %.0f mm, %.1f kg; %s", r.Length, r.Width, r.Height, r.Mass, units.Count(tubes, "cross support", "cross supports")), found
}

func (w *wiring) baseInput() base.Input {
	j := w.job
	in := base.Input{Length: j.Length, Width: j.Width, Height: j.Height, Shell: j.Shell(), Basin: w.plan.Relief.Depth, BarKerf: metalKerf}
	if b := j.Base; b != nil {
		in.Carcass = &base.Carcass{Board: b.Board.Name, Thickness: b.Measured, Density: b.Board.Density.Value, Height: b.Height, Clearance: b.Clearance,
			Dividers: b.Dividers, Joint: b.Joint, Groove: b.Groove, Open: b.Open, Rail: b.Rail}
		in.Cut = cutlist.Input{Board: b.Board.Name, SheetX: b.Board.Length.Value, SheetY: b.Board.Width.Value, Price: priceOf(b.Board.Packages), Kerf: j.Form.Kerf, Trim: j.Form.Trim,
			SmallestX: j.Form.Making.OffcutX, SmallestY: j.Form.Making.OffcutY, Narrowest: j.Form.Making.Narrowest, Field: "base"}
		if b.Board.Name != j.Form.Board.Name { // else the form has the first call on it
			in.Cut.Stock = w.boards(b.Board.Name, b.Measured)
		}
	}
	for _, e := range j.Extras {
		if e.Tube == nil {
			continue
		}
		in.Supports = append(in.Supports, base.Support{Name: e.Name, Tube: e.Tube.Name, Side: e.Tube.Side.Value, Wall: e.Tube.Wall.Value, MassPerM: e.Tube.MassPerM.Value,
			Bar: e.Tube.Bar.Value, Length: e.Length, Count: e.Count, Bolt: e.Bolt, FromEnd: e.FromEnd, At: e.At, Field: e.Field})
	}
	for _, s := range j.Stock {
		if s.Width == 0 {
			in.Bars = append(in.Bars, base.Stock{Tube: s.Material, Name: s.Name, Length: s.Length, Count: s.Count})
		}
	}
	return in
}

// metalKerf is the width of the metal saw's cut, mm. Chosen: a band or cold saw.
const metalKerf = 2
