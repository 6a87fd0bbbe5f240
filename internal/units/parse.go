package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A ParseError says why a typed quantity was not understood and what to type
// instead.
type ParseError struct {
	Text    string // as typed
	Problem string // what is wrong
	Remedy  string // what to do
}

// Error returns the problem with the text it is about.
func (e *ParseError) Error() string { return fmt.Sprintf("%q: %s", e.Text, e.Problem) }

// Limits of what counts as a number typed by a person.
const (
	maxText  = 64   // characters of one quantity
	maxValue = 1e12 // in the base unit
)

// A scale is one unit that may be typed: how much of the base unit it is, and the
// family in which a smaller unit may follow a larger one.
type scale struct {
	factor float64
	family string // units of one family may follow each other: "3 ft 4 in"
	ask    string // not empty: the unit is ambiguous, and this is the question
}

// A scales table holds the units of one kind of quantity.
type scales struct {
	kind    string // "length"
	example string // for remedies
	units   map[string]scale
	then    string // family in which a bare number after a prime is inches
}

// number reads the whole text as one quantity. def names the unit of a bare number;
// "" asks for a unit.
func (s *scales) number(text, def string) (float64, error) {
	fail := func(problem, remedy string, args ...any) (float64, error) {
		return 0, &ParseError{text, problem, fmt.Sprintf(remedy, args...)}
	}
	if utf8.RuneCountInString(text) > maxText {
		return fail("too long for a "+s.kind, "write one %s, for example %s", s.kind, s.example)
	}
	r := reader{text: text, rest: clean(text)}
	if r.rest == "" {
		return fail("empty", "write a %s, for example %s", s.kind, s.example)
	}
	negative := r.take("-")
	if !negative {
		r.take("+")
	}
	total, err := s.sum(&r, def)
	if err != nil {
		return 0, err
	}
	if math.Abs(total) > maxValue || math.IsNaN(total) {
		return fail("out of all measure", "write a %s of this world, for example %s", s.kind, s.example)
	}
	if negative {
		total = -total
	}
	return total, nil
}

// sum adds the parts of a compound: 3 ft 4 1/2 in.
func (s *scales) sum(r *reader, def string) (float64, error) {
	var total, last float64
	family := ""
	for part := 0; ; part++ {
		value, err := r.value()
		if err != nil {
			return 0, s.hint(err)
		}
		u, name, err := s.unit(r, def, part, family)
		if err != nil {
			return 0, err
		}
		if part > 0 && (u.family == "" || u.family != family || u.factor >= last) {
			return 0, &ParseError{r.text, "two parts that do not belong together", "write one unit, or feet then inches, pounds then ounces: " + s.example}
		}
		if part > 0 && value*u.factor >= last {
			return 0, &ParseError{r.text, fmt.Sprintf("%v %s is more than one of the unit before it", value, name), "check the smaller part, or write the whole in one unit"}
		}
		total, last, family = total+value*u.factor, u.factor, u.family
		if r.rest == "" {
			return total, nil
		}
		if r.take("-") || r.take("and ") {
			r.space()
		}
	}
}

// unit reads the unit after a number; a bare first number takes def.
func (s *scales) unit(r *reader, def string, part int, family string) (scale, string, error) {
	name := s.longest(r.rest)
	switch {
	case name != "":
		r.rest = strings.TrimLeft(r.rest[len(name):], " .")
		u := s.units[name]
		if u.ask != "" {
			return u, name, &ParseError{r.text, u.ask, "write which: " + s.example}
		}
		return u, name, nil
	case r.rest != "":
		return scale{}, "", &ParseError{r.text, fmt.Sprintf("%q is not a unit of %s", r.rest, s.kind), "write a " + s.kind + " such as " + s.example}
	case part == 0 && def != "":
		return s.units[def], def, nil
	case part == 1 && family == s.then && r.prime:
		return s.units["in"], "in", nil // 5'6 means five feet six inches
	case part > 0:
		return scale{}, "", &ParseError{r.text, "the last number has no unit", "write its unit too, for example " + s.example}
	}
	return scale{}, "", &ParseError{r.text, "no unit", "write the unit too, for example " + s.example}
}

// longest returns the longest unit name that rest begins with and that ends there:
// "m" is not taken from "mm", nor "cm" from "cm3".
func (s *scales) longest(rest string) string {
	best := ""
	for name := range s.units {
		if len(name) > len(best) && strings.HasPrefix(rest, name) && ends(name, rest[len(name):]) {
			best = name
		}
	}
	return best
}

// ends reports whether a unit name is over where rest begins.
func ends(name, rest string) bool {
	if rest == "" {
		return true
	}
	c, prev := rest[0], name[len(name)-1]
	switch {
	case isLetter(c) || c == '/' || c == '%' || c >= utf8.RuneSelf:
		return false
	case isDigit(c):
		// 5'6" and 3ft4in go on; ft3 and cm2 do not end here
		return !isLetter(prev) || strings.ContainsFunc(rest, func(r rune) bool { return r == '"' || r == '\'' || (r >= 'a' && r <= 'z') })
	}
	return true
}

// hint adds the table's example to an error about digits.
func (s *scales) hint(err error) error {
	e := err.(*ParseError) // reader.value returns nothing else
	if e.Remedy == "" {
		e.Remedy = "write a " + s.kind + " such as " + s.example
	}
	return e
}

// A reader goes through one cleaned text.
type reader struct {
	text  string // as typed, for errors
	rest  string
	prime bool // a ' was passed
}

func (r *reader) space() { r.rest = strings.TrimLeft(r.rest, " ") }

func (r *reader) take(prefix string) bool {
	if !strings.HasPrefix(r.rest, prefix) {
		return false
	}
	r.rest = strings.TrimLeft(r.rest[len(prefix):], " ")
	return true
}

// value reads 34.9, 34,9, 3/8, 1 3/8 or 1-3/8; the last is one and three eighths.
func (r *reader) value() (float64, error) {
	r.prime = strings.Contains(clean(r.text), "'")
	whole, isWhole, err := r.decimal()
	if err != nil {
		return 0, err
	}
	if !isWhole {
		r.space()
		return whole, nil
	}
	if r.take("/") {
		return r.over(whole)
	}
	mark := r.rest
	r.rest = strings.TrimLeft(r.rest, " -")
	if !startsFraction(r.rest) {
		r.rest = mark
		r.space()
		return whole, nil
	}
	num, _, err := r.decimal()
	if err != nil {
		return 0, err
	}
	r.space()
	r.take("/")
	part, err := r.over(num)
	if err != nil {
		return 0, err
	}
	if part >= 1 {
		return 0, &ParseError{r.text, "the fraction after the whole number is not less than one", "write a proper fraction such as 1 3/8"}
	}
	return whole + part, nil
}

// over reads the lower number of a fraction.
func (r *reader) over(num float64) (float64, error) {
	den, whole, err := r.decimal()
	if err != nil {
		return 0, err
	}
	if den == 0 || !whole {
		return 0, &ParseError{r.text, "a fraction needs a whole number below the line", "write a fraction such as 3/8"}
	}
	r.space()
	if strings.HasPrefix(r.rest, "/") {
		return 0, &ParseError{r.text, "two fraction bars", "write one fraction such as 1 3/8"}
	}
	return num / den, nil
}

// startsFraction reports whether s begins with digits/digits.
func startsFraction(s string) bool {
	i := 0
	for i < len(s) && isDigit(s[i]) {
		i++
	}
	if i == 0 {
		return false
	}
	t := strings.TrimLeft(s[i:], " ")
	return strings.HasPrefix(t, "/") && len(t) > 1 && (isDigit(t[1]) || t[1] == ' ')
}

// decimal reads digits with at most one decimal point or comma and reports whether
// it was a whole number.
func (r *reader) decimal() (value float64, whole bool, err error) {
	i := 0
	for i < len(r.rest) && (isDigit(r.rest[i]) || r.rest[i] == '.' || r.rest[i] == ',') {
		i++
	}
	digits, rest := r.rest[:i], r.rest[i:]
	if strings.HasSuffix(digits, ",") {
		return 0, false, &ParseError{r.text, "a comma with nothing after it", "write the number with a decimal point"}
	}
	digits, err = r.point(digits)
	if err != nil {
		return 0, false, err
	}
	if hasExponent(rest) {
		return 0, false, &ParseError{r.text, "powers of ten and hexadecimal numbers are not read", "write the number out"}
	}
	v, perr := strconv.ParseFloat(digits, 64)
	if perr != nil || !strings.ContainsAny(digits, "0123456789") {
		return 0, false, &ParseError{Text: r.text, Problem: "not a number"}
	}
	r.rest = rest
	return v, !strings.Contains(digits, "."), nil
}

// point settles the decimal comma. One comma is a decimal comma, unless exactly
// three digits follow a number that does not start with 0: 1,220 may be one
// thousand two hundred and twenty or a little over one, so the maker is asked.
func (r *reader) point(digits string) (string, error) {
	commas, points := strings.Count(digits, ","), strings.Count(digits, ".")
	if commas == 0 && points <= 1 {
		return digits, nil
	}
	at := strings.IndexByte(digits, ',')
	plain := strings.NewReplacer(",", "", ".", "").Replace(digits)
	if commas+points > 1 {
		return "", &ParseError{r.text, "more than one comma or point in a number", "write it without separators of thousands, with a decimal point"}
	}
	if len(digits)-at-1 == 3 && digits[0] != '0' && at > 0 {
		return "", &ParseError{r.text, "the comma may mean thousands or decimals", fmt.Sprintf("write %s or %s", plain, strings.Replace(digits, ",", ".", 1))}
	}
	return strings.Replace(digits, ",", ".", 1), nil
}

// hasExponent reports whether digits go on as 1e3 or 0x1f.
func hasExponent(rest string) bool {
	if len(rest) < 2 {
		return false
	}
	if rest[0] == 'x' || rest[0] == '_' {
		return true
	}
	return rest[0] == 'e' && (isDigit(rest[1]) || rest[1] == '-' || rest[1] == '+')
}

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'a' && c <= 'z' }

// typography maps what keyboards, phones and word processors put in to plain text.
var typography = strings.NewReplacer(
	"″", `"`, "“", `"`, "”", `"`, "„", `"`, "''", `"`, "′", "'", "’", "'", "‘", "'", "´", "'",
	"−", "-", "–", "-", "‐", "-", "‑", "-", "⁄", "/", "∕", "/",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\u2007", " ", "\t", " ",
	"²", "2", "³", "3", "^2", "2", "^3", "3", "℃", "°c", "℉", "°f", "µ", "u",
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// clean returns text in lower case, typography made plain, spaces single.
func clean(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(typography.Replace(text))), " ")
}
