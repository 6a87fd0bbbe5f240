package form

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	poundForce    = 4.4482216152605 // N
	inch          = 25.4
	usualEdge     = 0.6   // Source: [en-312] in excerpts: faced particleboard 750 N in the edge of 1250 N in the face
	widest        = 150.0 // mm between screws. Chosen: what keeps a caulked seam shut
	closest       = 40.0  // mm
	fromEnd       = 40.0  // mm of the first screw from a corner. Chosen: board splits nearer to its end
	usualDiameter = 5.0   // mm
	usualLength   = 50.0  // mm
)

// Withdrawal returns the allowable withdrawal of a wood screw in side grain, N:
//
//	W = 2850 G^2 D  lb per inch of thread, D in inches
//
// gravity is the wood's specific gravity, diameter and thread in mm. Zero for what is
// no screw. Source: [nds] chapter 12.
func Withdrawal(gravity float64, diameter, thread units.Length) float64 {
	if !(gravity > 0 && diameter > 0 && thread > 0) {
		return 0
	}
	return 2850 * gravity * gravity * diameter.MM() / inch * thread.MM() / inch * poundForce
}

// UltimateWithdrawal returns the force that pulls the screw out, N, with 15700 in place
// of 2850. Source: [wood-handbook].
func UltimateWithdrawal(gravity float64, diameter, thread units.Length) float64 {
	return Withdrawal(gravity, diameter, thread) * 15700 / 2850
}

// Bead returns the volume of a concave fillet of radius r, .2146 r^2 for each mm: the
// corner less a quarter circle, 1 - pi/4.
func Bead(length, r units.Length) units.Volume {
	return units.FromMM3((1 - math.Pi/4) * r.MM() * r.MM() * length.MM())
}

// allowable returns what one screw through a side holds in the edge behind it, N: the
// thread is what the side leaves of the screw, the edge of a board holds a share of
// its face.
func allowable(in Input) float64 {
	g, edge := in.Board.Gravity, in.Board.Edge
	if !(g > 0) {
		g = float64(in.Density) / 1000
	}
	if !(edge > 0 && edge <= 1) {
		edge = usualEdge
	}
	d, l := screwOf(in)
	return edge * Withdrawal(g, d, l-in.Thickness)
}

func screwOf(in Input) (diameter, length units.Length) {
	diameter, length = in.Screw.Diameter, in.Screw.Length
	if !(diameter > 0) {
		diameter = usualDiameter
	}
	if !(length > 0) {
		length = max(usualLength, in.Thickness+30)
	}
	return diameter, length
}

// row returns how many screws hold a seam of length l under force N/mm, each of them
// hold N, and their spacing. A seam without a hold gets the widest spacing.
func row(l, force, hold float64) (count int, spacing float64) {
	clear := l - 2*fromEnd
	if clear < closest {
		return 1, 0
	}
	step := widest
	if hold > 0 && force > 0 {
		step = min(widest, hold/force)
	}
	n := int(math.Ceil(clear/max(step, 1) - 1e-9))
	return n + 1, clear / float64(n)
}

// seat settles the screws of a wall: at its foot, which carries the lower ends of all
// strips of the wall, and at each end, which takes at most half the load on the
// triangle of wall beside it.
//
//	foot  h (foot/3 + top/6) N per mm
//	end   q min(l, h)/2 N per mm, q the mean pressure
func (in *Input) seat(w *Wall, l float64) {
	foot, top := pressure(*in)
	h := in.Height.MM()
	footForce := h * (foot/3 + top/6) / 1000
	endForce := (foot + top) / 2 / 1000 * min(l, h) / 2
	hold := allowable(*in)
	n, spacing := row(l, footForce, hold)
	ends, endSpacing := row(h, endForce, hold)
	w.FootForce, w.EndForce, w.Allowable = 1000*footForce, 1000*endForce, hold
	w.FootScrews, w.EndScrews, w.Spacing = n, ends, units.Length(min(nonZero(spacing), nonZero(endSpacing)))
}

func nonZero(v float64) float64 {
	if v > 0 {
		return v
	}
	return widest
}

// screwLines draws the rows of screws on the boards of the walls, seen from inside with
// the wall's end to the left: the foot row into the base's edge, or from below into the
// side's where sides stand on the base; end rows where the board covers its
// neighbour's end. A mitre is screwed across from the wall that runs on.
func screwLines(in Input, r *Result, ws []wallPanel, marks []string) {
	t := in.Thickness
	foot := t / 2
	if in.Seat == "on" {
		foot = 0
	}
	for i := range ws {
		p := panelOf(r, ws[i].name)
		if p == nil || p.Marks[0] != marks[i] {
			continue // equal boards carry equal rows
		}
		w, next, before := r.Walls[i], marks[(i+1)%len(marks)], marks[(i+len(marks)-1)%len(marks)]
		left, right := units.Length(ws[i].pasts[1]), p.Length-units.Length(ws[i].pasts[0])
		if in.Seat != "on" {
			p.Lines = append(p.Lines, ScrewLine{X0: left + fromEnd, Y0: foot, X1: right - fromEnd, Y1: foot, Count: w.FootScrews, Into: "P1", Hidden: true})
		}
		low := p.Width - in.Height
		if ws[i].pasts[1] > 0 && (ws[i].tilts[1] == 0 || i%2 == 0) {
			p.Lines = append(p.Lines, ScrewLine{X0: left / 2, Y0: low + fromEnd, X1: left / 2, Y1: p.Width - fromEnd, Count: w.EndScrews, Into: next, Hidden: true})
		}
		if ws[i].pasts[0] > 0 && (ws[i].tilts[0] == 0 || i%2 == 0) {
			x := (p.Length + right) / 2
			p.Lines = append(p.Lines, ScrewLine{X0: x, Y0: low + fromEnd, X1: x, Y1: p.Width - fromEnd, Count: w.EndScrews, Into: before, Hidden: true})
		}
	}
	if in.Seat == "on" {
		baseLines(in, r, marks)
	}
}

// baseLines draws the rows through the base into the sides that stand on it, FORM
// VIEW, from the lower left corner of the base.
func baseLines(in Input, r *Result, marks []string) {
	t := in.Thickness.MM()
	base := &r.Panels[0]
	low := geom.Ring{}
	for _, w := range r.Walls {
		low = append(low, w.From)
	}
	corner := low.Box().Min.Sub(geom.Point{X: t, Y: t})
	for i, w := range r.Walls {
		v := w.To.Sub(w.From)
		u := v.Mul(1 / math.Max(v.Norm(), 1e-9))
		off := geom.Point{X: u.Y, Y: -u.X}.Mul(t / 2).Sub(corner)
		a, b := w.From.Add(off).Add(u.Mul(fromEnd)), w.To.Add(off).Sub(u.Mul(fromEnd))
		base.Lines = append(base.Lines, ScrewLine{X0: units.Length(a.X), Y0: units.Length(a.Y), X1: units.Length(b.X), Y1: units.Length(b.Y), Count: w.FootScrews, Into: marks[i], Hidden: true})
	}
}

func panelOf(r *Result, name string) *Panel {
	for i := range r.Panels {
		if r.Panels[i].Name == name {
			return &r.Panels[i]
		}
	}
	return nil
}
