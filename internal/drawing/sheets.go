package drawing

import (
	"fmt"
	"slices"
	"strings"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// foamSheets draws every sheet of foam with the parts on it. Blanks of one sheet are
// drawn where they are sawn from it.
func foamSheets(p *plan.Plan) []Drawing {
	out := []Drawing{}
	seen := map[string]bool{}
	for i, x := range p.Knockout.Sheets {
		if x.Stock == "blank" && i > 0 && stockOf(p.Knockout.Sheets[i-1]) == stockOf(x) {
			continue
		}
		name := fileWord(stockOf(x))
		if name == "" || seen[name] {
			name = fmt.Sprintf("foam-%d", i+1)
		}
		seen[name] = true
		if x.Stock == "blank" {
			out = append(out, sawnSheet(p, p.Knockout.Sheets[i:], name))
		} else {
			out = append(out, foamSheet(p, x, name))
		}
	}
	return out
}

// stockOf names what a sheet or blank is cut from: a blank's own name without its
// number.
func stockOf(x knockout.Sheet) string {
	if name, _, ok := strings.Cut(x.Name, " blank "); ok && x.Stock == "blank" {
		return name
	}
	return x.Name
}

// sawnSheet draws the sheet that the first of blanks is sawn from, with all its blanks
// and the parts on them.
func sawnSheet(p *plan.Plan, blanks []knockout.Sheet, name string) Drawing {
	stock := stockOf(blanks[0])
	n := slices.IndexFunc(blanks, func(x knockout.Sheet) bool { return stockOf(x) != stock })
	if n >= 0 {
		blanks = blanks[:n]
	}
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	l, w := blanks[0].WholeX.MM(), blanks[0].WholeY.MM()
	lines := []string{"saw the sheet along the long lines first, edge to edge, then each blank goes on the bed by itself",
		"every part FORM SIDE up; arrows point to the near side of the form"}
	for _, x := range blanks {
		line := fmt.Sprintf("%s: %s x %s", x.Name, measure(x.SizeX), measure(x.SizeY))
		for _, q := range x.Placements {
			line += ", part " + q.Part
		}
		lines = append(lines, line)
		if x.Keep != nil {
			lines = append(lines, fmt.Sprintf("keep %s x %s as %q", measure(x.Keep.SizeX), measure(x.Keep.SizeY), x.Keep.Name))
		}
	}
	lines = append(lines, unitNote(p.Piece.Units))
	s := newSheet(name, "Foam, "+stock+", sawn into blanks", view.Form{}.Name(), l, w, len(lines))
	s.area(Board, 0, geom.Rect(0, 0, l, w).Ring())
	for _, x := range blanks {
		at := geom.Point{X: x.FromX.MM(), Y: x.FromY.MM()}
		s.edge(Hidden, x.Outline.Map(at.Add))
		s.placed(p, x, at)
	}
	s.sides(p, l, w)
	s.notes(0, lines...)
	return s.done()
}

// fileWord makes a file's name of words: small letters, digits and dashes.
func fileWord(text string) string {
	var b strings.Builder
	for _, c := range strings.ToLower(text) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			b.WriteRune(c)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.Trim(b.String(), "-")
}

// foamSheet draws one sheet, the parts on it FORM SIDE up.
func foamSheet(p *plan.Plan, x knockout.Sheet, name string) Drawing {
	l, w := x.SizeX.MM(), x.SizeY.MM()
	lines := sheetLines(p, x)
	s := newSheet(name, "Foam, "+x.Name, view.Form{}.Name(), l, w, len(lines))
	s.area(Board, 0, x.Outline)
	s.placed(p, x, geom.Point{})
	s.sides(p, l, w)
	s.notes(0, lines...)
	return s.done()
}

// placed draws the parts on x, whose lower left corner lies at at.
func (s *sheet) placed(p *plan.Plan, x knockout.Sheet, at geom.Point) {
	for _, q := range x.Placements {
		s.area(Foam, 0.3, q.Region.Shape().Map(at.Add, false).Rings()...)
	}
	for _, q := range x.Placements {
		id, mark := q.Part, ""
		if k := slices.IndexFunc(p.Knockout.Parts, func(o knockout.Part) bool { return o.ID == q.Part }); k >= 0 {
			mark = p.Knockout.Parts[k].Mark
			if n := p.Knockout.Parts[k].Sheets; n > 1 {
				id = fmt.Sprintf("%s %d of %d", q.Part, q.Copy, n)
			}
		}
		label := geom.Point(q.LabelAt)
		s.partLabel(label.Add(at), id, mark, turnedBy(nearSide, q.Turn), roomAt(q.Region.Shape(), label))
	}
}

// sides measures a sheet of l by w mm.
func (s *sheet) sides(p *plan.Plan, l, w float64) {
	text := func(d float64) string { return Measure(units.Length(d), p.Piece.Units) }
	s.dim(geom.Point{Y: w}, geom.Point{X: l, Y: w}, 1.6, text(l))
	s.dim(geom.Point{}, geom.Point{Y: w}, 1.6, text(w))
}

// sheetLines are the notes below a sheet.
func sheetLines(p *plan.Plan, x knockout.Sheet) []string {
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	var lines []string
	lines = append(lines, "every part FORM SIDE up; arrows point to the near side of the form",
		fmt.Sprintf("%s between parts, %s at the edges; %.0f %% used", measure(p.Knockout.Rules.Spacing), measure(p.Knockout.Rules.Margin), 100*x.Share))
	if x.Keep != nil {
		lines = append(lines, fmt.Sprintf("keep what is left, %s x %s, as %q", measure(x.Keep.SizeX), measure(x.Keep.SizeY), x.Keep.Name))
	}
	return append(lines, unitNote(p.Piece.Units))
}
