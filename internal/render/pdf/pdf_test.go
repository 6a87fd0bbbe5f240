package pdf

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/plan"
	"pourwright/internal/read"
)

// example computes the plan of an example piece.
func example(t *testing.T, name string) *plan.Plan {
	t.Helper()
	shelf, err := material.Default()
	if err != nil {
		t.Fatal(err)
	}
	piece, err := read.Open(os.DirFS(filepath.Join("..", "..", "..", "examples", name)), "piece.yaml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Compute(context.Background(), piece.Input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func printed(t *testing.T, p *plan.Plan, paper string) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, p, drawing.All(p), Options{Paper: paper}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// pages returns the text of each page.
func pages(t *testing.T, pdf []byte) []string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext absent: the pack's text is not read back")
	}
	name := filepath.Join(t.TempDir(), "pack.pdf")
	if err := os.WriteFile(name, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-layout", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
}

func TestPackOfTheExample(t *testing.T) {
	p := example(t, "estuary-bench")
	for _, paper := range []string{"a4", "letter"} {
		pdf := printed(t, p, paper)
		if again := printed(t, p, paper); !bytes.Equal(pdf, again) {
			t.Errorf("%s: printed twice, %d and %d bytes that differ", paper, len(pdf), len(again))
		}
		all := pages(t, pdf)
		for i, page := range all {
			if !strings.Contains(page, fmt.Sprintf("page %d of %d", i+1, len(all))) || !strings.Contains(page, p.Piece.Fingerprint) {
				t.Errorf("%s: page %d has no footer of piece and page", paper, i+1)
			}
			if strings.Contains(page, "NaN") || strings.Contains(page, "STOP:") {
				t.Errorf("%s: page %d says NaN or STOP", paper, i+1)
			}
		}
		heads := func(what string) (n int) {
			for _, page := range all {
				if strings.HasPrefix(strings.TrimSpace(page), what) {
					n++
				}
			}
			return n
		}
		if n := heads("Batch "); n != len(p.Concrete.Batches) {
			t.Errorf("%s: %d batch pages for %d batches", paper, n, len(p.Concrete.Batches))
		}
		if n := heads("Pour lift "); n != len(p.Resin.Lifts) {
			t.Errorf("%s: %d lift pages for %d lifts", paper, n, len(p.Resin.Lifts))
		}
		text := strings.Join(all, "\n")
		for _, want := range []string{"FORM VIEW", "FINISHED VIEW", "scale 1:8", "Measure this bar", "Shopping list", "Cautions", "Measure first", "Local codes"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the pack does not say %q", paper, want)
			}
		}
	}
}

func TestOddAndEmptyPlans(t *testing.T) {
	odd := &plan.Plan{}
	odd.Piece.Name = "</text> (odd\\) \x00\x07 \U0001F600 名 \"bench\" " + strings.Repeat("long ", 80)
	odd.Findings = []finding.Finding{{Code: "a/b", Severity: finding.Stop, Text: "Bad " + strings.Repeat("word", 100), Remedy: "mend"}}
	bad := example(t, "estuary-bench")
	bad.Concrete.Batches, bad.Resin.Lifts, bad.Calendar.Steps = nil, nil, nil
	for name, p := range map[string]*plan.Plan{"empty": {}, "odd": odd, "stages missing": bad} {
		if pdf := printed(t, p, "a4"); !bytes.HasPrefix(pdf, []byte("%PDF")) || bytes.Contains(pdf, []byte("NaN")) {
			t.Errorf("%s: no sound PDF", name)
		}
	}
	for i, page := range pages(t, printed(t, odd, "a4")) {
		if !strings.Contains(page, "STOP: not to be cut, cast or poured") {
			t.Errorf("page %d of a stopped plan does not say so", i+1)
		}
	}
}

// TestHatch compares the length of hatch lines in a square ring with the length of the
// same lines in its outer square less those in its hole.
func TestHatch(t *testing.T) {
	outer, hole := geom.Rect(0, 0, 100, 100).Ring(), geom.Rect(30, 20, 60, 70).Ring()
	sum := func(rings ...geom.Ring) (s float64) {
		for c := -99.5; c < 100; c++ {
			for _, l := range slanted(rings, c) {
				s += l[1].Sub(l[0]).Norm()
			}
		}
		return s
	}
	ring, whole, gone := sum(outer, hole), sum(outer), sum(hole)
	if math.Abs(ring-(whole-gone)) > 1e-9 || math.Abs(whole-100*100*math.Sqrt2) > 1e-6 {
		t.Errorf("hatch %g, square %g, hole %g", ring, whole, gone)
	}
}
