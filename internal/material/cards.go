package material

import (
	"fmt"
	"strings"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

func (r *reader) resin(c ResinCard, out *Resin) {
	if c.Class != "" {
		out.Class = string(c.Class)
	}
	set(r, "density", c.Density, &out.Density, r.density, 700, 3000)
	set(r, "density_a", c.DensityA, &out.DensityA, r.density, 700, 3000)
	set(r, "density_b", c.DensityB, &out.DensityB, r.density, 700, 3000)
	r.ratios(c, out)
	set(r, "min_depth", c.MinDepth, &out.MinDepth, r.length, 0, 500)
	set(r, "max_depth", c.MaxDepth, &out.MaxDepth, r.length, 0.5, 500)
	set(r, "pot_life", c.PotLife, &out.PotLife, duration, 0.01, 200)
	set(r, "gel", c.Gel, &out.Gel, duration, 0.01, 500)
	set(r, "recoat", c.Recoat, &out.Recoat, duration, 0.1, 1000)
	set(r, "hard", c.Hard, &out.Hard, duration, 0.1, 2000)
	set(r, "shrinkage", c.Shrinkage, &out.Shrinkage, units.ParseFraction, 0, 0.2)
	set(r, "heat_kj_kg", c.Heat, &out.Heat, units.ParseNumber, 20, 800)
	set(r, "glass_transition", c.Tg1, &out.Tg1, degrees, -20, 250)
	set(r, "rate_25_per_s", c.K25, &out.K25, units.ParseNumber, 1e-7, 1)
	set(r, "rate_ratio", c.RateRatio, &out.RateRatio, units.ParseNumber, 0.005, 5)
	set(r, "activation_kj_mol", c.Activation, &out.Activation, units.ParseNumber, 20, 120)
	r.packages(c.Packages, &out.Packages)
	need(r, "density", out.Density)
	need(r, "density_a", out.DensityA)
	need(r, "density_b", out.DensityB)
	need(r, "ratio", out.RatioA)
	need(r, "min_depth", out.MinDepth)
	need(r, "max_depth", out.MaxDepth)
	if out.MinDepth.Value > out.MaxDepth.Value {
		r.say(badRange, "min_depth", "The least depth of a lift, %.1f mm, is above the greatest, %.1f mm.", out.MinDepth.Value, out.MaxDepth.Value).Remedy = "swap min_depth and max_depth"
	}
}

// ratios reads the stated ratio; one by volume is kept before one by mass.
func (r *reader) ratios(c ResinCard, out *Resin) {
	field, in := "ratio", c.Ratio
	if in.Value == "" {
		field, in = "ratio_mass", c.RatioMass
	}
	if in.Value == "" {
		return
	}
	a, b, err := ParseRatio(string(in.Value))
	if err != nil {
		r.say(badValue, field, "%s: %v.", field, err).Remedy = "write parts of A to parts of B, such as 2:1 or 100:44"
		return
	}
	p := r.pedigree.or(in.Origin, in.Source)
	if !r.origin(field, Origin(p.origin), p.source) {
		return
	}
	mark := func(v float64) Value[float64] {
		return Value[float64]{Value: v, Origin: Origin(p.origin), Source: p.source, Typed: string(in.Value)}
	}
	out.RatioA, out.RatioB, out.ByMass = mark(a), mark(b), field == "ratio_mass"
}

// ParseRatio reads parts of A to parts of B: 2:1, 100:44.5. Both are positive and
// neither is more than a hundred times the other.
func ParseRatio(text string) (a, b float64, err error) {
	left, right, ok := strings.Cut(text, ":")
	if !ok {
		return 0, 0, fmt.Errorf("%q has no colon", text)
	}
	if a, err = units.ParseNumber(left); err != nil {
		return 0, 0, err
	}
	if b, err = units.ParseNumber(right); err != nil {
		return 0, 0, err
	}
	if a <= 0 || b <= 0 || a/b > 100 || b/a > 100 {
		return 0, 0, fmt.Errorf("%q is no ratio of two parts of resin", text)
	}
	return a, b, nil
}

func (r *reader) mix(c MixCard, out *Mix) {
	kind := string(out.Kind)
	r.word("kind", c.Kind, &kind, string(Bagged), string(Scratch))
	out.Kind = MixKind(kind)
	r.word("use", c.Use, &out.Use, "face", "backer", "any")
	if len(c.Ingredients) > 0 {
		out.Ingredients = r.ingredients(c.Ingredients)
	}
	set(r, "air", c.Air, &out.Air, units.ParseFraction, 0, 0.5)
	set(r, "water_min", c.WaterMin, &out.WaterMin, units.ParseNumber, 0.02, 1)
	set(r, "water_max", c.WaterMax, &out.WaterMax, units.ParseNumber, 0.02, 1)
	set(r, "wet_density", c.WetDensity, &out.WetDensity, r.density, 500, 4000)
	set(r, "cured_density", c.Cured, &out.Cured, r.density, 400, 4000)
	set(r, "working_life", c.WorkingLife, &out.WorkingLife, duration, 0.05, 24)
	set(r, "next_coat", c.NextCoat, &out.NextCoat, duration, 0, 48)
	set(r, "next_coat_end", c.NextCoatEnd, &out.NextCoatEnd, duration, 0, 72)
	set(r, "demould", c.Demould, &out.Demould, duration, 1, 1000)
	r.setting(c, out)
	r.packages(c.Packages, &out.Packages)
	if out.Kind == "" {
		r.say(missingValue, "kind", "%s does not say whether it is bagged or from scratch.", r.path)
	}
	if len(out.Ingredients) == 0 {
		r.say(missingValue, "ingredients", "%s has no ingredients.", r.path)
	}
	need(r, "cured_density", out.Cured)
	need(r, "water_max", out.WaterMax)
	if out.WaterMin.Value > out.WaterMax.Value {
		r.say(badRange, "water_min", "The least water, %.3f, is above the most, %.3f.", out.WaterMin.Value, out.WaterMax.Value).Remedy = "swap water_min and water_max"
	}
}

// setting reads how a mix is mixed, levelled, covered and how it hardens.
func (r *reader) setting(c MixCard, out *Mix) {
	set(r, "edge_from", c.EdgeFrom, &out.EdgeFrom, duration, 0.1, 72)
	set(r, "edge_until", c.EdgeUntil, &out.EdgeUntil, duration, 0.2, 96)
	set(r, "cover", c.Cover, &out.Cover, duration, 0, 700)
	set(r, "mix_time", c.MixTime, &out.MixTime, duration, 0.005, 2)
	set(r, "fibre_time", c.FibreTime, &out.FibreTime, duration, 0.005, 1)
	set(r, "flow_ring", c.Flow, &out.Flow, r.length, 30, 500)
	set(r, "strength_28_mpa", c.Strength, &out.Strength, units.ParseNumber, 5, 250)
	set(r, "activation_k", c.Activation, &out.Activation, units.ParseNumber, 1000, 12000)
	set(r, "datum", c.Datum, &out.Datum, degrees, -20, 12)
	r.word("cement_class", c.Cement, &out.Cement, "R", "N", "S")
	if out.EdgeUntil.Value > 0 && out.EdgeFrom.Value > out.EdgeUntil.Value {
		r.say(badRange, "edge_from", "Edge levelling begins after %.1f h and ends after %.1f h.", out.EdgeFrom.Value, out.EdgeUntil.Value).Remedy = "swap edge_from and edge_until"
	}
	if out.NextCoatEnd.Value > 0 && out.NextCoat.Value > out.NextCoatEnd.Value {
		r.say(badRange, "next_coat", "The next coat goes on after %.2f h and until %.2f h.", out.NextCoat.Value, out.NextCoatEnd.Value).Remedy = "swap next_coat and next_coat_end"
	}
}

// roles are what a part of a mix may be.
var roles = []string{"cement", "pozzolan", "sand", "water", "polymer", "plasticiser", "pigment", "fibre", "blend"}

func (r *reader) ingredients(cards []IngredientCard) []Ingredient {
	path := r.path
	defer func() { r.path = path }()
	out := []Ingredient{}
	for i, c := range cards {
		r.path = fmt.Sprintf("%s.ingredients[%d]", path, i)
		one := Ingredient{Name: string(c.Name)}
		r.word("role", c.Role, &one.Role, roles...)
		set(r, "parts", c.Parts, &one.Parts, units.ParseNumber, 0, 1e5)
		set(r, "sg", c.SG, &one.SG, units.ParseNumber, 0.5, 9)
		set(r, "solids", c.Solids, &one.Solids, units.ParseFraction, 0, 1)
		set(r, "moisture", c.Moisture, &one.Moisture, units.ParseFraction, 0, 0.3)
		set(r, "share", c.Share, &one.Share, units.ParseFraction, 0, 0.2)
		r.word("basis", c.Basis, &one.Basis, "total", "rest", "cement")
		if one.Share.Known() && one.Basis == "" {
			r.say(missingValue, "basis", "%s is stated as a share without its basis.", one.Name).Remedy = "write basis: total, rest or cement"
		}
		if one.Name == "" {
			r.say(missingValue, "name", "Ingredient %d has no name.", i+1)
		}
		if one.Role == "" && c.Role == "" {
			r.say(missingValue, "role", "Ingredient %d has no role.", i+1).Remedy = "write one of " + strings.Join(roles, ", ")
		}
		if !one.Share.Known() {
			need(r, "parts", one.Parts)
		}
		need(r, "sg", one.SG)
		out = append(out, one)
	}
	return out
}

func (r *reader) board(c BoardCard, out *Board) {
	set(r, "thickness", c.Thickness, &out.Thickness, r.length, 1, 100)
	set(r, "length", c.Length, &out.Length, r.length, 50, 10000)
	set(r, "width", c.Width, &out.Width, r.length, 50, 10000)
	set(r, "density", c.Density, &out.Density, r.density, 50, 3000)
	set(r, "modulus_mpa", c.Modulus, &out.Modulus, units.ParseNumber, 100, 30000)
	set(r, "gravity", c.Gravity, &out.Gravity, units.ParseNumber, 0.1, 1.3)
	set(r, "edge_hold", c.Edge, &out.Edge, units.ParseFraction, 0.05, 1)
	set(r, "service", c.Service, &out.Service, degrees, 20, 300)
	r.packages(c.Packages, &out.Packages)
	need(r, "thickness", out.Thickness)
	need(r, "length", out.Length)
	need(r, "width", out.Width)
	need(r, "density", out.Density)
}

func (r *reader) screw(c ScrewCard, out *Screw) {
	set(r, "diameter", c.Diameter, &out.Diameter, r.length, 1, 20)
	set(r, "length", c.Length, &out.Length, r.length, 5, 300)
	r.packages(c.Packages, &out.Packages)
	need(r, "diameter", out.Diameter)
	need(r, "length", out.Length)
}

func (r *reader) foam(c FoamCard, out *Foam) {
	set(r, "thickness", c.Thickness, &out.Thickness, r.length, 1, 500)
	set(r, "length", c.Length, &out.Length, r.length, 50, 10000)
	set(r, "width", c.Width, &out.Width, r.length, 50, 10000)
	set(r, "density", c.Density, &out.Density, r.density, 5, 300)
	set(r, "service", c.Service, &out.Service, degrees, 20, 250)
	r.packages(c.Packages, &out.Packages)
	need(r, "thickness", out.Thickness)
	need(r, "length", out.Length)
	need(r, "width", out.Width)
	need(r, "density", out.Density)
}

func (r *reader) consumable(c ConsumableCard, out *Consumable) {
	r.word("role", c.Role, &out.Role, "sealer", "adhesive", "caulk", "release", "wax", "tape")
	set(r, "coverage", c.Coverage, &out.Coverage, units.ParseNumber, 0.01, 1000)
	set(r, "service", c.Service, &out.Service, degrees, 20, 300)
	r.packages(c.Packages, &out.Packages)
	need(r, "coverage", out.Coverage)
}

func (r *reader) tube(c TubeCard, out *Tube) {
	set(r, "side", c.Side, &out.Side, r.length, 5, 500)
	set(r, "wall", c.Wall, &out.Wall, r.length, 0.3, 50)
	set(r, "kg_per_m", c.MassPerM, &out.MassPerM, units.ParseNumber, 0.01, 500)
	set(r, "bar", c.Bar, &out.Bar, r.length, 100, 20000)
	r.packages(c.Packages, &out.Packages)
	need(r, "side", out.Side)
	need(r, "wall", out.Wall)
	need(r, "kg_per_m", out.MassPerM)
	if 2*out.Wall.Value >= out.Side.Value && out.Side.Known() {
		r.say(absurdValue, "wall", "A wall of %.1f mm fills a tube of %.1f mm.", out.Wall.Value, out.Side.Value)
	}
}

func (r *reader) machine(c MachineCard, out *Machine) {
	set(r, "bed_x", c.BedX, &out.BedX, r.length, 50, 20000)
	set(r, "bed_y", c.BedY, &out.BedY, r.length, 50, 20000)
	set(r, "cutter", c.Cutter, &out.Cutter, r.length, 0.2, 100)
	set(r, "flute", c.Flute, &out.Flute, r.length, 1, 500)
	set(r, "feed", c.Feed, &out.Feed, speed, 1, 1e5)
	set(r, "plunge", c.Plunge, &out.Plunge, speed, 1, 1e5)
	set(r, "pass_down", c.PassDown, &out.PassDown, r.length, 0.1, 300)
	r.programs(c, out)
}

// programs reads how the machine's programs are written.
func (r *reader) programs(c MachineCard, out *Machine) {
	set(r, "max_feed", c.MaxFeed, &out.MaxFeed, speed, 1, 1e5)
	set(r, "rapid", c.Rapid, &out.Rapid, speed, 1, 2e5)
	set(r, "safe_height", c.SafeHeight, &out.SafeHeight, r.length, 0, 300)
	set(r, "overcut", c.Overcut, &out.Overcut, r.length, 0, 3)
	set(r, "acceleration_mm_s2", c.Acceleration, &out.Acceleration, units.ParseNumber, 1, 1e5)
	set(r, "arc_tolerance", c.ArcTolerance, &out.ArcTolerance, r.length, 0.002, 0.2)
	set(r, "ramp_angle", c.RampAngle, &out.RampAngle, units.ParseAngle, 1, 60)
	set(r, "tabs", c.Tabs, &out.Tabs, units.ParseNumber, 0, 100)
	set(r, "tab_width", c.TabWidth, &out.TabWidth, r.length, 0.5, 100)
	set(r, "tab_height", c.TabHeight, &out.TabHeight, r.length, 0.2, 100)
	set(r, "spindle_rpm", c.SpindleRPM, &out.SpindleRPM, units.ParseNumber, 1, 1e5)
	r.word("spindle", c.Spindle, &out.Spindle, "yes", "no")
	r.word("units", c.Units, &out.Units, "mm", "in")
	r.word("direction", c.Direction, &out.Direction, "climb", "conventional")
	set(r, "ball", c.Ball, &out.Ball, r.length, 0.5, 100)
	set(r, "scallop", c.Scallop, &out.Scallop, r.length, 0.005, 5)
}

// packages reads the sizes sold; a stated list takes the place of the old one.
func (r *reader) packages(cards []PackageCard, out *[]Package) {
	if len(cards) == 0 {
		return
	}
	path := r.path
	defer func() { r.path = path }()
	*out = []Package{}
	for i, c := range cards {
		r.path = fmt.Sprintf("%s.packages[%d]", path, i)
		p := Package{}
		set(r, "quantity", c.Quantity, &p.Quantity, func(s string) (float64, error) { return quantity(s, &p.Unit) }, 1e-6, 1e6)
		set(r, "price", priced(c.Price), &p.Price, units.ParseNumber, 0, 1e6)
		need(r, "quantity", p.Quantity)
		*out = append(*out, p)
	}
}

// priced lets a bare price stand without a pedigree: the maker pays it.
func priced(v typed.Value) typed.Value {
	if v.Value != "" && v.Origin == "" {
		v.Origin = typed.Choice(DataSheet)
	}
	return v
}

// countable are the units of packages that are counted.
var countable = []string{"sheet", "bar", "cartridge", "piece", "roll"}

// quantity reads what a package holds, in l, kg or a counted unit.
func quantity(text string, unit *string) (float64, error) {
	if v, err := units.ParseVolume(text, ""); err == nil {
		*unit = "l"
		return float64(v), nil
	}
	if m, err := units.ParseMass(text, ""); err == nil {
		*unit = "kg"
		return float64(m), nil
	}
	for _, word := range countable {
		for _, end := range []string{word + "s", word} {
			if rest, ok := strings.CutSuffix(strings.TrimSpace(text), end); ok {
				*unit = word
				return units.ParseNumber(rest)
			}
		}
	}
	if _, err := units.ParseVolume(text, ""); strings.Contains(text, "gal") {
		return 0, err // asks which gallon
	}
	return 0, fmt.Errorf("%q is not a size sold: write 5 l, 25 kg, 1 sheet, 1 bar or 1 cartridge", text)
}
