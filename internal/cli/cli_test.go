package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden plans")

const examples = "../../examples/"

func call(t *testing.T, args ...string) (code int, out, errOut string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(context.Background(), args, &o, &e)
	return code, o.String(), e.String()
}

// TestGolden holds the examples' plans against the committed ones.
func TestGolden(t *testing.T) {
	for _, name := range []string{"estuary-bench", "crater-table"} {
		code, out, errOut := call(t, "plan", examples+name+"/piece.yaml", "--json")
		if code != exitFine {
			t.Fatalf("%s: exit %d, %s", name, code, errOut)
		}
		golden := examples + name + "/plan.golden.json"
		if *update {
			if err := os.WriteFile(golden, []byte(out), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if out != string(want) {
			t.Errorf("%s: the plan differs from %s; read the difference, then -update", name, golden)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	_, a, _ := call(t, "plan", examples+"estuary-bench/piece.yaml", "--json")
	_, b, _ := call(t, "plan", examples+"estuary-bench/piece.yaml", "--json")
	if a != b || len(a) < 1000 {
		t.Errorf("two runs differ, or are empty (%d bytes)", len(a))
	}
}

// TestPlanIsConsistent holds the books of the example together across rooms.
func TestPlanIsConsistent(t *testing.T) {
	_, out, _ := call(t, "plan", examples+"estuary-bench/piece.yaml", "--json")
	var p struct {
		Relief struct {
			Volume float64 `json:"volume_l"`
			Layers []struct {
				Area float64 `json:"area_mm2"`
				From float64 `json:"from_mm"`
				To   float64 `json:"to_mm"`
			} `json:"layers"`
		} `json:"relief"`
		Resin struct {
			Volume float64 `json:"volume_l"`
			Lifts  []struct {
				Volume float64 `json:"volume_l"`
			} `json:"lifts"`
		} `json:"resin"`
		Concrete struct {
			Shell float64 `json:"shell_volume_l"`
			Coats []struct {
				Volume float64 `json:"volume_l"`
			} `json:"coats"`
		} `json:"concrete"`
	}
	if err := json.Unmarshal([]byte(out), &p); err != nil {
		t.Fatal(err)
	}
	layers, lifts, coats := 0.0, 0.0, 0.0
	for _, l := range p.Relief.Layers {
		layers += l.Area * (l.To - l.From) * 1e-6
	}
	for _, l := range p.Resin.Lifts {
		lifts += l.Volume
	}
	for _, c := range p.Concrete.Coats {
		coats += c.Volume
	}
	for name, d := range map[string]float64{"layers": layers - p.Relief.Volume, "lifts": lifts - p.Relief.Volume, "net": p.Resin.Volume - p.Relief.Volume, "coats": coats - p.Concrete.Shell} {
		if math.Abs(d) > 1e-9*(1+p.Relief.Volume+p.Concrete.Shell) {
			t.Errorf("%s do not add up: off by %g l", name, d)
		}
	}
}

func TestPack(t *testing.T) {
	dir := t.TempDir()
	code, out, errOut := call(t, "pack", examples+"crater-table/piece.yaml", "--out", dir)
	for _, f := range []string{"panels", "parts", "shopping"} {
		if data, err := os.ReadFile(filepath.Join(dir, "lists", f+".csv")); err != nil || strings.Count(string(data), "\n") < 3 {
			t.Errorf("lists/%s.csv: %v: %q", f, err, data)
		}
	}
	if code != exitFine {
		t.Fatalf("exit %d: %s", code, errOut)
	}
	for _, f := range []string{"shop-pack.pdf", "plan.json", "report.txt", "drawings/plan-form.svg", "drawings/section.svg", "drawings/panels.svg"} {
		data, err := os.ReadFile(filepath.Join(dir, f))
		if err != nil || len(data) < 500 {
			t.Errorf("%s: %v, %d bytes", f, err, len(data))
		}
		if !strings.Contains(out, filepath.FromSlash(f)) {
			t.Errorf("%s is not named in the output", f)
		}
	}
}

func TestStopFindingsHoldThePackBack(t *testing.T) {
	dir := t.TempDir()
	piece := filepath.Join(dir, "piece.yaml")
	doc := "pourwright: 1\nname: Too deep\nunits: mm\nbox: {length: 400, width: 300, height: 120}\nshell: {thickness: 19}\nbasin:\n  drawing: d.svg\n  steps:\n    - {outline: a, depth: 110}\n"
	drawing := `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300"><rect id="a" x="60" y="60" width="250" height="150"/></svg>`
	for name, text := range map[string]string{piece: doc, filepath.Join(dir, "d.svg"): drawing} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	code, out, _ := call(t, "plan", piece)
	if code != exitStop || !strings.Contains(out, "NOT TO BE CUT") {
		t.Errorf("plan: exit %d", code)
	}
	to := filepath.Join(dir, "pack")
	if code, _, errOut := call(t, "pack", piece, "--out", to); code != exitStop || !strings.Contains(errOut, "no pack written") {
		t.Errorf("pack: exit %d, %s", code, errOut)
	}
	if _, err := os.Stat(to); err == nil {
		t.Errorf("a pack was written all the same")
	}
	if code, _, _ := call(t, "pack", piece, "--out", to, "--with-stops"); code != exitStop {
		t.Errorf("pack --with-stops: exit %d", code)
	}
	if _, err := os.Stat(filepath.Join(to, "shop-pack.pdf")); err != nil {
		t.Errorf("pack --with-stops wrote nothing: %v", err)
	}
}

func TestUsageAndErrors(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"plan", "nowhere.yaml"}, exitError, "no such file"},
		{[]string{"plan"}, exitUsage, "expected"},
		{[]string{"plann", "x"}, exitUsage, "hint:"},
		{[]string{"inspect", "nowhere.svg"}, exitError, "hint:"},
		{[]string{"plan", examples + "estuary-bench/estuary.svg"}, exitError, "error:"},
		{[]string{"shelf", "no such card"}, exitError, "no card"},
	} {
		if code, _, errOut := call(t, c.args...); code != c.code || !strings.Contains(errOut, c.says) {
			t.Errorf("%v: exit %d, want %d; said %q", c.args, code, c.code, errOut)
		}
	}
}

// TestMissingDrawing shows that the rest of the plan still stands.
func TestMissingDrawing(t *testing.T) {
	piece := filepath.Join(t.TempDir(), "piece.yaml")
	doc := "pourwright: 1\nname: No drawing\nunits: mm\nbox: {length: 400, width: 300, height: 300}\nshell: {thickness: 19}\nbasin:\n  drawing: gone.svg\n  steps:\n    - {outline: a, depth: 25}\n"
	if err := os.WriteFile(piece, []byte(doc), 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, _ := call(t, "plan", piece)
	if code != exitStop || !strings.Contains(out, "gone.svg") || !strings.Contains(out, "long side") {
		t.Errorf("exit %d:\n%s", code, out)
	}
}

func TestInspectJSON(t *testing.T) {
	code, out, errOut := call(t, "inspect", examples+"estuary-bench/estuary.svg", "--json")
	var in struct {
		Outlines []struct {
			ID     string     `json:"id"`
			Closed bool       `json:"closed"`
			Area   float64    `json:"area_mm2"`
			Box    [4]float64 `json:"bbox_mm"`
		} `json:"outlines"`
		Note string `json:"unit_note"`
	}
	if err := json.Unmarshal([]byte(out), &in); code != exitFine || err != nil {
		t.Fatalf("exit %d, %v, %s", code, err, errOut)
	}
	if len(in.Outlines) != 4 || in.Note == "" || !in.Outlines[0].Closed || in.Outlines[0].Area <= 0 {
		t.Errorf("%+v", in)
	}
}

func TestSchemaIsFresh(t *testing.T) {
	_, out, _ := call(t, "schema")
	want, err := os.ReadFile("../../docs/plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	if out != string(want) {
		t.Errorf("docs/plan.schema.json is stale: pourwright schema > docs/plan.schema.json")
	}
	_, rules, _ := call(t, "rules")
	if want, err = os.ReadFile("../../docs/findings.md"); err != nil || rules != string(want) {
		t.Errorf("docs/findings.md is stale: pourwright rules > docs/findings.md (%v)", err)
	}
}
