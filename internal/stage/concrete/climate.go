package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const (
	longestWait    units.Duration    = 7 * units.Day // Chosen: no wait of casting is planned longer
	coldest        units.Temperature = -30           // Chosen: below and above, no shop
	hottest        units.Temperature = 55
	longestHistory                   = 20_000 // stretches; a log of a fortnight by the minute
)

// constant is a history of one temperature.
func constant(t units.Temperature) Climate {
	return Climate{Stretches: []Stretch{{units.Day, t}}, From: "constant"}
}

// DayAndNight returns the history of a shop that is at day for the hours of work and
// at night for the rest, from a casting that begins one hour after the day does.
func DayAndNight(day, night units.Temperature, hours units.Duration) Climate {
	hours = min(max(hours, 2), 23)
	return Climate{Stretches: []Stretch{{hours - 1, day}, {units.Day - hours, night}, {1, day}}, Repeats: true, From: "day and night"}
}

// climate returns the history to work with; one that cannot be is replaced by the
// shop's one temperature, with a finding.
func (c *computer) climate() Climate {
	if t := c.in.Temperature; !(t >= coldest && t <= hottest) {
		c.say(badClimate.At(finding.Where{Field: "room.temperature"}, "The shop's temperature is stated as %.0f C, so %.0f C is used.", t, refTemp))
		c.in.Temperature = refTemp
	}
	given := c.in.Climate
	if len(given.Stretches) == 0 {
		return constant(c.in.Temperature)
	}
	sum, n := units.Duration(0), len(given.Stretches)
	for i, s := range given.Stretches {
		if !(s.Time > 0) || !known(s.Time) || !(s.Temp >= coldest && s.Temp <= hottest) {
			c.say(badClimate.At(finding.Where{Field: "room"}, "Stretch %d of the history of temperatures is %.2f h at %.1f C, so %.1f C is used throughout.", i+1, s.Time, s.Temp, c.in.Temperature).Measured(float64(s.Temp), float64(hottest), "C"))
			return constant(c.in.Temperature)
		}
		sum += s.Time
	}
	if n > longestHistory {
		c.say(badClimate.At(finding.Where{Field: "room"}, "The history of temperatures has %s, so %.1f C is used throughout.", units.Count(n, "stretch", "stretches"), c.in.Temperature).Measured(float64(n), longestHistory, "stretches"))
		return constant(c.in.Temperature)
	}
	if last := given.Stretches[n-1].Temp; !given.Repeats && sum < units.Day {
		c.say(shortClimate.At(finding.Where{Field: "room"}, "The history of temperatures ends %.1f h after the casting begins; %.1f C is taken to hold from there.", sum, last).Measured(float64(sum), float64(units.Day), "h"))
	}
	return given
}

// walk calls visit with every stretch from the hour from on, until it returns false.
// The last stretch, or the whole history where it repeats, goes on without end.
func (c Climate) walk(from units.Duration, visit func(hours units.Duration, t units.Temperature) bool) {
	at := units.Duration(0)
	for i := 0; ; i++ {
		last := i >= len(c.Stretches)-1 && !c.Repeats
		s := c.Stretches[min(i, len(c.Stretches)-1)]
		if c.Repeats {
			s = c.Stretches[i%len(c.Stretches)]
		}
		end := at + s.Time
		if last {
			end = units.Duration(math.Inf(1))
		}
		if end > from && !visit(end-max(at, from), s.Temp) {
			return
		}
		at = end
	}
}

// wait returns how long after the hour from it takes to gather need hours at the
// reference temperature, where an hour at t is worth rate(t); longestWait at most.
func (c Climate) wait(from, need units.Duration, rate func(units.Temperature) float64) units.Duration {
	took := units.Duration(0)
	if !(need > 0) {
		return 0
	}
	c.walk(from, func(hours units.Duration, t units.Temperature) bool {
		r := units.Duration(rate(t))
		if r*hours >= need {
			took += need / r
			return false
		}
		need -= r * max(0, hours)
		took += hours
		return took < longestWait
	})
	return min(took, longestWait)
}

// gathered returns the hours at the reference temperature gathered between two hours.
func (c Climate) gathered(from, until units.Duration, rate func(units.Temperature) float64) units.Duration {
	sum, left := units.Duration(0), until-from
	if left <= 0 {
		return 0
	}
	c.walk(from, func(hours units.Duration, t units.Temperature) bool {
		sum += units.Duration(rate(t)) * min(hours, left)
		left -= hours
		return left > 0
	})
	return sum
}

// mean returns the mean temperature between two hours.
func (c Climate) mean(from, until units.Duration) units.Temperature {
	if until <= from {
		until = from + 1.0/60
	}
	warmth := c.gathered(from, until, func(t units.Temperature) float64 { return float64(t) })
	return units.Temperature(warmth / (until - from))
}
