package saw

import (
	"context"
	"fmt"
	"slices"
	"sync"
)

// patience is how often a search looks whether it was called off.
const patience = 64

// A schedule says how long one annealing run is and how it cools.
type schedule struct {
	rounds     int
	start, end float64 // temperatures, in areas of the largest region
}

// Temperatures at the start and the end of an annealing run, in areas of a mean
// item. Chosen: by trials on the random classes 7, 8 and 10.
const (
	warm = 0.1
	cold = 0.01
)

// at returns the temperature of round n.
func (s schedule) at(n int) float64 {
	return s.start * pow(s.end/s.start, float64(n)/float64(s.rounds))
}

// anneal runs until all items are placed, the rounds are used up or ctx ends.
func (f *filler) anneal(ctx context.Context, s schedule) bool {
	return f.annealPart(ctx, s, 0, s.rounds)
}

// annealPart runs the rounds from n to end of a schedule.
func (f *filler) annealPart(ctx context.Context, s schedule, n, end int) bool {
	f.cost = f.evaluate()
	if len(f.out) == 0 {
		return true
	}
	for ; n < end; n++ {
		if n%patience == 0 && ctx.Err() != nil {
			return false
		}
		if f.step(s.at(n)) {
			return true
		}
	}
	return false
}

// A Packing is a set of equal rectangles that hold all goods, without kerf.
type Packing struct {
	Bins     []*Slice
	Lower    int // no packing has fewer
	Unplaced []int
}

// Pack puts all goods, each Count times, into as few rectangles of w x h as it
// finds: it stops at the lower bound, after the rounds of effort, or with ctx.
// Goods that fit no rectangle are listed and left out.
//
// Errors: sizes that are not positive, no more than packLimit items in all.
func Pack(ctx context.Context, goods []Good, w, h int64, effort Effort) (Packing, error) {
	items, out, err := packItems(goods, w, h)
	if err != nil || len(items) == 0 {
		return out, err
	}
	p := newPacker(items, w, h, effort)
	out.Lower = lowerBins(items, w, h)
	for len(p.best) > out.Lower && ctx.Err() == nil {
		if !p.oneLess(ctx) {
			break
		}
	}
	for i := range p.best {
		root := slabOf(0, 0, w, h)
		l := newLayer(&p.best[i], 0, func(int64, int64) bool { return false })
		l.frugal = true
		l.fill(root)
		bin := sliceOf(root)
		renameItems(bin, items)
		out.Bins = append(out.Bins, bin)
	}
	return out, nil
}

func packItems(goods []Good, w, h int64) ([]item, Packing, error) {
	var out Packing
	if w <= 0 || h <= 0 || w > mostPackSide || h > mostPackSide {
		return nil, out, fmt.Errorf("rectangle of %d x %d: sides must be 1 to %d", w, h, mostPackSide)
	}
	var items []item
	for k, g := range goods {
		if g.W <= 0 || g.H <= 0 || g.Count < 0 || g.Count > packLimit {
			return nil, out, fmt.Errorf("piece %d: %d x %d, count %d", k, g.W, g.H, g.Count)
		}
		if (g.W > w || g.H > h) && !(g.Turns && g.H <= w && g.W <= h) {
			out.Unplaced = append(out.Unplaced, k)
			continue
		}
		for range g.Count {
			items = append(items, item{w: g.W, h: g.H, turns: g.Turns, kind: int32(k)})
		}
	}
	if len(items) > packLimit {
		return nil, out, fmt.Errorf("%d pieces: at most %d", len(items), packLimit)
	}
	return items, out, nil
}

// mostPackSide keeps areas inside 63 bits.
const mostPackSide = 1 << 30

// A packer lowers the number of regions one by one.
type packer struct {
	items  []item
	w, h   int64
	effort Effort
	best   []region
	mean   float64 // area of an item over that of a region
}

func newPacker(items []item, w, h int64, effort Effort) *packer {
	p := &packer{items: items, w: w, h: h, effort: effort}
	p.effort.Workers = max(1, p.effort.Workers)
	for i := range items {
		p.mean += float64(items[i].area())
	}
	p.mean /= float64(len(items)) * float64(w) * float64(h)
	for try := range uint64(8) {
		f := newFiller(items, nil, effort.Seed+try)
		for len(f.out) > 0 {
			f.setRegions(append(f.regions, newRegion(w, h)))
			f.recreate()
			f.forget()
		}
		if p.best == nil || len(f.regions) < len(p.best) {
			p.best = f.regions
		}
	}
	return p
}

// Chosen: the length of the first annealing run, its growth, and in how many
// parts it is run between looks at the other workers.
const (
	packRounds = 2000
	packParts  = 8
)

// oneLess looks for a packing in one region less and keeps it.
func (p *packer) oneLess(ctx context.Context) bool {
	fs := make([]*filler, p.effort.Workers)
	for i := range fs {
		fs[i] = p.drop(uint64(i))
	}
	done := make([]bool, len(fs))
	total := 0
	for rounds := packRounds; ctx.Err() == nil; rounds += rounds / 2 {
		for part := range packParts {
			var wg sync.WaitGroup
			for i, f := range fs {
				cooler := float64(1 + i%2) // every other worker is less bold
				s := schedule{rounds, warm / cooler * p.mean, cold / cooler * p.mean}
				wg.Go(func() { done[i] = f.annealPart(ctx, s, rounds*part/packParts, rounds*(part+1)/packParts) })
			}
			wg.Wait()
			if i := slices.Index(done, true); i >= 0 {
				p.best = fs[i].regions
				return true
			}
		}
		if total += rounds; p.effort.Rounds > 0 && total >= p.effort.Rounds {
			break
		}
	}
	return false
}

// drop returns a filler of the best packing without its emptiest region, whose
// items lie outside.
func (p *packer) drop(worker uint64) *filler {
	f := newFiller(p.items, nil, p.effort.Seed+1000*worker+uint64(len(p.best)))
	f.out = f.out[:0]
	low := 0
	for k := range p.best {
		if p.best[k].area < p.best[low].area {
			low = k
		}
	}
	var regions []region
	for k := range p.best {
		var r region
		r.copyFrom(&p.best[k])
		if k == low {
			f.empty(&r)
			continue
		}
		regions = append(regions, r)
	}
	f.setRegions(regions)
	return f
}

// packLimit is the most items in one Pack.
const packLimit = 5000
