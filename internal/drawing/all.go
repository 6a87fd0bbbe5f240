package drawing

import "pourwright/internal/plan"

// All returns the drawings of a plan in a fixed order; those of rooms that were not
// computed are left out.
func All(p *plan.Plan) []Drawing {
	out := []Drawing{}
	if len(p.Relief.Layers) > 0 && p.Piece.Length > 0 && p.Piece.Width > 0 && p.Piece.Height > 0 {
		out = append(out, planFinished(p), planForm(p), section(p))
		out = append(out, mouths(p)...)
		for _, l := range p.Relief.Layers {
			out = append(out, layer(p, l))
		}
	}
	if len(p.Form.Panels) > 0 {
		out = append(out, panels(p))
	}
	return out
}
