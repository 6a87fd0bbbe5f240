package toolpath

import "math"

// cornerMM is the corner deviation of the time estimate, mm. Chosen: what controllers
// of small routers come set to.
const cornerMM = 0.02

// A leg is a move as the time estimate sees it.
type leg struct {
	length  float64    // mm
	cuts    bool       // not a rapid move
	speed   float64    // highest, mm/s
	enter   [3]float64 // directions at its ends, of length 1
	leave   [3]float64
	between float64 // speed from the leg before into this one, mm/s
}

// seconds returns how long the moves take from rest to rest. Every leg reaches its
// speed by the acceleration accelMM (mm/s2), never above what lets it slow down for
// the corners to come:
//
//	v_end^2 <= v_begin^2 + 2 a l     forwards and backwards
//	t = (v - v0)/a + (v - v1)/a + rest/v
//
// Corners as in the package's doc. Source: [analytic].
func seconds(moves []Move, startZ, rapidMM, accelMM float64) float64 {
	legs := legsOf(moves, startZ, rapidMM, accelMM)
	for i := range legs {
		if i > 0 {
			legs[i].between = math.Min(corner(legs[i-1].leave, legs[i].enter, accelMM), math.Min(legs[i-1].speed, legs[i].speed))
		}
	}
	for i := 1; i < len(legs); i++ {
		legs[i].between = math.Min(legs[i].between, after(legs[i-1].between, legs[i-1].length, accelMM))
	}
	total, end := 0.0, 0.0
	for i := len(legs) - 1; i >= 0; i-- {
		legs[i].between = math.Min(legs[i].between, after(end, legs[i].length, accelMM))
		total += trapezoid(legs[i].length, legs[i].between, end, legs[i].speed, accelMM)
		end = legs[i].between
	}
	return total
}

// after returns the speed reached from v over a length at acceleration a.
func after(v, length, a float64) float64 { return math.Sqrt(v*v + 2*a*length) }

// trapezoid returns the time of a leg from speed v0 to v1 with at most v between.
func trapezoid(length, v0, v1, v, a float64) float64 {
	peak := math.Min(v, math.Sqrt(a*length+(v0*v0+v1*v1)/2))
	peak = math.Max(peak, math.Max(v0, v1))
	rest := length - (peak*peak-v0*v0)/(2*a) - (peak*peak-v1*v1)/(2*a)
	t := (peak - v0 + peak - v1) / a
	if rest > 0 && peak > 0 {
		t += rest / peak
	}
	return t
}

// corner returns the speed between two directions.
func corner(u, v [3]float64, a float64) float64 {
	cos := -(u[0]*v[0] + u[1]*v[1] + u[2]*v[2]) // of the angle between the sides
	if cos <= -0.999999 {
		return math.Inf(1) // straight on
	}
	sin := math.Sqrt(math.Max(0, (1-cos)/2)) // of half that angle
	return math.Sqrt(a * cornerMM * sin / math.Max(1-sin, 1e-9))
}

func legsOf(moves []Move, startZ, rapidMM, a float64) []leg {
	out := make([]leg, 0, len(moves))
	var x, y float64
	z := startZ
	for _, m := range moves {
		l := leg{speed: m.Feed / 60, cuts: m.Kind != Rapid}
		if m.Kind == Rapid {
			l.speed = rapidMM / 60
		}
		dx, dy, dz := m.X-x, m.Y-y, m.Z-z
		if m.Kind == Clockwise || m.Kind == Counter {
			radius := math.Hypot(m.I, m.J)
			flat := radius * math.Abs(m.sweep(dx, dy))
			l.length = math.Hypot(flat, dz)
			l.speed = math.Min(l.speed, math.Sqrt(a*radius))
			l.enter, l.leave = m.tangents(dx, dy, flat, dz)
		} else {
			l.length = math.Sqrt(dx*dx + dy*dy + dz*dz)
			l.enter = [3]float64{dx / l.length, dy / l.length, dz / l.length}
			l.leave = l.enter
		}
		if l.length > 0 {
			out = append(out, l)
		}
		x, y, z = m.X, m.Y, m.Z
	}
	return out
}

// sweep returns the angle of an arc whose end lies (dx, dy) from its start, radians,
// counter-clockwise above 0.
func (m Move) sweep(dx, dy float64) float64 {
	ax, ay := -m.I, -m.J
	bx, by := dx-m.I, dy-m.J
	angle := math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
	switch {
	case m.Kind == Counter && angle <= 0:
		angle += 2 * math.Pi
	case m.Kind == Clockwise && angle >= 0:
		angle -= 2 * math.Pi
	}
	return angle
}

// tangents returns the directions at the ends of an arc that climbs dz over flat mm.
func (m Move) tangents(dx, dy, flat, dz float64) (enter, leave [3]float64) {
	turn := 1.0
	if m.Kind == Clockwise {
		turn = -1
	}
	along := func(rx, ry float64) [3]float64 {
		n, l := math.Hypot(rx, ry), math.Hypot(flat, dz)
		return [3]float64{-ry / n * turn * flat / l, rx / n * turn * flat / l, dz / l}
	}
	return along(-m.I, -m.J), along(dx-m.I, dy-m.J)
}
