// Package source is the register of published sources. Every constant, formula
// and check in the program names a key of it.
package source

import (
	"fmt"
	"slices"
)

// Kind says what sort of thing a source is, and so how far to trust it.
type Kind string

// The kinds of source.
const (
	Standard Kind = "standard"        // a published standard
	Handbook Kind = "handbook"        // a handbook or textbook table
	Paper    Kind = "paper"           // a scientific paper or report
	OpenData Kind = "open data"       // an open data set
	Analytic Kind = "analytic"        // a closed form anyone can derive
	Practice Kind = "common practice" // common practice of the trade, no source
	Memory   Kind = "from memory"     // a value not looked up again; treat as indicative
	Chosen   Kind = "chosen"          // a judgement of this program, meant to be changed
)

// A Source is one entry of the register.
type Source struct {
	Key      string // lower case, hyphens: "iso-10456"
	Kind     Kind
	Citation string // author, year, title, number, section
	Note     string // what was read, what was not, known errors
}

// Register returns all sources, ordered by key.
func Register() []Source {
	all := slices.Concat(general, geometry, concrete, resin, structure, form, foam, cutting, nesting)
	slices.SortFunc(all, func(a, b Source) int {
		if a.Key < b.Key {
			return -1
		}
		return 1
	})
	return all
}

// Lookup returns the source of key.
func Lookup(key string) (Source, error) {
	for _, s := range Register() {
		if s.Key == key {
			return s, nil
		}
	}
	return Source{}, fmt.Errorf("no source %q in the register", key)
}
