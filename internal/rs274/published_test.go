package rs274

import (
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"pourwright/internal/published"
)

// facts are what an outside file says of the language.
type facts struct {
	Line struct {
		MaxChars int `json:"max_chars"`
		MaxM     int `json:"max_M_words_per_line"`
	} `json:"line"`
	G map[string][]string `json:"modal_groups_G"`
	M map[string][]string `json:"modal_groups_M"`
}

func readFacts(t *testing.T) facts {
	t.Helper()
	data, err := os.ReadFile(published.Data(t, "gcode", "facts.json"))
	if err != nil {
		t.Fatal(err)
	}
	var f facts
	if err := json.Unmarshal(data, &f); err != nil {
		t.Fatal(err)
	}
	return f
}

// TestPublishedModalGroups: the words of every published group are of one group here, of
// no other, and there are no more.
func TestPublishedModalGroups(t *testing.T) {
	f := readFacts(t)
	total := map[byte]int{}
	for letter, groups := range map[byte]map[string][]string{'G': f.G, 'M': f.M} {
		ours := map[byte]map[code]int{'G': gGroups, 'M': mGroups}[letter]
		for name, words := range groups {
			first, same := -1, 0
			for _, w := range words {
				v, err := strconv.ParseFloat(w[1:], 64)
				c, ok := codeOf(v)
				g, known := ours[c]
				if err != nil || !ok || !known {
					t.Errorf("%s is not known", w)
					continue
				}
				if first < 0 {
					first = g
				}
				if g == first {
					same++
				}
			}
			total[letter] += len(words)
			published.Run(t, published.Check{Room: "rs274", Name: fmt.Sprintf("words of modal group %s of %c words", name, letter), Ours: float64(same), Theirs: float64(len(words)),
				Unit: "words", Source: standard, Place: "section 3.4, table 4"})
		}
		published.Run(t, published.Check{Room: "rs274", Name: fmt.Sprintf("%c words in all modal groups", letter), Ours: float64(len(ours)), Theirs: float64(total[letter]),
			Unit: "words", Source: standard, Place: "section 3.4, table 4"})
	}
}

// TestPublishedLimits tries the limits of a line and of an arc's radii from both sides:
// what is found is the last value that passes.
func TestPublishedLimits(t *testing.T) {
	f := readFacts(t)
	length := 0
	for n := 100; n < 400; n++ {
		if _, found := read("(" + strings.Repeat("x", n-2) + ")"); len(found) == 0 {
			length = n
		}
	}
	ms := 0
	for n, line := range []string{"", "M3", "M3 M7", "M3 M7 M8", "M3 M7 M8 M48", "M3 M7 M8 M48 M6"} {
		if _, found := read(line); len(found) == 0 {
			ms = n
		}
	}
	// the centre of a half circle is moved along its chord by d: its radii differ by 2 d
	most := func(units string, step float64) float64 {
		last := 0.0
		for k := 1; k < 40; k++ {
			d := float64(k) * step
			if _, found := Read("a.nc", head+units+"\nG0 X0 Y0 Z0\nG2 X10 Y0 I"+strconv.FormatFloat(5+d/2, 'f', 8, 64)+" F100\nM2\n"); !hasStop(found) {
				last = d
			}
		}
		return last
	}
	published.Run(t,
		published.Check{Room: "rs274", Name: "longest line", Ours: float64(length), Theirs: float64(f.Line.MaxChars), Unit: "characters", Source: standard, Place: "section 2.1"},
		published.Check{Room: "rs274", Name: "most M words of a line", Ours: float64(ms), Theirs: float64(f.Line.MaxM), Unit: "words", Source: standard, Place: "section 3.3"},
		published.Check{Room: "rs274", Name: "greatest difference of an arc's radii, mm", Ours: most("G4 P0", 0.0001), Theirs: 0.002, Unit: "mm", Tol: 0.0001, Source: standard, Place: "reference interpreter, header"},
		published.Check{Room: "rs274", Name: "greatest difference of an arc's radii, inches", Ours: most("G20", 0.00001), Theirs: 0.0002, Unit: "in", Tol: 0.00001, Source: standard, Place: "reference interpreter, header"})
}
