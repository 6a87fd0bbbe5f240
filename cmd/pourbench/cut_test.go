package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pourwright/internal/saw"
)

func writeCutFile(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "in.json")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestReadCutFile: the forms in which instances come.
func TestReadCutFile(t *testing.T) {
	fixed := func(goods ...saw.Good) []saw.Good { return goods }
	for _, c := range []struct {
		name, text string
		w, h       int64
		goods      []saw.Good
		sheets     bool
		unlimited  bool
	}{
		{"any number of copies", `{"piece_format":"[length,width,value]","instances":[{"name":"a","L":9,"W":5,"pieces":[[4,3,20]]}]}`,
			9, 5, fixed(saw.Good{W: 4, H: 3, Value: 20, Count: 1}), false, true},
		{"limited copies", `{"piece_format":"[length,width,max,value]","instances":[{"L":9,"W":5,"pieces":[[4,3,2,20]]}]}`,
			9, 5, fixed(saw.Good{W: 4, H: 3, Value: 20, Count: 2}), false, false},
		{"bins by objects", `{"W":100,"H":60,"items":[{"w":40,"h":30,"demand":3}]}`,
			100, 60, fixed(saw.Good{W: 40, H: 30, Count: 3}), true, false},
		{"bins by lists", `[{"bin":[100,60],"items":[[40,30],[20,10]]}]`,
			100, 60, fixed(saw.Good{W: 40, H: 30, Count: 1}, saw.Good{W: 20, H: 10, Count: 1}), true, false},
		{"bins with a demand without a format", `{"problem":"bin packing","width":100,"height":60,"items":[[40,30,2]]}`,
			100, 60, fixed(saw.Good{W: 40, H: 30, Count: 2}), true, false},
		{"bins in a bin object", `{"bin":{"width":100,"height":60},"items":[{"width":40,"height":30,"quantity":2}]}`,
			100, 60, fixed(saw.Good{W: 40, H: 30, Count: 2}), true, false},
		{"value that is the area", `{"L":10,"W":10,"pieces":[[4,3,12],[5,5,25]]}`,
			10, 10, fixed(saw.Good{W: 4, H: 3, Value: 12, Count: 1}, saw.Good{W: 5, H: 5, Value: 25, Count: 1}), false, true},
		{"half millimetres", `{"W":100.5,"H":60,"items":[{"w":40,"h":30.25}]}`,
			10050, 6000, fixed(saw.Good{W: 4000, H: 3025, Count: 1}), true, false},
	} {
		cases, err := readCutFile(writeCutFile(t, c.text))
		if err != nil || len(cases) != 1 {
			t.Errorf("%s: %d cases, %v", c.name, len(cases), err)
			continue
		}
		got := cases[0]
		if got.W != c.w || got.H != c.h || got.Sheets != c.sheets || got.Unlimited != c.unlimited || len(got.Goods) != len(c.goods) {
			t.Errorf("%s: got %+v", c.name, got)
			continue
		}
		for i := range c.goods {
			if got.Goods[i] != c.goods[i] {
				t.Errorf("%s: piece %d: got %+v, want %+v", c.name, i, got.Goods[i], c.goods[i])
			}
		}
	}
}

// TestCutReferences: which reference goes with which case, and which are run.
func TestCutReferences(t *testing.T) {
	for _, c := range []struct {
		fields string
		turns  []bool
		refs   []float64 // 0 for none
	}{
		{`"optimum_oriented":7`, []bool{false}, []float64{7}},
		{`"optimum_oriented":7,"optimum_rotated":8`, []bool{false, true}, []float64{7, 8}},
		{`"lower_bound":3,"rotated":true`, []bool{true}, []float64{3}},
		{`"lower_bound":3`, []bool{false}, []float64{3}},
		{`"lower_bound_rotated":3`, []bool{true}, []float64{3}},
		{``, []bool{false}, []float64{0}},
	} {
		text := `{"W":10,"H":10,"items":[[4,3]]`
		if c.fields != "" {
			text += "," + c.fields
		}
		cases, err := readCutFile(writeCutFile(t, text+"}"))
		if err != nil {
			t.Fatal(err)
		}
		o := cutOptions{turn: "auto", seconds: 1}
		turns := o.turns(&cases[0])
		if len(turns) != len(c.turns) {
			t.Errorf("%s: cases %v, want %v", c.fields, turns, c.turns)
			continue
		}
		for i, turned := range turns {
			line, _, err := o.solve(&cases[0], turned)
			if err != nil || turned != c.turns[i] || line.Reference == nil != (c.refs[i] == 0) || line.Reference != nil && *line.Reference != c.refs[i] {
				t.Errorf("%s: turned %v, line %+v, %v", c.fields, turned, line, err)
			}
		}
	}
}

func TestCutBadInput(t *testing.T) {
	for _, text := range []string{
		`{`, `3`, `{"W":10,"H":10}`, `{"items":[[1,2]]}`, `{"W":10,"H":10,"items":[[1]]}`, `{"W":10,"H":10,"items":["a"]}`,
		`{"W":10,"H":10,"items":[[-1,2]]}`, `{"W":0,"H":10,"items":[[1,2]]}`, `{"W":10,"H":10,"items":[[0.00001,2]]}`,
		`{"W":1e12,"H":10,"items":[[1,2,3,4]]}`,
	} {
		if err := runCut([]string{writeCutFile(t, text)}, &bytes.Buffer{}); err == nil {
			t.Errorf("%s: no error", text)
		}
	}
	for _, args := range [][]string{{}, {"--seconds"}, {"x.json", "--seconds", "0"}, {"x.json", "--turn", "twice"}, {"x.json", "--fast", "1"}} {
		if _, err := cutArgs(args); err == nil {
			t.Errorf("%v: no error", args)
		}
	}
}

// TestCutLines runs a knapsack and a set of bins with a layout. By hand: of 3x3
// pieces worth 9 four fit into 7x7 and two strips of waste are left; six squares
// of 5 in bins of 10 take two bins.
func TestCutLines(t *testing.T) {
	in := writeCutFile(t, `[{"name":"k","L":7,"W":7,"pieces":[[3,3,9]],"optimum_oriented":36},{"name":"b","W":10,"H":10,"items":[{"w":5,"h":5,"demand":6}],"bins":2}]`)
	layout := filepath.Join(t.TempDir(), "out.json")
	var out bytes.Buffer
	if err := runCut([]string{in, "--seconds", "1", "--layout", layout}, &out); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	if len(lines) != 2 {
		t.Fatalf("%d lines: %s", len(lines), out.String())
	}
	var k, b cutLine
	for i, to := range []*cutLine{&k, &b} {
		if err := json.Unmarshal([]byte(lines[i]), to); err != nil {
			t.Fatal(err)
		}
	}
	if k.Value == nil || *k.Value != 36 || !k.Proven || k.Sheets != nil || *k.Reference != 36 {
		t.Errorf("k: %s", lines[0])
	}
	if b.Sheets == nil || *b.Sheets != 2 || *b.Lower != 2 || b.Value != nil || b.Seconds > 1 {
		t.Errorf("b: %s", lines[1])
	}
	var got struct{ Layouts []cutLayout }
	raw, err := os.ReadFile(layout)
	if err != nil || json.Unmarshal(raw, &got) != nil || len(got.Layouts) != 2 || len(got.Layouts[1].Trees) != 2 {
		t.Errorf("layout: %v %s", err, raw)
	}
}

// TestClasses packs random instances of the ten classes with a small budget: few
// are above the bound, none by more than one. Which bounds can be met is not known.
func TestClasses(t *testing.T) {
	pack := func(goods []saw.Good, side int64) (saw.Packing, error) {
		return saw.Pack(t.Context(), goods, side, side, saw.Effort{Seed: 1, Rounds: 6000})
	}
	total, met := 0, 0
	for _, turns := range []bool{false, true} {
		for class := range binClasses {
			c, err := tallyClass(class, turns, []int{20, 60, 100}, 1, 11, pack)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("class %d, turning %v: %d sheets, bound %d, above the bound by 0, 1, more: %v", class+1, turns, c.sheets, c.lower, c.above)
			if c.above[2] > 0 {
				t.Errorf("class %d, turning %v: %d instances more than one above the bound", class+1, turns, c.above[2])
			}
			total, met = total+c.above[0]+c.above[1]+c.above[2], met+c.above[0]
		}
	}
	if float64(met) < 0.65*float64(total) {
		t.Errorf("the bound is met in %d of %d", met, total)
	}
}
