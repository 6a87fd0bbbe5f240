package toolpath

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A profile says how deep the cutter is after t mm round and round a path: straight
// between its knots.
type profile []knot

type knot struct{ t, z float64 }

// descent returns the profile that cuts a path of the given length in passes down to
// the levels, entering each at the slope (tangent of the ramp angle). After the last
// ramp one whole turn is cut at the bottom.
func descent(length float64, levels []float64, slope float64) profile {
	out := profile{{0, 0}}
	t, z := 0.0, 0.0
	for k, next := range levels {
		ramp := (z - next) / slope
		out = append(out, knot{t + ramp, next})
		turn := math.Max(length, ramp)
		if k == len(levels)-1 {
			turn = ramp + length
		}
		t, z = t+turn, next
		if t > out[len(out)-1].t {
			out = append(out, knot{t, next})
		}
	}
	return out
}

func (p profile) end() float64 { return p[len(p)-1].t }

// at returns the depth at t.
func (p profile) at(t float64) float64 {
	i, _ := slices.BinarySearchFunc(p, t, func(k knot, t float64) int { return cmp.Compare(k.t, t) })
	if i == 0 {
		return p[0].z
	}
	if i >= len(p) {
		return p[len(p)-1].z
	}
	a, b := p[i-1], p[i]
	return a.z + (b.z-a.z)*(t-a.t)/(b.t-a.t)
}

// levels returns the depths of the passes, from the first down to bottom.
func levels(bottom, step float64) []float64 {
	n := max(1, int(math.Ceil(-bottom/step-1e-9)))
	out := make([]float64, n)
	for k := range out {
		out[k] = bottom * float64(k+1) / float64(n)
	}
	return out
}

// A cut is what all loops of a sheet have in common.
type cut struct {
	levels []float64
	slope  float64
	tabTop float64 // z
	feed   float64
	plunge float64
	safe   float64
}

func newCut(m Machine, thickness float64) cut {
	bottom := -(thickness + m.Overcut.MM())
	return cut{
		levels: levels(bottom, m.StepDown.MM()), slope: math.Tan(float64(m.Ramp) * math.Pi / 180),
		tabTop: -thickness + math.Min(m.TabHeight.MM(), thickness/2),
		feed:   float64(m.Feed), plunge: float64(m.Plunge), safe: m.SafeHeight.MM(),
	}
}

// mostTurns bounds the turns of one ramp in a small hole; a steeper ramp needs fewer.
// Chosen.
const mostTurns = 6

// steep returns the slope of ramps on a path of the given length.
func (c cut) steep(length float64) float64 {
	return math.Max(c.slope, -c.levels[0]/(mostTurns*length))
}

// rampFeed is the feed on a ramp: the plunge limits its downward part.
func (c cut) rampFeed(slope float64) float64 {
	return math.Min(c.feed, math.Round(c.plunge*math.Sqrt(1+slope*slope)/slope))
}

// descent returns the profile of a path.
func (c cut) descent(p path) profile { return descent(p.length(), c.levels, c.steep(p.length())) }

// exit returns where on a path, entered at s, the cutter comes up.
func (c cut) exit(p path, s float64) float64 { return s + c.descent(p).end() }

// loop cuts l from its entry: over it at the safe height, down, round and up.
func (c cut) loop(p *pen, l loop) {
	if l.drilled() {
		c.drill(p, l.at)
		return
	}
	prof := c.descent(l.path)
	p.rapid(l.path.at(l.entry), c.safe)
	p.line(l.path.at(l.entry), 0, c.plunge)
	marks := c.marks(l, prof)
	for i := 1; i < len(marks); i++ {
		c.stretch(p, l, prof, marks[i-1], marks[i])
	}
	p.rapid(geom.Point{X: p.x, Y: p.y}, c.safe)
}

// drill plunges to every level and comes up to clear the chips between.
func (c cut) drill(p *pen, at geom.Point) {
	p.rapid(at, c.safe)
	for _, z := range c.levels {
		p.line(at, z, c.plunge)
		p.line(at, 0, c.feed)
	}
	p.rapid(at, c.safe)
}

// marks returns the places t at which the depth bends or a tab begins or ends, in order.
func (c cut) marks(l loop, prof profile) []float64 {
	var out []float64
	for _, k := range prof {
		out = append(out, k.t)
	}
	length, end := l.path.length(), prof.end()
	for _, tab := range l.tabs {
		for _, s := range [2]float64{tab.from, tab.to} {
			for t := math.Mod(s-l.entry+2*length, length); t < end; t += length {
				out = append(out, t)
			}
		}
	}
	if len(l.tabs) > 0 {
		out = append(out, c.crossings(prof)...)
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(b-a) < 1e-9 })
}

// crossings returns where the profile passes the tabs' height.
func (c cut) crossings(prof profile) []float64 {
	var out []float64
	for i := 1; i < len(prof); i++ {
		if a, b := prof[i-1], prof[i]; a.z > c.tabTop && b.z < c.tabTop {
			out = append(out, a.t+(b.t-a.t)*(a.z-c.tabTop)/(a.z-b.z))
		}
	}
	return out
}

// stretch cuts from t to end, over a tab at its height.
func (c cut) stretch(p *pen, l loop, prof profile, t, end float64) {
	z0, z1 := prof.at(t), prof.at(end)
	if l.onTab((t + end) / 2) {
		z0, z1 = math.Max(z0, c.tabTop), math.Max(z1, c.tabTop)
	}
	c.vertical(p, z0)
	feed := c.feed
	if z1 < z0 {
		feed = c.rampFeed(c.steep(l.path.length()))
	}
	for s := t; end-s > 1e-9; {
		i, rest := l.path.find(l.path.wrap(l.entry + s))
		q := l.path.pieces[i]
		e := math.Min(rest+end-s, q.length)
		step := e - rest
		z := z0 + (z1-z0)*(s+step-t)/(end-t)
		if q = q.part(rest, e); q.sweep == 0 {
			p.line(q.to, z, feed)
		} else {
			p.arc(q, z, feed)
		}
		s += math.Max(step, 1e-9)
	}
}

// vertical goes straight up or down to z.
func (c cut) vertical(p *pen, z float64) {
	at := geom.Point{X: p.x, Y: p.y}
	if p.round(z) < p.z {
		p.line(at, z, c.plunge)
	} else {
		p.line(at, z, c.feed)
	}
}

// onTab reports whether the place t mm after the entry lies on a tab.
func (l loop) onTab(t float64) bool {
	s := l.path.wrap(l.entry + t)
	for _, tab := range l.tabs {
		if (s > tab.from && s < tab.to) || s+l.path.length() < tab.to {
			return true
		}
	}
	return false
}
