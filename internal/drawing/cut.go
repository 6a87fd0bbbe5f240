package drawing

import "pourwright/internal/plan"

// Layers returns the drawing of every layer with its parts, at true size.
func Layers(p *plan.Plan) []Drawing {
	return ofFoam(p, func() []Drawing {
		out := []Drawing{}
		for _, l := range p.Relief.Layers {
			out = append(out, layer(p, l))
		}
		return out
	})
}

// Sheets returns the drawing of every sheet of foam with the parts on it, at true size.
func Sheets(p *plan.Plan) []Drawing {
	return ofFoam(p, func() []Drawing { return foamSheets(p) })
}

func ofFoam(p *plan.Plan, draw func() []Drawing) []Drawing {
	if len(p.Relief.Layers) == 0 || p.Piece.Length <= 0 || p.Piece.Width <= 0 {
		return []Drawing{}
	}
	out := draw()
	for i := range out {
		out[i].Room = "knockout"
	}
	return out
}
