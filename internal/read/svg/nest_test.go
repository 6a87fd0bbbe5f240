package svg

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
)

// family writes parents and children as "a<b" for a inside b.
func family(d *Drawing) string {
	var out []string
	for _, o := range d.Outlines {
		if o.Parent != "" {
			out = append(out, o.ID+"<"+o.Parent)
		}
	}
	return strings.Join(out, " ")
}

func TestNesting(t *testing.T) {
	box := func(id string, x, y, w, h float64) string {
		return sprintf(`<rect id="%s" x="%g" y="%g" width="%g" height="%g"/>`, id, x, y, w, h)
	}
	for _, tt := range []struct{ name, body, want string }{
		{"side by side", box("a", 0, 0, 9, 9) + box("b", 20, 0, 9, 9), ""},
		{"three deep, any order", box("c", 4, 4, 2, 2) + box("a", 0, 0, 20, 20) + box("b", 2, 2, 10, 10), "c<b b<a"},
		{"two in one", box("a", 0, 0, 50, 20) + box("b", 2, 2, 5, 5) + box("c", 20, 2, 5, 5), "b<a c<a"},
		{"a common side", box("a", 0, 0, 50, 20) + box("b", 30, 5, 20, 10) + box("c", 40, 7, 10, 5), "b<a c<b"},
		{"crossing ones are not nested", box("a", 0, 0, 20, 20) + box("b", 10, 5, 20, 5), ""},
		{"inside a crossing one", box("a", 0, 0, 20, 20) + box("b", 10, 5, 20, 5) + box("c", 25, 6, 2, 2), "c<b"},
		{"touching at a corner", box("a", 0, 0, 20, 20) + box("b", 20, 20, 5, 5), ""},
		{"in the box of an L but not in it", `<path id="a" d="M0 0H10V80H90V90H0Z"/>` + box("b", 20, 20, 9, 9), ""},
		{"in the hole of a ring", `<path id="a" fill-rule="evenodd" d="M0 0H90V90H0Z M10 10H80V80H10Z"/>` + box("b", 20, 20, 9, 9), "b<a"},
		{"a double does not count", box("a", 0, 0, 20, 20) + box("a2", 0, 0, 20, 20) + box("b", 2, 2, 9, 9), "b<a"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d, _, err := Read("nest.svg", []byte(page100(tt.body)), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := family(d); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
			for _, o := range d.Outlines {
				for _, h := range o.Holes {
					if c := d.Select(h); len(c) != 1 || c[0].Parent != o.ID {
						t.Errorf("%s lists %s, whose parent is %v", o.ID, h, c)
					}
				}
			}
		})
	}
}

// TestNestingOfCirclesAgreesWithTheirRadii draws circles that do not touch and
// compares with the plain rule, trying all pairs.
func TestNestingOfCirclesAgreesWithTheirRadii(t *testing.T) {
	type circle struct{ x, y, r float64 }
	rapid.Check(t, func(t *rapid.T) {
		var cs []circle
		coord := rapid.Float64Range(0, 100)
		for range rapid.IntRange(2, 40).Draw(t, "n") {
			c := circle{coord.Draw(t, "x"), coord.Draw(t, "y"), rapid.Float64Range(1, 50).Draw(t, "r")}
			clear := !slices.ContainsFunc(cs, func(o circle) bool {
				d := math.Hypot(c.x-o.x, c.y-o.y)
				return d < c.r+o.r+0.1 && d > math.Abs(c.r-o.r)-0.1
			})
			if clear {
				cs = append(cs, c)
			}
		}
		body := ""
		for i, c := range cs {
			body += sprintf(`<circle id="c%d" cx="%g" cy="%g" r="%g"/>`, i, c.x, c.y, c.r)
		}
		d, _, err := Read("nest.svg", []byte(page100(body)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range cs {
			want, best := "", math.Inf(1)
			for j, o := range cs {
				if o.r > c.r && o.r < best && math.Hypot(c.x-o.x, c.y-o.y) < o.r {
					want, best = d.Outlines[j].ID, o.r
				}
			}
			if d.Outlines[i].Parent != want {
				t.Fatalf("circle %d: parent %q, want %q", i, d.Outlines[i].Parent, want)
			}
		}
	})
}

func TestAreaByFillRule(t *testing.T) {
	const (
		outer  = "M0 0H90V90H0Z"    // 8100
		same   = "M10 10H50V50H10Z" // 1600
		contra = "M10 10V50H50V10Z"
		core   = "M20 20H30V30H20Z" // 100
		beside = "M95 0V5H99V0Z"    // 20
	)
	for _, tt := range []struct {
		d, rule string
		want    float64
	}{
		{outer, "nonzero", 8100},
		{outer + contra, "nonzero", 6500},
		{outer + contra, "evenodd", 6500},
		{outer + same, "nonzero", 8100},
		{outer + same, "evenodd", 6500},
		{outer + contra + core, "nonzero", 6600},
		{outer + contra + core, "evenodd", 6600},
		{outer + same + core, "nonzero", 8100},
		{outer + same + core, "evenodd", 6600},
		{outer + beside, "nonzero", 8120},
	} {
		_, o := readOne(t, page100(`<path id="p" fill-rule="`+tt.rule+`" d="`+tt.d+`"/>`), Options{})
		near(t, tt.rule+" "+tt.d, o.AreaMM2, tt.want, 1e-9)
	}
}

// ringsOf reads rings written as lists of coordinates.
func ringsOf(t *testing.T, lists ...string) []geom.Ring {
	var out []geom.Ring
	for _, list := range lists {
		p := &pen{limit: 1000}
		if fault := readPoints(list, p, true); fault != nil {
			t.Fatal(fault)
		}
		line, _ := p.subs[0].flatten(1, 1000)
		out = append(out, line.points)
	}
	return out
}

func countCrossings(rings []geom.Ring) int {
	c, _ := newHierarchy(rings, 1e7).crossings()
	return len(c)
}

func TestCrossingsByHand(t *testing.T) {
	for _, tt := range []struct {
		name  string
		rings []string
		want  int
	}{
		{"square", []string{"0 0 9 0 9 9 0 9"}, 0},
		{"bow tie", []string{"0 0 9 9 9 0 0 9"}, 1},
		{"bow tie with corners at the crossing", []string{"0 0 4.5 4.5 9 9 9 0 4.5 4.5 0 9"}, 1},
		{"bow tie with one corner at the crossing", []string{"0 0 4.5 4.5 9 9 9 0 0 9"}, 1},
		{"lobes that touch at a corner", []string{"0 0 4 4 8 0 8 8 4 4 0 8"}, 0},
		{"corner on a side, from inside", []string{"0 0 8 0 8 8 4 0 0 8"}, 0},
		{"spike", []string{"0 0 8 0 8 4 12 4 8 4 8 8 0 8"}, 0},
		{"squares that overlap", []string{"0 0 9 0 9 9 0 9", "4 4 12 4 12 12 4 12"}, 2},
		{"squares side to side", []string{"0 0 9 0 9 9 0 9", "9 2 12 2 12 6 9 6"}, 0},
		{"corner through a side", []string{"0 0 9 0 9 9 0 9", "9 2 12 6 9 6 5 4"}, 2},
		{"cross of two bars", []string{"0 4 9 4 9 5 0 5", "4 0 5 0 5 9 4 9"}, 4},
	} {
		rings := ringsOf(t, tt.rings...)
		if got := countCrossings(rings); got != tt.want {
			t.Errorf("%s: %d crossings, want %d", tt.name, got, tt.want)
		}
		for i, r := range rings {
			rings[i] = r.Reversed()
		}
		if got := countCrossings(rings); got != tt.want {
			t.Errorf("%s, turned round: %d crossings, want %d", tt.name, got, tt.want)
		}
	}
}

// TestCrossingsAgreeWithAllPairs compares the tree of boxes with trying all pairs.
func TestCrossingsAgreeWithAllPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var rings []geom.Ring
		coord := rapid.Float64Range(0, 50)
		for range rapid.IntRange(1, 4).Draw(t, "rings") {
			var r geom.Ring
			for range rapid.IntRange(3, 12).Draw(t, "corners") {
				r = append(r, geom.Point{X: coord.Draw(t, "x"), Y: coord.Draw(t, "y")})
			}
			rings = append(rings, r)
		}
		h := newHierarchy(rings, 1e7)
		want := 0
		for i, s := range h.sides {
			for _, u := range h.sides[i+1:] {
				if _, ok := h.cross(s, u); ok {
					want++
				}
			}
		}
		if got, whole := h.crossings(); len(got) != want || !whole {
			t.Fatalf("%d crossings, %d by all pairs, whole %v", len(got), want, whole)
		}
	})
}

// TestCurvesDrawnAlongEachOtherDoNotCross shares a curved bank between two outlines
// that cut it differently, so that their chords weave.
func TestCurvesDrawnAlongEachOtherDoNotCross(t *testing.T) {
	bank := "M10 50C30 20 60 80 90 50"
	left, right := cutAt([4]geom.Point{{X: 10, Y: 50}, {X: 30, Y: 20}, {X: 60, Y: 80}, {X: 90, Y: 50}}, 0.3)
	again := "M10 50"
	for _, c := range [][4]geom.Point{left, right} {
		again += sprintf("C%v %v %v %v %v %v", c[1].X, c[1].Y, c[2].X, c[2].Y, c[3].X, c[3].Y)
	}
	deep, wide := drawPath(t, bank+"V60H10Z")[0], drawPath(t, again+"V90H10Z")[0]
	a, _ := deep.flatten(0.05, 1000)
	b, _ := wide.flatten(0.05, 1000)
	if countCrossings([]geom.Ring{a.points, b.points}) < 2 {
		t.Fatal("the chords do not weave, so that this shows nothing")
	}
	d, found, err := Read("weave.svg", []byte(page100(`<path id="deep" d="`+bank+`V60H10Z"/><path id="wide" d="`+again+`V90H10Z"/>`)), Options{})
	if err != nil || len(found) != 0 {
		t.Fatalf("findings %v, error %v", found, err)
	}
	if got := family(d); got != "deep<wide" {
		t.Errorf("family %q", got)
	}
}

// cutAt divides a curve at parameter t.
func cutAt(c [4]geom.Point, t float64) (left, right [4]geom.Point) {
	mid := func(p, q geom.Point) geom.Point { return p.Mul(1 - t).Add(q.Mul(t)) }
	ab, bc, cd := mid(c[0], c[1]), mid(c[1], c[2]), mid(c[2], c[3])
	abc, bcd := mid(ab, bc), mid(bc, cd)
	m := mid(abc, bcd)
	return [4]geom.Point{c[0], ab, abc, m}, [4]geom.Point{m, bcd, cd, c[3]}
}

func TestEndlessCrossingsAreRefused(t *testing.T) {
	for _, tt := range []struct {
		name string
		data []byte
		lim  Limits
	}{
		{"few comparisons allowed", nestedDrawing(4000, 4), Limits{Pairs: 500}},
		{"hatching over hatching", []byte(page100(`<path d="M0 0` + strings.Repeat("l90 1l-90 1", 40) + `z"/><path d="M0 0` + strings.Repeat("l1 90l1-90", 40) + `z"/>`)), Limits{Pairs: 5000}},
		{"a star of a thousand points", []byte(page100(star(1001))), Limits{}},
	} {
		_, _, err := Read("many.svg", tt.data, Options{Limits: tt.lim})
		var e *Error
		if !errors.As(err, &e) || e.Rule.Code != "svg/tangled" || e.Where.Line == 0 {
			t.Errorf("%s: error %v", tt.name, err)
		}
	}
}

// star returns a star whose every line crosses nearly all others.
func star(points int) string {
	var b strings.Builder
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i*(points/2)) / float64(points))
		b.WriteString(sprintf("%.4f %.4f ", 50+40*cos, 50+40*sin))
	}
	return `<polygon points="` + b.String() + `"/>`
}
