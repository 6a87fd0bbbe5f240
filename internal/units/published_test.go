package units

import (
	"testing"

	"pourwright/internal/published"
)

// TestPublishedFactors reads one of each customary unit and compares with the
// factors printed in bold, that is exact, in SP 811, and with the rounded ones to
// their seven printed digits.
func TestPublishedFactors(t *testing.T) {
	value := func(v float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	length := func(s string) float64 { v, err := ParseLength(s, ""); return value(float64(v), err) }
	volume := func(s string) float64 { v, err := ParseVolume(s, ""); return value(float64(v), err) }
	mass := func(s string) float64 { v, err := ParseMass(s, ""); return value(float64(v), err) }
	temp := func(s string) float64 { v, err := ParseTemperature(s, ""); return value(float64(v), err) }
	dens := func(s string) float64 { v, err := ParseDensity(s, ""); return value(float64(v), err) }
	press := func(s string) float64 { v, err := ParsePressure(s, ""); return value(float64(v), err) }
	area := func(s string) float64 { v, err := ParseArea(s, ""); return value(float64(v), err) }
	check := func(name string, ours, theirs, tol float64, unit string) published.Check {
		return published.Check{Room: "units", Name: name, Ours: ours, Theirs: theirs, Tol: tol, Unit: unit, Source: "nist-sp811", Place: "appendix B.8"}
	}
	published.Run(t,
		check("one inch", length("1 in"), 25.4, 1e-12, "mm"),
		check("one foot", length("1 ft"), 304.8, 1e-12, "mm"),
		check("1 3/8 in", length(`1-3/8"`), 34.925, 1e-12, "mm"),
		check("one US gallon", volume("1 US gal"), 3.785412, 5e-7, "l"),
		check("one imperial gallon", volume("1 imperial gal"), 4.54609, 1e-12, "l"),
		check("one US fluid ounce", volume("1 US fl oz"), 0.02957353, 5e-9, "l"),
		check("one imperial fluid ounce", volume("1 imperial fl oz"), 0.02841306, 5e-9, "l"),
		check("one cubic foot", volume("1 ft3"), 28.31685, 5e-6, "l"),
		check("one cubic inch", volume("1 in3"), 0.01638706, 5e-9, "l"),
		check("one pound", mass("1 lb"), 0.4535924, 5e-8, "kg"),
		check("one ounce", mass("1 oz"), 0.02834952, 5e-9, "kg"),
		check("68 F", temp("68 F"), 20, 1e-9, "C"),
		check("one pound per cubic foot", dens("1 lb/ft3"), 16.01846, 5e-6, "kg/m3"),
		check("one pound per US gallon", dens("1 lb/US gal"), 119.8264, 5e-5, "kg/m3"),
		check("one pound-force per square inch", press("1 psi"), 6.894757, 5e-7, "kPa"),
		check("one pound-force per square foot", press("1 psf"), 0.04788026, 5e-9, "kPa"),
		check("one square foot", area("1 ft2"), 92903.04, 1e-6, "mm2"),
	)
}
