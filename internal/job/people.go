package job

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pourwright/internal/typed"
)

// Bounds of a shop. Chosen: the calendar searches every choice of who does what, and
// nobody is away for more than a year of a piece.
const (
	mostPeople  = 6
	longestAway = 366 // days
)

// people reads who works in the shop.
func (r *resolver) people() {
	names := map[string]bool{}
	for i, t := range r.doc.Shop.People {
		field := fmt.Sprintf("shop.people[%d]", i)
		if i == mostPeople {
			r.say(tooMany, field, "The shop lists %d people; the first %d are planned for.", len(r.doc.Shop.People), mostPeople)
			return
		}
		p := Person{Name: strings.TrimSpace(string(t.Name))}
		switch {
		case p.Name == "":
			r.missing(field+".name", "write what this person is called")
			p.Name = fmt.Sprintf("person %d", i+1)
		case names[p.Name]:
			r.say(sameName, field+".name", "Two people are called %s.", p.Name)
			p.Name = fmt.Sprintf("%s %d", p.Name, i+1)
		}
		names[p.Name] = true
		p.Hours = r.hours(field+".hours", p.Name+" is never there; the shop's hours are used.", t.Hours, r.job.Shop.Hours)
		p.Away = r.daysOff(field+".away", t.Away)
		r.job.Shop.People = append(r.job.Shop.People, p)
	}
}

// daysOff reads days and stretches of days into dates, in order, each once.
func (r *resolver) daysOff(field string, texts typed.List) []string {
	var out []string
	for i, text := range texts {
		at := fmt.Sprintf("%s[%d]", field, i)
		if len(texts) == 1 {
			at = field
		}
		from, to, ok := r.stretchOfDays(at, text)
		for d := from; ok && !d.After(to); d = d.AddDate(0, 0, 1) {
			out = append(out, d.Format(time.DateOnly))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// stretchOfDays reads 2027-03-08, or 2027-03-08 to 2027-03-12.
func (r *resolver) stretchOfDays(field, text string) (from, to time.Time, ok bool) {
	first, last, stretch := strings.Cut(text, " to ")
	if !stretch {
		last = first
	}
	from, err := time.Parse(time.DateOnly, strings.TrimSpace(first))
	to, err2 := time.Parse(time.DateOnly, strings.TrimSpace(last))
	switch {
	case err != nil || err2 != nil:
		r.say(badDayOff, field, "%s is %q, which is no day.", field, text)
	case to.Before(from):
		r.say(badDayOff, field, "%s: %s ends before it begins.", field, text)
	case to.Sub(from).Hours() > longestAway*24:
		r.say(badDayOff, field, "%s: %s is more than a year.", field, text)
	default:
		return from, to, true
	}
	return from, to, false
}
