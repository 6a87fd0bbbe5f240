package nest

import "math"

// A neighbour is a thing the sought piece may meet: where its no-fit area lies.
type neighbour struct {
	x0, y0, x1, y1 float64
	ox, oy, w      float64
	f              *field
}

// A seeker looks for the place of one piece where its weighted depths are least.
type seeker struct {
	b   *board
	rnd random
	effort
	near [][]neighbour // per pose looked at
	pick []int
	best []place
	win  window
	todo []int32
}

// An effort is how many places are tried for a piece.
type effort struct {
	far, close, refine int
}

// A place is a candidate; k is the index into seeker.near.
type place struct {
	cost, x, y float64
	k          int
}

// Chosen: more poses than this are sampled, not all tried.
const mostPoses = 4

// relocate seeks a better place for thing i and moves it there.
func (s *seeker) relocate(i int) bool {
	b := s.b
	s.choosePoses(i)
	now := s.cost(s.near[0], b.x[i], b.y[i], math.Inf(1))
	if now == 0 {
		return false
	}
	s.best = s.best[:0]
	s.offer(place{now, b.x[i], b.y[i], 0})
	for k := range s.pick {
		s.sample(i, k)
	}
	won := place{cost: math.Inf(1), k: -1}
	for _, p := range s.best {
		s.narrow(i, p)
		if p = s.slide(p); p.cost < won.cost {
			won = p
		}
		if won.cost == 0 {
			break
		}
	}
	if won.cost > 0 {
		s.narrow(i, won)
		won = s.creep(i, won)
	}
	if won.cost >= now {
		return false
	}
	b.pose[i], b.x[i], b.y[i] = int32(s.pick[won.k]), won.x, won.y
	b.measureThing(i)
	return true
}

// choosePoses picks the present pose and others and lists the neighbours in each.
func (s *seeker) choosePoses(i int) {
	b := s.b
	n := len(b.things[i].poses)
	s.pick = append(s.pick[:0], int(b.pose[i]))
	if n <= mostPoses {
		for p := range n {
			if p != int(b.pose[i]) && b.fitting(i, p) {
				s.pick = append(s.pick, p)
			}
		}
	} else {
		for range mostPoses - 1 {
			if p := s.rnd.below(n); p != int(b.pose[i]) && b.fitting(i, p) {
				s.pick = append(s.pick, p)
			}
		}
	}
	for len(s.near) < len(s.pick) {
		s.near = append(s.near, nil)
	}
	for k, p := range s.pick {
		s.near[k] = s.neighbours(s.near[k][:0], i, p)
	}
}

func (s *seeker) neighbours(out []neighbour, i, p int) []neighbour {
	b := s.b
	row := b.weight[i*len(b.things):]
	for j := range b.things {
		if j == i {
			continue
		}
		f := b.field(j, i, p)
		if f == nil {
			continue
		}
		x, y := b.x[j], b.y[j]
		out = append(out, neighbour{f.x0 + x, f.y0 + y, f.x1 + x, f.y1 + y, x, y, row[j], f})
	}
	return out
}

// cost returns the weighted sum of depths at a place, or something at least
// bound when it is that large.
func (s *seeker) cost(list []neighbour, x, y, bound float64) float64 {
	sum, tol := 0.0, s.b.tol
	for i := range list {
		n := &list[i]
		if x <= n.x0 || x >= n.x1 || y <= n.y0 || y >= n.y1 {
			continue
		}
		if d := n.f.depth(x-n.ox, y-n.oy); d > tol {
			if sum += d * n.w; sum >= bound {
				return sum
			}
		}
	}
	return sum
}

// room returns the largest place of pose k.
func (s *seeker) room(i, k int) (x, y float64) {
	sh := s.b.cat.shapes[s.b.things[i].poses[s.pick[k]].shape]
	return max(0, s.b.length-sh.width), max(0, s.b.width-sh.height)
}

// sample tries places all over the board and near the present one.
func (s *seeker) sample(i, k int) {
	b := s.b
	mx, my := s.room(i, k)
	share := func(n int) int { return (n + len(s.pick) - 1) / len(s.pick) }
	for range share(s.far) {
		s.try(s.near[k], k, mx*s.rnd.unit(), my*s.rnd.unit())
	}
	sh := b.cat.shapes[b.things[i].poses[s.pick[k]].shape]
	old := b.cat.shapes[b.shape(i)]
	x, y := b.x[i]+(old.width-sh.width)/2, b.y[i]+(old.height-sh.height)/2
	here := place{x: max(0, min(x, mx)), y: max(0, min(y, my)), k: k}
	s.narrow(i, here)
	w := &s.win
	if k > 0 {
		s.try(w.near, k, here.x, here.y)
	}
	for range share(s.close) {
		s.try(w.near, k, s.rnd.between(w.x0, w.x1), s.rnd.between(w.y0, w.y1))
	}
}

func (s *seeker) try(near []neighbour, k int, x, y float64) {
	bound := math.Inf(1)
	if len(s.best) == s.refine {
		bound = s.best[len(s.best)-1].cost
	}
	if c := s.cost(near, x, y, bound); c < bound {
		s.offer(place{c, x, y, k})
	}
}

// offer keeps the best places in order.
func (s *seeker) offer(p place) {
	if len(s.best) < s.refine {
		s.best = append(s.best, p)
	} else {
		s.best[len(s.best)-1] = p
	}
	for i := len(s.best) - 1; i > 0 && s.best[i].cost < s.best[i-1].cost; i-- {
		s.best[i], s.best[i-1] = s.best[i-1], s.best[i]
	}
}

// A window is the part of the room a descent stays in, and who may be met there.
type window struct {
	x0, y0, x1, y1 float64
	near           []neighbour
}

// Chosen: a descent goes no further from where it began than this share of the piece's
// size.
const reachOfDescent = 0.5

// narrow sets the window about a place.
func (s *seeker) narrow(i int, p place) {
	sh := s.b.cat.shapes[s.b.things[i].poses[s.pick[p.k]].shape]
	mx, my := s.room(i, p.k)
	rx, ry := sh.width*reachOfDescent, sh.height*reachOfDescent
	w := &s.win
	w.x0, w.x1 = max(0, p.x-rx), min(mx, p.x+rx)
	w.y0, w.y1 = max(0, p.y-ry), min(my, p.y+ry)
	w.near = w.near[:0]
	for _, n := range s.near[p.k] {
		if n.x0 < w.x1 && n.x1 > w.x0 && n.y0 < w.y1 && n.y1 > w.y0 {
			w.near = append(w.near, n)
		}
	}
}

// slide takes steps of cost over squared slope against the slope (Polyak).
func (s *seeker) slide(p place) place {
	x, y := p.x, p.y
	for range 10 {
		c, gx, gy := s.slope(x, y)
		if c < p.cost {
			p.cost, p.x, p.y = c, x, y
		}
		g := gx*gx + gy*gy
		if c == 0 || g < 1e-12 {
			break
		}
		x = max(s.win.x0, min(x+gx*c/g, s.win.x1))
		y = max(s.win.y0, min(y+gy*c/g, s.win.y1))
	}
	if c := s.cost(s.win.near, x, y, p.cost); c < p.cost {
		p.cost, p.x, p.y = c, x, y
	}
	return p
}

// slope returns the cost and the direction of steepest descent.
func (s *seeker) slope(x, y float64) (c, gx, gy float64) {
	list := s.win.near
	for i := range list {
		n := &list[i]
		if x <= n.x0 || x >= n.x1 || y <= n.y0 || y >= n.y1 {
			continue
		}
		d, dx, dy := n.f.wayOut(x-n.ox, y-n.oy)
		if d > s.b.tol {
			c += d * n.w
			gx += dx * n.w
			gy += dy * n.w
		}
	}
	return c, gx, gy
}

// creep tries steps along one of four lines, both ways.
func (s *seeker) creep(i int, p place) place {
	sh := s.b.cat.shapes[s.b.things[i].poses[s.pick[p.k]].shape]
	size := min(sh.width, sh.height)
	for h := size * 0.1; h > size*1e-4 && p.cost > 0; {
		dx, dy := s.line(h)
		moved := false
		for _, sign := range [2]float64{1, -1} {
			x, y := max(s.win.x0, min(p.x+sign*dx, s.win.x1)), max(s.win.y0, min(p.y+sign*dy, s.win.y1))
			if c := s.cost(s.win.near, x, y, p.cost); c < p.cost {
				p.cost, p.x, p.y = c, x, y
				moved = true
				break
			}
		}
		if moved {
			h *= 1.1
		} else {
			h *= 0.5
		}
	}
	return p
}

func (s *seeker) line(h float64) (dx, dy float64) {
	switch s.rnd.next() >> 62 {
	case 0:
		return h, 0
	case 1:
		return 0, h
	case 2:
		return h, h
	}
	return h, -h
}

// round seeks a better place for every overlapping thing and returns how many it sought.
func (s *seeker) round() int {
	s.todo = s.b.overlapping(s.todo[:0])
	s.rnd.shuffle(s.todo)
	n := 0
	for _, i := range s.todo {
		if s.overlaps(int(i)) {
			s.relocate(int(i))
			n++
		}
	}
	return n
}

func (s *seeker) overlaps(i int) bool {
	n := len(s.b.things)
	for _, d := range s.b.depth[i*n : i*n+n] {
		if d > 0 {
			return true
		}
	}
	return false
}
