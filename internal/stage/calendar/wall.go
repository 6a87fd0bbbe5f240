package calendar

import (
	"fmt"
	"math"
	"time"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A minute counts minutes of wall time after midnight of day 1.
type minute int64

const (
	perHour minute = 60
	perDay  minute = 24 * perHour
	perWeek minute = 7 * perDay
)

// slack keeps 0.5 h from becoming 31 minutes by a rounding error, in minutes.
const slack = 1e-6

func (m minute) hours() units.Duration { return units.Duration(float64(m) / float64(perHour)) }

func minutesUp(d units.Duration) minute {
	return minute(math.Ceil(float64(d)*float64(perHour) - slack))
}

func minutesDown(d units.Duration) minute {
	return minute(math.Floor(float64(d)*float64(perHour) + slack))
}

// A wall turns minutes into the words on the wall calendar.
type wall struct {
	day1 time.Time // zero without a date
}

// newCalendar reads the date of day 1; a date that is none is a finding, and the
// days are numbered.
func newCalendar(start string, say func(finding.Finding)) wall {
	if start == "" {
		return wall{}
	}
	day, err := time.Parse(time.DateOnly, start)
	if err != nil {
		say(badStart.At(finding.Where{Field: "shop.start"}, "The start %q is no date, so days are numbered and day 1 is taken as a Monday.", start))
		return wall{}
	}
	return wall{day}
}

// weekday returns the index of day 1, Monday 0.
func (w wall) weekday() int {
	if w.day1.IsZero() {
		return 0
	}
	return (int(w.day1.Weekday()) + 6) % 7
}

// clock returns "15:30".
func (w wall) clock(m minute) string {
	rest := m % perDay
	return fmt.Sprintf("%02d:%02d", rest/perHour, rest%perHour)
}

// text returns "Thu 2027-03-18 15:30" or "day 17 15:30".
func (w wall) text(m minute) string {
	day, clock := m/perDay, w.clock(m)
	if w.day1.IsZero() {
		return fmt.Sprintf("day %d %s", day+1, clock)
	}
	return w.day1.AddDate(0, 0, int(day)).Format("Mon 2006-01-02 ") + clock
}
