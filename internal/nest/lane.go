package nest

import (
	"math"
	"slices"
)

// Chosen by trial on strips: how often the sum of depths may fail to shrink before the
// search goes back to its best state, and how often it goes back before it gives up.
const (
	patienceExplore  = 60
	patienceCompress = 40
	strikesExplore   = 3
	strikesCompress  = 2
	worthwhile       = 0.98 // a sum this much smaller counts as progress
)

var (
	effortExplore  = effort{far: 10, close: 10, refine: 2}
	effortCompress = effort{far: 4, close: 10, refine: 2}
)

// A lane is one search for shorter lengths, in steps of one round of its seeker. First it
// explores: a target length is tried until it succeeds, from ever other disturbed states.
// Later it compresses: from the best layout a little length is cut out at a random place.
type lane struct {
	s        seeker
	best     spread   // without overlap
	earlier  []spread // bests before it, the longest first
	pool     []state
	stuck    state // with the least sum at the present target
	left     int   // rounds until the next strike
	strikes  int
	compress bool
	shrink   float64 // share of the length taken off at the next target
	sought   int     // pieces sought a place for, all told
	least    float64 // no length below this is tried
}

// A state is a spread with its overlap.
type state struct {
	spread
	sum float64
}

func newLane(b *board, seed uint64, least float64) *lane {
	l := &lane{s: seeker{b: b, rnd: random(seed)}, best: b.spread(), shrink: shrinkExplore, least: least}
	l.explore()
	return l
}

// explore sets the next target from the best layout.
func (l *lane) explore() {
	l.s.effort = effortExplore
	l.target(l.best, math.Max(l.least, l.best.length*(1-l.shrink)))
	l.pool = l.pool[:0]
}

// target begins with a spread moved into another length.
func (l *lane) target(from spread, length float64) {
	l.s.b.length = length
	l.s.b.set(from)
	l.begin()
}

func (l *lane) begin() {
	b := l.s.b
	b.evenWeights()
	l.stuck = state{b.spread(), b.total()}
	l.strikes = 0
	l.patience()
}

func (l *lane) patience() {
	l.left = patienceExplore
	if l.compress {
		l.left = patienceCompress
	}
}

// step does one round and what follows from it. It reports whether a shorter layout is found.
func (l *lane) step() bool {
	b := l.s.b
	l.sought += l.s.round() + 1
	sum := b.total()
	if sum == 0 {
		return l.arrive()
	}
	b.learn()
	if sum < l.stuck.sum {
		if sum < l.stuck.sum*worthwhile {
			l.patience()
		}
		l.stuck.sum = sum
		l.stuck.length = b.length
		copy(l.stuck.pose, b.pose)
		copy(l.stuck.x, b.x)
		copy(l.stuck.y, b.y)
	}
	if l.left--; l.left <= 0 {
		l.strike()
	}
	return false
}

// arrive keeps a layout without overlap, as short as it turned out, and goes on.
func (l *lane) arrive() bool {
	b := l.s.b
	ok := b.settle(400)
	if ok {
		b.measure() // pushing two apart may have pushed a third
		ok = b.total() == 0
	}
	if ok {
		b.length = b.reach()
		l.hold(b.spread())
	}
	if l.compress {
		l.cut()
	} else {
		if !ok {
			b.measure()
			l.disturb()
			return false
		}
		l.shrink = math.Min(shrinkExplore, 1.5*l.shrink)
		l.explore()
	}
	return ok
}

// hold takes a layout as the best and remembers the one before.
func (l *lane) hold(s spread) {
	const most = 60
	if l.earlier = append(l.earlier, l.best); len(l.earlier) > most {
		l.earlier = slices.Clone(l.earlier[len(l.earlier)-most:])
	}
	l.best = s
}

// strike goes back to the best state; after enough of them the target is given up.
func (l *lane) strike() {
	l.strikes++
	most := strikesExplore
	if l.compress {
		most = strikesCompress
	}
	if l.strikes < most {
		l.s.b.set(l.stuck.spread)
		l.patience()
		return
	}
	if l.compress {
		l.cut()
		return
	}
	l.fail()
}

// fail takes smaller steps from the best layout; when they are as small as they get it
// keeps the state for later and disturbs one of those kept.
func (l *lane) fail() {
	if l.shrink > shrinkLeast {
		l.shrink = math.Max(shrinkLeast, l.shrink/3)
		l.explore()
		return
	}
	l.keep(l.stuck)
	r := l.s.rnd.unit()
	from := l.pool[int(r*r*float64(len(l.pool)))]
	l.s.b.set(from.spread)
	l.disturb()
}

// keep puts a state into the pool, the least sum first.
func (l *lane) keep(s state) {
	const most = 20
	s = state{spread{s.length, append([]int32(nil), s.pose...), append([]float64(nil), s.x...), append([]float64(nil), s.y...)}, s.sum}
	l.pool = append(l.pool, s)
	for i := len(l.pool) - 1; i > 0 && l.pool[i].sum < l.pool[i-1].sum; i-- {
		l.pool[i], l.pool[i-1] = l.pool[i-1], l.pool[i]
	}
	if len(l.pool) > most {
		l.pool = l.pool[:most]
	}
}

// disturb swaps two large things of different shapes and begins anew.
func (l *lane) disturb() {
	b := l.s.b
	large := b.bySize()
	large = large[:min(len(large), max(2, len(large)*2/3))]
	for range 10 {
		i, j := large[l.s.rnd.below(len(large))], large[l.s.rnd.below(len(large))]
		if b.shape(i) != b.shape(j) {
			l.swap(i, j)
			break
		}
	}
	b.clamp()
	b.measure()
	l.begin()
}

// swap exchanges the middles of two things.
func (l *lane) swap(i, j int) {
	b := l.s.b
	p, q := b.cat.shapes[b.shape(i)], b.cat.shapes[b.shape(j)]
	xi, yi := b.x[i]+p.width/2, b.y[i]+p.height/2
	xj, yj := b.x[j]+q.width/2, b.y[j]+q.height/2
	b.x[i], b.y[i] = xj-p.width/2, yj-p.height/2
	b.x[j], b.y[j] = xi-q.width/2, yi-q.height/2
}

// cut takes a little length out of the best layout at a random place.
func (l *lane) cut() {
	b := l.s.b
	l.s.effort = effortCompress
	take := math.Min(l.best.length*l.shrink, l.best.length-l.least)
	at := l.best.length * l.s.rnd.unit()
	b.length = l.best.length
	b.set(l.best)
	for i := range b.movable {
		if b.x[i]+b.cat.shapes[b.shape(i)].width/2 > at {
			b.x[i] -= take
		}
	}
	b.length -= take
	b.clamp()
	b.measure()
	l.begin()
}
