package concrete

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Paces of one person. Source: [practice]; spraying Chosen.
const (
	packRate  = 1.5 // m2/h of a fibred coat by hand, 1 to 2
	sprayRate = 8.0 // m2/h of a coat without fibre by hopper gun
	slowest   = 0.05
	fastest   = 100.0
)

// rate returns how many m2 an hour one person lays of a coat: as stated for fibred
// coats, the gun's for coats without fibre.
func (c *computer) rate(recipe Recipe) float64 {
	if recipe.Fibre == 0 {
		return sprayRate
	}
	if r := c.in.PackRate; r >= slowest && r <= fastest {
		return r
	}
	return packRate
}

// packing lays batches out as zones along the form, from the end furthest from the
// mouths on, equal in area, one for each person; says when each begins and whether it
// is within the window of the coat below.
func (c *computer) packing(r *Result) {
	p, from := newProfile(c.in), units.Duration(0)
	back := c.fromFarEnd()
	var below []PackZone
	batch := 0
	for i := range r.Coats {
		n := 0
		for _, b := range r.Batches {
			if b.Coat == r.Coats[i].Name {
				n++
			}
		}
		zones := c.zonesOf(p, r.Coats[i], r.Recipes, max(1, n), batch, back)
		if len(below) > 0 {
			from = c.opens(below, zones, i, from)
		}
		r.Coats[i].Starts = from
		for k := range zones {
			zones[k].Start += from
			zones[k].End += from
		}
		c.closes(below, zones, i)
		r.Coats[i].Takes = zones[len(zones)-1].End - from
		from += r.Coats[i].Takes
		r.Packing = append(r.Packing, zones...)
		below, batch = zones, batch+n
	}
	c.clocks(r)
	if !c.silent {
		c.late(r)
	}
}

// fromFarEnd reports whether packing goes from the right of the form to its left,
// away from a mouth at the left, in form view.
func (c *computer) fromFarEnd() bool {
	left, right := 0, 0
	for _, m := range c.in.Mouths {
		switch m.Side {
		case "right": // of the piece, which is left in the form
			left++
		case "left":
			right++
		}
	}
	return left > right
}

// zonesOf cuts a coat into n batches of equal area, each into one strip per person.
// Times count from the coat's first water.
func (c *computer) zonesOf(p profile, coat CoatResult, recipes []Recipe, n, before int, back bool) []PackZone {
	people := min(max(1, c.in.People), 20)
	recipe := recipeOf(recipes, coat.Mix)
	each := coat.Area / units.Area(n*people)
	pack := units.Duration(each.M2() / c.rate(recipe))
	var out []PackZone
	for k := range n {
		start := units.Duration(k)*(handling+pack) + handling
		for person := range people {
			i := k*people + person
			f0, f1 := float64(i)/float64(n*people), float64(i+1)/float64(n*people)
			if back {
				f0, f1 = 1-f0, 1-f1
			}
			z := PackZone{Coat: coat.Name, Batch: before + k + 1, Person: person + 1, Area: each, Mass: coat.Mass / units.Mass(n*people), Start: start, End: start + pack}
			z.From, z.To = units.Length(p.place(math.Min(f0, f1))), units.Length(p.place(math.Max(f0, f1)))
			out = append(out, z)
		}
	}
	return out
}

// packedAt returns when a coat was packed at a place along the form: zones are worked
// evenly from their first end to the other.
func packedAt(zones []PackZone, x units.Length, back bool) units.Duration {
	last := units.Duration(0)
	for _, z := range zones {
		if x < z.From || x > z.To || z.To <= z.From {
			continue
		}
		f := units.Duration((x - z.From) / (z.To - z.From))
		if back {
			f = 1 - f
		}
		return z.Start + f*(z.End-z.Start)
	}
	for _, z := range zones {
		last = max(last, z.End)
	}
	return last
}

// ends returns the places where work on a zone begins and ends, a hair inside it.
func (z PackZone) ends(back bool) (first, last units.Length) {
	hair := (z.To - z.From) * 1e-4
	if back {
		return z.To - hair, z.From + hair
	}
	return z.From + hair, z.To - hair
}

// opens returns when a coat's first water goes in: when the coat below is done, and late
// enough that its window is open at every zone as that is reached. Mixing goes on while
// the coat below firms.
func (c *computer) opens(below, zones []PackZone, i int, done units.Duration) units.Duration {
	from, back := done, c.fromFarEnd()
	for _, z := range zones {
		first, last := z.ends(back)
		a, b := packedAt(below, first, back), packedAt(below, last, back)
		from = max(from, a+c.nextWindow(c.in.Coats[i-1].Mix, a).Planned.From-z.Start, b+c.nextWindow(c.in.Coats[i-1].Mix, b).Planned.From-z.End)
	}
	return from
}

// closes notes the window of the coat below at every zone, and which zones are late.
func (c *computer) closes(below, zones []PackZone, i int) {
	back := c.fromFarEnd()
	for k := range zones {
		z := &zones[k]
		if len(below) == 0 {
			continue
		}
		first, last := z.ends(back)
		a, b := packedAt(below, first, back), packedAt(below, last, back)
		wa, wb := c.nextWindow(c.in.Coats[i-1].Mix, a).Planned, c.nextWindow(c.in.Coats[i-1].Mix, b).Planned
		z.Opens = a + wa.From
		z.Closes = min(a+wa.Until+z.End-z.Start, b+wb.Until)
		z.Late = z.End > z.Closes+1e-6
	}
}

// late says when zones of a coat come after the window of the coat below, and how many
// people would be in time.
func (c *computer) late(r *Result) {
	for i, coat := range r.Coats {
		worst, n, all := units.Duration(0), 0, 0
		for _, z := range r.Packing {
			if z.Coat != coat.Name {
				continue
			}
			all++
			if z.Late {
				worst, n = max(worst, z.End-z.Closes), n+1
			}
		}
		if n == 0 || i == 0 {
			continue
		}
		w := c.nextWindow(c.in.Coats[i-1].Mix, r.Coats[i-1].Starts)
		f := lateCoat.At(finding.Where{Field: "concrete.people", Element: coat.Name}, "The coat %s comes up to %.0f min too late in %d of its %s: at %.0f C it goes on %.0f to %.0f min after the coat below.", coat.Name, 60*worst, n, units.Count(all, "zone", "zones"), w.Temp, 60*w.Planned.From, 60*w.Planned.Until).Measured(60*float64(worst), 0, "min")
		if ways := c.ways(r); ways != "" {
			f.Remedy = ways
		}
		c.say(f)
	}
}

const mostHelpers = 8 // round one form. Chosen

// ways says in words how everything would be in time.
func (c *computer) ways(r *Result) string {
	text := ""
	for n := 2; n <= mostSections; n++ {
		if c.onTime(r, c.in.People, c.in.Tub, n) {
			text = fmt.Sprintf("Cast in %d sections of about %.2f m2: all coats of one before the first coat of the next, stopping at an edge or a step where a joint does not show.", n, r.CastSurface.M2()/float64(n))
			break
		}
	}
	people, more := c.inTime(r)
	switch {
	case people > 0 && text != "":
		text += fmt.Sprintf(" Or let %d people pack%s.", people, more)
	case people > 0:
		text = fmt.Sprintf("Let %d people pack%s.", people, more)
	}
	return text
}

const mostSections = 12 // Chosen: more joints than that show

// inTime returns the fewest people, more than now, with whom no zone is late, first
// with this tub and then with one that holds a coat; 0 where nobody would be.
func (c *computer) inTime(r *Result) (people int, more string) {
	for _, tub := range []units.Volume{c.in.Tub, max(c.in.Tub, 2*r.ShellVolume)} {
		for people = max(1, c.in.People) + 1; people <= mostHelpers; people++ {
			if c.onTime(r, people, tub, 1) {
				if tub > c.in.Tub {
					more = fmt.Sprintf(" with a tub of %.0f l for whole coats", tub)
				}
				return people, more
			}
		}
	}
	return 0, ""
}

// onTime reports whether nothing is late with so many people, such a tub, and the form
// cast in so many sections one after the other.
func (c *computer) onTime(r *Result, people int, tub units.Volume, sections int) bool {
	try := &computer{in: c.in, climateNow: c.climateNow, silent: true}
	try.in.People, try.in.Tub = people, tub
	with := Nothing()
	with.Recipes = r.Recipes
	for i, coat := range c.in.Coats {
		res := r.Coats[i]
		res.Area /= units.Area(sections)
		res.Mass /= units.Mass(sections)
		res.ToMix /= units.Mass(sections)
		recipe := recipeOf(r.Recipes, coat.Mix.Name)
		with.Batches = append(with.Batches, try.batches(coat, recipe, &res, len(with.Batches))...)
		with.Coats = append(with.Coats, res)
	}
	try.packing(&with)
	return !slices.ContainsFunc(with.Packing, func(z PackZone) bool { return z.Late })
}

func recipeOf(recipes []Recipe, mix string) Recipe {
	for _, r := range recipes {
		if r.Mix == mix {
			return r
		}
	}
	return Recipe{}
}

// clocks fills in the batches' times from their zones.
func (c *computer) clocks(r *Result) {
	for k := range r.Batches {
		b := &r.Batches[k]
		mix := c.in.Coats[0].Mix
		for i, coat := range r.Coats {
			if coat.Name == b.Coat {
				mix = c.in.Coats[i].Mix
			}
		}
		b.Life = c.lifeOf(mix)
		first := true
		for _, z := range r.Packing {
			if z.Batch != b.Number {
				continue
			}
			if first {
				b.Start = z.Start - mixing(mix)
				first = false
			}
			slack := units.Duration(math.Inf(1))
			if z.Closes > 0 {
				slack = max(0, z.Closes-z.End)
			}
			if by := b.Start + min(slack, 0.5); b.StartBy == 0 || by < b.StartBy { // joins wet in wet within half an hour. Chosen
				b.StartBy = by
			}
		}
		b.UseBy = b.Start + b.Life
	}
}
