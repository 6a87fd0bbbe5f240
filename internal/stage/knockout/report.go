package knockout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// seams reports the joints of all layers with their measures and reasons.
func (c *computer) seams() {
	for i, b := range c.blocks {
		for n, j := range b.joints {
			s := Seam{ID: fmt.Sprintf("L%d-S%d", b.course.layer.Number, n+1), Layer: b.course.layer.Number, Kind: j.kind,
				Parts: pairOf(c.partID(i, j.left), c.partID(i, j.right)), Line: [2]geom.Point{j.a, j.b}, Curve: j.curve,
				Length: units.Length(j.length()), Keys: j.keys, Staggers: c.staggers(i, j)}
			if j.kind != straight {
				s.Clearance = c.in.Making.Clearance
			}
			s.Visible = units.Length(c.visible(i, j))
			s.Width = s.Length
			s.Why = c.why(i, b, j, s)
			c.r.Seams = append(c.r.Seams, s)
			c.judge(i, b, j, s)
		}
		c.sayCut(b)
	}
}

func pairOf(a, b string) []string {
	out := []string{a, b}
	slices.Sort(out)
	return out
}

// partID returns the id of the n-th piece of the i-th layer.
func (c *computer) partID(i, n int) string { return c.r.Parts[c.first[i]+c.rank[i][n]].ID }

// visible returns how much of a seam prints in the concrete: what of it the layer
// above does not cover, and the risers at its ends that are outline.
func (c *computer) visible(i int, j joint) float64 {
	sum := 0.0
	u := j.b.Sub(j.a).Mul(1 / j.length())
	var above geom.Region
	if i+1 < len(c.blocks) {
		above = c.blocks[i+1].course.shape
	}
	for k := 1; k < len(j.curve); k++ {
		sum += outside(j.curve[k-1], j.curve[k], above)
	}
	wall := geom.NewLocator(c.blocks[i].course.shape)
	for _, e := range []geom.Point{j.a.Sub(u.Mul(2 * geom.Grid)), j.curve[len(j.curve)-1]} {
		if wall.Boundary(e) < 0.01 && !c.atSide(e) {
			sum += c.blocks[i].course.layer.Depth.MM()
		}
	}
	return sum
}

// atSide reports whether p lies at a side of the box, where no riser shows.
func (c *computer) atSide(p geom.Point) bool {
	l, w := c.in.Length.MM(), c.in.Width.MM()
	return p.X < atSideMM || p.Y < atSideMM || l-p.X < atSideMM || w-p.Y < atSideMM
}

// outside returns the length of segment ab that lies outside r.
func outside(a, b geom.Point, r geom.Region) float64 {
	n := b.Sub(a).Norm()
	if len(r) == 0 || !(n > 0) {
		return n
	}
	sum, rings := n, r.Rings()
	dir := b.Sub(a).Mul(1 / n)
	lo, hi := a.Dot(dir), b.Dot(dir)
	var ts []hit
	for k, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			u, v, off := p.Cross(dir), q.Cross(dir), a.Cross(dir)
			if (u <= off) != (v <= off) {
				at := p.Add(q.Sub(p).Mul((off - u) / (v - u)))
				ts = append(ts, hit{at: at, t: at.Dot(dir), ring: k})
			}
		}
	}
	slices.SortFunc(ts, func(a, b hit) int { return cmp.Compare(a.t, b.t) })
	for i := 0; i+1 < len(ts); i += 2 {
		sum -= math.Max(0, math.Min(hi, ts[i+1].t)-math.Max(lo, ts[i].t))
	}
	return math.Max(0, sum)
}

// staggers returns how far the joint keeps from the seams of the layers below and
// above, curve to curve.
func (c *computer) staggers(i int, j joint) []Stagger {
	out := []Stagger{}
	for _, k := range []int{i - 1, i + 1} {
		if k < 0 || k >= len(c.blocks) || len(c.blocks[k].joints) == 0 {
			continue
		}
		g := Stagger{Layer: c.blocks[k].course.layer.Number}
		least := math.Inf(1)
		for _, o := range c.blocks[k].joints {
			if steep(j.a, j.b, o.a, o.b) && apart(j.a, j.b, o.a, o.b) == 0 {
				g.Crosses++
			} else {
				least = math.Min(least, lineGap(j.curve, o.curve))
			}
		}
		if !math.IsInf(least, 1) {
			g.Distance = units.Length(least)
			out = append(out, g)
		}
	}
	return out
}

// why says in numbers why the seam lies where it does.
func (c *computer) why(i int, b *block, j joint, s Seam) string {
	why := []string{fmt.Sprintf("Pieces of layer %d may be %.0f x %.0f mm (%s).", s.Layer, c.room.x, c.room.y, c.room.by)}
	line := fmt.Sprintf("Of straight cuts in %s this costs least: it crosses %.0f mm of foam, %.0f mm show", units.Count(directions, "direction", "directions"), s.Length, s.Visible)
	if t := c.siteAt(b, j); t != nil {
		if d, ok := nearestNeck(t, j); ok {
			line += fmt.Sprintf(", the next neck is %.0f mm off", d)
		}
		if t.holes != nil {
			line += fmt.Sprintf(", the next island %.0f mm", gapTo(t.holes, j))
		}
		if d, ok := nearestMouth(t, j); ok {
			line += fmt.Sprintf(", the mouth %.0f mm", d)
		}
	}
	why = append(why, line+".")
	for _, g := range s.Staggers {
		crossed := ""
		if g.Crosses > 0 {
			crossed = fmt.Sprintf("; %d it crosses, which bridge it", g.Crosses)
		}
		why = append(why, fmt.Sprintf("Seams of layer %d are %.0f mm away%s.", g.Layer, g.Distance, crossed))
	}
	switch {
	case j.why != "":
		why = append(why, strings.ToUpper(j.why[:1])+j.why[1:]+".")
	case s.Kind == keyed:
		why = append(why, fmt.Sprintf("%s of radius %.0f mm with %.2f mm clearance.", units.Count(s.Keys, "key", "keys"), c.keyShape().radius, s.Clearance))
	}
	return strings.Join(why, " ")
}

// siteAt returns the site that j cuts.
func (c *computer) siteAt(b *block, j joint) *site {
	for n, s := range b.course.sites {
		if s != nil && (geom.Region{b.course.shape[n]}).Contains(j.a.Add(j.b).Mul(0.5)) {
			return s
		}
	}
	return nil
}

func nearestNeck(t *site, j joint) (float64, bool) {
	least := math.Inf(1)
	for _, n := range t.necks {
		least = math.Min(least, distanceTo(n.At, j.a, j.b))
	}
	return least, !math.IsInf(least, 1)
}

func nearestMouth(t *site, j joint) (float64, bool) {
	least := math.Inf(1)
	for _, m := range t.mouths {
		least = math.Min(least, apart(m[0], m[1], j.a, j.b))
	}
	return least, !math.IsInf(least, 1)
}

// gapTo returns how near the joint comes to a boundary, by samples.
func gapTo(l *geom.Locator, j joint) float64 {
	least := math.Inf(1)
	n := math.Ceil(j.length()/2) + 1
	for k := 0.0; k <= n; k++ {
		least = math.Min(least, l.Boundary(j.a.Add(j.b.Sub(j.a).Mul(k/n))))
	}
	return least
}

// judge says what is not well with a seam.
func (c *computer) judge(i int, b *block, j joint, s Seam) {
	m := j.a.Add(j.b).Mul(0.5)
	at := [2]float64{m.X, m.Y}
	where := finding.Where{Element: s.ID, View: "form", At: &at}
	for _, g := range s.Staggers {
		if g.Layer < s.Layer && g.Distance < c.in.Making.Stagger-0.05 {
			c.say(stagger.At(where, "Seam %s lies %.0f mm from a seam of layer %d; %.0f mm are asked for.", s.ID, g.Distance, g.Layer, c.in.Making.Stagger).
				Measured(float64(g.Distance), float64(c.in.Making.Stagger), "mm"))
		}
	}
	if s.Length < thinMM {
		c.say(weak.At(where, "Seam %s crosses only %.0f mm of foam; under %.0f mm a glue joint breaks.", s.ID, s.Length, thinMM).Measured(float64(s.Length), thinMM, "mm"))
	}
	if t := c.siteAt(b, j); t != nil {
		if d, ok := nearestNeck(t, j); ok && d < 20 {
			c.say(weak.At(where, "Seam %s lies %.0f mm from the middle of a neck.", s.ID, d))
		}
		if t.holes != nil && gapTo(t.holes, j) < 1 {
			c.say(island.At(where, "Seam %s cuts the ring of foam round an island.", s.ID))
		}
	}
}

// sayCut says what became of an outline that was too large.
func (c *computer) sayCut(b *block) {
	number := b.course.layer.Number
	for n, s := range b.course.sites {
		if s == nil {
			continue
		}
		box := b.course.shape[n].Outer.Box()
		m := box.Center()
		at := [2]float64{m.X, m.Y}
		where := finding.Where{Element: b.course.layer.Name, View: "form", At: &at}
		if len(b.uncut) == 0 {
			c.say(seam.At(where, "Layer %d is %.0f x %.0f mm there and a piece may be %.0f x %.0f mm (%s): it takes %s.",
				number, box.Width(), box.Height(), c.room.x, c.room.y, c.room.by, units.Count(len(b.course.splits[n].cuts), "cut", "cuts")))
		}
	}
	for _, p := range b.uncut {
		box := p.Outer.Box()
		m := box.Center()
		at := [2]float64{m.X, m.Y}
		c.say(noFit.At(finding.Where{Element: b.course.layer.Name, View: "form", At: &at},
			"A piece of layer %d is %.0f x %.0f mm and fits %.0f x %.0f mm (%s) in no turn; no seams were found that part it.", number, box.Width(), box.Height(), c.room.x, c.room.y, c.room.by))
	}
}
