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
	r.Surfaces = surfaces(c.in)
	s := r.Surfaces
	r.CastSurface = s.Face + s.Floor + s.Riser + s.Wall
	volumes := c.shell(&r)
	c.coats(&r, volumes)
	c.hollow(r.Shell)
	return r, c.found
}

// Nothing returns a result without anything in it, whose lists are empty.
func Nothing() Result {
	return Result{Coats: []CoatResult{}, Recipes: []Recipe{}, Batches: []Batch{}, Zones: []ZoneResult{}, Pockets: []Pocket{},
		Sheet: []Step{}, Reserve: Reserve{Parts: []Part{}}, Climate: []Stretch{}, Windows: []Window{}, Strength: []Strength{},
		Drying: Drying{Steps: []string{}}, Masks: []Mask{}, Packing: []PackZone{}, Spray: []Pass{}, Gauges: []Gauge{},
		Scrim: ScrimPlan{Pieces: []ScrimPiece{}}}
}

type computer struct {
	in    Input
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

// shell fills in the shell's volume and returns what it is after each coat.
func (c *computer) shell(r *Result) []units.Volume {
	var depth []units.Length
	for _, coat := range c.in.Coats {
		r.Shell += coat.Thickness
		depth = append(depth, r.Shell)
	}
	volumes, converged := newMould(c.in).volumes(depth)
	r.Converged = units.Fraction(converged)
	if converged > worstChange {
		c.say(coarse.At(finding.Where{}, "The shell's volume still changes by %.2f %% when the raster is halved.", 100*converged).Measured(100*converged, 100*worstChange, "%"))
	}
	if n := len(volumes); n > 0 {
		r.ShellVolume = volumes[n-1]
	}
	r.Naive = r.CastSurface.Times(r.Shell)
	if r.ShellVolume > 0 {
		r.NaiveOver = units.Fraction(r.Naive/r.ShellVolume - 1)
	}
	return volumes
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
	before, worked := units.Volume(0), map[string]Recipe{}
	for i, coat := range c.in.Coats {
		recipe, ok := worked[coat.Mix.Name]
		if !ok {
			recipe = c.recipe(coat.Mix)
			worked[coat.Mix.Name] = recipe
			r.Recipes = append(r.Recipes, recipe)
		}
		res := CoatResult{Name: coat.Name, Mix: coat.Mix.Name, Thickness: coat.Thickness, Volume: max(0, volumes[i]-before)}
		before = volumes[i]
		res.Mass = recipe.WetDensity.Of(res.Volume)
		res.ToMix = res.Mass * units.Mass(1+share(c.in.Spare, math.MaxFloat64))
		r.ShellMass += curedDensity(coat, recipe).Of(res.Volume)
		r.Coats = append(r.Coats, res)
		r.Batches = append(r.Batches, c.batches(coat, recipe, res, len(r.Batches))...)
		c.thickness(coat, recipe)
	}
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
