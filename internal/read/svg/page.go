package svg

import (
	"math"
)

// A page is the root's size and how its user units become millimetres.
type page struct {
	wMM, hMM float64 // 0 where the file does not say
	note     string
	physical bool
	toMM     matrix
	view     viewport
}

// A pageReader works out the page of a document.
type pageReader struct {
	doc   *document
	opt   Options
	notes *notebook
}

// read follows width, height, viewBox and preserveAspectRatio of the root. A size that
// is absent, or in per cent, follows from the viewBox: one user unit is then one px; if
// only one of the two is given, the other keeps the viewBox's proportion.
// Source: [w3c-svg2] sections 7.2, 8.2.
func (r pageReader) read() page {
	w, wOK := r.size("width")
	h, hOK := r.size("height")
	box, boxed := r.viewBox()
	px := r.opt.mmPerPx()
	p := page{physical: wOK && w.physical() || hOK && h.physical()}
	switch {
	case wOK && hOK:
		p.wMM, p.hMM = w.mm(px), h.mm(px)
	case wOK && boxed:
		p.wMM, p.hMM = w.mm(px), w.mm(px)*box.h/box.w
	case hOK && boxed:
		p.wMM, p.hMM = h.mm(px)*box.w/box.h, h.mm(px)
	case boxed:
		p.wMM, p.hMM = box.w*px, box.h*px
	case wOK:
		p.wMM = w.mm(px)
	case hOK:
		p.hMM = h.mm(px)
	}
	p.toMM, p.view = scale(px, px), viewport{p.wMM / px, p.hMM / px}
	if boxed {
		p.toMM, p.view = box.into(p.wMM, p.hMM, r.doc.root.get("preserveAspectRatio")), viewport{box.w, box.h}
	}
	if p.view.w == 0 || p.view.h == 0 { // Source: CSS 2.1 section 10.3.2 for a replaced element of no size
		p.view = viewport{300, 150}
	}
	p.note = r.describe(p, wOK || hOK, boxed)
	return p
}

// size returns width or height of the root, false where it is absent or unusable.
func (r pageReader) size(name string) (quantity, bool) {
	text, given := r.doc.root.lookup(name)
	if !given || text == "auto" || text == "" {
		return quantity{}, false
	}
	q, err := parseQuantity(text)
	switch {
	case err != nil:
		r.notes.add(rulePageSize.At(r.doc.where(r.doc.root), "%s=%q of the page cannot be read: %s", name, clip(text), err))
		return q, false
	case q.unit == "%":
		return q, false
	case q.value <= 0 || q.mm(r.opt.mmPerPx()) > maxCoordinateMM:
		r.notes.add(rulePageSize.At(r.doc.where(r.doc.root), "%s=%q of the page is not above zero and under %.0f m", name, clip(text), maxCoordinateMM/1000))
		return q, false
	}
	return q, true
}

func (r pageReader) viewBox() (viewBox, bool) {
	text, given := r.doc.root.lookup("viewBox")
	if !given {
		return viewBox{}, false
	}
	b, err := parseViewBox(text)
	if err != nil {
		r.notes.add(ruleViewBox.At(r.doc.where(r.doc.root), "viewBox=%q cannot be used: %s", clip(text), err))
		return b, false
	}
	return b, true
}

// describe says how the size came about.
func (r pageReader) describe(p page, sized, boxed bool) string {
	unit := sprintf("1 user unit = %.5g mm", p.toMM.unit())
	size := sprintf("page %.1f x %.1f mm", p.wMM, p.hMM)
	res := sprintf("%g px per inch", r.opt.Resolution)
	switch {
	case p.physical:
		return sprintf("%s, stated by the file in real units; %s", size, unit)
	case sized && p.wMM > 0 && p.hMM > 0:
		return sprintf("%s from a width and height without a real unit, read as px at %s; %s", size, res, unit)
	case boxed:
		return sprintf("%s from the viewBox alone, its units read as px at %s; %s", size, res, unit)
	}
	return sprintf("the file states no page; user units are read as px at %s; %s", res, unit)
}

// settle gives a drawing its page once its outlines are known; a file that states no
// size gets a page that reaches from the origin round all outlines.
func (r pageReader) settle(d *Drawing, p page, outlines []raw) {
	d.PageWidthMM, d.PageHeightMM = p.wMM, p.hMM
	if p.wMM == 0 || p.hMM == 0 {
		b := extent(outlines)
		if !b.Empty() {
			d.PageWidthMM = pick(p.wMM, math.Max(0, b.Max.X))
			d.PageHeightMM = pick(p.hMM, math.Max(0, b.Max.Y))
		}
		r.notes.add(ruleNoPage.At(r.doc.where(r.doc.root), "the file states no page size; the page is taken to end with the outlines, %.1f x %.1f mm",
			d.PageWidthMM, d.PageHeightMM))
	}
}

func pick(stated, found float64) float64 {
	if stated > 0 {
		return stated
	}
	return found
}

// tellScale says what an assumed resolution makes of the longest outline.
func tellScale(d *Drawing, root *node, notes *notebook, doc *document) {
	id, mm := d.Longest()
	if d.Physical || mm == 0 {
		return
	}
	at := func(res float64) float64 { return mm * d.Resolution / res }
	f := ruleScale.At(doc.where(root), "the page has no size in real units; at %g px per inch the longest outline, %q, is %.1f mm; at 72 it would be %.1f, at 90 %.1f, at 96 %.1f, and %.1f if the numbers are millimetres",
		d.Resolution, id, mm, at(72), at(90), at(96), mm*d.Resolution/mmPerInch)
	notes.add(f.Measured(d.Resolution, d.Resolution, "px/in"))
}
