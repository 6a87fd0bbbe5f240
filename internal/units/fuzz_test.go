package units

import (
	"errors"
	"math"
	"testing"
)

// fuzz holds for any text: no panic, a finite value or a *ParseError with a remedy,
// and the same answer twice.
func fuzz[Q ~float64](f *testing.F, parse func(string) (Q, error), seeds ...string) {
	for _, s := range append(seeds, "", "1 3/8", "1-3/8\"", `3' 4 1/2"`, "34,9", "1,220", "1e400", "NaN", "5 gal", "½", "-", "/", "1/", "'", "0x1p-2", "٣", "1 2/3/4") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := parse(text)
		if err != nil {
			var e *ParseError
			if !errors.As(err, &e) || e.Remedy == "" || e.Problem == "" || e.Text != text {
				t.Fatalf("%q: error without text, problem or remedy: %#v", text, err)
			}
			return
		}
		if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
			t.Fatalf("%q read as %v", text, v)
		}
		if w, err := parse(text); err != nil || w != v {
			t.Fatalf("%q read as %v, then %v, %v", text, v, w, err)
		}
	})
}

func FuzzLength(f *testing.F) {
	fuzz(f, func(s string) (Length, error) { return ParseLength(s, "mm") }, "20mm", "48 in", "1 m 20 cm")
}

func FuzzVolume(f *testing.F) {
	fuzz(f, func(s string) (Volume, error) { return ParseVolume(s, "") }, "1.74 US gal", "16 US fl oz", "2 ft³")
}

func FuzzMass(f *testing.F) {
	fuzz(f, func(s string) (Mass, error) { return ParseMass(s, "kg") }, "17 lb 8 oz", "250 g")
}

func FuzzTemperature(f *testing.F) {
	fuzz(f, func(s string) (Temperature, error) { return ParseTemperature(s, "C") }, "68 °F", "-40F", "300 K")
}
