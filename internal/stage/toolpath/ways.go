package toolpath

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// layWays sets the ball down along ways over the whole block, the longer way of it,
// every other way from its far end.
func (k *carver) layWays() {
	f, h := k.f, k.v.Scallop.MM()
	k.along = f.Box().Width() >= f.Box().Height()
	across, n, m, step := f.DY, f.Rows, f.Cols, f.DX
	if !k.along {
		across, n, m, step = f.DX, f.Cols, f.Rows, f.DY
	}
	skip := max(1, int(2*math.Sqrt(h*(2*k.radius-h))/across))
	jump := max(1, int(k.radius/samplesInR/step))
	k.gap = float64(skip) * across
	for i, w := range evenly(n, skip) {
		var way []place
		for _, s := range evenly(m, jump) {
			c, r := s, w
			if !k.along {
				c, r = w, s
			}
			at := f.Node(c, r)
			way = append(way, place{at.X, at.Y, k.tip(c, r)})
		}
		if i%2 == 1 {
			slices.Reverse(way)
		}
		k.ways = append(k.ways, way)
	}
}

// evenly returns 0, step, 2 step ... and n-1.
func evenly(n, step int) []int {
	var out []int
	for i := 0; i < n-1; i += step {
		out = append(out, i)
	}
	return append(out, n-1)
}

// rough takes the foam down level by level to the allowance above the surface, and
// returns the number of levels.
func (k *carver) rough(p *pen) int {
	low, _ := k.f.Range()
	low += allowanceMM
	if low >= 0 {
		return 0
	}
	skip := max(1, int(2*k.radius*roughShare/k.gap))
	all, above := levels(low, math.Min(k.c.m.StepDown.MM(), k.radius*2)), 0.0
	for _, level := range all {
		for w := 0; w < len(k.ways); w += skip {
			way := k.ways[w]
			if w/skip%2 != w%2 { // ways that are skipped would turn all one way
				way = slices.Clone(way)
				slices.Reverse(way)
			}
			for _, run := range below(way, above) {
				k.follow(p, raised(run, level), above)
			}
		}
		above = level
	}
	return len(all)
}

// below returns the runs of a way where the allowance lies under the height reached.
func below(way []place, above float64) [][]place {
	var out [][]place
	open := false
	for _, q := range way {
		if q.z+allowanceMM >= above-seesMM {
			open = false
			continue
		}
		if !open {
			out = append(out, nil)
			open = true
		}
		out[len(out)-1] = append(out[len(out)-1], q)
	}
	return out
}

// raised returns the run at the allowance above the surface, at most down to level.
func raised(run []place, level float64) []place {
	out := slices.Clone(run)
	for i := range out {
		out[i].z = math.Max(out[i].z+allowanceMM, level)
	}
	return out
}

// finish follows all ways at the surface.
func (k *carver) finish(p *pen) {
	for _, way := range k.ways {
		k.follow(p, way, math.Inf(-1))
	}
}

// follow cuts along places. It goes there without leaving the foam where the beginning
// is near: up to what is clear, across, down; else at the safe height.
func (k *carver) follow(p *pen, way []place, clear float64) {
	m := k.c.m
	start := geom.Point{X: way[0].x, Y: way[0].y}
	here := geom.Point{X: p.x, Y: p.y}
	near := 2.1 * math.Max(k.gap, 2*k.radius*roughShare)
	if up := math.Max(math.Max(clear, k.between(here, start)), math.Max(p.z, way[0].z)); p.z < m.SafeHeight.MM()-seesMM && apart(here, start) <= near {
		p.line(here, up, float64(m.Feed))
		p.line(start, up, float64(m.Feed))
	} else {
		p.rapid(start, m.SafeHeight.MM())
		p.line(start, math.Max(0, way[0].z), float64(m.Plunge))
	}
	p.line(start, way[0].z, float64(m.Plunge))
	at := way[0]
	for _, q := range slimmed(way, m.ArcTol.MM()) {
		p.line(geom.Point{X: q.x, Y: q.y}, q.z, k.feed(at, q))
		at = q
	}
}

// between returns the height at which the tip may go straight from a to b, with the
// allowance.
func (k *carver) between(a, b geom.Point) float64 {
	high := math.Inf(-1)
	if math.IsNaN(a.X) || apart(a, b) > 10*k.radius {
		return high
	}
	n := 1 + int(apart(a, b)/math.Min(k.f.DX, k.f.DY))
	for i := range n + 1 {
		q := a.Add(b.Sub(a).Mul(float64(i) / float64(n)))
		c := int(math.Round((q.X - k.f.Origin.X) / k.f.DX))
		r := int(math.Round((q.Y - k.f.Origin.Y) / k.f.DY))
		high = math.Max(high, k.tip(min(max(c, 0), k.f.Cols-1), min(max(r, 0), k.f.Rows-1)))
	}
	return high + allowanceMM
}

// feed is the feed from a to b: where it goes down the plunge limits that part.
func (k *carver) feed(a, b place) float64 {
	feed, down := float64(k.c.m.Feed), a.z-b.z
	if down <= 0 {
		return feed
	}
	length := math.Sqrt((a.x-b.x)*(a.x-b.x) + (a.y-b.y)*(a.y-b.y) + down*down)
	return math.Max(1, math.Min(feed, math.Round(float64(k.c.m.Plunge)*length/down)))
}

// slimmed leaves out places within tol of the straight line between those kept. A
// place above the line is kept where it is more than a tenth of that above, so that
// leaving out cuts almost nothing away.
func slimmed(way []place, tol float64) []place {
	if len(way) < 3 {
		return way
	}
	keep := make([]bool, len(way))
	keep[0], keep[len(way)-1] = true, true
	spans := [][2]int{{0, len(way) - 1}}
	for len(spans) > 0 {
		s := spans[len(spans)-1]
		spans = spans[:len(spans)-1]
		a, b := way[s[0]], way[s[1]]
		length := math.Hypot(b.x-a.x, b.y-a.y)
		worst, at := 1.0, -1
		for i := s[0] + 1; i < s[1]; i++ {
			t := math.Hypot(way[i].x-a.x, way[i].y-a.y) / length
			off := way[i].z - (a.z + t*(b.z-a.z))
			if off > 0 {
				off *= 10
			}
			if bad := math.Abs(off) / tol; bad > worst {
				worst, at = bad, i
			}
		}
		if at > 0 {
			keep[at] = true
			spans = append(spans, [2]int{s[0], at}, [2]int{at, s[1]})
		}
	}
	var out []place
	for i, q := range way {
		if keep[i] {
			out = append(out, q)
		}
	}
	return out
}
