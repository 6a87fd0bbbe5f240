package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"pourwright/internal/saw"
)

const cutUsage = "usage: pourbench cut FILE.json [...] [--seconds 1] [--turn auto|fixed|rotated|both] [--seed 1] [--layout OUT.json]"

// cutOptions are the words of the command line.
type cutOptions struct {
	files   []string
	seconds float64
	turn    string
	seed    uint64
	layout  string
}

// A cutLine is what is printed for one instance. Value and Upper belong to the
// most value from one rectangle, Sheets and Lower to the fewest rectangles.
type cutLine struct {
	Instance  string   `json:"instance"`
	Rotated   bool     `json:"rotated"`
	Value     *int64   `json:"value,omitempty"`
	Upper     *int64   `json:"upper,omitempty"`
	Sheets    *int     `json:"sheets,omitempty"`
	Lower     *int     `json:"lower,omitempty"`
	Unplaced  []int    `json:"unplaced,omitempty"` // pieces that fit no rectangle
	Proven    bool     `json:"proven"`
	Reference *float64 `json:"reference"`
	Seconds   float64  `json:"seconds"`
}

// A cutLayout is the tree of cuts of every rectangle of one instance, in whole
// units: sizes as typed times Scale. A part is cut again ("cut" is "x" or "y", "at"
// the distance from its corner), a piece ("piece" is its index), or waste (-1).
type cutLayout struct {
	Instance string       `json:"instance"`
	Rotated  bool         `json:"rotated"`
	W        int64        `json:"w"`
	H        int64        `json:"h"`
	Scale    int64        `json:"scale"`
	Trees    []*saw.Slice `json:"trees"`
}

func runCut(args []string, out io.Writer) error {
	if slices.Contains(args, "--help") || slices.Contains(args, "-h") {
		_, err := fmt.Fprintf(out, "%s\n\n%s\n", cutUsage, cutFormat)
		return err
	}
	o, err := cutArgs(args)
	if err != nil {
		return err
	}
	layouts := []cutLayout{}
	enc := json.NewEncoder(out)
	for _, path := range o.files {
		cases, err := readCutFile(path)
		if err != nil {
			return err
		}
		for i := range cases {
			for _, turns := range o.turns(&cases[i]) {
				line, layout, err := o.solve(&cases[i], turns)
				if err != nil {
					return fmt.Errorf("cut %s: %w", cases[i].Name, err)
				}
				layouts = append(layouts, layout)
				if err := enc.Encode(line); err != nil {
					return err
				}
			}
		}
	}
	if o.layout == "" {
		return nil
	}
	text, err := json.MarshalIndent(map[string]any{"layouts": layouts}, "", " ")
	if err != nil {
		return err
	}
	return os.WriteFile(o.layout, append(text, '\n'), 0o644)
}

func cutArgs(args []string) (cutOptions, error) {
	o := cutOptions{seconds: 1, turn: "auto", seed: 1}
	for i := 0; i < len(args); i++ {
		name, value, has := strings.Cut(args[i], "=")
		if !strings.HasPrefix(name, "-") {
			o.files = append(o.files, args[i])
			continue
		}
		if !has {
			if i++; i == len(args) {
				return o, fmt.Errorf("%s needs a value\n%s", name, cutUsage)
			}
			value = args[i]
		}
		if err := o.set(name, value); err != nil {
			return o, err
		}
	}
	if len(o.files) == 0 {
		return o, fmt.Errorf("%s\n\n%s", cutUsage, cutFormat)
	}
	return o, nil
}

func (o *cutOptions) set(name, value string) (err error) {
	switch name {
	case "--seconds":
		o.seconds, err = strconv.ParseFloat(value, 64)
		if err == nil && !(o.seconds > 0 && o.seconds < 1e6) {
			err = fmt.Errorf("must be above 0")
		}
	case "--seed":
		o.seed, err = strconv.ParseUint(value, 10, 64)
	case "--layout":
		o.layout = value
	case "--turn":
		o.turn = value
		if value != "auto" && value != "fixed" && value != "rotated" && value != "both" {
			err = fmt.Errorf("must be auto, fixed, rotated or both")
		}
	default:
		return fmt.Errorf("unknown option %s\n%s", name, cutUsage)
	}
	if err != nil {
		return fmt.Errorf("%s %s: %w", name, value, err)
	}
	return nil
}

// turns says for which cases an instance is run: false for fixed pieces.
func (o *cutOptions) turns(c *cutCase) []bool {
	switch {
	case o.turn == "fixed":
		return []bool{false}
	case o.turn == "rotated":
		return []bool{true}
	case o.turn == "both":
		return []bool{false, true}
	case c.Turn != nil:
		return []bool{*c.Turn}
	case c.Rotated != nil && c.Fixed != nil:
		return []bool{false, true}
	}
	return []bool{c.Rotated != nil}
}

// solverShare is the part of the seconds given to the search; the rest is for
// finishing a step and writing the tree.
const solverShare = 0.9

func (o *cutOptions) solve(c *cutCase, turns bool) (cutLine, cutLayout, error) {
	start := time.Now()
	ctx, cancel := context.WithTimeout(context.Background(), time.Duration(o.seconds*solverShare*float64(time.Second)))
	defer cancel()
	goods := make([]saw.Good, len(c.Goods))
	for i, g := range c.Goods {
		g.Turns = turns
		goods[i] = g
	}
	line := cutLine{Instance: c.Name, Rotated: turns, Reference: c.Fixed}
	if turns {
		line.Reference = c.Rotated
	}
	layout := cutLayout{Instance: c.Name, Rotated: turns, W: c.W, H: c.H, Scale: c.Scale, Trees: []*saw.Slice{}}
	if c.Sheets {
		p, err := saw.Pack(ctx, goods, c.W, c.H, saw.Effort{Seed: o.seed, Workers: runtime.NumCPU()})
		if err != nil {
			return line, layout, err
		}
		n := len(p.Bins)
		line.Sheets, line.Lower, line.Unplaced, line.Proven = &n, &p.Lower, p.Unplaced, n == p.Lower
		layout.Trees = append(layout.Trees, p.Bins...)
	} else {
		h, err := saw.Knapsack(ctx, goods, c.W, c.H, c.Unlimited)
		if err != nil {
			return line, layout, err
		}
		line.Value, line.Upper, line.Proven = &h.Value, &h.Upper, h.Proven
		layout.Trees = append(layout.Trees, h.Tree)
	}
	line.Seconds = time.Since(start).Seconds()
	return line, layout, nil
}
