package form

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// A wallPanel is the board of one wall before equal ones are put together.
type wallPanel struct {
	name, place string
	length      float64
	tilts       [2]float64 // at the wall's start and end, 0 for square
	pasts       [2]float64 // how far the board reaches past the inside
}

// walls returns the board of every wall, the wall from corner i to corner i+1. In a
// rectangle the long walls are those along the length.
func walls(in Input, corners []corner) []wallPanel {
	n := len(corners)
	out := make([]wallPanel, n)
	for i := range corners {
		a, b := corners[i], corners[(i+1)%n]
		p := &out[i]
		p.name, p.place = named(in, n, i)
		for k, c := range []corner{a, b} {
			switch {
			case c.joint == "mitre":
				p.tilts[k], p.pasts[k] = c.tilt(), c.past(in.Thickness)
			case runsPast(in, n, i, k):
				p.pasts[k] = in.Thickness.MM()
			}
		}
		p.length = b.at.Sub(a.at).Norm() + p.pasts[0] + p.pasts[1]
	}
	return out
}

// runsPast reports whether wall i runs past its neighbour at its start (k 0) or end in
// a butt corner. In a rectangle one pair does; elsewhere each wall does at its start.
func runsPast(in Input, n, i, k int) bool {
	if n == 4 && len(in.Outline) == 0 {
		return (i%2 == 0) == (in.ButtOrder != "short")
	}
	return k == 0
}

func named(in Input, n, i int) (name, place string) {
	if n == 4 && len(in.Outline) == 0 {
		return [4]string{"long side", "short side", "long side", "short side"}[i], [4]string{"near", "right", "far", "left"}[i]
	}
	return fmt.Sprintf("side %d", i+1), ""
}

// panels returns base and sides, equal sides as one panel of several, and the mark of
// every wall's board. The base is P1, sides go on from P2 round the form.
func panels(in Input, corners []corner) ([]Panel, []wallPanel, []string) {
	t := in.Thickness
	foot := geom.Ring{}
	for _, c := range corners {
		foot = append(foot, c.at)
	}
	high := in.Height + t
	if in.Seat == "on" {
		foot, high = outer(corners, t), in.Height
	}
	box := foot.Box()
	base := Panel{Name: "base", Length: units.Length(box.Width()), Width: units.Length(box.Height()), Thickness: t, Count: 1, Marks: []string{"P1"},
		Outline: []geom.Point{}, Tilts: []units.Angle{}, Lines: []ScrewLine{}}
	if len(in.Outline) > 0 && len(corners) > 0 {
		base.Outline = foot.Map(func(p geom.Point) geom.Point { return p.Sub(box.Min) })
	}
	out := []Panel{base}
	ws := walls(in, corners)
	marks := make([]string, len(ws))
	order := make([]int, len(ws))
	for i := range ws {
		order[i] = i
	}
	if len(in.Outline) == 0 {
		order = []int{0, 2, 3, 1} // long sides first
	}
	for k, i := range order {
		w := ws[i]
		marks[i] = fmt.Sprintf("P%d", k+2)
		same := func(p Panel) bool { return p.Name == w.name }
		if j := slices.IndexFunc(out, same); j >= 0 {
			out[j].Count++
			out[j].Marks = append(out[j].Marks, marks[i])
			continue
		}
		out = append(out, Panel{Name: w.name, Length: units.Length(w.length), Width: high, Thickness: t, Count: 1, Marks: []string{marks[i]},
			Bevel: bevel(w), Tilts: tilts(w), Outline: []geom.Point{}, Lines: []ScrewLine{}})
	}
	return out, ws, marks
}

// bevel says how the ends of a wall are cut; "" for square.
func bevel(w wallPanel) string {
	a, b := w.tilts[0], w.tilts[1]
	switch {
	case a == 0 && b == 0:
		return ""
	case math.Abs(a-b) < 0.05:
		return fmt.Sprintf("%s degrees, both ends; size to the outside", trimmed(a))
	}
	return fmt.Sprintf("%s degrees at the left end and %s at the right, seen from inside; size to the outside", trimmed(b), trimmed(a))
}

func trimmed(v float64) string {
	if math.Abs(v-math.Round(v)) < 0.05 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.1f", v)
}

// tilts returns the blade's tilts at the left and right end, seen from inside: the
// wall's end lies to the left.
func tilts(w wallPanel) []units.Angle {
	if w.tilts == [2]float64{} {
		return []units.Angle{}
	}
	return []units.Angle{units.Angle(w.tilts[1]), units.Angle(w.tilts[0])}
}

// bevels gives a panel's tilts to the saw.
func bevels(p Panel) []saw.Bevel {
	var out []saw.Bevel
	for i, a := range p.Tilts {
		if a > 0 {
			out = append(out, saw.Bevel{Edge: [2]saw.Edge{saw.EndA, saw.EndB}[i], TiltDeg: float64(a)})
		}
	}
	return out
}
