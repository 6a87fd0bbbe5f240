package cli

import (
	"context"
	"os"
	"slices"
	"strings"
	"testing"

	"pourwright/internal/finding"
)

func TestSetFields(t *testing.T) {
	doc := "pourwright: 1\nresin:\n  material: deep pour 50 mm\n  lifts:\n    - {depth: 24.6 mm}\n    - {depth: 30 mm, after: 20 h}\n"
	for name, c := range map[string]struct {
		fields       map[string]string
		has, has_not string
	}{
		"change":           {map[string]string{"resin.lifts[0].depth": "20 mm"}, "depth: 20 mm", "24.6"},
		"append":           {map[string]string{"resin.lifts[2].depth": "9 mm"}, "depth: 9 mm", ""},
		"new group":        {map[string]string{"room.temperature": "28 C"}, "room:\n  temperature: 28 C", ""},
		"drop":             {map[string]string{"resin.lifts": ""}, "material: deep pour 50 mm", "lifts"},
		"drop rest":        {map[string]string{"resin.lifts[1]": ""}, "24.6 mm", "30 mm"},
		"keeps the others": {map[string]string{"name": "Try"}, "after: 20 h", ""},
	} {
		got, err := setFields([]byte(doc), c.fields)
		if err != nil || !strings.Contains(string(got), c.has) || c.has_not != "" && strings.Contains(string(got), c.has_not) {
			t.Errorf("%s: %v\n%s", name, err, got)
		}
	}
	for _, bad := range []string{"", ".", "resin..x", "resin.lifts[x].depth", "resin.lifts[5].depth", "resin.material.x", "resin[0]", "lifts[99999]"} {
		if got, err := setFields([]byte(doc), map[string]string{bad: "1"}); err == nil {
			t.Errorf("%q was taken:\n%s", bad, got)
		}
	}
}

func TestTryLeavesTheDocumentAlone(t *testing.T) {
	c := &serveCmd{pieceArg: pieceArg{File: examples + "estuary-bench/piece.yaml"}}
	before, err := os.ReadFile(c.File)
	if err != nil {
		t.Fatal(err)
	}
	s, err := c.try(context.Background(), map[string]string{"room.temperature": "28 C", "name": "Warm"})
	if err != nil || s.Plan.Piece.Room != 28 || s.Plan.Piece.Name != "Warm" || s.Version == "" {
		t.Fatalf("%v, %+v", err, s.Plan)
	}
	if after, _ := os.ReadFile(c.File); string(after) != string(before) {
		t.Error("the document was written to")
	}
	s, err = c.try(context.Background(), map[string]string{"resin.nonsense": "1"})
	if err != nil || !slices.ContainsFunc(s.Plan.Findings, func(f finding.Finding) bool { return strings.Contains(f.Text, "nonsense") }) {
		t.Errorf("an unknown field is not spoken of: %v", err)
	}
}
