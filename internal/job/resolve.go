package job

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// Resolve turns a document into a job with the cards of shelf. All that is wrong is
// reported at once; where a value cannot stand, its default takes its place and the
// finding says so. The job is nil only when no box or no shell fits the piece, so
// that nothing could be drawn.
func Resolve(d *Document, shelf material.Shelf) (*Job, []finding.Finding) {
	r := &resolver{doc: d, job: &Job{Places: d.places}, found: []finding.Finding{}}
	r.head()
	r.shelf = r.cards(shelf)
	whole := r.box()
	r.shell()
	r.foam()
	r.form()
	r.basin()
	r.mixing()
	r.resin()
	r.room()
	r.casting()
	r.cure()
	r.shop()
	r.extras()
	r.outlineOfBox()
	r.stock()
	r.base()
	r.job.Machine = card(r, "machine", d.Machine, defaultMachine, r.shelf.Machine)
	r.offcuts()
	r.knockout()
	whole = whole && r.shellFits()
	r.basinFits(whole)
	r.partsFit(whole)
	if !whole {
		return nil, r.found
	}
	return r.job, r.found
}

type resolver struct {
	doc   *Document
	shelf material.Shelf
	job   *Job
	found []finding.Finding
}

// say reports r at a field and returns the finding for a sharper remedy.
func (r *resolver) say(rule finding.Rule, field, format string, args ...any) *finding.Finding {
	r.found = append(r.found, rule.At(r.doc.places.At(field), format, args...))
	return &r.found[len(r.found)-1]
}

// missing reports a required field, unless it stands there and was reported already.
func (r *resolver) missing(field, remedy string) {
	if !slices.ContainsFunc(r.found, func(f finding.Finding) bool { return f.Where.Field == field }) {
		r.say(missing, field, "%s is missing.", field).Remedy = remedy
	}
}

func (r *resolver) head() {
	d, j := r.doc, r.job
	if d.Pourwright != "" && d.Pourwright != Format {
		r.say(newerForm, "pourwright", "The document has form %s; this program reads form %s.", d.Pourwright, Format)
	}
	j.Name, j.Version, j.Client, j.Notes = string(d.Name), string(d.Version), string(d.Client), string(d.Notes)
	if j.Name == "" {
		r.say(missing, "name", "The piece has no name.").Remedy = "write name: and what the piece is called"
		j.Name = "unnamed piece"
	}
	j.Units = r.word("units", d.Units, "mm", "in")
}

// cards extends the shelf by the document's own.
func (r *resolver) cards(shelf material.Shelf) material.Shelf {
	if r.doc.Materials == nil {
		return shelf
	}
	file := *r.doc.Materials
	if file.Origin == "" {
		file.Origin = typed.Choice(material.DataSheet) // the maker copied it from somewhere
	}
	out, found := material.Extend(shelf, file, r.doc.places, "materials", r.bare())
	r.found = append(r.found, found...)
	return out
}

// bare says how bare numbers on cards are read: as everywhere in the document.
func (r *resolver) bare() material.Bare {
	return material.Bare{Length: r.job.Units, Density: "kg/m3"}
}

// word returns one of the allowed words; the first is the default.
func (r *resolver) word(field string, text typed.Choice, allowed ...string) string {
	w := strings.ToLower(string(text))
	switch {
	case w == "":
	case slices.Contains(allowed, w):
		return w
	default:
		f := r.say(unknownWord, field, "%s is %q; %s is used.", field, text, allowed[0])
		f.Remedy = "write " + strings.Join(allowed, " or ")
		if s := typed.Suggest(w, allowed); s != "" {
			f.Remedy = "did you mean " + s + "? " + f.Remedy
		}
	}
	return allowed[0]
}

// card looks a card up by name; without a name, or with an unknown one, the
// standard card is used.
func card[T any](r *resolver, field string, name typed.Text, standard string, find func(string) (T, *material.NotFound)) T {
	if name != "" {
		c, err := find(string(name))
		if err == nil {
			return c
		}
		f := r.say(notOnShelf, field, "%s; %s is used.", err.Error(), standard)
		f.Remedy = err.Remedy()
	}
	c, err := find(standard)
	if err != nil {
		r.say(notOnShelf, field, "%s.", err.Error()).Remedy = err.Remedy()
	}
	return c
}

// parse reads a typed measure; ok is false with a finding when it cannot be read.
func parse[Q ~float64](r *resolver, field, text string, read func(string) (Q, error)) (v Q, ok bool) {
	v, err := read(text)
	if err == nil {
		return v, true
	}
	f := r.say(unreadable, field, "%s %s.", field, sentence(err))
	var pe *units.ParseError
	if errors.As(err, &pe) {
		f.Remedy = pe.Remedy
	}
	return 0, false
}

// sentence words a parse error after a field's name.
func sentence(err error) string {
	var pe *units.ParseError
	if errors.As(err, &pe) {
		return fmt.Sprintf("is %q: %s", pe.Text, pe.Problem)
	}
	return "cannot be read: " + err.Error()
}

// whole reads a count from low to high.
func (r *resolver) whole(field string, text typed.Number, standard, low, high int) int {
	if text == "" {
		return standard
	}
	v, ok := parse(r, field, string(text), units.ParseNumber)
	if !ok {
		return standard
	}
	if v != float64(int(v)) || int(v) < low || int(v) > high {
		r.say(unreadable, field, "%s is %s; %d is used.", field, text, standard).Remedy = fmt.Sprintf("write a whole number from %d to %d", low, high)
		return standard
	}
	return int(v)
}

// share reads a share from nothing to most.
func (r *resolver) share(field string, text typed.Fraction, standard, most units.Fraction) units.Fraction {
	if text == "" {
		return standard
	}
	v, ok := parse(r, field, string(text), units.ParseFraction)
	switch {
	case !ok:
		return standard
	case v >= 0 && v <= most:
		return v
	}
	f := r.say(badShare, field, "%s %s reads as %s; %s is used.", field, text, units.FormatFraction(v), units.FormatFraction(standard))
	if v > 1 && v/100 <= most {
		f.Remedy = fmt.Sprintf("did you mean %s %%? write the per cent sign", text)
	} else {
		f.Remedy = fmt.Sprintf("write a share from 0 %% to %s", units.FormatFraction(most))
	}
	f.Got, f.Limit = float64(v), float64(most)
	return standard
}
