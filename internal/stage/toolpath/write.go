package toolpath

import (
	"math"
	"strconv"
	"strings"
)

// mostColumns bounds a comment's line; a line may have 256 characters. [rs274ngc]
const mostColumns = 78

// A writer turns moves into lines of RS-274 words.
type writer struct {
	b     strings.Builder
	unit  float64 // mm in one of the program's units
	digit int     // decimals
	grid  float64
	last  Move // not a number where not known yet
	feed  float64
	lines int
}

func newWriter(inch bool) *writer {
	nowhere := Move{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
	if inch {
		return &writer{unit: 25.4, digit: 5, grid: gridInch, feed: -1, last: nowhere}
	}
	return &writer{unit: 1, digit: 4, grid: gridMM, feed: -1, last: nowhere}
}

func (w *writer) line(s string) {
	w.b.WriteString(s)
	w.b.WriteByte('\n')
	w.lines++
}

// comment writes text in brackets, over as many lines as it takes.
func (w *writer) comment(text string) {
	line := ""
	for _, word := range strings.Fields(plainText(text)) {
		for len(word) > mostColumns {
			word = word[:mostColumns]
		}
		if line != "" && len(line)+1+len(word) > mostColumns {
			w.line("(" + line + ")")
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	if line != "" {
		w.line("(" + line + ")")
	}
}

// plainText keeps what every controller prints: no brackets, no letters beyond ASCII.
func plainText(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '(' || r == '[' || r == '{':
			return '<'
		case r == ')' || r == ']' || r == '}':
			return '>'
		case r == ';' || r == '%':
			return ','
		case r < ' ' || r > '~':
			return ' '
		}
		return r
	}, s)
}

// settings states the modes once: plane, units, no compensation, coordinate system,
// no cycle, absolute, feed per minute.
func (w *writer) settings() {
	unit := "G21"
	if w.unit != 1 {
		unit = "G20"
	}
	w.line("G17 " + unit + " G40 G49 G54 G80 G90 G94")
}

// start states the highest feed of a plunge before anything moves, and goes up first:
// nobody knows where the cutter stands.
func (w *writer) start(plunge, safe float64) {
	w.feed = plunge
	w.line("F" + w.rate(plunge))
	w.line("G0 Z" + w.number(safe))
	w.last.Z = safe
}

// move writes m with the words that change.
func (w *writer) move(m Move) {
	var s strings.Builder
	s.WriteByte('G')
	s.WriteString(strconv.Itoa(int(m.Kind)))
	arc := m.Kind == Clockwise || m.Kind == Counter
	w.word(&s, 'X', m.X, arc || m.X != w.last.X)
	w.word(&s, 'Y', m.Y, arc || m.Y != w.last.Y)
	w.word(&s, 'Z', m.Z, m.Z != w.last.Z)
	w.word(&s, 'I', m.I, arc)
	w.word(&s, 'J', m.J, arc)
	if m.Kind != Rapid && m.Feed != w.feed {
		s.WriteString(" F" + w.rate(m.Feed))
		w.feed = m.Feed
	}
	w.last = m
	w.line(s.String())
}

func (w *writer) word(s *strings.Builder, letter byte, mm float64, wanted bool) {
	if !wanted {
		return
	}
	s.WriteByte(' ')
	s.WriteByte(letter)
	s.WriteString(w.number(mm))
}

// number writes a length with at least one decimal, no exponent and no minus zero.
func (w *writer) number(mm float64) string {
	n := math.Round(mm / w.grid)
	if n == 0 {
		n = 0 // not minus zero
	}
	return trim(strconv.FormatFloat(n*w.grid/w.unit, 'f', w.digit, 64))
}

func (w *writer) rate(mm float64) string {
	return trim(strconv.FormatFloat(mm/w.unit, 'f', 2, 64))
}

// trim drops zeros at the end but for the first decimal.
func trim(s string) string {
	s = strings.TrimRight(s, "0")
	if strings.HasSuffix(s, ".") {
		s += "0"
	}
	if s == "-0.0" {
		return "0.0"
	}
	return s
}
