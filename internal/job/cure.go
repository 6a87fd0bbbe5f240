package job

import (
	"fmt"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// A LiftText is a lift as the maker wants it.
type LiftText struct {
	// Depth of the lift.
	Depth typed.Length `yaml:"depth"`
	// When it is poured, after the pour of the lift before, such as 20 h. Without it the planner chooses.
	After typed.Duration `yaml:"after,omitempty"`
}

// TintText is a colour the maker has seen.
type TintText struct {
	// Colour of a sample: #rrggbb.
	Colour typed.Text `yaml:"colour"`
	// Depth of the sample. Default 25 mm.
	Depth typed.Length `yaml:"depth,omitempty"`
	// Tint by mass of the mixed resin. Default 0.5 %.
	Share typed.Fraction `yaml:"share,omitempty"`
	// Colour of the floor under it: #rrggbb. Default pale sealed concrete.
	Floor typed.Text `yaml:"floor,omitempty"`
}

// A Lift is a lift as the maker wants it.
type Lift struct {
	Depth units.Length
	After units.Duration // after the lift before; 0: the planner chooses
}

// A Tint is a colour the maker has seen: Share of tint at Depth over Floor.
type Tint struct {
	Colour, Floor string
	Depth         units.Length
	Share         units.Fraction
}

// mostOwnLifts is how many lifts a maker may list. Chosen: more is a slip.
const mostOwnLifts = 40

// cure reads what the cure is computed from beside the card.
func (r *resolver) cure() {
	t, out := r.doc.Resin, &r.job.Resin
	out.Pot = r.volume("resin.degas_pot", t.DegasPot, 0, 0.2, 200)
	out.Vacuum = r.number("resin.vacuum", t.Vacuum, defaultVacuum, 0, 29.9, "inHg below the atmosphere")
	out.Slope = r.number("resin.level", t.Level, 0, -50, 50, "mm per metre")
	out.Tint = r.tint(t.Tint)
	out.Lifts = r.lifts(t.Lifts)
	out.FoamLeft = r.word("resin.foam", t.Foam, "removed", "left") == "left"
	out.PeakLimit = r.warmth("resin.peak_limit", t.PeakLimit, defaultPeak, 30, 120)
	out.Pouring = r.warmth("resin.poured_at", t.PouredAt, r.job.Room.Temperature, 5, 45)
	for i, name := range t.Others {
		c, missing := r.shelf.Resin(string(name))
		if missing != nil {
			r.say(notOnShelf, fmt.Sprintf("resin.others[%d]", i), "%s; it is not compared.", missing.Error()).Remedy = missing.Remedy()
			continue
		}
		out.Others = append(out.Others, c)
	}
}

func (r *resolver) tint(t TintText) Tint {
	out := Tint{Colour: string(t.Colour), Floor: string(t.Floor)}
	if out.Colour == "" {
		return out
	}
	out.Depth, _ = r.length("resin.tint.depth", t.Depth, defaultSample, likelyStep)
	out.Share = r.share("resin.tint.share", t.Share, defaultTintShare, 0.2)
	return out
}

func (r *resolver) lifts(texts []LiftText) []Lift {
	if len(texts) > mostOwnLifts {
		r.say(unreadable, "resin.lifts", "resin.lifts lists %s; the planner chooses in their place.", units.Count(len(texts), "lift", "lifts")).Remedy =
			fmt.Sprintf("list at most %d lifts", mostOwnLifts)
		return nil
	}
	var out []Lift
	for i, t := range texts {
		field := fmt.Sprintf("resin.lifts[%d]", i)
		depth, ok := r.length(field+".depth", t.Depth, 0, likelyStep)
		if !ok || depth <= 0 {
			r.say(unreadable, field+".depth", "Lift %d has no depth that can be used; the planner chooses all lifts.", i+1).Remedy = "give every lift a depth, such as 24.6 mm"
			return nil
		}
		l := Lift{Depth: depth}
		if t.After != "" {
			l.After = r.span(field+".after", t.After, 0, 0.5, 24*60)
		}
		out = append(out, l)
	}
	return out
}

// number reads a plain number from low to high.
func (r *resolver) number(field string, text typed.Number, standard, low, high float64, unit string) float64 {
	if text == "" {
		return standard
	}
	v, ok := parse(r, field, string(text), units.ParseNumber)
	if !ok {
		return standard
	}
	if v < low || v > high {
		f := r.say(wrongUnit, field, "%s is %s, outside %g to %g %s; %g is used.", field, text, low, high, unit, standard)
		f.Got, f.Limit, f.Unit = v, high, unit
		f.Remedy = fmt.Sprintf("write a number of %s from %g to %g", unit, low, high)
		return standard
	}
	return v
}

// span reads a time from low to high hours; a bare number is hours.
func (r *resolver) span(field string, text typed.Duration, standard, low, high units.Duration) units.Duration {
	v, ok := parse(r, field, string(text), func(s string) (units.Duration, error) { return units.ParseDuration(s, "h") })
	if !ok {
		return standard
	}
	if v < low || v > high {
		f := r.say(wrongUnit, field, "%s %s is %.1f h, outside %.1f to %.0f h; the planner chooses.", field, text, v, low, high)
		f.Got, f.Limit, f.Unit = float64(v), float64(high), "h"
		f.Remedy = "write a time with its unit, such as 20 h or 2 d"
		return standard
	}
	return v
}

// warmth reads a temperature from low to high.
func (r *resolver) warmth(field string, text typed.Temperature, standard, low, high units.Temperature) units.Temperature {
	if text == "" {
		return standard
	}
	v, ok := parse(r, field, string(text), func(s string) (units.Temperature, error) { return units.ParseTemperature(s, "C") })
	if !ok {
		return standard
	}
	if v < low || v > high {
		f := r.say(wrongUnit, field, "%s %s is %.0f C, outside %.0f to %.0f C; %.0f C is used.", field, text, v, low, high, standard)
		f.Got, f.Limit, f.Unit = float64(v), float64(high), "C"
		f.Remedy = "write a temperature with its unit, such as 60 C or 140 F"
		return standard
	}
	return v
}
