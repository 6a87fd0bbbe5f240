package cli

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFitPrintsACardThatTheShelfTakes(t *testing.T) {
	code, out, errOut := call(t, "shelf", "fit", examples+"resin-sheet.yaml")
	if code != exitFine || !strings.Contains(out, "pot life") || !strings.Contains(out, "peaks at") {
		t.Fatalf("exit %d\n%s%s", code, out, errOut)
	}
	_, card, found := strings.Cut(out, "# for a shelf of your own\n")
	if !found {
		t.Fatal("no card is printed")
	}
	own := filepath.Join(t.TempDir(), "own.yaml")
	card = "origin: typical\nsource: chosen\n" + strings.Replace(card, "resins:\n", "resins:\n", 1)
	card = strings.ReplaceAll(card, "    glass_transition", "    density: {value: 1090 kg/m3}\n    density_a: {value: 1120 kg/m3}\n    density_b: {value: 980 kg/m3}\n    ratio: {value: \"2:1\"}\n    min_depth: {value: 10 mm}\n    max_depth: {value: 50 mm}\n    glass_transition")
	if err := os.WriteFile(own, []byte(card), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, out, errOut := call(t, "shelf", "basin resin, invented", "--shelf", own); code != exitFine {
		t.Errorf("the shelf refuses the card: exit %d, %s%s\n%s", code, out, errOut, card)
	}
}

func TestFitSaysWhatIsWrong(t *testing.T) {
	dir := t.TempDir()
	for name, c := range map[string]struct{ sheet, csv, says string }{
		"unknown field":       {"pot_lif: 3 h\n", "", "did you mean pot_life"},
		"too little":          {"density: 1100\n", "", "too little"},
		"no number":           {"pot_life: soon\n", "", "pot_life"},
		"gel before pot life": {"pot_life: 5 h\ngel: 2 h\n", "", "before the end"},
		"minutes as hours":    {"pot_life: 300 h\n", "", "outside"},
		"gone":                {"pot_life: 3 h\ntest_pour: none.csv\n", "", "no such file"},
		"outside the folder":  {"pot_life: 3 h\ntest_pour: ../x.csv\n", "", "x.csv"},
		"words":               {"pot_life: 3 h\ntest_pour: t.csv\ntest_depth: 40 mm\n", "hours,C\n0,22\nx,23\n", "t.csv:3"},
		"backwards":           {"pot_life: 3 h\ntest_pour: t.csv\ntest_depth: 40 mm\n", "0,22\n2,23\n1,24\n", "t.csv:3"},
		"kelvin":              {"pot_life: 3 h\ntest_pour: t.csv\ntest_depth: 40 mm\n", "0,295\n1,330\n", "t.csv:2"},
		"few readings":        {"pot_life: 3 h\ntest_pour: t.csv\ntest_depth: 40 mm\n", "0,22\n1,23\n2,24\n", "3 readings"},
		"no depth":            {"pot_life: 3 h\ntest_pour: t.csv\n", "0,22\n1,23\n2,24\n3,25\n4,26\n", "depth"},
	} {
		sheet := filepath.Join(dir, "s.yaml")
		_ = os.WriteFile(sheet, []byte(c.sheet), 0o600)
		if c.csv != "" {
			_ = os.WriteFile(filepath.Join(dir, "t.csv"), []byte(c.csv), 0o600)
		}
		if code, _, errOut := call(t, "shelf", "fit", sheet); code != exitError || !strings.Contains(errOut, c.says) {
			t.Errorf("%s: exit %d, %s", name, code, errOut)
		}
	}
}

// TestFitDoubtsContradictions: a pot life of minutes, a rated depth of 100 mm and a film of
// a week are no one resin, and the sheet says so.
func TestFitDoubtsContradictions(t *testing.T) {
	sheet := filepath.Join(t.TempDir(), "s.yaml")
	_ = os.WriteFile(sheet, []byte("pot_life: 20 min\nrated_depth: 100 mm\nfilm_set: 200 h\n"), 0o600)
	code, out, _ := call(t, "shelf", "fit", sheet)
	if code != exitFine || !strings.Contains(out, "doubt: pot life contradicts") || !strings.Contains(out, "do not pour by this card") {
		t.Errorf("exit %d\n%s", code, out)
	}
}

func TestReadingsInFahrenheit(t *testing.T) {
	rs, err := readReadings("x", strings.NewReader("hours,temp_f\n0,68\n1,86\n"))
	if err != nil || len(rs) != 2 || rs[0].Temp != 20 || rs[1].Temp != 30 {
		t.Errorf("%v, %v", rs, err)
	}
}

func FuzzReadings(f *testing.F) {
	f.Add("hours,C\n0,22\n1,23.5\n")
	f.Add("0;22\n\"")
	f.Add("1e9,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		rs, err := readReadings("x", strings.NewReader(text))
		if err != nil {
			return
		}
		for i := 1; i < len(rs); i++ {
			if !(rs[i].At > rs[i-1].At) {
				t.Errorf("%v", rs)
			}
		}
	})
}
