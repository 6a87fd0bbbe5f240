package units

import (
	"fmt"
	"strings"
)

// ParseLength reads a length in mm, cm, m, in or ft, with fractions and compounds:
// 34.9, 20mm, 1 3/8 in, 1-3/8" (one and three eighths), 3' 4 1/2". A bare number is
// in def ("mm", "in" ...); with def "" it is an error. A leading minus is read, so
// that the caller can say where a negative size stands. 34,9 is 34.9; 1,220 is
// refused as ambiguous. Errors are *ParseError.
func ParseLength(text, def string) (Length, error) {
	v, err := lengths.number(text, def)
	return Length(v), err
}

// ParseArea reads an area in mm2, cm2, m2, in2 or ft2; a bare number is in def.
func ParseArea(text, def string) (Area, error) {
	v, err := areas.number(text, def)
	return Area(v), err
}

// ParseVolume reads a volume in l, ml, cl, cm3, m3, ft3, US or imperial gallons or
// fluid ounces; a bare number is in def. "gal" alone is an error that asks whose.
func ParseVolume(text, def string) (Volume, error) {
	v, err := volumes.number(text, def)
	return Volume(v), err
}

// ParseMass reads a mass in kg, g, lb or oz, also 17 lb 8 oz; a bare number is in def.
func ParseMass(text, def string) (Mass, error) {
	v, err := masses.number(text, def)
	return Mass(v), err
}

// ParseDuration reads a time in min, h, d, also 1 h 30 min; a bare number is in def.
func ParseDuration(text, def string) (Duration, error) {
	v, err := durations.number(text, def)
	return Duration(v), err
}

// ParseDensity reads a density in kg/m3, g/cm3, kg/l or lb/ft3; a bare number is in def.
func ParseDensity(text, def string) (Density, error) {
	v, err := densities.number(text, def)
	return Density(v), err
}

// ParsePressure reads a pressure in Pa, kPa, MPa, bar, psi or psf; a bare number is in def.
func ParsePressure(text, def string) (Pressure, error) {
	v, err := pressures.number(text, def)
	return Pressure(v), err
}

// ParseSpeed reads a feed in mm/min, m/min, mm/s or in/min; a bare number is in def.
func ParseSpeed(text, def string) (Speed, error) {
	v, err := speeds.number(text, def)
	return Speed(v), err
}

// ParseAngle reads an angle in degrees, with or without the sign.
func ParseAngle(text string) (Angle, error) {
	v, err := angles.number(text, "deg")
	return Angle(v), err
}

// ParseFraction reads a share: 5 %, 0.05 or 1/20. A bare number is a ratio.
func ParseFraction(text string) (Fraction, error) {
	v, err := fractions.number(text, "of 1")
	return Fraction(v), err
}

// ParseNumber reads a number without a unit: 2, 1.5, 1 1/2.
func ParseNumber(text string) (float64, error) { return plain.number(text, "#") }

// ParseTemperature reads 20 C, 20 °C, 68 F, 68 °F or 293.15 K; a bare number is in
// def, "C" or "F". Nothing is colder than absolute zero.
func ParseTemperature(text, def string) (Temperature, error) {
	s := strings.TrimSpace(strings.ReplaceAll(clean(text), "°", " "))
	s = strings.TrimSpace(strings.TrimPrefix(s, "deg"))
	scale := strings.ToLower(def)
	for suffix, name := range map[string]string{"c": "c", "f": "f", "k": "k", "celsius": "c", "fahrenheit": "f"} {
		if rest, ok := strings.CutSuffix(s, suffix); ok {
			s, scale = strings.TrimSpace(rest), name
			break
		}
	}
	s = strings.TrimSpace(strings.TrimSuffix(s, "deg"))
	bad := &ParseError{text, "not a temperature", "write a temperature such as 20 C or 68 F"}
	if scale == "" {
		return 0, bad
	}
	v, err := plain.number(s, "#")
	if err != nil {
		return 0, bad
	}
	t := Temperature(v)
	switch scale {
	case "f":
		t = Temperature((v - 32) * 5 / 9)
	case "k":
		t = Temperature(v - 273.15)
	}
	if t < -273.15-1e-9 || t > 1e5 {
		return 0, &ParseError{text, fmt.Sprintf("%.0f C is no temperature of this world", float64(t)), bad.Remedy}
	}
	return t, nil
}
