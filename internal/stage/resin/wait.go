package resin

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const (
	activation = 55e3        // J/mol, range 44 to 60. Source: [resin-presets]
	gasConst   = 8.314462618 // J/(mol K)
	kelvin     = 273.15
)

// Temperatures at which the card's times are stated. Source: [resin-presets].
const cupTemp, filmTemp units.Temperature = 25, 22

// Rooms in which casting resin is poured, C. Source: [practice].
const coldest, usualRoom, warmest units.Temperature = 15, 20, 30

// RateFactor returns how many times faster a resin cures at t than at ref, C:
//
//	f = exp(E/R (1/(ref + 273.15) - 1/(t + 273.15))),  E = 55 kJ/mol
//
// It is half as fast for every 10 C less, nearly. Source: [resin-presets].
func RateFactor(t, ref units.Temperature) float64 {
	return math.Exp(activation / gasConst * (1/(float64(ref)+kelvin) - 1/(float64(t)+kelvin)))
}

// inRoom returns how long what takes d at ref takes in the room; 0 where the card does
// not say. Rooms out of any use count as the nearest that is.
func (c *computer) inRoom(d units.Duration, ref units.Temperature) units.Duration {
	if !(d > 0) || !known(d) {
		return 0
	}
	return d / units.Duration(RateFactor(c.room(), ref))
}

// room returns the room's temperature, held between 5 and 40 C.
func (c *computer) room() units.Temperature {
	if !known(c.in.Room) {
		return usualRoom
	}
	return max(5, min(40, c.in.Room))
}

// gels returns how long a lift stands before the next is poured: until it has gelled,
// by the card; a day where that says nothing.
func (c *computer) gels() units.Duration {
	if w := c.inRoom(c.in.Card.Gel.Value, cupTemp); w > 0 {
		return w
	}
	return units.Day
}

// hardens returns how long the last lift stands before it is worked on.
func (c *computer) hardens() units.Duration { return c.inRoom(c.in.Card.Hard.Value, filmTemp) }

// bondsUntil returns until when the next lift bonds without sanding; 0 if not known.
func (c *computer) bondsUntil() units.Duration { return c.inRoom(c.in.Card.Recoat.Value, filmTemp) }

// potLife returns how long a cup of 100 g can be poured; 0 if not known.
func (c *computer) potLife() units.Duration { return c.inRoom(c.in.Card.PotLife.Value, cupTemp) }

// checkRoom says when the room is no place for casting.
func (c *computer) checkRoom() {
	if t := c.in.Room; !known(t) {
		c.say(badRoom.At(finding.Where{}, "The room's temperature is not known, so waits are those of %.0f C.", c.room()))
	} else if t < coldest || t > warmest {
		c.say(badRoom.At(finding.Where{}, "The room is at %.0f C; casting resin wants %.0f to %.0f C.", t, coldest, warmest).Measured(float64(t), float64(max(coldest, min(warmest, t))), "C"))
	}
}

// waits replaces the waits of small masses by those that were computed: until the lift
// has gelled everywhere, or for as long as it is left to cool where that is the plan;
// the last one until all is hard.
func (c *computer) waits(r *Result) {
	s := r.scheme
	if s == nil || len(s.Pours) != len(r.Lifts) || len(s.Forecast.Lifts) != len(s.Pours) || len(s.Alone) != len(s.Pours) {
		return
	}
	for i := range r.Lifts {
		l, f, alone := &r.Lifts[i], s.Forecast.Lifts[i], s.Alone[i]
		at := s.Pours[i].At
		l.At, l.Peak, l.PeakAt = at, f.Peak, f.PeakAt-at
		c.surface(l, alone, at)
		if l.Gels > 0 {
			l.Torch = rounds(l.Gels)
		}
		if i+1 == len(r.Lifts) {
			if hard := finite(s.done() - at); hard > 0 {
				l.Wait = hard
			} else if l.Hard.Later { // at least so long
				l.Wait = max(l.Wait, l.Hard.H)
			}
			l.BondsUntil = 0
			continue
		}
		next := s.Pours[i+1].At
		l.Scuffed = slices.Contains(s.Scuff, l.Number)
		l.Wait = l.Gels
		if s.How != soonest || l.Scuffed || l.Wait == 0 {
			l.Wait = next - at
		}
		if l.Scuffed {
			l.BondsUntil = 0
			for k := range l.Zones {
				l.Zones[k].Scuff = !l.Zones[k].Bonds.after(next - at)
			}
		}
	}
}

// surface tells what becomes of a lift's surface that nothing comes over.
func (c *computer) surface(l *Lift, f LiftForecast, at units.Duration) {
	l.Gels, l.Tacky, l.BondsUntil = finite(f.Gels-at), finite(f.Tacky-at), finite(f.Bonds-at)
	end := float64(at + runOn)
	moment := func(d units.Duration) Moment { return momentOf(float64(d), float64(at), end) }
	l.RecoatFrom, l.RecoatUntil, l.TackFree = moment(f.Gels), moment(f.Bonds), moment(f.Tacky)
	l.Hard, l.Sandable = moment(f.Hard), moment(f.Sandable)
	l.Zones = append([]Zone{}, f.Zones...)
	for _, z := range l.Zones {
		if z.Hard.Later && l.Hard.Later { // followed for longer than the rest
			l.Hard.H = max(l.Hard.H, z.Hard.H)
		}
	}
	if l.Hard.Later && !slices.ContainsFunc(l.Zones, func(z Zone) bool { return z.Hard.Later }) && len(l.Zones) > 0 {
		l.Hard = slices.MaxFunc(l.Zones, func(a, b Zone) int { return cmp.Compare(a.Hard.H, b.Hard.H) }).Hard
	}
}
