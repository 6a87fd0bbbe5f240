package structure

import (
	"fmt"
	"math"

	"pourwright/internal/units"
)

// SteelDensity is the density that section tables take, kg/m3.
// Source: [en-10219-2] annex B.
const SteelDensity units.Density = 7850

// A Section is a square hollow section.
type Section struct {
	Area     units.Area
	Inertia  float64 // second moment of area, mm4, alike about both axes
	Modulus  float64 // elastic section modulus, mm3
	MassPerM float64 // kg per metre of steel
}

// Tube returns the section of a cold formed square tube with rounded corners,
// outer radius 2 T and inner radius T:
//
//	A = 4 T (B - T) - (4 - pi)(ro2 - ri2)
//	I = B4/12 - (B-2T)4/12 - 4 (Ic(ro) + Ac(ro) h(ro)2) + 4 (Ic(ri) + Ac(ri) h(ri)2)
//	Ac(r) = (1 - pi/4) r2              what rounding takes from one corner
//	Ic(r) = (1/3 - pi/16 - 1/(3(12 - 3 pi))) r4
//	h(r)  = b/2 - (10 - 3 pi)/(12 - 3 pi) r,  b = B for ro, B - 2T for ri
//
// side B and wall T in mm, 4 T <= B. Outside that range it is an error.
// Source: [en-10219-2] annex B.
func Tube(side, wall units.Length) (Section, error) {
	b, t := float64(side), float64(wall)
	if !(t > 0 && b >= 4*t) || math.IsInf(b, 1) {
		return Section{}, fmt.Errorf("square tube %g x %g mm: the side must be at least four walls", b, t)
	}
	inner := b - 2*t
	area := b*b - inner*inner - 4*(cornerArea(2*t)-cornerArea(t))
	inertia := (math.Pow(b, 4)-math.Pow(inner, 4))/12 - 4*(cornerInertia(b, 2*t)-cornerInertia(inner, t))
	return Section{
		Area:     units.Area(area),
		Inertia:  inertia,
		Modulus:  2 * inertia / b,
		MassPerM: float64(SteelDensity) * area * 1e-6,
	}, nil
}

// cornerArea is what a rounding of radius r takes from one corner, mm2.
func cornerArea(r float64) float64 { return (1 - math.Pi/4) * r * r }

// cornerInertia is the second moment about the middle axis of what a rounding of
// radius r takes from one corner of a square of side b, mm4.
func cornerInertia(b, r float64) float64 {
	const k = 12 - 3*math.Pi
	own := (1.0/3 - math.Pi/16 - 1/(3*k)) * math.Pow(r, 4)
	h := b/2 - (10-3*math.Pi)/k*r
	return own + cornerArea(r)*h*h
}
