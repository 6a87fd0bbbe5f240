package knockout

import (
	"math"

	"pourwright/internal/geom"
)

// arcTolMM is how far the flattened arcs of keys, steps and holes err, mm.
const arcTolMM = 0.01

// A keyShape is a round head on a neck, all arcs of one radius, mm: two that turn the
// seam into the neck and one round the head. A cutter of at most that radius makes the
// key and its socket, both inside and outside corners.
//
//	head's middle at height h = 2.2 R, the neck's arcs touch the seam at +-a,
//	a^2 + (h - R)^2 = (2 R)^2, so a = 1.6 R
type keyShape struct{ radius float64 }

// leastKeyMM is the least radius of a key: a head of 24 mm is not torn off. Chosen.
const leastKeyMM = 12

// keyShape returns a key that the cutter can make, sockets with their clearance and
// all.
func (c *computer) keyShape() keyShape {
	return keyShape{math.Max(leastKeyMM, 0.6*c.in.Machine.Cutter.MM()+c.in.Making.Clearance.MM())}
}

func (k keyShape) depth() float64 { return 3.2 * k.radius } // how far it reaches beyond the seam
func (k keyShape) half() float64  { return 1.6 * k.radius } // half of what it takes of the seam

// outline returns the key's line from the seam to the seam, along x, the key on the
// left: y above zero.
func (k keyShape) outline() geom.Ring {
	r, h, a := k.radius, 2.2*k.radius, k.half()
	touch := math.Atan2(h-r, -a) // direction from the right neck's middle to the head's
	n := int(math.Ceil(math.Pi / (2 * math.Acos(1-arcTolMM/r))))
	var out geom.Ring
	out = arc(out, geom.Point{X: -a, Y: r}, r, -math.Pi/2, math.Pi-touch, n)
	out = arc(out, geom.Point{Y: h}, r, 2*math.Pi-touch, touch-math.Pi, 2*n)
	return arc(out, geom.Point{X: a, Y: r}, r, touch, 3*math.Pi/2, n)
}

// arc appends points round c from one direction to another.
func arc(out geom.Ring, c geom.Point, r, from, to float64, n int) geom.Ring {
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(n))
		p := c.Add(geom.Point{X: r * cos, Y: r * sin})
		if m := len(out); m == 0 || out[m-1].Sub(p).Norm() > geom.Grid {
			out = append(out, p)
		}
	}
	return out
}

// stepMM is how far a stepped seam steps aside, and the length along it that the step
// takes: two quarter arcs that the cutter can follow on both sides.
func (c *computer) stepMM() float64 {
	return 2 * math.Max(leastStepMM, 0.6*c.in.Machine.Cutter.MM()+c.in.Making.Clearance.MM())
}

// leastStepMM is the least radius of a step. Chosen.
const leastStepMM = 10

// stepLine returns the line of a step that rises by s over the length s, along x from
// zero: two quarter arcs of radius s/2.
func stepLine(s float64) geom.Ring {
	r := s / 2
	n := int(math.Ceil(math.Pi / 2 / (2 * math.Acos(1-arcTolMM/r))))
	out := arc(nil, geom.Point{Y: r}, r, -math.Pi/2, 0, n)
	return arc(out, geom.Point{X: s, Y: r}, r, math.Pi, math.Pi/2, n)
}

// A frame places what is drawn along x at o along u, its left to the left of u.
type frame struct{ o, u geom.Point }

func (f frame) at(p geom.Point) geom.Point {
	return f.o.Add(f.u.Mul(p.X)).Add(geom.Point{X: -f.u.Y, Y: f.u.X}.Mul(p.Y))
}
