package rs274

import (
	"fmt"
	"strconv"
	"strings"

	"pourwright/internal/finding"
)

// A fault is why a line cannot be read.
type fault struct {
	rule   finding.Rule
	column int
	text   string
	remedy string // "" takes the rule's
}

func wrong(r finding.Rule, column int, format string, args ...any) *fault {
	return &fault{rule: r, column: column, text: fmt.Sprintf(format, args...)}
}

// A word is a letter and its number.
type word struct {
	letter byte
	value  float64
	column int
}

// String writes the word as it would stand in a file.
func (w word) String() string {
	return string(w.letter) + strconv.FormatFloat(w.value, 'f', -1, 64)
}

// A line is what one line of the file holds.
type line struct {
	deleted   bool // begins with a slash
	words     []word
	comment   string
	semicolon bool
}

// A letter of a line without its spaces and comments.
type char struct {
	c      byte
	column int
}

// parse splits a line into words.
func parse(text string) (line, *fault) {
	var l line
	if len(text) > MaxColumns {
		return l, wrong(longLine, MaxColumns+1, "The line has %d characters; the language allows %d.", len(text), MaxColumns)
	}
	chars, f := l.strip(text)
	if f != nil {
		return l, f
	}
	if len(chars) > 0 && chars[0].c == '/' {
		l.deleted = true
		chars = chars[1:]
	}
	for len(chars) > 0 {
		var w word
		if w, chars, f = next(chars); f != nil {
			return l, f
		}
		if w.letter == 'N' {
			if len(l.words) > 0 {
				return l, wrong(badText, w.column, "The line number %s stands behind other words; it belongs at the front.", w)
			}
			if w.value < 0 || w.value > 99999 || w.value != float64(int(w.value)) {
				return l, wrong(badValue, w.column, "%s is no line number: whole, from 0 to 99999.", w)
			}
			if numbered(l.words) {
				return l, wrong(repeated, w.column, "The line has two line numbers.")
			}
		}
		l.words = append(l.words, w)
	}
	if numbered(l.words) {
		l.words = l.words[1:]
	}
	return l, nil
}

func numbered(ws []word) bool { return len(ws) > 0 && ws[0].letter == 'N' }

// strip takes spaces and comments out and makes letters capital.
func (l *line) strip(text string) ([]char, *fault) {
	out := make([]char, 0, len(text))
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == ' ' || c == '\t' || c == '\r':
		case c == '(':
			end := strings.IndexAny(text[i+1:], "()")
			if end < 0 {
				return nil, wrong(badText, i+1, "The comment is not closed on its line.")
			}
			if text[i+1+end] == '(' {
				return nil, wrong(badText, i+2+end, "There is a bracket inside a comment.")
			}
			l.comment = strings.TrimSpace(text[i+1 : i+1+end])
			i += end + 1
		case c == ';':
			l.semicolon = true
			l.comment = strings.TrimSpace(text[i+1:])
			return out, nil
		case c < ' ' || c > '~':
			return nil, wrong(badText, i+1, "There is a character of code %d outside a comment; only plain letters, numbers and signs may stand there.", c)
		default:
			if c >= 'a' && c <= 'z' {
				c -= 'a' - 'A'
			}
			out = append(out, char{c, i + 1})
		}
	}
	return out, nil
}

// most is the largest number of a file, in its own units.
const most = 1e7

// next reads one word off the front of chars.
func next(chars []char) (word, []char, *fault) {
	w := word{letter: chars[0].c, column: chars[0].column}
	switch {
	case w.letter == '#' || w.letter == '[':
		return w, nil, wrong(parameters, w.column, "The line sets or uses a parameter, which this reader does not follow.")
	case w.letter == '%' && len(chars) == 1:
		return w, nil, wrong(badText, w.column, "A percent line stands in a file that does not begin with one, or begins twice.")
	case w.letter == '%':
		return w, nil, wrong(badText, w.column, "The percent sign stands beside other words; it must be alone on its line.")
	case w.letter == '/':
		return w, nil, wrong(badText, w.column, "A slash may only begin a line.")
	case w.letter < 'A' || w.letter > 'Z':
		return w, nil, wrong(badText, w.column, "%q begins no word.", string(w.letter))
	}
	n := 1
	digits := make([]byte, 0, 24)
	for n < len(chars) && strings.IndexByte("0123456789.+-", chars[n].c) >= 0 {
		digits = append(digits, chars[n].c)
		n++
	}
	if len(digits) == 0 {
		if n < len(chars) && (chars[n].c == '#' || chars[n].c == '[') {
			return w, nil, wrong(parameters, w.column, "%c takes its number from a parameter or an expression, which this reader does not follow.", w.letter)
		}
		return w, nil, wrong(badText, w.column, "%c has no number.", w.letter)
	}
	v, ok := number(string(digits))
	switch {
	case !ok:
		return w, nil, wrong(badText, w.column, "%c%s is no plain number.", w.letter, string(digits))
	case v > most || v < -most:
		return w, nil, wrong(badValue, w.column, "%c%s is beyond anything a machine reaches.", w.letter, string(digits))
	}
	w.value = v
	return w, chars[n:], nil
}

// number reads an optional sign, digits and at most one point, no exponent.
func number(s string) (float64, bool) {
	body := strings.TrimLeft(s, "+-")
	if len(s)-len(body) > 1 || strings.ContainsAny(body, "+-") || strings.Count(body, ".") > 1 || body == "." || body == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}
