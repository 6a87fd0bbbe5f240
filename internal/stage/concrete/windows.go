package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// Reference values of waits at refTemp where the card states none.
const (
	refTemp   units.Temperature = 20
	usualEdge units.Duration    = 6 // after the last coat; Source: [practice] 6 to 9 h
	lateEdge  units.Duration    = 9
	usualLife units.Duration    = 0.75
	usualNext units.Duration    = 1.0 / 6 // Source: [gfrc-guides] 10 to 30 min
	lateNext  units.Duration    = 0.5
	coverFor  units.Duration    = 14 // Source: [gfrc-guides] 12 to 16 h at 15 C or warmer
	stripAt   units.Duration    = 18 // Source: [gfrc-guides] 15 to 24 h at 20 C

	usualDatum units.Temperature = -10 // of Nurse-Saul. Source: [astm-c1074], 0 to -11 C in use
	differ     float64           = 0.10
)

// models are what an hour at a temperature is worth in hours at refTemp.
type models struct {
	arrhenius, nurse func(units.Temperature) float64
}

// modelsOf returns the two models with the card's constants.
//
//	Arrhenius   exp(-Q (1/T - 1/293.15)),  Q 5000 K where the card states none
//	Nurse-Saul  (t - t0)/(20 - t0), not below 0,  t0 -10 C where the card states none
//
// Source: [astm-c1074].
func modelsOf(mix material.Mix) models {
	q, datum := mix.Activation.Value, usualDatum
	if !(q > 0) || !known(q) {
		q = Activation
	}
	if mix.Datum.Known() && mix.Datum.Value < refTemp-5 {
		datum = mix.Datum.Value
	}
	return models{
		func(t units.Temperature) float64 { return AgeFactor(t, refTemp, q) },
		func(t units.Temperature) float64 {
			return math.Max(0, float64(t-datum)) / float64(refTemp-datum)
		},
	}
}

// window scales a span stated at refTemp by the climate from the hour at on. What is
// planned lies inside both models; where they leave nothing between them, Arrhenius
// decides, which follows setting more closely.
func (m models) window(w Window, climate Climate, ref Span) Window {
	scale := func(rate func(units.Temperature) float64) Span {
		return Span{climate.wait(w.At, ref.From, rate), climate.wait(w.At, ref.Until, rate)}
	}
	w.Reference, w.Arrhenius, w.NurseSaul = ref, scale(m.arrhenius), scale(m.nurse)
	w.Planned = Span{max(w.Arrhenius.From, w.NurseSaul.From), min(w.Arrhenius.Until, w.NurseSaul.Until)}
	if ref.Until > 0 && w.Planned.Until <= w.Planned.From && ref.Until > ref.From {
		w.Planned = w.Arrhenius
	}
	w.Temp = climate.mean(w.At, w.At+max(w.Planned.From, w.Planned.Until))
	w.Differ = apart(w.Arrhenius.From, w.NurseSaul.From) || apart(w.Arrhenius.Until, w.NurseSaul.Until)
	return w
}

func apart(a, b units.Duration) bool { return math.Abs(float64(a-b)) > differ*float64(max(a, b)) }

// stated returns the card's value, or the usual one where it states none.
func stated(v material.Value[units.Duration], usual units.Duration) units.Duration {
	if v.Value > 0 && known(v.Value) {
		return v.Value
	}
	return usual
}

// lifeOf returns how long a batch can be worked at the temperature of the mix.
func (c *computer) lifeOf(mix material.Mix) units.Duration {
	return c.lifeWindow(mix, 0).Planned.Until
}

func (c *computer) lifeWindow(mix material.Mix, at units.Duration) Window {
	w := Window{Name: "working life", Of: "the first water of the batch", At: at, Touch: "stops spreading and pulls away from the trowel"}
	return modelsOf(mix).window(w, constant(c.mixTemp()), Span{0, stated(mix.WorkingLife, usualLife)})
}

// nextWindow returns when the coat after this mix goes on, after a place was packed.
func (c *computer) nextWindow(mix material.Mix, at units.Duration) Window {
	w := Window{Name: "next coat", Of: "packing at the same place", At: at, Touch: "soft to a gloved finger, not sticky: nothing comes away"}
	ref := Span{stated(mix.NextCoat, usualNext), stated(mix.NextCoatEnd, lateNext)}
	return modelsOf(mix).window(w, c.climateNow, ref)
}

// afterLast returns the windows that follow the last coat, which ends at the hour at.
func (c *computer) afterLast(coats []Coat, at units.Duration) []Window {
	last := coats[len(coats)-1]
	m := modelsOf(last.Mix)
	one := func(name, touch string, ref Span) Window {
		return m.window(Window{Name: name, Of: "the end of the last coat", At: at, Touch: touch}, c.climateNow, ref)
	}
	demould, cover := units.Duration(0), units.Duration(0)
	for _, coat := range coats {
		demould = max(demould, stated(coat.Mix.Demould, stripAt))
		cover = max(cover, stated(coat.Mix.Cover, coverFor))
	}
	edges := Span{stated(last.Mix.EdgeFrom, usualEdge), stated(last.Mix.EdgeUntil, lateEdge)}
	out := []Window{
		one("edges", "semi-hard: a blade cuts it without dragging fibres", edges),
		one("cover", "under film, no fans; damp to the touch when uncovered", Span{cover, 0}),
		one("demould", "rings when knocked, a nail leaves no mark", Span{demould, 0}),
	}
	for _, w := range out {
		if w.Planned.From >= longestWait {
			c.say(tooCold.At(finding.Where{}, "At %.0f C the wait %q never ends within a week: the concrete hardens too slowly or not at all.", w.Temp, w.Name).Measured(float64(w.Temp), 5, "C"))
			break
		}
	}
	return out
}

// times fills in when coats start, and the windows between and after them.
func (c *computer) times(r *Result) {
	n := len(r.Coats)
	if n == 0 {
		return
	}
	for i := range r.Coats {
		mix := c.in.Coats[i].Mix
		life, next := c.lifeWindow(mix, r.Coats[i].Starts), c.nextWindow(mix, r.Coats[i].Starts)
		life.Coat, next.Coat = r.Coats[i].Name, r.Coats[i].Name
		r.Windows = append(r.Windows, life)
		if i+1 < n {
			r.Windows = append(r.Windows, next)
		}
	}
	end := r.Coats[n-1].Starts + r.Coats[n-1].Takes
	r.Windows = append(r.Windows, c.afterLast(c.in.Coats, end)...)
	r.Climate = c.climateNow.Stretches
	r.Strength = c.strengths(end)
	c.demoulding(r)
}

// demoulding moves the planned demoulding behind the strength it needs.
func (c *computer) demoulding(r *Result) {
	for i, w := range r.Windows {
		if w.Name != "demould" {
			continue
		}
		for _, s := range r.Strength {
			if s.For == "demould" {
				r.Windows[i].Planned.From = max(r.Windows[i].Planned.From, s.Planned)
			}
		}
	}
}
