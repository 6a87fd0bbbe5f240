package nest

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/published"
)

// readStrip returns a strip of the outside data, a thousand times as large as printed
// unless it is in the thousands already, and the density of a layout of unit length.
func readStrip(t *testing.T, name string) (s Strip, area float64) {
	t.Helper()
	raw, err := os.ReadFile(published.Data(t, "irregular", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		Height float64 `json:"strip_height"`
		Items  []struct {
			Quantity  int          `json:"quantity"`
			Rotations []float64    `json:"rotations"`
			Polygon   []geom.Point `json:"polygon"`
		} `json:"items"`
	}
	if err := json.Unmarshal(raw, &f); err != nil {
		t.Fatal(err)
	}
	k := 1.0
	if f.Height < 1000 {
		k = 100
	}
	s.HeightMM = f.Height * k
	for _, it := range f.Items {
		ring := geom.Ring(it.Polygon).Map(func(p geom.Point) geom.Point { return p.Mul(k) })
		for range it.Quantity {
			s.Pieces = append(s.Pieces, Piece{Shape: geom.Polygon{Outer: ring}, Turning: TurnListed, TurnsDeg: it.Rotations})
			area += math.Abs(ring.Area())
		}
	}
	return s, area
}

// expected reads the densities published, per cent.
func expected(t *testing.T) map[string]float64 {
	t.Helper()
	raw, err := os.ReadFile(published.Data(t, "best.json"))
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		Strip struct {
			Instances map[string]struct {
				Expected float64 `json:"expected_density_20min"`
			} `json:"instances"`
		} `json:"irregular_strip"`
	}
	if err := json.Unmarshal(raw, &f); err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	for name, v := range f.Strip.Instances {
		out[name] = v.Expected
	}
	return out
}

// packed packs a strip and holds the layout to the laws by the independent library.
func packed(t *testing.T, s Strip) StripLayout {
	t.Helper()
	l, err := s.Pack(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	p := Problem{Pieces: s.Pieces, Sheets: []Sheet{{Outline: geom.Rect(0, 0, l.LengthMM, s.HeightMM).Region()}}}
	holdsLaws(t, p, Layout{Placements: l.Placements, Sheets: []Opened{{}}})
	return l
}

// TestPublishedStrips compares densities after a search of a fixed number of moves, a few
// seconds each, with the means published for 20 minutes, on every instance at hand. The
// tolerance is the most that a search of ten seconds on two cores may lie below.
func TestPublishedStrips(t *testing.T) {
	want := expected(t)
	for _, c := range []struct {
		name       string
		iterations int
	}{{"albano", 600000}, {"dagli", 700000}, {"fu", 300000}, {"jakobs1", 600000}, {"marques", 300000}, {"shapes0", 600000}, {"trousers", 400000}} {
		t.Run(c.name, func(t *testing.T) {
			s, area := readStrip(t, c.name)
			s.Seed, s.Iterations = 1, c.iterations
			l := packed(t, s)
			published.Run(t, published.Check{Room: "nest", Name: "density of strip " + c.name + " after a short search",
				Ours: 100 * area / (s.HeightMM * l.LengthMM), Theirs: want[c.name], Unit: "%", Tol: 4, Source: "gardeyn-2025", Place: "table 2, 20 minutes"})
		})
	}
}
