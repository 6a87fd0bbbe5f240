package concrete

import (
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// mostPockets bounds how many places are listed; a map of noise has thousands.
const mostPockets = 60

// pockets finds the places between mould faces that are too narrow for the shells of
// both sides: opening what is beside a layer with a disc of twice the shell's
// thickness takes them away.
func (c *computer) pockets(r *Result) {
	shell, box := r.Shell, geom.Rect(0, 0, c.in.Length.MM(), c.in.Width.MM()).Region()
	if 2*shell >= min(c.in.Length, c.in.Width) || shell >= c.in.Height {
		r.Pockets = append(r.Pockets, Pocket{Kind: "solid", X: c.in.Length / 2, Y: c.in.Width / 2, Width: min(c.in.Length, c.in.Width), Needed: 2 * shell, Depth: c.in.Height})
		return
	}
	for i, l := range c.in.Layers {
		beside := geom.Subtract(box, l.Region.Shape().Simplify(pocketTol))
		for _, n := range beside.NarrowPlaces(2 * shell.MM()) {
			p := Pocket{Kind: "between", Layer: i + 1, X: units.Length(n.At.X), Y: units.Length(n.At.Y), Width: units.Length(n.Width), Needed: 2 * shell, Depth: l.To}
			if !r.holds(p) && len(r.Pockets) < mostPockets {
				r.Pockets = append(r.Pockets, p)
			}
		}
	}
	if n := len(r.Pockets); n > 0 {
		p := narrowest(r.Pockets)
		at := [2]float64{p.X.MM(), p.Y.MM()}
		c.say(pocket.At(finding.Where{View: "finished", At: &at}, "%s narrower than two shells and packed solid; the narrowest is %.1f mm wide, %.1f mm would stay hollow.", units.Count(n, "place beside the knockout is", "places beside the knockout are"), p.Width, p.Needed).Measured(float64(p.Width), float64(p.Needed), "mm"))
	}
}

const pocketTol = 0.3 // mm; a pocket needs no finer outline

// holds reports whether a pocket is listed already for a shallower layer.
func (r *Result) holds(p Pocket) bool {
	for _, q := range r.Pockets {
		if dx, dy := q.X-p.X, q.Y-p.Y; dx*dx+dy*dy < p.Needed*p.Needed {
			return true
		}
	}
	return false
}

func narrowest(ps []Pocket) Pocket {
	least := ps[0]
	for _, p := range ps {
		if p.Width < least.Width {
			least = p
		}
	}
	return least
}
