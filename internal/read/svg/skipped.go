package svg

import (
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

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
