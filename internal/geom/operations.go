package geom

// Build resolves rings that may cross, touch, nest or repeat into a region by
// rule: every point of the plane is in or out by its winding number.
func Build(rings []Ring, rule FillRule) Region { panic("geom: engine pending") }

// Union returns the points in any of rs.
func Union(rs ...Region) Region { panic("geom: engine pending") }

// Intersect returns the points in both a and b.
func Intersect(a, b Region) Region { panic("geom: engine pending") }

// Subtract returns the points in a and not in b.
func Subtract(a, b Region) Region { panic("geom: engine pending") }

// Xor returns the points in just one of a and b.
func Xor(a, b Region) Region { panic("geom: engine pending") }

// Offset returns r grown by d mm with round joins (shrunk where d is negative):
// all points within d of r, or all points of r further than -d from its outside.
// Arcs are flattened to a chord error of tol mm. Offset always from the original
// outline; chained offsets add their errors.
func Offset(r Region, d, tol float64) Region { panic("geom: engine pending") }

// Contains reports whether p is inside r or on its boundary.
func (r Region) Contains(p Point) bool { panic("geom: engine pending") }

// Distance returns the distance from p to the nearest boundary of r, mm, negative
// when p is inside r.
func (r Region) Distance(p Point) float64 { panic("geom: engine pending") }

// A Narrow is a place where a region is narrower than asked.
type Narrow struct {
	At    Point   // the middle of the narrowest place
	Width float64 // its width, mm
	Box   Box     // the extent of what a disc of the asked width cannot reach
	Whole bool    // an entire polygon of the region is too narrow, not only a neck in it
	Joins int     // how many pieces the rest falls into at this place: 2 or more is a neck, 1 a spur
}

// NarrowPlaces returns where r is narrower than width mm: what opening r with a
// disc of that diameter removes, specks under the flattening tolerance left out.
// Ordered by position.
func (r Region) NarrowPlaces(width float64) []Narrow { panic("geom: engine pending") }

// Simplify returns r with points dropped that move the boundary by at most tol mm;
// the topology stays.
func (r Region) Simplify(tol float64) Region { panic("geom: engine pending") }

// SelfCrossings returns where the sides of ring cross or overlap other than at
// shared ends, at most limit of them.
func (r Ring) SelfCrossings(limit int) []Point { panic("geom: engine pending") }

// Crossings returns where the sides of a and b properly cross, at most limit.
func Crossings(a, b Ring, limit int) []Point { panic("geom: engine pending") }
