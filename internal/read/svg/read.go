package svg

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Read reads the drawing in data. File names it in findings. The error, if any, is an
// *Error with its place and a hint; the findings up to it are returned beside it. The
// same data always give the same drawing and findings.
func Read(file string, data []byte, opt Options) (*Drawing, []finding.Finding, error) {
	opt = opt.orDefault()
	notes := &notebook{}
	d, err := read(file, data, opt, notes)
	return d, notes.all(file), err
}

func read(file string, data []byte, opt Options, notes *notebook) (*Drawing, error) {
	doc, err := parse(file, data, opt.Limits, notes)
	if err != nil {
		return nil, err
	}
	pages := pageReader{doc, opt, notes}
	p := pages.read()
	w := newWalker(doc, opt, notes)
	if err := w.root(p); err != nil {
		return nil, err
	}
	w.summary()
	d := &Drawing{File: file, UnitNote: p.note, Physical: p.physical, MMPerUnit: p.toMM.unit(), Resolution: opt.Resolution, toMM: p.toMM}
	pages.settle(d, p, w.out)
	for _, o := range w.out {
		d.Outlines = append(d.Outlines, finish(o, opt, file, notes))
	}
	if err := check(d, opt, notes); err != nil {
		return nil, err
	}
	tellScale(d, doc.root, notes, doc)
	return d, nil
}

// root draws everything from the root down.
func (w *walker) root(p page) error {
	st := state{toMM: p.toMM, view: p.view, style: initial}
	root := w.doc.root
	own := w.sheet.of(root)
	if w.sheet.overrun {
		return w.fail(ruleTooMuchWork, root, "the style sheets take more than %d tests of a selector", w.opt.Limits.Selectors)
	}
	if own.values["display"] == "none" {
		w.hide(root)
		return nil
	}
	st, ok := w.enter(root, own, st)
	if !ok {
		return nil
	}
	return w.children(root, st)
}

// finish heals the lines of a raw outline, measures them, and tells what is wrong
// with each.
func finish(r raw, opt Options, file string, notes *notebook) Outline {
	o := r.Outline
	lines, widest := heal(r.lines, opt.Heal)
	if widest > geom.Grid {
		notes.add(ruleGapClosed.At(o.where(file), "a gap of %.3f mm in %q was closed", widest, o.ID).Measured(widest, opt.Heal, "mm"))
	}
	o.Box = geom.EmptyBox()
	specks, flat := 0, 0
	for _, l := range lines {
		area := l.points.Area() + l.bulge
		speck := l.closed && math.Abs(area) < opt.Speck && l.small(opt)
		o.Rings = append(o.Rings, l.points)
		o.Closed = append(o.Closed, l.closed)
		o.Speck = append(o.Speck, speck)
		o.exact = append(o.exact, area)
		o.Box = o.Box.Union(l.box)
		switch {
		case !l.closed:
			tellOpen(o, l, opt, file, notes)
		case speck && math.Abs(area) < geom.Grid:
			flat++
		case speck:
			specks++
		}
	}
	if flat > 0 {
		notes.add(ruleZeroArea.At(o.where(file), "%q has %s around nothing", o.ID, units.Count(flat, "closed line", "closed lines")))
	}
	if specks > 0 {
		notes.add(ruleSpeck.At(o.where(file), "%q has %s around less than %g mm2, dropped", o.ID, units.Count(specks, "line", "lines"), opt.Speck).
			Measured(math.Abs(o.exact[0]), opt.Speck, "mm2"))
	}
	if n := vertices(o); n > manyVertices {
		notes.add(ruleVertices.At(o.where(file), "%q has %d corners", o.ID, n).Measured(float64(n), manyVertices, ""))
	}
	return o
}

// small reports whether l, whose lobes add up to next to nothing, has no lobes that
// cancel: it is tiny, or does not cross itself.
func (l *polyline) small(opt Options) bool {
	if l.box.Width()*l.box.Height() < opt.Speck {
		return true
	}
	crossed, whole := newHierarchy([]geom.Ring{l.points}, opt.Limits.Pairs/10).crossings()
	return whole && len(crossed) == 0
}

// manyVertices is where work gets slow enough to say so. Chosen.
const manyVertices = 50_000

func vertices(o Outline) int {
	n := 0
	for _, r := range o.Rings {
		n += len(r)
	}
	return n
}

func tellOpen(o Outline, l polyline, opt Options, file string, notes *notebook) {
	a, b := l.points[0], l.points[len(l.points)-1]
	gap := b.Sub(a).Norm()
	notes.add(ruleOpen.At(o.whereAt(file, b), "%q is open: its ends at x %.2f, y %.2f and x %.2f, y %.2f mm on the page are %.2f mm apart; gaps up to %g mm are closed",
		o.ID, a.X, a.Y, b.X, b.Y, gap, opt.Heal).Measured(gap, opt.Heal, "mm"))
}
