package svg

import (
	"encoding/json"
	"errors"
	"math"
	"testing"
)

// FuzzRead reads anything under small limits: an *Error or a drawing whose numbers are
// all finite, never a panic.
func FuzzRead(f *testing.F) {
	for _, tt := range badDrawings {
		f.Add([]byte(tt.drawing))
	}
	for _, tt := range brokenFiles {
		if len(tt.data) < 2000 {
			f.Add([]byte(tt.data))
		}
	}
	f.Add([]byte(page100(usesThatMultiply(3))))
	f.Add([]byte(page100(`<g transform="rotate(20) skewX(5)"><ellipse rx="9" ry="3"/><path d="M1 1q2 3 4 5t3 3s1 1 2 2a4 5 6 0 1 7 8z"/></g>`)))
	small := Limits{Bytes: 1 << 16, Elements: 2000, Vertices: 20_000, Selectors: 20_000, Pairs: 500_000}
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := Inspect("fuzz.svg", data, Options{Limits: small})
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Hint() == "" || e.Where.Line == 0 {
				t.Fatalf("error %v", err)
			}
			return
		}
		for _, o := range in.Outlines {
			for _, v := range append(o.BoxMM[:], o.AreaMM2) {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("outline %+v", o)
				}
			}
		}
		if _, err := json.Marshal(in); err != nil {
			t.Fatal(err)
		}
	})
}
