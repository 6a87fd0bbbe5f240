package term

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/plan"
	"pourwright/internal/read"
)

func report(t *testing.T, p *plan.Plan) string {
	t.Helper()
	var a, b bytes.Buffer
	if err := Render(&a, p); err != nil {
		t.Fatal(err)
	}
	if err := Render(&b, p); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("the same plan prints in two ways: %v", err)
	}
	return a.String()
}

func TestReportOfTheExamples(t *testing.T) {
	shelf, err := material.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"estuary-bench", "crater-table"} {
		piece, err := read.Open(os.DirFS(filepath.Join("..", "..", "..", "examples", name)), "piece.yaml", shelf)
		if err != nil {
			t.Fatal(err)
		}
		p, err := plan.Compute(context.Background(), piece.Input)
		if err != nil {
			t.Fatal(err)
		}
		text := report(t, p)
		for _, l := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(l) > 100 || strings.Contains(l, "NaN") || strings.Contains(l, "\x1b") {
				t.Errorf("%s: line of %d characters, or no plain number in it: %q", name, utf8.RuneCountInString(l), l)
			}
		}
		last := 0
		for _, head := range []string{"\nFindings", "\nBasin", "\nConcrete", "\nBatches", "\nForm", "\nKnockout", "\nResin", "\nWeights", "\nSteps", "\nShopping list", "\nMeasure first"} {
			at := strings.Index(text, head)
			if at < last {
				t.Errorf("%s: %q stands at %d, the head before it at %d", name, head, at, last)
			}
			last = at
		}
	}
}

func TestOddPlans(t *testing.T) {
	odd := &plan.Plan{Piece: plan.Piece{Name: "a\x1b[31mred\r\nname", Units: "in", Length: 25.4 * 48.5}}
	odd.Findings = []finding.Finding{{Severity: finding.Stop, Text: "Bad.", Remedy: "Mend it."}}
	text := report(t, odd)
	for _, want := range []string{"a [31mred  name\n", "48 1/2 in (1231.9 mm) long", "NOT TO BE CUT", "stop    Bad.", "        do: Mend it."} {
		if !strings.Contains(text, want) {
			t.Errorf("the report does not say %q:\n%s", want, text)
		}
	}
	if empty := report(t, &plan.Plan{}); strings.Contains(empty, "NaN") || strings.Contains(empty, "\x1b") {
		t.Errorf("empty plan: %s", empty)
	}
}

func TestBroken(t *testing.T) {
	for _, c := range []struct {
		text string
		want string
	}{
		{"", ""}, {"one", "one"}, {"one two three", "one two|three"}, {"incomprehensible a", "incomprehensible|a"}, {"  ä ö  ü ", "ä ö ü"},
	} {
		if got := strings.Join(broken(c.text, 8), "|"); got != c.want {
			t.Errorf("broken(%q) = %q, want %q", c.text, got, c.want)
		}
	}
}
