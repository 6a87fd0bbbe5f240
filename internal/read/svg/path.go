package svg

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// A pen draws subpaths, user units.
type pen struct {
	subs  []subpath
	at    geom.Point // current point
	begin geom.Point // start of the current subpath
	open  bool       // a subpath is being drawn
	count int        // segments so far
	limit int
}

func (p *pen) move(to geom.Point) {
	p.at, p.begin, p.open = to, to, false
}

// sub returns the subpath being drawn, a new one if there is none.
func (p *pen) sub() *subpath {
	if !p.open {
		p.subs = append(p.subs, subpath{start: p.at})
		p.begin, p.open = p.at, true
		p.count += lineCost
	}
	return &p.subs[len(p.subs)-1]
}

func (p *pen) draw(k segment, pts ...geom.Point) {
	p.count++
	p.sub().add(k, pts...)
	p.at = pts[len(pts)-1]
}

func (p *pen) line(to geom.Point)          { p.draw(line, to) }
func (p *pen) cubic(c1, c2, to geom.Point) { p.draw(cubic, c1, c2, to) }
func (p *pen) full() bool                  { return p.count > p.limit }
func (p *pen) quadratic(c, to geom.Point) {
	third := func(q geom.Point) geom.Point { return q.Add(c.Sub(q).Mul(2.0 / 3)) }
	p.cubic(third(p.at), third(to), to)
}

// turn draws part of the ellipse centre + u cos t + v sin t.
func (p *pen) turn(centre, u, v geom.Point, t0, t1 float64, to geom.Point) {
	p.draw(arc, centre, u, v, geom.Point{X: t0, Y: t1}, to)
}

func (p *pen) close() {
	p.count++
	p.sub().closed = true
	p.at, p.open = p.begin, false
}

// arc draws an elliptical arc from its end points; radii too small are scaled up.
// Source: [w3c-svg2] appendix B.2.4, B.2.5.
func (p *pen) arc(rx, ry, deg float64, large, sweep bool, to geom.Point) {
	rx, ry = math.Abs(rx), math.Abs(ry)
	if to == p.at {
		return
	}
	if rx == 0 || ry == 0 {
		p.line(to)
		return
	}
	sin, cos := math.Sincos(deg * math.Pi / 180)
	h := p.at.Sub(to).Mul(0.5)
	x, y := (cos*h.X+sin*h.Y)/rx, (cos*h.Y-sin*h.X)/ry
	if r := math.Hypot(x, y); r > 1 {
		rx, ry, x, y = rx*r, ry*r, x/r, y/r
	}
	k := math.Sqrt(max(0, 1/(x*x+y*y)-1))
	if large == sweep {
		k = -k
	}
	cx, cy := k*y, -k*x // centre on the unit circle's plane, from the middle
	u, v := geom.Point{X: rx * cos, Y: rx * sin}, geom.Point{X: -ry * sin, Y: ry * cos}
	centre := p.at.Add(to).Mul(0.5).Add(u.Mul(cx)).Add(v.Mul(cy))
	t0, t1 := math.Atan2(y-cy, x-cx), math.Atan2(-y-cy, -x-cx)
	switch {
	case sweep && t1 <= t0:
		t1 += 2 * math.Pi
	case !sweep && t1 >= t0:
		t1 -= 2 * math.Pi
	}
	p.turn(centre, u, v, t0, t1, to)
}

// A pathError is a fault in path data and where it is, bytes from the start.
type pathError struct {
	at   int
	text string
}

// A pathReader follows path data.
type pathReader struct {
	scanner
	pen     *pen
	control geom.Point // last control point, for smooth curves
	last    byte       // last command, upper case
}

// argumentsOf holds how many numbers a command takes at a time.
var argumentsOf = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// readPath draws path data with p, up to the first fault.
// Source: [w3c-svg2] sections 9.3, 9.5.
func readPath(d string, p *pen) *pathError {
	r := &pathReader{scanner: scanner{s: d}, pen: p}
	for r.spaces(); !r.done() && !p.full(); r.spaces() {
		if err := r.command(); err != nil {
			return &pathError{r.i, err.Error()}
		}
	}
	return nil
}

func (r *pathReader) command() error {
	letter := r.peek()
	upper := letter &^ 0x20
	n, known := argumentsOf[upper]
	if !known || !isLetter(letter) {
		return fmt.Errorf("a path command should stand here, not %s", r.found())
	}
	if r.last == 0 && upper != 'M' {
		return fmt.Errorf("a path begins with M, not %q", letter)
	}
	r.i++
	if upper == 'Z' {
		if r.last != 'Z' || r.pen.open {
			r.pen.close()
		}
		r.last = 'Z'
		return nil
	}
	return r.repeat(upper, letter != upper, n)
}

// repeat reads the numbers of a command as often as they come.
func (r *pathReader) repeat(c byte, relative bool, n int) error {
	for first := true; first || r.startsNumber(); first = false {
		if r.spaces(); c == 'A' {
			if err := r.readArc(relative); err != nil {
				return err
			}
		} else {
			var v [6]float64
			if err := r.read(v[:n]); err != nil {
				return err
			}
			r.draw(c, relative, v)
		}
		r.last = c
		if c == 'M' {
			c = 'L' // further pairs are lines
		}
		if r.pen.full() {
			return nil
		}
		if back := r.i; r.comma() && !r.startsNumber() {
			r.i = back
			return fmt.Errorf("a number should follow the comma")
		}
	}
	return nil
}

func (r *pathReader) read(v []float64) error {
	for i := range v {
		if i > 0 {
			r.comma()
		}
		x, err := r.number()
		if err != nil {
			return err
		}
		v[i] = x
	}
	return nil
}

// readArc reads the seven arguments of one arc; its flags may run together with
// what follows.
func (r *pathReader) readArc(relative bool) error {
	var radii [3]float64
	if err := r.read(radii[:]); err != nil {
		return err
	}
	var flags [2]bool
	for i := range flags {
		r.comma()
		if b := r.peek(); b != '0' && b != '1' {
			return fmt.Errorf("an arc flag is 0 or 1, not %s", r.found())
		}
		flags[i] = r.peek() == '1'
		r.i++
	}
	r.comma()
	var end [2]float64
	if err := r.read(end[:]); err != nil {
		return err
	}
	r.pen.arc(radii[0], radii[1], radii[2], flags[0], flags[1], r.point(relative, end[0], end[1]))
	return nil
}

func (r *pathReader) point(relative bool, x, y float64) geom.Point {
	if relative {
		return geom.Point{X: r.pen.at.X + x, Y: r.pen.at.Y + y}
	}
	return geom.Point{X: x, Y: y}
}

// mirrored returns the last control point turned about the current point, or the
// current point if the last command was none of kinds.
func (r *pathReader) mirrored(kinds ...byte) geom.Point {
	for _, k := range kinds {
		if r.last == k {
			return r.pen.at.Mul(2).Sub(r.control)
		}
	}
	return r.pen.at
}

func (r *pathReader) draw(c byte, relative bool, v [6]float64) {
	p := r.pen
	a, b, d := r.point(relative, v[0], v[1]), r.point(relative, v[2], v[3]), r.point(relative, v[4], v[5])
	switch c {
	case 'M':
		p.move(a)
	case 'L':
		p.line(a)
	case 'H':
		p.line(geom.Point{X: a.X, Y: p.at.Y})
	case 'V':
		p.line(geom.Point{X: p.at.X, Y: r.point(relative, 0, v[0]).Y})
	case 'C':
		p.cubic(a, b, d)
		r.control = b
	case 'S':
		p.cubic(r.mirrored('C', 'S'), a, b)
		r.control = a
	case 'Q':
		p.quadratic(a, b)
		r.control = a
	case 'T':
		r.control = r.mirrored('Q', 'T')
		p.quadratic(r.control, a)
	}
}
