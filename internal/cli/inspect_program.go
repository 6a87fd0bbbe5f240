package cli

import (
	"cmp"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/rs274"
	"pourwright/internal/units"
)

// programEndings are the file endings under which cutting programs go about.
var programEndings = []string{".nc", ".ngc", ".cnc", ".tap", ".gcode", ".gc", ".din", ".rs274"}

func isProgram(name string) bool {
	return slices.Contains(programEndings, strings.ToLower(filepath.Ext(name)))
}

// inspectRapid is how fast rapid moves are taken to go. Chosen: a common router.
const inspectRapid units.Speed = 5000

// A programReport is what inspect prints of a cutting program.
type programReport struct {
	File     string            `json:"file"`
	Program  rs274.Survey      `json:"program"`
	Findings []finding.Finding `json:"findings"`
}

// program prints what a cutting program does.
func (c *inspectCmd) program(con *console) error {
	data, err := readFile(c.File, rs274.MaxBytes)
	if err != nil {
		return err
	}
	r := inspectProgram(filepath.Base(c.File), string(data))
	if c.JSON {
		err = writeJSON(con.out, r)
	} else {
		err = r.text(con.out)
	}
	if err != nil {
		return err
	}
	return r.fault()
}

func inspectProgram(name, text string) programReport {
	p, found := rs274.Read(name, text)
	s, more := p.Survey(name, inspectRapid)
	r := programReport{File: name, Program: s, Findings: append(append([]finding.Finding{}, found...), more...)}
	slices.SortStableFunc(r.Findings, func(a, b finding.Finding) int {
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(a.Where.Line, b.Where.Line))
	})
	return r
}

// text prints the report in words.
func (r programReport) text(w io.Writer) error {
	s := r.Program
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s, %s, %d of them arcs; units %s\n", r.File, units.Count(s.Lines, "line", "lines"), units.Count(s.Moves, "move", "moves"), s.Arcs, s.Units)
	if s.Refused > 0 {
		fmt.Fprintf(&b, "  %s not be read: what follows is of the others alone\n", units.Count(s.Refused, "line could", "lines could"))
	}
	fmt.Fprintf(&b, "  goes    %s\n", extent(s.Low, s.High))
	if s.CutLow == s.CutHigh {
		fmt.Fprintln(&b, "  cuts    nothing below Z 0")
	} else {
		fmt.Fprintf(&b, "  cuts    %s, deepest Z %.2f mm\n", extent(s.CutLow, s.CutHigh), s.CutLow[2])
	}
	if len(s.Depths) > 0 {
		fmt.Fprintf(&b, "  levels  %s mm\n", list(s.Depths, func(z float64) string { return fmt.Sprintf("%.2f", z) }))
	}
	if len(s.Feeds) > 0 {
		fmt.Fprintf(&b, "  feeds   %s mm/min\n", list(s.Feeds, func(f rs274.FeedUse) string { return fmt.Sprintf("%.0f (%.0f mm)", f.Feed, f.Length) }))
	}
	fmt.Fprintf(&b, "  length  %.0f mm cutting, %.0f mm rapid\n", s.Cut, s.Travel)
	fmt.Fprintf(&b, "  time    %.1f minutes at least, rapid moves at %.0f mm/min\n", 60*float64(s.Minutes), s.Rapid)
	fmt.Fprintf(&b, "  spindle %s; %s\n", map[bool]string{true: "switched by the program", false: "not switched by the program"}[s.Spindle], waits(s.Stops))
	for _, f := range r.Findings {
		fmt.Fprintf(&b, "%s: %s: %s\n  do: %s\n", f.Severity, f.Where, f.Text, f.Remedy)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func extent(lo, hi rs274.Vec) string {
	return fmt.Sprintf("X %.2f to %.2f, Y %.2f to %.2f, Z %.2f to %.2f mm", lo[0], hi[0], lo[1], hi[1], lo[2], hi[2])
}

func waits(stops []rs274.Stop) string {
	if len(stops) == 0 {
		return "it waits nowhere"
	}
	return "it waits at " + list(stops, func(s rs274.Stop) string { return fmt.Sprintf("line %d (%s)", s.Line, s.Word) })
}

// list joins at most eight of vs.
func list[T any](vs []T, text func(T) string) string {
	const most = 8
	var out []string
	for _, v := range vs[:min(len(vs), most)] {
		out = append(out, text(v))
	}
	if n := len(vs) - most; n > 0 {
		out = append(out, fmt.Sprintf("and %d more", n))
	}
	return strings.Join(out, ", ")
}

// A programError is the first thing that stands against running a program.
type programError struct {
	first finding.Finding
	more  int
}

// fault returns why the program should not be run, if anything stands against it.
func (r programReport) fault() error {
	n := 0
	for _, f := range r.Findings {
		if f.Severity == finding.Stop {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return &programError{r.Findings[0], n - 1}
}

func (e *programError) Error() string {
	text := fmt.Sprintf("%s: %s", e.first.Where, e.first.Text)
	if e.more > 0 {
		text += fmt.Sprintf(" And %d more.", e.more)
	}
	return text
}

// Hint says what to do about the first fault.
func (e *programError) Hint() string { return e.first.Remedy }
