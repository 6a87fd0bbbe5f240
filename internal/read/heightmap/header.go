package heightmap

import (
	"bytes"
	"math"
	"strconv"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A header is what stands above the rows of a text grid.
type header struct {
	cell       float64 // mm, 0 when not stated
	unit       float64 // of the values, mm
	heights    bool    // values are heights, not depths
	nodata     float64 // not a number when not stated
	cols, rows int     // 0 when not stated
}

func newHeader() header { return header{unit: 1, nodata: math.NaN()} }

// headerKeys lists the keys for the remedy.
const headerKeys = "Known lines are cell, unit, values, nodata, ncols, nrows, cellsize; a remark starts with #."

// read takes one line of key and value; false when the line is none.
func (h *header) read(at finding.Where, line []byte) (bool, error) {
	text := bytes.TrimLeft(line, " \t")
	at.Column = len(line) - len(text) + 1
	if len(text) == 0 || !letter(text[0]) {
		return false, nil
	}
	cut := bytes.IndexFunc(text, func(r rune) bool { return r == ':' || r == ' ' || r == '\t' })
	if cut < 0 {
		return false, fail(at, "Write numbers with a decimal point, parted by spaces or commas. "+headerKeys, "%.20q is no number", text)
	}
	key := strings.ToLower(string(text[:cut]))
	value := strings.TrimSpace(strings.TrimLeft(string(text[cut:]), ": \t"))
	at.Field = key
	if !h.set(key, value) {
		if !known(key) {
			return false, fail(at, headerKeys, "unknown line %.20q above the rows", key)
		}
		return false, fail(at, headerKeys, "%.20q is no value for %s", value, key)
	}
	return true, nil
}

func letter(b byte) bool { return b|0x20 >= 'a' && b|0x20 <= 'z' }

func known(key string) bool {
	switch key {
	case "cell", "cellsize", "unit", "values", "nodata", "nodata_value", "ncols", "nrows", "xllcorner", "yllcorner", "xllcenter", "yllcenter":
		return true
	}
	return false
}

// set puts value for key; false when the key or the value is not known.
func (h *header) set(key, value string) (ok bool) {
	switch key {
	case "cell", "cellsize":
		h.cell, ok = length(value)
		return ok && h.cell > 0 && h.cell <= float64(100*units.Metre)
	case "unit":
		h.unit, ok = lengthUnits[strings.ToLower(value)]
	case "values":
		h.heights = strings.EqualFold(value, "height")
		ok = h.heights || strings.EqualFold(value, "depth")
	case "nodata", "nodata_value":
		h.nodata, ok = number(value)
	case "ncols":
		h.cols, ok = count(value)
	case "nrows":
		h.rows, ok = count(value)
	case "xllcorner", "yllcorner", "xllcenter", "yllcenter":
		_, ok = number(value)
	}
	return ok
}

// check compares the stated numbers of columns and rows with those read.
func (h header) check(where finding.Where, cols, rows int) error {
	if (h.cols != 0 && h.cols != cols) || (h.rows != 0 && h.rows != rows) {
		return fail(where, "Correct ncols and nrows, or the rows.", "the file states %d columns and %d rows and has %d and %d", h.cols, h.rows, cols, rows)
	}
	return nil
}

var lengthUnits = map[string]float64{
	"mm": 1, "cm": float64(units.Centimetre), "m": float64(units.Metre), "in": float64(units.Inch), "ft": float64(units.Foot),
}

// length reads "4", "4 mm" or "0.25in", in mm.
func length(s string) (float64, bool) {
	at := strings.LastIndexAny(s, "0123456789.") + 1
	unit := 1.0
	if name := strings.ToLower(strings.TrimSpace(s[at:])); name != "" {
		u, ok := lengthUnits[name]
		if !ok {
			return 0, false
		}
		unit = u
	}
	v, ok := number(strings.TrimSpace(s[:at]))
	return v * unit, ok
}

func number(s string) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func count(s string) (int, bool) {
	v, err := strconv.Atoi(s)
	return v, err == nil && v > 0
}
