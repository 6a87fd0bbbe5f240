package svg

import (
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
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

// shape draws one outline.
func (w *walker) shape(n *node, st state) error {
	if !st.style.visible {
		w.hide(n)
		return nil
	}
	room := w.opt.Limits.Vertices - w.vertices
	p := &pen{limit: room}
	if !w.trace(n, st, p) {
		return nil
	}
	o := raw{Outline: w.name(n, st)}
	for i := range p.subs {
		s := p.subs[i].transformed(st.toMM)
		if !s.finite(maxCoordinateMM) {
			w.notes.add(ruleRange.At(o.where(w.doc.file), "%q has coordinates beyond %.0f m", o.ID, maxCoordinateMM/1000))
			return nil
		}
		line, ok := s.flatten(w.opt.ChordError, room)
		if room -= len(line.points) + lineCost; !ok || room < 0 || p.full() {
			return w.fail(ruleTooFine, n, "the outlines have more than %d corners once curves are chords", w.opt.Limits.Vertices)
		}
		o.lines = append(o.lines, line)
	}
	w.vertices = w.opt.Limits.Vertices - room
	if len(o.lines) == 0 {
		w.notes.add(ruleZeroArea.At(o.where(w.doc.file), "%q has no line to draw", o.ID))
		return nil
	}
	w.remark(o.Outline, st)
	w.out = append(w.out, o)
	return nil
}

// lineCost is how many corners a line of its own counts for, beside those it has:
// about what it takes in memory.
const lineCost = 8

// remark tells what may mislead about how an outline is seen.
func (w *walker) remark(o Outline, st state) {
	at := o.where(w.doc.file)
	if st.clipped != "" {
		w.notes.add(ruleClipped.At(at, "%q is cut by %s in the drawing, but is read whole", o.ID, st.clipped))
	}
	if !o.Filled && !o.Stroked {
		w.notes.add(ruleUnseen.At(at, "%q has neither fill nor stroke, so the drawing does not show it", o.ID))
	}
}

// trace draws the lines of n, user units; false if there is nothing to draw.
func (w *walker) trace(n *node, st state, p *pen) bool {
	s := &shaper{node: n, view: st.view, mmPerPx: w.opt.mmPerPx()}
	fault := drawn
	switch n.name {
	case "path":
		w.data(n, "d", readPath(n.get("d"), p))
	case "polyline":
		w.data(n, "points", readPoints(n.get("points"), p, false))
	case "polygon":
		w.data(n, "points", readPoints(n.get("points"), p, true))
	case "rect":
		fault = s.rect(p)
	case "circle":
		fault = s.circle(p)
	case "ellipse":
		fault = s.ellipse(p)
	case "line":
		fault = s.line(p)
	}
	if s.err != nil {
		w.notes.add(ruleLength.At(w.placeIn(n, s.errAttr, 0), "the %s has an attribute that cannot be read: %s", n.name, s.err))
		return false
	}
	if fault != drawn {
		w.badSize(n, fault)
		return false
	}
	return true
}

func (w *walker) badSize(n *node, f shapeFault) {
	if f == negative {
		w.notes.add(ruleNegative.At(w.doc.where(n), "the %s has a negative size", n.name))
		return
	}
	w.notes.add(ruleZeroArea.At(w.doc.where(n), "the %s has a size of zero and is not drawn", n.name))
}

// data tells of a fault in path data.
func (w *walker) data(n *node, attr string, fault *pathError) {
	if fault == nil {
		return
	}
	w.notes.add(rulePath.At(w.placeIn(n, attr, fault.at), "the data of %q stop making sense at character %d: %s",
		w.doc.where(n).Element, fault.at+1, fault.text))
}

// placeIn returns where in the file an attribute's value is, at an offset in bytes.
func (w *walker) placeIn(n *node, attr string, offset int) finding.Where {
	at := w.doc.where(n)
	tag := string(w.doc.data[n.start:n.end])
	for from := 0; ; {
		i := strings.Index(tag[from:], attr)
		if i < 0 {
			return at
		}
		i += from
		from = i + len(attr)
		rest := strings.TrimLeft(tag[from:], " \t\r\n")
		if i == 0 || !isSpace(tag[i-1]) || !strings.HasPrefix(rest, "=") {
			continue
		}
		rest = strings.TrimLeft(rest[1:], " \t\r\n")
		if rest == "" || rest[0] != '"' && rest[0] != '\'' {
			return at
		}
		value := len(tag) - len(rest) + 1
		before := tag[:min(len(tag), value+offset)]
		if lines := strings.Count(before, "\n"); lines > 0 {
			at.Line += lines
			at.Column = len(before) - strings.LastIndex(before, "\n")
		} else {
			at.Column += len(before)
		}
		return at
	}
}

// name gives the outline of n its id: the element's own, or that of the use that
// draws it, or its name and number. An element that stands in the drawing itself keeps
// its id whatever uses draw it too; whatever else finds an id taken gets a number more.
func (w *walker) name(n *node, st state) Outline {
	o := Outline{Element: n.name, Line: n.line, Column: n.col, Groups: st.groups, Labels: st.labels, Classes: st.classes,
		FillRule: st.style.rule, Filled: st.style.filled, Stroked: st.style.stroked, Source: n.id()}
	id := n.id()
	if st.useID != "" {
		id = st.useID
	}
	o.Named = id != ""
	if id == "" {
		id = w.numberedName(n)
		w.unnamed = append(w.unnamed, id)
	}
	o.ID = id
	if len(st.uses) > 0 && st.useID == "" && w.taken[id] == 0 && n.standsItself() {
		w.taken[id] = 1 // kept for the element
	}
	for first := len(st.uses) == 0 && (!o.Named || w.doc.byID[id] == n); !first && (w.taken[o.ID] > 0 || o.ID != id && w.doc.byID[o.ID] != nil); {
		w.taken[id]++
		o.ID = sprintf("%s-%d", id, w.taken[id])
	}
	w.taken[o.ID]++
	return o
}

// standsItself reports whether n is drawn where it stands, not only by uses.
func (n *node) standsItself() bool {
	for up := n.parent; up != nil; up = up.parent {
		if kinds[up.name] == silent {
			return false
		}
	}
	return true
}

// numberedName returns "path3" for the third path of the file, whether or not the
// others have ids, and something near it where an element has that very id.
func (w *walker) numberedName(n *node) string {
	name := sprintf("%s%d", n.name, n.number)
	for w.doc.byID[name] != nil {
		name += "-"
	}
	return name
}

func (w *walker) ignore(n *node, what string) {
	if w.ignored[what]++; w.ignored[what] == 1 {
		w.first[what] = w.doc.where(n)
	}
}

func (w *walker) hide(n *node) { w.ignore(n, "") }

// summary tells, once for each kind, what was passed over.
func (w *walker) summary() {
	names := make([]string, 0, len(w.ignored))
	for k := range w.ignored {
		names = append(names, k)
	}
	slices.Sort(names)
	for _, k := range names {
		n, at := w.ignored[k], w.first[k]
		if k == "" {
			w.notes.add(ruleHidden.At(at, "%s, the first here", units.Count(n, "element is hidden and not read", "elements are hidden and not read")))
			continue
		}
		w.notes.add(ruleIgnored.At(at, "%s, the first here", units.Count(n, clip(k)+" element is not read", clip(k)+" elements are not read")))
	}
	if n := len(w.unnamed); n > 0 {
		few := w.unnamed[:min(n, 5)]
		w.notes.add(ruleNoID.At(finding.Where{File: w.doc.file, Line: w.doc.root.line, Element: few[0]},
			"%s called %s", units.Count(n, "outline has no id and is", "outlines have no id and are"), strings.Join(few, ", ")+more(n, len(few))))
	}
}

func more(n, told int) string {
	if n > told {
		return sprintf(" and so on (%d in all)", n)
	}
	return ""
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
