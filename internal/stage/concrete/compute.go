package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Compute measures the mould and says what to mix. It does not change in. Without a
// box there is no result but a finding; coats and layers that cannot be worked with
// are left out with a finding each.
func Compute(in Input) (Result, []finding.Finding) {
	r := Nothing()
	if !(in.Length > 0 && in.Width > 0 && in.Height > 0) || max(in.Length, in.Width, in.Height) > largest {
		return r, []finding.Finding{noBox.At(finding.Where{}, "There is no box to cast in: %.1f x %.1f x %.1f mm.", in.Length, in.Width, in.Height)}
	}
	c := &computer{}
	c.in = c.checked(in)
	c.climateNow = c.climate()
	r.Surfaces = surfaces(c.in)
	s := r.Surfaces
	r.CastSurface = s.Face + s.Floor + s.Riser + s.Wall
	volumes := c.shell(&r)
	c.coats(&r, volumes)
	c.hollow(r.Shell)
	c.pockets(&r)
	c.casting(&r)
	return r, c.found
}

// casting plans the work of casting once it is known what to mix.
func (c *computer) casting(r *Result) {
	if len(r.Coats) == 0 {
		return
	}
	r.Sheet = sheetOf(c.in.Coats[len(c.in.Coats)-1].Mix)
	c.reserve(r)
	c.packing(r)
	c.times(r)
	r.Air = c.air()
	r.Drying = c.drying(r)
	r.Masks = c.masks(r.Surfaces)
	c.spray(r)
	c.gauges(r)
	c.scrim(r)
}

// Nothing returns a result without anything in it, whose lists are empty.
func Nothing() Result {
	return Result{Coats: []CoatResult{}, Recipes: []Recipe{}, Batches: []Batch{}, Zones: []ZoneResult{}, Pockets: []Pocket{},
		Sheet: []Step{}, Reserve: Reserve{Parts: []Part{}}, Climate: []Stretch{}, Windows: []Window{}, Strength: []Strength{},
		Drying: Drying{Steps: []string{}}, Masks: []Mask{}, Packing: []PackZone{}, Spray: []Pass{}, Gauges: []Gauge{},
		Scrim: ScrimPlan{Pieces: []ScrimPiece{}}}
}

type computer struct {
	in         Input
	climateNow Climate
	silent     bool // a trial: what it would plan is not reported
	found      []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

// shell fills in the shell's volume and returns what it is after each coat.
func (c *computer) shell(r *Result) []units.Volume {
	for _, coat := range c.in.Coats {
		r.Shell += coat.Thickness
	}
	if t := c.in.Stated; t > 0 && len(c.in.Coats) > 0 && math.Abs(float64(t-r.Shell)) > coatSlack {
		c.say(coatSum.At(finding.Where{Field: "shell.thickness"}, "The coats add up to %.1f mm and the shell is %.1f mm; the coats are used.", r.Shell, t).Measured(float64(r.Shell), float64(t), "mm"))
	}
	volumes, converged := c.cast(c.in.Zones)
	r.Converged = units.Fraction(converged)
	if converged > worstChange {
		c.say(coarse.At(finding.Where{}, "The shell's volume still changes by %.2f %% when the raster is halved.", 100*converged).Measured(100*converged, 100*worstChange, "%"))
	}
	if n := len(volumes); n > 0 {
		r.ShellVolume = volumes[n-1]
		c.zoneChanges(r)
	}
	r.Naive = r.CastSurface.Times(r.Shell)
	if r.ShellVolume > 0 {
		r.NaiveOver = units.Fraction(r.Naive/r.ShellVolume - 1)
	}
	return volumes
}

const coatSlack = 0.1 // mm between the sum of coats and the stated shell

// cast returns the shell's volume after each coat, with the given zones.
func (c *computer) cast(zones []Zone) ([]units.Volume, float64) {
	with := &computer{in: c.in}
	with.in.Zones = zones
	m, rs := newMould(c.in), with.reaches(c.in.Coats)
	volumes, converged := m.volumes(rs)
	if heel, ok := with.zone("heel"); ok {
		for i, r := range rs {
			volumes[i] = max(0, volumes[i]+units.FromMM3(m.heel(r.side, r.heel, math.Max(0, math.Min(heel.Height.MM(), m.height-r.top)))))
		}
	}
	return volumes, converged
}

// zoneChanges says what every zone alone changes.
func (c *computer) zoneChanges(r *Result) {
	if len(c.in.Zones) == 0 {
		return
	}
	plain, _ := c.cast(nil)
	for _, z := range c.in.Zones {
		with, _ := c.cast([]Zone{z})
		n := len(with) - 1
		r.Zones = append(r.Zones, ZoneResult{z.Surface, z.Thickness, z.Height, with[n] - plain[n]})
	}
}

// hollow says when the shell leaves nothing hollow.
func (c *computer) hollow(shell units.Length) {
	narrow := min(c.in.Length, c.in.Width)
	switch {
	case 2*shell >= narrow:
		c.say(solid.At(finding.Where{}, "A shell of %.1f mm from both sides fills a piece %.0f mm wide: it is cast solid.", shell, narrow).Measured(float64(shell), float64(narrow/2), "mm"))
	case shell >= c.in.Height:
		c.say(solid.At(finding.Where{}, "A shell of %.1f mm fills a piece %.0f mm high: it is cast solid.", shell, c.in.Height).Measured(float64(shell), float64(c.in.Height), "mm"))
	}
}

// coats fills in coats, recipes and batches.
func (c *computer) coats(r *Result, volumes []units.Volume) {
	before, worked, thick := units.Volume(0), map[string]Recipe{}, c.each()
	for i, coat := range c.in.Coats {
		recipe, ok := worked[coat.Mix.Name]
		if !ok {
			recipe = c.recipe(coat.Mix)
			worked[coat.Mix.Name] = recipe
			r.Recipes = append(r.Recipes, recipe)
		}
		res := CoatResult{Name: coat.Name, Mix: coat.Mix.Name, Thickness: coat.Thickness, Volume: max(0, volumes[i]-before), Cumulative: volumes[i]}
		res.Top, res.Heel, res.Area = thick[i].top, thick[i].heel, r.CastSurface
		res.Naive = r.CastSurface.Times(coat.Thickness)
		before = volumes[i]
		res.Mass = recipe.WetDensity.Of(res.Volume)
		res.ToMix = res.Mass * units.Mass(1+share(c.in.Spare, math.MaxFloat64))
		r.ShellMass += curedDensity(coat, recipe).Of(res.Volume)
		r.Batches = append(r.Batches, c.batches(coat, recipe, &res, len(r.Batches))...)
		r.Coats = append(r.Coats, res)
		c.thickness(coat, recipe)
	}
}

// thicknesses are those of one coat on top and at the heel.
type thicknesses struct{ top, heel units.Length }

func (c *computer) each() []thicknesses {
	out := make([]thicknesses, len(c.in.Coats))
	before := reach{}
	for i, r := range c.reaches(c.in.Coats) {
		out[i] = thicknesses{units.Length(r.top - before.top), units.Length(r.heel - before.heel)}
		before = r
	}
	return out
}

// curedDensity returns the density of a coat in the finished piece: the card's, or
// that of the wet mix, which is on the safe side.
func curedDensity(coat Coat, recipe Recipe) units.Density {
	if d := coat.Mix.Cured.Value; plausible(d) {
		return d
	}
	return recipe.WetDensity
}

// Thickness of one coat that is no longer usual, mm. Source: [gfrc-guides], face coats
// 3 to 5 and backers 6 to 13 mm, with some slack (Chosen).
const (
	thinFace, thickFace     units.Length = 2, 6
	thinBacker, thickBacker units.Length = 5, 15
)

// thickness says when a coat is thinner or thicker than can be laid well.
func (c *computer) thickness(coat Coat, recipe Recipe) {
	low, high, usual := thinBacker, thickBacker, "fibred coats are usually 6 to 13 mm"
	if recipe.Fibre == 0 {
		low, high, usual = thinFace, thickFace, "coats without fibre are usually 3 to 5 mm"
	}
	w := finding.Where{Element: coat.Name}
	switch t := coat.Thickness; {
	case t > high:
		c.say(thickness.At(w, "The coat %s is %.1f mm thick; %s.", coat.Name, t, usual).Measured(float64(t), float64(high), "mm"))
	case t < low:
		c.say(thickness.At(w, "The coat %s is %.1f mm thin; %s.", coat.Name, t, usual).Measured(float64(t), float64(low), "mm"))
	}
}
