package svg

import (
	"strings"

	"pourwright/internal/finding"
)

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
