package svg

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
)

func TestGapsUpToTheLimitAreClosed(t *testing.T) {
	for _, tt := range []struct {
		name, d string
		closed  []bool
		area    float64
		code    string
	}{
		{"back at the start without Z", "M10 10H50V50H10V10", []bool{true}, 1600, ""},
		{"0.15 mm short", "M10 10H50V50H10V10.15", []bool{true}, 1600, "svg/gap-closed"},
		{"0.25 mm short", "M10 10H50V50H10V10.25", []bool{false}, 1600, "svg/open-path"},
		{"four lines, head to tail", "M10 10H50M50 10V50M50 50H10M10 50V10", []bool{true}, 1600, ""},
		{"four lines, any way round", "M50 50V10M50 50H10M10 10V50M10 10H50", []bool{true}, 1600, ""},
		{"two halves 0.1 mm apart", "M10 10H50V50M50.1 50H10V10", []bool{true}, 1600, "svg/gap-closed"},
		{"two halves, one end loose", "M10 10H50V50M50 50H10V20", []bool{false}, 1600, "svg/open-path"},
		{"three ends at one place", "M10 10H50M50 10V50M50 10L90 90", []bool{false, false, false}, 0, "svg/open-path"},
		{"two arcs make a circle", "M10 50A40 40 0 0 1 90 50M10 50A40 40 0 0 0 90 50", []bool{true}, 3.14159265358979 * 1600, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d, found, err := Read("gap.svg", []byte(page100(`<path id="p" d="`+tt.d+`"/>`)), Options{})
			if err != nil {
				t.Fatal(err)
			}
			o := d.Outlines[0]
			if !slices.Equal(o.Closed, tt.closed) {
				t.Errorf("closed %v, want %v", o.Closed, tt.closed)
			}
			near(t, "area", o.AreaMM2, tt.area, 6)
			told := slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Code == tt.code })
			if told != (tt.code != "") || tt.code == "" && len(found) > 0 {
				t.Errorf("findings %v", found)
			}
		})
	}
}

// TestPiecesJoinWhateverTheirOrder cuts a closed line into pieces, turns and shuffles
// them, and gets the line back.
func TestPiecesJoinWhateverTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "pieces")
		corners := make([]string, n)
		for i := range corners {
			corners[i] = sprintf("%d %d", 10+8*i, 10+rapid.IntRange(0, 60).Draw(t, "y")+i%2*15)
		}
		pieces := make([]string, n)
		for i := range pieces {
			a, b := corners[i], corners[(i+1)%n]
			if rapid.Bool().Draw(t, "turned") {
				a, b = b, a
			}
			pieces[i] = "M" + a + "L" + b
		}
		whole := "M"
		for _, c := range corners {
			whole += c + " "
		}
		cut := ""
		for _, i := range rapid.Permutation(indexes(n)).Draw(t, "order") {
			cut += pieces[i]
		}
		lines := func(d string) []polyline {
			p := &pen{limit: 100}
			if fault := readPath(d, p); fault != nil {
				t.Fatal(fault)
			}
			var out []polyline
			for i := range p.subs {
				l, _ := p.subs[i].flatten(0.05, 100)
				out = append(out, l)
			}
			return out
		}
		want, got := lines(whole + "z")[0].points.Area(), 0.0
		joined, _ := heal(lines(cut), 0.2)
		if len(joined) != 1 || !joined[0].closed {
			t.Fatalf("%s joined to %v", cut, joined)
		}
		if got = joined[0].points.Area(); !within(got, want) && !within(got, -want) {
			t.Fatalf("area %v, want %v", got, want)
		}
	})
}

func within(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

func indexes(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}
