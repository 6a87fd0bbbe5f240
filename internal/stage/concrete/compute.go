package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// Compute measures the mould and says what to mix. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Coats: []CoatResult{}, Recipes: []Recipe{}, Batches: []Batch{}}
	if !(in.Length > 0 && in.Width > 0 && in.Height > 0) || in.Length > 1e5 || in.Width > 1e5 || in.Height > 1e5 {
		return r, []finding.Finding{noBox.At(finding.Where{}, "There is no box to cast in: %.1f x %.1f x %.1f mm.", in.Length, in.Width, in.Height)}
	}
	c := &computer{in: in}
	r.Surfaces = surfaces(in)
	s := r.Surfaces
	r.CastSurface = s.Face + s.Floor + s.Riser + s.Wall
	var depth []units.Length
	for _, coat := range in.Coats {
		r.Shell += coat.Thickness
		depth = append(depth, r.Shell)
	}
	volumes, converged := newMould(in).volumes(depth)
	r.Converged = units.Fraction(converged)
	if converged > 0.005 {
		c.say(coarse.At(finding.Where{}, "The shell's volume still changes by %.2f %% when the raster is halved.", 100*converged))
	}
	if n := len(volumes); n > 0 {
		r.ShellVolume = volumes[n-1]
	}
	r.Naive = r.CastSurface.Times(r.Shell)
	if r.ShellVolume > 0 {
		r.NaiveOver = units.Fraction(r.Naive/r.ShellVolume - 1)
	}
	c.coats(&r, volumes)
	if 2*r.Shell >= min(in.Length, in.Width) {
		c.say(solid.At(finding.Where{}, "A shell of %.1f mm fills a piece %.0f mm wide: it is cast solid.", r.Shell, min(in.Length, in.Width)))
	}
	return r, c.found
}

type computer struct {
	in    Input
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

// coats fills in coats, recipes and batches.
func (c *computer) coats(r *Result, volumes []units.Volume) {
	before, known := units.Volume(0), map[string]Recipe{}
	for i, coat := range c.in.Coats {
		recipe, ok := known[coat.Mix.Name]
		if !ok {
			recipe = c.recipe(coat.Mix)
			known[coat.Mix.Name] = recipe
			r.Recipes = append(r.Recipes, recipe)
		}
		res := CoatResult{Name: coat.Name, Mix: coat.Mix.Name, Thickness: coat.Thickness, Volume: max(0, volumes[i]-before)}
		before = volumes[i]
		res.Mass = recipe.WetDensity.Of(res.Volume)
		res.ToMix = res.Mass * units.Mass(1+math.Max(0, float64(c.in.Spare)))
		cured := coat.Mix.Cured.Value
		if !(cured > 0) {
			cured = recipe.WetDensity
		}
		r.ShellMass += cured.Of(res.Volume)
		r.Coats = append(r.Coats, res)
		r.Batches = append(r.Batches, c.batches(coat, recipe, res, len(r.Batches))...)
		if coat.Thickness < 2 || coat.Thickness > 15 {
			c.say(thickness.At(finding.Where{Element: coat.Name}, "The coat %s is %.1f mm thick; 3 to 13 mm is usual.", coat.Name, coat.Thickness).Measured(float64(coat.Thickness), 13, "mm"))
		}
	}
}

// surfaces measures what concrete is cast against, by kind.
func surfaces(in Input) Surfaces {
	plan := float64(in.Length) * float64(in.Width)
	s := Surfaces{Face: units.Area(plan), Wall: units.Area(2 * float64(in.Length+in.Width) * float64(in.Height))}
	for i, l := range in.Layers {
		area, deeper := l.Region.Area(), 0.0
		if i == 0 {
			s.Face = units.Area(plan - area)
		}
		if i+1 < len(in.Layers) {
			deeper = in.Layers[i+1].Region.Area()
		}
		s.Floor += units.Area(area - deeper)
		onSide := onSides(l.Region.Shape(), in.Length.MM(), in.Width.MM())
		d := float64(l.To - l.From)
		s.Riser += units.Area((l.Region.Shape().Perimeter() - onSide) * d)
		s.Wall -= units.Area(onSide * d)
	}
	return s
}

// onSides returns how much of r's boundary lies on the sides of the box, mm.
func onSides(r geom.Region, length, width float64) float64 {
	const tol = 0.01
	sum := 0.0
	for _, ring := range r.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.X <= tol && b.X <= tol || a.X >= length-tol && b.X >= length-tol ||
				a.Y <= tol && b.Y <= tol || a.Y >= width-tol && b.Y >= width-tol {
				sum += b.Sub(a).Norm()
			}
		}
	}
	return sum
}

// batches splits what a coat needs into equal tubs.
func (c *computer) batches(coat Coat, recipe Recipe, res CoatResult, done int) []Batch {
	room := float64(c.in.Tub) * (1 - float64(c.in.Freeboard))
	volume := float64(recipe.WetDensity.Fill(res.ToMix))
	if !(volume > 0) || math.IsInf(volume, 0) {
		return nil
	}
	if !(room > 0) {
		c.say(tub.At(finding.Where{Element: coat.Name}, "A tub of %.1f l with %.0f %% left free holds nothing.", c.in.Tub, 100*c.in.Freeboard))
		return nil
	}
	n := int(math.Ceil(volume/room - 1e-9))
	if n > 40 {
		c.say(tub.At(finding.Where{Element: coat.Name}, "The coat %s would take %d batches of the %.1f l tub.", coat.Name, n, c.in.Tub))
		return nil
	}
	var out []Batch
	for k := range n {
		b := Batch{Number: done + k + 1, Coat: coat.Name, Of: n, Volume: units.Volume(volume / float64(n))}
		b.Parts, b.Mass = scale(recipe, res.ToMix/units.Mass(n))
		water, base := b.water(coat.Mix.Kind)
		b.WaterUpTo, b.WaterFirst = water, water*0.8
		b.WaterNever = max(water, never(coat.Mix, recipe, b, base))
		out = append(out, b)
	}
	return out
}

// water returns a batch's water and the mass that its limit counts on: dry blend of
// a bagged mix, cementitious parts of a scratch mix.
func (b Batch) water(kind material.MixKind) (water, base units.Mass) {
	for _, p := range b.Parts {
		switch {
		case p.Role == "water":
			water += p.Mass
		case kind == material.Bagged && p.Role == "blend", p.Role == "cement", p.Role == "pozzolan":
			base += p.Mass
		}
	}
	return water, base
}

// never returns the most water that may be added: the limit less the water that the
// polymer emulsion brings.
func never(mix material.Mix, recipe Recipe, b Batch, base units.Mass) units.Mass {
	limit := units.Mass(mix.WaterMax.Value) * base
	if mix.Kind == material.Bagged {
		return limit
	}
	for _, ing := range mix.Ingredients {
		for _, p := range b.Parts {
			if p.Name == ing.Name && ing.Role == "polymer" {
				limit -= p.Mass * units.Mass(1-ing.Solids.Value)
			}
		}
	}
	return limit
}

// scale returns the recipe's parts for a batch of mass m, each to the gram, and
// their sum.
func scale(recipe Recipe, m units.Mass) ([]Part, units.Mass) {
	parts := make([]Part, len(recipe.Parts))
	sum := units.Mass(0)
	for i, p := range recipe.Parts {
		g := math.Round(float64(p.Mass) / float64(recipe.WetDensity) * float64(m) * 1000)
		parts[i] = Part{Name: p.Name, Role: p.Role, Mass: units.Mass(g / 1000)}
		sum += parts[i].Mass
	}
	return parts, sum
}
