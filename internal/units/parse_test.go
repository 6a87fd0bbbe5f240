package units

import (
	"math"
	"strings"
	"testing"
)

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }

func TestParseLength(t *testing.T) {
	for text, want := range map[string]float64{
		"34.9": 34.9, "34,9": 34.9, "0,125": 0.125, "20mm": 20, "20 mm": 20, "3.5 cm": 35, "1.22 m": 1220, ".5 in": 12.7, "5.": 5,
		`1 3/8"`: 34.925, `1-3/8"`: 34.925, "1-3/8 in": 34.925, "3/8in": 9.525, "1⅜″": 34.925, "⅜ in": 9.525, "1 3⁄8 in": 34.925,
		`3' 4 1/2"`: 1028.7, `3'-4 1/2"`: 1028.7, "3 ft 4 1/2 in": 1028.7, "3′ 4½″": 1028.7, `3'4"`: 1016, "5'6": 1676.4, "3ft4in": 1016,
		"4 ft": 1219.2, "1 m 20 cm": 1200, "-5 mm": -5, "+5": 5, " 7\u00a0mm ": 7, "48 INCHES": 1219.2, "1/2": 0.5, "5 in.": 127,
	} {
		got, err := ParseLength(text, "mm")
		if err != nil || !near(float64(got), want) {
			t.Errorf("ParseLength(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	if got, err := ParseLength("1 3/8", "in"); err != nil || !near(float64(got), 34.925) {
		t.Errorf(`ParseLength("1 3/8", in) = %v, %v`, got, err)
	}
}

func TestParseOthers(t *testing.T) {
	number := func(v float64, err error) func(float64) {
		return func(want float64) {
			t.Helper()
			if err != nil || !near(v, want) {
				t.Errorf("got %v, %v; want %v", v, err, want)
			}
		}
	}
	vol := func(s string) (float64, error) { v, err := ParseVolume(s, ""); return float64(v), err }
	number(vol("5 l"))(5)
	number(vol("500ml"))(0.5)
	number(vol("5 cl"))(0.05)
	number(vol("1.74 US gal"))(1.74 * 3.785411784)
	number(vol("1.5 imperial gal"))(1.5 * 4.54609)
	number(vol("16 US fl oz"))(0.473176473)
	number(vol("2 ft3"))(56.633693184)
	number(vol("2 ft³"))(56.633693184)
	number(vol("250 cm³"))(0.25)
	number(vol("0.1 m3"))(100)
	mass := func(s string) (float64, error) { v, err := ParseMass(s, ""); return float64(v), err }
	number(mass("17 lb 8 oz"))(17.5 * 0.45359237)
	number(mass("17.5 lb"))(17.5 * 0.45359237)
	number(mass("250 g"))(0.25)
	number(mass("1 kg 250 g"))(1.25)
	temp := func(s string) (float64, error) { v, err := ParseTemperature(s, "C"); return float64(v), err }
	number(temp("68 F"))(20)
	number(temp("68°F"))(20)
	number(temp("20 °C"))(20)
	number(temp("20"))(20)
	number(temp("-40 F"))(-40)
	number(temp("293.15 K"))(20)
	hours := func(s string) (float64, error) { v, err := ParseDuration(s, ""); return float64(v), err }
	number(hours("90 min"))(1.5)
	number(hours("1 h 30 min"))(1.5)
	number(hours("3 d"))(72)
	share := func(s string) (float64, error) { v, err := ParseFraction(s); return float64(v), err }
	number(share("5 %"))(0.05)
	number(share("5%"))(0.05)
	number(share("0.05"))(0.05)
	number(share("1/20"))(0.05)
	dens := func(s string) (float64, error) { v, err := ParseDensity(s, ""); return float64(v), err }
	number(dens("1.1 g/cm3"))(1100)
	number(dens("1100 kg/m³"))(1100)
	number(dens("62.4 lb/ft3"))(62.4 * 0.45359237 / 0.028316846592)
	area := func(s string) (float64, error) { v, err := ParseArea(s, ""); return float64(v), err }
	number(area("2 ft2"))(185806.08)
	press := func(s string) (float64, error) { v, err := ParsePressure(s, ""); return float64(v), err }
	number(press("200 psf"))(9.576051796)
	speed := func(s string) (float64, error) { v, err := ParseSpeed(s, ""); return float64(v), err }
	number(speed("60 in/min"))(1524)
}

func TestRefused(t *testing.T) {
	length := func(s string) error { _, err := ParseLength(s, "mm"); return err }
	volume := func(s string) error { _, err := ParseVolume(s, "l"); return err }
	mass := func(s string) error { _, err := ParseMass(s, "kg"); return err }
	temp := func(s string) error { _, err := ParseTemperature(s, "C"); return err }
	unitless := func(s string) error { _, err := ParseLength(s, ""); return err }
	for _, c := range []struct {
		text   string
		parse  func(string) error
		remedy string
	}{
		{"", length, "for example"}, {"  ", length, "for example"}, {"1e400", length, "write the number out"}, {"1e3", length, "write the number out"},
		{"NaN", length, "such as"}, {"inf", length, "such as"}, {".inf", length, "such as"}, {"0x1F", length, "write the number out"}, {"1_000", length, "write the number out"},
		{"1,220", length, "1220 or 1.220"}, {"1,220.5", length, "decimal point"}, {"1.220,5", length, "decimal point"}, {"12,", length, "decimal point"},
		{"20 cm3", length, "such as"}, {"20ft3", length, "such as"}, {"20 ft3", length, "such as"}, {"3 ft 4", length, "unit too"}, {"3 in 4 ft", length, "feet then inches"},
		{"3 ft 14 in", length, "smaller part"}, {"1 9/8 in", length, "proper fraction"}, {"1/0 in", length, "fraction"}, {"1/2/3", length, "fraction"}, {"--5", length, "such as"},
		{"5 kg", length, "such as"}, {"5 mmm", length, "such as"}, {"12 mm of board", length, "such as"}, {"1-2", length, "such as"}, {strings.Repeat("9", 60), length, "of this world"},
		{strings.Repeat("9", 400), length, "one length"}, {"5", unitless, "unit too"},
		{"5 gal", volume, "US gal"}, {"5 gallons", volume, "US gal"}, {"16 fl oz", volume, "US gal"}, {"5 oz", volume, "US gal"}, {"2 pints", volume, "US gal"},
		{"2 tons", mass, "kg"}, {"5 l", mass, "kg"}, {"20 X", temp, "20 C or 68 F"}, {"-300 C", temp, "20 C"}, {"", temp, "20 C"},
	} {
		err := c.parse(c.text)
		if err == nil {
			t.Errorf("%q was accepted", c.text)
			continue
		}
		e, ok := err.(*ParseError)
		if !ok || !strings.Contains(e.Remedy, c.remedy) {
			t.Errorf("%q: error %v, remedy %q, want %q in it", c.text, err, e.Remedy, c.remedy)
		}
	}
}
