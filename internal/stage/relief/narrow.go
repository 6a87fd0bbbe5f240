package relief

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Corners of one layer: outlines with more than fewCorners are simplified before
// narrow places are looked for, and left alone where more than maxCorners remain.
// Chosen for a tenth of a second each.
const (
	fewCorners = 1_500
	maxCorners = 6_000
)

// simplifyMM are the steps in which an outline is simplified for the search, mm; they
// add up.
var simplifyMM = [...]float64{0.1, 0.1, 0.3, 0.5}

// sought is one kind of narrow place.
type sought struct {
	rule       finding.Rule
	kind, what string
	limit      units.Length
}

// narrow locates necks of the water, lands and islands of the concrete, layer by
// layer. A place that a layer above has already shown no wider is not shown again.
func (c *computer) narrow(layers []Layer) []Narrow {
	out := []Narrow{}
	necks := sought{neck, "neck", "The basin", c.in.Neck}
	lands := sought{land, "land", "The land", c.in.Land}
	islands := sought{island, "island", "The island", c.in.Island}
	for _, l := range layers {
		water, ok := c.simple(l)
		if !ok {
			continue
		}
		coast, inner := c.concrete(water)
		gaps, openings := c.rims(l)
		out = c.add(out, necks, l, append(water.NarrowPlaces(necks.limit.MM()), openings...))
		out = c.add(out, lands, l, append(coast.NarrowPlaces(lands.limit.MM()), gaps...))
		out = c.add(out, islands, l, inner.NarrowPlaces(islands.limit.MM()))
	}
	return out
}

// simple returns the layer's region with few enough corners to search, or false.
func (c *computer) simple(l Layer) (geom.Region, bool) {
	full := corners(l.Region.Shape())
	r, tol := l.Region.Shape(), 0.0
	for _, step := range simplifyMM {
		if corners(r) <= fewCorners {
			break
		}
		r, tol = r.Simplify(step), tol+step
	}
	if corners(r) > maxCorners {
		c.say(notSought.At(finding.Where{Element: l.Name}, "Narrow places of layer %d were not looked for: it has %d corners.", l.Number, full).
			Measured(float64(full), maxCorners, "corners"))
		return nil, false
	}
	if tol > 0 {
		c.say(notSought.At(finding.Where{Element: l.Name}, "Narrow places of layer %d were looked for within %.1f mm only, since it has %d corners.", l.Number, 2*tol, full).
			Measured(float64(full), fewCorners, "corners"))
	}
	return r, true
}

func corners(r geom.Region) int {
	n := 0
	for _, ring := range r.Rings() {
		n += len(ring)
	}
	return n
}

// concrete returns what stands round the water: lands, which reach the sides of the
// box, and islands.
func (c *computer) concrete(water geom.Region) (lands, islands geom.Region) {
	tol := c.tolerance()
	for _, p := range geom.Subtract(c.box.Region(), water) {
		if b := p.Outer.Box(); b.Min.X > tol && b.Min.Y > tol && b.Max.X < c.box.Max.X-tol && b.Max.Y < c.box.Max.Y-tol {
			islands = append(islands, p)
		} else {
			lands = append(lands, p)
		}
	}
	return lands, islands
}

// tolerance is how near to a side still meets it, mm.
func (c *computer) tolerance() float64 { return math.Max(c.in.Tolerance.MM(), 2*geom.Grid) }

// rims returns the narrow stretches along the sides of the box: gaps, where land
// ends beside a mouth, and openings, where water does.
func (c *computer) rims(l Layer) (gaps, openings []geom.Narrow) {
	for _, s := range c.sides() {
		end := 0.0
		wet := s.spans(l.Region.Shape())
		for _, w := range wet {
			gaps = append(gaps, s.stretch(span{end, w.from}))
			openings = append(openings, s.stretch(w))
			end = w.to
		}
		if len(wet) > 0 {
			gaps = append(gaps, s.stretch(span{end, s.length}))
		}
	}
	return gaps, openings
}

// add appends the places of one kind in one layer that are under the limit and new,
// narrowest first, and says so.
func (c *computer) add(out []Narrow, k sought, l Layer, places []geom.Narrow) []Narrow {
	slices.SortStableFunc(places, func(a, b geom.Narrow) int { return cmp.Compare(a.Width, b.Width) })
	said, more := 0, 0
	for _, n := range places {
		if n.Width >= k.limit.MM() || n.Width <= 2*c.tolerance() || known(out, k, n) {
			continue
		}
		out = append(out, Narrow{Kind: k.kind, Layer: l.Number, X: units.Length(n.At.X), Y: units.Length(n.At.Y), Width: units.Length(n.Width), Limit: k.limit})
		if said < maxSaid {
			c.say(k.finding(l, n))
			said++
		} else {
			more++
		}
	}
	if more > 0 {
		c.say(k.rule.At(finding.Where{Element: l.Name}, "%s is narrower than %.0f mm at %d more places in layer %d.", k.what, k.limit, more, l.Number))
	}
	return out
}

// known reports whether a place no wider was found near n before.
func known(out []Narrow, k sought, n geom.Narrow) bool {
	return slices.ContainsFunc(out, func(o Narrow) bool {
		return o.Kind == k.kind && o.Width.MM() <= n.Width+0.1 && math.Hypot(o.X.MM()-n.At.X, o.Y.MM()-n.At.Y) < k.limit.MM()
	})
}

func (k sought) finding(l Layer, n geom.Narrow) finding.Finding {
	w := at(finding.Where{Element: l.Name}, n.At)
	text := "%s is only %.1f mm wide here in layer %d; under %.0f mm is narrow."
	if n.Joins == 1 && n.Reach > 0 {
		text = "%s juts out, only %.1f mm wide half way, in layer %d; under %.0f mm is narrow."
	}
	f := k.rule.At(w, text, k.what, n.Width, l.Number, k.limit).Measured(n.Width, float64(k.limit), "mm")
	if k.kind == "land" && n.Width < 5 {
		f = f.Do("If the basin is meant to run off here, draw its outline a few millimetres past the side; else move it away.")
	}
	return f
}
