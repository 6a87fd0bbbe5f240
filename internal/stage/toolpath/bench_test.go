package toolpath

import (
	"fmt"
	"math"
	"testing"

	"pourwright/internal/geom"
)

// bound returns a lower bound on the length of every tour of the stops and the
// origin, whatever beginnings it picks and in whatever order: the 1-tree bound of
// Held and Karp (1970), The traveling-salesman problem and minimum spanning trees,
// Operations Research 18, 1138-1162, raised by subgradient steps.
//
// The distance of two stops is the least over their beginnings and ends.
func bound(stops []stop) float64 {
	n := len(stops) + 1
	at := func(i int) ([]geom.Point, []geom.Point) {
		if i == len(stops) {
			return []geom.Point{{}}, []geom.Point{{}}
		}
		return stops[i].in, stops[i].out
	}
	d := make([][]float64, n)
	for i := range d {
		d[i] = make([]float64, n)
	}
	for i := range n {
		for j := range i {
			d[i][j] = closest(at, i, j)
			d[j][i] = d[i][j]
		}
	}
	pi := make([]float64, n)
	best := 0.0
	scale := shortest(stops).length() / float64(n)
	for round := range 1500 {
		degree, length := oneTree(d, pi)
		best = math.Max(best, length)
		t := scale * math.Pow(0.995, float64(round))
		for i := range pi {
			pi[i] += t * float64(degree[i]-2) * 0.5
		}
	}
	return best
}

func closest(at func(int) ([]geom.Point, []geom.Point), i, j int) float64 {
	best := math.Inf(1)
	ini, outi := at(i)
	inj, outj := at(j)
	for _, pair := range [2][2][]geom.Point{{outi, inj}, {outj, ini}} {
		for _, a := range pair[0] {
			for _, b := range pair[1] {
				best = math.Min(best, apart(a, b))
			}
		}
	}
	return best
}

// oneTree returns the degrees and the length, less twice the weights, of the least
// spanning tree of all nodes but the last, with the last one's two shortest sides.
func oneTree(d [][]float64, pi []float64) ([]int, float64) {
	n := len(d)
	degree, length := make([]int, n), 0.0
	in, near, from := make([]bool, n), make([]float64, n), make([]int, n)
	for i := range near {
		near[i] = math.Inf(1)
	}
	near[0] = 0
	for k := range n - 1 {
		v := -1
		for i := range n - 1 {
			if !in[i] && (v < 0 || near[i] < near[v]) {
				v = i
			}
		}
		in[v] = true
		if k > 0 {
			length += near[v]
			degree[v]++
			degree[from[v]]++
		}
		for i := range n - 1 {
			if c := d[v][i] + pi[v] + pi[i]; !in[i] && c < near[i] {
				near[i], from[i] = c, v
			}
		}
	}
	first, second := -1, -1
	cost := func(i int) float64 { return d[n-1][i] + pi[n-1] + pi[i] }
	for i := range n - 1 {
		switch {
		case first < 0 || cost(i) < cost(first):
			first, second = i, first
		case second < 0 || cost(i) < cost(second):
			second = i
		}
	}
	for _, i := range [2]int{first, second} {
		length += cost(i)
		degree[i]++
		degree[n-1]++
	}
	for _, p := range pi {
		length -= 2 * p
	}
	return degree, length
}

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

// travels are the sheets on which the ways above the sheet are held to the bound.
func travels() map[string]Sheet {
	return map[string]Sheet{"example": exampleSheet(), "4 x 2 parts, 48 holes": fullSheet(4, 2, 6), "8 x 4 parts, 96 holes": fullSheet(8, 4, 3), "3 x 2 parts, 150 holes": fullSheet(3, 2, 25)}
}

func TestTravelIsNearTheBound(t *testing.T) {
	for name, s := range travels() {
		stops := stopsOf(s)
		length, least := shortest(stops).length(), bound(stops)
		t.Logf("%s: %d stops, %.0f mm, bound %.0f mm, ratio %.3f", name, len(stops), length, least, length/least)
		if length < least-1e-6 {
			t.Errorf("%s: %.1f mm is below the bound of %.1f mm", name, length, least)
		}
		if length > 1.15*least {
			t.Errorf("%s: %.1f mm is more than 15 %% above the bound of %.1f mm", name, length, least)
		}
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
