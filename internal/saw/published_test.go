package saw

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"pourwright/internal/published"
)

type rectInstance struct {
	Name     string
	L, W     int64
	Pieces   [][]int64
	Oriented int64 `json:"optimum_oriented"`
	Rotated  int64 `json:"optimum_rotated"`
}

func rectInstances(t *testing.T, file string) []rectInstance {
	t.Helper()
	raw, err := os.ReadFile(published.Data(t, "rect", file))
	if err != nil {
		t.Fatal(err)
	}
	var d struct{ Instances []rectInstance }
	if err := json.Unmarshal(raw, &d); err != nil {
		t.Fatal(err)
	}
	return d.Instances
}

func (in *rectInstance) goods(turns bool) []Good {
	var out []Good
	for _, p := range in.Pieces {
		g := Good{W: p[0], H: p[1], Value: p[len(p)-1], Turns: turns}
		if len(p) == 4 {
			g.Count = int(p[2])
		}
		out = append(out, g)
	}
	return out
}

// checkHaul runs one instance, verifies its tree and returns the check.
func checkHaul(t *testing.T, in *rectInstance, turns, unlimited bool, want int64) published.Check {
	t.Helper()
	goods := in.goods(turns)
	h, err := Knapsack(context.Background(), goods, in.L, in.W, unlimited)
	if err != nil {
		t.Fatal(err)
	}
	count, value, err := checkSlices(goods, in.L, in.W, h.Tree)
	if err != nil || value != h.Value || !h.Proven {
		t.Errorf("%s: tree of value %d for %d, proven %v: %v", in.Name, value, h.Value, h.Proven, err)
	}
	for k, n := range count {
		if !unlimited && n > goods[k].Count {
			t.Errorf("%s: piece %d used %d times of %d", in.Name, k, n, goods[k].Count)
		}
	}
	name := in.Name + " fixed"
	if turns {
		name = in.Name + " turning"
	}
	return published.Check{Room: "saw", Name: "most value, " + name, Ours: float64(h.Value), Theirs: float64(want), Unit: "value", Source: "esicup-rect", Place: in.Name}
}

// checkSlices verifies a tree of whole cuts and returns what it holds.
func checkSlices(goods []Good, w, h int64, tree *Slice) (count []int, value int64, err error) {
	if tree == nil || tree.X != 0 || tree.Y != 0 || tree.W != w || tree.H != h {
		return nil, 0, fmt.Errorf("the tree is not the rectangle")
	}
	count = make([]int, len(goods))
	var visit func(s *Slice) error
	visit = func(s *Slice) error {
		a, b := Slice{X: s.X, Y: s.Y, W: s.At, H: s.H}, Slice{X: s.X + s.At, Y: s.Y, W: s.W - s.At, H: s.H}
		switch {
		case s.Cut == "y":
			a, b = Slice{X: s.X, Y: s.Y, W: s.W, H: s.At}, Slice{X: s.X, Y: s.Y + s.At, W: s.W, H: s.H - s.At}
		case s.Cut == "" && s.Good < 0:
			return nil
		case s.Cut == "":
			g := goods[s.Good]
			count[s.Good]++
			value += g.Value
			if s.Turned {
				g.W, g.H = g.H, g.W
			}
			if s.W != g.W || s.H != g.H || s.Turned && !g.Turns {
				return fmt.Errorf("piece %d is %d x %d, turned %v", s.Good, s.W, s.H, s.Turned)
			}
			return nil
		}
		for _, half := range []struct{ got, want *Slice }{{s.A, &a}, {s.B, &b}} {
			g, w := half.got, half.want
			if g == nil || g.X != w.X || g.Y != w.Y || g.W != w.W || g.H != w.H || g.W <= 0 || g.H <= 0 {
				return fmt.Errorf("a half of a cut is not where the cut leaves it: %+v", w)
			}
			if err := visit(g); err != nil {
				return err
			}
		}
		return nil
	}
	return count, value, visit(tree)
}

// TestPublishedUnlimited holds the exact values of gcut1 to 7 against theirs.
func TestPublishedUnlimited(t *testing.T) {
	for _, in := range rectInstances(t, "gcut.json") {
		published.Run(t, checkHaul(t, &in, false, true, in.Oriented), checkHaul(t, &in, true, true, in.Rotated))
	}
}

// TestPublishedLimited holds the exact values with limited copies against theirs.
func TestPublishedLimited(t *testing.T) {
	for _, in := range rectInstances(t, "cgcut.json") {
		published.Run(t, checkHaul(t, &in, false, false, in.Oriented))
	}
}
