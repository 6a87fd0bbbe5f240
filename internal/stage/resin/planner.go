package resin

import (
	"context"
	"math"
	"slices"

	"pourwright/internal/units"
)

// A Pour is one lift in time: between two heights above the deepest floor, poured At
// hours after the first one.
type Pour struct {
	From, To units.Length
	At       units.Duration
}

// A Forecast is what a simulation says of a row of pours.
type Forecast struct {
	Peak    units.Temperature // anywhere in the resin
	PeakAt  units.Duration    // after the first pour
	PeakIn  int               // number of the lift it is in, from 1
	Dam     units.Temperature // warmest place of the dam's face
	Foam    units.Temperature // warmest place of foam that is left
	Lifts   []LiftForecast    // one for each pour
	HardAll units.Duration    // after the first pour: when all can be worked on; +Inf if not within the run
}

// LiftForecast is what becomes of one lift; times are after the first pour, +Inf where
// they do not come within the run.
type LiftForecast struct {
	Peak   units.Temperature
	PeakAt units.Duration
	Gels   units.Duration // its last surface place has gelled: it carries the next lift
	Bonds  units.Duration // its first surface place no longer bonds chemically
	Tacky  units.Duration // its last surface place is no longer tacky: it can be scuffed
}

// A forecaster simulates pours; coarse is quicker.
type forecaster interface {
	forecast(ctx context.Context, pours []Pour, coarse bool) (Forecast, error)
}

// Guard are the temperatures no plan may pass.
type Guard struct {
	Peak, Dam, Foam units.Temperature
}

func (g Guard) holds(f Forecast) bool {
	return f.Peak <= g.Peak && f.Dam <= g.Dam && f.Foam <= g.Foam
}

// A Scheme is one way of pouring the basin, with its price.
type Scheme struct {
	Pours    []Pour
	Forecast Forecast
	How      patience
	Scuff    []int // numbers of lifts whose surface is sanded for the next one to hold
	Within   bool  // it keeps within the guard
}

// done is when the scheme can be worked on, hours after the first pour.
func (s Scheme) done() units.Duration { return s.Forecast.HardAll }

// A Week is when somebody is there, Monday first. It may be empty.
type Week [7][]Span

// A Span is a stretch of a day, hours after midnight.
type Span struct{ From, To units.Duration }

// needs is how long before closing a pour must begin. Chosen: mixing, pouring and a
// first round with the torch.
const needs units.Duration = 1

// daysAhead is how far the search for an open hour goes.
const daysAhead = 60

// open returns the first hour at or after t, counted from the first pour, at which a
// pour can begin; first is when the first pour is, hours from Monday's midnight. With
// no open hours at all every hour is open.
func (w Week) open(t, first units.Duration) units.Duration {
	if w.closed() {
		return t
	}
	abs := first + t
	day := math.Floor(float64(abs) / 24)
	for d := day; d < day+daysAhead; d++ {
		for _, s := range w[int(math.Mod(d, 7)+7)%7] {
			from, to := units.Duration(24*d)+s.From, units.Duration(24*d)+s.To-needs
			if at := max(from, abs); at <= to {
				return at - first
			}
		}
	}
	return t
}

// last returns the last hour from at to end at which a pour can begin, to half an hour;
// at itself is one.
func (w Week) last(at, end, first units.Duration) units.Duration {
	for t := min(end, at+daysAhead*units.Day); t > at; t -= 0.5 {
		if w.open(t, first) == t {
			return t
		}
	}
	return at
}

func (w Week) closed() bool {
	return !slices.ContainsFunc(w[:], func(spans []Span) bool {
		return slices.ContainsFunc(spans, func(s Span) bool { return s.To-s.From > needs })
	})
}

// begin returns the first hour of the week at which a pour can begin, an hour after
// opening: the piece is levelled and the resin warm by then.
func (w Week) begin() units.Duration {
	if w.closed() {
		return 9
	}
	return w.open(0, 0) + needs
}

// A planner looks for schemes.
type planner struct {
	in       forecaster
	guard    Guard
	week     Week
	report   func(share float64, doing string)
	tried    int
	expected int
}

// A patience is how long a gelled lift is left to cool before the next is poured.
type patience int

const (
	soonest patience = iota // as soon as somebody is there
	latest                  // at the last open hour at which it still bonds
	nextDay                 // a day after it is no longer tacky, and scuffed
	patiences
)

// scheme pours the lifts between levels one after the other, each when the one before
// has gelled and somebody is there: how much later, how says. Where the time in which it
// still bonds has passed, it waits until the surface can be scuffed.
func (p *planner) scheme(ctx context.Context, levels []float64, how patience) (Scheme, error) {
	s := Scheme{How: how}
	first := p.week.begin()
	for i := 1; i < len(levels); i++ {
		at := units.Duration(0)
		if i > 1 {
			f, err := p.look(ctx, s.Pours)
			if err != nil {
				return s, err
			}
			last := f.Lifts[len(f.Lifts)-1]
			var scuff bool
			if at, scuff = p.next(last, s.Pours[len(s.Pours)-1].At, first, how); scuff {
				s.Scuff = append(s.Scuff, i-1)
			}
		}
		s.Pours = append(s.Pours, Pour{From: units.Length(levels[i-1]), To: units.Length(levels[i]), At: at})
	}
	var err error
	s.Forecast, err = p.look(ctx, s.Pours)
	s.Within = err == nil && p.guard.holds(s.Forecast)
	return s, err
}

// neverGels is how long a lift that does not gel within the run is left standing.
const neverGels units.Duration = 7 * units.Day

// next returns when the next lift is poured, and whether the surface is scuffed.
func (p *planner) next(last LiftForecast, poured, first units.Duration, how patience) (at units.Duration, scuff bool) {
	gels := last.Gels
	if math.IsInf(float64(gels), 0) {
		gels = poured + neverGels
	}
	at = p.week.open(gels, first)
	if at <= last.Bonds && how == soonest {
		return at, false
	}
	if at <= last.Bonds && how == latest {
		return p.week.last(at, last.Bonds, first), false
	}
	if tacky := last.Tacky; !math.IsInf(float64(tacky), 0) {
		at = max(at, p.week.open(tacky, first))
	}
	if how == nextDay {
		at = p.week.open(at+units.Day, first)
	}
	return at, true
}

func (p *planner) look(ctx context.Context, pours []Pour) (Forecast, error) {
	p.tried++
	if p.report != nil {
		p.report(min(0.95, float64(p.tried)/float64(max(p.expected, 1))), "looking for lifts")
	}
	return p.in.forecast(ctx, pours, true)
}

// better orders schemes: within the guard first, then those done sooner, then those
// with fewer lifts. Less than a working session's difference is no sooner.
func better(a, b Scheme) bool {
	switch {
	case a.Within != b.Within:
		return a.Within
	case !a.Within && a.Forecast.Peak != b.Forecast.Peak:
		return a.Forecast.Peak < b.Forecast.Peak
	case len(a.Scuff) != len(b.Scuff) && math.Abs(float64(a.done()-b.done())) < 24:
		return len(a.Scuff) < len(b.Scuff)
	case math.Abs(float64(a.done()-b.done())) >= 4 && a.done() != b.done():
		return a.done() < b.done()
	}
	return len(a.Pours) < len(b.Pours)
}

// search tries the ways of splitting, and of each what patience does, and returns the schemes found, the best first. One that keeps within the guard ends
// the search one lift later.
func (p *planner) search(ctx context.Context, ways [][]float64) ([]Scheme, error) {
	for _, w := range ways {
		p.expected += len(w) * 2
	}
	var out []Scheme
	enough := math.MaxInt
	for _, levels := range ways {
		if len(levels)-1 > enough {
			break
		}
		for how := range patiences {
			s, err := p.scheme(ctx, levels, how)
			if err != nil {
				return out, err
			}
			out = append(out, s)
			if s.Within {
				enough = min(enough, len(levels))
				break
			}
			if len(levels) == 2 { // one lift: nothing to put off
				break
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Scheme) int {
		switch {
		case better(a, b):
			return -1
		case better(b, a):
			return 1
		}
		return 0
	})
	return out, nil
}
