package job

import (
	"fmt"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// ZoneText is a part of the shell of another thickness, as typed.
type ZoneText struct {
	// Which part: top (face and basin floors) or heel (the sides next to the foot).
	Surface typed.Choice `yaml:"surface"`
	// Thickness of all coats together there.
	Thickness typed.Length `yaml:"thickness"`
	// How far a heel reaches up from the foot. Default 60 mm.
	Height typed.Length `yaml:"height,omitempty"`
}

// ScrimText is mesh inside the backer, as typed.
type ScrimText struct {
	// Whether mesh is laid: yes or no. Default yes where scrim is written.
	Use typed.Choice `yaml:"use,omitempty"`
	// Width of the roll. Default 1 m.
	Roll typed.Length `yaml:"roll,omitempty"`
	// Lap of two pieces. Default 75 mm.
	Lap typed.Length `yaml:"lap,omitempty"`
}

// StrengthText is what steps of the work ask of the concrete, MPa in compression.
type StrengthText struct {
	// To take the form off. Default 10 MPa.
	Demould typed.Number `yaml:"demould_mpa,omitempty"`
	// To turn it over. Default 15 MPa.
	Flip typed.Number `yaml:"flip_mpa,omitempty"`
	// To grind and drill it. Default 25 MPa.
	Work typed.Number `yaml:"work_mpa,omitempty"`
}

// TestText is a strength the maker has tested.
type TestText struct {
	// Age when tested, such as 24 h.
	Age typed.Duration `yaml:"age"`
	// Temperature of the shop meanwhile. Default the room's.
	Temperature typed.Temperature `yaml:"temperature,omitempty"`
	// Strength in compression, MPa.
	Strength typed.Number `yaml:"strength_mpa"`
}

// StretchText is a time at one temperature, as typed.
type StretchText struct {
	// How long, such as 12 h.
	For typed.Duration `yaml:"for"`
	// The temperature.
	Temperature typed.Temperature `yaml:"temperature"`
}

// A Zone is a part of the shell of another thickness.
type Zone struct {
	Surface   string // top, heel
	Thickness units.Length
	Height    units.Length // of a heel
}

// Casting is how concrete is cast, kept and tested in this shop.
type Casting struct {
	Zones    []Zone
	Mixer    units.Mass // most it takes at once; 0: as the tub
	PackRate float64    // m2 an hour and person of a fibred coat; 0: usual
	Scale    units.Mass // step of the scale; 0: usual
	Patch    units.Mass // dry mix kept back; 0: usual
	MixTemp  units.Temperature
	HasMix   bool    // MixTemp is stated
	Draught  float64 // km/h of air over the work
	Drying   units.Duration
	Bare     []string // surfaces that stay unsealed: face, wall
	Scrim    bool
	Roll     units.Length // width of the mesh; 0: usual
	Lap      units.Length
	Demould  float64 // MPa; 0: usual
	Flip     float64
	Work     float64
	Tests    []Test
}

// A Test is a strength the maker has tested.
type Test struct {
	Age         units.Duration
	Temperature units.Temperature
	Strength    float64 // MPa
}

// A Stretch is a time at one temperature.
type Stretch struct {
	Time units.Duration
	Temp units.Temperature
}

// mostListed is how many zones, tests or stretches a document may list. Chosen.
const mostListed = 400

// casting reads how concrete is cast.
func (r *resolver) casting() {
	t, out := r.doc.Concrete, &r.job.Casting
	out.Mixer = r.load("concrete.mixer", t.Mixer, "kg", 0.5, 2000)
	out.PackRate = r.number("concrete.pack_rate", t.PackRate, 0, 0.1, 60, "m2 an hour")
	out.Scale = r.load("concrete.scale_step", t.ScaleStep, "g", 0.00001, 0.5)
	out.Patch = r.load("concrete.patch", t.Patch, "kg", 0.05, 100)
	out.Draught = r.number("concrete.air_speed", t.AirSpeed, 0, 0, 60, "km/h")
	out.MixTemp = r.warmth("concrete.mix_temperature", t.MixTemperature, 0, 2, 45)
	out.HasMix = out.MixTemp > 0
	if t.Drying != "" {
		out.Drying = r.span("concrete.drying", t.Drying, 0, 12, 120*units.Day)
	}
	out.Bare = r.bareSurfaces(t.Unsealed)
	r.mesh(t.Scrim)
	out.Demould = r.number("concrete.strength.demould_mpa", t.Strength.Demould, 0, 1, 150, "MPa")
	out.Flip = r.number("concrete.strength.flip_mpa", t.Strength.Flip, 0, 1, 150, "MPa")
	out.Work = r.number("concrete.strength.work_mpa", t.Strength.Work, 0, 1, 150, "MPa")
	r.tests(t.Tests)
	r.zones(r.doc.Shell.Zones)
	r.history()
}

// load reads a mass from low to high; a bare number is in unit, and nothing is 0.
func (r *resolver) load(field string, text typed.Mass, unit string, low, high units.Mass) units.Mass {
	if text == "" {
		return 0
	}
	v, ok := parse(r, field, string(text), func(s string) (units.Mass, error) { return units.ParseMass(s, unit) })
	if !ok {
		return 0
	}
	if v < low || v > high {
		f := r.say(wrongUnit, field, "%s %s is %s, outside %s to %s; the usual is used.", field, text, units.FormatMass(v, units.Metric), units.FormatMass(low, units.Metric), units.FormatMass(high, units.Metric))
		f.Got, f.Limit, f.Unit = float64(v), float64(high), "kg"
		f.Remedy = "write the mass with its unit, such as 25 kg or 0.1 g"
		return 0
	}
	return v
}

func (r *resolver) bareSurfaces(list typed.List) []string {
	var out []string
	for i, s := range list {
		w := strings.ToLower(strings.TrimSpace(s))
		if !slices.Contains([]string{"face", "wall"}, w) {
			r.say(unknownWord, fmt.Sprintf("concrete.unsealed[%d]", i), "%q is no surface that is sealed.", s).Remedy = "write face or wall; floors and risers of the basin stay keyed for resin anyway"
			continue
		}
		out = append(out, w)
	}
	return out
}

func (r *resolver) mesh(t ScrimText) {
	out := &r.job.Casting
	out.Scrim = (t != ScrimText{}) && r.word("concrete.scrim.use", t.Use, "yes", "no") == "yes"
	if t.Roll != "" {
		out.Roll, _ = r.length("concrete.scrim.roll", t.Roll, 0, likely{100, 5000})
	}
	if t.Lap != "" {
		out.Lap, _ = r.length("concrete.scrim.lap", t.Lap, 0, likely{10, 300})
	}
}

func (r *resolver) tests(list []TestText) {
	for i, t := range list[:min(len(list), mostListed)] {
		field := fmt.Sprintf("concrete.tests[%d]", i)
		one := Test{Age: r.span(field+".age", t.Age, 0, 0.5, 2000*units.Day)}
		one.Temperature = r.warmth(field+".temperature", t.Temperature, r.job.Room.Temperature, -5, 50)
		one.Strength = r.number(field+".strength_mpa", t.Strength, 0, 0.1, 250, "MPa")
		if one.Age > 0 && one.Strength > 0 {
			r.job.Casting.Tests = append(r.job.Casting.Tests, one)
		}
	}
}

// zones reads the parts of the shell of another thickness.
func (r *resolver) zones(list []ZoneText) {
	const heel = units.Length(60)
	for i, t := range list[:min(len(list), mostListed)] {
		field := fmt.Sprintf("shell.zones[%d]", i)
		if t.Surface == "" {
			r.missing(field+".surface", "write surface: top or heel")
			continue
		}
		z := Zone{Surface: r.word(field+".surface", t.Surface, "top", "heel")}
		if t.Thickness == "" {
			r.missing(field+".thickness", "write the zone's thickness, such as 25 mm")
			continue
		}
		var ok bool
		if z.Thickness, ok = r.length(field+".thickness", t.Thickness, 0, likelyShell); !ok {
			continue
		}
		if z.Surface == "heel" {
			z.Height, _ = r.length(field+".height", t.Height, heel, likely{5, 1500})
		}
		if slices.ContainsFunc(r.job.Casting.Zones, func(o Zone) bool { return o.Surface == z.Surface }) {
			r.say(unusual, field+".surface", "The zone %s is written twice; the first is used.", z.Surface).Remedy = "keep one of the two"
			continue
		}
		r.job.Casting.Zones = append(r.job.Casting.Zones, z)
	}
}

// history reads the room's temperatures in time: day and night, or stretches. A log is
// a file, which others open.
func (r *resolver) history() {
	t, out := r.doc.Room, &r.job.Room
	out.Log = string(t.Log)
	ways := 0
	for _, given := range []bool{t.Night != "", len(t.History) > 0, t.Log != ""} {
		if given {
			ways++
		}
	}
	if ways > 1 {
		r.say(roomTwice, "room", "The room's temperatures are stated in %d ways; a log goes before stretches, stretches before day and night.", ways)
	}
	if t.Night != "" {
		out.Night = r.warmth("room.night", t.Night, out.Temperature, -5, 50)
		out.DayHours = 12
		if t.DayHours != "" {
			out.DayHours = r.span("room.day_hours", t.DayHours, 12, 2, 23)
		}
	}
	for i, s := range t.History[:min(len(t.History), mostListed)] {
		field := fmt.Sprintf("room.history[%d]", i)
		one := Stretch{Time: r.span(field+".for", s.For, 0, 0.01, 1000), Temp: r.warmth(field+".temperature", s.Temperature, out.Temperature, -5, 50)}
		if s.Temperature == "" {
			r.missing(field+".temperature", "write the temperature of the stretch")
		}
		if one.Time > 0 {
			out.History = append(out.History, one)
		}
	}
}

var roomTwice = finding.Rule{Code: "document/room-twice", Severity: finding.Caution,
	Title: "the room's temperatures are stated once", Remedy: "keep one of log, history and night"}
