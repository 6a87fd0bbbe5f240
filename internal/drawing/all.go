package drawing

import "pourwright/internal/plan"

// All returns the drawings of a plan in a fixed order; those of rooms that were not
// computed are left out.
func All(p *plan.Plan) []Drawing {
	out := []Drawing{}
	room := func(name string, ds ...Drawing) {
		for _, d := range ds {
			d.Room = name
			out = append(out, d)
		}
	}
	if len(p.Relief.Layers) > 0 && p.Piece.Length > 0 && p.Piece.Width > 0 && p.Piece.Height > 0 {
		room("relief", planFinished(p), planForm(p), section(p))
		room("relief", mouths(p)...)
		for _, l := range p.Relief.Layers {
			room("knockout", layer(p, l))
		}
		room("knockout", glueMaps(p)...)
		room("knockout", foamSheets(p)...)
	}
	if len(p.Relief.Layers) > 0 && p.Piece.Length > 0 && p.Piece.Width > 0 {
		room("concrete", castings(p)...)
	}
	if len(p.Form.Panels) > 0 {
		room("form", panels(p))
		room("form", cutPlans(p, p.Form.Cutting, "form")...)
		room("form", dams(p)...)
		room("base", basePlan(p)...)
		room("base", cutPlans(p, p.Base.Cutting, "base")...)
	}
	return out
}
