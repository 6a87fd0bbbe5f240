package cli

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"testing"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/plan"
	"pourwright/internal/render/pdf"
	"pourwright/internal/render/svg"
	"pourwright/internal/render/term"
	"pourwright/internal/source"
)

func examplePlan(t *testing.T, name string) *plan.Plan {
	t.Helper()
	p, err := pieceArg{File: examples + name + "/piece.yaml"}.compute(&console{ctx: context.Background(), err: io.Discard})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestDrawingsAreXMLAndWithinTheirBox(t *testing.T) {
	for _, name := range []string{"estuary-bench", "crater-table"} {
		p := examplePlan(t, name)
		p.Piece.Name = `<&"'>`
		for _, d := range drawing.All(p) {
			var b bytes.Buffer
			if err := svg.Render(&b, d); err != nil {
				t.Fatal(err)
			}
			dec := xml.NewDecoder(&b)
			for {
				if _, err := dec.Token(); errors.Is(err, io.EOF) {
					break
				} else if err != nil {
					t.Fatalf("%s %s: %v", name, d.Name, err)
				}
			}
			if w := d.Box.Width(); !(w > 0 && !math.IsInf(w, 0)) {
				t.Errorf("%s %s: box %v", name, d.Name, d.Box)
			}
		}
	}
}

func TestPaperIsTheSameEveryTime(t *testing.T) {
	for _, paper := range []string{"a4", "letter"} {
		var a, b bytes.Buffer
		for _, w := range []*bytes.Buffer{&a, &b} {
			p := examplePlan(t, "estuary-bench")
			if err := pdf.Render(w, p, drawing.All(p), pdf.Options{Paper: paper}); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) || a.Len() < 10_000 {
			t.Errorf("%s: two prints differ, or are empty (%d bytes)", paper, a.Len())
		}
	}
}

func TestEmptyPlanDoesNotPanic(t *testing.T) {
	p := &plan.Plan{Findings: []finding.Finding{{Severity: finding.Stop, Text: "nothing"}}}
	ds := drawing.All(p)
	var b bytes.Buffer
	if err := pdf.Render(&b, p, ds, pdf.Options{}); err != nil || len(ds) != 0 {
		t.Errorf("%v, %d drawings", err, len(ds))
	}
	if err := term.Render(&b, p); err != nil {
		t.Error(err)
	}
}

// TestRules holds the rule table together: codes are unique, remedies are there, and
// sources are in the register.
func TestRules(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range allRules() {
		if seen[r.Code] {
			t.Errorf("code %s is used twice", r.Code)
		}
		seen[r.Code] = true
		if r.Title == "" || r.Remedy == "" {
			t.Errorf("%s has no title or remedy", r.Code)
		}
		if r.Source != "" {
			if _, err := source.Lookup(r.Source); err != nil {
				t.Errorf("%s: %v", r.Code, err)
			}
		}
	}
	if len(seen) < 50 {
		t.Errorf("only %d rules", len(seen))
	}
}
