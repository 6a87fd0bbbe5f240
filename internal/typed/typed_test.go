package typed

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

type inner struct {
	Depth Length `yaml:"depth,omitempty"`
	IDs   List   `yaml:"ids,omitempty"`
}

type outer struct {
	Name  Text             `yaml:"name,omitempty"`
	Notes Text             `yaml:"notes,omitempty"`
	One   Value            `yaml:"one,omitempty"`
	Steps []inner          `yaml:"steps,omitempty"`
	Named map[string]inner `yaml:"named,omitempty"`
	Maybe *inner           `yaml:"maybe,omitempty"`
}

func TestDecodeKeepsWhatWasTyped(t *testing.T) {
	text := "name: 012\nnotes: |\n  two\n  lines\none: 34.9 mm\nsteps:\n  - depth: 3' 4 1/2\"\n    ids: sea\n  - {depth: .nan, ids: [a, 'b c']}\nnamed:\n  my card: {depth: 1e3}\nmaybe: {depth: 8:00}\n"
	var got outer
	places, found, ok := Decode("x.yaml", []byte(text), &got)
	if !ok || len(found) > 0 {
		t.Fatalf("findings %v", found)
	}
	want := outer{Name: "012", Notes: "two\nlines", One: Value{Value: "34.9 mm"},
		Steps: []inner{{`3' 4 1/2"`, List{"sea"}}, {".nan", List{"a", "b c"}}}, Named: map[string]inner{"my card": {Depth: "1e3"}}, Maybe: &inner{Depth: "8:00"}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if w := places.At("steps[0].depth"); w.Line != 7 || w.Column != 12 || w.Field != "steps[0].depth" {
		t.Errorf("place of steps[0].depth: %+v", w)
	}
	if w := places.At("steps[1].islands[3]"); w.Line != 9 {
		t.Errorf("place of an absent field: %+v", w)
	}
	var again outer
	if _, found, ok := Decode("y", Encode(got), &again); !ok || len(found) > 0 || cmp.Diff(got, again) != "" {
		t.Errorf("written and read back: %v\n%s\n%s", found, cmp.Diff(got, again), Encode(got))
	}
}

func TestColonsInText(t *testing.T) {
	for _, text := range []string{"maybe: {ids: [8:00-12:00, 13:00-17:00]}", "maybe: {ids: ['8:00-12:00', \"13:00-17:00\"]}", "maybe:\n  ids:\n    - 8:00-12:00\n    - 13:00-17:00\n"} {
		var got outer
		_, found, _ := Decode("x", []byte(text), &got)
		if len(found) > 0 || got.Maybe == nil || cmp.Diff(got.Maybe.IDs, List{"8:00-12:00", "13:00-17:00"}) != "" {
			t.Errorf("%q: %+v %v", text, got.Maybe, found)
		}
	}
	var got outer
	if _, found, _ := Decode("x", []byte("maybe: {ids: [a: b]}\nnamed: {r: {depth: 2:1}}"), &got); len(found) != 1 || got.Named["r"].Depth != "2:1" {
		t.Errorf("%+v %v", got, found)
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	text := "nme: a\nname: b\nname: c\nsteps:\n  depth: 3\nmaybe: text\nnamed: [1]\none: [1, 2]\nnotes: {a: b}\n"
	var got outer
	_, found, ok := Decode("x.yaml", []byte(text), &got)
	if !ok {
		t.Fatal("not taken apart")
	}
	want := []struct {
		line         int
		code, remedy string
	}{
		{1, "document/unknown-field", "did you mean name?"}, {3, "document/repeated-field", "keep one"}, {5, "document/shape", "dash"},
		{6, "document/shape", "examples"}, {7, "document/shape", "examples"}, {8, "document/shape", "examples"}, {9, "document/shape", "examples"},
	}
	if len(found) != len(want) {
		t.Fatalf("got %d findings: %v", len(found), found)
	}
	for i, w := range want {
		if f := found[i]; f.Where.Line != w.line || f.Code != w.code || !strings.Contains(f.Remedy, w.remedy) {
			t.Errorf("finding %d: %+v, want %+v", i, f, w)
		}
	}
}

func TestRefusedFiles(t *testing.T) {
	for _, c := range []struct{ text, code string }{
		{"", "document/syntax"}, {"# nothing\n", "document/syntax"}, {"a: 'x\n", "document/syntax"}, {"\ta: 1", "document/syntax"}, {"a: [1\nb: 2", "document/syntax"},
		{"- a\n", "document/shape"}, {"text", "document/shape"}, {"name: a\n---\nname: b\n", "document/not-plain"}, {"%YAML 1.2\n---\nname: a", "document/not-plain"},
		{strings.Repeat("[", 2000), "document/too-large"}, {strings.Repeat("- ", 2000), "document/too-large"}, {strings.Repeat("name: b\n", 100000), "document/too-large"},
		{strings.Repeat("x", MaxBytes+1), "document/too-large"}, {strings.Repeat("@`", 400000), "document/too-large"}, {strings.Repeat("<", 400000), "document/too-large"},
		{strings.Repeat("]", 400000), "document/too-large"}, {"name: " + string([]byte{0xff}), "document/syntax"},
	} {
		began := time.Now()
		_, found, ok := Decode("x", []byte(c.text), new(outer))
		if ok || len(found) != 1 || found[0].Code != c.code || found[0].Remedy == "" {
			t.Errorf("%.30q: %v, %v", c.text, ok, found)
		}
		if d := time.Since(began); d > 2*time.Second {
			t.Errorf("%.30q took %v", c.text, d)
		}
	}
	for _, text := range []string{"name: &a b\nnotes: *a\n", "name: !!int 3\n", "<<: {name: a}\n"} {
		_, found, _ := Decode("x", []byte(text), new(outer))
		if len(found) == 0 || found[0].Code != "document/not-plain" {
			t.Errorf("%q: %v", text, found)
		}
	}
}

func TestSuggest(t *testing.T) {
	names := []string{"depth", "density", "resolution", "height_map", "deep pour 50 mm", "deep pour 64 mm, warm"}
	for word, want := range map[string]string{"dept": "depth", "detph": "depth", "resolutoin": "resolution", "heightmap": "height_map", "deep pour 50mm": "deep pour 50 mm", "zebra": "", "": ""} {
		if got := Suggest(word, names); got != want {
			t.Errorf("Suggest(%q) = %q, want %q", word, got, want)
		}
	}
}

func FuzzDecode(f *testing.F) {
	for _, s := range []string{"name: a", "steps: [{depth: 1}]", "one: {value: 3 mm, range: [1 mm, 2 mm]}", "named: {a: {depth: |\n x}}", "? a\n: b", "a: &x [*x]", "maybe:\n - 1", "\x00", "a:\r\n b"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var got, again outer
		_, found, ok := Decode("x", data, &got)
		for _, x := range found {
			if x.Text == "" || x.Remedy == "" {
				t.Fatalf("finding without text or remedy: %+v", x)
			}
		}
		if !ok || len(found) > 0 {
			return
		}
		written := Encode(got)
		if string(written) == "" {
			return
		}
		if _, found, ok := Decode("y", written, &again); !ok || len(found) > 0 || string(Encode(again)) != string(written) {
			t.Fatalf("not read back: %v %v\n%q\n%q", ok, found, written, Encode(again))
		}
	})
}
