package units

import (
	"maps"
	"strings"
)

// lengths are the units of length; a bare number after a prime is inches.
var lengths = scales{kind: "length", example: `34.9 mm, 3.5 cm, 1 3/8 in or 3' 4 1/2"`, then: "foot", units: join(
	each(scale{factor: 1, family: "metre"}, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
	each(scale{factor: 10, family: "metre"}, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
	each(scale{factor: 1000, family: "metre"}, "m", "metre", "metres", "meter", "meters"),
	each(scale{factor: float64(Inch), family: "foot"}, "in", "inch", "inches", `"`),
	each(scale{factor: float64(Foot), family: "foot"}, "ft", "foot", "feet", "'"),
)}

// volumes are the units of volume. A gallon or a fluid ounce must say whose.
var volumes = scales{kind: "volume", example: "5 l, 500 ml, 1.5 US gal or 1.25 imperial gal", units: join(
	each(scale{factor: 1, family: "litre"}, "l", "litre", "litres", "liter", "liters", "dm3"),
	each(scale{factor: 0.01, family: "litre"}, "cl"),
	each(scale{factor: 0.001, family: "litre"}, "ml", "cm3", "cc"),
	each(scale{factor: 1e-6}, "mm3"),
	each(scale{factor: 1000}, "m3"),
	each(scale{factor: foot3}, "ft3", "cu ft", "cubic feet", "cubic foot"),
	each(scale{factor: foot3 / 1728}, "in3", "cu in", "cubic inches"),
	each(scale{factor: float64(USGallon), family: "us"}, "us gal", "us gallon", "us gallons", "u.s. gal", "gal us", "gal (us)", "us liquid gal"),
	each(scale{factor: float64(ImperialGallon), family: "imp"}, "imperial gal", "imp gal", "imp. gal", "uk gal", "imperial gallon", "imperial gallons", "gal imp", "gal (imp)", "gal (uk)"),
	each(scale{factor: float64(USGallon) / 4, family: "us"}, "us qt", "us quart", "us quarts"),
	each(scale{factor: float64(USGallon) / 8, family: "us"}, "us pt", "us pint", "us pints"),
	each(scale{factor: float64(USFluidOunce), family: "us"}, "us fl oz", "us fl. oz", "u.s. fl oz", "fl oz us", "fl oz (us)"),
	each(scale{factor: float64(ImperialFluidOunce), family: "imp"}, "imperial fl oz", "imp fl oz", "imp. fl oz", "uk fl oz", "fl oz (imp)"),
	each(scale{ask: "which gallon? a US gallon is 3.785 l, an imperial gallon 4.546 l"}, "gal", "gallon", "gallons"),
	each(scale{ask: "which fluid ounce? a US one is 29.57 ml, an imperial one 28.41 ml"}, "fl oz", "fl. oz", "floz", "fluid ounce", "fluid ounces"),
	each(scale{ask: "which measure? US quarts and pints are smaller than imperial ones"}, "qt", "pt", "quart", "quarts", "pint", "pints"),
	each(scale{ask: "an ounce is a weight; a fluid ounce is US or imperial"}, "oz"),
)}

// foot3 is a cubic foot in litres.
const foot3 = 28.316846592 // exact: (0.3048 m)^3. Source: [nist-sp811] app. B.8

// ImperialFluidOunce is one hundred and sixtieth of an imperial gallon.
const ImperialFluidOunce Volume = ImperialGallon / 160

var masses = scales{kind: "mass", example: "2.5 kg, 250 g or 17 lb 8 oz", units: join(
	each(scale{factor: 1, family: "kg"}, "kg", "kilogram", "kilograms", "kilo", "kilos"),
	each(scale{factor: 0.001, family: "kg"}, "g", "gram", "grams"),
	each(scale{factor: 1e-6, family: "kg"}, "mg"),
	each(scale{factor: 1000}, "t", "tonne", "tonnes"),
	each(scale{factor: float64(Pound), family: "lb"}, "lb", "lbs", "pound", "pounds"),
	each(scale{factor: float64(Ounce), family: "lb"}, "oz", "ounce", "ounces"),
	each(scale{ask: "which ton? a tonne is 1000 kg, a short ton 907 kg, a long ton 1016 kg"}, "ton", "tons"),
)}

var areas = scales{kind: "area", example: "12 mm2, 1.5 cm2, 0.8 m2 or 2 ft2", units: join(
	each(scale{factor: 1}, "mm2", "sq mm"),
	each(scale{factor: 100}, "cm2", "sq cm"),
	each(scale{factor: 1e6}, "m2", "sq m"),
	each(scale{factor: float64(Inch * Inch)}, "in2", "sq in"),
	each(scale{factor: float64(Foot * Foot)}, "ft2", "sq ft"),
)}

var durations = scales{kind: "time", example: "45 min, 6 h, 1 h 30 min or 3 d", units: join(
	each(scale{factor: 24, family: "t"}, "d", "day", "days"),
	each(scale{factor: 168, family: "t"}, "wk", "week", "weeks"),
	each(scale{factor: 1, family: "t"}, "h", "hr", "hrs", "hour", "hours"),
	each(scale{factor: 1.0 / 60, family: "t"}, "min", "mins", "minute", "minutes"),
	each(scale{factor: 1.0 / 3600, family: "t"}, "s", "sec", "second", "seconds"),
)}

var densities = scales{kind: "density", example: "1100 kg/m3, 1.1 g/cm3, 1.1 kg/l or 137 lb/ft3", units: join(
	each(scale{factor: 1}, "kg/m3", "g/l"),
	each(scale{factor: 1000}, "g/cm3", "g/ml", "kg/l", "t/m3", "g/cc"),
	each(scale{factor: float64(Pound) / foot3 * 1000}, "lb/ft3", "pcf"),
	each(scale{factor: float64(Pound/Kilogram) / float64(USGallon) * 1000}, "lb/us gal"),
	each(scale{factor: float64(Pound/Kilogram) / float64(ImperialGallon) * 1000}, "lb/imperial gal", "lb/imp gal"),
	each(scale{ask: "which gallon? a US gallon is 3.785 l, an imperial gallon 4.546 l"}, "lb/gal"),
)}

// psi is one pound-force per square inch in kilopascals.
const psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000 // exact. Source: [nist-sp811] app. B.8

var pressures = scales{kind: "pressure", example: "10 kPa, 0.5 MPa, 1 bar or 200 psf", units: join(
	each(scale{factor: 0.001}, "pa"),
	each(scale{factor: 1}, "kpa", "kn/m2"),
	each(scale{factor: 1000}, "mpa", "n/mm2"),
	each(scale{factor: 100}, "bar"),
	each(scale{factor: 0.1}, "mbar"),
	each(scale{factor: psi}, "psi"),
	each(scale{factor: psi / 144}, "psf"),
)}

var speeds = scales{kind: "speed", example: "1500 mm/min, 25 mm/s or 60 in/min", units: join(
	each(scale{factor: 1}, "mm/min"),
	each(scale{factor: 1000}, "m/min"),
	each(scale{factor: 60}, "mm/s"),
	each(scale{factor: float64(Inch)}, "in/min", "ipm"),
)}

var angles = scales{kind: "angle", example: "45°", units: each(scale{factor: 1}, "deg", "degree", "degrees", "°")}

var fractions = scales{kind: "share", example: "5 % or 0.05", units: join(
	each(scale{factor: 0.01}, "%", "per cent", "percent", "pct"),
	each(scale{factor: 1}, "of 1", "parts per 1"),
)}

// plain reads numbers without a unit: ratios and parts.
var plain = scales{kind: "number", example: "2 or 1.5", units: map[string]scale{"#": {factor: 1}}}

func each(s scale, names ...string) map[string]scale {
	out := map[string]scale{}
	for _, n := range names {
		out[strings.ToLower(n)] = s
	}
	return out
}

func join(tables ...map[string]scale) map[string]scale {
	out := map[string]scale{}
	for _, t := range tables {
		maps.Copy(out, t)
	}
	return out
}
