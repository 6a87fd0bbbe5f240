package nest

// random is a splitmix64 generator: small, seeded, the same everywhere.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit returns a number in [0, 1).
func (r *random) unit() float64 { return float64(r.next()>>11) / (1 << 53) }

// below returns a whole number in [0, n), n > 0.
func (r *random) below(n int) int { return int(r.next() >> 1 % uint64(n)) }

// between returns a number in [lo, hi), or lo where the span is empty.
func (r *random) between(lo, hi float64) float64 {
	if hi <= lo {
		return lo
	}
	return lo + (hi-lo)*r.unit()
}

// shuffle puts s into random order.
func (r *random) shuffle(s []int32) {
	for i := len(s) - 1; i > 0; i-- {
		j := r.below(i + 1)
		s[i], s[j] = s[j], s[i]
	}
}
