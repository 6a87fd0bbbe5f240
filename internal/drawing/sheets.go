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

// foamSheets draws every sheet of foam with the parts on it.
func foamSheets(p *plan.Plan) []Drawing {
	out := []Drawing{}
	seen := map[string]bool{}
	for i, x := range p.Knockout.Sheets {
		name := fileWord(x.Name)
		if name == "" || seen[name] {
			name = fmt.Sprintf("foam-%d", i+1)
		}
		seen[name] = true
		out = append(out, foamSheet(p, x, name))
	}
	return out
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
	for _, q := range x.Placements {
		s.area(Foam, 0.3, q.Region.Shape().Rings()...)
	}
	for _, q := range x.Placements {
		id, mark := q.Part, ""
		if k := slices.IndexFunc(p.Knockout.Parts, func(o knockout.Part) bool { return o.ID == q.Part }); k >= 0 {
			mark = p.Knockout.Parts[k].Mark
			if n := p.Knockout.Parts[k].Sheets; n > 1 {
				id = fmt.Sprintf("%s %d of %d", q.Part, q.Copy, n)
			}
		}
		at := geom.Point(q.LabelAt)
		s.partLabel(at, id, mark, turnedBy(nearSide, q.Turn), roomAt(q.Region.Shape(), at))
	}
	text := func(d float64) string { return Measure(units.Length(d), p.Piece.Units) }
	s.dim(geom.Point{Y: w}, geom.Point{X: l, Y: w}, 1.6, text(l))
	s.dim(geom.Point{}, geom.Point{Y: w}, 1.6, text(w))
	s.notes(0, lines...)
	return s.done()
}

// sheetLines are the notes below a sheet.
func sheetLines(p *plan.Plan, x knockout.Sheet) []string {
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	var lines []string
	if x.Stock == "blank" {
		lines = append(lines, fmt.Sprintf("saw it from sheet %d, its lower left corner at %s, %s", x.Whole, measure(x.FromX), measure(x.FromY)))
	}
	lines = append(lines, "every part FORM SIDE up; arrows point to the near side of the form",
		fmt.Sprintf("%s between parts, %s at the edges; %.0f %% used", measure(p.Knockout.Rules.Spacing), measure(p.Knockout.Rules.Margin), 100*x.Share))
	if x.Keep != nil {
		lines = append(lines, fmt.Sprintf("keep what is left, %s x %s, as %q", measure(x.Keep.SizeX), measure(x.Keep.SizeY), x.Keep.Name))
	}
	return append(lines, unitNote(p.Piece.Units))
}
