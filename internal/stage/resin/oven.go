package resin

import (
	"context"
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// An oven simulates the cure.
type oven interface {
	forecaster
	// fine simulates on the fine grid and tells all that is shown.
	fine(ctx context.Context, pours []Pour, watch func(share float64)) (Outcome, error)
	// band simulates the pours with other rooms, rates, heats, films, depths and concretes.
	band(ctx context.Context, pours []Pour, plan Forecast, watch func(share float64)) (Band, error)
	// inRoom is a coarse forecast in a room of another temperature.
	inRoom(ctx context.Context, pours []Pour, room units.Temperature) (Forecast, error)
}

// An Outcome is a forecast with its places and fields.
type Outcome struct {
	Forecast
	X, Y, Z  units.Length // of the peak: finished view, height above the deepest floor
	Sandable units.Duration
	Zones    []Zone
	Soft     []Soft
	Last     *Soft
	Fields   *Fields
	Numerics Numerics
}

// Temperatures that are hard on the resin, C. From memory and practice: see
// docs/methods/resin.md.
const (
	yellows units.Temperature = 80  // stress and yellowing over it
	boils   units.Temperature = 100 // bubbles over it
)

// Rooms that a piece is looked at in beside its own, C. Chosen.
var otherRooms = []units.Temperature{18, 23, 28}

// bandOut is the share of the members left out at each end of the band. Chosen.
const bandOut = 0.1

// An OwnLift is a lift as the maker wants it.
type OwnLift struct {
	Depth units.Length
	After units.Duration // after the lift before; 0: the planner chooses
}

// cure looks for lifts, works the chosen ones out, and returns their levels; nil where
// nothing can be simulated, with a finding that says so.
func (c *computer) cure(ctx context.Context, r *Result, o oven, report func(float64, string)) []float64 {
	ways := c.ways()
	p := &planner{in: o, guard: c.guard(), week: c.in.Hours, report: report}
	schemes, err := c.schemes(ctx, p, ways)
	if err == nil && len(schemes) > 0 {
		err = c.verify(ctx, r, o, schemes, report)
	}
	if err != nil || len(schemes) == 0 {
		if ctx.Err() == nil {
			c.say(noCure.At(finding.Where{}, "The cure could not be computed: %v. Peak temperature and times of %s are not known, and the waits are those of small masses.", err, c.in.Card.Name))
		}
		r.Cure, r.Fields, r.Alternatives, r.scheme = noneCured(), nil, []Alternative{}, nil
		return nil
	}
	return levelsOf(schemes[0].Pours)
}

// noneCured is a cure that was not computed.
func noneCured() Cure {
	return Cure{Rooms: []RoomCase{}, Soft: []Soft{}, Zones: []Zone{}, Influences: []Influence{}}
}

const usualLimit units.Temperature = 60 // Source: from memory: over it resin yellows and stresses

func (c *computer) limit() units.Temperature {
	if l := c.in.Limit; l > 0 && known(l) {
		return l
	}
	return usualLimit
}

// ways lists the ways of splitting the depth, fewest lifts first; the maker's own is the
// only one where it is given.
func (c *computer) ways() [][]float64 {
	t := c.top().Depth
	if own := c.own(t.MM()); own != nil {
		return [][]float64{own}
	}
	first := c.levels(t)
	ways := [][]float64{first}
	lim := limits{atLeastZero(c.in.Card.MinDepth.Value).MM(), c.in.Card.MaxDepth.Value.MM()}
	if !(lim.hi > 0) {
		lim.hi = t.MM()
	}
	ends := c.candidates(t.MM())
	more := moreLifts
	if len(first) > manyLevels {
		more = 2
	}
	for n := len(first); n < len(first)+more; n++ {
		if got := split(ends, lim, n); got != nil {
			ways = append(ways, got)
		}
	}
	return ways
}

// moreLifts is how many lifts more than the depth range asks for are tried. Chosen.
const moreLifts = 3

// own returns the maker's levels, the last one raised or cut to the rim; nil without any.
func (c *computer) own(t float64) []float64 {
	if len(c.in.Own) == 0 {
		return nil
	}
	out, at := []float64{0}, 0.0
	for i, l := range c.in.Own {
		at += l.Depth.MM()
		if at >= t-touching || i == len(c.in.Own)-1 {
			break
		}
		out = append(out, at)
	}
	if math.Abs(at-t) > ownSlack {
		c.say(ownLifts.At(finding.Where{Element: "resin.lifts"}, "Your lifts add up to %.1f mm and the basin is %.1f mm deep; the last one is made to end at the rim.", sumOf(c.in.Own), t).
			Measured(sumOf(c.in.Own), t, "mm"))
	}
	return append(out, t)
}

const ownSlack = 0.5 // mm; closer sums are taken as the whole depth. Chosen

func sumOf(own []OwnLift) float64 {
	sum := 0.0
	for _, l := range own {
		sum += l.Depth.MM()
	}
	return sum
}

// schemes returns the ways of pouring, the one to take first. The maker's own lifts with
// their times are one scheme; without times the planner chooses these.
func (c *computer) schemes(ctx context.Context, p *planner, ways [][]float64) ([]Scheme, error) {
	if len(c.in.Own) == 0 || !c.timed() {
		return p.search(ctx, ways)
	}
	pours, at := []Pour{}, units.Duration(0)
	for i := 1; i < len(ways[0]); i++ {
		if i > 1 {
			at += c.in.Own[i-1].After
		}
		pours = append(pours, Pour{From: units.Length(ways[0][i-1]), To: units.Length(ways[0][i]), At: at})
	}
	s := Scheme{Pours: pours}
	for i := range pours {
		f, err := p.look(ctx, pours[:i+1])
		if err != nil {
			return nil, err
		}
		s.Forecast, s.Alone = joined(s.Forecast, f), append(s.Alone, f.Lifts[i])
	}
	if err := p.weigh(ctx, &s); err != nil {
		return nil, err
	}
	for i := 0; i+1 < len(pours); i++ {
		alone, next := s.Alone[i], pours[i+1].At
		if next > alone.Bonds {
			s.Scuff = append(s.Scuff, i+1)
		}
		if next >= alone.Gels {
			continue
		}
		gels := momentOf(float64(alone.Gels), 0, float64(pours[i].At+runOn))
		when := fmt.Sprintf("only at %.1f h", gels.H)
		if gels.Later {
			when = fmt.Sprintf("later than %.0f h", gels.H)
		}
		c.say(early.At(finding.Where{Element: fmt.Sprintf("lift %d", i+2)}, "Lift %d is poured %.1f h after the first one, and lift %d has gelled everywhere %s.", i+2, next, i+1, when).
			Measured(float64(next), float64(gels.H), "h"))
	}
	return []Scheme{s}, nil
}

// timed reports whether the maker gave a time to every lift but the first.
func (c *computer) timed() bool {
	for i, l := range c.in.Own {
		if i > 0 && !(l.After > 0) {
			return false
		}
	}
	return true
}

// verify works the first scheme out on the fine grid and with its band. Where it does
// not hold there, the next one that is likely to is tried; if none does, the first
// stands, with findings.
func (c *computer) verify(ctx context.Context, r *Result, o oven, schemes []Scheme, report func(float64, string)) error {
	chosen, got, guard := -1, Outcome{}, c.guard()
	for i, s := range schemes[:min(len(schemes), mostVerified)] {
		if i > 0 && s.safety() < schemes[0].safety() {
			break
		}
		out, err := o.fine(ctx, s.Pours, func(share float64) {
			say(report, searching+(finely-searching)*share, "working the lifts out on the fine grid")
		})
		if err != nil {
			return err
		}
		holds := guard.holds(out.Forecast)
		if i == 0 || holds {
			chosen, got = i, out
		}
		if holds {
			break
		}
	}
	s := schemes[chosen]
	copy(schemes[1:chosen+1], schemes[:chosen])
	schemes[0] = s
	schemes[0].Forecast = got.Forecast
	schemes[0].Within = guard.holds(got.Forecast)
	if n := len(s.Alone); n > 0 && len(got.Lifts) == n {
		schemes[0].Alone[n-1] = got.Lifts[n-1]
	}
	c.tell(r, schemes, got)
	if err := c.around(ctx, r, o, &schemes[0], report); err != nil {
		return err
	}
	return c.others(ctx, r, report)
}

// mostVerified is how many schemes are worked out on the fine grid at most. Chosen.
const mostVerified = 3

func say(report func(float64, string), share float64, doing string) {
	if report != nil {
		report(share, doing)
	}
}

// tell writes the outcome of the chosen scheme into the result.
func (c *computer) tell(r *Result, schemes []Scheme, got Outcome) {
	g := c.guard()
	r.Cure = Cure{
		Computed: true, Clock: units.Duration(clockOf(schemes[0].Pours)), Limit: c.limit(), Peak: got.Peak, Low: got.Peak, High: got.Peak, PeakAt: got.PeakAt, PeakIn: got.PeakIn,
		PeakX: got.X, PeakY: got.Y, PeakZ: got.Z, Column: schemes[0].Bracket, Sandable: finite(got.Sandable),
		Dam: got.Dam, DamHigh: got.Dam, Foam: got.Foam, FoamHigh: got.Foam,
		Last: got.Last, Soft: append([]Soft{}, got.Soft...), Zones: append([]Zone{}, got.Zones...), Rooms: []RoomCase{}, Influences: []Influence{}, Error: got.Numerics,
	}
	if len(c.in.Dams) > 0 {
		r.Cure.DamLimit, r.Cure.DamWeakest, r.Cure.DamSide = g.Dam, c.damPart().Name, string(c.deepestDam().Side)
	}
	if c.in.FoamLeft {
		r.Cure.FoamLimit, r.Cure.FoamName = g.Foam, c.foam().Name
	}
	r.Fields, r.scheme = got.Fields, &schemes[0]
	c.compare(r, schemes)
}

// finite returns d, or 0 where it does not come.
func finite(d units.Duration) units.Duration {
	if !known(d) {
		return 0
	}
	return d
}

// around adds the band and the other rooms. A band that cannot be had is said and does
// not hide the rest.
func (c *computer) around(ctx context.Context, r *Result, o oven, s *Scheme, report func(float64, string)) error {
	b, err := o.band(ctx, s.Pours, s.Forecast, func(share float64) {
		say(report, finely+(banded-finely)*share, "how sure the peak is")
	})
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		r.Cure.Low, r.Cure.High = min(s.Low.Peak, r.Cure.Peak), max(s.High.Peak, r.Cure.Peak)
		c.say(noBand.At(finding.Where{}, "How sure the peak is could not be worked out: %v. The band shown, %.0f to %.0f C, is of two simulations.", err, r.Cure.Low, r.Cure.High))
	default:
		c.banded(r, s, b)
	}
	for i, t := range otherRooms {
		say(report, banded+(1-banded)*float64(i)/float64(len(otherRooms)), fmt.Sprintf("the same in a room of %.0f C", t))
		f, err := o.inRoom(ctx, s.Pours, t)
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil {
			c.say(noRoom.At(finding.Where{}, "What the same pours do in a room of %.0f C could not be worked out: %v.", t, err))
			continue
		}
		r.Cure.Rooms = append(r.Cure.Rooms, RoomCase{Room: t, Peak: f.Peak, Dam: f.Dam, Foam: f.Foam, Hard: finite(f.HardAll), When: momentOf(float64(f.HardAll), 0, float64(f.End)), Within: c.guard().holds(f)})
	}
	c.heatFindings(r)
	return nil
}

// banded takes a band into the result: the wider of what was drawn and of the steepest
// direction.
func (c *computer) banded(r *Result, s *Scheme, b Band) {
	k := &r.Cure
	k.Low, k.High = bandOf(b.Peaks, k.Peak)
	k.Low, k.High = min(k.Low, b.Low.Peak), max(k.High, b.High.Peak)
	_, k.DamHigh = bandOf(b.Dams, k.Dam)
	_, k.FoamHigh = bandOf(b.Foams, k.Foam)
	k.DamHigh, k.FoamHigh = max(k.DamHigh, b.High.Dam), max(k.FoamHigh, b.High.Foam)
	k.Members, k.Influences = b.Runs, append([]Influence{}, b.Influences...)
	s.Low.Peak, s.High.Peak, s.High.Dam, s.High.Foam = k.Low, k.High, k.DamHigh, k.FoamHigh
	s.Sure = s.Within && c.guard().holds(s.High)
	if len(r.Alternatives) > 0 {
		a := &r.Alternatives[0]
		a.Low, a.High, a.DamHigh, a.Sure = k.Low, k.High, k.DamHigh, s.Sure
		a.Sentence = sentence(*a)
	}
}

func levelsOf(pours []Pour) []float64 {
	out := []float64{0}
	for _, p := range pours {
		out = append(out, p.To.MM())
	}
	return out
}
