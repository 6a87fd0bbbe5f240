package toolpath

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"pourwright/internal/geom"
)

var update = flag.Bool("update", false, "write testdata/*.nc and what another reader compares them with")

// A sample is what another reader needs to judge a program: the parts it cuts, as
// rings, and what was promised of it. All in mm.
type sample struct {
	File      string      `json:"file"`
	Cutter    float64     `json:"cutter_mm"`
	Tolerance float64     `json:"tolerance_mm"`
	Bottom    float64     `json:"bottom_z_mm"`
	Safe      float64     `json:"safe_z_mm"`
	Cut       float64     `json:"cut_length_mm"`
	Moves     int         `json:"moves"`
	Box       geom.Box    `json:"box"`
	Rings     []geom.Ring `json:"rings"`
}

// TestGolden keeps the programs that web/src/program.test.ts reads with a reader from
// outside.
func TestGolden(t *testing.T) {
	var all []sample
	for _, c := range []struct {
		name string
		inch bool
	}{{"sheet-mm.nc", false}, {"sheet-inch.nc", true}} {
		m := router()
		m.Inch, m.Spindle, m.Speed = c.inch, true, 12000
		s := exampleSheet()
		p, _ := compute(t, Input{Piece: "Example", Sheets: []Sheet{s}, Machine: m})
		golden(t, c.name, []byte(p.Text))
		one := sample{File: c.name, Cutter: m.Cutter.MM(), Tolerance: 0.02, Bottom: p.Bottom.MM(), Safe: p.Safe.MM(), Cut: p.Cut.MM(), Moves: len(p.Moves), Box: p.Box}
		for _, part := range s.Parts {
			one.Rings = append(one.Rings, part.Region.Shape().Rings()...)
		}
		all = append(all, one)
	}
	data, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "programs.json", append(data, '\n'))
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != string(got) {
		t.Errorf("%s is not what the program writes now; look at the change and run go test -update", path)
	}
}
