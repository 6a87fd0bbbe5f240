package heat

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
