package toolpath

import (
	"math"
	"slices"
)

// Chosen.
const (
	mostStops  = 2000 // beyond it the tour is improved once and not shaken
	shakeReach = 12   // longest stretch that most shakes exchange; the others any
	shakeShare = 1.0  // times a mean way: what a shake may add at first
)

// shake exchanges two neighbouring stretches at random (a double bridge), improves
// round the joints, and goes on from there unless the tour has become much longer;
// what is much longer gets less and less, to nothing. The shortest tour stays.
func (t *tour) shake() {
	n := len(t.order)
	if n > mostStops {
		return
	}
	best, now := t.save(), t.save()
	allowed := shakeShare * best.length
	effort := t.effort()
	for spent := 0; spent < effort; {
		a := t.below(n - 1)
		far := shakeReach
		if t.below(4) == 0 {
			far = n
		}
		b := a + 1 + t.below(min(n-a-1, far))
		c := b + 1 + t.below(min(n-b, far))
		spent += n
		if c > n || !t.exchange(a, b, c) {
			continue
		}
		spent += 4*t.improve(t.round(a, b, a+c-b, c)) + t.repicks()
		length := t.length()
		slack := allowed / math.Sqrt(float64(n)) * (1 - float64(spent)/float64(effort))
		if length > now.length+math.Max(slack, 0) && length > best.length-leastGainMM {
			t.restore(now)
			continue
		}
		now.take(t, length)
		if length < best.length-leastGainMM {
			best.take(t, length)
		}
	}
	t.restore(best)
	t.choose()
}

// repicks chooses the beginnings of all stops anew and returns what it weighed.
func (t *tour) repicks() int {
	if t.below(20) > 0 {
		return 0
	}
	t.choose()
	return 20 * len(t.order)
}

// exchange swaps the stretches [a, b) and [b, c), if the order may be so.
func (t *tour) exchange(a, b, c int) bool {
	t.spare = append(t.spare[:0], t.order...)
	copy(t.order[a:], t.spare[b:c])
	copy(t.order[a+c-b:], t.spare[a:b])
	if t.legal(a, c-1) {
		return true
	}
	t.order, t.spare = t.spare, t.order
	t.seat(a, c-1)
	return false
}

// round returns the stops on both sides of the given places.
func (t *tour) round(places ...int) []int {
	var out []int
	for _, k := range places {
		for _, j := range [2]int{k - 1, k} {
			if j >= 0 && j < len(t.order) && !slices.Contains(out, t.order[j]) {
				out = append(out, t.order[j])
			}
		}
	}
	return out
}

// A kept tour can be gone back to.
type kept struct {
	order, pick []int
	length      float64
}

func (t *tour) save() *kept {
	return &kept{slices.Clone(t.order), slices.Clone(t.pick), t.length()}
}

func (k *kept) take(t *tour, length float64) {
	copy(k.order, t.order)
	copy(k.pick, t.pick)
	k.length = length
}

func (t *tour) restore(k *kept) {
	copy(t.order, k.order)
	copy(t.pick, k.pick)
	t.seat(0, len(t.order))
}

// below returns the next random number under n, by xorshift.
func (t *tour) below(n int) int {
	t.random ^= t.random << 13
	t.random ^= t.random >> 7
	t.random ^= t.random << 17
	return int(t.random % uint64(max(n, 1)))
}
