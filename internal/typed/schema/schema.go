// Package schema writes the JSON Schema of a typed document from its Go types and
// their comments. Only tests use it, to keep docs/*.schema.json true.
package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/invopop/jsonschema"

	"pourwright/internal/typed"
)

// hints describe the kinds of typed text.
var hints = map[reflect.Type]struct{ description, example string }{
	reflect.TypeFor[typed.Text]():        {"words", ""},
	reflect.TypeFor[typed.Choice]():      {"one of a few words", ""},
	reflect.TypeFor[typed.Number]():      {"a number without a unit", "96"},
	reflect.TypeFor[typed.Ratio]():       {"parts of A to parts of B", "2:1"},
	reflect.TypeFor[typed.Length]():      {"a length: mm, cm, m, in, ft, fractions; a bare number is in the document's units", `3' 4 1/2"`},
	reflect.TypeFor[typed.Area]():        {"an area: mm2, cm2, m2, in2, ft2", "40 mm2"},
	reflect.TypeFor[typed.Volume]():      {"a volume: l, ml, US gal, imperial gal, fl oz; a bare number is litres", "20 l"},
	reflect.TypeFor[typed.Mass]():        {"a mass: kg, g, lb, oz; a bare number is kilograms", "17 lb 8 oz"},
	reflect.TypeFor[typed.Temperature](): {"a temperature: C, F; a bare number is Celsius", "68 F"},
	reflect.TypeFor[typed.Duration]():    {"a time: min, h, d; a bare number is hours", "1 h 30 min"},
	reflect.TypeFor[typed.Density]():     {"a density: kg/m3, g/cm3, lb/ft3; a bare number is kg/m3", "1100 kg/m3"},
	reflect.TypeFor[typed.Speed]():       {"a feed: mm/min, in/min", "1500 mm/min"},
	reflect.TypeFor[typed.Fraction]():    {"a share: 5 % or 0.05", "5 %"},
	reflect.TypeFor[typed.Date]():        {"a date: YYYY-MM-DD", "2027-03-01"},
}

// Of returns the schema of doc, whose package's source lies in dirs (import path by
// folder).
func Of(doc any, title string, dirs map[string]string) ([]byte, error) {
	r := &jsonschema.Reflector{FieldNameTag: "yaml", Anonymous: true, ExpandedStruct: true, Mapper: scalar}
	for dir, path := range dirs {
		if err := r.AddGoComments(path, dir, jsonschema.WithFullComment()); err != nil {
			return nil, fmt.Errorf("read comments of %s: %w", dir, err)
		}
	}
	s := r.Reflect(doc)
	s.Title = title
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(s); err != nil {
		return nil, fmt.Errorf("write schema: %w", err)
	}
	return out.Bytes(), nil
}

// scalar maps typed text to "string or number" and values to "scalar or group".
func scalar(t reflect.Type) *jsonschema.Schema {
	text := func() []*jsonschema.Schema {
		return []*jsonschema.Schema{{Type: "string"}, {Type: "number"}}
	}
	if t == reflect.TypeFor[typed.List]() {
		list := &jsonschema.Schema{Type: "array", Items: &jsonschema.Schema{AnyOf: text()}}
		return &jsonschema.Schema{AnyOf: append(text(), list)}
	}
	if t == reflect.TypeFor[typed.Value]() {
		group := &jsonschema.Schema{Type: "object", AdditionalProperties: jsonschema.FalseSchema, Required: []string{"value"}, Properties: jsonschema.NewProperties()}
		group.Properties.Set("value", &jsonschema.Schema{AnyOf: text(), Description: "the value with its unit"})
		group.Properties.Set("range", &jsonschema.Schema{Type: "array", Items: &jsonschema.Schema{AnyOf: text()}, Description: "usual range: [low, high]"})
		group.Properties.Set("origin", &jsonschema.Schema{Enum: []any{"measured", "data sheet", "typical"}})
		group.Properties.Set("source", &jsonschema.Schema{Type: "string", Description: "key of the register of sources"})
		return &jsonschema.Schema{AnyOf: append(text(), group)}
	}
	h, ok := hints[t]
	if !ok {
		return nil
	}
	s := &jsonschema.Schema{AnyOf: text(), Description: h.description}
	if h.example != "" {
		s.Examples = []any{h.example}
	}
	return s
}

// Golden compares the schema with the file docs/name, or writes it when update is
// set. The test runs in internal/<package>.
func Golden(t *testing.T, name string, got []byte, update bool) {
	t.Helper()
	path := filepath.Join("..", "..", "docs", name)
	if update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is stale: run go test in this folder with -update", path)
	}
}
