package job

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
)

const casting = `concrete:
  mixer: 12 kg
  pack_rate: 1.2
  scale_step: 0.1 g
  patch: 2 kg
  mix_temperature: 64 F
  air_speed: 2
  drying: 9 d
  unsealed: [wall]
  scrim: {roll: 1 m, lap: 60 mm}
  strength: {demould_mpa: 12}
  tests: [{age: 24 h, strength_mpa: 14}]
room: {temperature: 20 C, night: 12 C, day_hours: 10 h}
`

func TestCasting(t *testing.T) {
	j, found := resolve(t, with("thickness: 19", "thickness: 19, zones: [{surface: top, thickness: 25}, {surface: heel, thickness: 12, height: 80}]")+casting)
	if len(found) > 0 || j == nil {
		t.Fatal(found)
	}
	c := j.Casting
	if c.Mixer != 12 || c.PackRate != 1.2 || math.Abs(float64(c.Scale)-0.0001) > 1e-12 || c.Patch != 2 || !c.HasMix || math.Abs(float64(c.MixTemp)-17.7778) > 1e-3 ||
		c.Draught != 2 || c.Drying != 9*24 || len(c.Bare) != 1 || !c.Scrim || c.Roll != 1000 || c.Lap != 60 || c.Demould != 12 || len(c.Tests) != 1 || c.Tests[0].Temperature != 20 {
		t.Errorf("%+v", c)
	}
	if len(c.Zones) != 2 || c.Zones[0] != (Zone{"top", 25, 0}) || c.Zones[1] != (Zone{"heel", 12, 80}) || j.Room.Night != 12 || j.Room.DayHours != 10 {
		t.Errorf("zones %+v, room %+v", c.Zones, j.Room)
	}
	if j, found := resolve(t, tiny); len(found) > 0 || j.Casting.Scrim || j.Casting.HasMix || j.Room.DayHours != 0 {
		t.Errorf("a document that says nothing: %+v", j.Casting)
	}
}

func TestBadCasting(t *testing.T) {
	for _, c := range []struct{ name, text, code, field, remedy string }{
		{"night in Fahrenheit", tiny + "room: {temperature: 20 C, night: 64}\n", "document/wrong-unit", "room.night", "with its unit"},
		{"mixer of grams", tiny + "concrete: {mixer: 25 g}\n", "document/wrong-unit", "concrete.mixer", "25 kg"},
		{"scale of kilograms", tiny + "concrete: {scale_step: 5 kg}\n", "document/wrong-unit", "concrete.scale_step", "0.1 g"},
		{"unknown zone", with("thickness: 19", "thickness: 19, zones: [{surface: side, thickness: 25}]"), "document/word", "shell.zones[0].surface", "top or heel"},
		{"zone without thickness", with("thickness: 19", "thickness: 19, zones: [{surface: top}]"), "document/missing", "shell.zones[0].thickness", "25 mm"},
		{"zone twice", with("thickness: 19", "thickness: 19, zones: [{surface: top, thickness: 25}, {surface: top, thickness: 22}]"), "document/unusual", "shell.zones[1].surface", "keep one"},
		{"unsealed floor", tiny + "concrete: {unsealed: [floor]}\n", "document/word", "concrete.unsealed[0]", "face or wall"},
		{"two histories", tiny + "room: {night: 12 C, history: [{for: 12 h, temperature: 18 C}]}\n", "document/room-twice", "room", "keep one"},
		{"history in Fahrenheit", tiny + "room: {history: [{for: 12 h, temperature: 68}]}\n", "document/wrong-unit", "room.history[0].temperature", "with its unit"},
		{"history without temperature", tiny + "room: {history: [{for: 12 h}]}\n", "document/missing", "room.history[0].temperature", "write"},
	} {
		_, found := resolve(t, c.text)
		hit := false
		for _, f := range found {
			hit = hit || f.Code == c.code && f.Where.Field == c.field && f.Where.Line > 0 && strings.Contains(f.Remedy, c.remedy)
		}
		if !hit {
			t.Errorf("%s: %+v", c.name, found)
		}
	}
}

func TestRoomLog(t *testing.T) {
	for _, c := range []struct {
		name, text, code string
		line, stretches  int
		first            float64
	}{
		{"hours", "hours,temp_c\n0,20\n1,22\n2,18\n", "", 0, 2, 21},
		{"times, semicolons", "time;temp\n2027-03-01 08:00;20\n2027-03-01 09:30;10\n", "", 0, 1, 15},
		{"headed Fahrenheit", "h,temp_f\n0,68\n1,68\n", "", 0, 1, 20},
		{"unit beside the number", "0,68 F\n1,68 F\n", "", 0, 1, 20},
		{"Fahrenheit by mistake", "h,temp\n0,68\n1,70\n2,66\n", "document/room-log-unit", 2, 0, 0},
		{"a gap", "0,20\n1,20\n9,16\n", "document/room-log-gap", 3, 2, 20},
		{"backwards", "0,20\n2,20\n1,20\n3,19\n", "document/room-log-order", 3, 2, 20},
		{"words", "0,20\n1,warm\n2,20\n", "document/room-log", 2, 1, 20},
		{"one column", "0\n1\n2\n", "document/room-log", 1, 0, 0},
		{"empty", "", "document/room-log", 1, 0, 0},
		{"not a number", "0,20\n1,NaN\n2,20\n", "document/room-log", 2, 1, 20},
	} {
		s, found := ParseRoomLog("room.csv", []byte(c.text))
		if len(s) != c.stretches || len(s) > 0 && math.Abs(float64(s[0].Temp)-c.first) > 1e-9 {
			t.Errorf("%s: %+v", c.name, s)
		}
		if c.code == "" && len(found) > 0 || c.code != "" && !said(found, c.code, c.line) {
			t.Errorf("%s: %+v", c.name, found)
		}
	}
}

func said(found []finding.Finding, code string, line int) bool {
	for _, f := range found {
		if f.Code == code && f.Where.Line == line && f.Where.File == "room.csv" && f.Remedy != "" {
			return true
		}
	}
	return false
}

func FuzzRoomLog(f *testing.F) {
	f.Add([]byte("hours,temp_c\n0,20\n1,22\n"))
	f.Add([]byte("2027-03-01T08:00;68 F\n2027-03-01T09:00;70\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, _ := ParseRoomLog("a", data)
		for _, x := range s {
			if !(x.Time > 0) || x.Temp != x.Temp {
				t.Errorf("%+v", x)
			}
		}
	})
}
