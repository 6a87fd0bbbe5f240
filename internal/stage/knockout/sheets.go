package knockout

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const (
	slackMM   = 0.3 // Chosen: how far a layer may miss a whole number of sheets; caulk and sanding take it up
	maxSheets = 100 // Chosen: more than this in one layer is a slip of units
)

// sheetsFor returns how many sheets of foam make the layer's thickness.
func sheetsFor(l Layer, foam units.Length) (int, []finding.Finding) {
	if !(foam > 0) || !(l.Depth > 0) || math.IsInf(float64(l.Depth), 0) {
		return 1, nil
	}
	if l.Depth > maxSheets*foam {
		return maxSheets, []finding.Finding{thickness.At(finding.Where{Element: l.Name},
			"Layer %d is %.1f mm deep and the foam %.3f mm thick: more than %d sheets.", l.Number, l.Depth, foam, maxSheets).
			Measured(float64(l.Depth), float64(maxSheets*foam), "mm").Do("Check the unit of the foam's thickness.")}
	}
	n := math.Max(1, math.Round(float64(l.Depth/foam)))
	miss := float64(l.Depth) - n*float64(foam)
	if math.Abs(miss) <= slackMM {
		return int(n), nil
	}
	up := math.Ceil(float64(l.Depth/foam) - 1e-9)
	return int(up), []finding.Finding{thickness.At(finding.Where{Element: l.Name},
		"Layer %d is %.1f mm deep and the foam is %.1f mm by caliper: %.0f x %.1f mm miss it by %+.1f mm.", l.Number, l.Depth, foam, n, foam, -miss).
		Measured(float64(l.Depth), n*float64(foam), "mm").
		Do("Make the step %.1f mm deep, or thin %.0f x %.1f mm down to %.1f mm.", n*float64(foam), up, foam, l.Depth)}
}
