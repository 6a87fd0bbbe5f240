package saw

import (
	"cmp"
	"slices"
)

// refuteNodes bounds the proof that a set of bars does not do. Chosen.
const refuteNodes = 100_000

// A refuter looks through all ways of putting lengths into bars, the longest
// first. What a bar has left when nothing fits is lost; a branch ends when more
// is lost than the bars have over.
type refuter struct {
	sizes []int64 // longest first
	room  []int64 // left in every bar
	nodes int
	tired bool
	seen  map[string]bool
}

// refuted reports whether it is proven that no filling of the set holds all.
func (s *shop) refuted(set []int, want []int32) bool {
	r := refuter{seen: map[string]bool{}}
	over := int64(0)
	for k := range s.stock {
		n := set[k]
		if s.stock[k].owned {
			n = s.stock[k].count
		}
		for range n {
			b := s.stock[k].sizes[0][0]
			r.room = append(r.room, b.x1-b.x0+s.kerf)
			over += b.x1 - b.x0 + s.kerf
		}
	}
	for _, i := range want {
		r.sizes = append(r.sizes, s.items[i].w)
		over -= s.items[i].w
	}
	slices.SortFunc(r.sizes, func(a, b int64) int { return cmp.Compare(b, a) })
	return over < 0 || !r.fits(0, over) && !r.tired
}

// fits reports whether the sizes from n on fit when over may be lost.
func (r *refuter) fits(n int, over int64) bool {
	if n == len(r.sizes) {
		return true
	}
	if r.nodes++; r.nodes > refuteNodes {
		r.tired = true
		return false
	}
	key := r.key(n)
	if r.seen[key] {
		return false
	}
	for b, room := range r.room {
		if room < r.sizes[n] || slices.Contains(r.room[:b], room) {
			continue
		}
		r.room[b] -= r.sizes[n]
		if r.lost() <= over+r.sizesLeft(n+1) && r.fits(n+1, over) {
			return true
		}
		r.room[b] += r.sizes[n]
		if r.tired {
			return false
		}
	}
	r.seen[key] = true
	return false
}

// lost adds up the room of bars that is shorter than the shortest size.
func (r *refuter) lost() int64 {
	sum, shortest := int64(0), r.sizes[len(r.sizes)-1]
	for _, room := range r.room {
		if room < shortest {
			sum += room
		}
	}
	return sum
}

func (r *refuter) sizesLeft(n int) int64 {
	if n == len(r.sizes) {
		return 1 << 62
	}
	return 0
}

// key names the state: how far, and the rooms in order.
func (r *refuter) key(n int) string {
	rooms := slices.Clone(r.room)
	slices.Sort(rooms)
	out := make([]byte, 0, 8*len(rooms)+2)
	out = append(out, byte(n), byte(n>>8))
	for _, x := range rooms {
		for k := range 8 {
			out = append(out, byte(x>>(8*k)))
		}
	}
	return string(out)
}
