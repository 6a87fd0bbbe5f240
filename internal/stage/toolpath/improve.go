package toolpath

import "slices"

// Chosen.
const (
	longestMove = 3    // stops that Or-opt moves at once
	leastGainMM = 1e-7 // against turning for ever
	mostStops   = 1500 // beyond it the tour of nearest stops stands, improved once
)

// improve turns and moves stretches of the tour, and chooses beginnings anew, until
// nothing gets shorter. It returns how many changes it weighed.
func (t *tour) improve() int {
	weighed := 0
	for weighed < effort {
		before := t.length()
		for t.turn(&weighed) || t.move(&weighed) {
			if weighed > effort {
				break
			}
		}
		t.choose()
		if t.length() > before-leastGainMM {
			break
		}
	}
	return weighed
}

// turn makes the first gainful 2-opt change of every stop, and reports whether there
// was one. Ends are not beginnings, so the ways inside a turned stretch change too;
// they are summed where the rest of the change gains.
func (t *tour) turn(weighed *int) bool {
	n, any := len(t.order), false
	for i := 0; i < n-1; i++ {
		for j := i + 1; j < n; j++ {
			*weighed++
			if apart(t.out(i-1), t.in(j))+apart(t.out(i), t.in(j+1)) >= t.way(i-1, i)+t.way(j, j+1)-leastGainMM {
				continue
			}
			if t.try(func(o []int) { slices.Reverse(o[i : j+1]) }, i-1, j+1) {
				any = true
			}
		}
	}
	return any
}

// move makes the first gainful Or-opt change of every stretch of up to three stops.
func (t *tour) move(weighed *int) bool {
	n, any := len(t.order), false
	for size := 1; size <= longestMove; size++ {
		for i := 0; i+size <= n; i++ {
			freed := t.way(i-1, i) + t.way(i+size-1, i+size) - t.way(i-1, i+size)
			if freed <= leastGainMM {
				continue
			}
			for k := -1; k < n; k++ { // after the k-th
				*weighed++
				if k >= i-1 && k < i+size {
					continue
				}
				if t.way(k, i)+t.way(i+size-1, k+1)-t.way(k, k+1) >= freed-leastGainMM {
					continue
				}
				if t.try(func(o []int) { shift(o, i, size, k) }, min(i-1, k), max(i+size, k+1)) {
					any = true
					break
				}
			}
		}
	}
	return any
}

// shift moves size stops from i to after the k-th of o.
func shift(o []int, i, size, k int) {
	held := slices.Clone(o[i : i+size])
	if k < i {
		copy(o[k+1+size:], o[k+1:i])
		copy(o[k+1:], held)
		return
	}
	copy(o[i:], o[i+size:k+1])
	copy(o[k+1-size:], held)
}

// try makes the change if it keeps the order that must be and shortens the ways
// between the a-th and the b-th stop.
func (t *tour) try(change func([]int), a, b int) bool {
	old, before := t.order, t.between(a, b)
	t.order = slices.Clone(old)
	change(t.order)
	if t.between(a, b) < before-leastGainMM && t.legal(t.order, make([]int, len(t.stops))) {
		return true
	}
	t.order = old
	return false
}

func (t *tour) between(a, b int) float64 {
	sum := 0.0
	for k := a; k < b; k++ {
		sum += t.way(k, k+1)
	}
	return sum
}

// shake exchanges two neighbouring stretches at random (a double bridge), improves,
// and keeps what is shorter, until the effort is spent.
func (t *tour) shake() {
	n := len(t.order)
	if n < 5 || n > mostStops {
		return
	}
	best, picks := slices.Clone(t.order), slices.Clone(t.pick)
	length := t.length()
	for spent, rounds := 0, 0; spent < effort && rounds < 40*n; rounds++ {
		a := 1 + t.below(n-3)
		b := a + 1 + t.below(min(n-a-2, 50))
		c := b + 1 + t.below(min(n-b-1, 50))
		order := slices.Concat(t.order[:a], t.order[b:c], t.order[a:b], t.order[c:])
		if !t.legal(order, make([]int, n)) {
			spent += n
			continue
		}
		t.order = order
		spent += t.improve() + n
		if l := t.length(); l < length-leastGainMM {
			best, picks, length = slices.Clone(t.order), slices.Clone(t.pick), l
			continue
		}
		t.order, t.pick = slices.Clone(best), slices.Clone(picks)
	}
}

// below returns the next random number under n, by xorshift.
func (t *tour) below(n int) int {
	t.random ^= t.random << 13
	t.random ^= t.random >> 7
	t.random ^= t.random << 17
	return int(t.random % uint64(max(n, 1)))
}
