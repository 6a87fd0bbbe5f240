package saw

import "math"

// ticksPerMM makes micrometres and 64ths of an inch whole: 1/64 in = 12700 ticks.
const ticksPerMM = 32000

// mostMM is the longest stock: areas in ticks stay well inside 63 bits.
const mostMM = 30000

// up turns a piece's size into ticks, down a stock's: to the nearest tick, so
// that eight pieces of an eighth fill the whole.
func ticks(mm float64) int64 { return int64(math.Round(mm * ticksPerMM)) }

func mm(t int64) float64 { return float64(t) / ticksPerMM }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
