package structure

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Input is what the other rooms found, as plain masses and volumes.
type Input struct {
	ShellVolume  units.Volume
	ShellDensity units.Density // cured
	ResinVolume  units.Volume  // in the piece at delivery
	ResinDensity units.Density
	FormMass     units.Mass
	FoamMass     units.Mass
	Extras       []Extra
	People       int // who are there to turn and carry it
}

// Extra is a thing delivered with the piece.
type Extra struct {
	Name string
	Mass units.Mass
}

// Result is the masses.
type Result struct {
	Shell     units.Mass `json:"shell_kg"`
	Resin     units.Mass `json:"resin_kg"`
	Extras    units.Mass `json:"extras_kg"`
	Delivered units.Mass `json:"delivered_kg"` // shell + resin + extras
	Form      units.Mass `json:"form_kg"`
	Foam      units.Mass `json:"foam_kg"`
	Flip      units.Mass `json:"flip_kg"` // shell + form + knockout, turned over before the form comes off
	Lifters   int        `json:"lifters"` // people to turn it by the team rule
	Carriers  int        `json:"carriers"`
}

// Compute weighs the piece when it is turned over and when it is delivered.
// Carriers is the team for the delivered piece. A mass, volume or density that is
// negative or not a number counts as nothing and is a stop finding, since every
// sum above it is then too low.
func Compute(in Input) (Result, []finding.Finding) {
	w := weigher{}
	r := Result{
		Shell: w.of("shell", in.ShellVolume, in.ShellDensity),
		Resin: w.of("resin", in.ResinVolume, in.ResinDensity),
		Form:  w.mass("form", in.FormMass),
		Foam:  w.mass("foam knockout", in.FoamMass),
	}
	for _, e := range in.Extras {
		r.Extras += w.mass(e.Name, e.Mass)
	}
	r.Delivered = r.Shell + r.Resin + r.Extras
	r.Flip = r.Shell + r.Form + r.Foam
	r.Lifters = Team(r.Flip, BestLift)
	r.Carriers = Team(r.Delivered, BestLift)
	w.lift(flipTeam, "Turning the piece over in its form", r.Flip, r.Lifters, in.People)
	w.lift(carryTeam, "Carrying the finished piece", r.Delivered, r.Carriers, in.People)
	return r, w.found
}

// A weigher sums masses and keeps what it had to leave out.
type weigher struct{ found []finding.Finding }

func (w *weigher) of(name string, v units.Volume, d units.Density) units.Mass {
	if !usable(float64(v)) || !usable(float64(d)) || (v > 0 && d == 0) {
		w.found = append(w.found, massUnknown.At(finding.Where{Element: name},
			"The mass of the %s cannot be told from %.4g l at %.4g kg/m3, so it is missing from every sum.", name, float64(v), float64(d)))
		return 0
	}
	return d.Of(v)
}

func (w *weigher) mass(name string, m units.Mass) units.Mass {
	if usable(float64(m)) {
		return m
	}
	w.found = append(w.found, massUnknown.At(finding.Where{Element: name},
		"The mass of %s is given as %.4g kg, so it is missing from every sum.", name, float64(m)))
	return 0
}

// lift says when a lift needs more people than the shop has.
func (w *weigher) lift(rule finding.Rule, what string, m units.Mass, need, people int) {
	have := max(people, 1)
	if need <= have {
		return
	}
	limit := Capacity(have, BestLift)
	f := rule.At(finding.Where{}, "%s means %.1f kg: the team rule asks for %d people, this shop has %d, good for %.1f kg.",
		what, float64(m), need, have, float64(limit)).Measured(float64(m), float64(limit), "kg")
	if need > largestTeam {
		f = f.Do("More than %d people do not lift in step: use a hoist, an engine crane or a lift table, or roll it over one long edge, where the hands hold about half, %.0f kg.",
			largestTeam, float64(m)/2)
	}
	w.found = append(w.found, f)
}

func usable(v float64) bool { return v >= 0 && !math.IsInf(v, 1) }
