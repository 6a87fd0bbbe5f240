package drawing

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/view"
)

// castings draws how the form is packed: zones with pins, passes of the gun, mesh; and
// which surfaces are sealed.
func castings(p *plan.Plan) []Drawing {
	out := []Drawing{}
	r := p.Concrete
	if len(r.Packing) > 0 {
		out = append(out, packing(p))
	}
	if len(r.Spray) > 0 {
		out = append(out, spray(p))
	}
	if len(r.Scrim.Pieces) > 0 {
		out = append(out, mesh(p), roll(p))
	}
	if len(r.Masks) > 0 {
		out = append(out, masks(p))
	}
	return out
}

// inForm starts a drawing of the form seen from above with the foam in it.
func inForm(p *plan.Plan, name, title string, lines int) *sheet {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	s := newSheet(name, title, view.Form{}.Name(), l, w, lines)
	for _, lay := range p.Relief.Layers {
		s.area(Foam, 0.1, view.Flip{Length: l}.ToForm(lay.Region).Shape().Rings()...)
	}
	s.edge(Outline, geom.Rect(0, 0, l, w).Ring())
	s.text(geom.Point{X: l / 2, Y: -(nameGap + 0.8) * s.size}, "middle", "near side of the form")
	s.upright(geom.Point{X: -nameGap * s.size, Y: w / 2}, "right end")
	s.upright(geom.Point{X: l + (nameGap+0.8)*s.size, Y: w / 2}, "left end")
	return s
}

// packing draws the zones of the coat that has most, and the places of the pins.
func packing(p *plan.Plan) Drawing {
	r := p.Concrete
	zones := mostZones(r)
	lines := []string{fmt.Sprintf("zones of %s: batch, person; equal in area of mould, kg in place", zones[0].Coat),
		"crosses: push the pin in; depths after each coat are in the list"}
	if len(r.Gauges) > 0 {
		text := "pin reads"
		for i, d := range r.Gauges[0].Depths {
			if i > 0 {
				text += ", then"
			}
			text += " " + Measure(d, p.Piece.Units)
		}
		lines = append(lines, text)
	}
	s := inForm(p, "packing", "Packing zones and pin gauges", len(lines)+1)
	w := p.Piece.Width.MM()
	for i, z := range zones {
		x0, x1 := z.From.MM(), z.To.MM()
		s.line(Hidden, geom.Point{X: x1, Y: 0}, geom.Point{X: x1, Y: w})
		y := w/2 + float64(1-i%3)*2.2*s.size
		s.text(geom.Point{X: (x0 + x1) / 2, Y: y}, "middle", fmt.Sprintf("%d/%d: %.1f kg", z.Batch, z.Person, z.Mass))
	}
	for _, g := range r.Gauges {
		a, d := geom.Point{X: g.X.MM(), Y: g.Y.MM()}, 0.5*s.size
		s.line(Outline, a.Sub(geom.Point{X: d}), a.Add(geom.Point{X: d}))
		s.line(Outline, a.Sub(geom.Point{Y: d}), a.Add(geom.Point{Y: d}))
		s.text(a.Add(geom.Point{X: 0.7 * s.size, Y: 0.3 * s.size}), "start", fmt.Sprint(g.Number))
	}
	s.notes(0, append(lines, unitNote(p.Piece.Units))...)
	return s.done()
}

// mostZones returns the zones of the coat with most of them.
func mostZones(r concrete.Result) []concrete.PackZone {
	var best []concrete.PackZone
	for _, c := range r.Coats {
		var zones []concrete.PackZone
		for _, z := range r.Packing {
			if z.Coat == c.Name {
				zones = append(zones, z)
			}
		}
		if len(zones) > len(best) {
			best = zones
		}
	}
	return best
}

// spray draws the passes of the first coat in order.
func spray(p *plan.Plan) Drawing {
	var lines []string
	said := map[string]bool{}
	for _, x := range p.Concrete.Spray {
		if !said[x.On] || x.On != "face" {
			lines = append(lines, fmt.Sprintf("%d  %s", x.Number, x.Text))
		}
		said[x.On] = true
	}
	lines = append(lines, "arrows: the way of the gun; never spray over bare mould onto which you come later")
	s := inForm(p, "spray", "Order of spraying the first coat", len(lines))
	for _, x := range p.Concrete.Spray {
		s.arrow(x.From, x.To)
		s.text(x.From.Add(geom.Point{X: 0.4 * s.size, Y: 0.4 * s.size}), "start", fmt.Sprint(x.Number))
	}
	s.notes(0, lines...)
	return s.done()
}

// mesh draws where the pieces of mesh lie in the form.
func mesh(p *plan.Plan) Drawing {
	m := p.Concrete.Scrim
	var lines []string
	for _, x := range m.Pieces {
		lines = append(lines, fmt.Sprintf("%d  %s: %s x %s", x.Number, x.For, Measure(x.Length, p.Piece.Units), Measure(x.Width, p.Piece.Units)))
	}
	lines = append(lines, fmt.Sprintf("laps %s; pressed into %s while it is fresh, never on the first coat", Measure(m.Lap, p.Piece.Units), m.Into), unitNote(p.Piece.Units))
	s := inForm(p, "mesh", "Mesh in the form", len(lines))
	for _, x := range m.Pieces {
		b := x.Footprint()
		s.edge(Hidden, b.Ring())
		s.text(geom.Point{X: b.Min.X + 0.6*s.size, Y: b.Min.Y + 0.5*s.size}, "start", fmt.Sprint(x.Number))
	}
	s.notes(0, lines...)
	return s.done()
}

// roll draws how the mesh is cut from its roll.
func roll(p *plan.Plan) Drawing {
	m := p.Concrete.Scrim
	l, w := m.Length.MM(), m.Roll.MM()
	lines := []string{fmt.Sprintf("a roll %s wide, %s off it, %.0f %% left over", Measure(m.Roll, p.Piece.Units), Measure(m.Length, p.Piece.Units), 100*m.Waste), unitNote(p.Piece.Units)}
	s := newSheet("mesh-roll", "Mesh cut from the roll", "", l, w, len(lines))
	s.edge(Thin, geom.Rect(0, 0, l, w).Ring())
	for _, x := range m.Pieces {
		b := x.OnRoll()
		s.edge(Outline, b.Ring())
		s.text(geom.Point{X: b.Center().X, Y: b.Center().Y - 0.4*s.size}, "middle", fmt.Sprint(x.Number))
	}
	s.dim(geom.Point{X: 0, Y: w}, geom.Point{X: l, Y: w}, dimGap, Measure(m.Length, p.Piece.Units))
	s.notes(0, lines...)
	return s.done()
}

// masks draws in two colours what is sealed and what stays keyed for resin.
func masks(p *plan.Plan) Drawing {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	var lines []string
	for _, m := range p.Concrete.Masks {
		lines = append(lines, fmt.Sprintf("%s: %s, %.2f m2; %s", m.Surface, m.Finish, m.Area.M2(), m.Why))
	}
	s := newSheet("masks", "Sealed and keyed surfaces", view.Finished{}.Name(), l, w, len(lines)+1)
	for _, m := range p.Concrete.Masks {
		if m.Finish == "keyed" {
			s.cut(Resin, m.Region.Shape().Rings()...)
		} else {
			s.area(Concrete, 0.2, m.Region.Shape().Rings()...)
		}
	}
	s.edge(Outline, geom.Rect(0, 0, l, w).Ring())
	s.text(geom.Point{X: l / 2, Y: -1.6 * s.size}, "middle", "near side")
	s.notes(0, append([]string{"plain: sealed or left bare; hatched: keyed, resin bonds here"}, lines...)...)
	return s.done()
}
