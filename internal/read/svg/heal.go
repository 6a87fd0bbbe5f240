package svg

import (
	"math"

	"pourwright/internal/geom"
)

// heal joins the open lines of one outline whose ends meet within gap mm, where each
// end has just one other to meet, and closes what then comes back to its start. It
// returns the lines, and the widest gap that was closed.
func heal(lines []polyline, gap float64) ([]polyline, float64) {
	widest := 0.0
	lines = joinOpen(lines, gap, &widest)
	for i := range lines {
		l := &lines[i]
		if l.closed || len(l.points) < 3 {
			continue
		}
		if g := l.gap(); g <= gap {
			widest = max(widest, g)
			l.shut()
		}
	}
	return lines, widest
}

// gap returns the distance between the ends of l.
func (l *polyline) gap() float64 { return l.points[len(l.points)-1].Sub(l.points[0]).Norm() }

// shut closes l, its last point moved onto its first. The sliver between the two goes
// with the chords, so the bulge of the curves stays.
func (l *polyline) shut() {
	l.points = l.points[:len(l.points)-1]
	l.closed = true
}

// A tip is one end of an open line.
type tip struct {
	line int
	last bool // the end, not the start
}

func (t tip) other() tip { return tip{t.line, !t.last} }

// joinOpen chains open lines tip to tip.
func joinOpen(lines []polyline, gap float64, widest *float64) []polyline {
	var open []int
	for i, l := range lines {
		if !l.closed && len(l.points) > 1 {
			open = append(open, i)
		}
	}
	if len(open) < 2 {
		return lines
	}
	mate := mates(lines, open, gap)
	if len(mate) == 0 {
		return lines
	}
	used := make([]bool, len(lines))
	var out []polyline
	for i, l := range lines {
		switch {
		case l.closed || len(l.points) < 2:
			out = append(out, l)
		case !used[i]:
			out = append(out, chain(lines, mate, used, firstOf(mate, tip{i, false}), widest))
		}
	}
	return out
}

// firstOf walks back along mates from t to the tip that begins its chain; in a loop
// of lines, t itself.
func firstOf(mate map[tip]tip, t tip) tip {
	at := t
	for {
		m, ok := mate[at]
		if !ok {
			return at
		}
		if at = m.other(); at == t {
			return t
		}
	}
}

// chain strings lines together from tip t on.
func chain(lines []polyline, mate map[tip]tip, used []bool, t tip, widest *float64) polyline {
	var out polyline
	out.box = geom.EmptyBox()
	for !used[t.line] {
		used[t.line] = true
		l := lines[t.line]
		points, bulge := l.points, l.bulge
		if t.last {
			points, bulge = points.Reversed(), -bulge
		}
		if n := len(out.points); n > 0 {
			*widest = max(*widest, points[0].Sub(out.points[n-1]).Norm())
			points = points[1:]
		}
		out.points = append(out.points, points...)
		out.bulge += bulge
		out.box = out.box.Union(l.box)
		next, ok := mate[t.other()]
		if !ok {
			break
		}
		t = next
	}
	return out
}

// mates pairs tips within gap of each other that have no third near.
func mates(lines []polyline, open []int, gap float64) map[tip]tip {
	type cell struct{ x, y int64 }
	at := func(t tip) geom.Point {
		p := lines[t.line].points
		if t.last {
			return p[len(p)-1]
		}
		return p[0]
	}
	in := func(p geom.Point) cell { return cell{int64(math.Floor(p.X / gap)), int64(math.Floor(p.Y / gap))} }
	cells := map[cell][]tip{}
	var tips []tip
	for _, i := range open {
		for _, t := range []tip{{i, false}, {i, true}} {
			tips = append(tips, t)
			if c := in(at(t)); len(cells[c]) < 4 { // a fourth already denies all of them a single mate
				cells[c] = append(cells[c], t)
			}
		}
	}
	near := func(t tip) (mate tip, count int) {
		p := at(t)
		c := in(p)
		for dx := int64(-1); dx <= 1; dx++ {
			for dy := int64(-1); dy <= 1; dy++ {
				for _, u := range cells[cell{c.x + dx, c.y + dy}] {
					if u != t && at(u).Sub(p).Norm() <= gap {
						mate = u
						count++
					}
				}
			}
		}
		return mate, count
	}
	out := map[tip]tip{}
	for _, t := range tips {
		m, n := near(t)
		if back, k := near(m); n == 1 && k == 1 && back == t && m.line != t.line {
			out[t] = m
		}
	}
	return out
}
