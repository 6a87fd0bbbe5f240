package resin

import (
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func TestDamAndFoamAreHeldToWhatTheyBear(t *testing.T) {
	parts := []Part{{"board", 80}, {"tape", 70}, {"release", 65}}
	for _, c := range []struct {
		name           string
		dam, high      units.Temperature
		foam, foamHigh units.Temperature
		code           string
		severity       finding.Severity
		got, limit     float64
	}{
		{"cool", 40, 50, 30, 40, "", finding.Note, 0, 0},
		{"one time in ten", 60, 70, 30, 40, "resin/dam-too-hot", finding.Note, 70, 65},
		{"one time in ten by far", 60, 90, 30, 40, "resin/dam-too-hot", finding.Caution, 90, 65},
		{"as planned", 70, 75, 30, 40, "resin/dam-too-hot", finding.Caution, 70, 65},
		{"by far", 85, 95, 30, 40, "resin/dam-too-hot", finding.Stop, 85, 65},
		{"foam as planned", 40, 50, 72, 80, "resin/foam-too-hot", finding.Caution, 72, 70},
		{"foam by far", 40, 50, 90, 99, "resin/foam-too-hot", finding.Stop, 90, 70},
	} {
		k := &computer{in: Input{DamParts: parts, Dams: []Dam{{Side: view.Left, Depth: 20}, {Side: view.Right, Depth: 60}}, FoamLeft: true, Foam: Part{"EPS", 74}}}
		k.contact(Cure{Dam: c.dam, DamHigh: c.high, Foam: c.foam, FoamHigh: c.foamHigh})
		if c.code == "" {
			if len(k.found) > 0 {
				t.Errorf("%s: %v", c.name, k.found)
			}
			continue
		}
		if len(k.found) != 1 || k.found[0].Code != c.code || k.found[0].Severity != c.severity || k.found[0].Got != c.got || k.found[0].Limit != c.limit || k.found[0].Remedy == "" {
			t.Errorf("%s: %+v", c.name, k.found)
		}
	}
}

func TestWeakestPart(t *testing.T) {
	if p := (&computer{}).damPart(); p != bareEdge {
		t.Errorf("nothing stated: %+v", p)
	}
	c := &computer{in: Input{DamParts: []Part{{"a", 90}, {"b", 0}, {"c", 75}}, Foam: Part{"slow foam", 60}}}
	if g := c.guard(); g.Dam != 75 || g.Foam != 60 || g.Peak != usualLimit {
		t.Errorf("guard %+v", g)
	}
	c.in.Foam.Most = 90 // no foam bears more in contact than polystyrene
	if g := c.guard(); g.Foam != 70 {
		t.Errorf("foam bears %g", g.Foam)
	}
}
