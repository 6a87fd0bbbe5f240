package cost

import (
	"cmp"
	"math"
	"slices"
)

// Sizes are counted in millionths of a unit, a millilitre's thousandth: fine enough
// for every published gallon. The range of a package is ten drops to a tanker.
const (
	parts       = 1e6
	smallest    = 1e-3
	largestSize = 1e5
)

// mostCells bounds the table of the exact choice; about 16 MB.
const mostCells = 400_000

// Prices are counted in ten-thousandths, so that equal sums are equal; the dearest
// package keeps a full table within 64 bits.
const (
	priceParts   = 1e4
	largestPrice = 1e9
)

// bulkRest is how many of the largest package are left to be chosen with care when
// the measure is not exact. Chosen: an awkward remainder of one package is gone
// within a few more.
const bulkRest = 6

// rounding is the relative error of a need that sums leave behind; a need this
// little above a package is met by it.
const rounding = 1e-9

// distinct sorts packs by size, largest first, and keeps of each size the cheapest
// that has a price.
func distinct(packs []pack) []pack {
	dear := func(p pack) float64 {
		if p.price == 0 {
			return math.Inf(1)
		}
		return p.price
	}
	slices.SortStableFunc(packs, func(a, b pack) int {
		return cmp.Or(cmp.Compare(b.size, a.size), cmp.Compare(dear(a), dear(b)))
	})
	return slices.CompactFunc(packs, func(a, b pack) bool { return a.size == b.size })
}

// cheapest returns how many of each pack to take for need: the best by price where
// all have one, else by what is left over. Packs must be distinct, need positive
// and at most a thousand of the largest.
func cheapest(need float64, packs []pack) []int {
	costs := make([]int64, len(packs))
	if !slices.ContainsFunc(packs, func(p pack) bool { return p.price == 0 }) {
		for i, p := range packs {
			costs[i] = int64(math.Round(p.price * priceParts))
		}
	}
	sizes, cells, exact := counted(need, packs)
	ahead, many := 0, 0
	if !exact {
		ahead, many = bulk(need, packs, costs)
		sizes, cells, _ = counted(need-float64(many)*packs[ahead].size, packs)
	}
	counts := table(cells, sizes, costs)
	counts[ahead] += many
	trim(need, packs, counts)
	return counts
}

// bulk returns the pack with the best price for its size, the largest of equals,
// and how many of it to take before the rest is chosen with care.
func bulk(need float64, packs []pack, costs []int64) (best, many int) {
	for i, p := range packs {
		if float64(costs[i])*packs[best].size < float64(costs[best])*p.size {
			best = i
		}
	}
	rest := max(packs[best].size, packs[0].size) * bulkRest
	return best, max(0, int((need-rest)/packs[best].size))
}

// counted returns the sizes and the need as whole numbers of their common measure,
// or of the finest coarser one that keeps the table within bounds and is not exact.
func counted(need float64, packs []pack) (sizes []int, cells int, exact bool) {
	for scale := float64(parts); ; scale /= 2 {
		sizes = sizes[:0]
		g := 0
		for _, p := range packs {
			s := max(1, int(math.Floor(p.size*scale+0.5*scale/parts)))
			sizes = append(sizes, s)
			g = gcd(g, s)
		}
		for i := range sizes {
			sizes[i] /= g
		}
		cells = int(math.Ceil(need * (1 - rounding) * scale / float64(g)))
		if cells <= mostCells {
			return sizes, max(cells, 1), scale == parts
		}
	}
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// A choice is the best way to fill some cells: its cost, the cells bought, the
// packages, and the pack taken last.
type choice struct {
	cost   int64
	bought int
	count  int32
	last   int32
}

func (c choice) better(d choice) bool {
	return cmp.Or(cmp.Compare(c.cost, d.cost), cmp.Compare(c.bought, d.bought), cmp.Compare(c.count, d.count)) < 0
}

// table returns the counts of sizes that cover cells at least cost, then least
// bought, then fewest.
func table(cells int, sizes []int, costs []int64) []int {
	best := make([]choice, cells+1)
	for n := 1; n <= cells; n++ {
		for i, s := range sizes {
			c := best[max(0, n-s)]
			c = choice{c.cost + costs[i], c.bought + s, c.count + 1, int32(i)}
			if i == 0 || c.better(best[n]) {
				best[n] = c
			}
		}
	}
	counts := make([]int, len(sizes))
	for n := cells; n > 0; n -= sizes[best[n].last] {
		counts[best[n].last]++
	}
	return counts
}

// trim takes out packages that the rounding of sizes made superfluous, and adds
// what it left short.
func trim(need float64, packs []pack, counts []int) {
	total := 0.0
	for i, c := range counts {
		total += float64(c) * packs[i].size
	}
	least := need * (1 - rounding)
	for i := range packs {
		for counts[i] > 0 && total-packs[i].size >= least {
			counts[i]--
			total -= packs[i].size
		}
	}
	for last := len(packs) - 1; total < least; {
		counts[last]++
		total += packs[last].size
	}
}
