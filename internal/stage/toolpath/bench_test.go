package toolpath

import (
	"fmt"
	"math"
	"testing"

	"pourwright/internal/geom"
)

// fullSheet is a sheet of wavy parts with many dowel holes.
func fullSheet(across, down, holes int) Sheet {
	s := Sheet{Name: "full", SizeX: 2500, SizeY: 1250, Thickness: 24.6}
	seed := uint64(12345)
	next := func() float64 {
		seed ^= seed << 13
		seed ^= seed >> 7
		seed ^= seed << 17
		return float64(seed%100000) / 100000
	}
	w, h := 2400/float64(across), 1200/float64(down)
	for i := range across {
		for j := range down {
			c := geom.Point{X: 50 + w*(float64(i)+0.5), Y: 20 + h*(float64(j)+0.5)}
			radius := math.Min(w, h) * 0.38
			rings := []geom.Ring{blob(c, radius, radius*0.08, 500)}
			for k := range holes {
				a, d := 2*math.Pi*(float64(k)+0.7*next())/float64(holes), radius*(0.3+0.5*next())
				rings = append(rings, hole(c.Add(geom.Point{X: d * math.Cos(a), Y: d * math.Sin(a)}), 4))
			}
			s.Parts = append(s.Parts, formPart(fmt.Sprintf("L%d-%d", i, j), rings...))
		}
	}
	return s
}

func stopsOf(s Sheet) []stop {
	m := router()
	m.BedX, m.BedY = 3000, 3000
	c := &computer{}
	c.m, _ = c.settle(m)
	loops := c.loops(s)
	how := newCut(c.m, s.Thickness.MM())
	out := make([]stop, len(loops))
	for i, l := range loops {
		_, out[i] = c.stop(l, how)
	}
	return out
}

// travels are sheets on which the ways above the sheet are held to the bound; the
// first two are quick enough for every run.
var travels = []struct {
	name  string
	sheet func() Sheet
}{
	{"example", exampleSheet},
	{"4 x 2 parts, 48 holes", func() Sheet { return fullSheet(4, 2, 6) }},
	{"8 x 4 parts, 96 holes", func() Sheet { return fullSheet(8, 4, 3) }},
	{"3 x 2 parts, 150 holes", func() Sheet { return fullSheet(3, 2, 25) }},
}

func TestTravelIsNearTheBound(t *testing.T) {
	for _, c := range travels[:2] {
		stops := stopsOf(c.sheet())
		length := shortest(stops).length()
		least := bound(stops, length, 200)
		t.Logf("%s: %d stops, %.0f mm, bound %.0f mm, ratio %.3f", c.name, len(stops), length, least, length/least)
		if length < least-1e-6 {
			t.Errorf("%s: %.1f mm is below the bound of %.1f mm", c.name, length, least)
		}
		if length > 1.15*least {
			t.Errorf("%s: %.1f mm is more than 15 %% above the bound of %.1f mm", c.name, length, least)
		}
	}
}

// BenchmarkTravel prints the length of the ways above the sheet over its bound.
func BenchmarkTravel(b *testing.B) {
	for _, c := range travels {
		b.Run(c.name, func(b *testing.B) {
			stops := stopsOf(c.sheet())
			length := 0.0
			for b.Loop() {
				length = shortest(stops).length()
			}
			b.ReportMetric(length/bound(stops, length, 600), "travel/bound")
		})
	}
}

func BenchmarkExample(b *testing.B) {
	in := Input{Sheets: []Sheet{exampleSheet()}, Machine: router()}
	for b.Loop() {
		Compute(in)
	}
}

func BenchmarkFullSheet(b *testing.B) {
	m := router()
	m.BedX, m.BedY = 3000, 3000
	in := Input{Sheets: []Sheet{fullSheet(4, 2, 6)}, Machine: m}
	for b.Loop() {
		Compute(in)
	}
}

// BenchmarkHundredThousand cuts a part of 100,000 sides.
func BenchmarkHundredThousand(b *testing.B) {
	m := router()
	m.BedX, m.BedY = 3000, 3000
	in := Input{Sheets: []Sheet{{Name: "large", SizeX: 2500, SizeY: 2500, Thickness: 24.6,
		Parts: []Part{formPart("A", blob(geom.Point{X: 1200, Y: 1200}, 1000, 60, 100_000))}}}, Machine: m}
	for b.Loop() {
		Compute(in)
	}
}
