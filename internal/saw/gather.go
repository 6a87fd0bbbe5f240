package saw

import "context"

// Chosen: bounds of the search that stands in when the exact one does not finish.
const (
	gatherCopies = 30
	gatherCycles = 12
	gatherRounds = 2000
	gatherTemp   = 0.1 // of a mean value
	gatherCool   = 0.1 // of that at the end of a cycle
)

// gather looks for a good pattern by ruin and recreate.
func gather(ctx context.Context, goods []Good, w, h int64, seed uint64) Haul {
	var items []item
	sum := 0.0
	for k, g := range goods {
		for range min(g.Count, gatherCopies) {
			items = append(items, item{w: g.W, h: g.H, turns: g.Turns, kind: int32(k), worth: float64(g.Value)})
			sum += float64(g.Value)
		}
	}
	f := newFiller(items, []region{newRegion(w, h)}, seed)
	f.rules = 8
	best := newRegion(w, h)
	low := sum
	note := func() {
		if out := f.outside(); out < low {
			low = out
			best.copyFrom(&f.regions[0])
		}
	}
	f.unit = max(1, sum/float64(len(items)))
	rounds := gatherRounds
	for range gatherCycles {
		for n := range rounds {
			if n%patience == patience-1 && ctx.Err() != nil {
				break
			}
			f.stepValue(gatherTemp * pow(gatherCool, float64(n)/float64(rounds)))
			note()
		}
		if rounds = rounds * 3 / 2; ctx.Err() != nil {
			break
		}
	}
	root := slabOf(0, 0, w, h)
	out := Haul{Value: int64(sum - low + 0.5)}
	newLayer(&best, 0, func(int64, int64) bool { return false }).fill(root)
	out.Tree = sliceOf(root)
	renameItems(out.Tree, items)
	return out
}

func renameItems(s *Slice, items []item) {
	if s == nil {
		return
	}
	if s.Good >= 0 {
		s.Good = int(items[s.Good].kind)
	}
	renameItems(s.A, items)
	renameItems(s.B, items)
}

// outside returns the worth of the items without a place.
func (f *filler) outside() float64 {
	sum := 0.0
	for _, i := range f.out {
		sum += f.items[i].value()
	}
	return sum
}

// stepValue is step for a single region, on the worth outside alone.
func (f *filler) stepValue(temperature float64) {
	f.oldOut = append(f.oldOut[:0], f.out...)
	before := f.outside()
	f.ruin()
	f.recreate()
	if now := f.outside(); now > before && (now-before)/f.unit > temperature*f.dice.exponential() {
		f.restore()
		return
	}
	f.forget()
}
