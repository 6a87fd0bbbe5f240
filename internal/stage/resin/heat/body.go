package heat

import "math"

// A body is a case on its raster: what each square is made of, by depth.
type body struct {
	c            Case
	nx, ny       int // squares, walls included
	offX, offY   int // squares added before the case's own
	border       int // empty rows of squares before and behind
	deep, under  []float64
	wallTo       []float64 // depth of the wall in this square; 0 where there is none
	outside      []bool    // neither body nor wall
	deepestMM    float64
	underneathMM float64
	slow         bool // build every cell square by square: an oracle for the tests
}

// newBody adds the walls' squares and border rows of empty ones, and works out the
// underside: the body reaches as far as BodyMM from the hollow in every direction, and
// from the top plane.
func newBody(c Case, border int) *body {
	pad := [4]int{}
	n := int(math.Ceil(c.WallMM/c.StepMM - 1e-9))
	for _, w := range c.Walls {
		pad[w.Edge] = n
	}
	b := &body{c: c, nx: c.NX + pad[0] + pad[1], ny: c.NY + pad[2] + pad[3] + 2*border, offX: pad[0], offY: pad[2] + border, border: border}
	size := b.nx * b.ny
	b.deep, b.under, b.wallTo, b.outside = make([]float64, size), make([]float64, size), make([]float64, size), make([]bool, size)
	for j := range b.ny {
		for i := range b.nx {
			at := j*b.nx + i
			ci, cj := i-b.offX, j-b.offY
			if ci < 0 || cj < 0 || ci >= c.NX || cj >= c.NY {
				b.outside[at] = true
				continue
			}
			b.deep[at] = c.DeepMM[cj*c.NX+ci]
			b.deepestMM = max(b.deepestMM, b.deep[at])
		}
	}
	b.walls()
	b.underside()
	return b
}

// walls marks the squares that walls stand in.
func (b *body) walls() {
	for _, w := range b.c.Walls {
		for j := b.border; j < b.ny-b.border; j++ {
			for i := range b.nx {
				ci, cj := i-b.offX, j-b.offY
				edge := [4]bool{ci < 0, ci >= b.c.NX, cj < 0, cj >= b.c.NY}
				along := (float64(ci) + 0.5) * b.c.StepMM
				if w.Edge < 2 {
					along = (float64(cj) + 0.5) * b.c.StepMM
				}
				if edge[w.Edge] && along > w.FromMM && along < w.ToMM {
					at := j*b.nx + i
					b.wallTo[at], b.outside[at] = w.DeepMM, false
				}
			}
		}
	}
}

// underside dilates the hollow by a ball of BodyMM. The nearest square of a depth or
// more is the square itself or one with a shallower neighbour, so only those are spread.
func (b *body) underside() {
	for at, d := range b.deep {
		if b.wallTo[at] == 0 && !b.outside[at] {
			b.under[at] = d + b.c.BodyMM
		}
	}
	ball, r := b.ball()
	for j := range b.ny {
		for i := range b.nx {
			if d := b.deep[j*b.nx+i]; d > 0 && b.brim(i, j, d) {
				b.spread(i, j, r, d, ball)
			}
		}
	}
	for _, u := range b.under {
		b.underneathMM = max(b.underneathMM, u)
	}
}

// ball returns how far below its middle a ball of BodyMM reaches, by square, r squares
// to each side; negative where it does not.
func (b *body) ball() (ball []float64, r int) {
	r = int(math.Floor(b.c.BodyMM / b.c.StepMM))
	for dj := -r; dj <= r; dj++ {
		for di := -r; di <= r; di++ {
			d := math.Hypot(float64(di), float64(dj)) * b.c.StepMM
			down := -1.0
			if d <= b.c.BodyMM {
				down = math.Sqrt(b.c.BodyMM*b.c.BodyMM - d*d)
			}
			ball = append(ball, down)
		}
	}
	return ball, r
}

// brim reports whether a neighbour of square (i, j) is shallower than d.
func (b *body) brim(i, j int, d float64) bool {
	at := j*b.nx + i
	return i > 0 && b.deep[at-1] < d || i+1 < b.nx && b.deep[at+1] < d || j > 0 && b.deep[at-b.nx] < d || j+1 < b.ny && b.deep[at+b.nx] < d
}

// spread lowers the underside round (i, j) to a ball about its floor.
func (b *body) spread(i, j, r int, d float64, ball []float64) {
	for dj := max(-r, -j); dj <= min(r, b.ny-1-j); dj++ {
		row, line := (j+dj)*b.nx, (dj+r)*(2*r+1)+r
		for di := max(-r, -i); di <= min(r, b.nx-1-i); di++ {
			if down := ball[line+di]; down >= 0 && d+down > b.under[row+i+di] && b.under[row+i+di] > 0 {
				b.under[row+i+di] = d + down
			}
		}
	}
}
