package form

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Compute cuts the box into panels: base inside, sides outside the base and
// covering its edge. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Panels: []Panel{}}
	if !(in.Length > 0 && in.Width > 0 && in.Height > 0 && in.Thickness > 0) {
		return r, []finding.Finding{noPanels.At(finding.Where{}, "A box of %.1f x %.1f x %.1f mm from %.1f mm board cannot be made.", in.Length, in.Width, in.Height, in.Thickness)}
	}
	var found []finding.Finding
	l, w, h, t := in.Length, in.Width, in.Height+in.Thickness, in.Thickness
	long, short, bevel := l+2*t, w, ""
	switch {
	case in.Corner == "mitre":
		short, bevel = w+2*t, "45 degrees, both ends; size to the outside"
	case in.ButtOrder == "short":
		long, short = l, w+2*t
	}
	r.Panels = []Panel{
		{Name: "base", Length: l, Width: w, Thickness: t, Count: 1},
		{Name: "long side", Length: long, Width: h, Thickness: t, Count: 2, Bevel: bevel},
		{Name: "short side", Length: short, Width: h, Thickness: t, Count: 2, Bevel: bevel},
	}
	area := 0.0
	for i := range r.Panels {
		p := &r.Panels[i]
		one := units.Area(p.Length * p.Width)
		p.Mass = in.Density.Of(one.Times(t))
		r.Mass += p.Mass * units.Mass(p.Count)
		area += float64(one) * float64(p.Count)
		found = append(found, tooLarge(in, *p)...)
	}
	if sheet := float64(in.SheetX) * float64(in.SheetY); sheet > 0 {
		r.Sheets = int(math.Ceil(area/sheet - 1e-9))
	}
	r.Seam = 4*in.Height + 2*(l+w)
	r.Release = units.Area(l*w + 2*in.Height*(l+w))
	if t > min(l, w)/4 {
		found = append(found, thick.At(finding.Where{Field: "form.measured"}, "Board of %.1f mm is thick for a box of %.0f x %.0f mm.", t, l, w))
	}
	return r, found
}

func tooLarge(in Input, p Panel) []finding.Finding {
	if !(in.SheetX > 0 && in.SheetY > 0) || max(p.Length, p.Width) <= max(in.SheetX, in.SheetY) && min(p.Length, p.Width) <= min(in.SheetX, in.SheetY) {
		return nil
	}
	return []finding.Finding{noSheet.At(finding.Where{Element: p.Name}, "The %s is %.1f x %.1f mm and the sheet %.0f x %.0f mm.", p.Name, p.Length, p.Width, in.SheetX, in.SheetY)}
}
