package material

import (
	"errors"
	"strings"
	"testing"
)

// TestRouters holds the shelf's routers to what a program needs, and a hand saw to
// having none of it.
func TestRouters(t *testing.T) {
	s := ownShelfOf(t)
	for _, name := range []string{"small bed router", "large bed router"} {
		m := s.Machines[name]
		for field, known := range map[string]bool{"cutter": m.Cutter.Known(), "flute": m.Flute.Known(), "feed": m.Feed.Known(), "plunge": m.Plunge.Known(),
			"pass_down": m.PassDown.Known(), "max_feed": m.MaxFeed.Known(), "rapid": m.Rapid.Known(), "safe_height": m.SafeHeight.Known(),
			"overcut": m.Overcut.Known(), "acceleration_mm_s2": m.Acceleration.Known(), "ramp_angle": m.RampAngle.Known(), "ball": m.Ball.Known()} {
			if !known {
				t.Errorf("%s states no %s", name, field)
			}
		}
		if !m.Router() || m.Feed.Value > m.MaxFeed.Value || m.Plunge.Value > m.Feed.Value || m.Overcut.Value > m.SafeHeight.Value {
			t.Errorf("%s: feeds %v, %v, %v", name, m.Plunge.Value, m.Feed.Value, m.MaxFeed.Value)
		}
	}
	if s.Machines["hand saw"].Router() {
		t.Error("a hand saw runs programs")
	}
}

func TestMachineCard(t *testing.T) {
	s, err := Read("s.yaml", []byte(`origin: measured
machines:
  mine: {like: small bed router, units: in, direction: conventional, spindle: "yes", spindle_rpm: {value: 12000}, feed: {value: 60 in/min},
    ramp_angle: {value: 5 deg}, tabs: {value: 0}, arc_tolerance: {value: 0.02 mm}}
`), ownShelfOf(t))
	if err != nil {
		t.Fatal(err)
	}
	m := s.Machines["mine"]
	if m.Units != "in" || m.Direction != "conventional" || m.Spindle != "yes" || m.SpindleRPM.Value != 12000 || m.Feed.Value != 1524 ||
		m.RampAngle.Value != 5 || !m.Tabs.Known() || m.Tabs.Value != 0 || m.ArcTolerance.Value != 0.02 || m.Cutter.Value != 6 {
		t.Errorf("got %+v", m)
	}
	_, err = Read("s.yaml", []byte("origin: measured\nmachines:\n  mine: {like: small bed router, direction: up, safe_height: {value: 5 m}}\n"), ownShelfOf(t))
	var e *Error
	if !errors.As(err, &e) || len(e.Findings) != 2 || !strings.Contains(err.Error(), "s.yaml:3") {
		t.Errorf("got %v", err)
	}
}
