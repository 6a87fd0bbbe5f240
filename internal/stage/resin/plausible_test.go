package resin

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
)

func TestUnlikelyCures(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Input)
		code   string
	}{
		"usual":             {func(in *Input) {}, ""},
		"heat":              {func(in *Input) { in.Card.Heat.Value = 780 }, "resin/unlikely-cure"},
		"little heat":       {func(in *Input) { in.Card.Heat.Value = 40 }, "resin/unlikely-cure"},
		"glass":             {func(in *Input) { in.Card.Tg1.Value = 10 }, "resin/unlikely-cure"},
		"fast":              {func(in *Input) { in.Card.K25.Value = 0.5 }, "resin/unlikely-cure"},
		"slow":              {func(in *Input) { in.Card.K25.Value = 1e-7 }, "resin/unlikely-cure"},
		"another pot life":  {func(in *Input) { in.Card.PotLife.Value = 0.4 }, "resin/rate-and-pot-life"},
		"no pot life":       {func(in *Input) { in.Card.PotLife.Value = 0 }, ""},
		"no rate, no check": {func(in *Input) { in.Card.K25.Value = 0 }, ""},
	} {
		in := shore(t, "deep pour 50 mm", 20)
		c.change(&in)
		k := &computer{in: in}
		k.checkCure()
		if codes := codesOf(k.found); c.code == "" && codes != "" || !strings.Contains(codes, c.code) {
			t.Errorf("%s: found %q, want %q", name, codes, c.code)
		}
	}
}

// TestBucketKeeps: without losses the pot life is a little shorter than the film's.
func TestBucketKeeps(t *testing.T) {
	m := kinetics.Typical(3.255e-5, 280e3, 52)
	film := m.FilmTime(potCure, 25) / 3600
	got := float64(keeps(m, 25))
	if got > film || got < film/2 {
		t.Errorf("keeps %.2f h, a film takes %.2f", got, film)
	}
	hot := float64(keeps(m, 35))
	if r := got / hot; math.Abs(r-2.05) > 0.15 {
		t.Errorf("ten degrees more shorten it %.2f times, usual 2.05", r)
	}
	if stirred(0) != stirLeast || stirred(100) != stirLongest || stirred(2) <= stirred(1) {
		t.Error("stirring")
	}
}

func TestStickMarks(t *testing.T) {
	in := basin(FillPoint{20, 1}, FillPoint{70, 8})
	r, _ := Compute(in)
	lifts, before := 0, Mark{}
	for i, m := range r.Stick {
		if i > 0 && (m.Height <= before.Height || m.Volume < before.Volume) {
			t.Errorf("mark %+v after %+v", m, before)
		}
		if math.Abs(float64(m.Height+m.Below-70)) > 1e-9 {
			t.Errorf("mark %+v in a basin of 70 mm", m)
		}
		if m.Lift > 0 {
			lifts++
			if l := r.Lifts[m.Lift-1]; l.To != m.Height {
				t.Errorf("mark %+v of lift %+v", m, l)
			}
		}
		before = m
	}
	if last := r.Stick[len(r.Stick)-1]; last.Height != 70 || last.Volume != 8 || lifts != len(r.Lifts) {
		t.Errorf("last mark %+v, %d of %d lifts", last, lifts, len(r.Lifts))
	}
	held := units.Volume(0)
	for _, l := range r.Lifts {
		held += l.HoldBack
	}
	if n := len(r.Lifts); r.Lifts[n-1].HoldBack <= 0 || held != r.Lifts[n-1].HoldBack {
		t.Errorf("held back %v", held)
	}
}
