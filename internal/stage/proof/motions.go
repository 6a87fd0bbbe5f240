package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/rs274"
)

// hair is how far a height may be off by the rounding of a file, mm.
const hair = 0.001

// motions holds every move against heights, bed, sheet and spindle.
func (s *simulation) motions() {
	sheet := s.sheet()
	lo := geom.Point{}
	for _, m := range s.program.Moves {
		lo.X, lo.Y = math.Min(lo.X, m.To[0]), math.Min(lo.Y, m.To[1])
	}
	for i := range s.program.Moves {
		m := &s.program.Moves[i]
		points := m.Chords(0.01)
		s.onBed(m, points, lo)
		if m.Kind == rs274.Rapid {
			s.rapid(m)
		} else {
			s.cutting(m, points, sheet)
		}
	}
}

// rapid holds a rapid move against the safe height. Straight up it may go from
// anywhere: the cutter leaves by the way it came.
func (s *simulation) rapid(m *rs274.Move) {
	from, to := m.From, m.To
	at := to.XY()
	low := math.Min(from[2], to[2])
	switch sideways := to.XY().Sub(from.XY()).Norm(); {
	case sideways > 1e-6 && low < s.safe-hair:
		s.say(rapidLow, m.Line, &at, "Line %d goes sideways by %.1f mm as a rapid move at Z %.2f mm; the safe height is %.2f mm.", m.Line, sideways, low, s.safe)
	case sideways <= 1e-6 && to[2] < from[2] && to[2] < s.top-hair:
		s.say(rapidPlunge, m.Line, &at, "Line %d goes down to Z %.2f mm as a rapid move, into the sheet whose top is at %.2f mm.", m.Line, to[2], s.top)
	}
}

// cutting holds a cutting move against depth, spindle, feed and the sheet.
func (s *simulation) cutting(m *rs274.Move, points []rs274.Vec, sheet *geom.Locator) {
	at, low := m.To.XY(), math.Min(m.From[2], m.To[2])
	for _, v := range points {
		if v[2] < low {
			low, at = v[2], v.XY()
		}
	}
	if max := s.in.MaxFeed; max > 0 && m.Feed > float64(max)*(1+1e-6) {
		s.say(fastFeed, m.Line, &at, "Line %d asks for %.0f mm/min; the machine goes %.0f mm/min at most.", m.Line, m.Feed, max)
	}
	if low >= s.top-hair {
		return
	}
	if floor := s.bottom - s.in.Overcut.MM(); low < floor-hair {
		s.say(tooDeep, m.Line, &at, "Line %d goes down to Z %.2f mm, %.2f mm below the sheet; %.2f mm are allowed.", m.Line, low, s.bottom-low, s.in.Overcut)
	}
	if f := s.in.Flute; f > 0 && s.top-low > f.MM()+hair {
		s.say(shortFlute, m.Line, &at, "Line %d cuts %.1f mm deep; the flutes are %.1f mm long.", m.Line, s.top-low, f)
	}
	if s.program.Spindle && !m.Spindle {
		s.say(spindleOff, m.Line, &at, "Line %d cuts while the spindle stands still.", m.Line)
	}
	s.onSheet(m, points, sheet)
}

// onBed holds a move against the reach of the machine. The origin is where the sheet
// is clamped, so what lies to its left counts from there: lo is the least place of all.
func (s *simulation) onBed(m *rs274.Move, points []rs274.Vec, lo geom.Point) {
	for _, v := range points {
		p := v.XY()
		for i, bed := range [2]float64{s.in.BedX.MM(), s.in.BedY.MM()} {
			if reach := [2]float64{p.X - lo.X, p.Y - lo.Y}[i]; bed > 0 && reach > bed+hair {
				s.say(offBed, m.Line, &p, "Line %d reaches %.1f mm along %c; the bed has %.1f mm.", m.Line, reach, "XY"[i], bed)
				return
			}
		}
	}
}

// sheet returns where the sheet is.
func (s *simulation) sheet() *geom.Locator { return geom.NewLocator(s.sheetRegion()) }

func (s *simulation) sheetRegion() geom.Region {
	if len(s.in.Outline) < 3 {
		return geom.Rect(0, 0, s.in.SizeX.MM(), s.in.SizeY.MM()).Region()
	}
	return geom.Build([]geom.Ring{s.in.Outline}, geom.NonZero)
}

func (s *simulation) onSheet(m *rs274.Move, points []rs274.Vec, sheet *geom.Locator) {
	for _, v := range points {
		p := v.XY()
		if sheet.Inside(p) {
			continue
		}
		switch off := sheet.Boundary(p); {
		case off > s.r+hair:
			s.say(offSheet, m.Line, &p, "Line %d cuts %.1f mm beside the sheet.", m.Line, off)
			return
		case off > hair:
			s.say(overEdge, m.Line, &p, "Line %d has the cutter's middle %.1f mm beside the sheet.", m.Line, off)
			return
		}
	}
}

// partsOnSheet holds the corners of the parts against the sheet.
func (s *simulation) partsOnSheet() {
	sheet := s.sheet()
	for _, p := range s.in.Parts {
		worst, at := s.tol, geom.Point{}
		for _, poly := range p.Region.Shape() {
			for _, q := range poly.Outer {
				if off := sheet.Distance(q); off > worst {
					worst, at = off, q
				}
			}
		}
		if worst > s.tol {
			s.say(offSheet, 0, &at, "%s lies %.1f mm off the sheet.", p.ID, worst)
		}
	}
}

// dry holds a dry run to its height.
func (s *simulation) dry() {
	for i := range s.program.Moves {
		m := &s.program.Moves[i]
		for _, v := range m.Chords(0.01) {
			if p := v.XY(); v[2] < s.safe-hair {
				s.say(dryLow, m.Line, &p, "Line %d goes down to Z %.2f mm; a dry run stays above %.2f mm.", m.Line, v[2], s.safe)
				break
			}
		}
	}
}
