package heightmap

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// mapOf samples depth over a square of side mm in n x n nodes.
func mapOf(side float64, n int, depth func(x, y float64) float64) Map {
	f, err := grid.New(n, n, side/float64(n-1), side/float64(n-1))
	if err != nil {
		panic(err)
	}
	for r := range n {
		for c := range n {
			p := f.Node(c, r)
			f.Set(c, r, max(0, depth(p.X, p.Y)))
		}
	}
	return Map{Name: "test", Depth: f}
}

// cone is a round pit in the middle of 200 mm, 40 mm deep, 80 mm in radius.
func cone() Map {
	return mapOf(200, 201, func(x, y float64) float64 { return 40 - math.Hypot(x-100, y-100)/2 })
}

func equal(n int, t units.Length) []units.Length {
	out := make([]units.Length, n)
	for i := range out {
		out[i] = t
	}
	return out
}

func ExampleMap_Steps() {
	steps, report, _ := cone().Steps(StepOptions{Thickness: equal(4, 10), Smooth: 3, Speck: 50})
	for _, s := range steps {
		fmt.Printf("%2.0f to %2.0f mm: %.0f mm across\n", float64(s.From), float64(s.To), s.Region.Box().Width())
	}
	fmt.Printf("volume kept within 0.5 %%: %v\n", math.Abs(float64(report.Error)) <= 0.005)
	// Output:
	// 0 to 10 mm: 141 mm across
	// 10 to 20 mm: 101 mm across
	// 20 to 30 mm: 61 mm across
	// 30 to 40 mm: 21 mm across
	// volume kept within 0.5 %: true
}

// wantKept asserts the promises every cutting makes.
func wantKept(t interface {
	Helper()
	Errorf(string, ...any)
}, m Map, steps []Step, r Report) {
	t.Helper()
	var from units.Length
	stack := 0.0
	var above geom.Region
	for i, s := range steps {
		if s.From != from || s.To <= s.From || s.Level <= s.From || s.Level >= s.To {
			t.Errorf("step %d runs %v to %v by the contour of %v", i+1, s.From, s.To, s.Level)
		}
		from = s.To
		stack += s.Region.Area() * float64(s.To-s.From)
		if i > 0 {
			if over := geom.Subtract(s.Region, above).Area(); over > 1e-3*s.Region.Perimeter() {
				t.Errorf("step %d reaches %v mm2 beyond the one above", i+1, over)
			}
		}
		above = s.Region
	}
	if got := r.StackVolume.MM3(); math.Abs(got-stack) > 1e-6*stack {
		t.Errorf("report says %v mm3, the regions hold %v", got, stack)
	}
	if got, want := r.MapVolume.MM3(), m.Depth.Volume(); math.Abs(got-want) > 1e-9*want {
		t.Errorf("report says the map holds %v, it holds %v", got, want)
	}
	if math.Abs(float64(r.Error)) > keepLimit {
		t.Errorf("volume off by %.3f %%", 100*float64(r.Error))
	}
}

func TestConeKeepsItsVolume(t *testing.T) {
	m := cone()
	if want := math.Pi * 80 * 80 * 40 / 3; math.Abs(m.Depth.Volume()/want-1) > 1e-3 {
		t.Fatalf("the map holds %v, a cone %v", m.Depth.Volume(), want)
	}
	for _, n := range []int{1, 2, 3, 5, 8} {
		steps, r, fs := m.Steps(StepOptions{Thickness: equal(n, units.Length(40/float64(n))), Smooth: 3})
		if len(steps) != n {
			t.Errorf("%d steps, want %d: %v", len(steps), n, fs)
		}
		wantKept(t, m, steps, r)
		if codes(fs) != "volume" || fs[0].Severity != finding.Note {
			t.Errorf("%d steps: findings %v", n, fs)
		}
	}
}

func TestUnequalStepsKeepVolume(t *testing.T) {
	m := cone()
	steps, r, _ := m.Steps(StepOptions{Thickness: []units.Length{4, 9, 13, 14}, Smooth: 2})
	if len(steps) != 4 {
		t.Fatalf("%d steps", len(steps))
	}
	wantKept(t, m, steps, r)
}

func TestSteppedMapKeepsItsOwnSteps(t *testing.T) {
	// Two square terraces, whose contours at any level within a step are alike but
	// for the slope between two nodes.
	m := mapOf(200, 401, func(x, y float64) float64 {
		d := max(math.Abs(x-100), math.Abs(y-100))
		switch {
		case d < 40:
			return 30
		case d < 80:
			return 10
		}
		return 0
	})
	steps, r, _ := m.Steps(StepOptions{Thickness: []units.Length{10, 20}})
	if len(steps) != 2 {
		t.Fatalf("%d steps", len(steps))
	}
	wantKept(t, m, steps, r)
	for i, want := range []float64{160, 80} {
		if got := steps[i].Region.Box().Width(); math.Abs(got-want) > 1.5*m.Depth.DX {
			t.Errorf("step %d is %v mm wide, want %v", i+1, got, want)
		}
	}
}

func TestMouthKeepsItsCorners(t *testing.T) {
	// A straight channel out through the right side: a rectangle at every depth.
	m := mapOf(200, 201, func(x, y float64) float64 {
		if x < 49.5 {
			return 0
		}
		return 30 - max(0, math.Abs(y-100)-40)*3
	})
	steps, r, _ := m.Steps(StepOptions{Thickness: equal(2, 15), Smooth: 10})
	if len(steps) != 2 {
		t.Fatalf("%d steps", len(steps))
	}
	wantKept(t, m, steps, r)
	for i, s := range steps {
		if got := s.Region.Box().Max.X; got != 200 {
			t.Errorf("step %d ends at x %v, want the side at 200", i+1, got)
		}
		box := s.Region.Box()
		for _, y := range []float64{box.Min.Y, box.Max.Y} {
			inward := math.Copysign(0.3, 100-y)
			if !s.Region.Contains(geom.Point{X: 199.8, Y: y + inward}) {
				t.Errorf("step %d has lost its corner at y %.1f", i+1, y)
			}
			if s.Region.Contains(geom.Point{X: 50.5, Y: y + inward}) {
				t.Errorf("step %d keeps a corner at y %.1f that the cutter cannot leave", i+1, y)
			}
		}
	}
}

func TestRoundedOutlinesTakeTheCutter(t *testing.T) {
	// A star, whose points and notches are sharper than the cutter.
	m := mapOf(200, 301, func(x, y float64) float64 {
		return 20 + 15*math.Cos(9*math.Atan2(y-100, x-100)) - math.Hypot(x-100, y-100)/3
	})
	const radius = 4
	steps, r, _ := m.Steps(StepOptions{Thickness: equal(2, 12), Smooth: radius, Speck: 20})
	wantKept(t, m, steps, r)
	for i, s := range steps {
		opened := geom.Offset(geom.Offset(s.Region, -radius, 0.02), radius, 0.02)
		closed := geom.Offset(geom.Offset(s.Region, radius, 0.02), -radius, 0.02)
		for name, other := range map[string]geom.Region{"outer": opened, "inner": closed} {
			// A layer of the tolerance along the outline is allowed.
			if off := geom.Xor(s.Region, other).Area(); off > 0.1*s.Region.Perimeter() {
				t.Errorf("step %d: %s corners sharper than the cutter hold %.1f mm2", i+1, name, off)
			}
		}
	}
}

func TestSpecksAndIslandsAreDropped(t *testing.T) {
	pit := func(x, y, cx, cy, radius float64) float64 {
		if math.Hypot(x-cx, y-cy) < radius {
			return 1
		}
		return 0
	}
	m := mapOf(200, 401, func(x, y float64) float64 {
		return 10 * (pit(x, y, 80, 100, 60) - pit(x, y, 80, 100, 3) - pit(x, y, 90, 130, 12) + pit(x, y, 180, 180, 3))
	})
	steps, r, fs := m.Steps(StepOptions{Thickness: equal(1, 10), Smooth: 1, Speck: 100})
	if len(steps) != 1 || len(steps[0].Region) != 1 || len(steps[0].Region[0].Holes) != 1 {
		t.Fatalf("steps %v", steps)
	}
	if r.Specks != 1 || r.Islands != 1 || math.Abs(float64(r.Dropped)-2*math.Pi*9) > 6 {
		t.Errorf("report %+v", r)
	}
	if !strings.Contains(codes(fs), "speck") {
		t.Errorf("findings %v", fs)
	}
}

func TestStepFindings(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		name  string
		m     Map
		opt   StepOptions
		steps int
		codes string
		worst finding.Severity
	}{
		{"steps that end above the bottom", cone(), StepOptions{Thickness: equal(2, 10)}, 2, "too-deep volume", finding.Caution},
		{"steps below the bottom", cone(), StepOptions{Thickness: equal(5, 12)}, 3, "empty-step volume", finding.Caution},
		{"no steps", cone(), StepOptions{}, 0, "step", finding.Stop},
		{"a step of no thickness", cone(), StepOptions{Thickness: []units.Length{10, 0}}, 0, "step", finding.Stop},
		{"a step that is no number", cone(), StepOptions{Thickness: []units.Length{nan}}, 0, "step", finding.Stop},
		{"a negative cutter", cone(), StepOptions{Thickness: equal(4, 10), Smooth: -1}, 0, "step", finding.Stop},
		{"a map of nothing", mapOf(100, 11, func(x, y float64) float64 { return 0 }), StepOptions{Thickness: equal(2, 10)}, 0, "empty-step flat", finding.Stop},
	} {
		steps, r, fs := c.m.Steps(c.opt)
		if len(steps) != c.steps || codes(fs) != c.codes {
			t.Errorf("%s: %d steps, findings %q; want %d, %q: %v", c.name, len(steps), codes(fs), c.steps, c.codes, fs)
		}
		if worst, _ := finding.Worst(fs); worst != c.worst {
			t.Errorf("%s: worst %v, want %v", c.name, worst, c.worst)
		}
		if v := float64(r.Error); v != v || steps == nil {
			t.Errorf("%s: report %+v, steps %v", c.name, r, steps)
		}
	}
}

func TestCraterKeepsItsVolume(t *testing.T) {
	data, err := os.ReadFile("../../../examples/crater-table/crater.txt")
	if err != nil {
		t.Fatal(err)
	}
	m, _, err := Read("crater.txt", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	opt := StepOptions{Thickness: equal(4, 12), Smooth: 3.175, Speck: 400}
	steps, r, fs := m.Steps(opt)
	if len(steps) != 4 {
		t.Fatalf("%d steps: %v", len(steps), fs)
	}
	wantKept(t, m, steps, r)
	if holes := len(steps[2].Region[0].Holes); holes != 1 {
		t.Errorf("the rise is %d islands in step 3, want 1", holes)
	}
	again, _, _ := m.Steps(opt)
	if !reflect.DeepEqual(steps, again) {
		t.Error("two runs differ")
	}
}

func TestStepLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		type hill struct{ x, y, deep, wide float64 }
		var hills []hill
		for range rapid.IntRange(1, 4).Draw(t, "hills") {
			hills = append(hills, hill{rapid.Float64Range(20, 180).Draw(t, "x"), rapid.Float64Range(20, 180).Draw(t, "y"),
				rapid.Float64Range(10, 40).Draw(t, "deep"), rapid.Float64Range(30, 90).Draw(t, "wide")})
		}
		m := mapOf(200, 81, func(x, y float64) float64 {
			d := 0.0
			for _, h := range hills {
				d = max(d, h.deep*(1-math.Hypot(x-h.x, y-h.y)/h.wide))
			}
			return d
		})
		_, deepest := m.Depth.Range()
		n := rapid.IntRange(2, 5).Draw(t, "steps")
		steps, r, _ := m.Steps(StepOptions{Thickness: equal(n, units.Length(deepest/float64(n))), Smooth: 2})
		wantKept(t, m, steps, r)
	})
}

// terrain is a 16 bit picture of n x n pixels with hills of several sizes.
func terrain(b *testing.B, n int) []byte {
	b.Helper()
	img := image.NewGray16(image.Rect(0, 0, n, n))
	for y := range n {
		for x := range n {
			u, v := float64(x)/float64(n), float64(y)/float64(n)
			d := 0.5 - 1.6*math.Hypot(u-0.5, v-0.5)*math.Hypot(u-0.5, v-0.5) + 0.2*math.Sin(9*u+2)*math.Cos(7*v) + 0.05*math.Sin(40*u)*math.Sin(37*v+u)
			img.SetGray16(x, y, color.Gray16{Y: uint16(65535 * (1 - min(1, max(0, d))))})
		}
	}
	return encode(b, img)
}

// BenchmarkPicture2000 reads a 2000 x 2000 picture and cuts it into four steps.
func BenchmarkPicture2000(b *testing.B) {
	data := terrain(b, 2000)
	b.ReportAllocs()
	for b.Loop() {
		m, _, err := Read("terrain.png", data, Options{Length: 1000, Depth: 48})
		if err != nil {
			b.Fatal(err)
		}
		steps, r, _ := m.Steps(StepOptions{Thickness: equal(4, 12), Smooth: 3.175, Speck: 400})
		if len(steps) == 0 || math.Abs(float64(r.Error)) > keepLimit {
			b.Fatalf("%d steps, %+v", len(steps), r)
		}
	}
}

func BenchmarkText2000(b *testing.B) {
	var text strings.Builder
	text.WriteString("cell: 0.5\n")
	for r := range 2000 {
		for c := range 2000 {
			fmt.Fprintf(&text, "%.2f ", 20+20*math.Sin(float64(r)/100)*math.Cos(float64(c)/130))
		}
		text.WriteByte('\n')
	}
	data := []byte(text.String())
	for b.Loop() {
		if _, _, err := Read("m.txt", data, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
