package concrete

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

// shop computes the box in a shop of t C.
func shop(t units.Temperature) Result {
	in := box()
	in.Temperature = t
	r, _ := Compute(in)
	return r
}

func window(t *testing.T, r Result, name string) Window {
	t.Helper()
	for _, w := range r.Windows {
		if w.Name == name {
			return w
		}
	}
	t.Fatalf("no window %q in %+v", name, r.Windows)
	return Window{}
}

// TestPublishedWindowsMove holds the windows of a cold, a usual and a hot shop against
// the table of factors: 18 h at 20 C are 32.9 h at 10 C and 10.3 h at 30 C.
func TestPublishedWindowsMove(t *testing.T) {
	for _, c := range []struct {
		temp          units.Temperature
		hours, factor float64
	}{{10, 32.9, 0.5475}, {12, 29.0, 0}, {15, 24.2, 0.7438}, {25, 13.5, 1.3311}, {30, 10.3, 1.7553}} {
		r := shop(c.temp)
		published.Run(t, published.Check{Room: "concrete", Name: "18 h at 20 C, earliest demoulding by Arrhenius", Ours: float64(window(t, r, "demould").Arrhenius.From), Theirs: c.hours, Unit: "h", Tol: 0.05, Source: "astm-c1074", Place: "equation 2, Q 5000 K; calculated independently"})
		if c.factor > 0 {
			edges := window(t, r, "edges").Arrhenius
			published.Run(t, published.Check{Room: "concrete", Name: "factor of edge levelling", Ours: 6 / float64(edges.From), Theirs: c.factor, Unit: "1", Tol: 0.00005, Source: "astm-c1074", Place: "equation 2, Q 5000 K; calculated independently"})
		}
		w := window(t, r, "edges")
		if nurse := 6 * 30 / float64(c.temp+10); math.Abs(float64(w.NurseSaul.From)-nurse) > 1e-6 {
			t.Errorf("%v C: Nurse-Saul %v h, want %v", c.temp, w.NurseSaul.From, nurse)
		}
	}
	cold, usual, hot := shop(10), shop(20), shop(30)
	for _, name := range []string{"working life", "next coat", "edges", "cover", "demould"} {
		a, b, c := window(t, cold, name).Planned, window(t, usual, name).Planned, window(t, hot, name).Planned
		if !(a.From >= b.From && b.From >= c.From && a.Until >= b.Until && b.Until >= c.Until) || a == b || b == c {
			t.Errorf("%s does not shorten with warmth: %+v, %+v, %+v", name, a, b, c)
		}
	}
	for _, w := range []Window{window(t, cold, "demould"), window(t, hot, "demould")} {
		if !w.Differ || w.Planned.From < w.Arrhenius.From || w.Planned.From < w.NurseSaul.From {
			t.Errorf("the later model is not planned, or they are not said to differ: %+v", w)
		}
	}
}

// TestPublishedStrength holds both curves against their values at every age listed.
func TestPublishedStrength(t *testing.T) {
	days := []float64{0.5, 1, 3, 7, 14, 28}
	for _, c := range []struct {
		name, source string
		f            func(float64) float64
		want         []float64
	}{
		{"type I, moist", "aci-209", gains["N"].aci, []float64{.113, .206, .458, .704, .881, 1.007}},
		{"type III, moist", "aci-209", gains["R"].aci, []float64{.181, .311, .593, .801, .922, .998}},
		{"class R", "en-1992", gains["R"].en, []float64{.273, .424, .663, .819, .920, 1}},
		{"class N", "en-1992", gains["N"].en, []float64{.198, .342, .598, .779, .902, 1}},
	} {
		for i, d := range days {
			published.Run(t, published.Check{Room: "concrete", Name: "share of the strength at 28 days, " + c.name, Ours: c.f(d), Theirs: c.want[i], Unit: "1", Tol: 0.0005, Source: c.source, Place: "table by age, calculated independently"})
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		g := gains[rapid.SampledFrom([]string{"R", "N", "S"}).Draw(t, "class")]
		f := rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		if a, b := g.aci(g.aciAge(f)), g.en(g.enAge(f)); math.Abs(a-f) > 1e-9 || math.Abs(b-f) > 1e-9 {
			t.Errorf("share %v: by ACI %v, by EN %v", f, a, b)
		}
	})
}

func TestPublishedEvaporation(t *testing.T) {
	check := func(name string, ours, theirs, tol float64, place string) published.Check {
		return published.Check{Room: "concrete", Name: name, Ours: ours, Theirs: theirs, Unit: "kg/m2h", Tol: tol, Source: "uno-1998", Place: place}
	}
	published.Run(t,
		check("evaporation, air 27 C, 50 %, concrete 31 C, 19 km/h", Evaporation(31, 27, 0.5, 19), 1.152, 0.0005, "formula, calculated independently"),
		check("the same, read from the nomograph", Evaporation(31, 27, 0.5, 19), 1.2, 0.06*1.2, "nomograph, 6 %"),
		check("shop, still air", Evaporation(25, 21, 0.5, 0), 0.1475, 0.00005, "formula, calculated independently"),
		check("shop, 2 km/h", Evaporation(25, 21, 0.5, 2), 0.2213, 0.00005, "formula, calculated independently"),
	)
}

// TestPublishedDewPoint checks against the saturation of moist air: at 100 % the dew
// point is the air's temperature, and 20 C at 50 % is 9.3 C in every table.
func TestPublishedDewPoint(t *testing.T) {
	published.Run(t,
		published.Check{Room: "concrete", Name: "dew point, 20 C and 50 %", Ours: float64(DewPoint(20, 0.5)), Theirs: 9.3, Unit: "C", Tol: 0.05, Source: "memory", Place: "psychrometric tables, from memory"},
		published.Check{Room: "concrete", Name: "dew point at saturation", Ours: float64(DewPoint(23, 1)), Theirs: 23, Unit: "C", Tol: 1e-9, Source: "analytic", Place: "definition"},
	)
}

func TestHistories(t *testing.T) {
	one := func(units.Temperature) float64 { return 1 }
	day := DayAndNight(22, 10, 10)
	if w := day.wait(3, 30, one); math.Abs(float64(w-30)) > 1e-9 {
		t.Errorf("30 h take %v h", w)
	}
	if m := day.mean(0, 24); math.Abs(float64(m)-(22*10+10*14)/24.0) > 1e-9 {
		t.Errorf("mean of a day %v", m)
	}
	if m := day.mean(9, 23); m != 10 {
		t.Errorf("the night is at %v", m)
	}
	held := Climate{Stretches: []Stretch{{2, 30}, {3, 20}}}
	if m := held.mean(5, 500); m != 20 {
		t.Errorf("after its end the history holds %v", m)
	}
	frost := Climate{Stretches: []Stretch{{24, -20}}}
	if w := frost.wait(0, 1, models{}.orArrhenius()); w != longestWait {
		t.Errorf("in frost an hour takes %v", w)
	}
	rapid.Check(t, func(t *rapid.T) {
		var c Climate
		for range rapid.IntRange(1, 6).Draw(t, "n") {
			c.Stretches = append(c.Stretches, Stretch{units.Duration(rapid.Float64Range(0.1, 20).Draw(t, "h")), units.Temperature(rapid.Float64Range(5, 35).Draw(t, "c"))})
		}
		c.Repeats = rapid.Bool().Draw(t, "repeats")
		from, need := units.Duration(rapid.Float64Range(0, 60).Draw(t, "from")), units.Duration(rapid.Float64Range(0.01, 40).Draw(t, "need"))
		rate := models{}.orArrhenius()
		w := c.wait(from, need, rate)
		if got := c.gathered(from, from+w, rate); math.Abs(float64(got-need)) > 1e-6*float64(need)+1e-9 {
			t.Errorf("waited %v h for %v and gathered %v", w, need, got)
		}
	})
}

func (models) orArrhenius() func(units.Temperature) float64 {
	return func(t units.Temperature) float64 { return AgeFactor(t, refTemp, Activation) }
}

// TestNightMoves holds a cool night against a warm shop: the form comes off later.
func TestNightMoves(t *testing.T) {
	warm, night := shop(20), Result{}
	in := box()
	in.Temperature, in.Climate = 20, DayAndNight(20, 8, 10)
	night, _ = Compute(in)
	a, b := window(t, warm, "demould"), window(t, night, "demould")
	if !(b.Planned.From > a.Planned.From*1.2) || b.Planned.From > window(t, shop(8), "demould").Planned.From {
		t.Errorf("20 C: %v, 20 by day and 8 by night: %v", a.Planned, b.Planned)
	}
}

// TestCalibration: tests at half the card's strength double the share that is needed.
func TestCalibration(t *testing.T) {
	in := box()
	plain, _ := Compute(in)
	g := gains["N"]
	for _, days := range []float64{1, 2, 7} {
		in.Records = append(in.Records, Record{units.Duration(24 * days), 20, 0.5 * usual28 * (g.aci(days) + g.en(days)) / 2})
	}
	half, _ := Compute(in)
	if f := half.Strength[0].Factor; math.Abs(f-0.5) > 1e-9 {
		t.Errorf("calibration %v, want 0.5", f)
	}
	if half.Strength[0].Planned <= plain.Strength[0].Planned || half.Strength[0].Basis == plain.Strength[0].Basis {
		t.Errorf("%+v, uncalibrated %+v", half.Strength[0], plain.Strength[0])
	}
	if want := g.aciAge(needDemould/(0.5*usual28)) * 24; math.Abs(float64(half.Strength[0].ACI)-want) > 1e-6 {
		t.Errorf("by ACI %v h, want %v", half.Strength[0].ACI, want)
	}
}
