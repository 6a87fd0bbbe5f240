package rs274

import "math"

// Tolerances of arcs, in the units of the program. Source: [rs274ngc] reference
// interpreter, values of its header.
const (
	radiusTolInch = 0.0002
	radiusTolMM   = 0.002
	halfTurn      = 1 + 1e-12 // greatest half chord of an arc in radius format, radii
)

// arc fills in centre and turn of m, in mm.
func (s *state) arc(m *Move, b *block) *fault {
	pa, pb, pn := s.plane.Axes()
	words := []byte("XYZ")
	if _, x := b.word(words[pa]); !x {
		if _, y := b.word(words[pb]); !y {
			return wrong(badArc, 0, "The arc has no end: %c or %c must be given in its plane.", words[pa], words[pb])
		}
	}
	offsets := []byte("IJK")
	_, i := b.word(offsets[pa])
	_, j := b.word(offsets[pb])
	radius, r := b.word('R')
	if _, k := b.word(offsets[pn]); k {
		return wrong(badArc, b.column(offsets[pn]), "%c lies across the plane of the arc.", offsets[pn])
	}
	switch {
	case r && (i || j):
		return wrong(badArc, b.column('R'), "R stands together with %c or %c: either a radius or a centre.", offsets[pa], offsets[pb])
	case r:
		return s.byRadius(m, radius*s.unit(), b.column('R'))
	case i || j:
		u, _ := b.word(offsets[pa])
		v, _ := b.word(offsets[pb])
		m.Centre = m.From
		m.Centre[pa] += u * s.unit()
		m.Centre[pb] += v * s.unit()
		return s.byCentre(m)
	}
	return wrong(badArc, 0, "The arc has neither a centre (%c, %c) nor a radius (R).", offsets[pa], offsets[pb])
}

// byCentre checks the two radii of an arc and turns it.
func (s *state) byCentre(m *Move) *fault {
	a, b, _ := s.plane.Axes()
	u0, v0 := m.From[a]-m.Centre[a], m.From[b]-m.Centre[b]
	u1, v1 := m.To[a]-m.Centre[a], m.To[b]-m.Centre[b]
	r0, r1 := math.Hypot(u0, v0), math.Hypot(u1, v1)
	limit := radiusTolMM
	if s.inch {
		limit = radiusTolInch
	}
	// differences of numbers of up to most mm are only true to their last bits
	slack := 1e-15 * (math.Abs(m.Centre[a]) + math.Abs(m.Centre[b]) + r0 + r1)
	switch off := math.Abs(r0-r1) / s.unit(); {
	case r0 == 0 || r1 == 0:
		return wrong(badArc, 0, "The arc has a radius of zero.")
	case off > limit+slack:
		return wrong(badArc, 0, "The arc starts %.4f mm and ends %.4f mm from its centre; they may differ by %.4f mm.", r0, r1, limit*s.unit())
	}
	m.Turn = s.turn(math.Atan2(v0, u0), math.Atan2(v1, u1), u0 == u1 && v0 == v1)
	return nil
}

// turn returns the angle from start to end in the sense of the motion, radians; a
// full turn where they are the same.
func (s *state) turn(start, end float64, same bool) float64 {
	d := end - start
	if s.motion == 30 {
		for d <= 0 {
			d += 2 * math.Pi
		}
		if same {
			return 2 * math.Pi
		}
		return d
	}
	for d >= 0 {
		d -= 2 * math.Pi
	}
	if same {
		return -2 * math.Pi
	}
	return d
}

// byRadius finds the centre of an arc of at most half a circle (radius above 0) or
// more (below 0):
//
//	half = |end - start| / 2,   middle to centre = sqrt(radius^2 - half^2)
func (s *state) byRadius(m *Move, radius float64, column int) *fault {
	a, b, _ := s.plane.Axes()
	du, dv := m.To[a]-m.From[a], m.To[b]-m.From[b]
	chord := math.Hypot(du, dv)
	switch {
	case radius == 0:
		return wrong(badArc, column, "The arc has a radius of zero.")
	case chord == 0:
		return wrong(badArc, column, "An arc given by its radius ends where it starts: its centre could lie anywhere.")
	case chord/2/math.Abs(radius) > halfTurn:
		return wrong(badArc, column, "The arc's ends are %.4f mm apart, more than its diameter of %.4f mm.", chord, 2*math.Abs(radius))
	}
	half := math.Min(1, chord/2/math.Abs(radius))
	angle := 2 * math.Asin(half)
	if radius < 0 {
		angle = 2*math.Pi - angle
	}
	if s.motion == 20 {
		angle = -angle
	}
	away := math.Sqrt(math.Max(0, radius*radius-chord*chord/4))
	if (radius > 0) != (s.motion == 30) {
		away = -away
	}
	m.Centre = m.From
	m.Centre[a] = (m.From[a]+m.To[a])/2 - away*dv/chord
	m.Centre[b] = (m.From[b]+m.To[b])/2 + away*du/chord
	m.Turn = angle
	return nil
}
