package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"

	"pourwright/internal/geom"
	"pourwright/internal/nest"
)

// A nestFile is one instance: pieces to lay on a strip as short as possible.
type nestFile struct {
	Name   string     `json:"name"`
	Height float64    `json:"strip_height"`
	Items  []nestItem `json:"items"`
}

type nestItem struct {
	ID        int          `json:"id"`
	Quantity  int          `json:"quantity"`
	Rotations *[]float64   `json:"rotations"` // absent: as drawn; null in the file reads the same
	Polygon   []geom.Point `json:"polygon"`
}

// Chosen: more pieces or corners than this are a slip of the pen, not an instance.
const (
	mostNestPieces  = 1000
	mostNestCorners = 2000
)

func readNestFile(path string) (*nestFile, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("read instance: %w", err)
	}
	f := &nestFile{}
	if err := json.Unmarshal(data, f); err != nil {
		return nil, fmt.Errorf("read instance %s%s: %w", path, jsonPlace(data, err), err)
	}
	if f.Name == "" {
		f.Name = filepath.Base(path[:len(path)-len(filepath.Ext(path))])
	}
	if err := f.check(); err != nil {
		return nil, fmt.Errorf("read instance %s: %w", path, err)
	}
	return f, nil
}

// jsonPlace returns ":line" of an error in data, where the error tells.
func jsonPlace(data []byte, err error) string {
	var at int64
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		at = syntax.Offset
	case errors.As(err, &kind):
		at = kind.Offset
	default:
		return ""
	}
	return fmt.Sprintf(":%d", 1+bytes.Count(data[:min(at, int64(len(data)))], []byte("\n")))
}

func (f *nestFile) check() error {
	if !(f.Height > 0) || math.IsInf(f.Height, 0) {
		return fmt.Errorf("strip_height is %g, want above 0", f.Height)
	}
	if len(f.Items) == 0 {
		return fmt.Errorf("no items")
	}
	total := 0
	for i, it := range f.Items {
		if err := it.check(f.Height); err != nil {
			return fmt.Errorf("item %d (id %d): %w", i, it.ID, err)
		}
		total += it.Quantity
	}
	if total == 0 || total > mostNestPieces {
		return fmt.Errorf("%d pieces in all, want 1 to %d", total, mostNestPieces)
	}
	return nil
}

func (it nestItem) check(height float64) error {
	switch {
	case it.Quantity < 0 || it.Quantity > mostNestPieces:
		return fmt.Errorf("quantity is %d, want 0 to %d", it.Quantity, mostNestPieces)
	case len(it.Polygon) < 3 || len(it.Polygon) > mostNestCorners:
		return fmt.Errorf("polygon has %d corners, want 3 to %d", len(it.Polygon), mostNestCorners)
	case it.Rotations != nil && len(*it.Rotations) == 0:
		return fmt.Errorf("rotations is an empty list: name at least one, 0 for as drawn")
	}
	for k, p := range it.Polygon {
		if !(math.Abs(p.X) <= 1e3*height && math.Abs(p.Y) <= 1e3*height) {
			return fmt.Errorf("corner %d (%g, %g) is further out than a thousand strip heights", k, p.X, p.Y)
		}
	}
	if math.Abs(geom.Ring(it.Polygon).Area()) < 1e-12*height*height {
		return fmt.Errorf("polygon has no area")
	}
	return nil
}

// area returns the area of all pieces.
func (f *nestFile) area() float64 {
	sum := 0.0
	for _, it := range f.Items {
		sum += float64(it.Quantity) * math.Abs(geom.Ring(it.Polygon).Area())
	}
	return sum
}

// scale returns the power of ten that brings the strip to between 1 and 10 m, so that the
// grid of the search is finer than a ten-millionth of it.
func (f *nestFile) scale() float64 {
	return math.Pow(10, 3-math.Floor(math.Log10(f.Height)))
}

// strip returns the problem and, for every piece, its item.
func (f *nestFile) strip() (nest.Strip, []int) {
	k := f.scale()
	s := nest.Strip{HeightMM: f.Height * k}
	var item []int
	for _, it := range f.Items {
		ring := geom.Ring(it.Polygon).Map(func(p geom.Point) geom.Point { return p.Mul(k) })
		if ring.Area() < 0 {
			ring = ring.Reversed()
		}
		p := nest.Piece{Name: fmt.Sprintf("id %d", it.ID), Shape: geom.Polygon{Outer: ring}, Turning: nest.TurnNone}
		if it.Rotations != nil {
			p.Turning, p.TurnsDeg = nest.TurnListed, *it.Rotations
		}
		for range it.Quantity {
			s.Pieces, item = append(s.Pieces, p), append(item, it.ID)
		}
	}
	return s, item
}

// nestReference looks for the expected density of an instance in the file best.json in
// the folder above the instance's, or beside it; nil where there is none.
func nestReference(path, name string) (*float64, error) {
	for _, dir := range []string{filepath.Join(filepath.Dir(path), ".."), filepath.Dir(path)} {
		data, err := os.ReadFile(filepath.Join(dir, "best.json"))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("read reference: %w", err)
		}
		var best struct {
			Irregular struct {
				Instances map[string]struct {
					Expected *float64 `json:"expected_density_20min"`
				} `json:"instances"`
			} `json:"irregular_strip"`
		}
		if err := json.Unmarshal(data, &best); err != nil {
			return nil, fmt.Errorf("read reference %s: %w", filepath.Join(dir, "best.json"), err)
		}
		if v := best.Irregular.Instances[name].Expected; v != nil {
			return v, nil
		}
	}
	return nil, nil
}
