package toolpath

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"pourwright/internal/published"
)

// TestPublishedArcRadii compares the two radii of every arc with what the reference
// interpreter allows.
func TestPublishedArcRadii(t *testing.T) {
	for _, c := range []struct {
		inch  bool
		unit  string
		mm    float64
		limit float64
	}{{false, "mm", 1, 0.002}, {true, "in", 25.4, 0.0002}} {
		m := router()
		m.Inch = c.inch
		p, _ := compute(t, Input{Sheets: []Sheet{exampleSheet()}, Machine: m})
		worst, arcs := 0.0, 0
		for _, st := range steps(t, p.Text) {
			if st.g >= 2 {
				arcs++
				worst = math.Max(worst, math.Abs(math.Hypot(st.i, st.j)-math.Hypot(st.x-st.x0-st.i, st.y-st.y0-st.j))/c.mm)
			}
		}
		published.Run(t, published.Check{Room: "toolpath", Name: fmt.Sprintf("largest difference of the radii of %d arcs", arcs),
			Ours: worst, Theirs: 0, Unit: c.unit, Tol: c.limit, Source: "rs274ngc", Place: "arcs in centre format, radius tolerance"})
	}
}

// TestPublishedModalGroups holds every line to the table of modal groups.
func TestPublishedModalGroups(t *testing.T) {
	data, err := os.ReadFile(published.Data(t, "gcode", "facts.json"))
	if err != nil {
		t.Fatal(err)
	}
	var facts struct {
		Line struct {
			Most int `json:"max_chars"`
		} `json:"line"`
		G map[string][]string `json:"modal_groups_G"`
		M map[string][]string `json:"modal_groups_M"`
	}
	if err := json.Unmarshal(data, &facts); err != nil {
		t.Fatal(err)
	}
	group := map[string]string{}
	for _, of := range []map[string][]string{facts.G, facts.M} {
		for name, words := range of {
			for _, w := range words {
				group[w] = name
			}
		}
	}
	m := router()
	m.Spindle, m.Speed = true, 9000
	p, _ := compute(t, Input{Piece: strings.Repeat("name ", 100), Sheets: []Sheet{exampleSheet()}, Machine: m})
	clashes, unknown, longest := 0, 0, 0
	for _, line := range strings.Split(p.Text, "\n") {
		longest = max(longest, len(line))
	}
	for _, b := range blocks(t, p.Text) {
		seen := map[string]bool{}
		for _, w := range strings.Fields(b.text) {
			if w[0] != 'G' && w[0] != 'M' {
				continue
			}
			g, ok := group[w]
			if !ok {
				unknown++
			}
			if seen[g] {
				clashes++
			}
			seen[g] = true
		}
	}
	check := func(name string, ours, theirs, tol float64) published.Check {
		return published.Check{Room: "toolpath", Name: name, Ours: ours, Theirs: theirs, Unit: "", Tol: tol, Source: "rs274ngc", Place: "sections 3.2 to 3.5"}
	}
	published.Run(t, check("lines with two words of a modal group", float64(clashes), 0, 0), check("G and M words not in the table", float64(unknown), 0, 0))
	if longest >= facts.Line.Most {
		t.Errorf("a line of %d characters, at most %d", longest, facts.Line.Most)
	}
}

// TestPublishedTimes compares times with closed forms.
func TestPublishedTimes(t *testing.T) {
	const v, a = 1500.0 / 60, 250.0 // mm/s, mm/s2
	go1 := func(points ...[2]float64) []Move {
		var out []Move
		for _, p := range points {
			out = append(out, Move{Kind: Line, X: p[0], Y: p[1], Feed: 60 * v})
		}
		return out
	}
	corner := math.Sqrt(a * cornerMM * math.Sqrt2 / 2 / (1 - math.Sqrt2/2))
	half := 50/v + v/(2*a) + (v-corner)*(v-corner)/(2*a*v)
	time := func(moves []Move) float64 { return seconds(moves, 0, 5000, a) }
	check := func(name string, ours, theirs float64) published.Check {
		return published.Check{Room: "toolpath", Name: name, Ours: ours, Theirs: theirs, Unit: "s", Tol: 1e-9, Source: "analytic", Place: "uniform acceleration"}
	}
	published.Run(t,
		check("100 mm at 25 mm/s and 250 mm/s2", time(go1([2]float64{100, 0})), 100/v+v/a),
		check("1 mm, too short to reach the feed", time(go1([2]float64{1, 0})), 2*math.Sqrt(1/a)),
		check("100 mm in ten pieces straight on", time(go1([][2]float64{{10}, {20}, {30}, {40}, {50}, {60}, {70}, {80}, {90}, {100}}...)), 100/v+v/a),
		check("50 mm, there and back", time(go1([2]float64{50, 0}, [2]float64{0, 0})), 2*(50/v+v/a)),
		check("two sides of 50 mm round a square corner", time(go1([2]float64{50, 0}, [2]float64{50, 50})), 2*half),
		check("half a circle of 10 mm at sqrt(a R)", time([]Move{{Kind: Counter, X: 20, I: 10, Feed: 60 * 500}}), 10*math.Pi/math.Sqrt(a*10)+math.Sqrt(a*10)/a),
	)
}

// TestPublishedFeed holds the usual feed to the exact inch.
func TestPublishedFeed(t *testing.T) {
	published.Run(t, published.Check{Room: "toolpath", Name: "60 in/min", Ours: float64(usualFeed), Theirs: 1524, Unit: "mm/min", Tol: 0, Source: "nist-sp811", Place: "appendix B.8, inch"},
		published.Check{Room: "toolpath", Name: "a quarter inch", Ours: usualStepDown.MM(), Theirs: 6.35, Unit: "mm", Tol: 1e-12, Source: "nist-sp811", Place: "appendix B.8, inch"})
}
