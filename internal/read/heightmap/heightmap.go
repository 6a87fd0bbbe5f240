package heightmap

import (
	"bytes"
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/grid"
	"pourwright/internal/units"
)

// The limits of a file.
const (
	maxBytes = 64 << 20
	maxSide  = 4000
	maxNodes = 16_000_000
)

// Options says how large and how deep the map is on the piece.
type Options struct {
	// Length and Width are the size on the piece along x and y. With one of them 0
	// the cells are square; with both 0 the file must state its cell size.
	Length, Width units.Length
	// Depth is what black stands for in a picture, which must have it. In a text
	// grid it is the depth of the deepest value, to which all are scaled; 0 leaves
	// the values as they are.
	Depth units.Length
	// Invert takes black as the show face and white as the depth.
	Invert bool
}

// A Map is depths below the show face, mm, positive down, on a grid whose lower
// left node is the origin, y up, as seen on the finished piece.
type Map struct {
	Name  string
	Depth grid.Field
}

// An Error says what is wrong with a file, where, and what to do.
type Error struct {
	Where  finding.Where
	Text   string
	Remedy string
}

// Error returns "file:line:column: what is wrong".
func (e *Error) Error() string { return e.Where.String() + ": " + e.Text }

func fail(where finding.Where, remedy, format string, args ...any) error {
	return &Error{Where: where, Text: fmt.Sprintf(format, args...), Remedy: remedy}
}

// pngMark begins every PNG file. Source: [w3c-png] section 5.2.
const pngMark = "\x89PNG\r\n\x1a\n"

// Read reads the file called name. What it says of itself by its first bytes counts,
// not its name. Errors are of type *Error.
func Read(name string, data []byte, opt Options) (Map, []finding.Finding, error) {
	where := finding.Where{File: name}
	switch {
	case len(data) > maxBytes:
		return Map{}, nil, fail(where, "Use a coarser map.", "height map of %.0f MiB, at most %d are read", float64(len(data))/(1<<20), maxBytes>>20)
	case len(data) == 0:
		return Map{}, nil, fail(where, "Save the height map again.", "height map is empty")
	case !sane(opt.Length) || !sane(opt.Width) || !sane(opt.Depth):
		return Map{}, nil, fail(where, "State length, width and depth of the map on the piece as positive lengths.",
			"height map of %.4g x %.4g mm, %.4g mm deep", float64(opt.Length), float64(opt.Width), float64(opt.Depth))
	case bytes.HasPrefix(data, []byte(pngMark)):
		return readPNG(where, data, opt)
	}
	return readText(where, data, opt)
}

// sane reports whether l is none or a length a map can have.
func sane(l units.Length) bool { return l >= 0 && l <= 100*units.Metre }

// spacing returns the distance between nodes from the options, or from the file's
// own cell where they state none; false when nobody does.
func spacing(cols, rows int, cell float64, opt Options) (dx, dy float64, ok bool) {
	dx, dy = float64(opt.Length)/float64(cols-1), float64(opt.Width)/float64(rows-1)
	switch {
	case dx > 0 && dy > 0:
	case dx > 0:
		dy = dx
	case dy > 0:
		dx = dy
	default:
		dx, dy = cell, cell
	}
	return dx, dy, dx > 0
}

// checkSize refuses a grid that is too small or too large.
func checkSize(where finding.Where, cols, rows int) error {
	if cols < 2 || rows < 2 {
		return fail(where, "Use a map of at least 2 x 2 values.", "height map of %d x %d values", cols, rows)
	}
	if cols > maxSide || rows > maxSide || cols*rows > maxNodes {
		return fail(where, "Use a coarser map: a value every half millimetre is plenty.", "height map of %d x %d values, at most %d a side are read", cols, rows, maxSide)
	}
	return nil
}

// checkStretch says when the map is stretched more one way than the other.
func checkStretch(where finding.Where, dx, dy float64) []finding.Finding {
	if math.Abs(dx/dy-1) <= 0.01 {
		return nil
	}
	return []finding.Finding{stretched.At(where, "The map's cells are %.3g mm long and %.3g mm wide, so it is stretched %.0f %% one way.", dx, dy, 100*math.Abs(dx/dy-1))}
}
