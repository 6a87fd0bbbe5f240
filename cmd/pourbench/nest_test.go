package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pourwright/internal/geom"
)

const smallStrip = `{"name": "small", "strip_height": 10, "items": [
 {"id": 3, "quantity": 2, "rotations": [0, 180], "polygon": [[0,0],[5,0],[0,5]]},
 {"id": 7, "quantity": 1, "rotations": null, "polygon": [[2,2],[2,6.5],[6,6.5],[6,2]]},
 {"id": 9, "quantity": 1, "polygon": [[-1,-1],[9,-1],[9,0]]}]}`

func writeFile(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestNest packs a small strip and verifies the layout file from the instance alone.
func TestNest(t *testing.T) {
	path := writeFile(t, "small.json", smallStrip)
	out := filepath.Join(t.TempDir(), "out.json")
	var text bytes.Buffer
	if err := runNest([]string{path, "--seconds", "0.3", "--layout=" + out}, &text); err != nil {
		t.Fatal(err)
	}
	var line map[string]any
	if err := json.Unmarshal(text.Bytes(), &line); err != nil {
		t.Fatal(err)
	}
	if ref, ok := line["reference_pct"]; !ok || ref != nil || line["gap_points"] != nil || line["instance"] != "small" {
		t.Errorf("line %s, want no reference", text.String())
	}
	raw, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	var l nestLayout
	if err := json.Unmarshal(raw, &l); err != nil {
		t.Fatal(err)
	}
	if d := line["density_pct"].(float64); math.Abs(d-100*(2*12.5+18+5)/(10*l.Length)) > 1e-3 {
		t.Errorf("density %g of length %g", d, l.Length)
	}
	verifyNest(t, l)
}

// verifyNest places the polygons of the small strip by hand.
func verifyNest(t *testing.T, l nestLayout) {
	t.Helper()
	polygon := map[int]geom.Ring{3: {{X: 0, Y: 0}, {X: 5, Y: 0}, {X: 0, Y: 5}}, 7: {{X: 2, Y: 2}, {X: 6, Y: 2}, {X: 6, Y: 6.5}, {X: 2, Y: 6.5}}, 9: {{X: -1, Y: -1}, {X: 9, Y: -1}, {X: 9, Y: 0}}}
	count := map[int]int{}
	var all []geom.Region
	for _, p := range l.Placements {
		count[p.Item]++
		s := 1.0
		if p.Rotation == 180 && p.Item == 3 {
			s = -1
		} else if p.Rotation != 0 {
			t.Errorf("item %d turned by %g", p.Item, p.Rotation)
		}
		r := geom.Region{{Outer: polygon[p.Item].Map(func(q geom.Point) geom.Point { return geom.Point{X: s*q.X + p.X, Y: s*q.Y + p.Y} })}}
		if b := r.Box(); b.Min.X < -1e-6 || b.Min.Y < -1e-6 || b.Max.X > l.Length+1e-6 || b.Max.Y > 10+1e-6 {
			t.Errorf("item %d lies in %v", p.Item, b)
		}
		for _, o := range all {
			if a := geom.Intersect(r, o).Area(); a > 1e-3 {
				t.Errorf("item %d shares %g", p.Item, a)
			}
		}
		all = append(all, r)
	}
	if count[3] != 2 || count[7] != 1 || count[9] != 1 {
		t.Errorf("counts %v", count)
	}
}

// TestNestErrors gives instance files and words at fault.
func TestNestErrors(t *testing.T) {
	item := func(s string) string { return `{"strip_height": 10, "items": [` + s + `]}` }
	for _, c := range []struct{ text, want string }{
		{"{\"strip_height\": 10,\n\"items\": [}", "bad.json:2: invalid character"},
		{"{\"strip_height\": 10,\n\"items\": \"none\"}", "bad.json:2: json: cannot unmarshal string"},
		{`{"items": []}`, "strip_height is 0"},
		{item(``), "no items"},
		{item(`{"quantity": 1, "polygon": [[0,0],[1,1]]}`), "item 0 (id 0): polygon has 2 corners"},
		{item(`{"id": 4, "quantity": -1, "polygon": [[0,0],[1,1],[0,1]]}`), "item 0 (id 4): quantity is -1"},
		{item(`{"quantity": 1, "rotations": [], "polygon": [[0,0],[1,1],[0,1]]}`), "rotations is an empty list"},
		{item(`{"quantity": 1, "polygon": [[0,0],[1,1],[2,2]]}`), "polygon has no area"},
		{item(`{"quantity": 0, "polygon": [[0,0],[1,1],[0,1]]}`), "0 pieces in all"},
		{item(`{"quantity": 1, "polygon": [[0,0],[1,1],[0,1e9]]}`), "further out than"},
		{item(`{"id": 2, "quantity": 1, "polygon": [[0,0],[30,0],[30,11],[0,11]]}`), "id 2"},
		{item(`{"id": 5, "quantity": 1, "polygon": [[0,0],[4,4],[4,0],[0,5]]}`), "crosses itself"},
	} {
		err := runNest([]string{writeFile(t, "bad.json", c.text), "--seconds", "0.1"}, &bytes.Buffer{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.text, err, c.want)
		}
	}
	for _, args := range [][]string{{}, {"--seconds"}, {"x.json", "--seconds", "0"}, {"x.json", "--fast", "1"}, {"/nonexistent/x.json"}} {
		if err := runNest(args, &bytes.Buffer{}); err == nil {
			t.Errorf("%q: no error", args)
		}
	}
}
