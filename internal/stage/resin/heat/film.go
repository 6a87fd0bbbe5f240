package heat

import "math"

// Films of a face of a small body in a room: natural convection and radiation.
//
//	up      Nu = .54 Ra^1/4 to 1e7, .15 Ra^1/3 above
//	down    Nu = .27 Ra^1/4
//	upright Churchill and Chu: (.825 + .387 Ra^1/6 / (1 + (.492/Pr)^9/16)^8/27)^2
//
// with the body's length L = area over perimeter, and a face colder than the air as its
// opposite. Source: [mcadams], [churchill-chu].
const (
	emissivity = 0.93
	stefan     = 5.670374419e-8
	prandtl    = 0.71
)

// NaturalFilm returns the film, W/m2K, of a body whose area over perimeter is lengthM, m.
// Temperatures within a hair of each other give the film of radiation and a least
// convection.
func NaturalFilm(lengthM float64) func(face int, surfaceC, airC float64) float64 {
	return func(face int, surfaceC, airC float64) float64 { return naturalFilm(lengthM, face, surfaceC, airC) }
}

func naturalFilm(lengthM float64, face int, surfaceC, airC float64) float64 {
	rise := surfaceC - airC
	mean := (surfaceC+airC)/2 + 273.15
	nu := 1.58e-5 * math.Pow(mean/300, 1.7) // m2/s
	k := 0.0263 * math.Pow(mean/300, 0.8)   // W/mK
	ra := 9.80665 / mean * math.Max(math.Abs(rise), 0.05) * math.Pow(lengthM, 3) / (nu * nu) * prandtl
	ts, ta := surfaceC+273.15, airC+273.15
	return nusseltOf(face, rise >= 0, ra, prandtl)*k/lengthM + emissivity*stefan*(ts*ts+ta*ta)*(ts+ta)
}

// nusseltOf returns the Nusselt number of a face, up 0, down 1, upright 2, that is warmer
// than the air or colder, at Rayleigh number ra.
func nusseltOf(face int, warmer bool, ra, pr float64) float64 {
	up := (face == 0) == warmer
	switch {
	case face == 2:
		return math.Pow(0.825+0.387*math.Pow(ra, 1.0/6)/math.Pow(1+math.Pow(0.492/pr, 9.0/16), 8.0/27), 2)
	case up && ra <= 1e7:
		return 0.54 * math.Pow(ra, 0.25)
	case up:
		return 0.15 * math.Cbrt(ra)
	}
	return 0.27 * math.Pow(ra, 0.25)
}

// SteadyFilm returns a film that is always h.
func SteadyFilm(h float64) func(int, float64, float64) float64 {
	return func(int, float64, float64) float64 { return h }
}

// A filmTable holds the films of three faces by how much warmer than the air a face is,
// at one temperature of the air.
type filmTable [3][filmSteps + 1]float32

const (
	coldFace  = -40.0 // K below the air
	filmWidth = 1.0   // K
	filmSteps = 300
)

func newFilmTable(air Air, airC float64) *filmTable {
	t, scale := &filmTable{}, air.Scale
	if scale == 0 {
		scale = 1
	}
	for f := range t {
		for i := range t[f] {
			t[f][i] = float32(scale * air.Film(f, airC+coldFace+filmWidth*float64(i), airC))
		}
	}
	return t
}

// at reads the film of a face warmer than the air by rise; beyond the table its ends count.
func (t *filmTable) at(face int, rise float32) float32 {
	x := (rise - coldFace) / filmWidth
	if !(x > 0) { // nor a number
		x = 0
	}
	x = min(x, filmSteps-0.01)
	i := int(x)
	return t[face][i] + (x-float32(i))*(t[face][i+1]-t[face][i])
}

// A window is a face of a cell to air, with its area, m2, the resistance from the cell's
// middle to it, m2K/W, and the conductance they make with the film, W/K. Windows of a cell
// follow one another.
type window struct {
	at         int32
	face       uint8
	more       bool // of the cell of the window before
	area, path float32
	film       float32
}

func (s *stepper) findWindows() {
	for at, c := range s.Cap {
		if c == 0 {
			continue
		}
		more := false
		for f := range 3 {
			if a := s.face[f][at]; a > 0 {
				s.windows = append(s.windows, window{at: int32(at), face: uint8(f), more: more, area: a, path: s.path[f][at]})
				more = true
			}
		}
	}
}

// films works out the conductance to air of every cell that touches it, and returns the
// greatest change of one, as a share. The face's temperature and its film are found in two
// rounds.
func (s *stepper) films(c Case, airC float64) float64 {
	table := newFilmTable(c.Air, airC)
	const chunk = 2048
	most := make([]float32, (len(s.windows)+chunk-1)/chunk)
	parallel(s.threads, len(most), func(n int) {
		from, to := n*chunk, (n+1)*chunk
		for ; from < len(s.windows) && s.windows[from].more; from++ { // the chunk before takes them
		}
		for i := from; i < len(s.windows) && (i < to || s.windows[i].more); i++ {
			most[n] = max(most[n], s.look(&s.windows[i], table, float32(s.refC-airC)))
		}
	})
	change := float32(0)
	for _, m := range most {
		change = max(change, m)
	}
	return float64(change)
}

// look works out a window anew and returns how much of itself it changes by.
func (s *stepper) look(w *window, table *filmTable, over float32) float32 {
	rise, was := s.Temp[w.at]+over, w.film
	h := table.at(int(w.face), rise)
	w.film = 0
	if h = table.at(int(w.face), rise/(1+w.path*h)); h > 0 {
		w.film = w.area / (w.path + 1/h)
	}
	if w.more {
		s.Film[w.at] += w.film
	} else {
		s.Film[w.at] = w.film
	}
	if w.film == was {
		return 0
	}
	return max(w.film-was, was-w.film) / max(w.film, was)
}
