package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"

	"pourwright/internal/saw"
)

// cutFormat is the help on the files that `pourbench cut` reads.
const cutFormat = `FILE.json holds one instance, a list of them, or {"instances": [...]}.
An instance:
  "name"                        also "instance", "id"
  "L","W" or "W","H"            the rectangle; also "length","width","height" in either case, "bin": [a, b] or {...}
  "pieces" or "items"           each [a, b, ...] or {"length":, "width":, "height":, "value":, "count":}
                                count is also "max", "demand", "quantity", "copies"; value also "profit", "price"
  "piece_format"                names the numbers of a list, here or for the whole file: "[length,width,max,value]"
  "rotated": true|false         (also "rotation", "allow_rotation", a list of degrees) pieces may turn by 90 degrees; without it both are run where a reference for
                                rotated pieces is given, else pieces are fixed (see --turn)
  references, copied to the output: numbers with "optimum", "bound", "best", "bins", "sheets" or "reference" in
                                their names; "rotated" or "oriented" in the name says for which case
With values the aim is the most value from one rectangle: with counts at most so many copies, else any number.
Without values, or where "problem" or "kind" speaks of bins or sheets, the aim is the fewest rectangles for all pieces.
Without "piece_format" a list of 3 is [a, b, value] if the aim is value, else [a, b, count]; a list of 4 is
[a, b, count, value]. Sizes may have up to 3 decimals.`

// A cutCase is one instance as read. Sizes are whole: those typed times Scale.
type cutCase struct {
	Name      string
	W, H      int64
	Scale     int64
	Goods     []saw.Good
	Sheets    bool // the aim is the fewest rectangles
	Unlimited bool
	Turn      *bool
	Fixed     *float64 // references
	Rotated   *float64
}

type object = map[string]any

func readCutFile(path string) ([]cutCase, error) {
	raw, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("read cutting instances: %w", err)
	}
	var top any
	if err := json.Unmarshal(raw, &top); err != nil {
		return nil, fmt.Errorf("read cutting instances: %s: %w", path, err)
	}
	file, list := object{}, []any{top}
	switch t := top.(type) {
	case []any:
		list = t
	case object:
		t = lower(t)
		if in, ok := t["instances"].([]any); ok {
			file, list = t, in
		}
	}
	var out []cutCase
	for i, x := range list {
		in, ok := x.(object)
		if !ok {
			return nil, fmt.Errorf("read cutting instances: %s: instance %d is no object", path, i+1)
		}
		c, err := readCase(file, lower(in), i)
		if err != nil {
			return nil, fmt.Errorf("read cutting instances: %s: instance %q: %w", path, c.Name, err)
		}
		out = append(out, c)
	}
	return out, nil
}

func lower(o object) object {
	out := make(object, len(o))
	for k, v := range o {
		out[strings.ToLower(k)] = v
	}
	return out
}

// first returns the first of the named fields that is there.
func first(o object, names ...string) (any, bool) {
	for _, n := range names {
		if v, ok := o[n]; ok && v != nil {
			return v, true
		}
	}
	return nil, false
}

func number64(o object, names ...string) (float64, bool) {
	v, _ := first(o, names...)
	x, ok := v.(float64)
	return x, ok
}

func text(o object, names ...string) string {
	v, _ := first(o, names...)
	s, _ := v.(string)
	return s
}

// A typedPiece is a piece as typed, before sizes are made whole.
type typedPiece struct {
	a, b             float64
	value, count     float64
	hasValue, hasNum bool
	turns            *bool
}

func readCase(file, in object, index int) (cutCase, error) {
	c := cutCase{Name: text(in, "name", "instance", "id"), Scale: 1}
	if c.Name == "" {
		c.Name = fmt.Sprintf("%d", index+1)
	}
	w, h, lengthFirst, err := readRectangle(in)
	if err != nil {
		return c, err
	}
	v, _ := first(in, "pieces", "items", "rectangles", "boxes")
	list, ok := v.([]any)
	if !ok {
		return c, fmt.Errorf("no list of pieces")
	}
	about := strings.ToLower(text(file, "problem", "kind", "type") + " " + text(in, "problem", "kind", "type"))
	binned := strings.Contains(about, "bin") || strings.Contains(about, "sheets") || strings.Contains(about, "cutting stock")
	for name := range in {
		binned = binned || strings.Contains(name, "bins") || strings.Contains(name, "sheets")
	}
	format := formatOf(file, in)
	pieces := make([]typedPiece, 0, len(list))
	for i, x := range list {
		p, err := readPiece(x, format, lengthFirst)
		if err != nil {
			return c, fmt.Errorf("piece %d: %w", i+1, err)
		}
		pieces = append(pieces, p)
	}
	if len(format) == 0 && !binned {
		guessThird(pieces, in, about)
	}
	c.Sheets = binned || !slices.ContainsFunc(pieces, func(p typedPiece) bool { return p.hasValue })
	if strings.Contains(about, "knapsack") && !binned {
		c.Sheets = false
	}
	c.Unlimited = !c.Sheets && !slices.ContainsFunc(pieces, func(p typedPiece) bool { return p.hasNum })
	c.Turn = readTurn(file, in)
	c.references(in)
	return c, c.scale(w, h, pieces)
}

// readRectangle returns the sides, and whether they are called length and width.
func readRectangle(in object) (w, h float64, lengthFirst bool, err error) {
	box := in
	if v, ok := first(in, "bin", "sheet", "stock", "rectangle", "object", "plate"); ok {
		switch t := v.(type) {
		case []any:
			if len(t) > 0 {
				if inner, ok := t[0].(object); ok && len(t) == 1 {
					box = lower(inner)
					break
				}
			}
			if w, h, ok := pair(t); ok {
				return w, h, false, nil
			}
		case object:
			box = lower(t)
		}
	}
	l, hasL := number64(box, "l", "length", "bin_length", "sheet_length")
	w, hasW := number64(box, "w", "width", "bin_width", "sheet_width")
	h, hasH := number64(box, "h", "height", "bin_height", "sheet_height")
	switch {
	case hasL && hasW:
		return l, w, true, nil
	case hasW && hasH:
		return w, h, false, nil
	case hasL && hasH:
		return l, h, false, nil
	case hasW:
		return w, w, false, nil
	}
	return 0, 0, false, fmt.Errorf("no size of the rectangle")
}

func pair(t []any) (a, b float64, ok bool) {
	if len(t) < 2 {
		return 0, 0, false
	}
	a, okA := t[0].(float64)
	b, okB := t[1].(float64)
	return a, b, okA && okB
}

// formatOf returns the names of the numbers of a piece, if the file has them.
func formatOf(file, in object) []string {
	s := text(in, "piece_format", "item_format")
	if s == "" {
		s = text(file, "piece_format", "item_format")
	}
	names := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return strings.ContainsRune("[](){},; ", r) })
	if len(names) < 2 {
		return nil
	}
	return names
}

func isCount(name string) bool {
	return slices.ContainsFunc([]string{"max", "demand", "count", "quant", "cop", "number", "upper", "times"}, func(s string) bool { return strings.Contains(name, s) }) || name == "n" || name == "q" || name == "d"
}

func isValue(name string) bool {
	return slices.ContainsFunc([]string{"value", "profit", "price", "worth"}, func(s string) bool { return strings.Contains(name, s) }) || name == "v" || name == "p"
}

func readPiece(x any, format []string, lengthFirst bool) (typedPiece, error) {
	switch t := x.(type) {
	case []any:
		return listedPiece(t, format)
	case object:
		return namedPiece(lower(t), lengthFirst)
	}
	return typedPiece{}, fmt.Errorf("neither a list nor an object")
}

func listedPiece(t []any, format []string) (typedPiece, error) {
	p := typedPiece{count: 1}
	var ok bool
	if p.a, p.b, ok = pair(t); !ok {
		return p, fmt.Errorf("no two sides")
	}
	if len(format) == 0 {
		format = [][]string{nil, nil, {"a", "b"}, {"a", "b", "third"}, {"a", "b", "count", "value"}}[min(len(t), 4)]
	}
	for i := 2; i < min(len(t), len(format)); i++ {
		v, ok := t[i].(float64)
		switch {
		case !ok:
			return p, fmt.Errorf("number %d is no number", i+1)
		case isCount(format[i]) || format[i] == "third":
			p.count, p.hasNum = v, true
		case isValue(format[i]):
			p.value, p.hasValue = v, true
		}
	}
	return p, nil
}

func namedPiece(o object, lengthFirst bool) (typedPiece, error) {
	p := typedPiece{count: 1}
	l, hasL := number64(o, "l", "length")
	w, hasW := number64(o, "w", "width")
	h, hasH := number64(o, "h", "height")
	switch {
	case hasL && hasW && !lengthFirst && !hasH:
		p.a, p.b = l, w
	case hasL && hasW:
		p.a, p.b = l, w
	case hasW && hasH:
		p.a, p.b = w, h
	case hasL && hasH:
		p.a, p.b = l, h
	default:
		return p, fmt.Errorf("no two sides")
	}
	for name, v := range o {
		switch x := v.(type) {
		case float64:
			if isCount(name) {
				p.count, p.hasNum = x, true
			} else if isValue(name) {
				p.value, p.hasValue = x, true
			}
		case bool:
			if strings.Contains(name, "rot") || strings.Contains(name, "turn") {
				p.turns = &x
			}
		}
	}
	return p, nil
}

// guessThird tells a value from a count where a list of three has no format: it
// is a value if the problem says so, if there is an optimum, or if it is the area.
func guessThird(pieces []typedPiece, in object, about string) {
	if slices.ContainsFunc(pieces, func(p typedPiece) bool { return p.hasValue || !p.hasNum }) {
		return
	}
	value := strings.Contains(about, "knapsack") || strings.Contains(about, "value")
	for name := range in {
		value = value || strings.HasPrefix(name, "optimum")
	}
	area := !slices.ContainsFunc(pieces, func(p typedPiece) bool { return p.count != p.a*p.b })
	if !value && !area {
		return
	}
	for i := range pieces {
		p := &pieces[i]
		p.value, p.hasValue, p.count, p.hasNum = p.count, true, 1, false
	}
}

func readTurn(file, in object) *bool {
	for _, o := range []object{in, file} {
		if v, ok := first(o, "rotated", "rotation", "rotations", "rotate", "allow_rotation", "turn", "turns"); ok {
			switch b := v.(type) {
			case bool:
				return &b
			case float64:
				yes := b != 0
				return &yes
			case []any: // of degrees
				yes := slices.Contains(b, any(90.0))
				return &yes
			}
		}
	}
	return nil
}

// references takes the numbers that a result can be held against.
func (c *cutCase) references(in object) {
	names := make([]string, 0, len(in))
	for name := range in {
		names = append(names, name)
	}
	slices.Sort(names)
	// The last of these words wins where a file has several.
	for _, word := range []string{"best", "bound", "lb", "bins", "sheets", "reference", "optimum"} {
		for _, name := range names {
			x, ok := in[name].(float64)
			if !ok || !strings.Contains(name, word) {
				continue
			}
			rotated, fixed := strings.Contains(name, "rot"), strings.Contains(name, "orient") || strings.Contains(name, "fixed")
			if !fixed {
				c.Rotated = &x
			}
			if !rotated {
				c.Fixed = &x
			}
		}
	}
	if c.Turn == nil && c.Rotated == c.Fixed {
		c.Rotated = nil
	}
}

// scale makes all sizes whole.
func (c *cutCase) scale(w, h float64, pieces []typedPiece) error {
	sizes := []float64{w, h}
	for _, p := range pieces {
		sizes = append(sizes, p.a, p.b)
	}
	for !allWhole(sizes, float64(c.Scale)) {
		if c.Scale *= 10; c.Scale > 1000 {
			return fmt.Errorf("sizes with more than 3 decimals")
		}
	}
	s := float64(c.Scale)
	c.W, c.H = int64(math.Round(w*s)), int64(math.Round(h*s))
	for i, p := range pieces {
		if p.count != math.Trunc(p.count) || p.value != math.Trunc(p.value) {
			return fmt.Errorf("piece %d: counts and values must be whole", i+1)
		}
		g := saw.Good{W: int64(math.Round(p.a * s)), H: int64(math.Round(p.b * s)), Count: int(p.count), Value: int64(p.value)}
		if !c.Sheets && !p.hasValue {
			g.Value = g.W * g.H
		}
		c.Goods = append(c.Goods, g)
	}
	return nil
}

func allWhole(sizes []float64, scale float64) bool {
	return !slices.ContainsFunc(sizes, func(x float64) bool { return math.Abs(x*scale-math.Round(x*scale)) > 1e-6 })
}
