package base

import (
	"fmt"
	"math"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	reveal     = 20.0  // mm the shell's foot stands over the floor. Chosen: a shadow gap
	leastHole  = 80.0  // mm of an opening. Chosen: a hand
	screwEvery = 150.0 // mm. Chosen
)

// Compute makes the carcass, the supports and their cutting plans. It does not
// change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Empty()
	var found []finding.Finding
	if in.Carcass != nil {
		found = append(found, carcass(in, &r)...)
	}
	found = append(found, supports(in, &r)...)
	return r, append(found, bars(in, &r)...)
}

// carcass makes the inset box:
//
//	outside  L - 2 shell - 2 clearance  by  W - 2 shell - 2 clearance
//	sides    the full length; ends and dividers between them, W - 2 t (+ 2 grooves)
//	top, bottom  between sides and ends, (L - 2 t) by (W - 2 t) (+ 2 grooves)
func carcass(in Input, r *Result) []finding.Finding {
	c := in.Carcass
	t := c.Thickness
	l, w := in.Length-2*in.Shell-2*c.Clearance, in.Width-2*in.Shell-2*c.Clearance
	where := finding.Where{Field: "base"}
	if !(t > 0) || !(w > 2*t+leastHole) || !(l > 2*t+leastHole) || !(l < 1e5 && w < 1e5) || l-2*t <= units.Length(c.Dividers)*t {
		return []finding.Finding{tooSmall.At(where, "The shell leaves %.0f x %.0f mm for a carcass of %.1f mm board with %s.", l, w, t, units.Count(c.Dividers, "divider", "dividers")).Measured(w.MM(), 2*t.MM()+leastHole, "mm")}
	}
	var found []finding.Finding
	hollow := in.Height - in.Basin - in.Shell
	h := c.Height
	if !(h > 0) {
		h = hollow + reveal
	}
	r.Wanted, r.Length, r.Width, r.Height, r.Reveal = true, l, w, h, h-hollow
	if h <= hollow {
		found = append(found, short.At(where, "The carcass is %.0f mm high and the hollow under the basin %.0f mm: the piece would stand on its shell.", h, hollow).
			Measured(h.MM(), hollow.MM(), "mm").Do("Make the base higher than %.0f mm; %.0f mm leaves a gap of %.0f mm at the floor.", hollow, hollow+reveal, reveal))
	}
	g := units.Length(0)
	if c.Joint == "groove" {
		g = c.Groove
		if 2*g > t {
			found = append(found, groove.At(where, "Grooves of %.1f mm leave %.1f mm of the %.1f mm board.", g, t-g, t).Measured(g.MM(), t.MM()/2, "mm"))
			g = t / 2
		}
	}
	parts(in, r, g)
	found = append(found, openings(in, r)...)
	fixings(in, r)
	r.Feet = feet(in, r)
	return append(found, cut(in, r)...)
}

// parts lists the boards; g is the depth of the grooves.
func parts(in Input, r *Result, g units.Length) {
	c, t := in.Carcass, in.Carcass.Thickness
	inL, inW := r.Length-2*t+2*g, r.Width-2*t+2*g
	note := ""
	if g > 0 {
		note = fmt.Sprintf("%.1f mm in the groove at each end is in the size", g)
	}
	add := func(name string, l, w units.Length, n int, note string) {
		if n > 0 {
			one := c.Density.Of(units.Area(l * w).Times(t))
			r.Parts = append(r.Parts, Part{Name: name, Length: l, Width: w, Thickness: t, Count: n, Mass: one, Note: note})
			r.Mass += one * units.Mass(n)
		}
	}
	add("base side", r.Length, r.Height, 2, "runs past the ends")
	add("base end", inW, r.Height, 2, note)
	add("base divider", inW, r.Height-2*t+2*g, c.Dividers, note)
	add("base bottom", inL, inW, 1, note)
	add("base top", inL, inW, 1, note)
}

// openings cuts one opening into every bay of the open sides.
func openings(in Input, r *Result) []finding.Finding {
	c, t := in.Carcass, in.Carcass.Thickness
	var sides []string
	switch c.Open {
	case "near", "far":
		sides = []string{c.Open}
	case "both":
		sides = []string{"near", "far"}
	default:
		return nil
	}
	bays := c.Dividers + 1
	bay := (r.Length - 2*t - units.Length(c.Dividers)*t) / units.Length(bays)
	rail := max(c.Rail, t)
	l, h := bay-2*(rail-t), r.Height-2*rail
	if l < leastHole || h < leastHole {
		return []finding.Finding{opening.At(finding.Where{Field: "base.open"}, "Bays of %.0f x %.0f mm leave openings of %.0f x %.0f mm.", bay, r.Height, max(0, l), max(0, h)).
			Measured(min(l, h).MM(), leastHole, "mm")}
	}
	for _, s := range sides {
		for i := range bays {
			r.Openings = append(r.Openings, Opening{Side: s, X: t + units.Length(i)*(bay+t) + rail - t, Y: rail, Length: l, Height: h})
		}
	}
	return nil
}

// fixings counts screws round every board and the bolts of the supports.
func fixings(in Input, r *Result) {
	row := func(l units.Length) int { return max(2, int(math.Ceil(l.MM()/screwEvery))+1) }
	n := 4*row(r.Height) + 2*in.Carcass.Dividers*2*row(r.Height) + 2*2*(row(r.Length)+row(r.Width))
	r.Fixings = append(r.Fixings, Fixing{Name: "screw through the sides", Count: n, Where: "every board into its neighbours' edges, about 150 mm apart, pilot holes"},
		Fixing{Name: "levelling foot", Count: 4, Where: "under the corners of the carcass"})
}

// feet returns the hull of the carcass on the floor, FINISHED VIEW.
func feet(in Input, r *Result) []geom.Point {
	x, y := (in.Length-r.Length)/2, (in.Width-r.Width)/2
	return geom.Rect(x.MM(), y.MM(), (x + r.Length).MM(), (y + r.Width).MM()).Ring()
}

func cut(in Input, r *Result) []finding.Finding {
	c := in.Cut
	c.Parts = nil
	for _, p := range r.Parts {
		c.Parts = append(c.Parts, cutlist.Part{Name: p.Name, Length: p.Length, Width: p.Width, Count: p.Count})
	}
	var found []finding.Finding
	r.Cutting, found = cutlist.Compute(c)
	return found
}
