package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A System is the family of units that a text is written in.
type System int

// The systems. Lengths and masses are alike in the two customary ones.
const (
	Metric   System = iota // mm, l, kg, C
	US                     // in, US gal, lb, F
	Imperial               // in, imperial gal, lb, C
)

// FormatMM writes l in millimetres with a stated number of decimals: "34.9 mm".
func FormatMM(l Length, decimals int) string { return decimal(float64(l), decimals) + " mm" }

// FormatInches writes l in inches to the nearest 1/denominator, in lowest terms:
// "1 3/8 in". denominator is a power of two such as 16 or 32; the text is within
// half of 1/denominator inch of l.
func FormatInches(l Length, denominator int) string {
	n := int64(math.Round(l.In() * float64(denominator)))
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, part, den := n/int64(denominator), n%int64(denominator), int64(denominator)
	for part != 0 && part%2 == 0 && den%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf("%s%d in", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d in", sign, part, den)
	}
	return fmt.Sprintf("%s%d %d/%d in", sign, whole, part, den)
}

// FormatLength writes l to 0.1 mm, or to 1/32 in in the customary systems.
func FormatLength(l Length, s System) string {
	if s == Metric {
		return FormatMM(l, 1)
	}
	return FormatInches(l, 32)
}

// FormatVolume writes v to 0.01 of a litre or gallon, small ones to the millilitre
// or 0.1 fl oz. Gallons and ounces always say whose.
func FormatVolume(v Volume, s System) string {
	small := math.Abs(float64(v)) < 1
	switch {
	case s == Metric && small:
		return decimal(float64(v)*1000, 0) + " ml"
	case s == Metric:
		return decimal(float64(v), 2) + " l"
	case s == US && small:
		return decimal(float64(v/USFluidOunce), 1) + " US fl oz"
	case s == US:
		return decimal(v.USGal(), 2) + " US gal"
	case small:
		return decimal(float64(v/ImperialFluidOunce), 1) + " imperial fl oz"
	}
	return decimal(v.ImperialGal(), 2) + " imperial gal"
}

// FormatMass writes m to 0.01 kg, below a kilogram to the gram; in the customary
// systems in pounds and tenths of an ounce.
func FormatMass(m Mass, s System) string {
	switch {
	case s == Metric && math.Abs(float64(m)) < 1:
		return decimal(m.G(), 0) + " g"
	case s == Metric:
		return decimal(float64(m), 2) + " kg"
	}
	tenths := int64(math.Round(math.Abs(float64(m/Ounce)) * 10))
	sign := ""
	if m < 0 && tenths > 0 {
		sign = "-"
	}
	lb, oz := tenths/160, decimal(float64(tenths%160)/10, 1)
	if lb == 0 {
		return fmt.Sprintf("%s%s oz", sign, oz)
	}
	return fmt.Sprintf("%s%d lb %s oz", sign, lb, oz)
}

// FormatTemperature writes t to 0.1 degree: Fahrenheit in the US system.
func FormatTemperature(t Temperature, s System) string {
	if s == US {
		return decimal(t.F(), 1) + " °F"
	}
	return decimal(float64(t), 1) + " °C"
}

// FormatArea writes a in m2 to 0.001, or in ft2 to 0.01.
func FormatArea(a Area, s System) string {
	if s == Metric {
		return decimal(a.M2(), 3) + " m2"
	}
	return decimal(float64(a)/float64(Foot*Foot), 2) + " ft2"
}

// FormatDensity writes d in whole kg/m3, or in lb/ft3 to 0.1.
func FormatDensity(d Density, s System) string {
	if s == Metric {
		return decimal(float64(d), 0) + " kg/m3"
	}
	return decimal(float64(d)*foot3/1000/float64(Pound), 1) + " lb/ft3"
}

// FormatPressure writes p to 0.01 kPa, or to 0.1 psf.
func FormatPressure(p Pressure, s System) string {
	if s == Metric {
		return decimal(float64(p), 2) + " kPa"
	}
	return decimal(float64(p)/psi*144, 1) + " psf"
}

// FormatDuration writes d to the minute: "1 h 30 min", days from 48 h on.
func FormatDuration(d Duration) string {
	minutes := int64(math.Round(math.Abs(float64(d)) * 60))
	var parts []string
	if minutes >= 48*60 {
		parts = append(parts, fmt.Sprintf("%d d", minutes/1440))
		minutes %= 1440
	}
	if h := minutes / 60; h > 0 {
		parts = append(parts, fmt.Sprintf("%d h", h))
	}
	if m := minutes % 60; m > 0 || len(parts) == 0 {
		parts = append(parts, fmt.Sprintf("%d min", m))
	}
	text := strings.Join(parts, " ")
	if d < 0 && text != "0 min" {
		return "-" + text
	}
	return text
}

// FormatFraction writes f as per cent to 0.1.
func FormatFraction(f Fraction) string { return decimal(float64(f)*100, 1) + " %" }

// decimal writes v with n decimals and never "-0".
func decimal(v float64, n int) string {
	s := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}
