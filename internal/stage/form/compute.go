package form

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Thickness of board that suits a form, mm. Chosen: between hardboard and two sheets
// glued together.
const (
	thinnestMM = 6
	thickestMM = 60
)

// Compute cuts the box into panels: base inside, sides outside the base and
// covering its edge. Any corner but "mitre" is a butt, any order but "short" lets
// the long sides run past. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Panels: []Panel{}}
	if !sound(in.Length) || !sound(in.Width) || !sound(in.Height) || !sound(in.Thickness) {
		return r, []finding.Finding{noPanels.At(finding.Where{}, "A box of %.1f x %.1f x %.1f mm from %.1f mm board cannot be made.", in.Length, in.Width, in.Height, in.Thickness)}
	}
	var found []finding.Finding
	r.Panels = panels(in)
	area := 0.0
	for i := range r.Panels {
		p := &r.Panels[i]
		one := units.Area(p.Length * p.Width)
		p.Mass = in.Density.Of(one.Times(p.Thickness))
		r.Mass += p.Mass * units.Mass(p.Count)
		area += float64(one) * float64(p.Count)
		found = append(found, tooLarge(in, *p)...)
	}
	if sheet := float64(in.SheetX) * float64(in.SheetY); sheet > 0 && area < 1e6*sheet {
		r.Sheets = int(math.Ceil(area/sheet - 1e-9))
	}
	r.Seam = 4*in.Height + 2*(in.Length+in.Width)
	r.Release = max(0, units.Area(in.Length*in.Width+2*in.Height*(in.Length+in.Width))-max(0, in.Covered))
	return r, append(found, oddThickness(in)...)
}

// sound reports whether l is a length that a form can have.
func sound(l units.Length) bool { return l > 0 && l < 1e5 }

// panels returns base, long and short sides. The base lies inside, so all sides are
// its thickness higher than the piece.
func panels(in Input) []Panel {
	l, w, h, t := in.Length, in.Width, in.Height+in.Thickness, in.Thickness
	long, short, bevel := l+2*t, w, ""
	switch {
	case in.Corner == "mitre":
		short, bevel = w+2*t, "45 degrees, both ends; size to the outside"
	case in.ButtOrder == "short":
		long, short = l, w+2*t
	}
	return []Panel{
		{Name: "base", Length: l, Width: w, Thickness: t, Count: 1},
		{Name: "long side", Length: long, Width: h, Thickness: t, Count: 2, Bevel: bevel},
		{Name: "short side", Length: short, Width: h, Thickness: t, Count: 2, Bevel: bevel},
	}
}

// oddThickness doubts a thickness that no board for a form has.
func oddThickness(in Input) []finding.Finding {
	t, where := in.Thickness, finding.Where{Field: "form.measured"}
	switch {
	case t > min(in.Length, in.Width)/4 || t > thickestMM:
		return []finding.Finding{thick.At(where, "Board of %.1f mm is thick for a box of %.0f x %.0f mm.", t, in.Length, in.Width).Measured(float64(t), thickestMM, "mm")}
	case t < thinnestMM:
		return []finding.Finding{thin.At(where, "Board of %.1f mm is thin: wet mix %.0f mm high bends it.", t, in.Height).Measured(float64(t), thinnestMM, "mm")}
	}
	return nil
}

// tooLarge says where a panel fits the sheet neither way round.
func tooLarge(in Input, p Panel) []finding.Finding {
	if !(in.SheetX > 0 && in.SheetY > 0) || max(p.Length, p.Width) <= max(in.SheetX, in.SheetY) && min(p.Length, p.Width) <= min(in.SheetX, in.SheetY) {
		return nil
	}
	return []finding.Finding{noSheet.At(finding.Where{Element: p.Name}, "The %s is %.1f x %.1f mm and the sheet %.0f x %.0f mm.", p.Name, p.Length, p.Width, in.SheetX, in.SheetY)}
}
