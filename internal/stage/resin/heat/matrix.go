package heat

// A Matrix is the first pour of a problem for other solvers: for cell m
//
//	Cap[m] dT/dt = sum G (T[To] - T) + Film[m] (air - T) + Heat[m] da/dt
//
// with the links Start[m] to before Start[m+1], temperatures in C.
type Matrix struct {
	Cap, Film, Heat []float64 // J/K, W/K, J
	Start, To       []int32
	G               []float64 // W/K
	TempC, Cure     []float64 // at the beginning
	NX, NY, NZ      int       // size of the whole grid
	Place           []int32   // of each cell in it: (y nz + z) nx + x
}

// Matrix writes the problem out, with the films of its beginning.
func (p *Problem) Matrix() Matrix {
	c := p.body.c
	s := newStepper(p.first, newRateTable(c.Rate, p.warmest()), c, c.Air.TempC(c.Pours[0].AtH), 1)
	airC := c.Air.TempC(c.Pours[0].AtH)
	s.begin(nil, c.Pours[0], airC)
	d := newDouble(s, Solid{}) // no least capacity
	d.films(c, airC)
	for i := range d.temp {
		d.temp[i] += s.refC
	}
	m := Matrix{TempC: d.temp, Cure: d.cure, NX: s.nx, NY: s.ny, NZ: s.nz, Place: d.place, Start: []int32{0}}
	for i := range d.cells {
		q := &d.cells[i]
		m.Cap, m.Film, m.Heat = append(m.Cap, q.cap+q.rise*(d.temp[i]-s.refC)), append(m.Film, q.film), append(m.Heat, q.heat)
		for k, g := range q.g {
			if g > 0 {
				m.To, m.G = append(m.To, q.next[k]), append(m.G, g)
			}
		}
		m.Start = append(m.Start, int32(len(m.To)))
	}
	return m
}
