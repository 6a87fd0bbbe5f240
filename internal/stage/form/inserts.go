package form

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	leastCover = 6.0 // mm of concrete over an insert's tip. Chosen: less prints through the face
	leastEdge  = 1.5 // diameters from an insert's rim to an edge. Chosen: less splits out
)

// inserts places every insert in both views and checks what covers it.
func inserts(in Input) ([]Placed, []finding.Finding) {
	out := []Placed{}
	var found []finding.Finding
	for _, x := range in.Inserts {
		p := Placed{Name: x.Name, Kind: x.Kind, X: x.X, Y: x.Y, FormX: in.Length - x.X, FormY: x.Y, Diameter: x.Diameter}
		where := finding.Where{Field: x.Field, Element: x.Name, View: "finished", At: &[2]float64{x.X.MM(), x.Y.MM()}}
		p.EdgeCover = edgeOf(in, x)
		if p.EdgeCover < 0 {
			found = append(found, offPiece.At(where, "%s at %.0f, %.0f mm lies outside the piece or across its edge.", x.Name, x.X, x.Y))
			out = append(out, p)
			continue
		}
		p.Water = basinDistance(in, x)
		found = append(found, covered(in, x, &p, where)...)
		out = append(out, p)
	}
	return out, found
}

// edgeOf returns the distance from an insert's rim to the edge of the piece, below
// zero across it.
func edgeOf(in Input, x Insert) units.Length {
	p := geom.Point{X: x.X.MM(), Y: x.Y.MM()}
	body := geom.Rect(0, 0, in.Length.MM(), in.Width.MM()).Region()
	if len(in.Outline) >= 3 {
		body = geom.Build([]geom.Ring{in.Outline}, geom.NonZero)
	}
	d := -body.Distance(p) - x.Diameter.MM()/2
	if math.IsNaN(d) || math.IsInf(d, 0) {
		return -1
	}
	return units.Length(d)
}

// basinDistance returns how far an insert's rim is from the basin at the face, below
// zero where the basin lies over it. Without a basin it is 0.
func basinDistance(in Input, x Insert) units.Length {
	if len(in.Basin) == 0 || in.Basin[0].Region.Empty() {
		return 0
	}
	return units.Length(in.Basin[0].Region.Shape().Distance(geom.Point{X: x.X.MM(), Y: x.Y.MM()})) - x.Diameter/2
}

func covered(in Input, x Insert, p *Placed, where finding.Where) []finding.Finding {
	var found []finding.Finding
	if x.Kind == "cable" {
		if len(in.Basin) > 0 && p.Water < leastCover {
			found = append(found, leaks.At(where, "The way %s is %.1f mm from the basin: resin would run through it.", x.Name, p.Water).Measured(p.Water.MM(), leastCover, "mm"))
		}
	} else {
		p.Cover = in.Shell - x.Depth
		if p.Cover < leastCover {
			found = append(found, cover.At(where, "%s goes %.1f mm into a shell of %.1f mm: %.1f mm of concrete are left over its tip.", x.Name, x.Depth, in.Shell, p.Cover).
				Measured(p.Cover.MM(), leastCover, "mm").Do("Take an insert of at most %.1f mm, or cast a boss %.1f mm high behind it.", math.Max(0, in.Shell.MM()-leastCover), math.Max(0, leastCover-p.Cover.MM())))
		}
	}
	if need := leastEdge * x.Diameter.MM(); p.EdgeCover.MM() < need {
		found = append(found, edgeCover.At(where, "%s is %.1f mm from the edge of the piece; its diameter of %.1f mm asks for %.1f mm.", x.Name, p.EdgeCover, x.Diameter, need).
			Measured(p.EdgeCover.MM(), need, "mm").Do("Move it %.1f mm inwards.", need-p.EdgeCover.MM()))
	}
	return found
}
