package job

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourwright/internal/finding"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

var weekdays = [7]string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}

func (r *resolver) shop() {
	var usual [7][]Span
	for d := range 5 {
		usual[d] = []Span{{8, 17}}
	}
	s := &r.job.Shop
	s.Hours = r.hours("shop.hours", "The shop is never open; Monday to Friday 8:00-17:00 is used.", r.doc.Shop.Hours, usual)
	s.Start = r.start(string(r.doc.Shop.Start))
	s.Closed = r.daysOff("shop.closed", r.doc.Shop.Closed)
	r.people()
}

// start reads the first day.
func (r *resolver) start(text string) string {
	if text == "" {
		return ""
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		f := r.say(badDate, "shop.start", "shop.start %q is not a day; the plan counts days.", text)
		for _, form := range []string{"2.1.2006", "2006/1/2", "2006-1-2", "20060102", "2 January 2006", "January 2, 2006"} {
			if d, err := time.Parse(form, text); err == nil {
				f.Remedy = "did you mean " + d.Format(time.DateOnly) + "?"
			}
		}
		return ""
	}
	if day.Year() < 2000 || day.Year() > 2199 {
		r.say(badDate, "shop.start", "The year %d is not near; the plan counts days.", day.Year())
		return ""
	}
	if n := (int(day.Weekday()) + 6) % 7; len(r.job.Shop.Hours[n]) == 0 {
		f := r.say(unusual, "shop.start", "%s is a %s, when the shop is closed.", text, day.Weekday())
		f.Severity = finding.Note
		f.Remedy = "start on an open day, or open the shop on that one"
	}
	return text
}

// hours reads a week; days not written are closed. Without any hours it is usual, and
// never says so.
func (r *resolver) hours(field, never string, h *HoursText, usual [7][]Span) [7][]Span {
	var week [7][]Span
	if h == nil {
		return usual
	}
	open, before := false, len(r.found)
	for d, texts := range [7]typed.List{h.Mon, h.Tue, h.Wed, h.Thu, h.Fri, h.Sat, h.Sun} {
		week[d] = r.day(field+"."+weekdays[d], texts)
		open = open || len(week[d]) > 0
	}
	if !open && len(r.found) > before {
		return usual // said already
	}
	if !open {
		r.say(badHours, field, "%s", never)
		return usual
	}
	return week
}

func (r *resolver) day(field string, texts typed.List) []Span {
	var spans []Span
	for _, text := range texts {
		for _, part := range strings.Split(text, ",") {
			part = strings.ToLower(strings.TrimSpace(part))
			if part == "" || part == "closed" || part == "-" {
				continue
			}
			s, err := parseSpan(part)
			if err != nil {
				r.say(badHours, field, "%s: %v.", field, err)
				continue
			}
			spans = append(spans, s)
		}
	}
	slices.SortFunc(spans, func(a, b Span) int { return int(60 * (a.From - b.From)) })
	for i := 1; i < len(spans); i++ {
		if spans[i].From < spans[i-1].To {
			r.say(badHours, field, "%s: %s and %s overlap.", field, spans[i-1], spans[i])
			return spans[:i]
		}
	}
	return spans
}

// String writes the span as it is typed.
func (s Span) String() string { return clock(s.From) + "-" + clock(s.To) }

func clock(d units.Duration) string {
	m := int(float64(d)*60 + 0.5)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

var spanForm = regexp.MustCompile(`^(\d{1,2})(?:[:.](\d{2}))?\s*(?:-|–|to)\s*(\d{1,2})(?:[:.](\d{2}))?$`)

// parseSpan reads 8:00-17:00, 8-17 or 8:00 to 17:00.
func parseSpan(text string) (Span, error) {
	m := spanForm.FindStringSubmatch(text)
	if m == nil {
		return Span{}, fmt.Errorf("%q is not a stretch of hours", text)
	}
	from, ok := hour(m[1], m[2])
	to, ok2 := hour(m[3], m[4])
	switch {
	case !ok || !ok2:
		return Span{}, fmt.Errorf("%q has an hour or minute no clock shows", text)
	case to <= from:
		return Span{}, fmt.Errorf("%q ends before it begins", text)
	}
	return Span{from, to}, nil
}

// hour returns hours after midnight; 24:00 is the end of the day.
func hour(h, m string) (units.Duration, bool) {
	hours, _ := strconv.Atoi(h)
	minutes, _ := strconv.Atoi("0" + m)
	if hours > 24 || minutes > 59 || hours == 24 && minutes > 0 {
		return 0, false
	}
	return units.Duration(hours) + units.Duration(minutes)/60, true
}

// extras reads supports and other things delivered with the piece, supports first.
func (r *resolver) extras() {
	r.job.Extras = []Extra{}
	for i, t := range r.doc.Supports {
		r.extra(fmt.Sprintf("supports[%d]", i), t)
	}
	for i, t := range r.doc.Extras {
		r.extra(fmt.Sprintf("extras[%d]", i), t)
	}
}

func (r *resolver) extra(field string, t ExtraText) {
	e := Extra{Name: string(t.Name), Count: r.whole(field+".count", t.Count, 1, 1, 1000)}
	if e.Name == "" {
		r.missing(field+".name", "write what it is")
		e.Name = "unnamed"
	}
	e.Length, _ = r.length(field+".length", t.Length, 0, likelyExtra)
	e.Field = field
	r.holes(field, t, &e)
	if t.Tube != "" {
		if tube, err := r.shelf.Tube(string(t.Tube)); err == nil {
			e.Tube = &tube
			e.Mass = units.Mass(tube.MassPerM.Value * e.Length.MM() / 1000 * float64(e.Count))
		} else {
			r.say(notOnShelf, field+".tube", "%s; its mass is not counted.", err.Error()).Remedy = err.Remedy()
		}
		if e.Length == 0 {
			r.missing(field+".length", "write the length of one tube")
		}
	}
	r.mass(field, t, &e)
	r.job.Extras = append(r.job.Extras, e)
}

// mass reads a stated mass, which stands before one computed from a tube.
func (r *resolver) mass(field string, t ExtraText, e *Extra) {
	if t.Mass == "" {
		if t.Tube == "" {
			r.missing(field+".mass", "write the mass of all of them, or a tube and its length")
		}
		return
	}
	m, ok := parse(r, field+".mass", string(t.Mass), func(s string) (units.Mass, error) { return units.ParseMass(s, "kg") })
	switch {
	case !ok:
	case m <= 0:
		r.say(notPositive, field+".mass", "%s weighs %s.", e.Name, t.Mass).Remedy = "write a mass above zero"
	case m > 2000:
		r.say(wrongUnit, field+".mass", "%s weighs %s; that is no part of a piece of furniture.", e.Name, units.FormatMass(m, units.Metric)).Remedy = "check the mass and its unit"
	default:
		e.Mass = m
	}
}
