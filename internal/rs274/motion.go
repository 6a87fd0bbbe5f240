package rs274

import "math"

// checkMotion holds axis and arc words against the motion that is to use them.
func (r *reader) checkMotion(s *state, b *block) *fault {
	now := s.motion
	if w := b.g[motion]; w.there {
		now = w.code
	}
	arcWords := ""
	for _, l := range []byte("IJKR") {
		if _, there := b.word(l); there {
			arcWords += string(l)
		}
	}
	switch {
	case b.axes() && now == none:
		return wrong(noMotion, 0, "Axes are to move, and the program has not said how: no motion word stands before.")
	case b.axes() && now == 800:
		return wrong(noMotion, 0, "Axes are to move after G80 has stopped motion.")
	case arcWords != "" && !(now == 20 || now == 30):
		return wrong(unused, b.column(arcWords[0]), "%c stands without G2 or G3.", arcWords[0])
	case arcWords != "" && !b.axes():
		return wrong(badArc, b.column(arcWords[0]), "The arc has no end: X or Y must be given in its plane.")
	}
	return nil
}

// motion returns the move of a block, if any, and takes s to its end.
func (r *reader) motion(s *state, b *block) (*Move, *fault) {
	g53 := b.g[nonModal].there && b.g[nonModal].code == 530
	if g53 && (s.relative || s.motion < 0 || s.motion > 10 || !b.axes()) {
		return nil, wrong(modalClash, b.g[nonModal].column, "G53 goes only with a G0 or G1 and its axes, in absolute distances.")
	}
	if !b.axes() {
		if w := b.g[motion]; w.there && (w.code == 20 || w.code == 30) {
			return nil, wrong(badArc, w.column, "The arc has no end: X or Y must be given in its plane.")
		}
		return nil, nil
	}
	if g53 {
		return nil, wrong(notFollowed, b.g[nonModal].column, "G53 moves in the machine's own coordinates, which the file does not know.")
	}
	m, f := r.towards(s, b)
	if f != nil {
		return nil, f
	}
	switch s.motion {
	case 0:
		m.Kind = Rapid
	case 10:
		m.Kind = Feed
	default:
		m.Kind = Circle
		if f := s.arc(&m, b); f != nil {
			return nil, f
		}
	}
	if m.Kind != Rapid {
		if m.Feed, f = s.rate(m, b); f != nil {
			return nil, f
		}
	}
	s.place = m.To
	return &m, nil
}

// towards returns a move from where the cutter is to where the axis words say. An axis
// not stated before is taken to be there already.
func (r *reader) towards(s *state, b *block) (Move, *fault) {
	m := Move{Line: r.line, From: s.place, To: s.place, Spindle: s.spindle, Plane: s.plane}
	sideways := false
	for i, l := range []byte("XYZ") {
		v, there := b.word(l)
		if !there {
			continue
		}
		v *= s.unit()
		switch {
		case s.relative && !s.known[i]:
			return m, wrong(notFollowed, b.column(l), "%c moves by a distance from a place that the program has not stated.", l)
		case s.relative:
			m.To[i] += v
		default:
			m.To[i] = v
		}
		if math.Abs(m.To[i]) > most {
			return m, wrong(badValue, b.column(l), "%c is beyond anything a machine reaches.", l)
		}
		if !s.known[i] {
			m.From[i] = m.To[i]
		}
		s.known[i] = true
		sideways = sideways || i < 2
	}
	if s.motion != 0 && s.known != (axes{true, true, true}) {
		return m, wrong(notFollowed, 0, "A cut begins before X, Y and Z have all been stated: it starts wherever the cutter stands.")
	}
	if sideways && !s.known[2] {
		r.say(unknownPlace, 0, "The cutter moves sideways before the program has stated a height.")
	}
	return m, nil
}

// rate returns the feed of a move, mm/min.
//
//	G94: F units a minute     G93: max(0.1, length F) units a minute
func (s *state) rate(m Move, b *block) (float64, *fault) {
	_, there := b.word('F')
	switch {
	case s.inverse && !there:
		return 0, wrong(noFeed, 0, "In inverse time mode (G93) every cutting line needs its own F word.")
	case s.feed <= 0:
		return 0, wrong(noFeed, 0, "A cutting move has no feed: no F above zero stands before it.")
	case s.inverse:
		return math.Max(0.1*s.unit(), m.Length()*s.feed), nil
	}
	return s.feed * s.unit(), nil
}
