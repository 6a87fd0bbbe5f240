package heat

import "math"

// A builder homogenises squares into cells.
type builder struct {
	*body
	*grid
	n      int     // squares along a cell
	topMM  float64 // of the filling, below the top plane
	hM     float64 // side of a square, m
	solids [5]Solid
	mats   []mat     // [square][layer]
	share  []float32 // of the layer that the material fills, only below 1 where the underside cuts it
}

// fill works out what each square is made of at each layer.
func (w *builder) fill() {
	nz := w.grid.nz
	w.mats, w.share = make([]mat, len(w.deep)*nz), make([]float32, len(w.deep)*nz)
	for s := range w.deep {
		if w.outside[s] {
			continue
		}
		for k := range nz {
			m, f := w.at(s, w.zMM[k], w.zMM[k+1])
			w.mats[s*nz+k], w.share[s*nz+k] = m, float32(f)
		}
	}
}

const hair = 1e-6 // mm

// at returns what fills square s from z0 to z1, and how much of that height.
func (w *builder) at(s int, z0, z1 float64) (mat, float64) {
	if to := w.wallTo[s]; to > 0 {
		if z1 <= to+hair || (z0+z1)/2 < to {
			return wall, 1
		}
		return air, 0
	}
	deep, under := w.deep[s], w.under[s]
	switch {
	case z1 <= deep+hair && z0 >= w.topMM-hair:
		return pour, 1
	case z1 <= deep+hair:
		return air, 0
	case z0 >= under-hair:
		if w.c.Below != nil {
			return below, 1
		}
		return air, 0
	}
	if f := (math.Min(z1, under) - z0) / (z1 - z0); f < 1-1e-9 {
		if w.c.Below != nil {
			return solidBody, 1 // the rest is as good as full: what is below touches it
		}
		if f < 0.25 {
			return air, 0
		}
		return solidBody, f
	}
	return solidBody, 1
}

// get returns the material of square (i, j) at layer k; air outside the raster.
func (w *builder) get(i, j, k int) (mat, float64) {
	if i < 0 || j < 0 || i >= w.body.nx || j >= w.body.ny {
		return air, 0
	}
	at := (j*w.body.nx+i)*w.grid.nz + k
	return w.mats[at], float64(w.share[at])
}

// row builds the cells of row j and their conductances to the next row.
func (w *builder) row(j int) {
	for i := range w.grid.nx {
		for k := range w.grid.nz {
			w.cell(i, j, k)
		}
	}
}

func (w *builder) cell(i, j, k int) {
	g := w.grid
	at, dz := g.index(i, j, k), (g.zMM[k+1]-g.zMM[k])/1000
	area := w.hM * w.hM
	for sj := j * w.n; sj < (j+1)*w.n; sj++ {
		for si := i * w.n; si < (i+1)*w.n; si++ {
			m, f := w.get(si, sj, k)
			if m == air {
				continue
			}
			s := w.solids[m]
			vol := area * dz * f
			g.cap[at] += float32(vol * s.RhoKGM3 * s.CJKGK)
			if m == pour {
				g.mass[at] += float32(vol * s.RhoKGM3)
			}
			w.upright(at, si, sj, k, m, f)
			w.sides(at, si, sj, k, s, dz*f)
		}
	}
	if i+1 < g.nx {
		g.gx[at] = float32(w.along(i, j, k, dz, true))
	}
	if j+1 < g.ny {
		g.gy[at] = float32(w.along(i, j, k, dz, false))
	}
}

// upright adds the paths of a square up to air, down to air, and down to the next layer.
func (w *builder) upright(at, si, sj, k int, m mat, f float64) {
	g, area := w.grid, w.hM*w.hM
	half := f * (g.zMM[k+1] - g.zMM[k]) / 2000 / w.solids[m].KWMK
	if k == 0 || w.isAir(si, sj, k-1) {
		w.addFace(at, 0, area, half)
	}
	if k+1 == g.nz || w.isAir(si, sj, k+1) {
		w.addFace(at, 1, area, half)
		return
	}
	m2, f2 := w.get(si, sj, k+1)
	half2 := f2 * (g.zMM[k+2] - g.zMM[k+1]) / 2000 / w.solids[m2].KWMK
	g.gz[at] += float32(area / (half + half2))
}

func (w *builder) isAir(si, sj, k int) bool { m, _ := w.get(si, sj, k); return m == air }

// addFace adds an area to air, with the mean of the paths by area.
func (w *builder) addFace(at, face int, area, path float64) {
	g := w.grid
	a, p := float64(g.face[face][at]), float64(g.path[face][at])
	g.path[face][at] = float32((a*p + area*path) / (a + area))
	g.face[face][at] = float32(a + area)
}

// sides adds the upright faces of a square to air; beyond the raster is air.
func (w *builder) sides(at, si, sj, k int, s Solid, dz float64) {
	for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		if w.isAir(si+d[0], sj+d[1], k) {
			w.addFace(at, 2, w.hM*dz, w.grid.dxM/4/s.KWMK)
		}
	}
}

// along returns the conductance from the middle of a cell to that of the next one along
// x or y: for each row of squares the resistances in series, the rows side by side. A
// row with air in it carries nothing.
func (w *builder) along(i, j, k int, dz float64, x bool) float64 {
	g, n := 0.0, w.n
	for row := range n {
		r, least := 0.0, 1.0
		for step := range n + 1 - (n+1)%2 { // from the middle of one cell to that of the next
			share := 1.0
			if n%2 == 1 && (step == 0 || step == n) {
				share = 0.5
			}
			si, sj := i*n+n/2+step, j*n+row
			if !x {
				si, sj = i*n+row, j*n+n/2+step
			}
			m, f := w.get(si, sj, k)
			if m == air {
				least = 0
				break
			}
			least = min(least, f)
			r += share * w.hM / w.solids[m].KWMK
		}
		if least > 0 {
			g += w.hM * dz * least / r
		}
	}
	return g
}

// contacts lists poured cells beside a wall, and body cells on what is below.
func (w *builder) contacts() {
	g := w.grid
	for j := range g.ny {
		for k := range g.nz {
			for i := range g.nx {
				at := g.index(i, j, k)
				if g.mass[at] > 0 {
					w.touches(at, i, j, k)
				}
				if w.c.Below != nil && k+1 < g.nz && w.middle(i, j, k) == solidBody && w.middle(i, j, k+1) == below {
					g.toBelow = append(g.toBelow, int32(at))
				}
			}
		}
	}
}

func (w *builder) middle(i, j, k int) mat {
	m, _ := w.get(i*w.n+w.n/2, j*w.n+w.n/2, k)
	return m
}

func (w *builder) touches(at, i, j, k int) {
	g := w.grid
	for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		ii, jj := i+d[0], j+d[1]
		if ii < 0 || jj < 0 || ii >= g.nx || jj >= g.ny || w.middle(ii, jj, k) != wall {
			continue
		}
		kp, kw := w.c.Pour.KWMK, w.c.Wall.KWMK
		g.toWall = append(g.toWall, contact{int32(at), int32(g.index(ii, jj, k)), float32(kp / (kp + kw))})
	}
}
