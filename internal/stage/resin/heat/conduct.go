package heat

// row builds the cells of row j and their conductances to the next row.
func (w *builder) row(j int) {
	for i := range w.grid.nx {
		for k := range w.grid.nz {
			switch kind := w.kinds[w.grid.index(i, j, k)]; {
			case kind == air && !w.body.slow:
			case kind != mixed && !w.body.slow && w.surrounded(i, j, k):
				w.whole(i, j, k, kind)
			default:
				w.cell(i, j, k)
			}
		}
	}
}

// surrounded reports whether a cell lies among whole ones, and beside no air.
func (w *builder) surrounded(i, j, k int) bool {
	g := w.grid
	if i == 0 || j == 0 || i+1 == g.nx || j+1 == g.ny {
		return false
	}
	for _, at := range [4]int{g.index(i-1, j, k), g.index(i+1, j, k), g.index(i, j-1, k), g.index(i, j+1, k)} {
		if m := w.kinds[at]; m == mixed || m == air {
			return false
		}
	}
	return (k == 0 || w.kinds[g.index(i, j, k-1)] != mixed) && (k+1 == g.nz || w.kinds[g.index(i, j, k+1)] != mixed)
}

// whole builds a cell of one material among others of one material each.
func (w *builder) whole(i, j, k int, kind mat) {
	g := w.grid
	at, dz, s := g.index(i, j, k), (g.zMM[k+1]-g.zMM[k])/1000, w.solids[kind]
	area, half := g.dxM*g.dxM, dz/2/s.KWMK
	g.cap[at] = float32(area * dz * s.RhoKGM3 * s.CJKGK)
	if kind == pour {
		g.mass[at] = float32(area * dz * s.RhoKGM3)
	}
	if k == 0 || w.kinds[at-g.nx] == air {
		w.addFace(at, 0, area, half)
	}
	if k+1 == g.nz || w.kinds[at+g.nx] == air {
		w.addFace(at, 1, area, half)
	} else {
		g.gz[at] = float32(area / (half + (g.zMM[k+2]-g.zMM[k+1])/2000/w.solids[w.kinds[at+g.nx]].KWMK))
	}
	across := func(next mat) float32 { return float32(dz / (0.5/s.KWMK + 0.5/w.solids[next].KWMK)) }
	g.gx[at], g.gy[at] = across(w.kinds[at+1]), across(w.kinds[at+g.nx*g.nz])
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
			w.addFace(at, 2, w.hM*dz, w.inward(si, sj, k, -d[0], -d[1])/s.KWMK)
		}
	}
}

// inward returns how far behind the face of a square the middle of what is solid lies, m,
// within the square's cell.
func (w *builder) inward(si, sj, k, di, dj int) float64 {
	ci, cj, deep := si/w.n, sj/w.n, 0
	for ; si >= 0 && sj >= 0 && si/w.n == ci && sj/w.n == cj && !w.isAir(si, sj, k); si, sj = si+di, sj+dj {
		deep++
	}
	return float64(deep) * w.hM / 2
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
