package concrete
import "pourwright/internal/units"
func ul(x float64) units.Length { return units.Length(x) }
