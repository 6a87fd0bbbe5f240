package svg

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// A shaper reads the attributes of one basic shape.
type shaper struct {
	node    *node
	view    viewport
	mmPerPx float64
	err     error // first attribute that could not be read
	errAttr string
}

// length returns an attribute in user units, 0 where absent.
func (s *shaper) length(name string, a axis) float64 {
	v, _ := s.optional(name, a)
	return v
}

// optional returns an attribute in user units and whether it was given.
func (s *shaper) optional(name string, a axis) (float64, bool) {
	text, given := s.node.lookup(name)
	if !given || text == "auto" {
		return 0, false
	}
	q, err := parseQuantity(text)
	if err != nil {
		if s.err == nil {
			s.err, s.errAttr = fmt.Errorf("%s=%q: %w", name, clip(text), err), name
		}
		return 0, false
	}
	return q.user(s.mmPerPx, s.view, a), true
}

// A shapeFault says why a shape is not drawn.
type shapeFault int

const (
	drawn shapeFault = iota
	negative
	empty
)

// size sorts sizes into drawn, negative and empty.
func size(v ...float64) shapeFault {
	out := drawn
	for _, x := range v {
		if x < 0 {
			return negative
		}
		if x == 0 {
			out = empty
		}
	}
	return out
}

// rect draws a rectangle, its corners rounded by rx and ry.
// Source: [w3c-svg2] section 10.2.
func (s *shaper) rect(p *pen) shapeFault {
	x, y := s.length("x", alongX), s.length("y", alongY)
	w, h := s.length("width", alongX), s.length("height", alongY)
	if f := size(w, h); f != drawn {
		return f
	}
	rx, ry := s.radii()
	rx, ry = min(rx, w/2), min(ry, h/2)
	at := func(dx, dy float64) geom.Point { return geom.Point{X: x + dx, Y: y + dy} }
	if rx == 0 || ry == 0 {
		p.move(at(0, 0))
		p.line(at(w, 0))
		p.line(at(w, h))
		p.line(at(0, h))
		p.close()
		return drawn
	}
	p.move(at(rx, 0))
	corner := func(from, centre, to geom.Point, quarter float64) {
		if p.at != from {
			p.line(from)
		}
		t := quarter * math.Pi / 2
		p.turn(centre, geom.Point{X: rx}, geom.Point{Y: ry}, t, t+math.Pi/2, to)
	}
	corner(at(w-rx, 0), at(w-rx, ry), at(w, ry), -1)
	corner(at(w, h-ry), at(w-rx, h-ry), at(w-rx, h), 0)
	corner(at(rx, h), at(rx, h-ry), at(0, h-ry), 1)
	corner(at(0, ry), at(rx, ry), at(rx, 0), 2)
	p.close()
	return drawn
}

// radii returns rx and ry; one that is absent takes the other's value.
func (s *shaper) radii() (rx, ry float64) {
	rx, okX := s.optional("rx", alongX)
	ry, okY := s.optional("ry", alongY)
	okX, okY = okX && rx >= 0, okY && ry >= 0
	switch {
	case okX && okY:
		return rx, ry
	case okX:
		return rx, rx
	case okY:
		return ry, ry
	}
	return 0, 0
}

func (s *shaper) circle(p *pen) shapeFault {
	r := s.length("r", diagonal)
	return s.oval(p, r, r)
}

func (s *shaper) ellipse(p *pen) shapeFault {
	if _, given := s.optional("rx", alongX); given && s.length("rx", alongX) < 0 {
		return negative
	}
	if s.length("ry", alongY) < 0 {
		return negative
	}
	rx, ry := s.radii()
	return s.oval(p, rx, ry)
}

// oval draws four quarter turns from the right. Source: [w3c-svg2] section 10.3, 10.4.
func (s *shaper) oval(p *pen, rx, ry float64) shapeFault {
	if f := size(rx, ry); f != drawn {
		return f
	}
	c := geom.Point{X: s.length("cx", alongX), Y: s.length("cy", alongY)}
	ends := [...]geom.Point{{X: rx}, {Y: ry}, {X: -rx}, {Y: -ry}, {X: rx}}
	p.move(c.Add(ends[0]))
	for i := range 4 {
		t := float64(i) * math.Pi / 2
		p.turn(c, geom.Point{X: rx}, geom.Point{Y: ry}, t, t+math.Pi/2, c.Add(ends[i+1]))
	}
	p.close()
	return drawn
}

func (s *shaper) line(p *pen) shapeFault {
	p.move(geom.Point{X: s.length("x1", alongX), Y: s.length("y1", alongY)})
	p.line(geom.Point{X: s.length("x2", alongX), Y: s.length("y2", alongY)})
	return drawn
}

// readPoints draws the points of a polyline, closed or not, up to the first fault.
// Source: [w3c-svg2] sections 10.6, 10.7.
func readPoints(text string, p *pen, closed bool) *pathError {
	sc := scanner{s: text}
	var fault *pathError
	first := true
	for sc.spaces(); !sc.done() && !p.full(); sc.comma() {
		x, err := sc.number()
		if err == nil {
			sc.comma()
		}
		at := sc.i
		y, err2 := 0.0, err
		if err == nil {
			y, err2 = sc.number()
		}
		if err2 != nil {
			if fault = (&pathError{at, err2.Error()}); sc.done() {
				fault.text = "the last x has no y"
			}
			break
		}
		if q := (geom.Point{X: x, Y: y}); first {
			p.move(q)
			first = false
		} else {
			p.line(q)
		}
	}
	if closed && p.open {
		p.close()
	}
	return fault
}
