package svg

import (
	"fmt"
	"math"
	"strconv"
)

// A scanner walks over the numbers and words of an attribute.
type scanner struct {
	s string
	i int
}

func (s *scanner) done() bool { return s.i >= len(s.s) }

func (s *scanner) peek() byte {
	if s.done() {
		return 0
	}
	return s.s[s.i]
}

func isSpace(b byte) bool {
	return b == ' ' || b == '\t' || b == '\n' || b == '\r' || b == '\f'
}
func isDigit(b byte) bool { return b >= '0' && b <= '9' }
func isLetter(b byte) bool {
	return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z'
}

func (s *scanner) spaces() {
	for !s.done() && isSpace(s.s[s.i]) {
		s.i++
	}
}

// comma skips white space and at most one comma, and reports whether there was one.
func (s *scanner) comma() bool {
	s.spaces()
	if s.peek() != ',' {
		return false
	}
	s.i++
	s.spaces()
	return true
}

// separators skips white space and any commas.
func (s *scanner) separators() {
	for !s.done() && (isSpace(s.s[s.i]) || s.s[s.i] == ',') {
		s.i++
	}
}

// word skips and returns letters and the white space after them.
func (s *scanner) word() string {
	from := s.i
	for !s.done() && isLetter(s.s[s.i]) {
		s.i++
	}
	w := s.s[from:s.i]
	s.spaces()
	return w
}

// startsNumber reports whether a number can begin here.
func (s *scanner) startsNumber() bool {
	b := s.peek()
	return isDigit(b) || b == '.' || b == '+' || b == '-'
}

func (s *scanner) digits() int {
	from := s.i
	for !s.done() && isDigit(s.s[s.i]) {
		s.i++
	}
	return s.i - from
}

// number reads one finite number; where it fails, it leaves the scanner at the fault.
func (s *scanner) number() (float64, error) {
	from := s.i
	if b := s.peek(); b == '+' || b == '-' {
		s.i++
	}
	n := s.digits()
	if s.peek() == '.' {
		s.i++
		n += s.digits()
	}
	if n == 0 {
		return 0, fmt.Errorf("a number should stand here, not %s", s.found())
	}
	s.exponent()
	v, err := strconv.ParseFloat(s.s[from:s.i], 64)
	if err != nil || math.IsInf(v, 0) {
		s.i = from
		return 0, fmt.Errorf("the number %s is too large", clip(s.s[from:]))
	}
	return v, nil
}

// exponent skips an exponent if a whole one is there; "1em" has none.
func (s *scanner) exponent() {
	if b := s.peek(); b != 'e' && b != 'E' {
		return
	}
	back := s.i
	s.i++
	if b := s.peek(); b == '+' || b == '-' {
		s.i++
	}
	if s.digits() == 0 {
		s.i = back
	}
}

// found names what stands at the scanner.
func (s *scanner) found() string {
	if s.done() {
		return "the end"
	}
	return strconv.Quote(string([]rune(s.s[s.i:min(len(s.s), s.i+8)])[:1]))
}

// arguments reads "(1, 2 3)".
func (s *scanner) arguments() ([]float64, error) {
	if s.peek() != '(' {
		return nil, fmt.Errorf("an opening bracket should stand here, not %s", s.found())
	}
	s.i++
	s.spaces()
	var out []float64
	for s.peek() != ')' {
		v, err := s.number()
		if err != nil {
			return nil, err
		}
		if out = append(out, v); len(out) > 6 {
			return nil, fmt.Errorf("too many numbers")
		}
		s.comma()
	}
	s.i++
	return out, nil
}

// numbers reads all of s as a list of numbers.
func numbers(text string, most int) ([]float64, error) {
	s := scanner{s: text}
	var out []float64
	for s.spaces(); !s.done(); s.comma() {
		v, err := s.number()
		if err != nil {
			return out, err
		}
		if out = append(out, v); len(out) > most {
			return out, fmt.Errorf("more than %d numbers", most)
		}
	}
	return out, nil
}
