package calendar

// A slot is where a piece of work was put: through breaks if it must, and over is
// the minutes past closing time.
type slot struct {
	start, end minute
	through    bool
	over       minute
}

// fit returns where work minutes go from m on: pausing when nobody is there, or, if
// unbroken, on end. The hours must be open.
//
// A later m never gives an earlier start or end; the search rests on that.
func (h hours) fit(m, work minute, unbroken bool) slot {
	if !unbroken {
		return h.broken(m, work)
	}
	on, day := h.longest()
	switch {
	case work <= on:
		return h.inStretch(m, work)
	case work <= day:
		return h.inDay(m, work)
	}
	return h.pastClosing(m, work)
}

// broken returns work minutes from m on, pausing when the shop is closed.
func (h hours) broken(m, work minute) slot {
	s := h.next(m)
	out := slot{start: s.from}
	for left := work; ; s = h.next(s.to) {
		if room := s.to - s.from; left > room {
			left -= room
			continue
		}
		out.end = s.from + left
		return out
	}
}

func (h hours) inStretch(m, work minute) slot {
	for s := h.next(m); ; s = h.next(s.to) {
		if s.to-s.from >= work {
			return slot{start: s.from, end: s.from + work}
		}
	}
}

func (h hours) inDay(m, work minute) slot {
	for s := h.next(m); ; s = h.next(s.to) {
		day := s.from / perDay
		spans := h.on(day)
		if closing := day*perDay + spans[len(spans)-1].to; closing-s.from >= work {
			return slot{start: s.from, end: s.from + work, through: true}
		}
	}
}

func (h hours) pastClosing(m, work minute) slot {
	_, longest := h.longest()
	for s := h.next(m); ; s = h.next(s.to) {
		day := s.from / perDay
		spans := h.on(day)
		opening, closing := day*perDay+spans[0].from, day*perDay+spans[len(spans)-1].to
		if s.from == opening && closing-opening == longest {
			return slot{start: s.from, end: s.from + work, over: s.from + work - closing}
		}
	}
}
