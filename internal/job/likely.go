package job

import (
	"fmt"
	"strings"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// A likely span holds the sizes a field has in this trade, mm; outside it the unit
// is taken to be wrong. The spans are wide: no piece of furniture is refused.
type likely struct{ low, high units.Length }

// Chosen: likely sizes. A piece may be a test block of a hand's breadth or a table
// for twenty.
var (
	likelyLength = likely{80, 6000}
	likelyWidth  = likely{80, 3000}
	likelyHeight = likely{30, 2000}
	likelyShell  = likely{4, 80}
	likelyCoat   = likely{1, 50}
	likelyStep   = likely{1, 300}
	likelyFoam   = likely{3, 310}
	likelyBoard  = likely{3, 60}
	likelySheet  = likely{200, 6100}
	likelyKerf   = likely{0.5, 8}
	likelyTrim   = likely{0, 100}
	likelyChord  = likely{0.001, 2}
	likelySmooth = likely{0, 50}
	likelyOver   = likely{0, 10}
	likelyFilm   = likely{0, 3}
	likelyGuard  = likely{0, 30}
	likelyMap    = likely{20, 6000}
	likelyExtra  = likely{5, 6000}
)

func (s likely) holds(l units.Length) bool { return l >= s.low && l <= s.high }

// length reads a length. ok is false when standard had to take its place or, with a
// doubtful unit, when the value is returned with a stop finding.
func (r *resolver) length(field string, text typed.Length, standard units.Length, span likely) (l units.Length, ok bool) {
	if text == "" {
		return standard, true
	}
	l, ok = parse(r, field, string(text), func(s string) (units.Length, error) { return units.ParseLength(s, r.job.Units) })
	switch {
	case !ok:
		return standard, false
	case l < 0 || l == 0 && span.low > 0:
		r.say(notPositive, field, "%s is %s.", field, units.FormatMM(l, 1)).Remedy = fmt.Sprintf("write a size between %s and %s", units.FormatMM(span.low, 1), units.FormatMM(span.high, 0))
		return standard, false
	case r.job.Units == "mm" && bare(string(text)) && strings.ContainsAny(string(text), "/⁄½⅓⅔¼¾⅛⅜⅝⅞"):
		r.doubt(field, string(text), l, span, "a fraction without a unit")
		return standard, false
	case !span.holds(l):
		r.doubt(field, string(text), l, span, fmt.Sprintf("outside %s to %s", units.FormatMM(span.low, 1), units.FormatMM(span.high, 0)))
		return standard, false
	}
	return l, true
}

// doubt says how a length reads and what may have been meant.
func (r *resolver) doubt(field, text string, l units.Length, span likely, why string) {
	f := r.say(wrongUnit, field, "%s %s reads as %s: %s.", field, text, units.FormatMM(l, 1), why)
	f.Got, f.Unit = l.MM(), "mm"
	f.Limit = span.low.MM()
	if l > span.high {
		f.Limit = span.high.MM()
	}
	number := strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ\"'″′ .")
	var meant []string
	for _, unit := range []string{"mm", "in", "cm", "ft", "m"} {
		m, err := units.ParseLength(number, unit)
		if err != nil || !span.holds(m) || m == l {
			continue
		}
		switch {
		case unit == "mm":
			meant = append(meant, number+" mm")
		case unit == "in" || !strings.Contains(number, "/"): // nobody halves centimetres on paper
			meant = append(meant, fmt.Sprintf("%s %s = %s", number, unit, units.FormatMM(m, 0)))
		}
		if len(meant) == 2 {
			break
		}
	}
	if len(meant) > 0 {
		f.Remedy = fmt.Sprintf("did you mean %s? write the unit beside the number", strings.Join(meant, " or "))
	} else {
		f.Remedy = fmt.Sprintf("check the size; expected between %s and %s", units.FormatMM(span.low, 1), units.FormatMM(span.high, 0))
	}
}

// bare reports whether a typed measure has no unit.
func bare(text string) bool {
	return !strings.ContainsFunc(text, func(c rune) bool {
		return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || strings.ContainsRune(`"'″′”’°%`, c)
	})
}

// volume reads a vessel's volume; a bare number is litres.
func (r *resolver) volume(field string, text typed.Volume, standard, low, high units.Volume) units.Volume {
	if text == "" {
		return standard
	}
	v, ok := parse(r, field, string(text), func(s string) (units.Volume, error) { return units.ParseVolume(s, "l") })
	switch {
	case !ok:
		return standard
	case v <= 0:
		r.say(notPositive, field, "%s is %s; %s is used.", field, text, units.FormatVolume(standard, units.Metric))
		return standard
	case v >= low && v <= high:
		return v
	}
	f := r.say(wrongUnit, field, "%s %s is %s, outside %s to %s; %s is used.", field, text, units.FormatVolume(v, units.Metric),
		units.FormatVolume(low, units.Metric), units.FormatVolume(high, units.Metric), units.FormatVolume(standard, units.Metric))
	number := strings.TrimSpace(strings.TrimRight(string(text), "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ3. "))
	f.Remedy = "check the volume and its unit"
	if m, err := units.ParseVolume(number, "l"); err == nil && m >= low && m <= high {
		f.Remedy = fmt.Sprintf("did you mean %s l?", number)
	} else if m, err := units.ParseVolume(number, "ml"); err == nil && m >= low && m <= high {
		f.Remedy = fmt.Sprintf("did you mean %s ml?", number)
	}
	return standard
}
