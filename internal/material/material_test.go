package material

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/source"
	"pourwright/internal/units"
)

func ownShelfOf(tb testing.TB) Shelf {
	tb.Helper()
	s, err := Default()
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

// values calls see for every Value in v, by name.
func values(v reflect.Value, path string, see func(path string, v reflect.Value)) {
	switch v.Kind() {
	case reflect.Map:
		for _, k := range v.MapKeys() {
			values(v.MapIndex(k), path+"."+k.String(), see)
		}
	case reflect.Slice:
		for i := range v.Len() {
			values(v.Index(i), path, see)
		}
	case reflect.Struct:
		if strings.HasPrefix(v.Type().Name(), "Value[") {
			see(path, v)
			return
		}
		for i := range v.NumField() {
			values(v.Field(i), path+"."+v.Type().Field(i).Name, see)
		}
	}
}

// TestOwnShelf holds every value of the program's own cards to have an origin, a
// registered source and, where a range is stated, to lie in it.
func TestOwnShelf(t *testing.T) {
	s := ownShelfOf(t)
	count, ranged := 0, 0
	values(reflect.ValueOf(s), "shelf", func(path string, v reflect.Value) {
		origin := Origin(v.FieldByName("Origin").String())
		if origin == "" {
			return // not stated on this card
		}
		count++
		if origin != Typical {
			t.Errorf("%s: origin %q of a generic card", path, origin)
		}
		if _, err := source.Lookup(v.FieldByName("Source").String()); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		if v.FieldByName("Typed").String() == "" {
			t.Errorf("%s: not kept as typed", path)
		}
		x, low, high := v.FieldByName("Value").Float(), v.FieldByName("Low").Float(), v.FieldByName("High").Float()
		if low == 0 && high == 0 {
			return
		}
		ranged++
		if x < low || x > high || low >= high {
			t.Errorf("%s: %v outside %v to %v", path, x, low, high)
		}
	})
	if count < 350 || ranged < 300 {
		t.Errorf("only %d values, %d with a range", count, ranged)
	}
}

func TestOwnCardsAreUsable(t *testing.T) {
	s := ownShelfOf(t)
	if len(s.Resins) < 5 || len(s.Mixes) < 5 || len(s.Boards) < 5 || len(s.Foams) < 10 || len(s.Tubes) != 8 || len(s.Machines) < 3 || len(s.Consumables) < 6 {
		t.Error("cards are missing")
	}
	for name, r := range s.Resins {
		if r.Name != name || r.MinDepth.Value >= r.MaxDepth.Value || r.Gel.Value <= r.PotLife.Value || r.Hard.Value <= r.Recoat.Value || r.DensityB.Value >= r.DensityA.Value || r.Class == "" {
			t.Errorf("resin %s: %+v", name, r)
		}
	}
	for name, m := range s.Mixes {
		water := m.parts("water") + m.parts("polymer")/2
		base := m.parts("cement") + m.parts("pozzolan")
		if m.Kind == Bagged {
			water, base = m.parts("water"), m.parts("blend")
		}
		if ratio := water / base; ratio < m.WaterMin.Value || ratio > m.WaterMax.Value {
			t.Errorf("mix %s: water ratio %.3f outside %.3f to %.3f", name, ratio, m.WaterMin.Value, m.WaterMax.Value)
		}
		if (m.Use == "face") != (m.parts("fibre") == 0) {
			t.Errorf("mix %s for the %s has %v parts of fibre", name, m.Use, m.parts("fibre"))
		}
		if m.NextCoat.Value >= m.NextCoatEnd.Value {
			t.Errorf("mix %s: window to the next coat", name)
		}
	}
}

// parts adds up the parts of a role.
func (m Mix) parts(role string) float64 {
	sum := 0.0
	for _, i := range m.Ingredients {
		if i.Role == role {
			sum += i.Parts.Value
		}
	}
	return sum
}

func TestDefaultIsTheCallersOwn(t *testing.T) {
	a := ownShelfOf(t)
	delete(a.Resins, "deep pour 50 mm")
	if _, err := ownShelfOf(t).Resin("deep pour 50 mm"); err != nil {
		t.Error("one caller's change reached another")
	}
}

func TestReadExtends(t *testing.T) {
	base := ownShelfOf(t)
	text := `origin: data sheet
source: the sheet of March
resins:
  river resin:
    like: deep pour 50 mm
    ratio_mass: 100:44
    max_depth: {value: 2 in, range: [1 3/4 in, 2 1/4 in], origin: measured}
    packages: [{quantity: 1.5 US gal, price: 120}, {quantity: 4 kg, price: {value: 95}}]
foams:
  EPS 25: {length: 1200 mm}
`
	s, err := Read("mine.yaml", []byte(text), base)
	if err != nil {
		t.Fatal(err)
	}
	r, miss := s.Resin("river resin")
	if miss != nil || r.Name != "river resin" || !r.ByMass || r.RatioA.Value != 100 || r.MaxDepth.Value != 50.8 || r.MaxDepth.Origin != Measured || r.MaxDepth.High != 57.15 ||
		r.Density.Value != 1100 || r.Density.Origin != Typical || r.RatioA.Source != "the sheet of March" {
		t.Errorf("river resin: %+v", r)
	}
	if p := r.Packages; len(p) != 2 || p[0].Unit != "l" || p[0].Quantity.Value != 1.5*float64(units.USGallon) || p[0].Price.Value != 120 || p[1].Unit != "kg" {
		t.Errorf("packages %+v", p)
	}
	if f := s.Foams["EPS 25"]; f.Length.Value != 1200 || f.Width.Value != 500 {
		t.Errorf("foam %+v", f)
	}
	if base.Foams["EPS 25"].Length.Value != 1000 || len(base.Resins) != 5 {
		t.Error("the base shelf was written to")
	}
}

func TestBadShelves(t *testing.T) {
	for _, c := range []struct {
		name, text, code, place, remedy string
	}{
		{"not YAML", "resins: [", "document/syntax", "s.yaml:1", "correct the line"},
		{"unknown kind", "resin: {}\n", "document/unknown-field", "s.yaml:1:1", "did you mean resins?"},
		{"unknown value", "boards:\n  MDF 18: {thicknes: 18 mm}\n", "document/unknown-field", "s.yaml:2:12", "did you mean thickness?"},
		{"no unit", "origin: measured\nboards:\n  MDF 18: {thickness: 18}\n", "shelf/value", "s.yaml:3:23", "unit too"},
		{"wrong unit", "origin: measured\nboards:\n  MDF 18: {thickness: 18 kg}\n", "shelf/value", "s.yaml:3:23", "such as"},
		{"absurd", "origin: measured\nboards:\n  MDF 18: {thickness: 18 m}\n", "shelf/absurd", "s.yaml:3:23", "check the number"},
		{"no origin", "boards:\n  MDF 18: {thickness: 18 mm}\n", "shelf/origin", "s.yaml:2:23", "measured, data sheet or typical"},
		{"odd origin", "boards:\n  MDF 18: {thickness: {value: 18 mm, origin: hearsay}}\n", "shelf/origin", "s.yaml:2", "measured, data sheet or typical"},
		{"typical of no source", "boards:\n  MDF 18: {thickness: {value: 18 mm, origin: typical, source: my uncle}}\n", "shelf/source", "s.yaml:2", "register"},
		{"outside its range", "origin: measured\nfoams:\n  EPS 25: {density: {value: 50 kg/m3, range: [15 kg/m3, 30 kg/m3]}}\n", "shelf/range", "s.yaml:3", "around the value"},
		{"range of one", "origin: measured\nfoams:\n  EPS 25: {density: {value: 20 kg/m3, range: [15 kg/m3]}}\n", "shelf/range", "s.yaml:3", "around the value"},
		{"range without value", "origin: measured\nfoams:\n  EPS 25: {density: {range: [15 kg/m3, 30 kg/m3]}}\n", "shelf/value", "s.yaml:3", "number with its unit"},
		{"half a card", "origin: measured\nresins:\n  mine: {density: 1.1 kg/l}\n", "shelf/missing", "s.yaml:3", "like:"},
		{"like nothing", "origin: measured\nresins:\n  mine: {like: deep poor 50 mm}\n", "shelf/missing", "s.yaml:3", "did you mean deep pour 50 mm?"},
		{"odd role", "origin: measured\nconsumables:\n  glue: {role: adhesve, coverage: 5}\n", "shelf/word", "s.yaml:3", "did you mean adhesive?"},
		{"odd package", "origin: measured\nresins:\n  deep pour 50 mm: {packages: [{quantity: 3 boxes}]}\n", "shelf/value", "s.yaml:3", "unit"},
		{"which gallon", "origin: measured\nresins:\n  deep pour 50 mm: {packages: [{quantity: 1 gal}]}\n", "shelf/value", "s.yaml:3", "US gal"},
		{"solid tube", "origin: measured\ntubes:\n  t: {like: square tube 20 x 2, wall: 12 mm}\n", "shelf/absurd", "s.yaml:3", "check"},
		{"depths upside down", "origin: measured\nresins:\n  deep pour 50 mm: {max_depth: 5 mm}\n", "shelf/range", "s.yaml:3", "swap"},
		{"water upside down", "origin: measured\nmixes:\n  backer: {water_max: 0.2}\n", "shelf/range", "s.yaml:3", "swap"},
		{"bad ratio", "origin: measured\nresins:\n  deep pour 50 mm: {ratio: 2-1}\n", "shelf/value", "s.yaml:3", "2:1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read("s.yaml", []byte(c.text), ownShelfOf(t))
			var e *Error
			if !errors.As(err, &e) || len(e.Findings) == 0 || e.Hint() == "" {
				t.Fatalf("error %v", err)
			}
			for _, f := range e.Findings {
				if f.Code == c.code && strings.HasPrefix(f.Where.String(), c.place) && strings.Contains(f.Remedy, c.remedy) && strings.Contains(e.Error(), c.place) {
					return
				}
			}
			t.Errorf("want %s at %s, remedy with %q; got %+v", c.code, c.place, c.remedy, e.Findings)
		})
	}
}

func TestNotFound(t *testing.T) {
	s := ownShelfOf(t)
	if _, err := s.Board("mdf18"); err == nil || err.Remedy() != "did you mean MDF 18?" {
		t.Errorf("got %v", err)
	}
	if _, err := s.Machine("loom"); err == nil || !strings.Contains(err.Remedy(), "hand saw; large bed router") {
		t.Errorf("got %v", err)
	}
}

// TestPublishedPremix holds the ratios of the reference premix, which follow from its
// printed parts: cement 50, sand 50, water 14.5, emulsion 5 of half solids.
func TestPublishedPremix(t *testing.T) {
	m := ownShelfOf(t).Mixes["backer"]
	total := 0.0
	for _, i := range m.Ingredients {
		total += i.Parts.Value
	}
	check := func(name string, ours, theirs, tol float64, unit string) published.Check {
		return published.Check{Room: "material", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "gfrc-guides", Place: "reference premix"}
	}
	published.Run(t,
		check("reference premix, water to cement with the emulsion's", (m.parts("water")+m.parts("polymer")/2)/m.parts("cement"), 0.340, 0.0005, ""),
		check("reference premix, polymer solids of cement", m.parts("polymer")/2/m.parts("cement"), 0.050, 0.0005, ""),
		check("reference premix, fibre of total", m.parts("fibre")/total, 0.030, 0.0005, ""),
		check("reference premix, batch", total, 123.71, 0.005, "kg"),
	)
}

// TestPublishedTubes compares the printed mass per metre with the area of the
// section, corners of 2 T outside and T inside, at 7850 kg/m3.
func TestPublishedTubes(t *testing.T) {
	var checks []published.Check
	s := ownShelfOf(t)
	for _, name := range Names(s.Tubes) {
		tube := s.Tubes[name]
		b, w := float64(tube.Side.Value), float64(tube.Wall.Value)
		area := 4*w*(b-w) - (4-3.141592653589793)*(4*w*w-w*w)
		checks = append(checks, published.Check{Room: "material", Name: name + ", mass per metre", Ours: area * 7850e-6, Theirs: tube.MassPerM.Value,
			Unit: "kg/m", Tol: 0.005 + 1e-9, Source: "en-10219-2", Place: "table of square sections"})
	}
	published.Run(t, checks...)
}
