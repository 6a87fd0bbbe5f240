package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"strconv"
	"strings"
	"time"
)

const nestUsage = "usage: pourbench nest FILE.json [...] [--seconds 10] [--seed 1] [--layout OUT.json]"

// nestOptions are the words of the command line.
type nestOptions struct {
	files   []string
	seconds float64
	seed    uint64
	layout  string
}

// A nestLine is what is printed for one instance. Density is the area of the pieces over
// strip height times length; the gap is how many points it lies below the reference.
type nestLine struct {
	Instance  string   `json:"instance"`
	Density   float64  `json:"density_pct"`
	Length    float64  `json:"length"`
	Seconds   float64  `json:"seconds"`
	Reference *float64 `json:"reference_pct"`
	Gap       *float64 `json:"gap_points"`
}

// A nestLayout is where the pieces lie, in the units of the instance: polygons turned
// counter-clockwise about their origin, then moved.
type nestLayout struct {
	Instance   string      `json:"instance"`
	Length     float64     `json:"length"`
	Placements []nestPlace `json:"placements"`
}

type nestPlace struct {
	Item     int     `json:"item"`
	Rotation float64 `json:"rotation_deg"`
	X        float64 `json:"x"`
	Y        float64 `json:"y"`
}

func runNest(args []string, out io.Writer) error {
	o, err := nestArgs(args)
	if err != nil {
		return err
	}
	layouts := []nestLayout{}
	enc := json.NewEncoder(out)
	for _, path := range o.files {
		f, err := readNestFile(path)
		if err != nil {
			return err
		}
		line, layout, err := o.pack(f)
		if err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
		if line.Reference, err = nestReference(path, f.Name); err != nil {
			return err
		}
		if line.Reference != nil {
			gap := math.Round((*line.Reference-line.Density)*1e4) / 1e4
			line.Gap = &gap
		}
		if err := enc.Encode(line); err != nil {
			return err
		}
		layouts = append(layouts, layout)
	}
	return o.write(layouts)
}

// write writes one layout as an object, several as a list.
func (o nestOptions) write(layouts []nestLayout) error {
	if o.layout == "" {
		return nil
	}
	var v any = layouts
	if len(layouts) == 1 {
		v = layouts[0]
	}
	data, err := json.MarshalIndent(v, "", " ")
	if err != nil {
		return fmt.Errorf("write layout: %w", err)
	}
	return os.WriteFile(o.layout, append(data, '\n'), 0o644)
}

// pack works on one instance for the seconds allowed.
func (o nestOptions) pack(f *nestFile) (nestLine, nestLayout, error) {
	start := time.Now()
	ctx, cancel := context.WithTimeout(context.Background(), time.Duration(o.seconds*float64(time.Second)))
	defer cancel()
	s, item := f.strip()
	s.Seed, s.Iterations, s.Threads = o.seed, math.MaxInt/2, runtime.NumCPU()
	s.Spent = func() float64 { return time.Since(start).Seconds() / o.seconds }
	l, err := s.Pack(ctx)
	if err != nil {
		return nestLine{}, nestLayout{}, err
	}
	scale := f.scale()
	layout := nestLayout{Instance: f.Name, Placements: []nestPlace{}}
	for _, p := range l.Placements {
		layout.Placements = append(layout.Placements, nestPlace{item[p.Piece], p.TurnDeg, p.XMM / scale, p.YMM / scale})
	}
	layout.Length = l.LengthMM / scale
	line := nestLine{Instance: f.Name, Length: layout.Length, Seconds: math.Round(time.Since(start).Seconds()*1e3) / 1e3}
	line.Density = math.Round(1e6*f.area()/(f.Height*layout.Length)) / 1e4
	return line, layout, nil
}

func nestArgs(args []string) (nestOptions, error) {
	o := nestOptions{seconds: 10, seed: 1}
	for i := 0; i < len(args); i++ {
		name, value, joined := strings.Cut(args[i], "=")
		if !strings.HasPrefix(name, "-") {
			o.files = append(o.files, args[i])
			continue
		}
		if !joined {
			if i++; i == len(args) {
				return o, fmt.Errorf("%s wants a value; %s", name, nestUsage)
			}
			value = args[i]
		}
		if err := o.set(strings.TrimLeft(name, "-"), value); err != nil {
			return o, err
		}
	}
	if len(o.files) == 0 {
		return o, fmt.Errorf("no instance file; %s", nestUsage)
	}
	return o, nil
}

func (o *nestOptions) set(name, value string) (err error) {
	switch name {
	case "seconds":
		o.seconds, err = strconv.ParseFloat(value, 64)
		if err == nil && !(o.seconds > 0 && o.seconds <= 86400) {
			err = fmt.Errorf("want above 0, at most a day")
		}
	case "seed":
		o.seed, err = strconv.ParseUint(value, 10, 64)
	case "layout":
		o.layout = value
	default:
		return fmt.Errorf("unknown option --%s; %s", name, nestUsage)
	}
	if err != nil {
		return fmt.Errorf("--%s %q: %w", name, value, err)
	}
	return nil
}
