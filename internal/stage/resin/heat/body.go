package heat

import "math"

// A body is a case on its raster: what each square is made of, by depth.
type body struct {
	c            Case
	nx, ny       int // squares, walls included
	offX, offY   int // squares added before the case's own
	deep, under  []float64
	wallTo       []float64 // depth of the wall in this square; 0 where there is none
	outside      []bool    // neither body nor wall
	deepestMM    float64
	underneathMM float64
}

// newBody adds the walls' squares and works out the underside: the body reaches as far
// as BodyMM from the hollow in every direction, and from the top plane.
func newBody(c Case) *body {
	pad := [4]int{}
	n := int(math.Ceil(c.WallMM/c.StepMM - 1e-9))
	for _, w := range c.Walls {
		pad[w.Edge] = n
	}
	b := &body{c: c, nx: c.NX + pad[0] + pad[1], ny: c.NY + pad[2] + pad[3], offX: pad[0], offY: pad[2]}
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
		for j := range b.ny {
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

// underside dilates the hollow by a ball of BodyMM. Squares whose neighbourhood is flat
// are not searched.
func (b *body) underside() {
	r := int(math.Floor(b.c.BodyMM / b.c.StepMM))
	type reach struct {
		di, dj int
		more   float64
	}
	var ball []reach
	for dj := -r; dj <= r; dj++ {
		for di := -r; di <= r; di++ {
			d := math.Hypot(float64(di), float64(dj)) * b.c.StepMM
			if d <= b.c.BodyMM {
				ball = append(ball, reach{di, dj, math.Sqrt(b.c.BodyMM*b.c.BodyMM - d*d)})
			}
		}
	}
	top := b.highest(r)
	for j := range b.ny {
		for i := range b.nx {
			at := j*b.nx + i
			if b.wallTo[at] > 0 || b.outside[at] {
				continue
			}
			u := b.deep[at] + b.c.BodyMM
			if top[at] > b.deep[at] {
				for _, q := range ball {
					ii, jj := i+q.di, j+q.dj
					if ii >= 0 && jj >= 0 && ii < b.nx && jj < b.ny && b.deep[jj*b.nx+ii] > 0 {
						u = max(u, b.deep[jj*b.nx+ii]+q.more)
					}
				}
			}
			b.under[at] = u
			b.underneathMM = max(b.underneathMM, u)
		}
	}
}

// highest returns the deepest floor within r squares of each, along both directions.
func (b *body) highest(r int) []float64 {
	row := make([]float64, len(b.deep))
	for j := range b.ny {
		slide(b.deep[j*b.nx:(j+1)*b.nx], row[j*b.nx:(j+1)*b.nx], r)
	}
	out := make([]float64, len(b.deep))
	in, res := make([]float64, b.ny), make([]float64, b.ny)
	for i := range b.nx {
		for j := range b.ny {
			in[j] = row[j*b.nx+i]
		}
		slide(in, res, r)
		for j := range b.ny {
			out[j*b.nx+i] = res[j]
		}
	}
	return out
}

// slide writes the greatest of in within r places of each into out.
func slide(in, out []float64, r int) {
	var queue []int // of falling values
	next := 0
	for i := range in {
		for ; next <= min(i+r, len(in)-1); next++ {
			for len(queue) > 0 && in[queue[len(queue)-1]] <= in[next] {
				queue = queue[:len(queue)-1]
			}
			queue = append(queue, next)
		}
		for queue[0] < i-r {
			queue = queue[1:]
		}
		out[i] = in[queue[0]]
	}
}
