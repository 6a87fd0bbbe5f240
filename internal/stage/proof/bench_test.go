package proof

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/view"
)

// wavy is a part of n sides with a program of as many moves in each of three passes, the
// cutter's middle 3 mm outside of every corner.
func wavy(n int) Input {
	at := func(i int) (p, normal geom.Point) {
		a := 2 * math.Pi * float64(i) / float64(n)
		sin, cos := math.Sincos(a)
		r, dr := 1000+60*math.Sin(7*a), 420*math.Cos(7*a)
		v := geom.Point{X: dr*cos - r*sin, Y: dr*sin + r*cos}
		return geom.Point{X: 1200 + r*cos, Y: 1200 + r*sin}, geom.Point{X: v.Y, Y: -v.X}.Mul(1 / v.Norm())
	}
	ring := make(geom.Ring, n)
	var text strings.Builder
	text.WriteString("G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nF1500\n")
	for pass, z := range []float64{-8, -16, -24.9} {
		for i := range n + 1 {
			p, normal := at(i % n)
			ring[i%n] = p
			q := p.Add(normal.Mul(3))
			if i == 0 && pass == 0 {
				fmt.Fprintf(&text, "G0 X%.4f Y%.4f\n", q.X, q.Y)
			}
			if i == 0 {
				fmt.Fprintf(&text, "G1 Z%.4f\n", z)
			}
			fmt.Fprintf(&text, "G1 X%.4f Y%.4f\n", q.X, q.Y)
		}
	}
	text.WriteString("G0 Z5\nM2\n")
	return Input{File: "wavy.nc", Text: text.String(), Parts: []Part{{ID: "A", Region: view.Of[view.Form](geom.Region{{Outer: ring}})}},
		SizeX: 2500, SizeY: 2500, Thickness: 24.6, Cutter: 6, SafeHeight: 5}
}

func TestLargePart(t *testing.T) {
	in := wavy(20_000)
	r, found := Compute(in)
	if !r.Verified || r.Parts[0].Gouged > 0.002 || r.Parts[0].Uncut > 0 {
		t.Errorf("%+v: %s", r.Parts, texts(found))
	}
	in.Text = strings.Replace(in.Text, "G1 Z-24.9", "G1 Z-24", 1)
	if r, _ := Compute(in); r.Verified {
		t.Error("a program that does not go through the sheet is verified")
	}
}

func BenchmarkHundredThousand(b *testing.B) {
	in := wavy(100_000)
	for b.Loop() {
		Compute(in)
	}
}
