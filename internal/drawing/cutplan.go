package drawing

import (
	"fmt"

	"pourwright/internal/cutlist"
	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// cutPlans draws every sheet of a plan of cuts: parts with their names, cuts with their
// numbers, what is kept with its name, marks hatched.
func cutPlans(p *plan.Plan, c cutlist.Result, room string) []Drawing {
	out := []Drawing{}
	for _, x := range c.Sheets {
		out = append(out, cutSheet(p, c, x, fmt.Sprintf("cut-%s-%s", room, fileWord(x.ID))))
	}
	return out
}

func cutSheet(p *plan.Plan, c cutlist.Result, x cutlist.Sheet, name string) Drawing {
	l, w := x.SizeX.MM(), x.SizeY.MM()
	lines := cutLines(p, c, x)
	s := newSheet(name, fmt.Sprintf("Cuts of sheet %s, %s", x.ID, x.Name), "", l, w, len(lines))
	s.edge(Outline, geom.Rect(0, 0, l, w).Ring())
	for _, o := range x.Offcuts {
		s.edge(Hidden, rectOf(o).Ring())
		s.inside(rectOf(o), "keep "+o.Part, Measure(o.SizeX, p.Piece.Units)+" x "+Measure(o.SizeY, p.Piece.Units))
	}
	for _, q := range x.Placements {
		s.area(Board, 0.6, rectOf(q).Ring())
		s.inside(rectOf(q), q.Part, Measure(q.SizeX, p.Piece.Units)+" x "+Measure(q.SizeY, p.Piece.Units))
	}
	for _, z := range x.Zones {
		s.cut(Caution, geom.Rect(z.XMM, z.YMM, z.XMM+z.LengthMM, z.YMM+z.WidthMM).Ring())
	}
	for i, k := range x.Lines {
		s.cutLine(k, i)
	}
	s.sides(p, l, w)
	s.notes(0, lines...)
	return s.done()
}

func rectOf(q cutlist.Placement) geom.Box {
	return geom.Rect(q.X.MM(), q.Y.MM(), (q.X + q.SizeX).MM(), (q.Y + q.SizeY).MM())
}

// inside writes lines in the middle of a box as far as they fit, upright where it is
// higher than wide.
func (s *sheet) inside(b geom.Box, lines ...string) {
	m := b.Center()
	for len(lines) > 0 && s.widthOf(lines[len(lines)-1])+s.size > max(b.Width(), b.Height()) {
		lines = lines[:len(lines)-1]
	}
	if len(lines) == 0 {
		return
	}
	long := 0.0
	for _, t := range lines {
		long = max(long, s.widthOf(t)+s.size)
	}
	if long > b.Width() {
		for i, t := range lines {
			if x := m.X + (float64(i)*1.5+0.35-0.75*float64(len(lines)-1))*s.size; b.Width() > 1.6*s.size*float64(len(lines)) {
				s.upright(geom.Point{X: x, Y: m.Y}, t)
			}
		}
		return
	}
	if b.Height() < 1.6*s.size*float64(len(lines)) {
		lines = lines[:1]
	}
	if b.Height() < 1.5*s.size {
		return
	}
	for i, t := range lines {
		s.text(geom.Point{X: m.X, Y: m.Y + (0.75*float64(len(lines)-1)-0.35-1.5*float64(i))*s.size}, "middle", t)
	}
}

// cutLine draws a cut and writes its number beside one of its ends, by turns at a
// third and a fifth so that numbers keep apart.
func (s *sheet) cutLine(k cutlist.Line, i int) {
	a, b := geom.Point{X: k.X0.MM(), Y: k.Y0.MM()}, geom.Point{X: k.X1.MM(), Y: k.Y1.MM()}
	s.line(Outline, a, b)
	if k.Cut == 0 {
		return
	}
	at := a.Add(b.Sub(a).Mul([]float64{0.2, 0.33, 0.12}[i%3]))
	text := fmt.Sprint(k.Cut)
	if a.X == b.X {
		s.text(at.Add(geom.Point{X: 0.3 * s.size}), "start", text)
	} else {
		s.text(at.Add(geom.Point{Y: 0.3 * s.size}), "start", text)
	}
}

// cutLines are the notes below a sheet: its cuts grouped by setting.
func cutLines(p *plan.Plan, c cutlist.Result, x cutlist.Sheet) []string {
	measure := func(v float64) string { return Measure(units.Length(v), p.Piece.Units) }
	out := []string{fmt.Sprintf("kerf %s, %s trimmed from every edge; %.0f %% used; after each setting re-zero and measure", measure(c.Kerf.MM()), measure(c.Trim.MM()), 100*x.Used)}
	for i, g := range c.Settings {
		if !onSheet(c.Cuts, g, x.ID) {
			continue
		}
		cuts := fmt.Sprintf("cut %d", g.First)
		if g.Last > g.First {
			cuts = fmt.Sprintf("cuts %d to %d", g.First, g.Last)
		}
		tilt := ""
		if g.TiltDeg > 0 {
			tilt = fmt.Sprintf(", blade %.1f degrees", g.TiltDeg)
		}
		out = append(out, fmt.Sprintf("setting %d: fence %s%s: %s", i+1, measure(g.FenceMM), tilt, cuts))
	}
	return append(out, unitNote(p.Piece.Units))
}

func onSheet(cuts []saw.Cut, g saw.Setting, id string) bool {
	for _, c := range cuts {
		if c.Number >= g.First && c.Number <= g.Last && c.Sheet == id {
			return true
		}
	}
	return false
}
