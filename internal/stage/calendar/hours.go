package calendar

import (
	"cmp"
	"fmt"
	"slices"

	"pourwright/internal/finding"
)

// A stretch is time on end when somebody is there, minutes after midnight.
type stretch struct{ from, to minute }

// hours is when somebody is there: a week of stretches, in order and apart from each
// other, index 0 being the weekday of day 1, and days on which it does not hold.
type hours struct {
	days  [7][]stretch
	off   map[minute]bool // by day, 0 the first
	onOff []stretch       // what holds on those days; none unless hours were widened
}

var dayNames = [7]string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

// newHours reads a week, Monday first, and turns it so that index 0 is day 1; a span
// that runs backwards or leaves the day is a finding and left out, spans that overlap
// are joined.
func newHours(field string, week [7][]Span, cal wall, say func(finding.Finding)) hours {
	var h hours
	for d, spans := range week {
		at := (d - cal.weekday() + 7) % 7
		for i, s := range spans {
			if !(s.From >= 0 && s.To <= 24 && s.From < s.To) {
				say(badHours.At(finding.Where{Field: fmt.Sprintf("%s.%s[%d]", field, dayNames[d], i)},
					"The hours %.4g to %.4g on %s are no stretch of a day and are left out.", float64(s.From), float64(s.To), dayNames[d]))
				continue
			}
			if from, to := minutesUp(s.From), minutesDown(s.To); from < to {
				h.days[at] = append(h.days[at], stretch{from, to})
			}
		}
		h.days[at] = joined(h.days[at])
	}
	return h
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

// without returns h with days off besides those it has.
func (h hours) without(days map[minute]bool) hours {
	off := map[minute]bool{}
	for _, m := range []map[minute]bool{h.off, days} {
		for d := range m {
			off[d] = true
		}
	}
	h.off = off
	return h
}

// both returns when h and o are both there.
func (h hours) both(o hours) hours {
	out := h.without(o.off)
	for d := range out.days {
		out.days[d] = nil
		for _, a := range h.days[d] {
			for _, b := range o.days[d] {
				if from, to := max(a.from, b.from), min(a.to, b.to); from < to {
					out.days[d] = append(out.days[d], stretch{from, to})
				}
			}
		}
	}
	return out
}

// closedDay is how much more it takes to come in on a day off than to stay longer on
// another. Chosen.
const closedDay = 4 * perHour

// widened returns h with every day begun and ended by x; a day off opens round noon
// once x is more than closedDay.
func (h hours) widened(x minute) hours {
	noon, half := 12*perHour, x-closedDay
	var off []stretch
	if half > 0 {
		off = []stretch{{max(0, noon-half), min(perDay, noon+half)}}
	}
	out := hours{off: h.off, onOff: off}
	for d, day := range h.days {
		out.days[d] = slices.Clone(day)
		if len(day) == 0 {
			out.days[d] = off
			continue
		}
		out.days[d][0].from = max(0, out.days[d][0].from-x)
		last := &out.days[d][len(day)-1]
		last.to = min(perDay, last.to+x)
	}
	return out
}

// open reports whether anybody is ever there.
func (h hours) open() bool {
	return slices.ContainsFunc(h.days[:], func(d []stretch) bool { return len(d) > 0 })
}

// on returns the stretches of a day.
func (h hours) on(day minute) []stretch {
	if h.off[day] {
		return h.onOff
	}
	return h.days[day%7]
}

// next returns the first stretch that ends after m, cut to start no earlier than m.
// The hours must be open.
func (h hours) next(m minute) stretch {
	for day := m / perDay; ; day++ {
		for _, s := range h.on(day) {
			if from, to := day*perDay+s.from, day*perDay+s.to; to > m {
				return stretch{max(from, m), to}
			}
		}
	}
}

// longest returns the longest stretch and the longest day from opening to closing,
// minutes.
func (h hours) longest() (on, day minute) {
	for _, d := range h.days {
		for _, s := range d {
			on = max(on, s.to-s.from)
		}
		if len(d) > 0 {
			day = max(day, d[len(d)-1].to-d[0].from)
		}
	}
	return on, day
}
