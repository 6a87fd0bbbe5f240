package calendar

import (
	"cmp"
	"fmt"
	"slices"

	"pourwright/internal/finding"
)

// A stretch is time on end when somebody is there, minutes after midnight.
type stretch struct{ from, to minute }

// A week is the shop's hours, Monday first: each day's stretches in order, apart
// from each other.
type week struct{ days [7][]stretch }

var dayNames = [7]string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

// newWeek reads the hours; a span that runs backwards or leaves the day is a
// finding and left out, spans that overlap are joined.
func newWeek(hours [7][]Span, say func(finding.Finding)) week {
	var w week
	for d, spans := range hours {
		for i, s := range spans {
			if !(s.From >= 0 && s.To <= 24 && s.From < s.To) {
				say(badHours.At(finding.Where{Field: fmt.Sprintf("shop.hours.%s[%d]", dayNames[d], i)},
					"The hours %.4g to %.4g on %s are no stretch of a day and are left out.", float64(s.From), float64(s.To), dayNames[d]))
				continue
			}
			if from, to := minutesUp(s.From), minutesDown(s.To); from < to {
				w.days[d] = append(w.days[d], stretch{from, to})
			}
		}
		w.days[d] = joined(w.days[d])
	}
	return w
}

func joined(spans []stretch) []stretch {
	slices.SortFunc(spans, func(a, b stretch) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out []stretch
	for _, s := range spans {
		if n := len(out); n > 0 && s.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// open reports whether anybody is ever there.
func (w week) open() bool {
	return slices.ContainsFunc(w.days[:], func(d []stretch) bool { return len(d) > 0 })
}

// turned returns w with day 1 on weekday d, so that index 0 is day 1.
func (w week) turned(d int) week {
	var out week
	for i := range out.days {
		out.days[i] = w.days[(i+d)%7]
	}
	return out
}

// next returns the first stretch that ends after m, cut to start no earlier than
// m. The week must be open.
func (w week) next(m minute) stretch {
	for day := m / perDay; ; day++ {
		for _, s := range w.days[day%7] {
			if from, to := day*perDay+s.from, day*perDay+s.to; to > m {
				return stretch{max(from, m), to}
			}
		}
	}
}

// closing returns when the shop last closed at or before m; m itself while it is
// open, 0 if it has not opened yet.
func (w week) closing(m minute) minute {
	for day := m / perDay; day >= max(0, m/perDay-7); day-- {
		for _, s := range slices.Backward(w.days[day%7]) {
			if from := day*perDay + s.from; from <= m {
				return min(m, day*perDay+s.to)
			}
		}
	}
	return 0
}

// longest returns the longest stretch and the longest day from opening to closing,
// minutes.
func (w week) longest() (on, day minute) {
	for _, d := range w.days {
		for _, s := range d {
			on = max(on, s.to-s.from)
		}
		if len(d) > 0 {
			day = max(day, d[len(d)-1].to-d[0].from)
		}
	}
	return on, day
}

// A slot is where a piece of work was put: through breaks if it must, and over is
// the minutes past closing time.
type slot struct {
	start, end minute
	through    bool
	over       minute
}

// broken returns work minutes from m on, pausing when the shop is closed.
func (w week) broken(m, work minute) slot {
	s := w.next(m)
	out := slot{start: s.from}
	for left := work; ; s = w.next(s.to) {
		if room := s.to - s.from; left > room {
			left -= room
			continue
		}
		out.end = s.from + left
		return out
	}
}

// unbroken returns work minutes on end from m on: in one stretch if any is long
// enough, else through the breaks of a day, else past closing time from an opening.
func (w week) unbroken(m, work minute) slot {
	on, day := w.longest()
	switch {
	case work <= on:
		return w.inStretch(m, work)
	case work <= day:
		return w.inDay(m, work)
	}
	return w.pastClosing(m, work)
}

func (w week) inStretch(m, work minute) slot {
	for s := w.next(m); ; s = w.next(s.to) {
		if s.to-s.from >= work {
			return slot{start: s.from, end: s.from + work}
		}
	}
}

func (w week) inDay(m, work minute) slot {
	for s := w.next(m); ; s = w.next(s.to) {
		day := s.from / perDay
		spans := w.days[day%7]
		if closing := day*perDay + spans[len(spans)-1].to; closing-s.from >= work {
			return slot{start: s.from, end: s.from + work, through: true}
		}
	}
}

func (w week) pastClosing(m, work minute) slot {
	_, longest := w.longest()
	for s := w.next(m); ; s = w.next(s.to) {
		day := s.from / perDay
		spans := w.days[day%7]
		opening, closing := day*perDay+spans[0].from, day*perDay+spans[len(spans)-1].to
		if s.from == opening && closing-opening == longest {
			return slot{start: s.from, end: s.from + work, over: s.from + work - closing}
		}
	}
}
