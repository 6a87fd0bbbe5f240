package toolpath

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Defaults where the card is silent.
const (
	leastCutter   units.Length = 0.1       // Chosen
	mostCutter    units.Length = 200       // Chosen
	usualFeed     units.Speed  = 60 * 25.4 // [router-practice] in foam
	usualRapid    units.Speed  = 5000      // Chosen: slow for a router, so that times are not too short
	usualStepDown units.Length = 25.4 / 4  // [router-practice] a quarter inch
	usualSafe     units.Length = 5         // Chosen
	leastSafe     units.Length = 3         // Chosen: a flat sheet bows up by less
	mostSafe      units.Length = 500       // Chosen
	usualOvercut  units.Length = 0.3       // Chosen: thin, and sure to cut through
	mostOvercut   units.Length = 3         // Chosen: more is a slip
	usualAccel                 = 250.0     // mm/s2; Chosen: a small machine
	usualArcTol   units.Length = 0.01      // Chosen: far below what foam shows
	usualRamp     units.Angle  = 10        // Chosen: gentle, and short in foam
	usualTabs                  = 4         // Chosen
	usualTab      units.Length = 8         // Chosen: width; broken off by hand
	usualTabUp    units.Length = 3         // Chosen: height
)

// settle returns m with defaults in place of what is missing or impossible, and says
// so; false where no program can be made.
func (c *computer) settle(m Machine) (Machine, bool) {
	if !positive(float64(m.Cutter)) {
		c.say(noCutter.At(machineAt, "The machine's card states no cutter: no programs are written."))
		return m, false
	}
	if m.Cutter < leastCutter || m.Cutter > mostCutter {
		c.say(noCutter.At(machineAt, "A cutter of %g mm is none: no programs are written.", m.Cutter.MM()))
		return m, false
	}
	c.feeds(&m)
	need(c, &m.StepDown, usualStepDown, 1000, "step down", "mm")
	need(c, &m.Overcut, usualOvercut, mostOvercut, "overcut", "mm")
	need(c, &m.ArcTol, usualArcTol, 0.2, "arc tolerance", "mm")
	need(c, &m.Ramp, usualRamp, 60, "ramp angle", "degrees")
	need(c, &m.TabWidth, usualTab, 1000, "tab width", "mm")
	need(c, &m.TabHeight, usualTabUp, 1000, "tab height", "mm")
	need(c, &m.SafeHeight, usualSafe, mostSafe, "safe height", "mm")
	need(c, &m.Accel, usualAccel, 1e6, "acceleration", "mm/s2")
	m.Ramp, m.ArcTol = max(m.Ramp, 1), max(m.ArcTol, 0.002)
	if m.Tabs == 0 {
		m.Tabs = usualTabs
	}
	if m.Flute > 0 && m.StepDown > m.Flute {
		m.StepDown = m.Flute
	}
	if m.SafeHeight < leastSafe {
		c.say(lowSafe.At(machineAt, "The safe height is %.1f mm above the sheet; %.1f mm is used.", m.SafeHeight, leastSafe).
			Measured(float64(m.SafeHeight), float64(leastSafe), "mm"))
		m.SafeHeight = leastSafe
	}
	return m, true
}

var machineAt = finding.Where{Field: "machine"}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 1) }

// feeds settles the speeds.
func (c *computer) feeds(m *Machine) {
	if !positive(float64(m.Feed)) {
		c.say(noFeed.At(machineAt, "The machine's card states no feed: %.0f mm/min (60 in/min) is used.", usualFeed))
		m.Feed = usualFeed
	}
	if !positive(float64(m.Plunge)) {
		m.Plunge = m.Feed / 3
		c.say(noFeed.At(machineAt, "The machine's card states no plunge: a third of the feed is used, %.0f mm/min.", m.Plunge).As(finding.Note))
	}
	if !positive(float64(m.Rapid)) {
		m.Rapid = max(usualRapid, m.Feed)
	}
	if !positive(float64(m.MaxFeed)) {
		m.MaxFeed = m.Rapid
	}
	for _, f := range []struct {
		name string
		v    *units.Speed
	}{{"feed", &m.Feed}, {"plunge", &m.Plunge}} {
		if *f.v > m.MaxFeed {
			c.say(tooFast.At(machineAt, "The %s is %.0f mm/min and the machine reaches %.0f: %.0f is used.", f.name, *f.v, m.MaxFeed, m.MaxFeed).
				Measured(float64(*f.v), float64(m.MaxFeed), "mm/min"))
			*f.v = m.MaxFeed
		}
	}
}

// need gives *v its default where it is 0, and says so where it is impossible or above
// most.
func need[Q ~float64](c *computer, v *Q, usual, most Q, name, unit string) {
	if *v != 0 && (!positive(float64(*v)) || *v > most) {
		c.say(badNumber.At(machineAt, "The %s of the machine is %g %s: %g is used.", name, float64(*v), unit, float64(usual)))
		*v = 0
	}
	if *v == 0 {
		*v = usual
	}
}

// used reports the settings.
func used(m Machine) Used {
	u := Used{Cutter: m.Cutter, Feed: m.Feed, Plunge: m.Plunge, Rapid: m.Rapid, StepDown: m.StepDown, SafeHeight: m.SafeHeight,
		Overcut: m.Overcut, Accel: m.Accel, ArcTol: m.ArcTol, Ramp: m.Ramp, Direction: "climb", Units: "mm"}
	if m.Against {
		u.Direction = "conventional"
	}
	if m.Inch {
		u.Units = "in"
	}
	return u
}
