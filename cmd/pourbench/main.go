// Command pourbench prints what the program measures of itself: the table of
// published checks and the register of sources.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"pourwright/internal/published"
	"pourwright/internal/source"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	switch {
	case len(args) == 2 && args[0] == "checks":
		checks, err := readChecks(args[1])
		if err != nil {
			return err
		}
		return writeChecks(out, checks)
	case len(args) == 1 && args[0] == "sources":
		return writeSources(out)
	case len(args) > 0 && args[0] == "heat":
		return runHeat(args[1:], out)
	case len(args) > 0 && args[0] == "cut":
		return runCut(args[1:], out)
	case len(args) > 0 && args[0] == "classes":
		return runClasses(args[1:], out)
	case len(args) > 0 && args[0] == "nest":
		return runNest(args[1:], out)
	}
	return fmt.Errorf("usage: pourbench checks LOG | pourbench sources | pourbench heat [--check] [--peer] [--full] | pourbench cut FILE.json [...] --seconds 1 | pourbench nest FILE.json [...] --seconds 10")
}

func readChecks(path string) ([]published.Check, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("read checks: %w", err)
	}
	defer f.Close()
	var out []published.Check
	sc := bufio.NewScanner(f)
	for line := 1; sc.Scan(); line++ {
		var c published.Check
		if err := json.Unmarshal(sc.Bytes(), &c); err != nil {
			return nil, fmt.Errorf("read checks: %s:%d: %w", path, line, err)
		}
		out = append(out, c)
	}
	slices.SortStableFunc(out, func(a, b published.Check) int {
		return strings.Compare(a.Room+"\x00"+a.Name, b.Room+"\x00"+b.Name)
	})
	return out, sc.Err()
}

func writeChecks(out io.Writer, checks []published.Check) error {
	w := bufio.NewWriter(out)
	fmt.Fprintf(w, "# Checks against the outside\n\nWritten by `make checks` from what the tests saw. Sources: docs/SOURCES.md.\n")
	room, bad := "", 0
	for _, c := range checks {
		if c.Room != room {
			room = c.Room
			fmt.Fprintf(w, "\n## %s\n\n| check | ours | theirs | difference | tolerance | unit | source | |\n|---|---|---|---|---|---|---|---|\n", room)
		}
		verdict := "ok"
		if !c.OK() {
			verdict = "**off**"
			bad++
		}
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s | %s | %s | %s |\n", cell(c.Name), number(c.Ours), number(c.Theirs),
			strconv.FormatFloat(c.Ours-c.Theirs, 'g', 2, 64), strconv.FormatFloat(c.Tol, 'g', 3, 64), cell(c.Unit), cell(c.Source+" "+c.Place), verdict)
	}
	fmt.Fprintf(w, "\n%d checks, %d within tolerance, %d off.\n", len(checks), len(checks)-bad, bad)
	return w.Flush()
}

// number prints at most seven significant digits.
func number(x float64) string {
	if math.Abs(x) >= 1e6 && math.Abs(x) < 1e15 {
		return strconv.FormatFloat(x, 'f', 0, 64)
	}
	return strconv.FormatFloat(x, 'g', 7, 64)
}

func cell(s string) string { return strings.TrimSpace(strings.ReplaceAll(s, "|", "\\|")) }

func writeSources(out io.Writer) error {
	w := bufio.NewWriter(out)
	fmt.Fprintf(w, "# Sources\n\nWritten by `go run ./cmd/pourbench sources`. The register is internal/source.\n\n| key | kind | source | note |\n|---|---|---|---|\n")
	for _, s := range source.Register() {
		fmt.Fprintf(w, "| %s | %s | %s | %s |\n", s.Key, s.Kind, cell(s.Citation), cell(s.Note))
	}
	return w.Flush()
}
