package resin

import (
	"context"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/units"
	"pourwright/internal/view"
)

// stove is an oven of the kettle's plain rules: the dam's face stays 15 K and foam 10 K
// under the peak, and a room one degree warmer makes everything a degree warmer.
type stove struct{ kettle }

func (s stove) touched(f Forecast) Forecast {
	f.Dam, f.Foam = f.Peak-15, f.Peak-10
	return f
}

func (s stove) forecast(ctx context.Context, pours []Pour) (Forecast, error) {
	f, err := s.kettle.forecast(ctx, pours)
	return s.touched(f), err
}

func (s stove) extremes(_ context.Context, _ []Pour, plan Forecast) (low, high Forecast, bracket units.Temperature, err error) {
	low, high = plan, plan
	low.Peak, high.Peak = plan.Peak-3, plan.Peak+3
	return s.touched(low), s.touched(high), plan.Peak + 10, nil
}

func (s stove) fine(ctx context.Context, pours []Pour, _ func(float64)) (Outcome, error) {
	f, err := s.forecast(ctx, pours)
	return Outcome{Forecast: f}, err
}

func (s stove) band(_ context.Context, _ []Pour, plan Forecast, _ func(float64)) (Band, error) {
	low, high, _, _ := s.extremes(context.Background(), nil, plan)
	return Band{Low: low, High: high, Runs: 2}, nil
}

func (s stove) inRoom(ctx context.Context, pours []Pour, room units.Temperature) (Forecast, error) {
	f, err := s.forecast(ctx, pours)
	f.Peak += room - 20
	return s.touched(f), err
}

// anyPour draws a basin with terraces, a resin, hours of a shop and limits.
func anyPour(t *rapid.T) (Input, stove) {
	in := drawn(t)
	in.Fill = append(in.Fill, FillPoint{in.Fill[len(in.Fill)-1].Depth + 60, in.Fill[len(in.Fill)-1].Volume + 7})
	lo := rapid.Float64Range(3, 20).Draw(t, "lo")
	in.Card = card(units.Length(lo), units.Length(lo+rapid.Float64Range(3, 25).Draw(t, "range")))
	in.Gap = units.Length(rapid.Float64Range(1, 3).Draw(t, "guard"))
	in.Limit = units.Temperature(rapid.Float64Range(35, 90).Draw(t, "limit"))
	in.Dams = []Dam{{Side: view.Right, Width: 100, Depth: 30}}
	in.DamParts = []Part{{"tape", units.Temperature(rapid.Float64Range(25, 80).Draw(t, "tape"))}, {"board", 60}}
	in.FoamLeft = rapid.Bool().Draw(t, "foam")
	for d := range 7 {
		if d == 0 || rapid.Bool().Draw(t, "open") {
			from := rapid.IntRange(0, 20).Draw(t, "from")
			in.Hours[d] = []Span{{units.Duration(from), units.Duration(rapid.IntRange(from+2, 24).Draw(t, "to"))}}
		}
	}
	return in, stove{kettle{bonds: units.Duration(rapid.Float64Range(10, 60).Draw(t, "bonds"))}}
}

// TestPlannedLiftsKeepTheRules works every rule of the planner out anew from its answer.
func TestPlannedLiftsKeepTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in, o := anyPour(t)
		c := &computer{in: in}
		c.in.Fill = c.checkedFill(in.Fill)
		r := Result{}
		levels := c.cure(context.Background(), &r, o, nil)
		if levels == nil {
			t.Fatalf("no lifts: %s", codesOf(c.found))
		}
		codes := codesOf(c.found)
		fits(t, in, levels, codes)
		inTime(t, in, o, r.scheme)
		bears(t, in, r, codes)
	})
}

// fits holds depths against the resin's range and ends against terraces.
func fits(t *rapid.T, in Input, levels []float64, codes string) {
	top := in.Fill[len(in.Fill)-1].Depth.MM()
	if levels[0] != 0 || math.Abs(levels[len(levels)-1]-top) > 1e-6 {
		t.Errorf("lifts from %g to %g in a basin of %g mm", levels[0], levels[len(levels)-1], top)
	}
	for i := 1; i < len(levels); i++ {
		d := levels[i] - levels[i-1]
		if d > in.Card.MaxDepth.Value.MM()+1e-6 && !strings.Contains(codes, "resin/no-split") {
			t.Errorf("a lift of %g mm; the resin takes %g", d, in.Card.MaxDepth.Value)
		}
		if d < in.Card.MinDepth.Value.MM()-1e-6 && !strings.Contains(codes, "resin/no-split") && !strings.Contains(codes, "resin/too-shallow") && !strings.Contains(codes, "resin/ends-over") {
			t.Errorf("a lift of %g mm without a word; the resin wants %g", d, in.Card.MinDepth.Value)
		}
		for _, f := range in.Fill[1 : len(in.Fill)-1] {
			if over := levels[i] - f.Depth.MM(); over > 1e-3 && over <= 1 && i+1 < len(levels) && grows(in, f) && !strings.Contains(codes, "resin/ends-over-terrace") {
				t.Errorf("lift %d ends %.2f mm above a terrace", i, over)
			}
		}
	}
}

// inTime holds every pour against the lift before and the shop's hours.
func inTime(t *rapid.T, in Input, o stove, s *Scheme) {
	monday := 24 * math.Floor(float64(in.Hours.begin())/24)
	scuffed := map[int]bool{}
	for _, n := range s.Scuff {
		scuffed[n] = true
	}
	for i, p := range s.Pours {
		abs := monday + float64(s.Pours[0].Clock) + float64(p.At)
		if !staffed(in.Hours, abs) {
			t.Errorf("lift %d is poured at hour %.2f of the week, when nobody is there", i+1, math.Mod(abs, 168))
		}
		if i == 0 {
			continue
		}
		before := float64(s.Pours[i-1].At)
		gels, bonds, tacky := before+12, before+float64(o.bonds), before+30
		switch {
		case float64(p.At) < gels-1e-9:
			t.Errorf("lift %d is poured %.1f h after one that gels after 12", i+1, float64(p.At)-before)
		case float64(p.At) > bonds+1e-9 && !scuffed[i]:
			t.Errorf("lift %d no longer bonds after %.1f h and is not scuffed before %.1f", i, o.bonds, float64(p.At)-before)
		case scuffed[i] && float64(p.At) < tacky-1e-9:
			t.Errorf("lift %d is scuffed while tacky", i)
		}
	}
}

// staffed reports whether somebody is there at an hour from Monday's midnight and for an
// hour on.
func staffed(w Week, abs float64) bool {
	day, hour := int(math.Floor(abs/24+1e-9)), 0.0
	hour = abs - 24*float64(day)
	for _, s := range w[day%7] {
		if hour >= float64(s.From)-1e-6 && hour <= float64(s.To)-1+1e-6 {
			return true
		}
	}
	return w.closed()
}

// bears works peak, dam and foam out by the stove's own rules.
func bears(t *rapid.T, in Input, r Result, codes string) {
	peak := 0.0
	last := 0.0
	for i, p := range r.scheme.Pours {
		one := 20 + (p.To - p.From).MM()
		if i > 0 && p.At-r.scheme.Pours[i-1].At < 24 {
			one += (last - 20) / 2
		}
		last, peak = one, math.Max(peak, one)
	}
	tape := math.Min(float64(in.DamParts[0].Most), 60)
	hot := peak > float64(in.Limit)+1e-9 || peak-15 > tape+1e-9 || in.FoamLeft && peak-10 > 70
	if math.Abs(peak-float64(r.Cure.Peak)) > 1e-9 || r.Alternatives[0].Within == hot {
		t.Errorf("peak %.1f C, told %.1f; within limits: %v", peak, r.Cure.Peak, r.Alternatives[0].Within)
	}
	said := strings.Contains(codes, "resin/too-hot") || strings.Contains(codes, "resin/boils") || strings.Contains(codes, "resin/dam-too-hot") || strings.Contains(codes, "resin/foam-too-hot")
	if hot && !said {
		t.Errorf("%.0f C passes a limit (%.0f, dam %.0f) and nothing is said: %s", peak, in.Limit, tape, codes)
	}
	if unsure := peak+3 > float64(in.Limit) || peak+3-15 > tape || in.FoamLeft && peak+3-10 > 70; r.Alternatives[0].Sure == unsure {
		t.Errorf("peak %.1f C of %.1f: sure %v", peak, in.Limit, r.Alternatives[0].Sure)
	}
	for _, a := range r.Alternatives[1:] {
		if a.Sure && !r.Alternatives[0].Sure {
			t.Error("a surer way was not taken")
		}
		if a.Why == "" || a.Kind == "" || a.Sentence == "" {
			t.Errorf("alternative %+v does not say why not", a)
		}
	}
}
