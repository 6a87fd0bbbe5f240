package template

import (
	"fmt"
	"math"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
)

// Parts returns a figure for every foam part of a plan, in form view, at its place in
// the form.
func Parts(p *plan.Plan) []Figure {
	out := []Figure{}
	for _, part := range p.Knockout.Parts {
		f := Figure{
			Name: part.ID, View: part.Region.View(), Region: part.Region.Shape(), Arrow: "the near side of the form",
			Title: fmt.Sprintf("foam, layer %d, %s thick", part.Layer, drawing.Measure(part.Thickness, p.Piece.Units)),
			Notes: notes(p, part),
		}
		for _, r := range part.Region.Shape().Rings() {
			f.Lines = append(f.Lines, Line{Points: r, Closed: true})
		}
		for _, d := range part.Dowels {
			f.dowel(d)
		}
		for _, s := range p.Knockout.Seams {
			f.seam(s, part.ID)
		}
		out = append(out, f)
	}
	return out
}

// notes say how many are cut and what lies beside them.
func notes(p *plan.Plan, part knockout.Part) []string {
	out := []string{"Glue the taped pattern on the foam and saw to the middle of the line, blade square. This side is FORM SIDE UP: write it on the foam before the paper comes off."}
	if part.Sheets > 1 {
		out = append(out, fmt.Sprintf("Cut %d of it and stack them.", part.Sheets))
	}
	var beside []string
	for _, n := range part.Neighbours {
		beside = append(beside, n.Where+" "+n.Part)
	}
	if len(beside) > 0 {
		out = append(out, "It lies "+strings.Join(beside, ", ")+".")
	}
	if n := len(part.Dowels); n > 0 {
		out = append(out, fmt.Sprintf("Drill %d dowel holes of %s square through, at the crosses.", n, drawing.Measure(part.Dowels[0].Diameter, p.Piece.Units)))
	}
	if part.Done {
		out = append(out, "The document says that this part is cut already.")
	}
	return out
}

// dowel marks the middle of a hole.
func (f *Figure) dowel(d knockout.Dowel) {
	at := geom.Point{X: d.X.MM(), Y: d.Y.MM()}
	long := math.Max(3, d.Diameter.MM()/2+2)
	for _, v := range [2]geom.Point{{X: long}, {Y: long}} {
		f.Lines = append(f.Lines, Line{Stroke: Dotted, Points: geom.Ring{at.Sub(v), at.Add(v)}})
	}
	f.Labels = append(f.Labels, Label{At: at.Add(geom.Point{X: long + 4, Y: long}), Text: diameter(d.Diameter), Size: 2})
}

func diameter(d units.Length) string { return fmt.Sprintf("dia %.1f", d) }

// seam names the part on the other side of a seam.
func (f *Figure) seam(s knockout.Seam, id string) {
	other, mine := "", false
	for _, part := range s.Parts {
		if part == id {
			mine = true
		} else {
			other = part
		}
	}
	if !mine || other == "" || len(s.Curve) < 2 {
		return
	}
	f.Labels = append(f.Labels, Label{At: along(s.Curve), Text: s.ID + ", to " + other, Size: 2.5})
}

// along returns the middle of an open line.
func along(r geom.Ring) geom.Point {
	half := 0.0
	for i := 1; i < len(r); i++ {
		half += r[i].Sub(r[i-1]).Norm() / 2
	}
	for i := 1; i < len(r); i++ {
		d := r[i].Sub(r[i-1])
		if n := d.Norm(); half <= n && n > 0 {
			return r[i-1].Add(d.Mul(half / n))
		}
		half -= d.Norm()
	}
	return r[0]
}
