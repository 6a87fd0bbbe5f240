package resin

import (
	"context"
	"errors"
	"math"
	"testing"

	"pourwright/internal/units"
)

// kettle is a forecaster of plain rules: a lift of d mm peaks at 20 + d C, 6 h after its
// pour; one poured within a day of the last one adds half of what that was over 20. It
// gels after 12 h and bonds for bonds hours.
type kettle struct{ bonds units.Duration }

func (k kettle) forecast(_ context.Context, pours []Pour) (Forecast, error) {
	f := Forecast{End: pours[len(pours)-1].At + runOn}
	for i, p := range pours {
		peak := 20 + units.Temperature(p.To-p.From)
		if i > 0 && p.At-pours[i-1].At < 24 {
			peak += (f.Lifts[i-1].Peak - 20) / 2
		}
		f.Lifts = append(f.Lifts, LiftForecast{Peak: peak, PeakAt: p.At + 6, Gels: p.At + 12, Bonds: p.At + k.bonds, Tacky: p.At + 30})
		if peak > f.Peak {
			f.Peak, f.PeakAt, f.PeakIn = peak, p.At+6, i+1
		}
		f.HardAll = p.At + 48
	}
	return f, nil
}

// extremes: one case in ten is 3 K warmer.
func (k kettle) extremes(_ context.Context, _ []Pour, plan Forecast) (low, high Forecast, bracket units.Temperature, err error) {
	low, high = plan, plan
	low.Peak, high.Peak = plan.Peak-3, plan.Peak+3
	return low, high, plan.Peak + 10, nil
}

func office() Week {
	var w Week
	for d := range 5 {
		w[d] = []Span{{8, 17}}
	}
	return w
}

func TestWeekOpens(t *testing.T) {
	w := office()
	first := w.begin()
	if first != 9 {
		t.Fatalf("the week begins at %g", first)
	}
	for _, c := range []struct{ t, want units.Duration }{
		{0, 0},            // Monday 9:00
		{7, 7},            // 16:00, the last hour to begin
		{7.5, 23},         // 16:30 waits for Tuesday 8:00
		{15, 23},          // midnight
		{96, 96},          // Friday 9:00
		{103.5, 7*24 - 1}, // Friday 16:30 waits for Monday 8:00
	} {
		if got := w.open(c.t, first); math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("open(%g) = %g, want %g", c.t, got, c.want)
		}
	}
	if got := (Week{}).open(7.5, 9); got != 7.5 {
		t.Errorf("a shop without hours: %g", got)
	}
}

func TestPlannerKeepsWithinTheGuard(t *testing.T) {
	ways := [][]float64{{0, 60}, {0, 30, 60}, {0, 20, 40, 60}, {0, 15, 30, 45, 60}}
	p := &planner{in: kettle{bonds: 40}, guard: Guard{Peak: 55, Dam: 70, Foam: 70}, week: office()}
	got, err := p.search(context.Background(), ways)
	if err != nil || len(got) < 2 {
		t.Fatalf("%v, %d schemes", err, len(got))
	}
	best := got[0]
	// Two lifts of 30 mm bond at 31 h at the latest, cold by then: done before three are.
	if !best.Within || len(best.Pours) != 2 || best.Pours[1].At < 24 || best.Pours[1].At > 40 || len(best.Scuff) != 0 {
		t.Errorf("best: %+v", best)
	}
	for _, s := range got {
		if s.Within != p.guard.holds(s.Forecast) {
			t.Errorf("%+v says within %v", s.Forecast, s.Within)
		}
		if len(s.Pours) == 1 && s.Within {
			t.Error("one lift of 60 mm reaches 80 C and is taken")
		}
	}
}

func TestPlannerScuffsWhereTheBondIsMissed(t *testing.T) {
	// Gelled at 12 h, 21:00, and no longer bonding at 18 h, 3:00: nobody is there.
	p := &planner{in: kettle{bonds: 18}, guard: Guard{Peak: 60, Dam: 70, Foam: 70}, week: office()}
	got, err := p.search(context.Background(), [][]float64{{0, 30, 60}})
	if err != nil || len(got[0].Scuff) != 1 || got[0].Scuff[0] != 1 {
		t.Fatalf("%v %+v", err, got)
	}
	if at := got[0].Pours[1].At; at < 30 {
		t.Errorf("scuffed at %g h, while tacky", at)
	}
}

type broken struct{}

func (broken) forecast(context.Context, []Pour) (Forecast, error) {
	return Forecast{}, errors.New("does not converge")
}

func (broken) extremes(context.Context, []Pour, Forecast) (low, high Forecast, bracket units.Temperature, err error) {
	return low, high, 0, errors.New("does not converge")
}

func TestPlannerTellsOfFailure(t *testing.T) {
	p := &planner{in: broken{}, guard: Guard{Peak: 60}, week: office()}
	if _, err := p.search(context.Background(), [][]float64{{0, 30}}); err == nil {
		t.Error("a failed simulation is not told")
	}
}
