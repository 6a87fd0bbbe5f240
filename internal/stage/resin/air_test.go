package resin

import "testing"

func TestAirOfTheRoom(t *testing.T) {
	for name, c := range map[string]struct {
		in   Input
		at   map[float64]float64
		more float64
	}{
		"always the same":       {Input{Room: 20}, map[float64]float64{0: 20, 50: 20}, 0},
		"day and night":         {Input{Room: 22, Night: 14, DayHours: 10}, map[float64]float64{0: 22, 8.5: 22, 9.5: 14, 22.5: 14, 23.5: 22, 33.5: 14}, 0},
		"logged, over and over": {Input{Room: 20, History: []Stretch{{6, 25}, {4, 15}}}, map[float64]float64{0: 25, 5: 25, 7: 15, 10.5: 25, 17: 15}, 0},
		"two warmer":            {Input{Room: 22, Night: 14, DayHours: 10}, map[float64]float64{0: 24, 12: 16}, 2},
	} {
		air := (&hearth{in: c.in}).air(c.more, firstPour)
		for hour, want := range c.at {
			if got := air(hour); got != want {
				t.Errorf("%s: %g C after %g h, want %g", name, got, hour, want)
			}
		}
	}
}
