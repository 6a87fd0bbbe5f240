package svg

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A checker looks at all outlines together.
type checker struct {
	d       *Drawing
	opt     Options
	notes   *notebook
	rings   []flatRing
	of      [][]int // rings of each outline
	h       *hierarchy
	crossed map[[2]int]bool // pairs of rings, lower first
	tangled map[int]bool    // outlines whose own rings cross
}

// check finds what is wrong between and within outlines, measures them, and nests
// them. It fills the fields of d's outlines that depend on each other.
func check(d *Drawing, opt Options, notes *notebook) error {
	c := &checker{d: d, opt: opt, notes: notes, crossed: map[[2]int]bool{}, tangled: map[int]bool{}}
	c.duplicates()
	c.collect()
	if !c.cross() || !c.h.nest(c.rings, c.crossed) {
		return &Error{Rule: ruleTangled, Where: firstPlace(d), Text: sprintf("the outlines cross more than %d times, or lie over one another so much that %d comparisons do not tell where",
			mostCrossings, opt.Limits.Pairs)}
	}
	c.measure()
	c.tree()
	c.offPage()
	for _, o := range d.Outlines {
		d.Vertices += vertices(o)
	}
	if len(c.rings) == 0 {
		w := firstPlace(d)
		notes.add(ruleNoClosed.At(w, "the drawing has no closed outline: %s", units.Count(len(d.Outlines), "line was found, open or empty", "lines were found, all open or empty")))
	}
	return nil
}

// duplicates marks outlines that repeat an earlier one: same corners, whatever the
// start and direction, within a hundredth of a millimetre.
func (c *checker) duplicates() {
	order := make([]int, len(c.d.Outlines))
	for i := range order {
		order[i] = i
	}
	at := func(i int) *Outline { return &c.d.Outlines[i] }
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(vertices(*at(i)), vertices(*at(j))), cmp.Compare(at(i).Box.Min.X, at(j).Box.Min.X), i-j)
	})
	budget := c.opt.Limits.Pairs / 10
	for k, i := range order {
		for _, j := range order[k+1:] {
			if budget--; budget < 0 || vertices(*at(i)) != vertices(*at(j)) || at(j).Box.Min.X-at(i).Box.Min.X > sameMM {
				break
			}
			a, b := at(min(i, j)), at(max(i, j))
			if b.DuplicateOf == "" && a.DuplicateOf == "" && boxesAgree(a.Box, b.Box) && sameLines(a, b) {
				b.DuplicateOf = a.ID
				c.notes.add(ruleDuplicate.At(b.where(c.d.File), "%q is the same outline as %q in line %d", b.ID, a.ID, a.Line))
			}
		}
	}
}

// sameMM is how near corners of the same outline lie. Chosen: under any chord error in use.
const sameMM = 0.01

func boxesAgree(a, b geom.Box) bool {
	return a.Min.Sub(b.Min).Norm() <= sameMM && a.Max.Sub(b.Max).Norm() <= sameMM
}

func sameLines(a, b *Outline) bool {
	if len(a.Rings) != len(b.Rings) || a.FillRule != b.FillRule || !slices.Equal(a.Closed, b.Closed) {
		return false
	}
	for i := range a.Rings {
		if !sameLine(a.Rings[i], b.Rings[i], a.Closed[i]) {
			return false
		}
	}
	return true
}

func sameLine(r, s geom.Ring, closed bool) bool {
	n := len(r)
	if n != len(s) {
		return false
	}
	near := func(p, q geom.Point) bool { return math.Abs(p.X-q.X) <= sameMM && math.Abs(p.Y-q.Y) <= sameMM }
	tries := 0
	for start := range s {
		if !closed && start != 0 && start != n-1 || !near(r[0], s[start]) {
			continue
		}
		for _, step := range []int{1, n - 1} {
			i := 0
			for i < n && near(r[i], s[(start+i*step)%n]) {
				i++
			}
			if i == n {
				return true
			}
		}
		if tries++; tries > 8 { // corners heaped in one place are not worth the time
			return false
		}
	}
	return n == 0
}

// collect gathers the rings that count.
func (c *checker) collect() {
	c.of = make([][]int, len(c.d.Outlines))
	var bare []geom.Ring
	for i, o := range c.d.Outlines {
		for k, r := range o.Rings {
			if o.DuplicateOf == "" && o.Closed[k] && !o.Speck[k] {
				c.of[i] = append(c.of[i], len(c.rings))
				c.rings = append(c.rings, newFlatRing(i, r, o.exact[k]))
				bare = append(bare, r)
			}
		}
	}
	c.h = newHierarchy(bare, c.opt.Limits.Pairs)
}

// cross finds and tells the crossings, within outlines and between them.
func (c *checker) cross() bool {
	all, whole := c.h.crossings()
	own := map[int][]crossing{}
	between := map[[2]int][]crossing{}
	for _, x := range all {
		i, j := c.rings[x.ring[0]].outline, c.rings[x.ring[1]].outline
		if i == j {
			own[i] = append(own[i], x)
		} else {
			between[[2]int{min(i, j), max(i, j)}] = append(between[[2]int{min(i, j), max(i, j)}], x)
		}
	}
	for _, i := range sortedKeys(own, cmp.Compare[int]) {
		c.tellOwn(i, own[i])
	}
	pairs := sortedKeys(between, func(a, b [2]int) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) })
	for _, ij := range pairs {
		c.tellBetween(ij[0], ij[1], between[ij])
	}
	return whole
}

func sortedKeys[K comparable, V any](m map[K]V, order func(a, b K) int) []K {
	out := make([]K, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.SortFunc(out, order)
	return out
}

func (c *checker) tellOwn(i int, at []crossing) {
	o := c.d.Outlines[i]
	c.tangled[i] = true
	for _, x := range at {
		c.crossed[[2]int{min(x.ring[0], x.ring[1]), max(x.ring[0], x.ring[1])}] = true
	}
	for k, x := range at {
		if k == tellPlaces {
			break
		}
		c.notes.add(ruleSelfCross.At(o.whereAt(c.d.File, x.at), "%q crosses itself at x %.2f, y %.2f mm on the page%s",
			o.ID, x.at.X, x.at.Y, outOf(len(at))).Measured(float64(len(at)), 0, "places"))
	}
}

// tellPlaces is how many crossings of one outline are told by place.
const tellPlaces = 3

func outOf(n int) string {
	if n > 1 {
		return sprintf(", one of %d places", n)
	}
	return ""
}

// tellBetween tells where outlines i and j cross, weaving within chord errors left out.
func (c *checker) tellBetween(i, j int, at []crossing) {
	tol := 2*c.opt.ChordError + geom.Grid
	near := c.h.nearRings(func(r int) bool { return c.rings[r].outline == j }, tol)
	var real []crossing
	byRing := map[int][]crossing{}
	along := func(x crossing) float64 {
		if c.rings[x.ring[0]].outline == i {
			return x.along[0]
		}
		return x.along[1]
	}
	for _, x := range at {
		r := x.ring[0]
		if c.rings[r].outline != i {
			r = x.ring[1]
		}
		byRing[r] = append(byRing[r], x)
	}
	for _, r := range sortedKeys(byRing, cmp.Compare[int]) {
		list := byRing[r]
		slices.SortFunc(list, func(a, b crossing) int { return cmp.Compare(along(a), along(b)) })
		real = append(real, c.h.deep(r, list, along, near)...)
	}
	if len(real) == 0 {
		return
	}
	a, b := c.d.Outlines[i], c.d.Outlines[j]
	for _, x := range real {
		c.crossed[[2]int{min(x.ring[0], x.ring[1]), max(x.ring[0], x.ring[1])}] = true
	}
	for _, x := range real[:min(len(real), tellPlaces)] {
		c.notes.add(ruleCross.At(b.whereAt(c.d.File, x.at), "%q crosses %q at x %.2f, y %.2f mm on the page%s",
			b.ID, a.ID, x.at.X, x.at.Y, outOf(len(real))).Measured(float64(len(real)), 0, "places"))
	}
}

// measure gives each outline its area, and tells where the fill rule decides.
func (c *checker) measure() {
	for i := range c.d.Outlines {
		o := &c.d.Outlines[i]
		mine := c.of[i]
		switch {
		case !o.AllClosed():
			o.AreaMM2 = c.openArea(o)
		case c.tangled[i]:
			o.AreaMM2 = o.Region().Area()
		default:
			o.AreaMM2 = ruleArea(c.rings, mine, o.FillRule)
		}
		if len(mine) > 1 && !c.tangled[i] && o.FillRule == geom.NonZero {
			c.tellFillRule(o, mine)
		}
	}
	byID := map[string]float64{}
	for _, o := range c.d.Outlines {
		byID[o.ID] = o.AreaMM2
	}
	for i := range c.d.Outlines {
		if o := &c.d.Outlines[i]; o.DuplicateOf != "" {
			o.AreaMM2 = byID[o.DuplicateOf]
		}
	}
}

// openArea is what a fill would cover of an outline with open lines.
func (c *checker) openArea(o *Outline) float64 {
	if len(o.Rings) == 1 {
		return math.Abs(o.exact[0])
	}
	var rings []flatRing
	var bare []geom.Ring
	for i, r := range o.Rings {
		if len(r) > 2 {
			rings = append(rings, newFlatRing(0, r, o.exact[i]))
			bare = append(bare, r)
		}
	}
	h := newHierarchy(bare, c.opt.Limits.Pairs)
	crossed, whole := h.crossings()
	if whole && len(crossed) > 0 {
		return geom.Build(bare, o.FillRule).Area()
	}
	if !whole || !h.nest(rings, nil) {
		return 0 // no part of it is used; its area would take too long to tell
	}
	mine := make([]int, len(rings))
	for i := range mine {
		mine[i] = i
	}
	return ruleArea(rings, mine, o.FillRule)
}

func (c *checker) tellFillRule(o *Outline, mine []int) {
	other := ruleArea(c.rings, mine, geom.EvenOdd)
	if math.Abs(other-o.AreaMM2) < c.opt.Speck {
		return
	}
	c.notes.add(ruleFillRule.At(o.where(c.d.File), "%q has lines inside its own that turn the same way: by the file's rule, nonzero, they are no holes and it covers %.0f mm2; as holes it would cover %.0f mm2",
		o.ID, o.AreaMM2, other).Measured(o.AreaMM2, other, "mm2"))
}

// tree gives each outline its parent, the smallest outline around its largest ring, and
// the outlines directly inside it.
func (c *checker) tree() {
	order := func(i, j int) int { return larger(c.rings, i, j) }
	for i := range c.d.Outlines {
		c.d.Outlines[i].Holes = []string{}
	}
	for i := range c.d.Outlines {
		if len(c.of[i]) == 0 {
			continue
		}
		best := -1
		for _, j := range c.rings[slices.MaxFunc(c.of[i], order)].inside {
			if c.rings[j].outline != i && (best < 0 || order(j, best) < 0) {
				best = j
			}
		}
		if best >= 0 {
			p := &c.d.Outlines[c.rings[best].outline]
			c.d.Outlines[i].Parent = p.ID
			p.Holes = append(p.Holes, c.d.Outlines[i].ID)
		}
	}
}

// offPage tells of outlines that lie wholly beside the page.
func (c *checker) offPage() {
	for _, o := range c.d.Outlines {
		b := o.Box
		if b.Max.X < 0 || b.Max.Y < 0 || b.Min.X > c.d.PageWidthMM || b.Min.Y > c.d.PageHeightMM {
			c.notes.add(ruleOffPage.At(o.where(c.d.File), "%q lies beside the page, x %.1f to %.1f, y %.1f to %.1f mm on a page of %.1f x %.1f mm",
				o.ID, b.Min.X, b.Max.X, b.Min.Y, b.Max.Y, c.d.PageWidthMM, c.d.PageHeightMM))
		}
	}
}

func firstPlace(d *Drawing) finding.Where {
	if len(d.Outlines) > 0 {
		return d.Outlines[0].where(d.File)
	}
	return finding.Where{File: d.File, Line: 1, Column: 1, Element: "svg"}
}
