package resin

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// lagoon is an invented basin 1000 x 400 mm of three steps of 24 mm, its mouth to the
// right, poured with a typical deep resin.
func lagoon(t *testing.T, card string) Input {
	t.Helper()
	shelf, err := material.Default()
	if err != nil {
		t.Fatal(err)
	}
	c, missing := shelf.Resin(card)
	if missing != nil {
		t.Fatal("no card")
	}
	in := Input{Card: c, Bucket: 10, Freeboard: 0.4, Room: 20, Length: 1000, Width: 400, Shell: 19, Board: 18, TopArea: 0, Gap: 3}
	step := func(from, to units.Length, r geom.Region) {
		in.Basin = append(in.Basin, Layer{from, to, view.Of[view.Finished](r)})
	}
	step(0, 24, rect(60, 60, 1000, 340))
	step(24, 48, rect(200, 100, 1000, 300))
	step(48, 72, rect(400, 130, 1000, 270))
	in.Dams = []Dam{{Side: view.Right, From: 60, Width: 280, Depth: 72}}
	v, d := units.Volume(0), units.Length(0)
	for i := len(in.Basin) - 1; i >= 0; i-- {
		l := in.Basin[i]
		d += l.To - l.From
		v += units.Area(l.Region.Area()).Times(l.To - l.From)
		in.Fill = append(in.Fill, FillPoint{d, v})
	}
	for i := range 5 {
		in.Hours[i] = []Span{{8, 17}}
	}
	return in
}

// shore is an invented basin 560 x 320 mm, 64 mm deep in its middle and 12 mm round it,
// that runs off to the right, poured at once.
func shore(t *testing.T, card string, room units.Temperature) Input {
	in := lagoon(t, card)
	in.Room, in.Pouring, in.Length, in.Width, in.Basin, in.Fill = room, room, 560, 320, nil, nil
	wide, deep := rect(40, 40, 560, 280), rect(200, 80, 560, 240)
	in.Basin = []Layer{{0, 12, view.Of[view.Finished](wide)}, {12, 64, view.Of[view.Finished](deep)}}
	in.Dams = []Dam{{Side: view.Right, From: 40, Width: 240, Depth: 64}}
	v := units.Area(deep.Area()).Times(52)
	in.Fill = []FillPoint{{52, v}, {64, v + units.Area(wide.Area()).Times(12)}}
	in.Own = []OwnLift{{Depth: 64}}
	return in
}

// firth is an invented basin 1220 x 410 mm whose channel of 64 mm, 180 mm wide, runs off
// to the right between shores of 38 and 12 mm.
func firth(t *testing.T, card string, room units.Temperature) Input {
	in := lagoon(t, card)
	in.Room, in.Pouring, in.Length, in.Width, in.Basin, in.Fill = room, room, 1220, 410, nil, nil
	v, d := units.Volume(0), units.Length(0)
	for _, l := range []struct {
		from, to units.Length
		r        geom.Region
	}{{0, 12, rect(40, 40, 1220, 370)}, {12, 38, rect(250, 90, 1220, 330)}, {38, 64, rect(500, 120, 1220, 300)}} {
		in.Basin = append(in.Basin, Layer{l.from, l.to, view.Of[view.Finished](l.r)})
	}
	for i := len(in.Basin) - 1; i >= 0; i-- {
		l := in.Basin[i]
		d += l.To - l.From
		v += units.Area(l.Region.Area()).Times(l.To - l.From)
		in.Fill = append(in.Fill, FillPoint{d, v})
	}
	in.Dams = []Dam{{Side: view.Right, From: 40, Width: 330, Depth: 64}}
	in.Own = []OwnLift{{Depth: 64}}
	return in
}

// TestDeepHardShallowSoft reproduces what casters know of lively deep resins at 20 to 23
// C in a section 64 mm deep: common practice, no source. After half a day the deep part
// is hard, 10 to 15 mm of shallows are soft, and the dam at the deepest end is hot. An
// independent computation gave peaks of 83 to 119 C at 4 to 7 h, a dam of 64 to 86 C, the
// deep part hard at 9 to 11 h, and shallows cured to .41 to .52 after 12 h; peaks and
// dam are held to it with 6 K. Half of the channel is hard at 11 h at 23 C here, and at
// 20 C only at 14.6 h.
func TestDeepHardShallowSoft(t *testing.T) {
	for room, half := range map[units.Temperature]units.Duration{20: 16, 23: 12} {
		in := firth(t, "deep pour 64 mm, warm", room)
		o, why := newOven(in)
		if o == nil {
			t.Fatal(why)
		}
		out, err := o.fine(context.Background(), []Pour{{To: 64}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		if len(out.Zones) != 3 {
			t.Fatalf("zones %+v", out.Zones)
		}
		deep, shallow := out.Zones[0], out.Zones[2]
		soft := cureAt(out.Fields, 12, 150, 200)
		t.Logf("room %.0f C: peak %.0f C at %.1f h, dam %.0f C, half of the channel hard at %.1f h, all at %.1f h; shallows %.2f cured at 12 h, hard at %.1f h",
			room, out.Peak, out.PeakAt, out.Dam, deep.HalfHard.H, deep.Hard.H, soft, shallow.Hard.H)
		if out.Peak < 83-6 || out.Peak > 119+6 || out.PeakAt < 4 || out.PeakAt > 7 {
			t.Errorf("room %.0f C: peak %.0f C at %.1f h", room, out.Peak, out.PeakAt)
		}
		if out.Dam < 64-6 || out.Dam > 86+6 {
			t.Errorf("room %.0f C: the dam's face gets %.0f C", room, out.Dam)
		}
		if deep.HalfHard.Later || deep.HalfHard.H > half || shallow.HalfHard.H < 24 {
			t.Errorf("room %.0f C: half of the channel hard at %.1f h, of the shallows at %.1f h", room, deep.HalfHard.H, shallow.HalfHard.H)
		}
		if soft < 0.41-0.03 || soft > 0.52+0.03 {
			t.Errorf("room %.0f C: shallows cured to %.2f after 12 h", room, soft)
		}
		if len(out.Soft) == 0 {
			t.Errorf("room %.0f C: no soft place is named", room)
		}
	}
}

// cureAt reads the least conversion at an hour over a place, mm.
func cureAt(f *Fields, hour, x, y float64) float64 {
	best := 0
	for i, h := range f.Hours {
		if math.Abs(h-hour) < math.Abs(f.Hours[best]-hour) {
			best = i
		}
	}
	i, j := int((x-f.X0.MM())/f.Step.MM()), int((y-f.Y0.MM())/f.Step.MM())
	return float64(f.Least[best][j*f.NX+i]) / 1000
}

// TestPlannerTamesTheBasin: what boils at once is poured in lifts that do not, and a
// hotter day changes the plan.
func TestPlannerTamesTheBasin(t *testing.T) {
	at := map[units.Temperature]Result{}
	for _, room := range []units.Temperature{20, 30} {
		in := shore(t, "deep pour 64 mm, warm", room)
		once, found := Run(context.Background(), in, nil)
		if worst, any := finding.Worst(found); !any || worst == finding.Note {
			t.Errorf("room %.0f C: poured at once to %.0f C and only notes", room, once.Cure.Peak)
		}
		in.Own = nil
		r, found := Run(context.Background(), in, nil)
		at[room] = r
		if !r.Cure.Computed || r.Cure.Peak > r.Cure.Limit || len(r.Lifts) < 2 {
			t.Errorf("room %.0f C: %d lifts peak at %.0f C: %v", room, len(r.Lifts), r.Cure.Peak, codesOf(found))
		}
		if r.Cure.Low > r.Cure.Peak || r.Cure.High < r.Cure.Peak || r.Cure.Members < 10 || r.Cure.Members > 30 || len(r.Cure.Rooms) != 3 {
			t.Errorf("band %.1f to %.1f about %.1f", r.Cure.Low, r.Cure.High, r.Cure.Peak)
		}
		if r.Cure.Error.Energy > 1e-3 || r.Cure.Error.Off > 2 {
			t.Errorf("numerics %+v", r.Cure.Error)
		}
		for i, l := range r.Lifts[:len(r.Lifts)-1] {
			if next := r.Lifts[i+1]; next.At-l.At < l.Gels-1e-9 {
				t.Errorf("lift %d is poured before lift %d has gelled", next.Number, l.Number)
			}
		}
	}
	cool, hot := at[20], at[30]
	if len(cool.Lifts) == len(hot.Lifts) && cool.Lifts[1].At == hot.Lifts[1].At {
		t.Errorf("ten degrees more change nothing: %d lifts, next at %.1f h", len(hot.Lifts), hot.Lifts[1].At)
	}
}

func TestCureIsStoppedAndTold(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	in := shore(t, "deep pour 50 mm", 20)
	in.Own = nil
	told := 0
	r, _ := Run(ctx, in, func(share float64, doing string) {
		if share < 0 || share > 1 || doing == "" {
			t.Errorf("share %g, %q", share, doing)
		}
		if told++; told == 2 {
			cancel()
		}
	})
	if r.Cure.Computed || r.Fields != nil {
		t.Error("a stopped cure is shown as computed")
	}
}

func TestWithoutRatesNothingIsMadeUp(t *testing.T) {
	in := shore(t, "deep pour 50 mm", 20)
	in.Card.K25.Value = 0
	r, found := Run(context.Background(), in, nil)
	if r.Cure.Computed || !strings.Contains(codesOf(found), "resin/cure-not-computed") || len(r.Lifts) == 0 {
		t.Errorf("%+v, %s", r.Cure, codesOf(found))
	}
}

// TestOwnLiftsTooEarly: a maker's own lifts that come before the ones below have gelled are
// told of in numbers, and all of it can be written down.
func TestOwnLiftsTooEarly(t *testing.T) {
	in := shore(t, "deep pour 50 mm", 18)
	in.Own = []OwnLift{{Depth: 20}, {Depth: 20, After: 1}, {Depth: 24, After: 3}}
	r, found := Run(context.Background(), in, nil)
	if !strings.Contains(codesOf(found), "resin/too-early") || len(r.Lifts) != 3 {
		t.Errorf("%d lifts, %s", len(r.Lifts), codesOf(found))
	}
	if _, err := json.Marshal([]any{r, found}); err != nil {
		t.Error(err)
	}
}

// TestColdLiftsAreTakenAsSettled: leaving out lifts that are days old changes little.
func TestColdLiftsAreTakenAsSettled(t *testing.T) {
	in := shore(t, "deep pour 50 mm", 20)
	o, _ := newOven(in)
	h := o.(*hearth)
	pours := []Pour{{To: 15}, {From: 15, To: 30, At: 30}, {From: 30, To: 45, At: 60}, {From: 45, To: 64, At: 160}}
	short, err := h.forecast(context.Background(), pours)
	if err != nil {
		t.Fatal(err)
	}
	r, err := h.quick(context.Background(), pours, asPlanned, pours[3].At+runOn)
	if err != nil {
		t.Fatal(err)
	}
	whole := h.tell(r, pours, pours[3].At+runOn)
	a, b := short.Lifts[3], whole.Lifts[3]
	if !math.IsInf(float64(short.Lifts[0].Peak), -1) || len(short.Lifts) != 4 {
		t.Errorf("lifts %+v", short.Lifts)
	}
	if math.Abs(float64(a.Peak-b.Peak)) > 0.3 || math.Abs(float64(a.Gels-b.Gels)) > 0.3 || math.Abs(float64(a.Tacky-b.Tacky)) > 0.3 {
		t.Errorf("last lift %.2f C, gels at %.2f h; with all lifts %.2f C, %.2f h", a.Peak, a.Gels, b.Peak, b.Gels)
	}
	if j := joined(whole, short); j.Peak < whole.Peak || math.IsInf(float64(j.Lifts[0].Peak), -1) {
		t.Errorf("joined %+v", j)
	}
}
