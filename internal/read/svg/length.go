package svg

import (
	"fmt"
	"math"
	"strings"
)

// An axis says what a percentage is of.
type axis int

const (
	alongX axis = iota
	alongY
	diagonal // of the root mean square of width and height: radii
)

// A viewport is what percentages refer to, user units.
type viewport struct{ w, h float64 }

// Source: [w3c-svg2] section 8.9.
func (v viewport) of(a axis) float64 {
	switch a {
	case alongX:
		return v.w
	case alongY:
		return v.h
	}
	return math.Sqrt((v.w*v.w + v.h*v.h) / 2)
}

// A quantity is a number with the unit it was written with.
type quantity struct {
	value float64
	unit  string // "" for user units; "%"
}

// mmPer holds the physical units, mm. Source: [w3c-css-values] section 6.2.
var mmPer = map[string]float64{
	"mm": 1, "cm": 10, "q": 0.25, "in": mmPerInch, "pt": mmPerInch / 72, "pc": mmPerInch / 6,
}

// parseQuantity reads a length of a known unit.
func parseQuantity(text string) (quantity, error) {
	s := scanner{s: strings.TrimSpace(text)}
	v, err := s.number()
	if err != nil {
		return quantity{}, err
	}
	unit := strings.ToLower(strings.TrimSpace(s.s[s.i:]))
	if _, physical := mmPer[unit]; !physical && unit != "" && unit != "px" && unit != "%" {
		return quantity{}, fmt.Errorf("the unit %q is not known", clip(unit))
	}
	return quantity{v, unit}, nil
}

// physical reports whether q has a unit that a ruler knows.
func (q quantity) physical() bool { return mmPer[q.unit] > 0 }

// mm returns q on paper, mm; percentages are not allowed.
func (q quantity) mm(mmPerPx float64) float64 {
	if k := mmPer[q.unit]; k > 0 {
		return q.value * k
	}
	return q.value * mmPerPx
}

// user returns q in user units.
func (q quantity) user(mmPerPx float64, v viewport, a axis) float64 {
	if q.unit == "%" {
		return q.value / 100 * v.of(a)
	}
	if k := mmPer[q.unit]; k > 0 {
		return q.value * k / mmPerPx
	}
	return q.value
}
