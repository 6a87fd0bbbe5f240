package svg

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func ids(outlines []Outline) string {
	var out []string
	for _, o := range outlines {
		out = append(out, o.ID)
	}
	return strings.Join(out, " ")
}

func TestSelect(t *testing.T) {
	d, _, err := Read("select.svg", []byte(page100(`
<defs><path id="pond" d="M0 0h9v9z"/><g id="pair"><rect id="p1" width="3" height="3"/><rect id="p2" x="5" width="3" height="3"/></g></defs>
<g id="water" class="wet" data-name="Deep water"><rect id="a" class="one two" width="9" height="9"/><g id="inner"><circle id="b" r="5"/></g></g>
<rect width="8" height="9"/>
<path d="M0 0h9v9z"/>
<use id="left" href="#pond"/><use id="right" href="#pond" x="20"/>
<use id="both" href="#pair" y="50"/><use href="#pair" y="70"/>
<use href="#a" x="50"/>`)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ ref, want string }{
		{"a", "a"},
		{"#a", "a"},
		{"water", "a b"},
		{"inner", "b"},
		{"Deep water", "a b"},
		{".two", "a a-2"},
		{".wet", "a b"},
		{"rect4", "rect4"},
		{"path2", "path2"},
		{"left", "left"},
		{"pond", "left right"},
		{"both", "p1 p2"},
		{"p1-2", "p1-2"},
		{"pair", "p1 p2 p1-2 p2-2"},
		{"a-2", "a-2"},
		{"none", ""},
		{"", ""},
		{".", ""},
	} {
		if got := ids(d.Select(tt.ref)); got != tt.want {
			t.Errorf("%q: got %q, want %q, of %v", tt.ref, got, tt.want, d.IDs())
		}
	}
}

func TestElementsKeepTheirIDsWhateverUsesThem(t *testing.T) {
	d, _, err := Read("ids.svg", []byte(page100(`<use href="#a" x="20"/><rect id="a" width="9" height="9"/><rect id="a-2" y="20" width="9" height="9"/>`)), Options{})
	if err != nil || ids(d.Outlines) != "a-3 a a-2" {
		t.Errorf("ids %v, error %v", d.IDs(), err)
	}
}

func TestInspectionAsJSON(t *testing.T) {
	in, err := Inspect("two.svg", []byte(page100(`<circle id="pool" cx="50" cy="50" r="40"/><path id="isle" d="M45 45h10v10h-10z"/><path id="loose" d="M1 1h5v5"/>`)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	pick := func(i int) map[string]any {
		o := got["outlines"].([]any)[i].(map[string]any)
		out := map[string]any{}
		for _, k := range []string{"id", "closed", "area_mm2", "bbox_mm", "parent", "holes"} {
			out[k] = o[k]
		}
		return out
	}
	want := []map[string]any{
		{"id": "pool", "closed": true, "area_mm2": 5026.5482, "bbox_mm": []any{10., 10., 90., 90.}, "parent": nil, "holes": []any{"isle"}},
		{"id": "isle", "closed": true, "area_mm2": 100., "bbox_mm": []any{45., 45., 55., 55.}, "parent": "pool", "holes": []any{}},
		{"id": "loose", "closed": false, "area_mm2": 12.5, "bbox_mm": []any{1., 1., 6., 6.}, "parent": nil, "holes": []any{}},
	}
	for i, w := range want {
		if diff := cmp.Diff(w, pick(i)); diff != "" {
			t.Error(diff)
		}
	}
	if got["longest_mm"] != 80.0 || got["scale_check"] != "longest outline 80.0 mm" || got["unit_note"] == "" || len(got["findings"].([]any)) != 1 {
		t.Errorf("rest of %s", data)
	}
}

func TestInspectionAsText(t *testing.T) {
	in, err := Inspect("two.svg", []byte(page100(`<rect id="pool" x="10" y="10" width="80" height="70"/><path id="loose" d="M1 1h5v5"/>`)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := in.Text(&b); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"area mm2", "5600.0", "open", "longest outline 80.0 mm", "caution: two.svg:2:55, loose", "close the line"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}

func TestSameDrawingSameBytes(t *testing.T) {
	data := []byte(page100(usesThatMultiply(3) + `<text/><image/><rect width="9" height="9"/><path d="M0 0l50 50v-50l-50 50z"/>`))
	first := ""
	for range 5 {
		in, err := Inspect("same.svg", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		out, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		if first == "" {
			first = string(out)
		}
		if string(out) != first {
			t.Fatal("the same drawing gave other bytes")
		}
	}
}
