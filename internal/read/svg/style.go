package svg

import (
	"slices"
	"strings"

	"pourwright/internal/geom"
)

// A style is what an element's own attributes and the style sheets say of it; ""
// where they say nothing.
type style struct {
	values map[string]string
	unread []string // geometry and transforms given as style, which are not read
}

// presentation lists the properties that matter to outlines and may stand as
// attributes. Source: [w3c-svg2] section 6.6.
var presentation = []string{"fill-rule", "fill", "stroke", "display", "visibility", "clip-path", "mask"}

// unreadProperties would move or reshape an outline if a style sheet set them.
var unreadProperties = []string{"transform", "d", "x", "y", "width", "height", "cx", "cy", "r", "rx", "ry", "zoom", "translate", "scale", "rotate"}

// of returns the style of n: attributes, under style sheets by specificity and order,
// under the style attribute, under what is important. Source: [w3c-svg2] section 6.
func (s *stylesheet) of(n *node) *style {
	if n.style != nil {
		return n.style
	}
	st := &style{values: map[string]string{}}
	for _, p := range presentation {
		if v, ok := n.lookup(p); ok {
			st.values[p] = strings.TrimSpace(v)
		}
	}
	own := parseDeclarations(stripComments(n.get("style")))
	rules := s.matching(n)
	for _, important := range []bool{false, true} {
		for _, r := range rules {
			st.apply(r.block, important)
		}
		st.apply(own, important)
	}
	n.style = st
	return st
}

func (st *style) apply(block []declaration, important bool) {
	for _, d := range block {
		if d.important != important {
			continue
		}
		switch {
		case slices.Contains(presentation, d.property):
			st.values[d.property] = d.value
		case slices.Contains(unreadProperties, d.property) && d.value != "none" && d.value != "auto":
			if !slices.Contains(st.unread, d.property) {
				st.unread = append(st.unread, d.property)
			}
		}
	}
}

// An inherited style is what an element hands on to those inside it.
type inherited struct {
	rule    geom.FillRule
	visible bool
	filled  bool
	stroked bool
}

// initial is what holds at the root. Source: [w3c-svg2] property tables.
var initial = inherited{rule: geom.NonZero, visible: true, filled: true}

// under returns h with what st says.
func (h inherited) under(st *style) inherited {
	switch st.values["fill-rule"] {
	case "evenodd":
		h.rule = geom.EvenOdd
	case "nonzero", "initial":
		h.rule = geom.NonZero
	}
	switch st.values["visibility"] {
	case "visible", "initial":
		h.visible = true
	case "hidden", "collapse":
		h.visible = false
	}
	h.filled = painted(st.values["fill"], h.filled)
	h.stroked = painted(st.values["stroke"], h.stroked)
	return h
}

func painted(value string, before bool) bool {
	switch value {
	case "", "inherit", "unset":
		return before
	case "none", "transparent":
		return false
	}
	return true
}

// set reports whether a property that names another element does so.
func (st *style) set(property string) bool {
	v := st.values[property]
	return v != "" && v != "none" && v != "initial"
}
