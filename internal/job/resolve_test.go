package job

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

func shelf(tb testing.TB) material.Shelf {
	tb.Helper()
	s, err := material.Default()
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

// resolve reads and resolves text; findings of both come together.
func resolve(tb testing.TB, text string) (*Job, []finding.Finding) {
	tb.Helper()
	d, found := Read("piece.yaml", []byte(text))
	if d == nil {
		return nil, found
	}
	j, more := Resolve(d, shelf(tb))
	return j, append(found, more...)
}

const tiny = `name: Tray
box: {length: 600, width: 300, height: 200}
shell: {thickness: 19}
basin: {drawing: tray.svg, steps: [{outline: water}]}
`

func TestTinyDocument(t *testing.T) {
	j, found := resolve(t, tiny)
	if len(found) > 0 || j == nil {
		t.Fatal(found)
	}
	if j.Units != "mm" || j.Shell() != 19 || len(j.Coats) != 3 || j.Coats[0].Thickness != 4 || j.Coats[1].Thickness != 7.5 || j.Coats[1].Mix.Name != "backer" {
		t.Errorf("coats %+v", j.Coats)
	}
	if s := j.Basin.Steps[0]; !s.IsFoam || s.Depth != 25 || s.Name != "water" {
		t.Errorf("step %+v", s)
	}
	if j.Resin.Card.Name != "deep pour 50 mm" || j.Form.Measured != 18 || j.Form.WasMeasured || j.Room.Temperature != 20 || len(j.Shop.Hours[0]) != 1 || len(j.Shop.Hours[6]) != 0 {
		t.Errorf("defaults %+v", j)
	}
}

func TestExamples(t *testing.T) {
	for _, name := range []string{"estuary-bench", "crater-table"} {
		data, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "piece.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		j, found := resolve(t, string(data))
		if len(found) > 0 || j == nil {
			t.Errorf("%s: %v", name, found)
			continue
		}
		if name == "estuary-bench" && (math.Abs(float64(j.Basin.depth()-73.8)) > 1e-9 || j.Shell() != 19 || j.Form.Measured != 18.2 || !j.Foam.WasMeasured) {
			t.Errorf("%s: depth %v, shell %v, board %v", name, j.Basin.depth(), j.Shell(), j.Form.Measured)
		}
	}
}

// TestUnits holds the same bench typed in millimetres and in inches to be the same.
func TestUnits(t *testing.T) {
	metric, _ := resolve(t, "name: b\nbox: {length: 1219.2, width: 406.4, height: 428.625}\nshell: {thickness: 19.05}\nbasin: {drawing: a.svg, steps: [{outline: w, depth: 34.925}]}\nresin: {bucket: 7.570823568 l}\nroom: {temperature: 20}\n")
	inches, found := resolve(t, "name: b\nunits: in\nbox: {length: 4', width: 1' 4\", height: 16 7/8}\nshell: {thickness: 3/4}\nbasin: {drawing: a.svg, steps: [{outline: w, depth: 1-3/8}]}\nresin: {bucket: 2 US gal}\nroom: {temperature: 68 F}\n")
	if metric == nil || inches == nil || len(found) > 0 {
		t.Fatal(found)
	}
	if d := cmp.Diff(metric, inches, cmpopts.IgnoreFields(Job{}, "Places", "Units"), cmp.Comparer(func(a, b units.Length) bool { return math.Abs(float64(a-b)) < 1e-9 }), cmp.Comparer(func(a, b units.Temperature) bool { return math.Abs(float64(a-b)) < 1e-9 })); d != "" {
		t.Error(d)
	}
}

func TestCoatsOfAnyShell(t *testing.T) {
	for _, shell := range []units.Length{3, 4, 5, 17, 17.1, 19, 25.4, 43.001} {
		coats := usualCoats(shell)
		var sum units.Length
		for i, c := range coats {
			sum += c.Thickness
			if i > 0 && c.Thickness > mostBacker+1e-9 || c.Thickness <= 0 {
				t.Errorf("shell %v: coat %d of %v", shell, i, c.Thickness)
			}
		}
		if math.Abs(float64(sum-shell)) > 1e-9 {
			t.Errorf("shell %v: coats add up to %v", shell, sum)
		}
	}
}

func TestWrittenBackAsTyped(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "examples", "crater-table", "piece.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	d, _ := Read("piece.yaml", data)
	again, found := Read("piece.yaml", d.YAML())
	if again == nil || len(found) > 0 {
		t.Fatalf("%v\n%s", found, d.YAML())
	}
	if diff := cmp.Diff(d, again, cmpopts.IgnoreUnexported(Document{})); diff != "" {
		t.Error(diff)
	}
	if d.Box.Height != "15 in" || d.Shell.Thickness != "3/4 in" {
		t.Errorf("not kept as typed: %q, %q", d.Box.Height, d.Shell.Thickness)
	}
}

func TestOwnMaterials(t *testing.T) {
	j, found := resolve(t, tiny+`resin: {material: shop resin, ratio: "100:50", density_a: {value: 1.14 g/cm3, origin: measured}}
materials:
  resins:
    shop resin: {like: deep pour 50 mm, max_depth: 40 mm}
  boards:
    faced particleboard 18: {length: 1200 mm}
`)
	if len(found) > 0 {
		t.Fatal(found)
	}
	c := j.Resin.Card
	if c.Name != "shop resin" || c.MaxDepth.Value != 40 || c.MaxDepth.Origin != material.DataSheet || c.DensityA.Value != 1140 || c.DensityA.Origin != material.Measured || c.MinDepth.Value != 12 || c.MinDepth.Origin != material.Typical {
		t.Errorf("card %+v", c)
	}
	if j.Form.Board.Length.Value != 1200 || j.Form.Board.Width.Value != 2070 {
		t.Errorf("board %+v", j.Form.Board)
	}
}

func TestBareNumbersOnCards(t *testing.T) {
	j, found := resolve(t, "units: in\n"+strings.NewReplacer("600", "24", "300", "12", "200", "8", "19", "3/4").Replace(tiny)+"resin: {max_depth: 1 1/2, density_a: 1140}\n")
	if len(found) > 0 || math.Abs(float64(j.Resin.Card.MaxDepth.Value-38.1)) > 1e-9 || j.Resin.Card.DensityA.Value != 1140 {
		t.Errorf("%v %+v", found, j.Resin.Card)
	}
}

func TestRulesAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range append(Rules(), material.Rules()...) {
		if seen[r.Code] || r.Title == "" || r.Remedy == "" || !strings.Contains(r.Code, "/") {
			t.Errorf("rule %+v", r)
		}
		seen[r.Code] = true
	}
}

func FuzzPiece(f *testing.F) {
	s := shelf(f)
	for _, name := range []string{"estuary-bench", "crater-table"} {
		data, err := os.ReadFile(filepath.Join("..", "..", "examples", name, "piece.yaml"))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, b := range bad {
		f.Add([]byte(b.text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, found := Read("p", data)
		if d == nil {
			if len(found) == 0 {
				t.Fatal("no document and no finding")
			}
			return
		}
		j, more := Resolve(d, s)
		for _, x := range append(found, more...) {
			if x.Text == "" || x.Remedy == "" || x.Code == "" {
				t.Fatalf("finding not whole: %+v", x)
			}
		}
		if j == nil {
			if len(found)+len(more) == 0 {
				t.Fatal("no job and no finding")
			}
			return
		}
		for what, v := range map[string]float64{"length": float64(j.Length), "width": float64(j.Width), "height": float64(j.Height), "shell": float64(j.Shell()),
			"board": float64(j.Form.Measured), "foam": float64(j.Foam.Measured), "tub": float64(j.Mixing.Tub), "bucket": float64(j.Resin.Bucket)} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Fatalf("%s is %v", what, v)
			}
		}
		if j.Shell() >= j.Height {
			t.Fatal("shell thicker than the piece")
		}
	})
}
