package rs274

import (
	"fmt"
	"slices"
	"strings"
)

// state is what the machine remembers from line to line, so far as the file says.
// Lengths are in mm.
type state struct {
	place    Vec
	known    axes // axes the file has stated
	motion   code
	plane    Plane
	relative bool
	inverse  bool // G93
	inch     bool
	feed     float64 // as written, in the units of the program
	spindle  bool
	tool     int
	coords   code
	stated   [override + 1]bool
	moved    bool
}

// axes says something of X, Y and Z.
type axes [3]bool

// none is the motion before any is stated.
const none code = -1

func (s *state) unit() float64 {
	if s.inch {
		return 25.4
	}
	return 1
}

// run does what a block says, in the language's order: feed mode, feed, speed, tool,
// M words, G words, motion, stops. Source: [rs274ngc] section 3.8, table 8.
func (r *reader) run(b *block) *fault {
	s := r.state // of faults nothing is left
	if f := r.checkMotion(&s, b); f != nil {
		return f
	}
	s.modes(b)
	if v, ok := b.word('F'); ok {
		s.feed = v
	} else if s.inverse {
		s.feed = 0
	}
	if v, ok := b.word('T'); ok {
		s.tool = int(v)
	}
	if sp := b.m[spindle]; sp.there {
		s.spindle = sp.code != 50
	}
	move, f := r.motion(&s, b)
	if f != nil {
		return f
	}
	r.note(&s, b, move)
	r.state = s
	r.stops(b)
	return nil
}

// modes takes over what the G words of a block set.
func (s *state) modes(b *block) {
	for g, w := range b.g {
		if w.there {
			s.stated[g] = true
		}
	}
	pick := func(g int, yes code, was bool) bool {
		if b.g[g].there {
			return b.g[g].code == yes
		}
		return was
	}
	s.inverse = pick(feedMode, 930, s.inverse)
	s.relative = pick(distance, 910, s.relative)
	s.inch = pick(unitsOf, 200, s.inch)
	if w := b.g[plane]; w.there {
		s.plane = Plane((w.code - 170) / 10)
	}
	if w := b.g[coordinates]; w.there {
		s.coords = w.code
	}
	if w := b.g[motion]; w.there {
		s.motion = w.code
	}
}

// note keeps what the program does beside its moves, and reports what is strange.
func (r *reader) note(s *state, b *block, move *Move) {
	before := r.state
	if b.g[unitsOf].there {
		was := r.program.Units
		now := map[bool]string{true: "in", false: "mm"}[s.inch]
		switch {
		case was == "":
			r.program.Units = now
		case before.inch != s.inch:
			r.program.Units = "mixed"
		}
		if before.inch != s.inch && (before.feed > 0 || before.moved) && (before.stated[unitsOf] || before.moved) {
			r.say(unitsChange, b.g[unitsOf].column, "The units change in the midst of the program; a feed stated before is read as %s/min from here.", now)
		}
	}
	if b.g[nonModal].there && b.g[nonModal].code == 40 {
		r.program.Dwell += b.value['P'-'A']
	}
	if s.spindle && b.m[spindle].there {
		r.program.Spindle = true
	}
	if move == nil {
		return
	}
	if !before.moved {
		r.firstMove(s)
	}
	s.moved = true
	r.lost = r.lost && !(b.has['X'-'A'] && b.has['Y'-'A'] && !s.relative)
	if s.coords != before.coords || !before.moved {
		r.enters(s.coords.of('G'))
	}
	r.program.Moves = append(r.program.Moves, *move)
}

// enters reports a second coordinate system.
func (r *reader) enters(c string) {
	if !slices.Contains(r.program.Coords, c) {
		r.program.Coords = append(r.program.Coords, c)
		if len(r.program.Coords) > 1 {
			r.say(notFollowed, 0, "The program goes on in %s after %s: where one lies from the other only the machine knows.", c, r.program.Coords[0])
		}
	}
}

// firstMove reports modes that the program has not stated by then.
func (r *reader) firstMove(s *state) {
	for _, m := range []struct {
		group int
		words string
	}{
		{unitsOf, "units (G20 or G21)"}, {distance, "distance mode (G90)"}, {plane, "plane (G17)"},
		{feedMode, "feed mode (G94)"}, {cutterComp, "cutter compensation off (G40)"}, {toolLength, "tool length offset off (G49)"},
	} {
		if !s.stated[m.group] {
			r.program.Unstated = append(r.program.Unstated, m.words)
		}
	}
	if u := r.program.Unstated; len(u) > 0 {
		r.say(unstated, 0, "The first move comes before the program has stated: %s.", strings.Join(u, ", "))
	}
}

// stops keeps where the machine waits, and ends the program at M2 or M30.
func (r *reader) stops(b *block) {
	if w := b.m[toolChange]; w.there {
		r.program.Stops = append(r.program.Stops, Stop{r.line, "M6"})
		r.program.Tools = append(r.program.Tools, r.state.tool)
	}
	w := b.m[stopping]
	switch {
	case !w.there:
	case w.code == 20 || w.code == 300:
		r.program.Ended = true
		r.state.spindle = false
	default:
		r.program.Stops = append(r.program.Stops, Stop{r.line, fmt.Sprint(w.code.of('M'))})
	}
}
