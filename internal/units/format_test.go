package units

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{FormatMM(34.94, 1), "34.9 mm"}, {FormatMM(-0.01, 1), "0.0 mm"}, {FormatInches(34.925, 16), "1 3/8 in"}, {FormatInches(25.4, 32), "1 in"},
		{FormatInches(-9.525, 16), "-3/8 in"}, {FormatInches(0, 16), "0 in"}, {FormatLength(1220, US), "48 1/32 in"}, {FormatLength(1220, Metric), "1220.0 mm"},
		{FormatVolume(USGallon, US), "1.00 US gal"}, {FormatVolume(ImperialGallon, Imperial), "1.00 imperial gal"}, {FormatVolume(0.25, Metric), "250 ml"},
		{FormatMass(17.5*Pound, US), "17 lb 8.0 oz"}, {FormatMass(0.25, Metric), "250 g"}, {FormatTemperature(20, US), "68.0 °F"},
		{FormatDuration(1.5), "1 h 30 min"}, {FormatDuration(72), "3 d"}, {FormatDuration(0), "0 min"}, {FormatFraction(0.05), "5.0 %"},
		{FormatArea(Area(Foot*Foot), US), "1.00 ft2"}, {FormatDensity(1000, US), "62.4 lb/ft3"}, {FormatPressure(9.576, US), "200.0 psf"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// TestRoundTrip holds every printed quantity to be read back within half of its
// last printed digit.
func TestRoundTrip(t *testing.T) {
	within := func(t *rapid.T, what string, got, want, tol float64, err error) {
		if err != nil || math.Abs(got-want) > tol*(1+1e-9)+1e-9*math.Abs(want) {
			t.Fatalf("%s: got %v, %v; want %v within %v", what, got, err, want, tol)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e5, 1e5).Draw(t, "x")
		s := rapid.SampledFrom([]System{Metric, US, Imperial}).Draw(t, "system")
		l, err := ParseLength(FormatMM(Length(x), 3), "")
		within(t, "mm", float64(l), x, 0.0005, err)
		den := rapid.SampledFrom([]int{2, 4, 8, 16, 32, 64}).Draw(t, "denominator")
		l, err = ParseLength(FormatInches(Length(x), den), "")
		within(t, "inches", float64(l), x, 25.4/float64(den)/2, err)
		v, err := ParseVolume(FormatVolume(Volume(x), s), "")
		within(t, "volume", float64(v), x, 0.005*float64(ImperialGallon), err)
		m, err := ParseMass(FormatMass(Mass(x), s), "")
		within(t, "mass", float64(m), x, 0.005, err)
		temp, err := ParseTemperature(FormatTemperature(Temperature(math.Abs(x)), s), "")
		within(t, "temperature", float64(temp), math.Abs(x), 0.05, err)
		d, err := ParseDuration(FormatDuration(Duration(x)), "")
		within(t, "duration", float64(d), x, 0.5/60, err)
		f, err := ParseFraction(FormatFraction(Fraction(x)))
		within(t, "fraction", float64(f), x, 0.0005, err)
		rho, err := ParseDensity(FormatDensity(Density(x), s), "")
		within(t, "density", float64(rho), x, 1, err)
		p, err := ParsePressure(FormatPressure(Pressure(x), s), "")
		within(t, "pressure", float64(p), x, 0.005, err)
		a, err := ParseArea(FormatArea(Area(x), s), "")
		within(t, "area", float64(a), x, 500, err)
	})
}

// TestFractionNotMinus holds that a hyphen between a whole number and a fraction
// joins them, whatever the numbers.
func TestFractionNotMinus(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.IntRange(0, 200).Draw(t, "whole")
		den := rapid.SampledFrom([]int{2, 4, 8, 16, 32, 64}).Draw(t, "den")
		num := rapid.IntRange(1, den-1).Draw(t, "num")
		want := (float64(whole) + float64(num)/float64(den)) * 25.4
		for _, join := range []string{" ", "-", " - ", "  "} {
			text := itoa(whole) + join + itoa(num) + "/" + itoa(den) + " in"
			got, err := ParseLength(text, "mm")
			if err != nil || math.Abs(float64(got)-want) > 1e-9 {
				t.Fatalf("%q: %v, %v; want %v", text, got, err, want)
			}
		}
	})
}

func itoa(n int) string { return decimal(float64(n), 0) }
