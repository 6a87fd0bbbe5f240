package resin

import "math"

// morning is when a day begins, and firstPour when the first lift is poured where nothing
// else is planned, hours of the clock. Chosen.
const morning, firstPour = 8.0, 9.0

// clockOf returns the hour of the clock at which the first of pours is poured.
func clockOf(pours []Pour) float64 {
	if len(pours) > 0 && pours[0].Clock > 0 {
		return math.Mod(float64(pours[0].Clock), 24)
	}
	return firstPour
}

// usual returns the temperature that the room is spoken of by: the mean of a log, else
// the one stated.
func (h *hearth) usual() float64 {
	sum, total := 0.0, 0.0
	for _, s := range h.in.History {
		t := float64(atLeastZero(s.Time))
		sum, total = sum+t*float64(s.Temp), total+t
	}
	if total > 0 && known(sum) {
		return sum / total
	}
	return float64(h.in.Room)
}

// air returns the room's temperature by the hours after the first pour at clock, moreK
// warmer than stated: as logged, over and over; by day and night; or always the same.
func (h *hearth) air(moreK, clock float64) func(hour float64) float64 {
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
			if math.Mod(hour+clock-morning+24, 24) < float64(in.DayHours) {
				return room
			}
			return night
		}
	default:
		return func(float64) float64 { return room }
	}
}
