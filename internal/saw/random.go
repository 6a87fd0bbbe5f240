package saw

import "math"

// A dice is a splitmix64 generator: small, seeded, the same everywhere.
// Source: [splitmix].
type dice struct{ state uint64 }

func (d *dice) next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	z := d.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below returns a whole number in [0, n); n is at least 1.
func (d *dice) below(n int) int { return int((d.next() >> 33) * uint64(n) >> 31) }

// unit returns a number in [0, 1).
func (d *dice) unit() float64 { return float64(d.next()>>11) / (1 << 53) }

// exponential returns -ln of a number in (0, 1].
func (d *dice) exponential() float64 { return -math.Log(1 - d.unit()) }

func pow(x, y float64) float64 { return math.Exp(y * math.Log(x)) }
