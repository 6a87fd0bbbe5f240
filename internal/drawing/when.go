package drawing

import (
	"fmt"
	"math"
	"time"

	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/units"
)

// Later writes the wall-clock time that comes d after a start as the calendar writes it,
// "Tue 2027-03-16 13:00" or "day 17 13:00", as "Wed 17 Mar 18:30" or "day 18 18:30". It
// returns "" where start is no such time or d no number. A change of the clocks is not
// counted.
func Later(start string, d units.Duration) string {
	hours := float64(d)
	if math.IsNaN(hours) || math.Abs(hours) > 1e5 {
		return ""
	}
	minutes := int(math.Round(hours * 60))
	if t, err := time.Parse("Mon 2006-01-02 15:04", start); err == nil {
		return t.Add(time.Duration(minutes) * time.Minute).Format("Mon 2 Jan 15:04")
	}
	var day, hour, minute int
	if n, err := fmt.Sscanf(start, "day %d %d:%d", &day, &hour, &minute); err != nil || n != 3 {
		return ""
	}
	all := (day-1)*24*60 + hour*60 + minute + minutes
	return fmt.Sprintf("day %d %02d:%02d", all/(24*60)+1, all/60%24, all%60)
}

// Forecast rounds a computed time so that a clock time made of it is no finer than it:
// to ten minutes below six hours, to the half hour below twelve, to the hour above.
func Forecast(d units.Duration) units.Duration {
	step := 1.0 / 6
	switch h := math.Abs(float64(d)); {
	case h >= 12:
		step = 1
	case h >= 6:
		step = 0.5
	}
	return units.Duration(math.Round(float64(d)/step) * step)
}

// PourStep returns the calendar's step of a lift; ok only where it has a time.
func PourStep(p *plan.Plan, lift int) (s calendar.Step, ok bool) {
	id := fmt.Sprintf("lift-%d", lift)
	for _, s := range p.Calendar.Steps {
		if s.ID == id && s.Start != "" {
			return s, true
		}
	}
	return calendar.Step{}, false
}

// Lateness returns by how much the calendar pours a lift later after the first one than
// the cure was computed for; 0 where one of the two has no time.
func Lateness(p *plan.Plan, lift int) units.Duration {
	first, ok1 := PourStep(p, 1)
	own, ok2 := PourStep(p, lift)
	if !ok1 || !ok2 || lift < 1 || lift > len(p.Resin.Lifts) || !p.Resin.Cure.Computed {
		return 0
	}
	return own.StartH - first.StartH - p.Resin.Lifts[lift-1].At
}
