package heightmap

import (
	"bytes"
	"math"
	"slices"
	"strconv"

	"pourwright/internal/finding"
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// largestValue bounds a value of a text grid, mm. Chosen: a hundred metres; beyond
// it a unit is wrong.
const largestValue = 1e5

// leastDepth is the least depth that is one, mm: a nanometre.
const leastDepth = 1e-6

// A lines walks a text by lines.
type lines struct {
	rest []byte
	n    int // of the line last taken
}

// next returns the next line without its end and comment.
func (l *lines) next() ([]byte, bool) {
	if len(l.rest) == 0 {
		return nil, false
	}
	l.n++
	line, rest, _ := bytes.Cut(l.rest, []byte("\n"))
	l.rest = rest
	if i := bytes.IndexByte(line, '#'); i >= 0 {
		line = line[:i]
	}
	return bytes.TrimSuffix(line, []byte("\r")), true
}

// A table is the rows of a text grid as they stand, in the file's unit.
type table struct {
	head   header
	cols   int
	rows   int
	values []float64
	lost   int // values that are missing
}

func readText(where finding.Where, data []byte, opt Options) (Map, []finding.Finding, error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if bytes.IndexByte(data[:min(len(data), 4096)], 0) >= 0 {
		return Map{}, nil, fail(where, "Save the height map as a PNG picture or as a plain text grid.", "neither a PNG picture nor a text grid")
	}
	t, err := parseTable(where, data)
	if err != nil {
		return Map{}, nil, err
	}
	dx, dy, ok := spacing(t.cols, t.rows, t.head.cell, opt)
	if !ok {
		return Map{}, nil, fail(where, "State the length of the map on the piece, or write \"cell: 4 mm\" above the rows.", "the size of a cell is not known")
	}
	f, err := grid.New(t.cols, t.rows, dx, dy)
	if err != nil {
		return Map{}, nil, fail(where, "State a larger map.", "%v", err)
	}
	for r := range t.rows {
		copy(f.Z[(t.rows-1-r)*t.cols:][:t.cols], t.values[r*t.cols:])
	}
	found := checkStretch(where, dx, dy)
	found = append(found, checkCell(where, t.head.cell, dx)...)
	found = append(found, t.depths(where, f, float64(opt.Depth), opt.Invert)...)
	return Map{Name: where.File, Depth: f}, found, nil
}

func checkCell(where finding.Where, own, dx float64) []finding.Finding {
	if own == 0 || math.Abs(dx/own-1) <= 0.001 {
		return nil
	}
	return []finding.Finding{resized.At(where, "The file says a cell is %.4g mm, the stated length makes it %.4g mm.", own, dx).Measured(own, dx, "mm")}
}

// parseTable reads header and rows.
func parseTable(where finding.Where, data []byte) (table, error) {
	t := table{head: newHeader()}
	l := lines{rest: data}
	for {
		line, ok := l.next()
		if !ok {
			break
		}
		at := where
		at.Line = l.n
		if t.rows == 0 {
			isKey, err := t.head.read(at, line)
			if err != nil {
				return t, err
			}
			if isKey {
				continue
			}
		}
		if err := t.row(at, line); err != nil {
			return t, err
		}
	}
	if t.rows == 0 {
		return t, fail(where, "Write one row of numbers a line.", "the text grid has no rows")
	}
	if err := t.head.check(where, t.cols, t.rows); err != nil {
		return t, err
	}
	return t, checkSize(where, t.cols, t.rows)
}

func parts(b byte) bool { return b == ' ' || b == '\t' || b == ',' || b == ';' }

// row reads one line of values; a blank one is none.
func (t *table) row(at finding.Where, line []byte) error {
	n := 0
	for i := 0; ; n++ {
		for i < len(line) && parts(line[i]) {
			i++
		}
		if i == len(line) {
			break
		}
		from := i
		for i < len(line) && !parts(line[i]) {
			i++
		}
		at.Column = from + 1
		if n >= maxSide || len(t.values) >= maxNodes {
			return fail(at, "Use a coarser map: a value every half millimetre is plenty.", "too many values: at most %d a side are read", maxSide)
		}
		if t.rows > 0 && n >= t.cols {
			return fail(at, "Make all rows the same length.", "row has more than the %d values of the first row", t.cols)
		}
		if err := t.value(at, line[from:i]); err != nil {
			return err
		}
	}
	switch {
	case n == 0:
		return nil
	case t.rows == 0:
		t.cols = n
	case n < t.cols:
		at.Column = len(line) + 1
		return fail(at, "Make all rows the same length.", "row has %s, the first row has %d", units.Count(n, "value", "values"), t.cols)
	}
	if t.rows++; t.rows > maxSide {
		return fail(at, "Use a coarser map.", "more than %d rows", maxSide)
	}
	return nil
}

// value adds one value in mm, a missing one as not a number.
func (t *table) value(at finding.Where, word []byte) error {
	v, err := strconv.ParseFloat(string(word), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || slices.Contains(word, '_') || slices.Contains(word, 'x') {
		return fail(at, "Write numbers with a decimal point, parted by spaces or commas.", "%.20q is no number", word)
	}
	if v == t.head.nodata {
		t.lost++
		t.values = append(t.values, math.NaN())
		return nil
	}
	if v *= t.head.unit; math.Abs(v) > largestValue {
		return fail(at, "Check the unit of the values.", "a height of %.4g mm", v)
	}
	t.values = append(t.values, v)
	return nil
}

// depths turns the values in f into depths below the face and says what it assumed.
func (t table) depths(where finding.Where, f grid.Field, depth float64, invert bool) []finding.Finding {
	low, high := f.Range()
	if !(high-low > leastDepth) {
		fill(f, 0)
		return []finding.Finding{flat.At(where, "The whole map has one height, so it holds no basin.")}
	}
	var found []finding.Finding
	heights := t.head.heights != invert
	switch {
	case heights:
		scale(f, -1, high)
	case high <= 0:
		found = append(found, signs.At(where, "No value is above 0, so they are read as heights below the face, %.4g to %.4g mm.", low, high))
		scale(f, -1, 0)
	case low < 0:
		found = append(found, aboveFace.At(where, "The lowest value, %.4g mm, would stand above the show face; what does is cut off there.", low).Measured(low, 0, "mm"))
	}
	if t.lost > 0 {
		found = append(found, missing.At(where, "%d of %d values are missing and lie in the show face.", t.lost, len(f.Z)))
	}
	fill(f, 0)
	_, deepest := f.Range()
	if deepest <= leastDepth {
		return append(found, flat.At(where, "Nothing lies below the show face, so the map holds no basin."))
	}
	if depth > 0 && math.Abs(depth/deepest-1) > 1e-9 {
		found = append(found, rescaled.At(where, "The map is %.4g mm deep; its depths are scaled by %.4g to the stated %.4g mm.", deepest, depth/deepest, depth).Measured(deepest, depth, "mm"))
		scale(f, depth/deepest, 0)
	}
	return found
}

// scale puts k z + d for every z of f.
func scale(f grid.Field, k, d float64) {
	for i, z := range f.Z {
		f.Z[i] = k*z + d
	}
}

// fill puts least for what is missing or below it.
func fill(f grid.Field, least float64) {
	for i, z := range f.Z {
		if !(z > least) {
			f.Z[i] = least
		}
	}
}
