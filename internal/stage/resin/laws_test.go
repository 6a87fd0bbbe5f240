package resin

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/units"
)

func drawn(t *rapid.T) Input {
	in := basin()
	d, v := units.Length(0), units.Volume(0)
	for range rapid.IntRange(1, 6).Draw(t, "n") {
		d += units.Length(rapid.Float64Range(1, 60).Draw(t, "d"))
		v += units.Volume(rapid.Float64Range(0.01, 5).Draw(t, "v"))
		in.Fill = append(in.Fill, FillPoint{d, v})
	}
	in.Bucket = units.Volume(rapid.Float64Range(2, 30).Draw(t, "bucket"))
	in.Gap = units.Length(rapid.Float64Range(0, 3).Draw(t, "gap"))
	return in
}

func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		r, found := Compute(in)
		top := in.Fill[len(in.Fill)-1]
		var volume, pour units.Volume
		var depth units.Length
		for i, l := range r.Lifts {
			volume += l.Volume
			pour += l.Pour
			depth += l.Depth
			if i > 0 && l.From != r.Lifts[i-1].To {
				t.Errorf("lift %d starts at %v, the one before ends at %v", l.Number, l.From, r.Lifts[i-1].To)
			}
			weighed(t, in, l)
		}
		near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(b)) }
		if !near(float64(volume), float64(top.Volume)) || !near(float64(depth), float64(top.Depth)) || r.Volume != top.Volume {
			t.Errorf("lifts add up to %v l and %v mm of %v", volume, depth, top)
		}
		if !near(float64(pour)*1.05, float64(r.Order)) || r.Order < r.Volume {
			t.Errorf("pours add up to %v l, the order is %v l", pour, r.Order)
		}
		within(t, in, r, codesOf(found))
	})
}

// weighed holds A and B against what is poured, and buckets against their lift.
func weighed(t *rapid.T, in Input, l Lift) {
	if math.Abs(float64(l.A+l.B-units.Density(1100).Of(l.Pour))) > 1e-9 || math.Abs(float64(l.B/l.A)-0.5*0.99/1.13) > 1e-9 {
		t.Errorf("A %v and B %v do not weigh %v l", l.A, l.B, l.Pour)
	}
	var a, b units.Mass
	for _, k := range l.Batches {
		a, b = a+k.A, b+k.B
		if k.Volume > in.Bucket*0.6*1.000001 || k.ScaleA != k.A || k.ScaleAB != k.A+k.B {
			t.Errorf("bucket %+v of %v l", k, in.Bucket)
		}
	}
	if len(l.Batches) > 0 && math.Abs(float64(a+b-l.Mass)) > 1e-9 {
		t.Errorf("buckets weigh %v + %v kg of %v", a, b, l.Mass)
	}
}

// within holds lifts against the card's range and the guard over terraces, where no
// finding says that they could not be held to.
func within(t *rapid.T, in Input, r Result, codes string) {
	if strings.Contains(codes, "resin/ends-over-terrace") {
		return
	}
	for i, l := range r.Lifts {
		for _, f := range in.Fill[1 : len(in.Fill)-1] {
			kink := math.Abs(float64(l.To-f.Depth)) > 1e-6
			if over := l.To - f.Depth; kink && over > 0 && over <= in.Gap && i < len(r.Lifts)-1 && grows(in, f) {
				t.Errorf("lift %d ends %v mm above a terrace, guard %v", l.Number, over, in.Gap)
			}
		}
		if l.Depth > 50+1e-6 {
			t.Errorf("lift of %v mm above 50", l.Depth)
		}
		if l.Depth < 10-1e-6 && !strings.Contains(codes, "resin/no-split") && !strings.Contains(codes, "resin/too-shallow") {
			t.Errorf("lift of %v mm under 10 without a word", l.Depth)
		}
	}
}

// grows reports whether the surface grows at point f of the curve.
func grows(in Input, f FillPoint) bool {
	for i := 1; i+1 < len(in.Fill); i++ {
		if in.Fill[i] == f {
			a, b := in.Fill[i-1], in.Fill[i+1]
			below, above := float64(f.Volume-a.Volume)/float64(f.Depth-a.Depth), float64(b.Volume-f.Volume)/float64(b.Depth-f.Depth)
			return above > below*1.00001
		}
	}
	return false
}

// bySearch finds the least sum of squared depths of n lifts by trying all ends.
func bySearch(ends []float64, lim limits, from, n int) float64 {
	last := len(ends) - 1
	best := math.Inf(1)
	for i := from + 1; i <= last; i++ {
		d := ends[i] - ends[from]
		if d < lim.lo-1e-9 || d > lim.hi+1e-9 {
			continue
		}
		switch {
		case n == 1 && i == last:
			best = math.Min(best, d*d)
		case n > 1:
			best = math.Min(best, d*d+bySearch(ends, lim, i, n-1))
		}
	}
	return best
}

// TestSplitAgainstSearch: the dynamic program finds what trying everything finds.
func TestSplitAgainstSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ends := []float64{0}
		for range rapid.IntRange(1, 12).Draw(t, "ends") {
			ends = append(ends, ends[len(ends)-1]+rapid.Float64Range(0.5, 9).Draw(t, "gap"))
		}
		lo := rapid.Float64Range(0, 10).Draw(t, "lo")
		lim, n := limits{lo, lo + rapid.Float64Range(0, 30).Draw(t, "range")}, rapid.IntRange(1, 4).Draw(t, "n")
		want, got := bySearch(ends, lim, 0, n), split(ends, lim, n)
		if math.IsInf(want, 1) != (got == nil) {
			t.Fatalf("split %v, search %v", got, want)
		}
		cost := 0.0
		for i := 1; i < len(got); i++ {
			cost += (got[i] - got[i-1]) * (got[i] - got[i-1])
		}
		if got != nil && math.Abs(cost-want) > 1e-6 {
			t.Errorf("split costs %v, the best is %v", cost, want)
		}
	})
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	nan := math.NaN()
	odd := basin(FillPoint{30, 2})
	odd.TopArea, odd.Wetted, odd.Bucket, odd.Freeboard = units.Area(nan), -4, units.Volume(nan), units.Fraction(nan)
	odd.Reserve, odd.Overfill, odd.Film, odd.Gap, odd.Room = units.Fraction(nan), units.Length(nan), units.Length(math.Inf(1)), units.Length(nan), units.Temperature(nan)
	odd.Card.Shrinkage.Value, odd.Card.Gel.Value, odd.Card.Hard.Value = units.Fraction(nan), units.Duration(nan), units.Duration(math.Inf(1))
	odd.Card.MinDepth.Value, odd.Card.RatioA.Value, odd.Card.Density.Value = units.Length(nan), nan, units.Density(nan)
	for i, in := range []Input{{}, basin(FillPoint{units.Length(nan), 1}), basin(FillPoint{10, 2}, FillPoint{9, 3}, FillPoint{20, 1}),
		{Fill: []FillPoint{{}, {10, 1}}}, {Fill: []FillPoint{{}, {1e9, 1}}, Card: card(1, 2)}, {Fill: []FillPoint{{}, {1e9, 1}}, Card: card(1, 1e8)}, odd} {
		r, found := Compute(in)
		if len(found) == 0 {
			t.Errorf("input %d: nothing is found", i)
		}
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("input %d: %v", i, err)
		}
	}
}
