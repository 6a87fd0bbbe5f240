package cli

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pourwright/internal/plan"
)

// A vat is an invented piece whose basin is one step in another, running off to the right
// where open.
type vat struct {
	length, width, height float64
	outer, inner          float64 // depths
	open                  bool
	resin, room, more     string
}

// write writes the piece into a folder of its own and returns its document.
func (v vat) write(t *testing.T) string {
	t.Helper()
	right := v.length - 50
	if v.open {
		right = v.length + 3
	}
	box := func(id string, x, y, x2, y2 float64) string {
		return fmt.Sprintf(`<rect id="%s" x="%g" y="%g" width="%g" height="%g"/>`, id, x, y, x2-x, y2-y)
	}
	drawing := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">`, v.length, v.width, v.length, v.width) +
		box("a", 50, 50, right, v.width-50) + box("b", 150, 90, right-map[bool]float64{false: 100}[v.open], v.width-90) + "</svg>"
	doc := fmt.Sprintf("pourwright: 1\nname: Vat\nbox: {length: %g, width: %g, height: %g}\nshell: {thickness: 19}\nbasin:\n  drawing: d.svg\n  place: page\n  steps:\n    - {name: outer, outline: a, depth: %g}\n    - {name: inner, outline: b, depth: %g}\nresin:\n  bucket: 4 l\n%sroom: {%s}\n%s",
		v.length, v.width, v.height, v.outer, v.inner, v.resin, v.room, v.more)
	dir := t.TempDir()
	for name, text := range map[string]string{"piece.yaml": doc, "d.svg": drawing} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "piece.yaml")
}

// planOf computes a piece by the command line and reads what it prints.
func planOf(t *testing.T, file string) *plan.Plan {
	t.Helper()
	_, out, errOut := call(t, "plan", file, "--json")
	p := &plan.Plan{}
	if err := json.Unmarshal([]byte(out), p); err != nil {
		t.Fatalf("%v: %s", err, errOut)
	}
	return p
}

func says(p *plan.Plan, code string) bool {
	for _, f := range p.Findings {
		if f.Code == code && f.Text != "" && f.Remedy != "" {
			return true
		}
	}
	return false
}

// TestPourAddsUp holds the sums of a pour that the maker lives by.
func TestPourAddsUp(t *testing.T) {
	for name, v := range map[string]vat{
		"two steps":    {600, 320, 200, 25, 30, false, "  degas_pot: 8 l\n  tint: {colour: '#1e5f74'}\n", "temperature: 21 C", ""},
		"runs off":     {500, 300, 160, 12, 28, true, "  material: 'deep pour 64 mm, warm'\n  reserve: 8 %\n", "temperature: 23 C", ""},
		"by mass":      {400, 260, 120, 15, 10, true, "  material: cast resin 25 mm\n  ratio_mass: 100:41\n", "temperature: 19 C", ""},
		"another card": {400, 260, 120, 15, 20, false, "  overfill: 2\n", "temperature: 22 C", ""},
	} {
		p := planOf(t, v.write(t))
		r := p.Resin
		near := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-6*(1+math.Abs(want)) {
				t.Errorf("%s: %s %g, want %g", name, what, got, want)
			}
		}
		basin := v.outer*(v.length-50-map[bool]float64{false: 50}[v.open])*(v.width-100)/1e6 + v.inner*(v.length-150-map[bool]float64{false: 150}[v.open])*(v.width-180)/1e6
		if math.Abs(float64(r.Volume)-basin) > 0.002*basin {
			t.Errorf("%s: the basin holds %.3f l, by hand %.3f", name, r.Volume, basin)
		}
		near("order", float64(r.Order), float64(r.Volume+r.Shrink+r.Overfill+r.Film+r.Reserve))
		poured, a, b := 0.0, 0.0, 0.0
		density := float64(r.OrderKG) / float64(r.Order)
		for _, l := range r.Lifts {
			poured += float64(l.Pour)
			lift := 0.0
			for _, k := range l.Batches {
				lift += float64(k.Volume)
				a, b = a+float64(k.A), b+float64(k.B)
				near("scale", float64(k.ScaleAB), float64(k.A+k.B))
				near("bucket kg", float64(k.ScaleAB), float64(k.Volume)*density)
				near("B to A", float64(k.B)/float64(k.A)*100, r.AToB)
				if float64(k.Volume) > 4*0.6+1e-9 || k.Free < 0.4-1e-9 || k.Stir <= 0 || k.Keeps <= 0 {
					t.Errorf("%s: bucket %+v of 4 l, 40 %% free", name, k)
				}
				if d := r.Degas; d != nil && float64(k.Volume)/float64(k.Pulls) > float64(d.Pot)/d.Rise+1e-9 {
					t.Errorf("%s: bucket %+v in a pot of %g l", name, k, d.Pot)
				}
			}
			near("buckets of a lift", lift, float64(l.Pour))
		}
		near("pours and reserve", poured+float64(r.Reserve), float64(r.Order))
		near("A and B", a+b, poured*density)
		near("stick", float64(r.Stick[len(r.Stick)-1].Volume), float64(r.Volume))
		kits(t, name, p)
	}
}

// kits holds what is bought, in whole packages, against the order.
func kits(t *testing.T, name string, p *plan.Plan) {
	t.Helper()
	for _, l := range p.Cost.Lines {
		if !strings.Contains(l.Name, "A and B together") {
			continue
		}
		bought := 0.0
		for _, k := range l.Buy {
			bought += float64(k.Count) * k.Size
		}
		if bought < float64(p.Resin.Order)-1e-9 || bought == 0 {
			t.Errorf("%s: %.2f l of resin bought for an order of %.2f", name, bought, p.Resin.Order)
		}
		return
	}
	t.Errorf("%s: no resin on the shopping list", name)
}

// TestEveryTimeIsTold: for every lift and zone, in a cold room too.
func TestEveryTimeIsTold(t *testing.T) {
	p := planOf(t, vat{500, 300, 160, 12, 28, true, "", "temperature: 13 C", ""}.write(t))
	for _, l := range p.Resin.Lifts {
		if l.RecoatFrom.H <= 0 || l.RecoatUntil.H <= 0 || l.TackFree.H <= 0 || l.Hard.H <= 0 || l.Sandable.H <= 0 || len(l.Zones) == 0 {
			t.Errorf("lift %d: %+v", l.Number, l)
		}
	}
	k := p.Resin.Cure
	if len(k.Rooms) != 3 || len(k.Influences) != 6 || k.Error.Wide != 2*k.Error.Grid || k.DamLimit <= 0 || k.DamWeakest == "" || len(k.Zones) == 0 || k.Members < 10 || k.Members > 30 {
		t.Errorf("%+v", k)
	}
	if !says(p, "resin/room") || !says(p, "resin/not-sandable") {
		t.Error("a cold room is not spoken of")
	}
}

// TestHotDamIsToldOf: the whole depth at once in a dam that the maker lined.
func TestHotDamIsToldOf(t *testing.T) {
	p := planOf(t, vat{560, 320, 200, 12, 52, true, "  material: 'deep pour 64 mm, warm'\n  lifts: [{depth: 64}]\n", "temperature: 25 C", "form: {dam: {liner: PVC tape, board: film-faced plywood 18, release: PVA release}}\n"}.write(t))
	k := p.Resin.Cure
	if k.DamWeakest != "PVA release" || k.DamLimit != 70 || k.Dam <= 70 || !says(p, "resin/dam-too-hot") || !says(p, "form/dam-hot") {
		t.Errorf("dam %.0f C of %s, which bears %.0f C", k.Dam, k.DamWeakest, k.DamLimit)
	}
	if d := p.Form.Dams[0]; strings.Contains(d.Board, "particleboard") {
		t.Errorf("dam of %s with %s", d.Board, d.Liner)
	}
	planned := planOf(t, vat{560, 320, 200, 12, 52, true, "  material: 'deep pour 64 mm, warm'\n", "temperature: 25 C", ""}.write(t))
	if k := planned.Resin.Cure; k.Dam > k.DamLimit || says(planned, "form/dam-hot") || len(planned.Resin.Lifts) < 2 {
		t.Errorf("planned: %d lifts, dam %.0f C of %.0f", len(planned.Resin.Lifts), k.Dam, k.DamLimit)
	}
}

func TestBadResinsAreSpokenOf(t *testing.T) {
	card := "materials:\n  resins:\n    mine: {like: deep pour 50 mm, %s}\n"
	v := vat{400, 260, 120, 15, 20, false, "  material: mine\n", "temperature: 20 C", ""}
	for code, fields := range map[string]string{
		"resin/unlikely-cure":     "heat_kj_kg: 750",
		"resin/rate-and-pot-life": "pot_life: 20 min",
		"resin/too-shallow":       "min_depth: 40 mm",
		"shelf/absurd":            "rate_25_per_s: 90",
	} {
		v.more = fmt.Sprintf(card, fields)
		if p := planOf(t, v.write(t)); !says(p, code) {
			var codes []string
			for _, f := range p.Findings {
				codes = append(codes, f.Code)
			}
			t.Errorf("%s: want %s, found %v", fields, code, codes)
		}
	}
	v.more = "materials:\n  resins:\n    mine: {density: 1100 kg/m3, density_a: 1130 kg/m3, density_b: 990 kg/m3, ratio: '2:1', min_depth: 10 mm, max_depth: 40 mm}\n"
	if p := planOf(t, v.write(t)); !says(p, "resin/cure-not-computed") || p.Resin.Cure.Computed {
		t.Error("a card without a rate is not spoken of")
	}
}
