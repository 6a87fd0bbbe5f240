package resin

import "pourwright/internal/units"

// NoValue marks a place of a map that holds no resin, or a time that does not come.
const NoValue int16 = -32768

// Fields are the cure in space and time, to be looked at: a plan and a lengthwise
// section at every hour in Hours, and maps of when things happen. Finished view, mm;
// rows run along x, from y0 up; section rows from the deepest floor up. Temperatures are
// in tenths of a degree, conversions in thousandths, times in tenths of an hour after
// the first pour. NoValue where there is none.
type Fields struct {
	X0    units.Length `json:"x0_mm"` // lower left corner of the first cell
	Y0    units.Length `json:"y0_mm"`
	Step  units.Length `json:"step_mm"`
	NX    int          `json:"nx"`
	NY    int          `json:"ny"`
	Hours []float64    `json:"hours"`

	Hottest  [][]int16      `json:"hottest_dc"`     // by hour: the warmest resin over each place
	Least    [][]int16      `json:"least_permille"` // by hour: the least conversion over each place
	SectionY units.Length   `json:"section_y_mm"`
	Levels   []units.Length `json:"levels_mm"` // borders of the section's rows, above the deepest floor
	Temp     [][]int16      `json:"section_dc"`
	Cure     [][]int16      `json:"section_permille"`

	Gel   []int16 `json:"gel_dh"`       // top surface gelled
	Bonds []int16 `json:"bonds_dh"`     // the next lift bonds until
	Tacky []int16 `json:"tack_free_dh"` // top surface no longer tacky
	Hard  []int16 `json:"hard_dh"`      // hard through the depth
	Sand  []int16 `json:"sandable_dh"`  // can be sanded dry
}
