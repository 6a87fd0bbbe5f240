package svg

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
