package toolpath

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Chosen.
const (
	onLineMM  = 0.25 // an edge within this of a line for tabs lies on it: half a clearance and rounding
	clearMM   = 2.0  // tabs keep this far from edges that show
	sampleMM  = 1.0  // along the path
	mostTries = 200000
)

// placeTabs chooses where the cutter crosses tabs on an outline: evenly round it, each
// moved to the nearest stretch that lies wholly along a hidden edge.
//
// The cutter is lifted over the tab's width and its own diameter, so that the tab is
// as wide as asked where it is narrowest.
func placeTabs(l *loop, p Part, m Machine) {
	length := l.path.length()
	lift := m.TabWidth.MM() + m.Cutter.MM()
	n := min(m.Tabs, int(length/(3*lift)))
	if n < 1 || len(p.TabsOn) == 0 {
		return
	}
	free := allowed(l.path, visible(p, m), m.Cutter.MM()/2+clearMM, lift)
	step := length / float64(len(free))
	for k := range n {
		i := nearestFree(free, int(float64(len(free))*(float64(k)+0.5)/float64(n)))
		if i < 0 {
			break
		}
		mid := float64(i) * step
		at := l.path.at(mid)
		l.tabs = append(l.tabs, span{l.path.wrap(mid - lift/2), l.path.wrap(mid-lift/2) + lift})
		l.placed = append(l.placed, Tab{Part: p.ID, Place: l.part, X: units.Length(at.X), Y: units.Length(at.Y), Width: m.TabWidth, Height: m.TabHeight})
		block(free, i, int(math.Ceil(1.5*lift/step)))
	}
}

// visible returns the edges of the part that show, each stretch as a ring there and
// back.
func visible(p Part, m Machine) geom.Region {
	var out geom.Region
	for _, ring := range p.Region.Shape().Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if !hidden(a, b, p.TabsOn) {
				out = append(out, geom.Polygon{Outer: geom.Ring{a, b, a.Add(b).Mul(0.5)}})
			}
		}
	}
	return out
}

// hidden reports whether the edge from a to b lies along one of the lines.
func hidden(a, b geom.Point, lines []geom.Ring) bool {
	for _, line := range lines {
		if near(a, line) && near(b, line) && near(a.Add(b).Mul(0.5), line) {
			return true
		}
	}
	return false
}

func near(p geom.Point, line geom.Ring) bool {
	for i := 1; i < len(line); i++ {
		a, v := line[i-1], line[i].Sub(line[i-1])
		t := 0.0
		if d := v.Dot(v); d > 0 {
			t = math.Max(0, math.Min(1, p.Sub(a).Dot(v)/d))
		}
		if a.Add(v.Mul(t)).Sub(p).Norm() <= onLineMM {
			return true
		}
	}
	return false
}

// allowed tells for samples along the path whether a lift round that place keeps away
// from all edges that show.
func allowed(p path, shows geom.Region, away, lift float64) []bool {
	n := min(max(8, int(p.length()/sampleMM)), mostTries)
	far, out := make([]bool, n), make([]bool, n)
	where := geom.NewLocator(shows)
	step := p.length() / float64(n)
	for i := range far {
		far[i] = where.Boundary(p.at(float64(i)*step)) > away
	}
	half := int(math.Ceil(lift / 2 / step))
	run := 0
	for i := -2 * half; i < n+half; i++ {
		if far[((i%n)+n)%n] {
			run++
		} else {
			run = 0
		}
		if j := i - half; run > 2*half && j >= 0 && j < n {
			out[j] = true
		}
	}
	return out
}

// nearestFree returns the allowed sample nearest to i, or -1.
func nearestFree(free []bool, i int) int {
	n := len(free)
	for d := 0; d <= n/2; d++ {
		for _, j := range [2]int{(i + d) % n, (i - d + n) % n} {
			if free[j] {
				return j
			}
		}
	}
	return -1
}

func block(free []bool, i, reach int) {
	n := len(free)
	for d := -reach; d <= reach; d++ {
		free[(((i+d)%n)+n)%n] = false
	}
}

// sayTabs tells which parts of a sheet are cut loose with too few tabs.
func (c *computer) sayTabs(s Sheet, loops []loop) {
	count := make([]int, len(s.Parts))
	for _, l := range loops {
		count[l.part] += len(l.placed)
	}
	if c.m.Tabs < 0 {
		return
	}
	var none []string
	for i, p := range s.Parts {
		switch {
		case count[i] == 0:
			none = append(none, p.ID)
		case count[i] == 1:
			c.say(noTabs.At(finding.Where{Element: p.ID}, "Only one tab of part %s stands on an edge that is not seen.", p.ID).As(finding.Note))
		}
	}
	if len(none) > 0 {
		c.say(noTabs.At(finding.Where{Element: s.Name}, "No tab can stand on %s of %s: every edge is a visible riser, a key or too short.", list(none), s.Name))
	}
}
