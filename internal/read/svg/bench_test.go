package svg

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// meander returns path data of n corners along a wavy closed line about the middle of
// a 2000 mm page, scale times as large as the largest.
func meander(n int, scale float64) string {
	var b strings.Builder
	for i := range n {
		t := 2 * math.Pi * float64(i) / float64(n)
		r := scale * (600 + 60*math.Sin(9*t) + 5*math.Sin(211*t) + 0.3*math.Sin(5003*t))
		letter := "L"
		if i == 0 {
			letter = "M"
		}
		fmt.Fprintf(&b, "%s%.3f %.3f ", letter, 1000+r*math.Cos(t), 1000+r*math.Sin(t))
	}
	return b.String() + "Z"
}

// nestedDrawing returns a drawing of count outlines, one inside the other, of n
// corners in all.
func nestedDrawing(n, count int) []byte {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="2000mm" height="2000mm" viewBox="0 0 2000 2000">`)
	for i := range count {
		fmt.Fprintf(&b, `<path id="depth%d" d="%s"/>`, i+1, meander(n/count, 1-0.2*float64(i)))
	}
	b.WriteString(`</svg>`)
	return []byte(b.String())
}

// BenchmarkRead200k reads, checks and nests 200,000 corners in four outlines.
func BenchmarkRead200k(b *testing.B) {
	data := nestedDrawing(200_000, 4)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		d, found, err := Read("bench.svg", data, Options{})
		if err != nil || d.Outlines[3].Parent != "depth3" || d.Vertices != 200_000 {
			b.Fatal(err, found)
		}
	}
}

// BenchmarkReadManyOutlines reads 20,000 small outlines on one page.
func BenchmarkReadManyOutlines(b *testing.B) {
	var s strings.Builder
	s.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="2000mm" height="2000mm" viewBox="0 0 2000 2000"><rect id="page" width="2000" height="2000"/>`)
	for i := range 20_000 {
		fmt.Fprintf(&s, `<rect id="r%d" x="%d" y="%d" width="8" height="8"/>`, i, 10+(i%150)*12, 10+(i/150)*12)
	}
	s.WriteString(`</svg>`)
	data := []byte(s.String())
	for b.Loop() {
		d, _, err := Read("many.svg", data, Options{})
		if err != nil || len(d.Outlines[0].Holes) != 20_000 {
			b.Fatal(err)
		}
	}
}
