package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// tabSlack is how much longer than wanted a tab may be seen, mm: places are looked at in
// steps, and a tab on a curve is longer on one side than on the other.
const tabSlack = 2*step + 1

// stretches sums what is not cut through into tabs; what is no tab is uncut.
func (t *tracer) stretches(looks []look, bad *worst) []Tab {
	out := []Tab{}
	n := len(looks)
	start := 0
	for start < n && !looks[start].free { // begin where it is free
		start++
	}
	if start == n {
		for _, l := range looks {
			bad.take(l.uncut, l.at, l.line)
		}
		return out
	}
	for i := 1; i <= n; {
		k := 0
		for i+k <= n && !looks[(start+i+k)%n].free {
			k++
		}
		if k > 0 {
			run := make([]look, 0, k+1)
			for j := range k + 1 {
				run = append(run, looks[(start+i+j)%n])
			}
			if tab, ok := t.tab(run); ok {
				out = append(out, tab)
			} else {
				for _, l := range run[:k] {
					bad.take(l.uncut, l.at, l.line)
				}
			}
		}
		i += k + 1
	}
	return out
}

// tab makes a tab of a run of places that are not cut through and the free one after
// them, or says that it is none. Discs at both ends of a lifted stretch of path reach
// into it, so that of its length
//
//	width = length - 2 r,   length = seen + 2 sqrt((r + tol)^2 - r^2)
//
// is left where the path is narrowest. Seen is what is not free to the tolerance.
func (t *tracer) tab(run []look) (Tab, bool) {
	if t.part.Tabs <= 0 {
		return Tab{}, false
	}
	length, height := 0.0, 0.0
	for i, l := range run {
		if length += l.side; i < len(run)-1 {
			height = math.Max(height, l.height)
		}
	}
	length -= (run[0].side + run[len(run)-1].side) / 2 // the ends are free from about half a step on
	length += 2 * math.Sqrt(2*t.r*t.tol+t.tol*t.tol)
	mid := run[(len(run)-1)/2].at
	tab := Tab{X: units.Length(mid.X), Y: units.Length(mid.Y), Width: units.Length(rounded(length - 2*t.r)), Height: units.Length(rounded(height))}
	fits := tab.Width > 0 && tab.Width.MM() <= t.part.TabWidth.MM()+tabSlack && height <= t.part.TabHeight.MM()+t.tol
	return tab, fits
}

// tabs holds the tabs found against those wanted.
func (t *tracer) tabs(p Part, found []Tab) {
	if len(found) < p.Tabs {
		at := p.Region.Shape().Box().Center()
		t.say(tabMissing, 0, &at, "%s has %d of the %s that are to hold it.", p.ID, len(found), units.Count(p.Tabs, "tab", "tabs"))
	}
	if len(p.TabsOn) == 0 {
		return
	}
	for _, f := range found {
		at := geom.Point{X: f.X.MM(), Y: f.Y.MM()}
		if off := offLines(at, p.TabsOn); off > 1 {
			t.say(tabShows, 0, &at, "A tab of %s stands on an edge that shows or must fit.", p.ID)
		}
	}
}

// offLines returns the distance from p to the nearest of open lines, mm.
func offLines(p geom.Point, lines []geom.Ring) float64 {
	best := math.Inf(1)
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			best = math.Min(best, toward2(p, l[i-1], l[i]))
		}
	}
	return math.Sqrt(best)
}
