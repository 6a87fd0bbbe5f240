package base

import (
	"math"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A boltSize is what a bolt needs. Diameters across the socket are usual outer ones.
// Source: [memory].
type boltSize struct{ hole, socket float64 }

var boltSizes = map[int]boltSize{6: {6.6, 16}, 8: {9, 19}, 10: {11, 24}, 12: {13.5, 27}}

const (
	usualFromEnd = 40.0 // mm
	weakest      = 0.6  // share of the section that must be left. Chosen
	tubeSlack    = 2.0  // mm between tubes and shell
	barTrim      = 5.0  // mm of every bar's end, rough from the mill. Chosen
	shortestHeld = 60.0 // mm that a saw's vice holds. Chosen
	smallestBar  = 150.0
)

// supports places and drills the tubes: a hole through the lower face for the bolt, an
// access hole above it for head and socket.
func supports(in Input, r *Result) []finding.Finding {
	var found []finding.Finding
	for _, s := range in.Supports {
		if !(s.Length > 0 && s.Side > 0 && s.Wall > 0) || s.Count < 1 {
			continue
		}
		t, fs := tube(in, r, s)
		r.Supports = append(r.Supports, t)
		found = append(found, fs...)
		if bolts := 2 * t.Count; bolts > 0 {
			r.Fixings = append(r.Fixings, Fixing{Name: boltName(s.Bolt), Count: bolts, Where: "through the lower faces of " + s.Name + ", with washers; thread lock"})
		}
	}
	return found
}

func boltName(d units.Length) string {
	return map[int]string{6: "bolt M6", 8: "bolt M8", 10: "bolt M10", 12: "bolt M12"}[int(d)]
}

func tube(in Input, r *Result, s Support) (Tube, []finding.Finding) {
	where := finding.Where{Field: s.Field, Element: s.Name}
	t := Tube{Name: s.Name, Tube: s.Tube, Side: s.Side, Length: s.Length, Count: s.Count, Mass: units.Mass(s.MassPerM * s.Length.MM() / 1000), At: []units.Length{}, Holes: []Hole{}}
	var found []finding.Finding
	room := in.Width - 2*in.Shell
	if s.Length > room-tubeSlack {
		found = append(found, longTube.At(where, "%s is %.1f mm long and the shell leaves %.1f mm.", s.Name, s.Length, room).Measured(s.Length.MM(), room.MM()-tubeSlack, "mm").
			Do("Shorten it to %.0f mm.", math.Floor(room.MM()-tubeSlack)))
	}
	t.At = positions(in, s)
	for _, x := range t.At {
		if x < in.Shell+s.Side/2 || x > in.Length-in.Shell-s.Side/2 {
			found = append(found, outside.At(where, "A support at %.0f mm from the left end stands in the shell or outside it.", x).Measured(x.MM(), (in.Shell+s.Side/2).MM(), "mm"))
		}
	}
	return t, append(found, drill(in, r, s, &t, where)...)
}

// positions returns where tubes lie along the length: as stated, else with equal
// stretches between them and to the shell's ends.
func positions(in Input, s Support) []units.Length {
	if len(s.At) > 0 {
		return append([]units.Length{}, s.At...)
	}
	out := []units.Length{}
	room := in.Length - 2*in.Shell
	for i := range s.Count {
		out = append(out, in.Shell+room*units.Length(i+1)/units.Length(s.Count+1))
	}
	return out
}

// drill places the holes over the middle of the carcass's sides.
func drill(in Input, r *Result, s Support, t *Tube, where finding.Where) []finding.Finding {
	size, ok := boltSizes[int(s.Bolt)]
	if !ok {
		size = boltSizes[8]
	}
	var found []finding.Finding
	inner := s.Side - 2*s.Wall
	if units.Length(size.socket) > inner {
		found = append(found, holeWide.At(where, "The socket of %s is %.0f mm across and %s is %.1f mm wide inside.", boltName(s.Bolt), size.socket, s.Tube, inner).Measured(size.socket, inner.MM(), "mm"))
	}
	at := s.FromEnd
	over := (s.Length - r.Width) / 2 // of the tube's end from the carcass's outside
	if at == 0 {
		at = usualFromEnd
		if r.Wanted && over+in.Carcass.Thickness/2 > s.Side/2 {
			at = over + in.Carcass.Thickness/2
		}
	}
	if at >= s.Length/2 {
		at = s.Length / 4
	}
	if r.Wanted && (at < over || at > over+in.Carcass.Thickness) {
		found = append(found, holeMiss.At(where, "Bolts of %s stand %.1f mm from the tube's end and miss the carcass's side.", s.Name, at).Measured(at.MM(), (over+in.Carcass.Thickness/2).MM(), "mm").
			Do("Bolt into a cleat %.0f mm wide inside the carcass's sides, or drill %.1f mm from the ends.", math.Abs((at-over).MM())+s.Side.MM(), math.Max(0, (over+in.Carcass.Thickness/2).MM())))
	}
	for _, x := range []units.Length{at, s.Length - at} {
		t.Holes = append(t.Holes, Hole{Face: "lower", At: x, Diameter: units.Length(size.hole), For: "through-hole for " + boltName(s.Bolt)},
			Hole{Face: "upper", At: x, Diameter: units.Length(size.socket), For: "access for bolt head and socket"})
	}
	whole, drilled := sections(s.Side.MM(), s.Wall.MM(), size)
	t.Section, t.AtHole = whole, drilled
	if drilled < weakest*whole {
		found = append(found, holeWeak.At(where, "The holes leave %.0f %% of the section of %s.", 100*drilled/whole, s.Name).Measured(drilled/whole, weakest, ""))
	}
	return found
}

// sections returns the section modulus of a square tube with sharp corners, and of the
// same with the through-hole in the lower and the access hole in the upper face, about
// its own lower or upper edge, whichever is less, mm3.
func sections(b, t float64, h boltSize) (whole, drilled float64) {
	in := b - 2*t
	area, inertia := b*b-in*in, (math.Pow(b, 4)-math.Pow(in, 4))/12
	whole = 2 * inertia / b
	arm := (b - t) / 2
	low, up := min(h.hole, in)*t, min(h.socket, in)*t
	left := area - low - up
	shift := (low*arm - up*arm) / left // of the middle, upwards
	inertia -= (low+up)*(arm*arm+t*t/12) + left*shift*shift
	return whole, inertia / (b/2 + math.Abs(shift))
}

// bars cuts the tubes of every kind from bars.
func bars(in Input, r *Result) []finding.Finding {
	var found []finding.Finding
	done := map[string]bool{}
	for _, s := range in.Supports {
		if done[s.Tube] || s.Tube == "" {
			continue
		}
		done[s.Tube] = true
		b := cutlist.Bars{Bar: s.Tube, Length: s.Bar, Kerf: in.BarKerf, Trim: barTrim, Smallest: smallestBar, Shortest: shortestHeld, Field: s.Field}
		for _, o := range in.Supports {
			if o.Tube == s.Tube && o.Length > 0 && o.Count > 0 {
				b.Parts = append(b.Parts, cutlist.Part{Name: o.Name, Length: o.Length, Count: o.Count})
			}
		}
		for _, o := range in.Bars {
			if o.Tube == s.Tube {
				b.Stock = append(b.Stock, cutlist.Stock{Name: o.Name, Length: o.Length, Count: o.Count})
			}
		}
		plan, fs := cutlist.ComputeBars(b)
		r.Bars = append(r.Bars, plan)
		found = append(found, fs...)
	}
	return found
}
