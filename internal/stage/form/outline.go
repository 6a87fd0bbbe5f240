package form

import (
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A corner is one corner of the form's inside.
type corner struct {
	at    geom.Point
	angle float64 // inside, degrees
	joint string  // butt or mitre
}

// outline returns the corners of the form's inside, counter-clockwise in FORM VIEW. An
// outline that is not convex, or is not as large as the box, is said and the rectangle
// taken. The rectangle begins at its lower left corner, so that its walls are near,
// right, far and left.
func outline(in Input) ([]corner, []finding.Finding) {
	l, w := in.Length.MM(), in.Width.MM()
	ring := geom.Rect(0, 0, l, w).Ring()
	var found []finding.Finding
	if len(in.Outline) > 0 {
		turned := make(geom.Ring, 0, len(in.Outline))
		for _, p := range slices.Backward(in.Outline) {
			turned = append(turned, geom.Point{X: l - p.X, Y: p.Y}) // FINISHED VIEW to FORM VIEW
		}
		if turned.Area() < 0 {
			slices.Reverse(turned)
		}
		turned = straight(turned)
		switch box := turned.Box(); {
		case !convex(turned):
			found = append(found, notConvex.At(finding.Where{Field: "box.outline"}, "The outline of %d points is not convex; the form is planned for the box of %.0f x %.0f mm.", len(in.Outline), l, w))
		case math.Abs(box.Min.X) > 1 || math.Abs(box.Min.Y) > 1 || math.Abs(box.Max.X-l) > 1 || math.Abs(box.Max.Y-w) > 1:
			found = append(found, notConvex.At(finding.Where{Field: "box.outline"}, "The outline reaches over %.1f x %.1f mm and the box is %.1f x %.1f mm; the form is planned for the box.", box.Width(), box.Height(), l, w).
				Do("Draw the outline so that it touches all four sides of the box."))
		default:
			ring = turned
		}
	}
	corners := make([]corner, len(ring))
	for i, p := range ring {
		a, b := ring[(i+len(ring)-1)%len(ring)].Sub(p), ring[(i+1)%len(ring)].Sub(p)
		corners[i] = corner{at: p, angle: math.Atan2(b.Cross(a), b.Dot(a)) * 180 / math.Pi, joint: in.Corner}
	}
	return corners, append(found, joints(in, corners)...)
}

// straight takes out points on a straight line and doubled points.
func straight(r geom.Ring) geom.Ring {
	var out geom.Ring
	for i, p := range r {
		a, b := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
		u, v := p.Sub(a), b.Sub(p)
		if v.Norm() > 1e-6 && math.Abs(u.Cross(v)) > 1e-4*u.Norm()*v.Norm() {
			out = append(out, p)
		}
	}
	return out
}

// convex reports whether all corners turn to the left and the ring goes round once.
func convex(r geom.Ring) bool {
	sum := 0.0
	for i, p := range r {
		u, v := p.Sub(r[(i+len(r)-1)%len(r)]), r[(i+1)%len(r)].Sub(p)
		if !(u.Cross(v) > 0) {
			return false
		}
		sum += math.Atan2(u.Cross(v), u.Dot(v))
	}
	return len(r) >= 3 && math.Abs(sum-2*math.Pi) < 1e-6
}

// square is how far a corner may be off 90 degrees for a butt joint. Chosen: 0.5 mm on
// a board of 18 mm is 1.6 degrees.
const square = 0.5

// joints settles the joint of every corner: a butt joint needs a square corner, a
// mitre a tilt that the saw reaches.
func joints(in Input, corners []corner) []finding.Finding {
	var found []finding.Finding
	most := float64(in.MostTilt)
	if most <= 0 {
		most = 45
	}
	for i := range corners {
		c := &corners[i]
		if c.joint != "mitre" && math.Abs(c.angle-90) > square {
			found = append(found, noButt.At(at(c.at), "The corner at %.0f, %.0f mm is %.1f degrees; a butt joint needs 90. It is planned as a mitre of %.1f degrees.", c.at.X, c.at.Y, c.angle, c.tilt()).
				Measured(c.angle, 90, "degrees").Do("Write corner: mitre, or make the corner square."))
			c.joint = "mitre"
		}
		if c.joint == "mitre" && c.tilt() > most+1e-6 {
			found = append(found, steep.At(at(c.at), "The mitre at %.0f, %.0f mm needs the blade tilted by %.1f degrees and the saw tilts to %.0f.", c.at.X, c.at.Y, c.tilt(), most).
				Measured(c.tilt(), most, "degrees"))
		}
	}
	return found
}

// tilt returns how far the blade leans from the square cut for a mitre: 90 - angle/2.
func (c corner) tilt() float64 { return 90 - c.angle/2 }

// past returns how much longer than the inside the outer face of a wall is at c: a
// mitre t / tan(angle/2).
func (c corner) past(t units.Length) float64 {
	return t.MM() / math.Tan(c.angle/2*math.Pi/180)
}

func at(p geom.Point) finding.Where {
	return finding.Where{View: "form", At: &[2]float64{p.X, p.Y}}
}

// outer returns the outline moved out by t with sharp corners: what the form covers.
func outer(corners []corner, t units.Length) geom.Ring {
	out := make(geom.Ring, len(corners))
	for i, c := range corners {
		next := corners[(i+1)%len(corners)].at.Sub(c.at)
		u := next.Mul(1 / next.Norm())
		out[i] = c.at.Sub(u.Mul(c.past(t))).Add(geom.Point{X: u.Y, Y: -u.X}.Mul(t.MM()))
	}
	return out
}
