package knockout

import (
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
)

// Where a seam is worst.
const (
	thinSeamMM = 50 // Chosen: a seam across a narrower piece of foam breaks
	apartMM    = 40 // Chosen: between seams of neighbouring layers, so that the joint above or below bridges them
	tries      = 81 // places looked at for one seam
)

// joints says which seams a part larger than the sheet needs and returns their
// places along x, form view.
func (c *computer) joints(p Part, poly geom.Polygon) []float64 {
	nx, ny, reach := pieces(p.BoxX.MM(), p.BoxY.MM(), c.in.SheetX.MM(), c.in.SheetY.MM())
	if nx*ny <= 1 {
		return nil
	}
	box := poly.Outer.Box()
	where := finding.Where{Element: p.ID, View: "form"}
	if ny > 1 || nx > 50 {
		m := box.Center()
		where.At = &[2]float64{m.X, m.Y}
		c.say(seam.At(where, "Part %s is %.0f x %.0f mm and the sheet %.0f x %.0f mm: it takes at least %.0f pieces.", p.ID, p.BoxX, p.BoxY, c.in.SheetX, c.in.SheetY, nx*ny))
		return nil
	}
	var at []float64
	last := box.Min.X
	for k := 1.0; k < nx; k++ {
		cut := c.bestCut(poly, box.Max.X-(nx-k)*reach, last+reach)
		last = cut.x
		at = append(at, cut.x)
		where.At = &[2]float64{cut.x, cut.y}
		c.say(seam.At(where, "Part %s is %.0f x %.0f mm and the sheet %.0f x %.0f mm: it needs a seam, best across at x %.0f mm, where it is %.0f mm long.",
			p.ID, p.BoxX, p.BoxY, c.in.SheetX, c.in.SheetY, cut.x, cut.length))
	}
	return at
}

// pieces returns into how many columns and rows of sheets a box of x by y mm must be
// cut, with the sheet lying the way that needs fewer, and the sheet's reach along x.
func pieces(x, y, sheetX, sheetY float64) (nx, ny, reach float64) {
	if !(sheetX > 0 && sheetY > 0) {
		return 1, 1, 0
	}
	n := func(a, b float64) float64 { return math.Max(1, math.Ceil(a/b-1e-9)) }
	nx, ny, reach = n(x, sheetX), n(y, sheetY), sheetX
	if a, b := n(x, sheetY), n(y, sheetX); a*b < nx*ny {
		return a, b, sheetY
	}
	return nx, ny, reach
}

// A cut is a line across a part at x.
type cut struct {
	x, y   float64 // the middle of its longest stretch
	length float64 // of foam along it
	thin   float64 // its shortest stretch
}

// bestCut returns the shortest cut between from and to that keeps clear of narrow
// places and of the seams in the layer above, as far as that can be had.
func (c *computer) bestCut(poly geom.Polygon, from, to float64) cut {
	var best cut
	least := math.Inf(1)
	for i := range tries {
		x := from + (to-from)*float64(i)/(tries-1)
		k := across(poly, x)
		cost := k.length
		if k.thin < thinSeamMM {
			cost += 1e6
		}
		if slices.ContainsFunc(c.seams, func(s float64) bool { return math.Abs(s-x) < apartMM }) {
			cost += 1e5
		}
		if k.length > 0 && cost < least {
			best, least = k, cost
		}
	}
	if math.IsInf(least, 1) { // nothing there to cut
		return cut{x: (from + to) / 2, y: poly.Outer.Box().Center().Y}
	}
	return best
}

// across cuts poly along x.
func across(poly geom.Polygon, x float64) cut {
	var ys []float64
	for _, ring := range poly.Rings() {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; (a.X <= x) != (b.X <= x) {
				ys = append(ys, a.Y+(x-a.X)/(b.X-a.X)*(b.Y-a.Y))
			}
		}
	}
	slices.Sort(ys)
	k := cut{x: x, thin: math.Inf(1)}
	longest := 0.0
	for i := 0; i+1 < len(ys); i += 2 {
		w := ys[i+1] - ys[i]
		k.length += w
		k.thin = math.Min(k.thin, w)
		if w > longest {
			longest, k.y = w, (ys[i]+ys[i+1])/2
		}
	}
	return k
}
