package svg

import (
	"slices"
	"strings"
)

// A compound is one step of a selector: what must hold of one element.
type compound struct {
	element string // "" for any
	id      string
	classes []string
	child   bool // the step before must be the parent, not any ancestor
}

// A cssRule is one selector with its declarations.
type cssRule struct {
	steps       []compound // outermost first
	specificity int
	order       int
	block       []declaration
}

// A declaration is one property of a style.
type declaration struct {
	property, value string
	important       bool
}

// A stylesheet holds the rules of all style elements, filed by what their last step
// asks for most narrowly.
type stylesheet struct {
	byKey   map[string][]*cssRule // "#id", ".class", "element" or "*"
	count   int
	unread  string // the first of the selectors and at-rules that were not understood
	missed  int    // how many of them there are
	budget  int
	overrun bool
}

func newStylesheet(budget int) *stylesheet {
	return &stylesheet{byKey: map[string][]*cssRule{}, budget: budget}
}

// add reads the text of a style element. Source: [w3c-css-syntax]; selectors:
// elements, classes, ids, *, their compounds, descendants, children and lists.
func (s *stylesheet) add(text string) {
	text = strings.NewReplacer("<!--", "", "-->", "").Replace(stripComments(text))
	for {
		head, rest, found := strings.Cut(text, "{")
		if at := strings.TrimSpace(head); strings.HasPrefix(at, "@") {
			s.miss(at)
			text = skipAtRule(text)
			continue
		}
		if !found {
			return
		}
		body, after := cutBlock(rest)
		s.addRules(head, parseDeclarations(body))
		text = after
	}
}

func (s *stylesheet) miss(what string) {
	if s.missed++; s.missed == 1 {
		s.unread = what
	}
}

func (s *stylesheet) addRules(selectors string, block []declaration) {
	for _, text := range strings.Split(selectors, ",") {
		r := cssRule{order: s.count, block: block}
		s.count++
		if !r.parse(strings.TrimSpace(text)) {
			s.miss(strings.TrimSpace(text))
			continue
		}
		key := r.key()
		s.byKey[key] = append(s.byKey[key], &r)
	}
}

// stripComments removes /* */ comments; one that does not end takes the rest.
func stripComments(s string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(s, "/*")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		if _, s, found = strings.Cut(rest, "*/"); !found {
			return b.String()
		}
	}
}

// cutBlock splits at the brace that closes an open block.
func cutBlock(s string) (body, after string) {
	depth := 1
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return s[:i], s[i+1:]
			}
		}
	}
	return s, ""
}

// skipAtRule drops "@word ...;" or "@word ... {...}".
func skipAtRule(s string) string {
	i := strings.IndexAny(s, ";{")
	if i < 0 {
		return ""
	}
	if s[i] == ';' {
		return s[i+1:]
	}
	_, after := cutBlock(s[i+1:])
	return after
}

// parseDeclarations reads "property: value; ...", keeping what matters to outlines.
func parseDeclarations(s string) []declaration {
	var out []declaration
	for part, more := "", true; more; {
		part, s, more = strings.Cut(s, ";")
		name, value, found := strings.Cut(part, ":")
		name = strings.ToLower(strings.TrimSpace(name))
		if !found || !slices.Contains(presentation, name) && !slices.Contains(unreadProperties, name) {
			continue
		}
		value, important := strings.CutSuffix(strings.TrimSpace(value), "!important")
		if out = append(out, declaration{name, strings.TrimSpace(value), important}); len(out) > mostDeclarations {
			return out
		}
	}
	return out
}

// mostDeclarations is how many properties of one block are kept. Chosen: many times
// the number of properties that matter.
const mostDeclarations = 200

// parse reads a selector and reports whether it is of the simple kinds.
func (r *cssRule) parse(text string) bool {
	text = strings.ReplaceAll(text, ">", " > ")
	child := false
	for _, word := range strings.Fields(text) {
		if word == ">" {
			if child || len(r.steps) == 0 {
				return false
			}
			child = true
			continue
		}
		c, weight, ok := parseCompound(word)
		if !ok {
			return false
		}
		c.child, child = child, false
		r.steps = append(r.steps, c)
		r.specificity += weight
	}
	return len(r.steps) > 0 && !child
}

// parseCompound reads "element.class#id" and its weight, a count of ids, classes and
// elements in steps of 1000.
func parseCompound(word string) (c compound, weight int, ok bool) {
	if strings.ContainsAny(word, ":[]+~()\"'\\|&") {
		return c, 0, false
	}
	for word != "" {
		end := strings.IndexAny(word[1:], ".#") + 1
		if end == 0 {
			end = len(word)
		}
		part := word[:end]
		word = word[end:]
		switch {
		case part == "." || part == "#":
			return c, 0, false
		case part[0] == '.':
			c.classes = append(c.classes, part[1:])
			weight += 1000
		case part[0] == '#':
			c.id = part[1:]
			weight += 1000 * 1000
		case part != "*":
			c.element = part
			weight++
		}
	}
	return c, weight, true
}

func (r *cssRule) key() string {
	last := r.steps[len(r.steps)-1]
	switch {
	case last.id != "":
		return "#" + last.id
	case len(last.classes) > 0:
		return "." + last.classes[0]
	case last.element != "":
		return last.element
	}
	return "*"
}

// matching returns the rules for n, weakest first.
func (s *stylesheet) matching(n *node) []*cssRule {
	if s.count == 0 {
		return nil
	}
	keys := []string{"*", n.name}
	if id := n.id(); id != "" {
		keys = append(keys, "#"+id)
	}
	classes := n.classes()
	slices.Sort(classes)
	for _, c := range slices.Compact(classes) {
		keys = append(keys, "."+c)
	}
	var out []*cssRule
	for _, k := range keys {
		for _, r := range s.byKey[k] {
			if s.matches(r.steps, n) {
				out = append(out, r)
			}
		}
	}
	slices.SortFunc(out, func(a, b *cssRule) int {
		if a.specificity != b.specificity {
			return a.specificity - b.specificity
		}
		return a.order - b.order
	})
	return out
}

// matches reports whether the last step holds of n and those before of its ancestors.
func (s *stylesheet) matches(steps []compound, n *node) bool {
	if s.budget -= 1 + len(n.get("class"))/32; s.budget < 0 {
		s.overrun = true
		return false
	}
	last := steps[len(steps)-1]
	if !last.holds(n) {
		return false
	}
	if steps = steps[:len(steps)-1]; len(steps) == 0 {
		return true
	}
	if last.child {
		return n.parent != nil && s.matches(steps, n.parent)
	}
	for up := n.parent; up != nil && !s.overrun; up = up.parent {
		if s.matches(steps, up) {
			return true
		}
	}
	return false
}

func (c compound) holds(n *node) bool {
	if c.element != "" && c.element != n.name || c.id != "" && c.id != n.id() {
		return false
	}
	if len(c.classes) == 0 {
		return true
	}
	have := n.get("class")
	for _, want := range c.classes {
		if !hasWord(have, want) {
			return false
		}
	}
	return true
}

// hasWord reports whether a list of words parted by white space holds word.
func hasWord(list, word string) bool {
	for i := 0; i+len(word) <= len(list); {
		at := strings.Index(list[i:], word)
		if at < 0 {
			return false
		}
		at += i
		i = at + len(word)
		if (at == 0 || isSpace(list[at-1])) && (i == len(list) || isSpace(list[i])) {
			return true
		}
	}
	return false
}
