// Package published runs checks of the program against the outside: published
// tables, worked examples, open data and closed forms. A check is an ordinary test
// that also reports itself, so that docs/checks.md is what the tests really saw.
package published

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"pourwright/internal/source"
)

// LogVar names the environment variable that holds the file to which checks
// append one JSON line each.
const LogVar = "POURWRIGHT_CHECK_LOG"

// DataVar names the environment variable that holds the folder of outside data.
const DataVar = "POURWRIGHT_CHECKS"

// A Check compares one value of ours with one from outside.
type Check struct {
	Room   string  `json:"room"` // package under test: "relief"
	Name   string  `json:"name"` // what is compared, in words
	Ours   float64 `json:"ours"`
	Theirs float64 `json:"theirs"`
	Unit   string  `json:"unit"`
	Tol    float64 `json:"tol"`    // absolute, in Unit: the printed precision unless said
	Source string  `json:"source"` // key in package source
	Place  string  `json:"place"`  // section, table, equation
}

// OK reports whether ours is within tolerance of theirs; NaN never is.
func (c Check) OK() bool { return math.Abs(c.Ours-c.Theirs) <= c.Tol }

// Run asserts every check and records it where LogVar asks for it.
func Run(t *testing.T, checks ...Check) {
	t.Helper()
	for _, c := range checks {
		if _, err := source.Lookup(c.Source); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		if !c.OK() {
			t.Errorf("%s: got %v %s, published %v, tolerance %v [%s %s]", c.Name, c.Ours, c.Unit, c.Theirs, c.Tol, c.Source, c.Place)
		}
		record(t, c)
	}
}

func record(t *testing.T, c Check) {
	t.Helper()
	path := os.Getenv(LogVar)
	if path == "" {
		return
	}
	line, err := json.Marshal(c)
	if err != nil {
		t.Fatalf("record check: %v", err)
	}
	f, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Fatalf("record check: %v", err)
	}
	defer f.Close()
	if _, err := f.Write(append(line, '\n')); err != nil {
		t.Fatalf("record check: %v", err)
	}
}

// Data returns the path of an outside data file and skips the test, saying so,
// where the data folder is absent.
func Data(tb testing.TB, parts ...string) string {
	tb.Helper()
	dir := os.Getenv(DataVar)
	if dir == "" {
		tb.Skipf("outside checks absent: set %s to the folder of outside data", DataVar)
	}
	path := filepath.Join(append([]string{dir}, parts...)...)
	if _, err := os.Stat(path); err != nil {
		tb.Skipf("outside checks absent: %v", err)
	}
	return path
}
