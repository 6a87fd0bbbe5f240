package resin

import (
	"context"
	"errors"
	"strings"
	"testing"

	"pourwright/internal/units"
)

// A faulty oven does all but what is named.
type faulty struct {
	stove
	lacks string
}

var errStuck = errors.New("simulate, at 3.50 h: the steps get too small")

func (f faulty) forecast(ctx context.Context, pours []Pour) (Forecast, error) {
	if f.lacks == "forecast" {
		return Forecast{}, errStuck
	}
	return f.stove.forecast(ctx, pours)
}

func (f faulty) fine(ctx context.Context, pours []Pour, w func(float64)) (Outcome, error) {
	if f.lacks == "fine" {
		return Outcome{}, errStuck
	}
	return f.stove.fine(ctx, pours, w)
}

func (f faulty) band(ctx context.Context, pours []Pour, plan Forecast, w func(float64)) (Band, error) {
	if f.lacks == "band" {
		return Band{}, errStuck
	}
	return f.stove.band(ctx, pours, plan, w)
}

func (f faulty) inRoom(ctx context.Context, pours []Pour, room units.Temperature) (Forecast, error) {
	if f.lacks == "room" {
		return Forecast{}, errStuck
	}
	return f.stove.inRoom(ctx, pours, room)
}

// TestASolverThatStopsIsTold: what cannot be simulated is said, with where it stopped, and
// does not hide what can.
func TestASolverThatStopsIsTold(t *testing.T) {
	for lacks, want := range map[string]struct {
		code     string
		computed bool
	}{
		"forecast": {"resin/cure-not-computed", false}, "fine": {"resin/cure-not-computed", false},
		"band": {"resin/no-band", true}, "room": {"resin/no-other-room", true},
	} {
		in := basin(FillPoint{20, 1}, FillPoint{70, 8})
		c := &computer{in: in}
		r := Result{}
		levels := c.cure(context.Background(), &r, faulty{stove{kettle{bonds: 40}}, lacks}, nil)
		if (levels != nil) != want.computed || r.Cure.Computed != want.computed || !strings.Contains(codesOf(c.found), want.code) {
			t.Errorf("without %s: levels %v, computed %v, found %s", lacks, levels, r.Cure.Computed, codesOf(c.found))
		}
		for _, f := range c.found {
			if f.Code == want.code && !strings.Contains(f.Text, "at 3.50 h") {
				t.Errorf("without %s: %s", lacks, f.Text)
			}
		}
		if want.computed && r.Cure.High < r.Cure.Peak {
			t.Errorf("without %s: band %.0f to %.0f", lacks, r.Cure.Low, r.Cure.High)
		}
	}
}
