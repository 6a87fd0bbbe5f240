package form

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/units"
	"pourwright/internal/view"
)

const (
	usualBead  = 5.0 // mm
	footBead   = 2.0 // mm, round the foam. Chosen: it shows as the rounded edge of the basin
	cartridge  = 0.3 // l
	beadFactor = 2.5 // real beads need 2 to 3 times the fillet. Source: [practice]
	waxCoats   = 2
)

// meets returns how much of the knockout's side stands against a wall: the openings of
// the mouths there. Left in FINISHED VIEW is right in FORM VIEW.
func meets(in Input, place string) units.Area {
	other := map[view.Side]string{view.Left: "right", view.Right: "left", view.Near: "near", view.Far: "far"}
	var sum units.Area
	for _, m := range in.Mouths {
		if other[m.Side] == place {
			sum += m.Opening
		}
	}
	return sum
}

// order returns the walls in the order of assembly: first the one that most of the
// knockout meets, so that the foam is set against it; then its neighbours, which
// corner it can be caulked with by hand; the last is farthest from the first and closes
// the form when all other corners are beaded.
func order(in Input, walls []Wall) []int {
	n := len(walls)
	first := 0
	for i := range walls {
		if meets(in, walls[i].Place) > meets(in, walls[first].Place) {
			first = i
		}
	}
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	away := func(i int) int { d := (i - first + n) % n; return min(d, n-d) }
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Or(cmp.Compare(away(a), away(b)), cmp.Compare(a, b)) })
	return out
}

// assemble writes the steps and the seams, each after the step that closes it.
func assemble(in Input, r *Result) {
	steps := []Step{}
	add := func(panel, format string, args ...any) {
		steps = append(steps, Step{Number: len(steps) + 1, Panel: panel, Text: fmt.Sprintf(format, args...)})
	}
	r.Seams = []Seam{}
	bead := beadOf(in)
	add("P1", "Lay the base inside face up on a flat bench; read flatness and twist before anything is fixed.")
	put := map[int]bool{}
	seq := order(in, r.Walls)
	for k, i := range seq {
		w := r.Walls[i]
		why := "keep its corners open to the hand until they are beaded"
		switch {
		case k == 0 && meets(in, w.Place) > 0:
			why = "the knockout meets it, so the foam is set against it"
		case k == 0:
			why = "it squares the others"
		case k == len(seq)-1:
			why = "the last side: bead the corners inside before it closes, then its own from above"
		}
		add(w.Mark, "Screw %s (%s) to the base with %s, and to each neighbour that stands with %d: %s.", w.Mark, words(w), units.Count(w.FootScrews, "screw", "screws"), w.EndScrews, why)
		r.seam("foot of "+w.Mark, w.To.Sub(w.From).Norm(), bead, w.Mark)
		n := len(r.Walls)
		for _, j := range []int{(i + n - 1) % n, (i + 1) % n} {
			if put[j] {
				r.seam("corner "+r.Walls[j].Mark+" and "+w.Mark, in.Height.MM(), bead, w.Mark)
			}
		}
		put[i] = true
	}
	add("", "Measure the diagonals, the sides and the corners; correct before the caulk.")
	add("", "Set and fix the knockout, FORM VIEW up, against %s.", r.Walls[seq[0]].Mark)
	if in.Foot > 0 {
		r.seam("foot of the knockout", in.Foot.MM(), footBead, "")
	}
	add("", "Caulk: a bead of %.0f mm radius in every corner and along every foot, %.0f mm round the knockout; draw the ball along each once, let it skin.", bead, footBead)
	add("", "Wax all inside faces twice, buff, then release. No wax on the foam that solvents in it attack.")
	r.Assembly = steps
}

func beadOf(in Input) float64 {
	if in.Bead > 0 {
		return in.Bead.MM()
	}
	return usualBead
}

func words(w Wall) string {
	if w.Place != "" {
		return w.Place + " " + w.Panel
	}
	return w.Panel
}

func (r *Result) seam(name string, length, radius float64, after string) {
	l, rad := units.Length(length), units.Length(radius)
	r.Seams = append(r.Seams, Seam{Name: name, Length: l, Radius: rad, Volume: Bead(l, rad), After: after})
}

// supplies adds up caulk, wax and release.
func supplies(in Input, r *Result) {
	var fillets units.Volume
	for _, s := range r.Seams {
		fillets += s.Volume
	}
	need := float64(fillets) * beadFactor / cartridge
	r.Bought = []Supply{{Name: "caulk", Role: "caulk", Need: need, Unit: "cartridge", Pieces: int(math.Ceil(need - 1e-9))}}
	for _, c := range []struct {
		coat  Coat
		role  string
		coats float64
	}{{in.Wax, "wax", waxCoats}, {in.Release, "release", 1}} {
		if c.coat.Coverage > 0 {
			r.Bought = append(r.Bought, Supply{Name: c.coat.Name, Role: c.role, Need: c.coats * r.Release.M2() / c.coat.Coverage, Unit: "l"})
		}
	}
}

// readings lists what to measure on the standing form. Limits are chosen: what sanding
// takes out of a face of this size.
func readings(in Input, r *Result) []Reading {
	long := max(in.Length, in.Width)
	out := []Reading{
		{Name: "flatness of the base", Limit: max(0.5, long/1000), How: "straightedge over length, width and both diagonals; the gap under it"},
		{Name: "twist of the base", Limit: max(0.5, long/1000), How: "two sticks across the ends, sighted over; or the height of the fourth corner off a flat bench"},
		{Name: "height of the sides", Target: in.Height, Limit: 0.5, How: "inside, at every corner and in the middle of every side"},
	}
	n := len(r.Walls)
	for i := range n {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			d := r.Walls[j].From.Sub(r.Walls[i].From).Norm()
			out = append(out, Reading{Name: fmt.Sprintf("diagonal %s to %s", cornerName(r, i), cornerName(r, j)), Target: units.Length(d), Limit: max(1, long/1000),
				How: "inside, corner to corner at the foot; equal diagonals agree within the limit"})
		}
	}
	return out
}

// cornerName names the corner where wall i begins by the two boards that meet there.
func cornerName(r *Result, i int) string {
	n := len(r.Walls)
	return r.Walls[(i+n-1)%n].Mark + "/" + r.Walls[i].Mark
}
