package resin

import (
	"context"
	"fmt"
	"math"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// mostShown is how many ways of pouring are shown, and mostOthers how many other resins.
// Chosen.
const mostShown, mostOthers = 3, 2

// compare shows the chosen way beside others that differ from it: the quickest, the one
// with fewest lifts, the coolest, and what else there is.
func (c *computer) compare(r *Result, schemes []Scheme) {
	r.Alternatives = []Alternative{c.alternative(schemes[0], true)}
	picks := []struct {
		kind   string
		before func(a, b Scheme) bool
	}{
		{"least elapsed", func(a, b Scheme) bool { return a.Within == b.Within && a.done() < b.done() || a.Within && !b.Within }},
		{"fewest lifts", func(a, b Scheme) bool { return len(a.Pours) < len(b.Pours) }},
		{"coolest", func(a, b Scheme) bool { return a.Forecast.Peak < b.Forecast.Peak }},
		{"other", func(a, b Scheme) bool { return order(a, b) < 0 }},
	}
	taken := []Scheme{schemes[0]}
	for _, p := range picks {
		best := -1
		for i, s := range schemes {
			if i > 0 && (best < 0 || p.before(s, schemes[best])) {
				best = i
			}
		}
		if best < 0 || len(taken) >= mostShown || !apart(schemes[best], taken) || p.before(schemes[0], schemes[best]) {
			continue
		}
		taken = append(taken, schemes[best])
		a := c.alternative(schemes[best], false)
		a.Kind, a.Why = p.kind, whyNot(schemes[best], schemes[0], c.guard())
		r.Alternatives = append(r.Alternatives, a)
	}
	for i, s := range schemes { // fill up with what differs
		if i > 0 && len(taken) < mostShown && apart(s, taken) {
			taken = append(taken, s)
			a := c.alternative(s, false)
			a.Kind, a.Why = "other", whyNot(s, schemes[0], c.guard())
			r.Alternatives = append(r.Alternatives, a)
		}
	}
}

// apart reports whether s differs from all of them in a way that a maker would notice:
// other lifts, half a day, or 5 K. Chosen.
func apart(s Scheme, from []Scheme) bool {
	for _, o := range from {
		if len(o.Pours) == len(s.Pours) && math.Abs(float64(o.done()-s.done())) < 12 && math.Abs(float64(o.Forecast.Peak-s.Forecast.Peak)) < 5 {
			return false
		}
	}
	return true
}

// alternative prices a scheme: its hours of hands are those of mixing its buckets, and
// half an hour for each scuffing.
func (c *computer) alternative(s Scheme, chosen bool) Alternative {
	a := Alternative{Peak: s.Forecast.Peak, Low: min(s.Low.Peak, s.Forecast.Peak), High: max(s.High.Peak, s.Forecast.Peak), Dam: s.Forecast.Dam, DamHigh: max(s.High.Dam, s.Forecast.Dam), Column: s.Bracket,
		Done: finite(s.done()), When: momentOf(float64(s.done()), 0, float64(s.Forecast.End)), Scuff: append([]int{}, s.Scuff...), Within: s.Within, Sure: s.Sure, Chosen: chosen, Resin: c.in.Card.Name, Clock: units.Duration(clockOf(s.Pours))}
	if chosen {
		a.Kind = "chosen"
	}
	room := float64(c.in.Bucket) * (1 - float64(min(atLeastZero(c.in.Freeboard), 0.95)))
	for _, p := range s.Pours {
		a.Lifts = append(a.Lifts, p.To-p.From)
		a.At = append(a.At, p.At)
		if n := math.Ceil(float64(c.volumeAt(p.To)-c.volumeAt(p.From)) / room); known(n) && room > 0 {
			a.Buckets += int(min(max(n, 1), 1e6))
			a.Hands += units.Duration(max(n, 1)) * mixing
		}
	}
	a.Hands += units.Duration(len(s.Scuff)) * scuffing
	a.Sentence = sentence(a)
	return a
}

const scuffing units.Duration = 0.5 // h to sand, wash and dry one lift. Common practice, no source

func sentence(a Alternative) string {
	text := fmt.Sprintf("%s, peak %.0f C, likely %.0f to %.0f C, ", lifts(len(a.Lifts)), a.Peak, a.Low, a.High)
	if a.When.Later {
		text += fmt.Sprintf("hard later than %.0f h", a.When.H)
	} else {
		text += fmt.Sprintf("hard after %.0f h", a.When.H)
	}
	if len(a.Scuff) > 0 {
		text += fmt.Sprintf(", %d to scuff", len(a.Scuff))
	}
	if !a.Within {
		text += ", too hot"
	}
	return text
}

func lifts(n int) string { return units.Count(n, "lift", "lifts") }

// whyNot says what the chosen scheme has over s.
func whyNot(s, chosen Scheme, g Guard) string {
	var why []string
	f := s.Forecast
	switch {
	case f.Peak > g.Peak:
		why = append(why, fmt.Sprintf("its peak of %.0f C passes the %.0f C asked for", f.Peak, g.Peak))
	case f.Dam > g.Dam:
		why = append(why, fmt.Sprintf("the dam's face gets %.0f C and bears %.0f C", f.Dam, g.Dam))
	case f.Foam > g.Foam:
		why = append(why, fmt.Sprintf("the foam gets %.0f C and bears %.0f C", f.Foam, g.Foam))
	case !s.Sure && chosen.Sure:
		why = append(why, fmt.Sprintf("one time in ten it passes a limit: a peak of %.0f C", s.High.Peak))
	}
	if more := len(s.Scuff) - len(chosen.Scuff); more > 0 {
		why = append(why, units.Count(more, "more lift", "more lifts")+" to scuff")
	}
	if later := s.done() - chosen.done(); later >= sameTime && known(later) {
		why = append(why, fmt.Sprintf("hard %.0f h later", later))
	}
	if more := len(s.Pours) - len(chosen.Pours); more > 0 {
		why = append(why, units.Count(more, "lift", "lifts")+" more to mix")
	}
	if len(why) == 0 {
		return "no sooner done for it"
	}
	return strings.Join(why, "; ")
}

// others adds the best way of pouring with each other resin that the maker would take.
func (c *computer) others(ctx context.Context, r *Result, report func(float64, string)) error {
	for i, card := range c.in.Others[:min(len(c.in.Others), mostOthers)] {
		if card.Name == c.in.Card.Name {
			continue
		}
		a, err := c.other(ctx, card, func(_ float64, doing string) { say(report, 0.99, card.Name+": "+doing) })
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err == nil && a != nil {
			a.Kind, a.Why = "another resin", otherWhy(*a, r.Alternatives[0])
			r.Alternatives = append(r.Alternatives, *a)
		} else {
			c.say(noOther.At(finding.Where{Field: fmt.Sprintf("resin.others[%d]", i)}, "%s was not compared: %s.", card.Name, reason(err)))
		}
	}
	return nil
}

// other looks for lifts with another card.
func (c *computer) other(ctx context.Context, card material.Resin, report func(float64, string)) (*Alternative, error) {
	with := &computer{in: c.in}
	with.in.Card, with.in.Own = card, nil
	o, why := newOven(with.in)
	if o == nil {
		return nil, fmt.Errorf("%s", strings.TrimPrefix(why, "since "))
	}
	p := &planner{in: o, guard: with.guard(), week: with.in.Hours, report: report}
	ways := with.ways()
	schemes, err := p.search(ctx, ways[:min(len(ways), 2)])
	if err != nil || len(schemes) == 0 {
		return nil, err
	}
	a := with.alternative(schemes[0], false)
	return &a, nil
}

func reason(err error) string {
	if err == nil {
		return "no lifts were found"
	}
	return err.Error()
}

// otherWhy compares another resin's best with what was chosen.
func otherWhy(a, chosen Alternative) string {
	switch {
	case !a.Within:
		return "no lifts keep within the limits"
	case !a.Sure && chosen.Sure:
		return fmt.Sprintf("one time in ten it passes a limit: a peak of %.0f C", a.High)
	case a.When.Later || a.When.H > chosen.When.H:
		return fmt.Sprintf("hard %.0f h later", a.When.H-chosen.When.H)
	}
	return fmt.Sprintf("it is not the resin on hand; it would be hard %.0f h sooner", chosen.When.H-a.When.H)
}
