package rs274

import "strings"

// A block is a line whose words are sorted and agree with each other.
type block struct {
	has   [26]bool
	value [26]float64
	at    [26]int // column
	g, m  [override + 1]group
}

// A group is the word of a modal group on a line, if any.
type group struct {
	there  bool
	code   code
	column int
}

func (b *block) word(letter byte) (float64, bool) {
	return b.value[letter-'A'], b.has[letter-'A']
}

func (b *block) column(letter byte) int { return b.at[letter-'A'] }

// axes reports whether a linear axis moves.
func (b *block) axes() bool {
	return b.has['X'-'A'] || b.has['Y'-'A'] || b.has['Z'-'A']
}

// sortWords makes a block of the words of a line, or says why they do not go together.
func sortWords(ws []word) (*block, *fault) {
	b := &block{}
	ms := 0
	for _, w := range ws {
		var f *fault
		switch {
		case strings.IndexByte(letters, w.letter) < 0:
			f = wrong(unknownWord, w.column, "%s is no word of RS-274.", w)
		case w.letter == 'G':
			f = b.addG(w)
		case w.letter == 'M':
			if ms++; ms > 4 {
				return nil, wrong(modalClash, w.column, "The line has more than four M words.")
			}
			f = b.addM(w)
		default:
			f = b.add(w)
		}
		if f != nil {
			return nil, f
		}
	}
	return b, b.agrees()
}

func (b *block) add(w word) *fault {
	i := w.letter - 'A'
	if b.has[i] {
		return wrong(repeated, w.column, "The line has two %c words.", w.letter)
	}
	b.has[i], b.value[i], b.at[i] = true, w.value, w.column
	switch {
	case w.letter == 'A' || w.letter == 'B' || w.letter == 'C':
		return wrong(notFollowed, w.column, "%s turns a rotary axis, which this reader does not follow.", w)
	case (w.letter == 'F' || w.letter == 'S' || w.letter == 'P') && w.value < 0:
		return wrong(badValue, w.column, "%s is negative.", w)
	case (w.letter == 'T' || w.letter == 'D' || w.letter == 'H' || w.letter == 'L') && (w.value < 0 || w.value != float64(int(w.value))):
		return wrong(badValue, w.column, "%s must be a whole number from 0.", w)
	}
	return nil
}

func (b *block) addG(w word) *fault {
	c, ok := codeOf(w.value)
	g, known := gGroups[c]
	if !ok || !known {
		return wrong(unknownWord, w.column, "%s is no word of RS-274.", w)
	}
	if what, no := follows[c]; no {
		return wrong(notFollowed, w.column, "%s %s, which this reader does not follow.", w, what)
	}
	if b.g[g].there {
		return wrong(modalClash, w.column, "%s and %s are of one modal group and stand on one line.", b.g[g].code.of('G'), w)
	}
	b.g[g] = group{true, c, w.column}
	return nil
}

func (b *block) addM(w word) *fault {
	c, ok := codeOf(w.value)
	g, known := mGroups[c]
	if !ok || !known {
		return wrong(unknownWord, w.column, "%s is no word of RS-274.", w)
	}
	if before := b.m[g]; before.there && !(g == coolant && c != 90 && before.code != 90 && c != before.code) {
		return wrong(modalClash, w.column, "%s and %s are of one modal group and stand on one line.", before.code.of('M'), w)
	}
	b.m[g] = group{true, c, w.column}
	return nil
}

// agrees holds the words of a line against each other, as far as that needs no state.
func (b *block) agrees() *fault {
	move, other := b.g[motion], b.g[nonModal]
	switch {
	case move.there && move.code == 800 && b.axes():
		return wrong(noMotion, move.column, "G80 stops motion and stands with axis words.")
	case move.there && move.code <= 10 && !b.axes():
		return wrong(noMotion, move.column, "%s has no axis word.", move.code.of('G'))
	case move.there && other.there && usesAxes[other.code]:
		return wrong(modalClash, other.column, "%s and %s both take the axis words.", move.code.of('G'), other.code.of('G'))
	case other.there && other.code == 40 && !b.has['P'-'A']:
		return wrong(badValue, other.column, "G4 waits and has no P word to say how long.")
	}
	return b.used()
}

// used reports the first word that no other uses.
func (b *block) used() *fault {
	if _, p := b.word('P'); p && !(b.g[nonModal].there && b.g[nonModal].code == 40) {
		return wrong(unused, b.column('P'), "P has no word that uses it.")
	}
	for _, l := range []byte("DHLQ") {
		if _, there := b.word(l); there {
			return wrong(unused, b.column(l), "%c has no word that uses it.", l)
		}
	}
	return nil
}
