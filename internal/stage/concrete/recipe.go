package concrete

import (
	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

const assumedDensity units.Density = 2100 // kg/m3, fresh GFRC. Source: [gfrc-guides]

// plausible reports whether d can be the density of a concrete, kg/m3.
func plausible(d units.Density) bool { return d >= 300 && d <= 5000 }

// AbsoluteVolume returns the solid volume of mass m of specific gravity sg:
//
//	V = W / (SG rho_w),  rho_w = 1000 kg/m3
//
// It is 0 where sg is not above zero. Source: [aci-211].
func AbsoluteVolume(m units.Mass, sg float64) units.Volume {
	if !(sg > 0) || !known(sg) {
		return 0
	}
	return units.Volume(float64(m) / sg)
}

// recipe works a mix out by absolute volume:
//
//	yield = sum of W_i/(SG_i rho_w) / (1 - air),  density = sum of W_i / yield
//
// and states its parts for one cubic metre. A wet density on the card goes before.
// Source: [aci-211].
func (c *computer) recipe(mix material.Mix) Recipe {
	parts := c.usable(mix)
	r := Recipe{Mix: mix.Name, Parts: []Part{}, Air: c.airIn(mix)}
	mass := 0.0
	for _, p := range parts {
		mass += p.Parts.Value
	}
	r.WetDensity = c.wetDensity(mix, parts, mass, float64(r.Air))
	for _, p := range parts {
		r.Parts = append(r.Parts, Part{p.Name, p.Role, units.Mass(p.Parts.Value / mass * float64(r.WetDensity))})
	}
	r.CuredDensity = curedDensity(Coat{Mix: mix}, r)
	c.ratios(mix, parts, &r)
	c.dampSand(mix, parts, &r)
	return r
}

// dampSand weighs sand as it lies in the bag, with its water, and takes that off the
// water to add:
//
//	weighed = sand (1 + m),  water = water - sand m
//
// Shares and density are those of dry sand and all water.
func (c *computer) dampSand(mix material.Mix, parts []material.Ingredient, r *Recipe) {
	damp, water, all := 0.0, -1, 0.0
	for i, p := range parts {
		switch p.Role {
		case "sand":
			m := share(p.Moisture.Value, 1)
			wet := float64(r.Parts[i].Mass) * m
			r.Parts[i].Mass += units.Mass(wet)
			damp += wet
		case "water":
			water = i
			all += float64(r.Parts[i].Mass)
		}
	}
	if damp == 0 || water < 0 {
		return
	}
	if damp > float64(r.Parts[water].Mass) {
		c.say(sandWet.At(finding.Where{Element: mix.Name}, "The sand of the mix %s brings %.0f kg of water a cubic metre, and the mix takes %.0f kg to add.", mix.Name, damp, all).Measured(damp, all, "kg/m3"))
		damp = float64(r.Parts[water].Mass)
	}
	r.Parts[water].Mass -= units.Mass(damp)
	r.SandWater = damp / (damp + float64(r.Parts[water].Mass))
}

// usable returns the ingredients that have a mass; a bagged blend without stated
// water gets the middle of its range.
func (c *computer) usable(mix material.Mix) []material.Ingredient {
	var out []material.Ingredient
	for _, p := range mix.Ingredients {
		if w := p.Parts.Value; w < 0 || !known(w) {
			c.say(badPart.At(finding.Where{Element: mix.Name}, "The mix %s states %g parts of %s, so it is mixed without.", mix.Name, w, p.Name))
		} else if w > 0 {
			out = append(out, p)
		}
	}
	out = withFibre(withWater(mix, out), mix)
	if len(out) == 0 {
		c.say(noParts.At(finding.Where{Element: mix.Name}, "The mix %s lists no ingredients, so its batches have no parts.", mix.Name))
	}
	return out
}

// withFibre gives fibre that is stated as a share its parts:
//
//	total   f/(1 - f) of the rest,  rest  f of the rest,  cement  f of cement and pozzolan
func withFibre(parts []material.Ingredient, mix material.Mix) []material.Ingredient {
	rest, cement := 0.0, 0.0
	for _, p := range parts {
		if p.Role != "fibre" {
			rest += p.Parts.Value
		}
		if counts(mix.Kind, p.Role) {
			cement += p.Parts.Value
		}
	}
	for _, p := range mix.Ingredients {
		f := share(p.Share.Value, 0.5)
		if p.Role != "fibre" || f == 0 || p.Parts.Value > 0 {
			continue
		}
		switch p.Basis {
		case "rest":
			p.Parts.Value = f * rest
		case "cement":
			p.Parts.Value = f * cement
		default:
			p.Parts.Value = f / (1 - f) * rest
		}
		parts = append(parts, p)
	}
	return parts
}

// withWater adds the middle of a bagged blend's range of water where none is stated.
func withWater(mix material.Mix, parts []material.Ingredient) []material.Ingredient {
	blend := 0.0
	for _, p := range parts {
		if p.Role == "water" {
			return parts
		}
		if p.Role == "blend" {
			blend += p.Parts.Value
		}
	}
	ratio := (mix.WaterMin.Value + mix.WaterMax.Value) / 2
	if mix.Kind != material.Bagged || blend == 0 || !(ratio > 0) || !known(ratio) {
		return parts
	}
	w := material.Ingredient{Name: "water", Role: "water"}
	w.Parts.Value, w.SG.Value = blend*ratio, 1
	return append(parts, w)
}

const mostAir = 0.3 // Chosen: above this it is a foam

// airIn returns the mix's air, 0 where what is stated cannot be.
func (c *computer) airIn(mix material.Mix) units.Fraction {
	if a := mix.Air.Value; a >= 0 && a < mostAir {
		return a
	}
	c.say(badAir.At(finding.Where{Element: mix.Name}, "The mix %s states %.0f %% of air; 0 is used, which makes it heavier.", mix.Name, 100*mix.Air.Value).Measured(100*float64(mix.Air.Value), 100*mostAir, "%"))
	return 0
}

// wetDensity returns the stated density, else that of the parts, else an assumed one.
func (c *computer) wetDensity(mix material.Mix, parts []material.Ingredient, mass, air float64) units.Density {
	if d := mix.WetDensity.Value; plausible(d) {
		return d
	}
	volume, missing := units.Volume(0), ""
	for _, p := range parts {
		v := AbsoluteVolume(units.Mass(p.Parts.Value), p.SG.Value)
		if v == 0 && missing == "" {
			missing = p.Name
		}
		volume += v
	}
	d := units.Density(0)
	if volume > 0 && missing == "" {
		d = units.Density(mass / (volume.M3() / (1 - air)))
	}
	if plausible(d) {
		return d
	}
	text := "its parts give none that can be"
	if missing != "" {
		text = missing + " has no specific gravity"
	} else if len(parts) == 0 {
		text = "it has no parts"
	}
	c.say(noDensity.At(finding.Where{Element: mix.Name}, "The mix %s states no wet density and %s, so %.0f kg/m3 is assumed.", mix.Name, text, assumedDensity))
	return assumedDensity
}

// shares are the masses of a mix by what they do, in its parts.
type shares struct{ water, emulsion, admixture, solids, base, cement, fibre, plasticiser, pigment, all float64 }

func sharesOf(kind material.MixKind, parts []material.Ingredient) shares {
	var s shares
	for _, p := range parts {
		w := p.Parts.Value
		s.all += w
		if counts(kind, p.Role) {
			s.base += w
		}
		switch p.Role {
		case "water":
			s.water += w
		case "polymer":
			solids := share(p.Solids.Value, 1)
			s.solids += w * solids
			s.emulsion += w * (1 - solids)
		case "cement", "pozzolan":
			s.cement += w
		case "fibre":
			s.fibre += w
		case "plasticiser":
			s.plasticiser += w
			s.admixture += w * waterIn(material.Mix{Ingredients: parts}, p.Name)
		case "pigment":
			s.pigment += w
			s.admixture += w * waterIn(material.Mix{Ingredients: parts}, p.Name)
		}
	}
	return s
}

// ratios works out water, polymer and fibre and holds them against their limits. The
// water of a polymer emulsion and of admixtures with stated solids counts in the ratio.
func (c *computer) ratios(mix material.Mix, parts []material.Ingredient, r *Recipe) {
	s := sharesOf(mix.Kind, parts)
	if s.base > 0 {
		r.WaterRatio, r.Polymer = (s.water+s.emulsion+s.admixture)/s.base, s.solids/s.base
	} else if len(parts) > 0 {
		c.say(noCement.At(finding.Where{Element: mix.Name}, "The mix %s has neither cement nor a dry blend, so its water ratio is not known.", mix.Name))
	}
	if s.all > 0 {
		r.Fibre = s.fibre / s.all
	}
	if rest := s.all - s.fibre; rest > 0 {
		r.FibreOfRest = s.fibre / rest
	}
	if all := s.water + s.emulsion + s.admixture; all > 0 {
		r.EmulsionWater = s.emulsion / all
	}
	if s.base > 0 {
		r.Pigment = s.pigment / s.base
	}
	c.waterLimits(mix, *r)
	c.dosage(mix, s, *r)
}

// waterLimits says when the recipe's water is outside the card's range.
func (c *computer) waterLimits(mix material.Mix, r Recipe) {
	low, high, w := mix.WaterMin.Value, mix.WaterMax.Value, finding.Where{Element: mix.Name}
	const rounding = 1e-9
	switch {
	case r.WaterRatio == 0:
	case !(high > 0) || !known(high):
		c.say(noLimit.At(w, "The card of the mix %s states no limit of water, so its recipe's %.3f is taken as one.", mix.Name, r.WaterRatio))
	case r.WaterRatio > high+rounding:
		c.say(tooWet.At(w, "The mix %s has a water ratio of %.3f, above its limit of %.3f; batches hold to the limit.", mix.Name, r.WaterRatio, high).Measured(r.WaterRatio, high, "kg/kg"))
	case low > 0 && r.WaterRatio < low-rounding:
		c.say(tooDry.At(w, "The mix %s has a water ratio of %.3f, under the %.3f that its card wants at least.", mix.Name, r.WaterRatio, low).Measured(r.WaterRatio, low, "kg/kg"))
	}
}

// Dosages that are no longer usual. Source: [gfrc-guides] unless said.
const (
	leastFibre, mostFibre     = 0.015, 0.04 // of the whole; premix takes 2 to 3.5 %
	leastPolymer, mostPolymer = 0.03, 0.10  // solids on cementitious; 5 to 6 % is usual. Chosen slack
	mostPlasticiser           = 0.012       // on cementitious
	mostPigment               = 0.10        // on cementitious. Source: [astm-c979]
	fullColour                = 0.06        // Source: [memory], 5 to 6 %
)

// dosage says when fibre, polymer, plasticiser or pigment are out of their ranges.
// What a bagged blend already holds is not known, so only fibre is held against one.
func (c *computer) dosage(mix material.Mix, s shares, r Recipe) {
	w := finding.Where{Element: mix.Name}
	pct := func(rule finding.Rule, got, limit float64, format string) {
		c.say(rule.At(w, format, mix.Name, 100*got).Measured(100*got, 100*limit, "%"))
	}
	if r.Fibre > mostFibre {
		pct(fibre, r.Fibre, mostFibre, "The mix %s has %.1f %% of fibre in all; premix takes 2 to 3.5 %%, more only goes on sprayed.")
	} else if mix.Use == "backer" && r.Fibre < leastFibre {
		pct(fibre, r.Fibre, leastFibre, "The backer %s has %.1f %% of fibre in all; premix wants 2 to 3.5 %%.")
	}
	if s.cement == 0 || mix.Kind == material.Bagged {
		return
	}
	if r.Polymer > mostPolymer {
		pct(polymer, r.Polymer, mostPolymer, "The mix %s has %.1f %% of polymer solids on cement; 5 to 6 %% is usual.")
	} else if r.Polymer < leastPolymer {
		pct(polymer, r.Polymer, leastPolymer, "The mix %s has %.1f %% of polymer solids on cement; with less than 5 to 6 %% it must be kept wet for a week.")
	}
	if p := s.plasticiser / s.cement; p > mostPlasticiser {
		pct(plasticiser, p, mostPlasticiser, "The mix %s has %.2f %% of plasticiser on cement; 0.15 to 1.2 %% is usual, and an overdose may not set for hours.")
	}
	if p := s.pigment / s.cement; p > fullColour && p <= mostPigment {
		pct(saturated, p, fullColour, "The mix %s has %.1f %% of pigment on cement; colour is full at 5 to 6 %%.")
	}
	if p := s.pigment / s.cement; p > mostPigment {
		pct(pigment, p, mostPigment, "The mix %s has %.1f %% of pigment on cement; 10 %% is the most.")
	}
}
