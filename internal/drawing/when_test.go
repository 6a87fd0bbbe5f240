package drawing

import (
	"math"
	"testing"

	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

func TestLater(t *testing.T) {
	for _, c := range []struct {
		start string
		after float64
		want  string
	}{
		{"Tue 2027-03-16 13:00", 0, "Tue 16 Mar 13:00"},
		{"Tue 2027-03-16 13:00", 29.5, "Wed 17 Mar 18:30"},
		{"Fri 2027-12-31 23:30", 1, "Sat 1 Jan 00:30"},
		{"Mon 2028-02-28 08:00", 24, "Tue 29 Feb 08:00"},
		{"day 17 13:00", 29.5, "day 18 18:30"},
		{"", 1, ""}, {"soon", 1, ""}, {"day 3", 1, ""},
		{"day 1 08:00", math.NaN(), ""}, {"day 1 08:00", math.Inf(1), ""},
	} {
		if got := Later(c.start, units.Duration(c.after)); got != c.want {
			t.Errorf("%g h after %q: %q, want %q", c.after, c.start, got, c.want)
		}
	}
}

func TestForecast(t *testing.T) {
	for in, want := range map[units.Duration]float64{0.15: 1.0 / 6, 2.44: 2.5, 8.847: 9, 29.49: 29, 0: 0} {
		if got := Forecast(in); math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%g h: %g, want %g", in, got, want)
		}
	}
}

func TestLateness(t *testing.T) {
	p := &plan.Plan{}
	p.Resin.Cure.Computed = true
	p.Resin.Lifts = []resin.Lift{{Number: 1}, {Number: 2, At: 30}}
	p.Calendar.Steps = []calendar.Step{{ID: "lift-1", Start: "day 2 13:00", StartH: 37}, {ID: "lift-2", Start: "day 4 08:00", StartH: 80}}
	if got := Lateness(p, 2); got != 13 {
		t.Errorf("lift 2 is %g h late, want 13", got)
	}
	p.Calendar.Steps[1].Start = "" // could not be placed
	for _, n := range []int{0, 1, 2, 3} {
		if got := Lateness(p, n); got != 0 {
			t.Errorf("lift %d is %g h late, want 0", n, got)
		}
	}
}
