package rs274

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Limits of what is read. Chosen: far above any program of a shop, and small enough
// that a strange file cannot fill the memory.
const (
	MaxBytes    = 64 << 20  // of a file
	MaxLines    = 4_000_000 // of a file
	MaxColumns  = 256       // of a line; the language's own limit [rs274ngc] section 2.1
	MaxFindings = 50        // reported; reading goes on silently after that
)

// A Program is what a file says.
type Program struct {
	Moves    []Move     // in the order of their execution
	Lines    int        // of the file, up to its end
	Units    string     // mm, in, or "mixed"; "" if no line says
	Spindle  bool       // there is an M3 or M4
	Stops    []Stop     // lines at which the machine waits for the maker
	Tools    []int      // numbers of T words that a tool change put in, in order
	Dwell    float64    // s, of all dwells
	Ended    bool       // by M2, M30 or a second percent line
	Unstated []string   // modes that decide what the file means and that it did not state before it moved
	Refused  int        // lines left out for a fault, so that Moves is not all the file does
	Coords   []string   // coordinate systems it moves in: G54 ...
	Comments []TextLine // in the order of the file, the first 200

	semicolons int
}

// A TextLine is a comment.
type TextLine struct {
	Line int
	Text string
}

// A Stop is a line at which the machine waits.
type Stop struct {
	Line int    `json:"line"`
	Word string `json:"word"` // M0, M1, M6, M60
}

// A Kind is what sort of move it is.
type Kind int

// The kinds of move.
const (
	Rapid  Kind = iota // as fast as the machine goes; not always in a straight line
	Feed               // straight, cutting
	Circle             // round, cutting; also a helix
)

// A Plane is the plane of an arc.
type Plane int

// The planes; each is named by its axes, the first then turning to the second
// counter-clockwise as seen from the end of the third.
const (
	XY Plane = iota
	ZX
	YZ
)

// Axes returns the indices of the two axes in the plane and of the one normal to it.
func (p Plane) Axes() (a, b, n int) {
	switch p {
	case ZX:
		return 2, 0, 1
	case YZ:
		return 1, 2, 0
	}
	return 0, 1, 2
}

// A Vec is a place in space, mm.
type Vec [3]float64

// XY returns the place seen from above.
func (v Vec) XY() geom.Point { return geom.Point{X: v[0], Y: v[1]} }

// A Move goes from one place to another in the program's coordinates, mm.
type Move struct {
	Line     int // of the file, from 1
	Kind     Kind
	From, To Vec
	Feed     float64 // mm/min along the path; 0 of a rapid move
	Plane    Plane   // of an arc
	Centre   Vec     // of an arc; its coordinate normal to the plane is that of From
	Turn     float64 // of an arc, radians, counter-clockwise positive in its plane
	Spindle  bool    // turning
}

// Radius returns the radius of an arc, mm, the mean of those at its two ends.
func (m Move) Radius() float64 {
	a, b, _ := m.Plane.Axes()
	at := func(v Vec) float64 { return math.Hypot(v[a]-m.Centre[a], v[b]-m.Centre[b]) }
	return (at(m.From) + at(m.To)) / 2
}

// Length returns the length of the path in space, mm; of a helix
//
//	sqrt((r turn)^2 + rise^2)
func (m Move) Length() float64 {
	if m.Kind != Circle {
		return math.Hypot(math.Hypot(m.To[0]-m.From[0], m.To[1]-m.From[1]), m.To[2]-m.From[2])
	}
	_, _, n := m.Plane.Axes()
	return math.Hypot(m.Radius()*m.Turn, m.To[n]-m.From[n])
}

// At returns the place on the path at share t of its length, 0 to 1. Its radius goes
// evenly from that of the start to that of the end.
func (m Move) At(t float64) Vec {
	switch {
	case t <= 0:
		return m.From
	case t >= 1:
		return m.To
	case m.Kind == Circle:
		return m.round(t)
	}
	out := m.From
	for i := range out {
		out[i] += t * (m.To[i] - m.From[i])
	}
	return out
}

func (m Move) round(t float64) Vec {
	a, b, n := m.Plane.Axes()
	u, v := m.From[a]-m.Centre[a], m.From[b]-m.Centre[b]
	r0, r1 := math.Hypot(u, v), math.Hypot(m.To[a]-m.Centre[a], m.To[b]-m.Centre[b])
	sin, cos := math.Sincos(m.Turn * t)
	k := 1.0
	if r0 > 0 {
		k = (r0 + t*(r1-r0)) / r0
	}
	var out Vec
	out[a] = m.Centre[a] + k*(u*cos-v*sin)
	out[b] = m.Centre[b] + k*(u*sin+v*cos)
	out[n] = m.From[n] + t*(m.To[n]-m.From[n])
	return out
}

// Chords returns points along the path from its start to its end whose chords err by
// tol mm at most; a straight move has its two ends. No arc has more than 4096.
func (m Move) Chords(tol float64) []Vec {
	if m.Kind != Circle {
		return []Vec{m.From, m.To}
	}
	n := 1.0
	if r := m.Radius(); tol < r {
		n = math.Ceil(math.Abs(m.Turn) / (2 * math.Acos(1-tol/r)))
	}
	n = math.Max(n, math.Ceil(math.Abs(m.Turn)/(math.Pi/2)))
	count := int(math.Max(1, math.Min(4096, n)))
	out := make([]Vec, 0, count+1)
	for i := range count + 1 {
		out = append(out, m.At(float64(i)/float64(count)))
	}
	return out
}

// A Rates says how fast the machine is where the file does not.
type Rates struct{ Rapid units.Speed }

// Minutes returns the time of all moves at their stated speeds, without the time the
// machine takes to speed up and slow down, so never longer than the real one.
func (p Program) Minutes(r Rates) units.Duration {
	sum := p.Dwell / 60
	for _, m := range p.Moves {
		switch {
		case m.Kind == Rapid && r.Rapid > 0:
			sum += m.Length() / float64(r.Rapid)
		case m.Kind != Rapid && m.Feed > 0:
			sum += m.Length() / m.Feed
		}
	}
	return units.Duration(sum / 60)
}

// Read reads the text of a program; name is its file's, for the places of findings.
// A line at fault is left out, counted and reported, and reading goes on after it. It
// never fails: what cannot be read is a finding of severity Stop.
func Read(name, text string) (Program, []finding.Finding) {
	r := reader{name: name}
	r.file(text)
	return r.program, r.found
}
