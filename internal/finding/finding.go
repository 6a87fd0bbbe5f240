// Package finding holds what the program has to say about a plan: true, numbered,
// located sentences that tell the maker what to do. A finding never hides other
// results; only an error does.
package finding

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Severity says how much a finding matters.
type Severity int

// The severities, mildest first.
const (
	Note    Severity = iota // worth knowing
	Caution                 // the maker should decide
	Stop                    // do not cut, cast or pour before this is settled
)

var severityNames = [...]string{"note", "caution", "stop"}

// String returns "note", "caution" or "stop".
func (s Severity) String() string { return severityNames[s] }

// MarshalText returns the severity's name.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the severity's name.
func (s *Severity) UnmarshalText(b []byte) error {
	i := slices.Index(severityNames[:], string(b))
	if i < 0 {
		return fmt.Errorf("unknown severity %q", b)
	}
	*s = Severity(i)
	return nil
}

// A Rule is what is common to all findings of one code. Each stage and reader
// declares its rules as package variables in findings.go and lists them in Rules;
// package plan joins the lists into the one rule table of docs/findings.md.
type Rule struct {
	Code     string   // "relief/undercut": room, slash, words; stable, never reused
	Severity Severity // the usual severity; At may change it for one finding
	Title    string   // what the rule guards, in a few words
	Remedy   string   // what to do, in the imperative; At may sharpen it
	Source   string   // key in package source, or "" for plain arithmetic
}

// Where is the place a finding speaks of. Empty fields do not apply.
type Where struct {
	File    string      `json:"file,omitempty"`
	Line    int         `json:"line,omitempty"`
	Column  int         `json:"column,omitempty"`
	Field   string      `json:"field,omitempty"`   // path in the document: basin.steps[2].depth
	Element string      `json:"element,omitempty"` // id in a drawing, name of a part, step, batch
	View    string      `json:"view,omitempty"`    // "finished" or "form" when At is set
	At      *[2]float64 `json:"at_mm,omitempty"`
}

// String returns file:line:column, field and element as far as known.
func (w Where) String() string {
	var parts []string
	if w.File != "" {
		s := w.File
		if w.Line > 0 {
			s += fmt.Sprintf(":%d", w.Line)
			if w.Column > 0 {
				s += fmt.Sprintf(":%d", w.Column)
			}
		}
		parts = append(parts, s)
	}
	if w.Field != "" {
		parts = append(parts, w.Field)
	}
	if w.Element != "" {
		parts = append(parts, w.Element)
	}
	if w.At != nil {
		parts = append(parts, fmt.Sprintf("at x %.1f, y %.1f mm, %s view", w.At[0], w.At[1], w.View))
	}
	return strings.Join(parts, ", ")
}

// A Finding is a true thing about the plan.
type Finding struct {
	Code     string   `json:"code"`
	Severity Severity `json:"severity"`
	Stage    string   `json:"stage"`
	Where    Where    `json:"where"`
	Text     string   `json:"text"` // one sentence with numbers and units
	Got      float64  `json:"got,omitempty"`
	Limit    float64  `json:"limit,omitempty"`
	Unit     string   `json:"unit,omitempty"` // of Got and Limit
	Remedy   string   `json:"remedy"`
	Source   string   `json:"source,omitempty"`
}

// At makes a finding of r at w; format and args make its sentence.
func (r Rule) At(w Where, format string, args ...any) Finding {
	stage, _, _ := strings.Cut(r.Code, "/")
	return Finding{Code: r.Code, Severity: r.Severity, Stage: stage, Where: w,
		Text: fmt.Sprintf(format, args...), Remedy: r.Remedy, Source: r.Source}
}

// Measured returns f with what was found and what is allowed, in unit.
func (f Finding) Measured(got, limit float64, unit string) Finding {
	f.Got, f.Limit, f.Unit = got, limit, unit
	return f
}

// As returns f with another severity.
func (f Finding) As(s Severity) Finding { f.Severity = s; return f }

// Do returns f with a remedy for its own case.
func (f Finding) Do(format string, args ...any) Finding {
	f.Remedy = fmt.Sprintf(format, args...)
	return f
}

// Sort orders findings by severity (stop first), stage, code, place and text,
// so that the same plan always lists them alike.
func Sort(fs []Finding) {
	slices.SortStableFunc(fs, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(b.Severity, a.Severity),
			cmp.Compare(a.Stage, b.Stage),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Where.File, b.Where.File),
			cmp.Compare(a.Where.Line, b.Where.Line),
			cmp.Compare(a.Where.String(), b.Where.String()),
			cmp.Compare(a.Text, b.Text),
		)
	})
}

// Worst returns the highest severity among fs, and false if there is none.
func Worst(fs []Finding) (Severity, bool) {
	if len(fs) == 0 {
		return Note, false
	}
	return slices.MaxFunc(fs, func(a, b Finding) int { return cmp.Compare(a.Severity, b.Severity) }).Severity, true
}
