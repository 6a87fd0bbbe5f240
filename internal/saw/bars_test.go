package saw

import (
	"context"
	"fmt"
	"testing"
)

// checkBars verifies a plan of bars by adding up its lengths.
func checkBars(p BarProblem, plan BarPlan) error {
	placed := make([]int, len(p.Pieces))
	for _, b := range plan.Bars {
		at, last := 0.0, 0.0
		first := b.Cuts
		if in := p.Stock[b.Stock]; in.TrimMM > 0 {
			if len(first) == 0 || first[0].Piece != -1 {
				return fmt.Errorf("%s: the end is not cleaned", b.ID)
			}
			at = first[0].AtMM + p.KerfMM
			if at < in.TrimMM-nearMM {
				return fmt.Errorf("%s: %v of %v trimmed", b.ID, at, in.TrimMM)
			}
			first = first[1:]
		}
		for n, i := range b.Pieces {
			placed[i]++
			last = at + p.Pieces[i].LengthMM
			if n < len(first) && (!near(first[n].AtMM, last) || !near(first[n].StopMM, p.Pieces[i].LengthMM) || first[n].Piece != i) {
				return fmt.Errorf("%s: cut %d at %v, piece ends at %v", b.ID, n+1, first[n].AtMM, last)
			}
			at = last + p.KerfMM
		}
		if limit := b.LengthMM - p.Stock[b.Stock].TrimMM; last > limit+nearMM {
			return fmt.Errorf("%s: the last piece ends at %v of %v", b.ID, last, limit)
		}
		if len(first) < len(b.Pieces)-1 || len(first) < len(b.Pieces) && !near(last, b.LengthMM) {
			return fmt.Errorf("%s: %d cuts for %d pieces", b.ID, len(first), len(b.Pieces))
		}
		if !near(b.RestMM, max(b.LengthMM-at, 0)) {
			return fmt.Errorf("%s: rest %v, bar has %v left", b.ID, b.RestMM, b.LengthMM-at)
		}
	}
	for _, m := range plan.Unplaced {
		placed[m.Piece] += m.Count
	}
	for i, n := range placed {
		if n != p.Pieces[i].Count {
			return fmt.Errorf("piece %d: %d of %d", i, n, p.Pieces[i].Count)
		}
	}
	return nil
}

// TestBarsByHand: four legs of 740 and three rails of 980 with a 3 mm blade.
//
//	6000 - 2 x 10 trim = 5980
//	4 x 740 + 3 x 980  = 5900, six kerfs between seven pieces: 18, in all 5918
//
// so one bar of 6000 does, and 62 mm and the far trim, less the last kerf, are
// left: 6000 - 10 - 5900 - 7 x 3 = 69.
func TestBarsByHand(t *testing.T) {
	p := BarProblem{
		Pieces: []BarPiece{{"leg", 740, 4}, {"rail", 980, 3}},
		Stock: []Bar{{Name: "6 m", LengthMM: 6000, Unlimited: true, Price: 40, TrimMM: 10},
			{Name: "3 m", LengthMM: 3000, Unlimited: true, Price: 21, TrimMM: 10}},
		KerfMM: 3, SmallestOffcutMM: 300,
	}
	got := Bars(context.Background(), p)
	if err := checkBars(p, got); err != nil {
		t.Fatal(err)
	}
	if got.Price != 40 || !got.Proven || len(got.Bars) != 1 || len(got.Bars[0].Cuts) != 8 || !near(got.Bars[0].RestMM, 69) || len(got.Offcuts) != 0 {
		t.Errorf("got %+v", got)
	}
}

// TestBarsUseWhatIsOwned: the rest in the shop is cut before a new bar is bought,
// and the long offcut stays in one piece.
func TestBarsUseWhatIsOwned(t *testing.T) {
	p := BarProblem{
		Pieces: []BarPiece{{"support", 430, 4}},
		Stock:  []Bar{{Name: "new", LengthMM: 6000, Unlimited: true, Price: 40}, {Name: "rest", LengthMM: 900, Count: 2, Owned: true}},
		KerfMM: 2.5, SmallestOffcutMM: 200,
	}
	got := Bars(context.Background(), p)
	if err := checkBars(p, got); err != nil || got.Price != 0 || len(got.Bars) != 2 {
		t.Errorf("price %v from %d bars: %v", got.Price, len(got.Bars), err)
	}
}

// TestBarsWithoutWaste: bars are cut at random into pieces with no rest at all;
// the pieces must be found to fit the same number of bars again.
func TestBarsWithoutWaste(t *testing.T) {
	d, found := dice{9}, 0
	const trials, bars, kerf = 20, 5, 3
	for range trials {
		p := BarProblem{Stock: []Bar{{Name: "bar", LengthMM: 3000, Unlimited: true, Price: 1}}, KerfMM: kerf}
		for range bars {
			rest := 3000
			for range 2 + d.below(3) {
				l := 150 + d.below(900)
				if rest-l-kerf < 150 {
					break
				}
				p.Pieces = append(p.Pieces, BarPiece{Name: "p", LengthMM: float64(l), Count: 1})
				rest -= l + kerf
			}
			p.Pieces = append(p.Pieces, BarPiece{Name: "p", LengthMM: float64(rest), Count: 1})
		}
		plan := Bars(context.Background(), p)
		if err := checkBars(p, plan); err != nil {
			t.Fatal(err)
		}
		if plan.Price > bars+1 || plan.LowerPrice > bars {
			t.Errorf("price %v, bound %v, %d bars do", plan.Price, plan.LowerPrice, bars)
		}
		if plan.Price == bars {
			found++
		}
	}
	if found < trials*3/4 {
		t.Errorf("found the %d bars in %d of %d", bars, found, trials)
	}
	t.Logf("found the %d bars in %d of %d", bars, found, trials)
}
