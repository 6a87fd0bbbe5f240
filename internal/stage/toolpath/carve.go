package toolpath

import (
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// Carving is a height map to be carved with a ball cutter instead of cut in layers.
type Carving struct {
	Field   grid.Field   // z of the surface, 0 at the top of the stock and below it negative; form view, sheet coordinates
	Stock   units.Length // thickness
	Ball    units.Length // diameter of the ball cutter
	Scallop units.Length // height of the ridges between passes; default 0.2 mm
}
