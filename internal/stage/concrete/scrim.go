package concrete

import (
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	usualRoll units.Length = 1000
	usualLap  units.Length = 75  // Source: [memory] 50 to 100 mm
	mouthPast units.Length = 150 // mesh beyond both ends of a mouth. Chosen
	mouthWide units.Length = 200
	neckPast  units.Length = 100
)

// scrim lists the mesh to cut: over the top of the piece, which is its tension side
// between supports, strips along mouths, patches over necks; and lays it on the roll.
func (c *computer) scrim(r *Result) {
	s := ScrimPlan{Pieces: []ScrimPiece{}, Roll: c.in.Scrim.Roll, Lap: c.in.Scrim.Lap}
	defer func() { r.Scrim = s }()
	if !c.in.Scrim.Use || len(r.Coats) < 2 {
		return
	}
	if !(s.Roll >= 100) || s.Roll > 5000 {
		s.Roll = usualRoll
	}
	if !(s.Lap > 0) || s.Lap > s.Roll/3 {
		s.Lap = min(usualLap, s.Roll/3)
	}
	s.Into = r.Coats[len(r.Coats)-1].Name
	c.topMesh(r, &s)
	c.patches(r, &s)
	s.lay()
}

// topMesh covers the whole bottom of the form inside the shell of the sides, in strips
// of the roll's width that lap.
func (c *computer) topMesh(r *Result, s *ScrimPlan) {
	clear := r.Shell
	l, w := c.in.Length-2*clear, c.in.Width-2*clear
	if l <= 0 || w <= 0 {
		return
	}
	n := 1
	if w > s.Roll {
		n = int(math.Ceil(float64((w - s.Lap) / (s.Roll - s.Lap))))
	}
	each := (w + units.Length(n-1)*s.Lap) / units.Length(n)
	for i := range n {
		s.add("top", l, each, clear, clear+units.Length(i)*(each-s.Lap))
	}
}

// patches adds a strip inside every mouth and a patch over every neck.
func (c *computer) patches(r *Result, s *ScrimPlan) {
	l, w := c.in.Length, c.in.Width
	for _, m := range c.in.Mouths {
		long, at := m.Width+2*mouthPast, m.From-mouthPast
		switch m.Side {
		case "left":
			s.clipped("mouth", mouthWide, long, l-mouthWide, at, l, w)
		case "right":
			s.clipped("mouth", mouthWide, long, 0, at, l, w)
		case "near":
			s.clipped("mouth", long, mouthWide, l-at-long, 0, l, w)
		default:
			s.clipped("mouth", long, mouthWide, l-at-long, w-mouthWide, l, w)
		}
	}
	for _, n := range c.in.Necks {
		side := n.Width + 2*neckPast
		s.clipped("neck", side, side, l-n.X-side/2, n.Y-side/2, l, w)
	}
}

// clipped adds a piece held inside the form.
func (s *ScrimPlan) clipped(what string, length, width, x, y, l, w units.Length) {
	x0, y0, x1, y1 := max(0, x), max(0, y), min(l, x+length), min(w, y+width)
	if x1-x0 > 10 && y1-y0 > 10 {
		s.add(what, x1-x0, y1-y0, x0, y0)
	}
}

func (s *ScrimPlan) add(what string, length, width, x, y units.Length) {
	s.Pieces = append(s.Pieces, ScrimPiece{Number: len(s.Pieces) + 1, For: what, Length: length, Width: width, X: x, Y: y})
	s.Area += units.Area(length * width)
}

// lay puts the pieces on the roll in rows across it, the longest along the roll first;
// a piece is turned where only that fits, or where it makes the row shorter.
func (s *ScrimPlan) lay() {
	order := make([]int, len(s.Pieces))
	for i := range order {
		order[i] = i
		p := &s.Pieces[i]
		p.Turned = p.Width > s.Roll || p.Length <= s.Roll && p.Length > p.Width
	}
	slices.SortStableFunc(order, func(a, b int) int { return compareLength(s.Pieces[b].along(), s.Pieces[a].along()) })
	var rows []struct{ at, along, used units.Length }
	for _, i := range order {
		p := &s.Pieces[i]
		k := slices.IndexFunc(rows, func(r struct{ at, along, used units.Length }) bool {
			return p.along() <= r.along && r.used+p.across() <= s.Roll+1e-6
		})
		if k < 0 {
			rows = append(rows, struct{ at, along, used units.Length }{s.Length, p.along(), 0})
			k = len(rows) - 1
			s.Length += p.along()
		}
		p.RollX, p.RollY = rows[k].at, rows[k].used
		rows[k].used += p.across()
	}
	if s.Length > 0 {
		s.Waste = units.Fraction(1 - float64(s.Area)/float64(s.Length*s.Roll))
	}
}

func compareLength(a, b units.Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// along returns the piece's size along the roll, across that over it.
func (p ScrimPiece) along() units.Length {
	if p.Turned {
		return p.Width
	}
	return p.Length
}

func (p ScrimPiece) across() units.Length {
	if p.Turned {
		return p.Length
	}
	return p.Width
}

// Footprint returns the piece in the form, form view.
func (p ScrimPiece) Footprint() geom.Box {
	return geom.Rect(p.X.MM(), p.Y.MM(), (p.X + p.Length).MM(), (p.Y + p.Width).MM())
}

// OnRoll returns the piece on the roll, x along it.
func (p ScrimPiece) OnRoll() geom.Box {
	return geom.Rect(p.RollX.MM(), p.RollY.MM(), (p.RollX + p.along()).MM(), (p.RollY + p.across()).MM())
}
