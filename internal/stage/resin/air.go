package resin

import "math"

// morning is when a day begins, and firstPour when the first lift is poured, hours of
// the clock. Chosen.
const morning, firstPour = 8.0, 9.0

// air returns the room's temperature by the hours after the first pour, moreK warmer
// than stated: as logged, over and over; by day and night; or always the same.
func (h *hearth) air(moreK float64) func(hour float64) float64 {
	in := h.in
	total := 0.0
	for _, s := range in.History {
		total += float64(atLeastZero(s.Time))
	}
	switch room := float64(in.Room) + moreK; {
	case total > 0:
		return func(hour float64) float64 {
			t := math.Mod(math.Max(hour, 0), total)
			for _, s := range in.History {
				if t -= float64(atLeastZero(s.Time)); t < 0 {
					return float64(s.Temp) + moreK
				}
			}
			return room
		}
	case in.DayHours > 0 && in.DayHours < 24:
		night := float64(in.Night) + moreK
		return func(hour float64) float64 {
			if clock := math.Mod(hour+firstPour-morning+24, 24); clock < float64(in.DayHours) {
				return room
			}
			return night
		}
	default:
		return func(float64) float64 { return room }
	}
}
