package proof

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/rs274"
	"pourwright/internal/units"
)

// Defaults and limits.
const (
	defaultTol     = 0.05 // mm. Chosen: far below what foam holds, far above the rounding of a file
	defaultOvercut = 1.0  // mm into the board. Chosen
	defaultRapid   = 5000 // mm/min; only the time depends on it. Chosen
	chordTol       = 0.001
	astray         = 100_000.0 // mm; no machine reaches as far
	step           = 0.5       // mm between places looked at on a boundary
	mostNamed      = 3         // places of one kind named for a program; the rest are counted
)

// A simulation is one program on its way.
type simulation struct {
	in      Input
	program rs274.Program
	r       float64 // of the cutter, mm
	tol     float64
	top     float64 // Z of the sheet's upper side
	bottom  float64 // Z of its lower side
	safe    float64 // Z
	found   []finding.Finding
	named   map[string]int
}

// Compute simulates a program. A program that may not be run has Verified false and a
// finding of severity Stop with its line and place.
func Compute(in Input) (Result, []finding.Finding) {
	s := newSimulation(in)
	out := Result{File: in.File, Parts: []PartResult{}}
	if why := in.missing(); why != "" {
		s.say(noInput, 0, nil, "%s: %s cannot be proved.", why, in.File)
		return out, s.found
	}
	s.read()
	out.Lines, out.Moves = s.program.Lines, len(s.program.Moves)
	out.Minutes = s.program.Minutes(rs274.Rates{Rapid: in.Rapid})
	s.measure(&out)
	s.motions()
	switch {
	case s.astray():
		s.say(offSheet, 0, nil, "%s goes more than %.0f m from its sheet; it is not simulated further.", in.File, astray/1000)
	case in.DryRun:
		s.dry()
	case in.Carving != nil:
		out.Carved = s.carving(*in.Carving)
	default:
		s.partsOnSheet()
		out.Parts = s.parts()
	}
	s.sums()
	worst, any := finding.Worst(s.found)
	out.Verified = !any || worst < finding.Stop
	return out, s.found
}

func newSimulation(in Input) *simulation {
	positive := func(v *units.Length, or float64) {
		if !(*v > 0) {
			*v = units.Length(or)
		}
	}
	positive(&in.Tolerance, defaultTol)
	positive(&in.Overcut, defaultOvercut)
	if !(in.Rapid > 0) {
		in.Rapid = defaultRapid
	}
	s := &simulation{in: in, r: in.Cutter.MM() / 2, tol: in.Tolerance.MM(), named: map[string]int{}}
	s.top = in.StockTop.MM()
	s.bottom = s.top - in.Thickness.MM()
	s.safe = s.top + math.Max(0, in.SafeHeight.MM())
	return s
}

// missing says what a simulation lacks, or "".
func (in Input) missing() string {
	sane := func(v units.Length) bool { return v > 0 && v < 1e5 }
	switch {
	case !sane(in.Cutter):
		return "The cutter's diameter is not known"
	case !sane(in.Thickness):
		return "The sheet's thickness is not known"
	case !sane(in.SizeX) || !sane(in.SizeY):
		return "The sheet's size is not known"
	case !(math.Abs(in.StockTop.MM()) < 1e5):
		return "The height of the sheet's upper side is not known"
	}
	for _, p := range in.Parts {
		for _, ring := range p.Region.Shape().Rings() {
			for _, q := range ring {
				if !(math.Abs(q.X) < 1e6 && math.Abs(q.Y) < 1e6) {
					return "The outline of " + p.ID + " has a corner that is no place"
				}
			}
		}
	}
	return ""
}

// read reads the text. Modes that a program leaves to chance stop it.
func (s *simulation) read() {
	var found []finding.Finding
	s.program, found = rs274.Read(s.in.File, s.in.Text)
	for _, f := range found {
		switch f.Code {
		case "rs274/unstated", "rs274/unknown-place":
			g := modes.At(f.Where, "%s", f.Text)
			s.found = append(s.found, g)
		default:
			s.found = append(s.found, f)
		}
	}
	if n := s.program.Refused; n > 0 {
		s.say(faulty, 0, nil, "%s: %d of its %s could not be read, and what they do is not known.", s.in.File, n, units.Count(s.program.Lines, "line", "lines"))
	}
	if ts := s.program.Tools; len(ts) > 1 {
		s.say(tools, 0, nil, "%s changes its cutter %s; it is simulated with the one of %.2f mm.", s.in.File, units.Count(len(ts), "time", "times"), s.in.Cutter)
	}
}

// measure sums up what the program does.
func (s *simulation) measure(out *Result) {
	box, deepest := geom.EmptyBox(), math.Inf(1)
	for _, m := range s.program.Moves {
		if m.Kind == rs274.Rapid {
			out.Travel += units.Length(m.Length())
			continue
		}
		out.Cut += units.Length(m.Length())
		for _, v := range m.Chords(0.01) {
			box = box.Union(geom.Box{Min: v.XY(), Max: v.XY()})
			deepest = math.Min(deepest, v[2])
		}
	}
	if !box.Empty() {
		out.Box, out.Deepest = box, units.Length(deepest)
	}
}

// astray reports whether the program leaves all that a machine can reach.
func (s *simulation) astray() bool {
	for i := range s.program.Moves {
		m := &s.program.Moves[i]
		for _, v := range [2]rs274.Vec{m.To, m.Centre} {
			if math.Abs(v[0])+math.Abs(v[1])+math.Abs(v[2]) > astray {
				return true
			}
		}
	}
	return false
}

// say reports something with its line and place. Of one rule, a few places are named
// and the rest only counted.
func (s *simulation) say(r finding.Rule, line int, at *geom.Point, format string, args ...any) {
	if s.named[r.Code]++; s.named[r.Code] > mostNamed {
		return
	}
	w := finding.Where{File: s.in.File, Line: line}
	if at != nil {
		w.At, w.View = &[2]float64{at.X, at.Y}, "form"
	}
	s.found = append(s.found, r.At(w, format, args...))
}

// sums adds to the last finding of a rule how many more there were.
func (s *simulation) sums() {
	for i := len(s.found) - 1; i >= 0; i-- {
		f := &s.found[i]
		if n := s.named[f.Code] - mostNamed; n > 0 {
			f.Text += " Like it: " + units.Count(n, "more place", "more places") + "."
			delete(s.named, f.Code)
		}
	}
}
