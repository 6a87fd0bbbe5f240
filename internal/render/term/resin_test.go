package term

import (
	"strings"
	"testing"

	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/stage/relief"
	"pourwright/internal/stage/resin"
)

// TestPour holds what a maker asks first: how many lifts, when, how much, how hot.
func TestPour(t *testing.T) {
	p := &plan.Plan{}
	p.Relief.Layers = []relief.Layer{{Number: 1}}
	p.Resin.Order = 5
	p.Resin.Cure = resin.Cure{Computed: true, Peak: 41, Low: 35, High: 52, Limit: 60, Dam: 30, Rooms: []resin.RoomCase{{Room: 28, Peak: 71, Hard: 40}}}
	p.Resin.Lifts = []resin.Lift{
		{Number: 1, To: 20, Depth: 20, Pour: 2, Peak: 41, PeakAt: 6, Gels: 10, Wait: 10, BondsUntil: 22, Batches: []resin.Bucket{{Number: 1, ScaleA: 1.5, ScaleAB: 2.1}}},
		{Number: 2, From: 20, To: 40, Depth: 20, At: 12, Peak: 38, PeakAt: 7, Gels: 11, Wait: 60, Batches: []resin.Bucket{{Number: 1}, {Number: 2}}}}
	p.Calendar.Steps = []calendar.Step{{ID: "lift-1", Start: "day 2 13:00", StartH: 37}, {ID: "lift-2", Start: "day 3 09:00", StartH: 57}}
	text := report(t, p)
	for _, want := range []string{
		"2 lifts, 3 buckets, order 5.00 l; peak 41 C, likely 35 to 52 C, limit 60 C; dam face 30 C",
		"day 2 13:00", "10 to 22 h", "none; worked on after 60 h", "1.500", "2.100",
		"the calendar pours lift 2 8 h later than the cure was computed for", "71, above the limit",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the report does not say %q:\n%s", want, text)
		}
	}
	p.Resin.Lifts = p.Resin.Lifts[:1]
	p.Calendar.Steps = nil
	p.Resin.Cure.Computed = false
	if text := report(t, p); !strings.Contains(text, "1 lift, 1 bucket, order 5.00 l\n") {
		t.Errorf("one lift is not told as one:\n%s", text)
	}
}

// TestZones holds what is told of parts of a surface.
func TestZones(t *testing.T) {
	p := &plan.Plan{}
	p.Relief.Layers = []relief.Layer{{Number: 1}}
	late := resin.Moment{H: 336, Later: true}
	p.Resin.Cure = resin.Cure{Computed: true, DamLimit: 60, DamHigh: 44, Dam: 40, DamWeakest: "a faced board",
		Influences: []resin.Influence{{Name: "rate of reaction", SD: 20, Unit: "%", Peak: 4.5}}}
	p.Resin.Lifts = []resin.Lift{
		{Number: 1, Wait: 20, RecoatFrom: resin.Moment{H: 21}, RecoatUntil: late, Zones: []resin.Zone{{Name: "shallow", From: 10, To: 20, Gels: resin.Moment{H: 21}, Bonds: late, Tacky: resin.Moment{H: 30}, Hard: late, Sandable: late}}},
		{Number: 2, Wait: 60, Zones: []resin.Zone{{Name: "deep", Scuff: true}}}}
	text := report(t, p)
	for _, want := range []string{"from 21 h, past 336 h", "shallow  10 to 20", "past 336", "sand it", "dam face 40 C, in nine of ten cases below 44 C; a faced board bears 60 C", "rate of reaction, 20 % more: peak +4.5 K"} {
		if !strings.Contains(text, want) {
			t.Errorf("the report does not say %q:\n%s", want, text)
		}
	}
	if p.Resin.Lifts[0].RecoatUntil = (resin.Moment{H: 60}); !strings.Contains(report(t, p), "21 to 60 h") {
		t.Error("a window with both ends is not told")
	}
}
