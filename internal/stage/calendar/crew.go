package calendar

import (
	"fmt"
	"math/bits"
	"strings"
	"time"

	"pourwright/internal/finding"
)

// mostPeople bounds the shop. Chosen: more never stand round one form.
const mostPeople = 6

// A crew is some of the people working together, by bits of their indexes, when all of
// them are there.
type crew struct {
	who   uint
	hours hours
}

// A shop is its people and the crews that can be made of them.
type shop struct {
	names  []string
	hours  []hours
	called []bool // come only where more than one is asked for
}

// newShop reads the people; without any, one pair of hands keeps the shop's hours.
func newShop(in Input, cal wall, say func(finding.Finding)) shop {
	usual := newHours("shop.hours", in.Hours, cal, say).without(daysOff("shop.closed", in.Closed, cal, say))
	people := in.People
	if len(people) == 0 {
		people = []Person{{Name: "maker"}}
	}
	if len(people) > mostPeople {
		say(badPeople.At(finding.Where{Field: "shop.people"}, "The shop lists %d people; the first %d are planned for.", len(people), mostPeople))
		people = people[:mostPeople]
	}
	var s shop
	for i, p := range people {
		field := fmt.Sprintf("shop.people[%d]", i)
		h := usual
		if p.Hours != nil {
			h = newHours(field+".hours", *p.Hours, cal, say).without(usual.off)
		}
		h = h.without(daysOff(field+".away", p.Away, cal, say))
		s.names, s.hours, s.called = append(s.names, p.Name), append(s.hours, h), append(s.called, p.Called)
	}
	return s
}

// open reports whether anybody who works alone is ever there.
func (s shop) open() bool {
	for i, h := range s.hours {
		if h.open() && !s.called[i] {
			return true
		}
	}
	return false
}

// crews returns every crew of so many hands that is ever there together, those with
// earlier people first. One who is called in does not work alone.
func (s shop) crews(hands int) []crew {
	var out []crew
	for who := uint(1); who < 1<<len(s.names); who++ {
		if bits.OnesCount(who) != hands {
			continue
		}
		if c := (crew{who, s.together(who)}); c.hours.open() && (hands > 1 || !s.called[bits.TrailingZeros(who)]) {
			out = append(out, c)
		}
	}
	return out
}

// together returns when all of who are there.
func (s shop) together(who uint) hours {
	first, out := true, hours{}
	for i, h := range s.hours {
		switch {
		case who&(1<<i) == 0:
		case first:
			first, out = false, h
		default:
			out = out.both(h)
		}
	}
	return out
}

// outside reports whether some of a placed job is when its people are not there by
// their hours; a break worked through is not.
func (s shop) outside(j job) bool {
	if j.work == 0 {
		return false
	}
	usual := s.together(j.crew.who).fit(j.start, j.work, j.unbroken)
	return usual.start != j.start || usual.end != j.end || usual.over > 0
}

// widened returns the shop with everybody's day begun and ended by x.
func (s shop) widened(x minute) shop {
	out := shop{names: s.names, called: s.called}
	for _, h := range s.hours {
		out.hours = append(out.hours, h.widened(x))
	}
	return out
}

// list returns the names of a crew.
func (s shop) list(who uint) []string {
	out := []string{}
	for i, name := range s.names {
		if who&(1<<i) != 0 {
			out = append(out, name)
		}
	}
	return out
}

// alike reports whether two crews differ only by people who keep the same hours and of
// whom none has work yet: then it is all the same which of them comes.
func (s shop) alike(a, b, busy uint) bool {
	x, y := a&^b, b&^a
	if (x|y)&busy != 0 {
		return false
	}
	return s.signs(x) == s.signs(y)
}

func (s shop) signs(who uint) string {
	var out strings.Builder
	for i := range s.hours {
		if who&(1<<i) != 0 {
			fmt.Fprint(&out, s.called[i], s.hours[i])
		}
	}
	return out.String()
}

// daysOff reads dates into days from day 1 on; earlier ones do not matter, and without
// a date of day 1 none can be told.
func daysOff(field string, dates []string, cal wall, say func(finding.Finding)) map[minute]bool {
	off := map[minute]bool{}
	for i, text := range dates {
		where := finding.Where{Field: fmt.Sprintf("%s[%d]", field, i)}
		day, err := time.Parse(time.DateOnly, text)
		switch {
		case err != nil:
			say(badDay.At(where, "The day off %q is no date and is left out.", text))
		case cal.day1.IsZero():
			say(badDay.At(where, "The day off %s cannot be placed: the calendar has no first day.", text))
		case !day.Before(cal.day1):
			off[minute(day.Sub(cal.day1).Hours()/24+0.5)] = true
		}
	}
	return off
}
