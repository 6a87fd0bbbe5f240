package knockout

import (
	"math"

	"pourwright/internal/geom"
)

// What a seam costs beside its visible length, in mm of visible seam. All chosen: a
// second flaw of the first rank is worth a piece more.
const (
	perPiece     = 1500 // for each cut: as few pieces as possible
	perHidden    = 0.1  // for each mm of seam, seen or not
	perIsland    = 900  // for each hole crossed: rings of foam round an island stay whole
	perNeck      = 900  // in the middle of a neck, falling to 0 at its reach
	perStack     = 600  // nearer to a seam above or below than the stagger
	perMissed    = 8    // and for each mm missed
	perCross     = 60   // for each seam above or below that is crossed steeply
	perThin      = 8    // for each mm under thinMM of foam crossed
	perMouth     = 4    // for each mm nearer than mouthMM to a mouth
	perHole      = 6    // for each mm nearer than holeMM to a hole
	perDegree    = 3    // for each degree under sharpDeg between seam and outline
	perSmall     = 5000 // a piece under the smallest allowed
	thinMM       = 60.0 // Chosen: a glue joint over a narrower piece of foam breaks
	neckMM       = 60.0 // Chosen: what is narrower with wider foam on both sides is a neck
	neckReachMM  = 45.0 // Chosen: beside a neck this far is out of it
	mouthMM      = 90.0 // Chosen: at a mouth the dam's caulk meets the foam
	holeMM       = 30.0 // Chosen: between a seam and an island
	sharpDeg     = 40.0 // Chosen: a sharper feather of foam breaks off
	sampleMM     = 8.0  // between places looked at along a seam
	leastShownMM = 0.05 // shorter stretches do not count as visible
)

// A site is an outline that must be cut, with all that makes one place for a seam
// better than another. It is in form view.
type site struct {
	poly      geom.Polygon // coarse
	room      room
	smallest  float64
	target    float64       // stagger to keep, mm
	riser     float64       // thickness of the layer, mm
	above     *geom.Locator // the layer glued on this one; nil for none
	holes     *geom.Locator // nil for none
	holeBox   geom.Box
	root      *node
	work      *int // of all searches
	necks     []geom.Narrow
	mouths    [][2]geom.Point
	neighbour [][2]geom.Point // seams of the layers above and below
}

// cost returns what cutting along ch costs, but for the seams of neighbouring layers.
func (s *site) cost(rings []geom.Ring, ch chain) float64 {
	sum := perIsland * float64(len(ch)-1)
	for _, c := range ch {
		sum += 2*s.riser + s.shown(c) + perHidden*c.length() + perThin*math.Max(0, thinMM-c.length())
		sum += s.sharp(rings, c.from, c.to.at) + s.sharp(rings, c.to, c.from.at)
		sum += s.nearNecks(c) + s.nearMouths(c) + s.nearHoles(c)
	}
	return sum
}

// shown returns how much of c the layer above leaves uncovered, by samples.
func (s *site) shown(c chord) float64 {
	n := c.length()
	if s.above == nil {
		return n
	}
	k := math.Ceil(n / sampleMM)
	open := 0.0
	for i := 0.5; i < k; i++ {
		if !s.above.Inside(c.from.at.Add(c.to.at.Sub(c.from.at).Mul(i / k))) {
			open++
		}
	}
	return n * open / k
}

// sharp charges for the angle between the seam that goes from h to far and the outline.
func (s *site) sharp(rings []geom.Ring, h hit, far geom.Point) float64 {
	ring := rings[h.ring]
	side := ring[(h.edge+1)%len(ring)].Sub(ring[h.edge])
	d := far.Sub(h.at)
	n := side.Norm() * d.Norm()
	if !(n > 0) {
		return 0
	}
	angle := math.Asin(math.Min(1, math.Abs(side.Cross(d))/n)) * 180 / math.Pi
	return perDegree * math.Max(0, sharpDeg-angle)
}

func (s *site) nearNecks(c chord) float64 {
	sum := 0.0
	for _, n := range s.necks {
		if d := distanceTo(n.At, c.from.at, c.to.at); d < neckReachMM {
			sum += perNeck * (1 - d/neckReachMM)
		}
	}
	return sum
}

func (s *site) nearMouths(c chord) float64 {
	sum := 0.0
	for _, m := range s.mouths {
		sum += perMouth * math.Max(0, mouthMM-apart(c.from.at, c.to.at, m[0], m[1]))
	}
	return sum
}

func (s *site) nearSeams(c chord) float64 {
	d, crossed := s.stagger(c.from.at, c.to.at)
	sum := perCross * float64(crossed)
	if d < s.target {
		sum += perStack + perMissed*(s.target-d)
	}
	return sum
}

// stagger returns the least distance from ab to a seam of a neighbouring layer, +Inf
// for none, and how many it crosses steeply, which do not count for the distance.
func (s *site) stagger(a, b geom.Point) (least float64, crossed int) {
	least = math.Inf(1)
	for _, n := range s.neighbour {
		switch d := apart(a, b, n[0], n[1]); {
		case d == 0 && steep(a, b, n[0], n[1]):
			crossed++
		default:
			least = math.Min(least, d)
		}
	}
	return least, crossed
}

// steep reports whether ab and cd cross at more than 45 degrees: like joints of a wall,
// each then bridges the other.
func steep(a, b, c, d geom.Point) bool {
	u, v := b.Sub(a), d.Sub(c)
	return math.Abs(u.Cross(v)) > math.Sqrt2/2*u.Norm()*v.Norm()
}

// nearHoles charges for passing close by an island without crossing it.
func (s *site) nearHoles(c chord) float64 {
	if s.holes == nil {
		return 0
	}
	b := geom.Ring{c.from.at, c.to.at}.Box()
	if m := holeMM; b.Min.X > s.holeBox.Max.X+m || b.Max.X < s.holeBox.Min.X-m || b.Min.Y > s.holeBox.Max.Y+m || b.Max.Y < s.holeBox.Min.Y-m {
		return 0
	}
	least := holeMM
	k := math.Ceil(c.length() / (3 * sampleMM))
	for i := 0.0; i <= k; i++ {
		least = math.Min(least, s.holes.Boundary(c.from.at.Add(c.to.at.Sub(c.from.at).Mul(i/k))))
	}
	return perHole * (holeMM - least)
}

// pieces charges for pieces that are too small.
func (s *site) pieces(ps []geom.Polygon) float64 {
	sum := 0.0
	for _, p := range ps {
		b := p.Outer.Box()
		if math.Max(b.Width(), b.Height()) < s.smallest || p.Area() < s.smallest*s.smallest/4 {
			sum += perSmall
		}
	}
	return sum
}
