package toolpath

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// words is a line of a program as the tests take it apart.
type words struct {
	text string
	of   map[byte]float64
	gs   []float64
}

var wordForm = regexp.MustCompile(`([A-Z])([-+]?[0-9]*\.?[0-9]+)`)

// blocks takes a program apart and holds every line to the form of words.
func blocks(t *testing.T, text string) []words {
	t.Helper()
	var out []words
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if strings.HasPrefix(line, "(") {
			if strings.Count(line, "(") != 1 || strings.Count(line, ")") != 1 || !strings.HasSuffix(line, ")") {
				t.Fatalf("comment %q", line)
			}
			continue
		}
		b := words{text: line, of: map[byte]float64{}}
		if rest := strings.TrimSpace(wordForm.ReplaceAllString(line, "")); rest != "" {
			t.Fatalf("line %q holds %q", line, rest)
		}
		for _, m := range wordForm.FindAllStringSubmatch(line, -1) {
			v, err := strconv.ParseFloat(m[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			if letter := m[1][0]; letter == 'G' {
				b.gs = append(b.gs, v)
			} else if _, twice := b.of[letter]; twice {
				t.Fatalf("line %q has two words %c", line, letter)
			} else {
				b.of[letter] = v
			}
		}
		out = append(out, b)
	}
	return out
}

// A step is a motion of a program in mm, from its start to its end.
type step struct {
	g             int
	x0, y0, z0    float64
	x, y, z, i, j float64
	feed          float64
	known         bool // the start is known
	line          string
}

// steps follows a program from line to line, in mm.
func steps(t *testing.T, text string) []step {
	t.Helper()
	unit := 1.0
	var out []step
	var at step
	xKnown, zKnown := false, false
	for _, b := range blocks(t, text) {
		g := -1
		for _, v := range b.gs {
			switch v {
			case 20:
				unit = 25.4
			case 0, 1, 2, 3:
				g = int(v)
			}
		}
		if f, ok := b.of['F']; ok {
			at.feed = f * unit
		}
		if g < 0 {
			continue
		}
		s := step{g: g, x0: at.x, y0: at.y, z0: at.z, x: at.x, y: at.y, z: at.z, feed: at.feed, line: b.text, known: xKnown && zKnown}
		for letter, to := range map[byte]*float64{'X': &s.x, 'Y': &s.y, 'Z': &s.z, 'I': &s.i, 'J': &s.j} {
			if v, ok := b.of[letter]; ok {
				*to = v * unit
			}
		}
		_, hasX := b.of['X']
		_, hasZ := b.of['Z']
		xKnown, zKnown = xKnown || hasX, zKnown || hasZ
		at.x, at.y, at.z = s.x, s.y, s.z
		out = append(out, s)
	}
	return out
}
