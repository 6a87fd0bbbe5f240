package svg

import (
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
)

// A state is what an element finds around itself.
type state struct {
	toMM    matrix
	view    viewport
	style   inherited
	groups  []string
	labels  []string
	classes []string
	clipped string // what clips or masks it, in words
	uses    []*node
	useID   string // id for the one shape a use draws
}

// A walker draws the elements of a document.
type walker struct {
	doc      *document
	opt      Options
	notes    *notebook
	sheet    *stylesheet
	out      []raw
	visited  int
	vertices int
	taken    map[string]int // how often an id was given
	unnamed  []string
	first    map[string]finding.Where // of what was ignored or hidden
	ignored  map[string]int
}

// A raw outline is an outline before its lines are healed and checked.
type raw struct {
	Outline
	lines []polyline
}

func newWalker(doc *document, opt Options, notes *notebook) *walker {
	w := &walker{doc: doc, opt: opt, notes: notes, sheet: newStylesheet(opt.Limits.Selectors),
		taken: map[string]int{}, first: map[string]finding.Where{}, ignored: map[string]int{}}
	for _, n := range doc.styles {
		before := w.sheet.missed
		w.sheet.add(string(n.text))
		if missed := w.sheet.missed - before; missed > 0 {
			notes.add(ruleStyle.At(doc.where(n), "the style sheet has %d parts that are not read; the first in the file is %q", missed, clip(w.sheet.unread)))
		}
	}
	return w
}

// fail ends the walk.
func (w *walker) fail(r finding.Rule, n *node, format string, args ...any) error {
	return &Error{Rule: r, Where: w.doc.where(n), Text: sprintf(format, args...)}
}

// element draws n and what is inside it.
func (w *walker) element(n *node, st state) error {
	if w.visited++; w.visited > w.opt.Limits.Elements {
		return w.fail(ruleTooMany, n, "more than %d elements would be drawn once every use is followed", w.opt.Limits.Elements)
	}
	kind := kinds[n.name]
	if kind == silent {
		return nil
	}
	if kind == ignored || kind == unknown {
		w.ignore(n, n.name)
		return nil
	}
	own := w.sheet.of(n)
	if w.sheet.overrun {
		return w.fail(ruleTooMuchWork, n, "the style sheets take more than %d tests of a selector", w.opt.Limits.Selectors)
	}
	if own.values["display"] == "none" {
		w.hide(n)
		return nil
	}
	st, ok := w.enter(n, own, st)
	if !ok {
		return nil
	}
	switch kind {
	case group:
		return w.children(n, st)
	case viewportElement:
		return w.nestedSVG(n, st, n.get("width"), n.get("height"))
	case chooser:
		return w.choose(n, st)
	case reference:
		return w.use(n, st)
	}
	return w.shape(n, st)
}

// enter returns the state inside n, false if its transform cannot be read.
func (w *walker) enter(n *node, own *style, st state) (state, bool) {
	st.style = st.style.under(own)
	if len(own.unread) > 0 {
		w.notes.add(ruleStyle.At(w.doc.where(n), "the style property %s is not read", strings.Join(own.unread, ", ")).
			Do("write %s as attributes of the element", strings.Join(own.unread, ", ")).As(finding.Caution))
	}
	if text, ok := n.lookup("transform"); ok {
		m, err := parseTransform(text)
		if err != nil {
			w.notes.add(ruleTransform.At(w.placeIn(n, "transform", 0), "transform=%q cannot be read: %s", clip(text), err))
			return st, false
		}
		st.toMM = st.toMM.then(m)
	}
	for _, p := range []string{"clip-path", "mask"} {
		if own.set(p) {
			st.clipped = p
		}
	}
	if kinds[n.name] != shape && n != w.doc.root {
		if id := n.id(); id != "" {
			st.groups = append(slices.Clip(st.groups), id)
		}
	}
	if l := n.label(); l != "" {
		st.labels = append(slices.Clip(st.labels), l)
	}
	st.classes = append(slices.Clip(st.classes), n.classes()...)
	return st, true
}

func (w *walker) children(n *node, st state) error {
	for _, c := range n.children {
		if err := w.element(c, st); err != nil {
			return err
		}
	}
	return nil
}

// choose draws the first child of a switch that asks for nothing special.
// Source: [w3c-svg2] section 5.8.
func (w *walker) choose(n *node, st state) error {
	for _, c := range n.children {
		_, extension := c.lookup("requiredExtensions")
		if k := kinds[c.name]; !extension && k != ignored && k != silent && k != unknown {
			return w.element(c, st)
		}
	}
	return nil
}

// nestedSVG draws the inside of an svg or symbol element in a viewport of its own.
// Source: [w3c-svg2] section 8.2.
func (w *walker) nestedSVG(n *node, st state, width, height string) error {
	s := &shaper{node: n, view: st.view, mmPerPx: w.opt.mmPerPx()}
	x, y := 0.0, 0.0
	if n.name == "svg" {
		x, y = s.length("x", alongX), s.length("y", alongY)
	}
	full := func(text string, a axis) float64 {
		if text == "" || text == "auto" {
			text = "100%"
		}
		q, err := parseQuantity(text)
		if err != nil && s.err == nil {
			s.err = err
		}
		return q.user(s.mmPerPx, s.view, a)
	}
	inner := viewport{full(width, alongX), full(height, alongY)}
	if s.err != nil {
		w.notes.add(ruleLength.At(w.doc.where(n), "the place or size of the element cannot be read: %s", s.err))
		return nil
	}
	if f := size(inner.w, inner.h); f != drawn {
		w.badSize(n, f)
		return nil
	}
	st.toMM = st.toMM.then(translate(x, y))
	if text, ok := n.lookup("viewBox"); ok {
		b, err := parseViewBox(text)
		if err != nil {
			w.notes.add(ruleViewBox.At(w.placeIn(n, "viewBox", 0), "viewBox=%q cannot be used: %s", clip(text), err).As(finding.Caution))
			return nil
		}
		st.toMM = st.toMM.then(b.into(inner.w, inner.h, n.get("preserveAspectRatio")))
		inner = viewport{b.w, b.h}
	}
	st.view = inner
	return w.children(n, st)
}

// use draws another element of the file. Source: [w3c-svg2] section 5.5.
func (w *walker) use(n *node, st state) error {
	href := strings.TrimSpace(n.get("href"))
	target := w.doc.byID[strings.TrimPrefix(href, "#")]
	if !strings.HasPrefix(href, "#") || target == nil {
		w.notes.add(ruleUse.At(w.doc.where(n), "the use refers to %q, which is not in this file", clip(href)))
		return nil
	}
	if slices.Contains(st.uses, n) || isAncestor(target, n) {
		w.notes.add(ruleUseLoop.At(w.doc.where(n), "the use of %q leads back to itself", clip(href)))
		return nil
	}
	if len(st.uses) >= w.opt.Limits.UseDepth {
		return w.fail(ruleTooDeep, n, "uses refer to one another more than %d deep", w.opt.Limits.UseDepth)
	}
	s := &shaper{node: n, view: st.view, mmPerPx: w.opt.mmPerPx()}
	st.toMM = st.toMM.then(translate(s.length("x", alongX), s.length("y", alongY)))
	if s.err != nil {
		w.notes.add(ruleLength.At(w.doc.where(n), "the place of the use cannot be read: %s", s.err))
		return nil
	}
	st.uses = append(slices.Clip(st.uses), n)
	if id := n.id(); id != "" && (kinds[target.name] == shape || kinds[target.name] == reference) && st.useID == "" {
		st.useID = id
	}
	return w.usedElement(n, target, st)
}

// usedElement draws the target of a use; sizes on the use replace those of a symbol
// or svg.
func (w *walker) usedElement(n, target *node, st state) error {
	pick := func(name string) string {
		if v, ok := n.lookup(name); ok || target.name == "symbol" {
			return v
		}
		return target.get(name)
	}
	switch target.name {
	case "symbol":
		w.visited++
		inner, ok := w.enter(target, w.sheet.of(target), st)
		if !ok {
			return nil
		}
		return w.nestedSVG(target, inner, pick("width"), pick("height"))
	case "svg":
		inner, ok := w.enter(target, w.sheet.of(target), st)
		if !ok {
			return nil
		}
		return w.nestedSVG(target, inner, pick("width"), pick("height"))
	}
	return w.element(target, st)
}

func isAncestor(a, n *node) bool {
	for ; n != nil; n = n.parent {
		if n == a {
			return true
		}
	}
	return false
}

// A kind says what the walker does with an element.
type kind int

const (
	unknown kind = iota
	shape
	group
	viewportElement
	chooser
	reference
	ignored
	silent // holds nothing to draw where it stands
)

var kinds = map[string]kind{
	"path": shape, "rect": shape, "circle": shape, "ellipse": shape, "line": shape, "polyline": shape, "polygon": shape,
	"g": group, "a": group, "svg": viewportElement, "switch": chooser, "use": reference,
	"text": ignored, "image": ignored, "foreignObject": ignored, "script": ignored,
	"animate": ignored, "animateMotion": ignored, "animateTransform": ignored, "set": ignored,
	"defs": silent, "symbol": silent, "title": silent, "desc": silent, "metadata": silent, "style": silent,
	"clipPath": silent, "mask": silent, "pattern": silent, "marker": silent, "filter": silent, "view": silent,
	"linearGradient": silent, "radialGradient": silent, "font": silent, "font-face": silent, "cursor": silent, "color-profile": silent,
}

// extent returns the box of all raw outlines, mm.
func extent(outlines []raw) geom.Box {
	b := geom.EmptyBox()
	for _, o := range outlines {
		for _, l := range o.lines {
			b = b.Union(l.box)
		}
	}
	return b
}
