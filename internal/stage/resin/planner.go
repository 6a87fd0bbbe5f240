package resin

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/units"
)

// A Pour is one lift in time: between two heights above the deepest floor, poured At
// hours after the first one. Clock is the hour of the day of the first; 0: nine.
type Pour struct {
	From, To units.Length
	At       units.Duration
	Clock    units.Duration
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
	End     units.Duration    // last hour simulated
}

// LiftForecast is what becomes of one lift; times are after the first pour, +Inf where
// they do not come within the run.
type LiftForecast struct {
	Peak   units.Temperature
	PeakAt units.Duration
	Gels   units.Duration // its last surface place has gelled: it carries the next lift
	Bonds  units.Duration // its first surface place no longer bonds chemically
	Tacky  units.Duration // its last surface place is no longer tacky: it can be scuffed

	// Of the last pour, which nothing covers:
	Hard, Sandable units.Duration
	Zones          []Zone
}

// A forecaster simulates pours.
type forecaster interface {
	// forecast tells what becomes of pours, nothing coming after them.
	forecast(ctx context.Context, pours []Pour) (Forecast, error)
	// extremes tells what nine of ten cases stay above and below, and the peak of an
	// endless slab, which bounds the plan's from above.
	extremes(ctx context.Context, pours []Pour, plan Forecast) (low, high Forecast, bracket units.Temperature, err error)
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
	Within   bool  // it keeps within the guard as planned
	Sure     bool  // and in nine of ten cases

	Alone     []LiftForecast // of every lift: what becomes of it when no lift follows
	Low, High Forecast       // nine of ten cases stay above, and below
	Bracket   units.Temperature
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

// evening returns the last hour of the first day at which a pour can begin.
func (w Week) evening() units.Duration {
	first := w.begin()
	day := math.Floor(float64(first) / 24)
	return w.last(first, units.Duration(24*(day+1))-needs/2, 0)
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
func (p *planner) scheme(ctx context.Context, levels []float64, how patience, first units.Duration) (Scheme, error) {
	s := Scheme{How: how}
	at := units.Duration(0)
	for i := 1; i < len(levels); i++ {
		s.Pours = append(s.Pours, Pour{From: units.Length(levels[i-1]), To: units.Length(levels[i]), At: at, Clock: units.Duration(math.Mod(float64(first), 24))})
		f, err := p.look(ctx, s.Pours)
		if err != nil {
			return s, err
		}
		last := f.Lifts[len(f.Lifts)-1]
		s.Forecast, s.Alone = joined(s.Forecast, f), append(s.Alone, last)
		if i+1 == len(levels) {
			break
		}
		var scuff bool
		if at, scuff = p.next(last, at, first, how); scuff {
			s.Scuff = append(s.Scuff, i)
		}
	}
	return s, p.weigh(ctx, &s)
}

// joined is what is known of pours after f, which leaves out lifts long poured: these
// stay as they were told before.
func joined(before, f Forecast) Forecast {
	for i := range min(len(before.Lifts), len(f.Lifts)) {
		if math.IsInf(float64(f.Lifts[i].Peak), -1) {
			f.Lifts[i] = before.Lifts[i]
		}
	}
	if len(before.Lifts) > 0 && before.Peak > f.Peak {
		f.Peak, f.PeakAt, f.PeakIn = before.Peak, before.PeakAt, before.PeakIn
	}
	f.Dam, f.Foam = max(before.Dam, f.Dam), max(before.Foam, f.Foam)
	return f
}

// weigh says whether a scheme keeps within the guard, and how surely.
func (p *planner) weigh(ctx context.Context, s *Scheme) error {
	s.Within = p.guard.holds(s.Forecast)
	s.Low, s.High, s.Bracket = s.Forecast, s.Forecast, s.Forecast.Peak
	low, high, bracket, err := p.in.extremes(ctx, s.Pours, s.Forecast)
	if err != nil {
		return err
	}
	s.Low, s.High, s.Bracket = low, high, bracket
	s.Sure = s.Within && p.guard.holds(high)
	return nil
}

// neverGels is how long a lift that does not gel within the run is left standing.
const neverGels = runOn

// longestWait is how long a gelled lift that bonds for very long is left to cool. Chosen.
const longestWait = 4 * units.Day

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
		return p.week.last(at, min(last.Bonds, at+longestWait), first), false
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
		p.report(searching*min(1, float64(p.tried)/float64(max(p.expected, 1))), fmt.Sprintf("looking for lifts: %s", lifts(len(pours))))
	}
	return p.in.forecast(ctx, pours)
}

// Shares of the work, for the progress that is shown. Chosen after trials.
const (
	searching = 0.45
	finely    = 0.70 // reached when the fine grid is done
	banded    = 0.92 // and when the band is
)

// Prices that schemes are compared by. Chosen: a lift that must be sanded dull is worth a
// day, and less than half a session's difference in time is none.
const (
	scuffPrice units.Duration = 24
	sameTime   units.Duration = 4
)

// price is a scheme's elapsed time with its scuffing, in units of sameTime; what does not
// harden within the run costs more than all that does.
func (s Scheme) price() float64 {
	d := s.done()
	if math.IsInf(float64(d), 1) {
		d = 1e6 + s.Pours[len(s.Pours)-1].At
	}
	return math.Round(float64((d + units.Duration(len(s.Scuff))*scuffPrice) / sameTime))
}

// safety is 2 where nine of ten cases keep within the guard, 1 where the plan does.
func (s Scheme) safety() int {
	switch {
	case s.Sure:
		return 2
	case s.Within:
		return 1
	}
	return 0
}

// order sorts schemes: the safest first; of those that are not safe the coolest; then by
// price, lifts and peak.
func order(a, b Scheme) int {
	if c := cmp.Compare(b.safety(), a.safety()); c != 0 {
		return c
	}
	hot := 0
	if a.safety() == 0 {
		hot = cmp.Compare(math.Round(float64(a.Forecast.Peak)), math.Round(float64(b.Forecast.Peak)))
	}
	return cmp.Or(hot, cmp.Compare(a.price(), b.price()), cmp.Compare(len(a.Pours), len(b.Pours)), cmp.Compare(a.Forecast.Peak, b.Forecast.Peak))
}

// search tries the ways of splitting, and of each what patience does, and returns the
// schemes found, the best first. One that is sure to keep within the guard ends the
// search one lift later.
func (p *planner) search(ctx context.Context, ways [][]float64) ([]Scheme, error) {
	for _, w := range ways[:min(len(ways), 2)] {
		p.expected += 2 * (len(w) - 1)
	}
	var out []Scheme
	enough := math.MaxInt
	for _, levels := range ways {
		if len(levels)-1 > enough {
			break
		}
		found, err := p.patiently(ctx, levels)
		if err != nil {
			return out, err
		}
		out = append(out, found...)
		if slices.ContainsFunc(found, func(s Scheme) bool { return s.Sure }) {
			enough = min(enough, len(levels))
		}
	}
	slices.SortStableFunc(out, order)
	return out, nil
}

// manyLevels is from how many levels on a way is tried by the soonest pours only. Chosen:
// each lift is simulated.
const manyLevels = 8

// patiently tries one way of splitting, waiting longer until it is sure. Where a lift
// must be scuffed because nobody is there when it gels, a first pour late in the day may
// do better.
func (p *planner) patiently(ctx context.Context, levels []float64) ([]Scheme, error) {
	var out []Scheme
	begin, evening := p.week.begin(), p.week.evening()
	for _, try := range []struct {
		how   patience
		first units.Duration
	}{{soonest, begin}, {soonest, evening}, {latest, begin}, {nextDay, begin}} {
		n := len(out)
		late := try.first != begin
		if n > 0 && len(levels) > manyLevels && !late {
			break
		}
		if late && (evening-begin < sameTime || len(out[n-1].Scuff) == 0) {
			continue
		}
		s, err := p.scheme(ctx, levels, try.how, try.first)
		if err != nil {
			return out, err
		}
		if n > 0 && slices.EqualFunc(out[n-1].Pours, s.Pours, func(a, b Pour) bool { return a.At == b.At }) {
			continue // waiting changed nothing
		}
		out = append(out, s)
		if len(levels) == 2 || s.Sure && (len(s.Scuff) == 0 || try.how > soonest || late) {
			break // one lift: nothing to put off
		}
	}
	return out, nil
}
