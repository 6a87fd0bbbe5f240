package material

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/source"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// A reader turns typed cards into cards and gathers what is wrong with them.
type reader struct {
	places   typed.Places
	path     string // of the card: materials.resins.my resin
	pedigree pedigree
	bare     Bare
	found    []finding.Finding
}

// Bare names the units of bare numbers; the zero value asks for a unit. Times always
// ask: 45 may be minutes or hours.
type Bare struct {
	Length  string // mm or in
	Density string // kg/m3
}

// pedigree is what values take that state none of their own.
type pedigree struct {
	origin, source string
}

// or returns p with the stated words in place of its own.
func (p pedigree) or(origin typed.Choice, src typed.Text) pedigree {
	if origin != "" {
		p.origin = string(origin)
		if src == "" && Origin(origin) != Typical {
			p.source = ""
		}
	}
	if src != "" {
		p.source = string(src)
	}
	return p
}

func (r *reader) say(rule finding.Rule, field, format string, args ...any) *finding.Finding {
	r.found = append(r.found, rule.At(r.places.At(r.path+"."+field), format, args...))
	return &r.found[len(r.found)-1]
}

// set reads in into out with its range and pedigree; an empty in leaves out alone.
// Values outside low to high are impossible, not merely unusual.
func set[Q ~float64](r *reader, field string, in typed.Value, out *Value[Q], parse func(string) (Q, error), low, high Q) {
	if in.Value == "" {
		if len(in.Range) > 0 || in.Origin != "" {
			r.say(badValue, field, "%s has no value.", field)
		}
		return
	}
	v, ok := read(r, field, string(in.Value), parse)
	if !ok {
		return
	}
	if v < low || v > high || math.IsNaN(float64(v)) {
		r.say(absurdValue, field, "%s %s is outside everything possible.", field, in.Value).Remedy =
			fmt.Sprintf("check the number and its unit; expected between %g and %g in base units", float64(low), float64(high))
		return
	}
	next := Value[Q]{Value: v, Typed: string(in.Value)}
	p := r.pedigree.or(in.Origin, in.Source)
	next.Origin, next.Source = Origin(p.origin), p.source
	if len(in.Range) > 0 && !setRange(r, field, in.Range, &next, parse) {
		return
	}
	if r.origin(field, next.Origin, next.Source) {
		*out = next
	}
}

func read[Q ~float64](r *reader, field, text string, parse func(string) (Q, error)) (Q, bool) {
	v, err := parse(text)
	if err == nil {
		return v, true
	}
	f := r.say(badValue, field, "%s: %s.", field, strings.TrimSuffix(err.Error(), "."))
	var pe *units.ParseError
	if errors.As(err, &pe) {
		f.Remedy = pe.Remedy
	}
	return 0, false
}

func setRange[Q ~float64](r *reader, field string, in typed.List, out *Value[Q], parse func(string) (Q, error)) bool {
	if len(in) != 2 {
		r.say(badRange, field+".range", "The range of %s has %s.", field, units.Count(len(in), "value", "values"))
		return false
	}
	low, ok := read(r, field+".range", in[0], parse)
	high, ok2 := read(r, field+".range", in[1], parse)
	if !ok || !ok2 {
		return false
	}
	if !(low <= out.Value && out.Value <= high) {
		r.say(badRange, field+".range", "%s %s lies outside its own range, %s to %s.", field, out.Typed, in[0], in[1])
		return false
	}
	out.Low, out.High = low, high
	return true
}

func (r *reader) origin(field string, o Origin, src string) bool {
	switch o {
	case Measured, DataSheet:
		return true
	case Typical:
		if _, err := source.Lookup(src); err != nil {
			r.say(noSource, field, "%s is typical and its source is %q, which is not in the register.", field, src)
			return false
		}
		return true
	case "":
		r.say(noOrigin, field, "%s does not say how it came to be known.", field)
	default:
		r.say(noOrigin, field, "%q is no origin.", o)
	}
	return false
}

// word reads one of the allowed words.
func (r *reader) word(field string, in typed.Choice, out *string, allowed ...string) {
	switch {
	case in == "":
	case slices.Contains(allowed, string(in)):
		*out = string(in)
	default:
		f := r.say(unknownWord, field, "%s is %q.", field, in)
		f.Remedy = "write " + strings.Join(allowed, ", ")
		if s := typed.Suggest(string(in), allowed); s != "" {
			f.Remedy = "did you mean " + s + "? " + f.Remedy
		}
	}
}

// need says that a value is missing from a card.
func need[Q ~float64](r *reader, field string, v Value[Q]) {
	if !v.Known() && !slices.ContainsFunc(r.found, func(f finding.Finding) bool { return f.Where.Field == r.path+"."+field }) {
		r.say(missingValue, field, "%s states no %s.", r.path, field)
	}
}

// The parsers of a card.
func (r *reader) length(s string) (units.Length, error) { return units.ParseLength(s, r.bare.Length) }
func (r *reader) density(s string) (units.Density, error) {
	return units.ParseDensity(s, r.bare.Density)
}
func duration(s string) (units.Duration, error)   { return units.ParseDuration(s, "") }
func speed(s string) (units.Speed, error)         { return units.ParseSpeed(s, "") }
func degrees(s string) (units.Temperature, error) { return units.ParseTemperature(s, "") }
