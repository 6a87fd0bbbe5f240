package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/rs274"
)

// A spot of a path seen from above, in steps of 1e-4 mm.
type spot struct{ x, y int64 }

func spotOf(p geom.Point) spot {
	return spot{int64(math.Round(p.X * 1e4)), int64(math.Round(p.Y * 1e4))}
}

// paths gathers the cutting moves below the sheet's top as straight pieces. Passes one
// below the other are one piece with the depth of the lowest.
type paths struct {
	pieces []piece
	seen   map[[2]spot]int32
}

// add puts a stretch that is cut to z at least.
func (ps *paths) add(a, b geom.Point, z float64, line int) {
	ka, kb := spotOf(a), spotOf(b)
	if kb.x < ka.x || kb.x == ka.x && kb.y < ka.y {
		ka, kb = kb, ka
	}
	key := [2]spot{ka, kb}
	if i, ok := ps.seen[key]; ok {
		if z < ps.pieces[i].low {
			ps.pieces[i].low, ps.pieces[i].of = z, int32(line)
		}
		return
	}
	ps.seen[key] = int32(len(ps.pieces))
	ps.pieces = append(ps.pieces, piece{a, b, int32(line), z})
}

// cuts returns all pieces of path that are below the sheet's top.
func (s *simulation) cuts() []piece {
	ps := &paths{seen: make(map[[2]spot]int32, len(s.program.Moves))}
	for i := range s.program.Moves {
		m := &s.program.Moves[i]
		if math.Min(m.From[2], m.To[2]) >= s.top-hair && (m.Kind != rs274.Circle || m.Plane == rs274.XY) {
			continue
		}
		points := m.Chords(chordTol)
		for k := 1; k < len(points); k++ {
			s.stretch(ps, points[k-1], points[k], m.Line)
		}
	}
	return ps.pieces
}

// stretch adds what of a straight stretch is below the top, and, by itself, what of it
// goes through the sheet.
func (s *simulation) stretch(ps *paths, a, b rs274.Vec, line int) {
	if a[2] < b[2] {
		a, b = b, a // a is the higher end
	}
	if b[2] >= s.top-hair {
		return
	}
	if a[2] > s.top {
		a = between(a, b, s.top)
	}
	if a.XY() == b.XY() {
		ps.add(b.XY(), b.XY(), b[2], line)
		return
	}
	ps.add(a.XY(), b.XY(), a[2], line)
	if through := s.through(); a[2] > through && b[2] <= through {
		ps.add(between(a, b, through).XY(), b.XY(), through, line)
	}
}

// through is the height to which a cut must go to part the foam.
func (s *simulation) through() float64 { return s.bottom + s.tol }

// between returns where the stretch from a down to b has height z.
func between(a, b rs274.Vec, z float64) rs274.Vec {
	t := (a[2] - z) / (a[2] - b[2])
	return rs274.Vec{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), z}
}
