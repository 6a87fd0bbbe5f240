package job

import (
	"fmt"
	"math"

	"pourwright/internal/material"
	"pourwright/internal/units"
)

func (r *resolver) mixing() {
	t := r.doc.Concrete
	r.job.Mixing = Mixing{
		Tub:       r.volume("concrete.tub", t.Tub, defaultTub, 1, 500),
		Freeboard: r.share("concrete.freeboard", t.Freeboard, defaultTubFreeboard, 0.9),
		Spare:     r.share("concrete.spare", t.Spare, defaultSpare, 1),
		People:    r.whole("concrete.people", t.People, defaultPeople, 1, 20),
	}
}

func (r *resolver) resin() {
	t, j := r.doc.Resin, r.job
	j.Resin = Resin{
		Card:      card(r, "resin.material", t.Material, defaultResin, r.shelf.Resin),
		Bucket:    r.volume("resin.bucket", t.Bucket, defaultBucket, 0.2, 200),
		Freeboard: r.share("resin.freeboard", t.Freeboard, defaultBucketFreeboard, 0.9),
		Reserve:   r.share("resin.reserve", t.Reserve, defaultReserve, 1),
	}
	j.Resin.Overfill, _ = r.length("resin.overfill", t.Overfill, defaultOverfill, likelyOver)
	j.Resin.Film, _ = r.length("resin.film", t.Film, defaultFilm, likelyFilm)
	j.Resin.Gap, _ = r.length("resin.terrace_guard", t.TerraceGuard, defaultGuard, likelyGuard)
	before := j.Resin.Card
	card, found := material.ChangeResin(before, material.ResinCard{
		Density: t.Density, DensityA: t.DensityA, DensityB: t.DensityB, Ratio: t.Ratio, RatioMass: t.RatioMass,
		MinDepth: t.MinDepth, MaxDepth: t.MaxDepth, PotLife: t.PotLife, Shrinkage: t.Shrinkage, Recoat: t.Recoat,
	}, r.doc.places, "resin", r.bare())
	r.found = append(r.found, found...)
	j.Resin.Card = card
	r.ratio(before)
	r.densities()
}

// perA returns parts of B for one part of A: by mass where mass is true, by volume
// otherwise.
func perA(c material.Resin, mass bool) float64 {
	ratio := c.RatioB.Value / c.RatioA.Value
	switch {
	case mass && !c.ByMass:
		ratio *= float64(c.DensityB.Value / c.DensityA.Value)
	case !mass && c.ByMass:
		ratio *= float64(c.DensityA.Value / c.DensityB.Value)
	}
	return ratio
}

func near(a, b, share float64) bool { return math.Abs(a-b) <= share*math.Abs(b) }

// ratio looks for the two usual slips, A and B swapped, and mass for volume, by
// comparing what was typed with the card it changes.
func (r *resolver) ratio(before material.Resin) {
	t, c := r.doc.Resin, r.job.Resin.Card
	if c.RatioA.Value <= 0 || c.RatioB.Value <= 0 || c.DensityA.Value <= 0 || c.DensityB.Value <= 0 {
		return
	}
	if t.Ratio.Value != "" && t.RatioMass.Value != "" {
		r.bothRatios()
	}
	field, text := "resin.ratio", t.Ratio.Value
	if text == "" {
		field, text = "resin.ratio_mass", t.RatioMass.Value
	}
	if text == "" || before.RatioA.Value <= 0 {
		return
	}
	now := c.RatioB.Value / c.RatioA.Value
	volume, mass := perA(before, false), perA(before, true)
	other, name := mass, "mass"
	same := volume
	if c.ByMass {
		other, name, same = volume, "volume", mass
	}
	switch {
	case near(1/now, same, 0.1) && !near(now, same, 0.1):
		r.say(ratioDoubt, field, "%s %s is the ratio of %s turned round, 100 of A to %.1f of B.", field, text, before.Name, 100*same).Remedy = "write parts of A, the resin, before parts of B, the hardener"
	case near(now, other, 0.015) && !near(now, same, 0.05):
		f := r.say(ratioDoubt, field, "%s %s is the ratio by %s of %s; at its densities 100 of A take %.1f of B by volume, %.1f by mass.", field, text, name, before.Name, 100*volume, 100*mass)
		f.Severity = unusual.Severity
		f.Remedy = fmt.Sprintf("see on the data sheet whether the ratio is by volume or by mass; the field %s holds the other one", map[string]string{"mass": "ratio_mass", "volume": "ratio"}[name])
	case now > 1.05:
		f := r.say(ratioDoubt, field, "%s %s gives more hardener than resin.", field, text)
		f.Severity = unusual.Severity
		f.Remedy = "see on the data sheet which part is A; write parts of A first"
	}
}

// bothRatios checks a ratio by volume against one by mass.
func (r *resolver) bothRatios() {
	t, c := r.doc.Resin, r.job.Resin.Card
	a, b, err := material.ParseRatio(string(t.RatioMass.Value))
	if err != nil {
		r.say(unreadable, "resin.ratio_mass", "resin.ratio_mass: %v.", err).Remedy = "write parts of A to parts of B, such as 100:44"
		return
	}
	if implied := perA(c, true); !near(b/a, implied, 0.03) {
		f := r.say(ratioDoubt, "resin.ratio_mass", "%s by volume at %.0f and %.0f kg/m3 is 100:%.1f by mass; ratio_mass says 100:%.1f.", t.Ratio.Value,
			float64(c.DensityA.Value), float64(c.DensityB.Value), 100*implied, 100*b/a)
		f.Got, f.Limit, f.Unit = 100*b/a, 100*implied, "parts of B to 100 of A by mass"
		f.Remedy = "check both ratios and both densities against the data sheet"
	}
}

// densities looks for A and B swapped and for a mixed density that neither implies.
func (r *resolver) densities() {
	t, c := r.doc.Resin, r.job.Resin.Card
	a, b, mixed := c.DensityA.Value, c.DensityB.Value, c.Density.Value
	if t.DensityA.Value == "" && t.DensityB.Value == "" && t.Density.Value == "" {
		return
	}
	if b > a {
		r.say(unusual, "resin.density_b", "Part B, %.0f kg/m3, is heavier than part A, %.0f kg/m3.", float64(b), float64(a)).Remedy = "check that the densities of A and B are not swapped"
	}
	if low, high := min(a, b)*0.98, max(a, b)*1.08; mixed < low || mixed > high {
		r.say(unusual, "resin.density", "Parts of %.0f and %.0f kg/m3 do not mix to %.0f kg/m3.", float64(a), float64(b), float64(mixed)).Remedy = "check the three densities against the data sheet"
	}
}

// Temperatures of a shop, C. Chosen: cement and resin are not worked outside.
const (
	coldRoom, warmRoom units.Temperature = 8, 32
	iceRoom, hotRoom   units.Temperature = -5, 50
)

func (r *resolver) room() {
	t := r.doc.Room
	r.job.Room = Room{Temperature: defaultRoom, Humidity: r.share("room.humidity", t.Humidity, 0, 1)}
	if t.Temperature == "" {
		return
	}
	const field = "room.temperature"
	v, ok := parse(r, field, string(t.Temperature), func(s string) (units.Temperature, error) { return units.ParseTemperature(s, "C") })
	if !ok {
		return
	}
	if v < iceRoom || v > hotRoom {
		f := r.say(wrongUnit, field, "%s %s is %.0f C; %.0f C is used.", field, t.Temperature, float64(v), float64(defaultRoom))
		f.Got, f.Limit, f.Unit = float64(v), float64(hotRoom), "C"
		f.Remedy = "write a room temperature such as 20 C or 68 F"
		if fahrenheit := units.Temperature((float64(v) - 32) * 5 / 9); v >= coldRoom && fahrenheit >= coldRoom && fahrenheit <= warmRoom {
			f.Remedy = fmt.Sprintf("did you mean %.0f F = %.0f C? write the unit beside the number", float64(v), float64(fahrenheit))
		}
		return
	}
	r.job.Room.Temperature = v
	if v < coldRoom || v > warmRoom {
		f := r.say(unusual, field, "At %.0f C neither concrete nor resin sets as planned.", float64(v))
		f.Got, f.Limit, f.Unit = float64(v), float64(min(max(v, coldRoom), warmRoom)), "C"
		f.Remedy = fmt.Sprintf("bring the room to between %.0f and %.0f C", float64(coldRoom), float64(warmRoom))
	}
}
