package drawing

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/relief"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Distances from the figure in text heights: names of the sides, then dimensions.
const (
	nameGap = 0.5
	dimGap  = 2.3
)

// mostMarks bounds the circled places of one drawing; the findings list them all.
const mostMarks = 12

// A plot is a plan view being drawn.
type plot struct {
	*sheet
	p        *plan.Plan
	l, w     float64
	turned   bool     // seen in the form
	outer    geom.Box // of what is drawn around the piece: the piece, or the form's boards
	captions []string // one line for each layer
	marks    []mark   // places to circle
}

// planFinished draws the piece from above as it stands in use.
func planFinished(p *plan.Plan) Drawing {
	t := newPlot(p, "plan-finished", "Plan of the piece as it stands in use", view.Finished{}.Name(), false, 0)
	t.area(Concrete, 0, t.outer.Ring())
	for i, lay := range p.Relief.Layers {
		t.area(Resin, t.shade(i), lay.Region.Shape().Rings()...)
		t.captions = append(t.captions, fmt.Sprintf("%d  %s: floor %s below the face, %s", lay.Number, lay.Name, t.measure(lay.To), islands(lay.Islands)))
	}
	t.edge(Outline, t.outer.Ring())
	t.numbers(func(r view.Region[view.Finished]) geom.Region { return r.Shape() })
	t.cutLine(sectionY(p))
	return t.finish()
}

// planForm draws the form from above with the knockout in it.
func planForm(p *plan.Plan) Drawing {
	flip := view.Flip{Length: p.Piece.Length.MM()}
	board := math.Max(0, p.Piece.Board.MM())
	t := newPlot(p, "plan-form", "Plan, looking down into the form", view.Form{}.Name(), true, board)
	inside := geom.Rect(0, 0, t.l, t.w)
	t.boards(inside)
	t.area(Board, 0, inside.Ring())
	for i, lay := range p.Relief.Layers {
		t.area(Foam, t.shade(i), flip.ToForm(lay.Region).Shape().Rings()...)
		t.captions = append(t.captions, fmt.Sprintf("%d  %s: foam %s thick, its back %s above the base", lay.Number, lay.Name, t.measure(lay.To-lay.From), t.measure(lay.To)))
	}
	t.edge(Outline, inside.Ring())
	t.numbers(func(r view.Region[view.Finished]) geom.Region { return flip.ToForm(r).Shape() })
	return t.finish()
}

func newPlot(p *plan.Plan, name, title, viewName string, turned bool, around float64) *plot {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	marks := badPlaces(p)
	lines := len(p.Relief.Layers) + len(marks) + 3
	return &plot{
		sheet: newSheet(name, title, viewName, l+2*around, w+2*around, lines),
		p:     p, l: l, w: w, turned: turned, marks: marks,
		outer: geom.Rect(-around, -around, l+around, w+around),
	}
}

func (t *plot) measure(l units.Length) string { return Measure(l, t.p.Piece.Units) }

// shade returns how deep layer i is inked.
func (t *plot) shade(i int) float64 { return float64(i+1) / float64(len(t.p.Relief.Layers)) }

// x returns where a finished-view x stands in this view.
func (t *plot) x(finished float64) float64 {
	if t.turned {
		return view.Flip{Length: t.l}.PointToForm(view.Point[view.Finished]{X: finished}).X
	}
	return finished
}

func islands(n int) string {
	if n == 0 {
		return "no island"
	}
	return units.Count(n, "island", "islands")
}

// numbers writes each layer's number on the part of it that no deeper layer covers.
func (t *plot) numbers(shape func(view.Region[view.Finished]) geom.Region) {
	layers := t.p.Relief.Layers
	for i, lay := range layers {
		seen := lay.Region
		if i+1 < len(layers) {
			seen = seen.Subtract(layers[i+1].Region)
		}
		if seen.Empty() {
			continue
		}
		at, _ := middle(shape(seen), t.size/8)
		t.text(at.Sub(geom.Point{Y: 0.4 * t.size}), "middle", fmt.Sprint(lay.Number))
	}
}

// cutLine marks section A-A: a chain line with short arrows in the viewing direction.
func (t *plot) cutLine(y float64) {
	h := t.size
	t.line(Centre, geom.Point{X: -1.2 * h, Y: y}, geom.Point{X: t.l + 1.2*h, Y: y})
	for _, x := range []float64{-1.2 * h, t.l + 1.2*h} {
		in := math.Copysign(0.8*h, t.l/2-x)
		t.line(Outline, geom.Point{X: x + in, Y: y}, geom.Point{X: x, Y: y}, geom.Point{X: x, Y: y + 0.9*h})
		t.line(Outline, geom.Point{X: x - 0.25*h, Y: y + 0.5*h}, geom.Point{X: x, Y: y + 1.1*h}, geom.Point{X: x + 0.25*h, Y: y + 0.5*h})
		t.text(geom.Point{X: x, Y: y - 1.3*h}, "middle", "A")
	}
}

// finish names the sides, measures, circles bad places and writes the notes.
func (t *plot) finish() Drawing {
	t.sides()
	for i, m := range t.marks {
		t.spot(m.style, geom.Point{X: t.x(m.at.X), Y: m.at.Y}, m.radius, string(rune('a'+i)))
		t.captions = append(t.captions, fmt.Sprintf("%c  %s", 'a'+i, m.text))
	}
	t.dim(geom.Point{X: 0, Y: t.w}.Add(geom.Point{Y: t.outer.Max.Y - t.w}), geom.Point{X: t.l, Y: t.outer.Max.Y}, dimGap, t.measure(t.p.Piece.Length))
	left := t.outer.Min.X
	t.dim(geom.Point{X: left, Y: 0}, geom.Point{X: left, Y: t.w}, dimGap, t.measure(t.p.Piece.Width))
	for _, m := range t.p.Relief.Mouths {
		t.mouth(m)
	}
	t.notes(t.outer.Min.X, append(t.captions, unitNote(t.p.Piece.Units))...)
	return t.done()
}

// sides writes the names of the sides, as they are called on the finished piece.
func (t *plot) sides() {
	mid := t.outer.Center()
	t.text(geom.Point{X: mid.X, Y: t.outer.Max.Y + nameGap*t.size}, "middle", "far side")
	t.text(geom.Point{X: mid.X, Y: t.outer.Min.Y - (nameGap+0.8)*t.size}, "middle", "near side")
	left, right := "left end", "right end"
	if t.turned {
		left, right = right, left
	}
	t.upright(geom.Point{X: t.outer.Min.X - nameGap*t.size, Y: t.clear(left)}, left)
	t.upright(geom.Point{X: t.outer.Max.X + (nameGap+0.8)*t.size, Y: t.clear(right)}, right)
}

// clear returns where along an end its name meets no extension line of a mouth and not
// the cutting line.
func (t *plot) clear(name string) float64 {
	lines := []float64{sectionY(t.p)}
	for _, m := range t.p.Relief.Mouths {
		if m.Side+" end" == view.Side(name) {
			lines = append(lines, m.From.MM(), (m.From + m.Width).MM())
		}
	}
	best, at := -1.0, t.w/2
	for k := range 17 {
		y := t.w * (0.9 - 0.05*float64(k))
		free := math.Inf(1)
		for _, l := range lines {
			free = math.Min(free, math.Abs(y-l))
		}
		if free = math.Min(free, t.widthOf(name)/2+t.size); free > best {
			best, at = free, y
		}
	}
	return at
}

// mouth measures a mouth along its side.
func (t *plot) mouth(m relief.Mouth) {
	a, b := m.From.MM(), (m.From + m.Width).MM()
	text := fmt.Sprintf("mouth %s", t.measure(m.Width))
	side := m.Side
	if t.turned {
		side = map[view.Side]view.Side{view.Left: view.Right, view.Right: view.Left, view.Near: view.Near, view.Far: view.Far}[side]
		if side == view.Near || side == view.Far {
			a, b = t.x(b), t.x(a)
		}
	}
	switch o := t.outer; side {
	case view.Right:
		t.dim(geom.Point{X: o.Max.X, Y: b}, geom.Point{X: o.Max.X, Y: a}, dimGap+1.4, text)
	case view.Left:
		t.dim(geom.Point{X: o.Min.X, Y: a}, geom.Point{X: o.Min.X, Y: b}, dimGap+2.0, text)
	case view.Near:
		t.dim(geom.Point{X: b, Y: o.Min.Y}, geom.Point{X: a, Y: o.Min.Y}, dimGap, text)
	case view.Far:
		t.dim(geom.Point{X: a, Y: o.Max.Y}, geom.Point{X: b, Y: o.Max.Y}, dimGap+2.0, text)
	}
}

// boards draws the form's sides around the inside, showing which pair runs past.
func (t *plot) boards(inside geom.Box) {
	o := t.outer
	if o == inside {
		return
	}
	t.area(Board, 1, o.Ring(), inside.Ring())
	corners := [][2]geom.Point{}
	mitred := t.p.Piece.Corner == "mitre"
	longPast := len(t.p.Form.Panels) > 1 && t.p.Form.Panels[1].Length > t.p.Piece.Length
	for _, x := range [][2]float64{{inside.Min.X, o.Min.X}, {inside.Max.X, o.Max.X}} {
		for _, y := range [][2]float64{{inside.Min.Y, o.Min.Y}, {inside.Max.Y, o.Max.Y}} {
			to := geom.Point{X: x[0], Y: y[1]}
			switch {
			case mitred:
				to = geom.Point{X: x[1], Y: y[1]}
			case longPast:
				to = geom.Point{X: x[1], Y: y[0]}
			}
			corners = append(corners, [2]geom.Point{{X: x[0], Y: y[0]}, to})
		}
	}
	for _, c := range corners {
		t.line(Outline, c[0], c[1])
	}
}

// A mark is a place to circle, in finished view.
type mark struct {
	style  Style
	at     geom.Point
	radius float64
	text   string
}

// badPlaces gathers narrow places and located findings that are no mere notes, each
// place once.
func badPlaces(p *plan.Plan) []mark {
	var out []mark
	add := func(m mark) {
		for _, o := range out {
			if o.at.Sub(m.at).Norm() < 1 {
				return
			}
		}
		if len(out) < mostMarks {
			out = append(out, m)
		}
	}
	for _, n := range p.Relief.Narrow {
		add(mark{Caution, geom.Point{X: n.X.MM(), Y: n.Y.MM()}, n.Limit.MM(),
			fmt.Sprintf("%s %s wide in layer %d, limit %s", n.Kind, Measure(n.Width, p.Piece.Units), n.Layer, Measure(n.Limit, p.Piece.Units))})
	}
	for _, f := range p.Findings {
		if f.Where.At == nil || f.Severity == finding.Note {
			continue
		}
		style, at := Caution, geom.Point{X: f.Where.At[0], Y: f.Where.At[1]}
		if f.Severity == finding.Stop {
			style = StopMark
		}
		if f.Where.View == (view.Form{}).Name() {
			at.X = p.Piece.Length.MM() - at.X
		}
		add(mark{style, at, 0, fmt.Sprintf("%s: %s", f.Severity, f.Code)})
	}
	return out
}
