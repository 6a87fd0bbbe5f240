package svg

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"pourwright/internal/finding"
)

// page wraps drawing elements in a page of 100 by 100 mm.
func page100(body string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">` + "\n" + body + "\n</svg>"
}

const square = `<rect id="sq" x="10" y="10" width="20" height="20"/>`

// badDrawings lists drawings with one fault each: the finding's code, where it must
// point, and a word its remedy must hold.
var badDrawings = []struct {
	name, drawing string
	code          string
	line          int
	element       string
	remedy        string
}{
	{"open path", page100(`<path id="o" d="M10 10 H50 V50 H10"/>`), "svg/open-path", 2, "o", "close the line"},
	{"open polyline", page100(`<polyline id="o" points="1 1 9 1 9 9"/>`), "svg/open-path", 2, "o", "close"},
	{"lone line", page100(`<line id="l" x1="1" y1="1" x2="9" y2="9"/>`), "svg/open-path", 2, "l", "close"},
	{"small gap", page100(`<path id="g" d="M10 10 H50 V50 H10 V10.15"/>`), "svg/gap-closed", 2, "g", "nothing to do"},
	{"bow tie", page100(`<path id="b" d="M10 10 L50 50 V10 L10 50 Z"/>`), "svg/self-crossing", 2, "b", "move the nodes"},
	{"loop in a curve", page100(`<path id="b" d="M10 50 C150 0 -50 0 90 50 V90 H10 Z"/>`), "svg/self-crossing", 2, "b", "move the nodes"},
	{"two outlines cross", page100(square + `<circle id="c" cx="30" cy="20" r="5"/>`), "svg/crossing-outlines", 2, "c", "clear"},
	{"drawn twice", page100(square + "\n" + `<path id="again" d="M30 10 V30 H10 V10 Z"/>`), "svg/duplicate", 3, "again", "delete one"},
	{"speck", page100(square + `<rect id="dot" x="50" y="50" width=".5" height=".5"/>`), "svg/speck", 2, "dot", "delete the speck"},
	{"closed around nothing", page100(`<path id="z" d="M10 10 H20 Z"/>`), "svg/zero-area", 2, "z", "width and a height"},
	{"rect without width", page100(`<rect id="z" height="20"/>`), "svg/zero-area", 2, "z", "width"},
	{"path without data", page100(`<path id="z" d=""/>`), "svg/zero-area", 2, "z", "width"},
	{"no outline", page100(``), "svg/no-closed-outline", 1, "svg", "draw at least one"},
	{"only hidden", page100(`<g display="none">` + square + `</g>`), "svg/no-closed-outline", 1, "svg", "hidden"},
	{"hidden layer", page100(square + `<g style="display:none" id="old"><path d="M0 0h9v9z"/></g>`), "svg/hidden", 2, "old", "show"},
	{"hole drawn the same way", page100(`<path id="h" d="M0 0 H90 V90 H0 Z M10 10 H50 V50 H10 Z"/>`), "svg/fill-rule", 2, "h", "evenodd"},
	{"no unit", `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100">` + square + `</svg>`, "svg/scale-assumed", 1, "svg", "mm"},
	{"no page", `<svg xmlns="http://www.w3.org/2000/svg">` + square + `</svg>`, "svg/no-page", 1, "svg", "width and a height"},
	{"unknown unit of the page", `<svg xmlns="http://www.w3.org/2000/svg" width="10furlongs" height="9mm">` + square + `</svg>`, "svg/page-size", 1, "svg", "mm"},
	{"page of negative width", `<svg xmlns="http://www.w3.org/2000/svg" width="-10mm" height="9mm">` + square + `</svg>`, "svg/page-size", 1, "svg", "positive"},
	{"page of no width", `<svg xmlns="http://www.w3.org/2000/svg" width="0" height="9mm">` + square + `</svg>`, "svg/page-size", 1, "svg", "positive"},
	{"viewBox of no size", `<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 0 0">` + square + `</svg>`, "svg/view-box", 1, "svg", "viewBox"},
	{"viewBox of negative size", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 -5 5">` + square + `</svg>`, "svg/view-box", 1, "svg", "viewBox"},
	{"viewBox of three numbers", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 5">` + square + `</svg>`, "svg/view-box", 1, "svg", "viewBox"},
	{"viewBox of words", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="a b c d">` + square + `</svg>`, "svg/view-box", 1, "svg", "viewBox"},
	{"unknown unit", page100(`<rect id="r" x="1" y="1" width="3em" height="4"/>`), "svg/length", 2, "r", "mm"},
	{"length is no number", page100(`<circle id="r" r="big"/>`), "svg/length", 2, "r", "number"},
	{"not a number", page100(`<circle id="r" r="NaN"/>`), "svg/length", 2, "r", "number"},
	{"negative size", page100(`<rect id="r" width="-3" height="4"/>`), "svg/negative-size", 2, "r", "positive"},
	{"negative radius", page100(`<circle id="r" r="-3"/>`), "svg/negative-size", 2, "r", "positive"},
	{"huge coordinates", page100(`<path id="h" d="M0 0 H1e9 V1e9 Z"/>`), "svg/out-of-range", 2, "h", "transform"},
	{"huge transform", page100(`<g transform="scale(1e200)"><g transform="scale(1e200)"><path id="h" d="M0 0 H1 V1 Z"/></g></g>`), "svg/out-of-range", 2, "h", "transform"},
	{"number too large", page100(`<path id="h" d="M0 0 H1e999 V1 Z"/>`), "svg/path-error", 2, "h", "correct the data"},
	{"NaN in a path", page100(`<path id="h" d="M0 0 L NaN 3 Z"/>`), "svg/path-error", 2, "h", "correct the data"},
	{"path without M", page100(`<path id="h" d="L 3 3 Z"/>`), "svg/path-error", 2, "h", "correct the data"},
	{"odd coordinates", page100(`<polygon id="h" points="0 0 9 0 9 9 3"/>`), "svg/path-error", 2, "h", "correct the data"},
	{"bad transform", page100(`<g transform="twist(3)">` + square + `</g>`), "svg/transform", 2, "g", "matrix"},
	{"transform cut short", page100(`<g transform="translate(3">` + square + `</g>`), "svg/transform", 2, "g", "matrix"},
	{"use of nothing", page100(square + `<use id="u" href="#gone"/>`), "svg/use-target", 2, "u", "copy the shape"},
	{"use of another file", page100(square + `<use id="u" href="other.svg#a"/>`), "svg/use-target", 2, "u", "copy the shape"},
	{"use of itself", page100(square + `<use id="u" href="#u"/>`), "svg/use-loop", 2, "u", "replace the use"},
	{"uses in a ring", page100(square + `<use id="a" href="#b"/><use id="b" href="#a"/>`), "svg/use-loop", 2, "a", "replace the use"},
	{"use of its own group", page100(square + `<g id="a"><use id="u" href="#a"/></g>`), "svg/use-loop", 2, "u", "replace the use"},
	{"entity", `<!DOCTYPE svg [<!ENTITY e "<path d='M0 0h9v9z'/>">]>` + "\n" + page100(square+"\n&e;"), "svg/entity", 3, "svg", "write the elements"},
	{"clipped", page100(`<clipPath id="k"><rect width="5" height="5"/></clipPath><g clip-path="url(#k)">` + square + `</g>`), "svg/clipped", 2, "sq", "cut the outline"},
	{"text", page100(square + `<text id="t" x="5" y="5">hello</text>`), "svg/ignored", 2, "t", "path"},
	{"not to be seen", page100(`<rect id="u" width="9" height="9" fill="none"/>`), "svg/unseen", 2, "u", "stroke"},
	{"same id twice", page100(square + "\n" + `<circle id="sq" cx="60" cy="60" r="9"/>`), "svg/duplicate-id", 3, "sq", "id of its own"},
	{"no id", page100(`<rect width="9" height="9"/>`), "svg/no-id", 1, "rect1", "ids"},
	{"off the page", page100(`<rect id="far" x="200" width="9" height="9"/>`), "svg/off-page", 2, "far", "onto the page"},
	{"style sheet not simple", page100(`<style>rect:hover{fill:red}</style>` + square), "svg/style", 2, "style", "element itself"},
	{"geometry in a style", page100(`<rect id="s" width="9" height="9" style="transform: rotate(20deg)"/>`), "svg/style", 2, "s", "attributes"},
}

func TestBadDrawingsSayWhatWhereAndWhatToDo(t *testing.T) {
	for _, tt := range badDrawings {
		t.Run(tt.name, func(t *testing.T) {
			_, found, err := Read("bad.svg", []byte(tt.drawing), Options{})
			if err != nil {
				t.Fatal(err)
			}
			i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Code == tt.code })
			if i < 0 {
				t.Fatalf("no %s among %v", tt.code, found)
			}
			f := found[i]
			if f.Where.File != "bad.svg" || f.Where.Line != tt.line || f.Where.Column == 0 && tt.code != "svg/no-id" || f.Where.Element != tt.element {
				t.Errorf("place %+v, want line %d, element %q", f.Where, tt.line, tt.element)
			}
			if !strings.Contains(f.Remedy, tt.remedy) {
				t.Errorf("remedy %q does not say %q", f.Remedy, tt.remedy)
			}
		})
	}
}

// brokenFiles lists files that cannot be read at all.
var brokenFiles = []struct {
	name, data string
	code       string
	line       int
	hint       string
}{
	{"empty", "", "svg/not-svg", 1, "export"},
	{"blanks", " \n ", "svg/not-svg", 1, "export"},
	{"text", "width 1220", "svg/not-svg", 1, "export"},
	{"web page", "<!DOCTYPE html>\n<html><body><svg/></body></html>", "svg/not-svg", 2, "export"},
	{"another svg", `<svg xmlns="http://example.org/other"/>`, "svg/not-svg", 1, "export"},
	{"cut short", page100(square)[:130], "svg/not-xml", 2, "export"},
	{"cut short between tags", strings.TrimSuffix(page100(square), "</svg>"), "svg/not-xml", 3, "export"},
	{"cut short in a comment", page100(square)[:115] + "<!-- ", "svg/not-xml", 2, "export"},
	{"compressed", "\x1f\x8b\x08\x00abc", "svg/compressed", 1, "unpack"},
	{"UTF-16", "\xff\xfe<\x00s\x00v\x00g\x00", "svg/encoding", 1, "UTF-8"},
	{"picture", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "svg/encoding", 1, "UTF-8"},
	{"a thousand groups deep", page100(strings.Repeat("<g>\n", 1000) + strings.Repeat("</g>", 1000)), "svg/too-deep", 257, "ungroup"},
	{"deep in a foreign element", page100(`<x xmlns="http://example.org/x">` + strings.Repeat("<g>\n", 1000)), "svg/too-deep", 256, "ungroup"},
	{"a crowd of attributes", page100("\n<g " + strings.Repeat("a=\"\" ", 5000) + "/>"), "svg/too-many-elements", 3, "remove"},
}

func TestBrokenFilesAreErrorsWithPlaceAndHint(t *testing.T) {
	for _, tt := range brokenFiles {
		t.Run(tt.name, func(t *testing.T) {
			d, _, err := Read("bad.svg", []byte(tt.data), Options{})
			var e *Error
			if !errors.As(err, &e) || d != nil {
				t.Fatalf("got %v, %v", d, err)
			}
			f := e.Finding()
			if f.Code != tt.code || f.Where.Line != tt.line || f.Where.File != "bad.svg" || f.Severity != finding.Stop {
				t.Errorf("got %s at %s, want %s at line %d: %v", f.Code, f.Where, tt.code, tt.line, err)
			}
			if !strings.Contains(e.Hint(), tt.hint) {
				t.Errorf("hint %q does not say %q", e.Hint(), tt.hint)
			}
		})
	}
}

// usesThatMultiply returns a chain of groups, each of ten uses of the one before.
func usesThatMultiply(levels int) string {
	var b strings.Builder
	b.WriteString(`<defs><path id="l0" d="M0 0h9v9z"/>`)
	for i := 1; i <= levels; i++ {
		b.WriteString(sprintf(`<g id="l%d">%s</g>`, i, strings.Repeat(sprintf(`<use href="#l%d"/>`, i-1), 10)))
	}
	return b.String() + sprintf(`</defs><use href="#l%d"/>`, levels)
}

func TestLimitsHold(t *testing.T) {
	small := Limits{Bytes: 1 << 20, Elements: 1000, Vertices: 15_000, Selectors: 1000}
	for _, tt := range []struct{ name, drawing, code string }{
		{"bytes", page100("<!--" + strings.Repeat("-x", 1<<20) + "-->"), "svg/too-large"},
		{"elements", page100(strings.Repeat("<g/>", 1001)), "svg/too-many-elements"},
		{"uses that multiply", page100(usesThatMultiply(9)), "svg/too-many-elements"},
		{"corners of lines", page100(`<path d="M0 0` + strings.Repeat(" 1 1 2 0", 8000) + `z"/>`), "svg/too-many-vertices"},
		{"corners of curves", page100(strings.Repeat(`<circle cx="50" cy="50" r="40"/>`, 60)), "svg/too-many-vertices"},
		{"lines", page100(`<path d="` + strings.Repeat("M0 0z", 2000) + `"/>`), "svg/too-many-vertices"},
		{"selectors", page100("<style>" + strings.Repeat("g g g g g g g g rect{fill:red}", 200) + "</style>" + strings.Repeat("<g>", 20) + square + strings.Repeat("</g>", 20)), "svg/too-much-work"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, _, err := Read("big.svg", []byte(tt.drawing), Options{Limits: small})
			var e *Error
			if !errors.As(err, &e) || e.Rule.Code != tt.code {
				t.Errorf("got %v, want %s", err, tt.code)
			}
		})
	}
}

func TestEntityBombIsNeverExpanded(t *testing.T) {
	bomb := `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">` + strings.Repeat(`<!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">`, 20) + `]>` +
		page100(square+`<path id="p" d="&b;"/><g>&b;</g>`)
	d, found, err := Read("bomb.svg", []byte(bomb), Options{})
	if err != nil || len(d.Outlines) != 1 {
		t.Fatalf("outlines %v, error %v", d, err)
	}
	var codes []string
	for _, f := range found {
		codes = append(codes, f.Code)
	}
	if !slices.Contains(codes, "svg/entity") || !slices.Contains(codes, "svg/path-error") {
		t.Errorf("findings %v", codes)
	}
}

func TestManyFindingsOfOneKindAreSummedUp(t *testing.T) {
	_, found, err := Read("many.svg", []byte(page100(square+strings.Repeat(`<path d="M1 1h9v9"/>`, 500))), Options{})
	if err != nil {
		t.Fatal(err)
	}
	open := 0
	for _, f := range found {
		if f.Code == "svg/open-path" {
			open++
		}
	}
	if open != perRule+1 || len(found) > 3*perRule {
		t.Errorf("%d findings on open paths of %d in all", open, len(found))
	}
}

func TestEveryRuleIsListedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range Rules() {
		if seen[r.Code] || r.Title == "" || r.Remedy == "" || !strings.HasPrefix(r.Code, "svg/") {
			t.Errorf("rule %+v", r)
		}
		seen[r.Code] = true
	}
}
