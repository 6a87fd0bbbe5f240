package job

import (
	"strings"
	"testing"
)

// with returns the tiny document with old replaced by new.
func with(old, new string) string {
	if !strings.Contains(tiny, old) {
		panic("not in the tiny document: " + old)
	}
	return strings.Replace(tiny, old, new, 1)
}

// bad are documents with one fault each, and what must be said of it.
var bad = []struct {
	name, text   string
	code         string
	line         int
	field        string
	remedy       string
	nothingDrawn bool // no job comes of it
}{
	{"empty", "", "document/syntax", 1, "", "name, box, shell", true},
	{"open quote", "name: 'Tray\nbox: 1\n", "document/syntax", 1, "", "correct the line", true},
	{"tab", "name: a\nbox:\n\tlength: 3\n", "document/syntax", 3, "", "not tabs", true},
	{"a list", "- name: a\n", "document/shape", 1, "", "examples", true},
	{"two documents", tiny + "---\nname: b\n", "document/not-plain", 6, "", "one document", true},
	{"anchor", "name: &a Tray\n" + tiny[len("name: Tray\n"):], "document/not-plain", 1, "name", "write the value out", false},
	{"deep", tiny + "notes: " + strings.Repeat("[", 100), "document/too-large", 5, "", "a page or two", true},
	{"unknown field", tiny + "foarm: {measured: 24}\n", "document/unknown-field", 5, "foarm", "did you mean", false},
	{"unknown inner field", with("height: 200", "hieght: 200, height: 200"), "document/unknown-field", 2, "box.hieght", "did you mean height?", false},
	{"twice", tiny + "name: Other\n", "document/repeated-field", 5, "name", "keep one", false},
	{"newer form", "pourwright: 2\n" + tiny, "document/form", 1, "pourwright", "pourwright: 1", false},
	{"no name", with("name: Tray", "client: c"), "document/missing", 1, "name", "write name:", false},
	{"no box", with("box: {length: 600, width: 300, height: 200}\n", ""), "document/missing", 1, "box.length", "write box:", true},
	{"no height", with(", height: 200", ""), "document/missing", 2, "box.height", "write box:", true},
	{"no shell", with("shell: {thickness: 19}\n", ""), "document/missing", 1, "shell.thickness", "for example 19 mm", false},
	{"inches read as mm", with("length: 600", "length: 34.9"), "document/wrong-unit", 2, "box.length", "did you mean 34.9 in = 886 mm or 34.9 cm = 349 mm?", true},
	{"mm read as inches", "units: in\n" + with("length: 600, width: 300, height: 200", "length: 600, width: 12, height: 8"), "document/wrong-unit", 3, "box.length", "did you mean 600 mm", false},
	{"metres", with("width: 300", "width: 300 m"), "document/wrong-unit", 2, "box.width", "300 mm", true},
	{"negative", with("width: 300", "width: -300"), "document/not-positive", 2, "box.width", "between 80.0 mm and 3000 mm", true},
	{"zero", with("height: 200", "height: 0"), "document/not-positive", 2, "box.height", "between", true},
	{"power of ten", with("length: 600", "length: 1e400"), "document/unreadable", 2, "box.length", "write the number out", true},
	{"not a number", with("length: 600", "length: .nan"), "document/unreadable", 2, "box.length", "such as", true},
	{"thousands", with("length: 600", "length: \"1,200\""), "document/unreadable", 2, "box.length", "1200 or 1.200", true},
	{"a mass", with("length: 600", "length: 5 kg"), "document/unreadable", 2, "box.length", "such as", true},
	{"fraction of a millimetre", with("thickness: 19", "thickness: 3/4"), "document/wrong-unit", 3, "shell.thickness", "did you mean 3/4 in = 19 mm", false},
	{"shell of inches", with("thickness: 19", "thickness: 0.75"), "document/wrong-unit", 3, "shell.thickness", "0.75 in = 19 mm", false},
	{"no room left under the shell", with("height: 200", "height: 40"), "document/basin-too-deep", 4, "basin.steps", "shallower", false},
	{"shell thicker than the piece", strings.Replace(with("height: 200", "height: 35"), "thickness: 19", "thickness: 40", 1), "document/shell-too-thick", 3, "shell", "thinner", true},
	{"coats do not add up", with("thickness: 19", "thickness: 19, coats: [{thickness: 4}, {thickness: 12}]"), "document/coat-sum", 3, "shell.thickness", "change the coats", false},
	{"coat without thickness", with("thickness: 19", "coats: [{thickness: 4}, {name: backer}]"), "document/missing", 3, "shell.coats[1].thickness", "coat's thickness", false},
	{"mixes swapped", with("thickness: 19", "coats: [{thickness: 4, mix: backer}, {thickness: 12}]"), "document/coat-mix", 3, "shell.coats[0].mix", "face mix", false},
	{"unknown mix", with("thickness: 19", "coats: [{thickness: 4, mix: facemix}, {thickness: 12}]"), "document/not-on-shelf", 3, "shell.coats[0].mix", "did you mean face mix?", false},
	{"basin too deep", with("{outline: water}", "{outline: water, depth: 190}"), "document/basin-too-deep", 4, "basin.steps", "piece higher", false},
	{"negative step", with("{outline: water}", "{outline: water, depth: -5}"), "document/not-positive", 4, "basin.steps[0].depth", "between", false},
	{"step in metres", with("{outline: water}", "{outline: water, depth: 25 m}"), "document/wrong-unit", 4, "basin.steps[0].depth", "25 mm", false},
	{"step without outline", with("{outline: water}", "{depth: 25}"), "document/step-outline", 4, "basin.steps[0].outline", "id of a closed outline", false},
	{"no steps", with(", steps: [{outline: water}]", ""), "document/missing", 4, "basin.steps", "write steps:", false},
	{"no drawing", with("drawing: tray.svg, ", ""), "document/basin-source", 4, "basin", "height_map:", false},
	{"two sources", with("drawing: tray.svg", "drawing: tray.svg, height_map: a.png"), "document/basin-source", 4, "basin.height_map", "keep one", false},
	{"drawing elsewhere", with("tray.svg", "../tray.svg"), "document/basin-source", 4, "basin.drawing", "beside the document", false},
	{"drawing of another kind", with("tray.svg", "tray.docx"), "document/basin-source", 4, "basin.drawing", "SVG file", false},
	{"map without depth", with("drawing: tray.svg, steps: [{outline: water}]", "height_map: a.png"), "document/missing", 4, "basin.map.depth", "write map:", false},
	{"place", with("drawing: tray.svg", "drawing: tray.svg, place: center-left"), "document/word", 4, "basin.place", "page or centre", false},
	{"place of three", with("drawing: tray.svg", "drawing: tray.svg, place: [1, 2, 3]"), "document/word", 4, "basin.place", "[x, y]", false},
	{"resolution", with("drawing: tray.svg", "drawing: tray.svg, resolution: 0"), "document/wrong-unit", 4, "basin.resolution", "96, 90 or 72", false},
	{"units", "units: inch\n" + tiny, "document/word", 1, "units", "did you mean in?", false},
	{"foam in inches", tiny + "foam: {measured: 0.97}\n", "document/wrong-unit", 5, "foam.measured", "0.97 in = 25 mm", false},
	{"foam far from its label", tiny + "foam: {measured: 30}\n", "document/measured-far", 5, "foam.measured", "measure again", false},
	{"unknown foam", tiny + "foam: {material: EPS25}\n", "document/not-on-shelf", 5, "foam.material", "did you mean EPS 25?", false},
	{"kerf", tiny + "form: {kerf: 32}\n", "document/wrong-unit", 5, "form.kerf", "expected between", false},
	{"board", tiny + "form: {measured: 23}\n", "document/measured-far", 5, "form.measured", "measure again", false},
	{"small sheet", tiny + "form: {sheet: {length: 500, width: 500}}\n", "document/sheet-small", 5, "form", "larger sheet", false},
	{"corner", tiny + "form: {corner: miter}\n", "document/word", 5, "form.corner", "did you mean mitre?", false},
	{"tub of a cup", tiny + "concrete: {tub: 20 ml}\n", "document/wrong-unit", 5, "concrete.tub", "did you mean 20 l?", false},
	{"which gallon", tiny + "concrete: {tub: 5 gal}\n", "document/unreadable", 5, "concrete.tub", "US gal", false},
	{"freeboard above one", tiny + "concrete: {freeboard: 30}\n", "document/share", 5, "concrete.freeboard", "did you mean 30 %?", false},
	{"freeboard of all", tiny + "resin: {freeboard: 100 %}\n", "document/share", 5, "resin.freeboard", "from 0 % to", false},
	{"half a helper", tiny + "concrete: {people: 1.5}\n", "document/unreadable", 5, "concrete.people", "whole number", false},
	{"resin too deep a pour for the basin", tiny + "resin: {min_depth: 40 mm}\n", "document/resin-depth", 5, "resin", "holds the depth", false},
	{"resin too shallow", with("{outline: water}", "{outline: water, depth: 60}") + "resin: {material: coat resin 3-6 mm}\n", "document/resin-lifts", 5, "resin", "deeper lifts", false},
	{"resin range upside down", tiny + "resin: {min_depth: 60 mm}\n", "shelf/range", 5, "resin.min_depth", "swap", false},
	{"A and B swapped", tiny + "resin: {ratio: \"1:2\"}\n", "document/ratio", 5, "resin.ratio", "before parts of B", false},
	{"mass taken for volume", tiny + "resin: {ratio: \"100:43.8\"}\n", "document/ratio", 5, "resin.ratio", "ratio_mass", false},
	{"volume taken for mass", tiny + "resin: {ratio_mass: \"2:1\"}\n", "document/ratio", 5, "resin.ratio_mass", "the field ratio holds", false},
	{"ratios that disagree", tiny + "resin: {ratio: \"2:1\", ratio_mass: \"100:50\"}\n", "document/ratio", 5, "resin.ratio_mass", "both densities", false},
	{"no ratio", tiny + "resin: {ratio: two to one}\n", "shelf/value", 5, "resin.ratio", "such as 2:1", false},
	{"densities swapped", tiny + "resin: {density_a: 990 kg/m3, density_b: 1130 kg/m3}\n", "document/unusual", 5, "resin.density_b", "swapped", false},
	{"density in g/cm3 without unit", tiny + "resin: {density_a: 1.13}\n", "shelf/absurd", 5, "resin.density_a", "its unit", false},
	{"time without unit", tiny + "resin: {pot_life: 45}\n", "shelf/value", 5, "resin.pot_life", "unit too", false},
	{"density of lead", tiny + "resin: {density: 11.3 g/cm3}\n", "shelf/absurd", 5, "resin.density", "check the number", false},
	{"unknown resin", tiny + "resin: {material: deep pour 50mm}\n", "document/not-on-shelf", 5, "resin.material", "did you mean deep pour 50 mm?", false},
	{"Fahrenheit", tiny + "room: {temperature: 68}\n", "document/wrong-unit", 5, "room.temperature", "did you mean 68 F = 20 C?", false},
	{"cold room", tiny + "room: {temperature: 3 C}\n", "document/unusual", 5, "room.temperature", "between 8 and 32", false},
	{"humidity", tiny + "room: {humidity: 55}\n", "document/share", 5, "room.humidity", "55 %", false},
	{"no such day", tiny + "shop: {start: 2027-02-30}\n", "document/date", 5, "shop.start", "YYYY-MM-DD", false},
	{"day the other way round", tiny + "shop: {start: 1.3.2027}\n", "document/date", 5, "shop.start", "2027-03-01", false},
	{"hours backwards", tiny + "shop: {hours: {mon: 17:00-8:00}}\n", "document/hours", 5, "shop.hours.mon", "8:00-17:00", false},
	{"hours overlap", tiny + "shop: {hours: {tue: [8:00-12:00, 11:00-17:00]}}\n", "document/hours", 5, "shop.hours.tue", "8:00-17:00", false},
	{"hours of no clock", tiny + "shop: {hours: {wed: 8:00-25:00}}\n", "document/hours", 5, "shop.hours.wed", "8:00-17:00", false},
	{"never open", tiny + "shop: {hours: {mon: closed}}\n", "document/hours", 5, "shop.hours", "8:00-17:00", false},
	{"day off that is none", tiny + "shop: {closed: [2027-03-08, Easter]}\n", "document/day-off", 5, "shop.closed[1]", "2027-03-08 to 2027-03-12", false},
	{"days off backwards", tiny + "shop: {closed: 2027-03-12 to 2027-03-08}\n", "document/day-off", 5, "shop.closed", "2027-03-08 to 2027-03-12", false},
	{"years off", tiny + "shop: {closed: 2027-03-12 to 2097-03-08}\n", "document/day-off", 5, "shop.closed", "2027-03-08 to 2027-03-12", false},
	{"person without a name", tiny + "shop: {people: [{away: 2027-03-08}]}\n", "document/missing", 5, "shop.people[0].name", "write what this person is called", false},
	{"person never there", tiny + "shop: {people: [{name: a, hours: {mon: closed}}]}\n", "document/hours", 5, "shop.people[0].hours", "8:00-17:00", false},
	{"two of one name", tiny + "shop: {people: [{name: a}, {name: a}]}\n", "document/same-name", 5, "shop.people[1].name", "call one of them", false},
	{"a crowd", tiny + "shop: {people: [{name: a}, {name: b}, {name: c}, {name: d}, {name: e}, {name: f}, {name: g}]}\n", "document/people", 5, "shop.people[6]", "list those who work", false},
	{"unknown weekday", tiny + "shop: {hours: {monday: 8-17, tue: 8-17}}\n", "document/unknown-field", 5, "shop.hours.monday", "did you mean mon?", false},
	{"unknown machine", tiny + "machine: smal bed router\n", "document/not-on-shelf", 5, "machine", "did you mean small bed router?", false},
	{"support without length", tiny + "supports: [{name: bar, tube: square tube 25 x 2}]\n", "document/missing", 5, "supports[0].length", "length of one", false},
	{"extra without mass", tiny + "extras: [{name: base}]\n", "document/missing", 5, "extras[0].mass", "write the mass", false},
	{"heavy extra", tiny + "extras: [{name: base, mass: 14 t}]\n", "document/wrong-unit", 5, "extras[0].mass", "its unit", false},
	{"card like nothing", tiny + "materials:\n  resins:\n    mine: {like: deep poor 50 mm}\n", "shelf/missing", 7, "materials.resins.mine.like", "did you mean deep pour 50 mm?", false},
	{"card with a bad range", tiny + "materials:\n  boards:\n    MDF 18: {thickness: {value: 18 mm, range: [19 mm, 20 mm]}}\n", "shelf/range", 7, "materials.boards.MDF 18.thickness.range", "around the value", false},
	{"card without values", tiny + "materials:\n  boards:\n    mine: {thickness: 18 mm}\n", "shelf/missing", 7, "materials.boards.mine.length", "like:", false},
	{"mix with an unknown role", tiny + "materials:\n  mixes:\n    backer: {ingredients: [{name: x, role: cemnt, parts: 1, sg: 3}]}\n", "shelf/word", 7, "materials.mixes.backer.ingredients[0].role", "did you mean cement?", false},
}

func TestBadDocuments(t *testing.T) {
	if len(bad) < 60 {
		t.Fatalf("only %d bad documents", len(bad))
	}
	for _, c := range bad {
		t.Run(c.name, func(t *testing.T) {
			j, found := resolve(t, c.text)
			if (j == nil) != c.nothingDrawn {
				t.Errorf("job %v", j)
			}
			for _, f := range found {
				if f.Code == c.code && f.Where.Line == c.line && f.Where.Field == c.field && strings.Contains(f.Remedy, c.remedy) {
					return
				}
			}
			t.Errorf("want %s at line %d, field %q, remedy with %q; got:", c.code, c.line, c.field, c.remedy)
			for _, f := range found {
				t.Errorf("  %s %s: %s -> %s", f.Code, f.Where, f.Text, f.Remedy)
			}
		})
	}
}

// TestAllAtOnce holds that one document full of faults gets all of them said.
func TestAllAtOnce(t *testing.T) {
	_, found := resolve(t, "name: a\nunits: feet\nbox: {length: 34.9, width: -1, height: x}\nshell: {thickness: 500}\nbasin: {drawing: a.doc, steps: [{depth: 0}]}\nroom: {temperature: 68}\nshop: {start: soon}\nfom: 1\n")
	codes := map[string]bool{}
	for _, f := range found {
		codes[f.Where.Field] = true
	}
	for _, field := range []string{"units", "box.length", "box.width", "box.height", "shell.thickness", "basin.drawing", "basin.steps[0].depth", "room.temperature", "shop.start", "fom"} {
		if !codes[field] {
			t.Errorf("nothing said of %s: %v", field, found)
		}
	}
}
