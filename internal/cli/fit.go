package cli

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"

	"pourwright/internal/stage/resin"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

type fitCmd struct {
	File string `arg:"" help:"A sheet of what is known of the resin (YAML); see examples/resin-sheet.yaml." type:"path"`
	JSON bool   `help:"Print JSON."`
}

// Run estimates a resin's cure from its sheet and prints a card for the shelf.
func (c *fitCmd) Run(con *console) error {
	fields, err := readFields(c.File)
	if err != nil {
		return err
	}
	f, name, err := fitFields(con.ctx, fields, beside(c.File))
	if err != nil {
		return fmt.Errorf("%s: %w", filepath.Base(c.File), err)
	}
	if c.JSON {
		return writeJSON(con.out, f)
	}
	printFit(con.out, name, f)
	return nil
}

// mostSheet is the largest sheet or test pour that is read.
const mostSheet = 4 << 20

// readFields reads a flat YAML file as texts.
func readFields(name string) (map[string]string, error) {
	data, err := readFile(name, mostSheet)
	if err != nil {
		return nil, err
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var in map[string]any
	if err := yaml.Unmarshal(data, &in); err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	out := map[string]string{}
	for k, v := range in {
		out[k] = fmt.Sprint(v)
	}
	return out, nil
}

// sheetFields are the fields of a sheet and how each is read into it.
var sheetFields = map[string]func(s *resin.Sheet, text string) error{
	"name":              func(s *resin.Sheet, t string) error { s.Name = t; return nil },
	"density":           func(s *resin.Sheet, t string) (err error) { s.Density, err = units.ParseDensity(t, "kg/m3"); return },
	"pot_life":          func(s *resin.Sheet, t string) (err error) { s.PotLife, err = units.ParseDuration(t, "h"); return },
	"gel":               func(s *resin.Sheet, t string) (err error) { s.Gel, err = units.ParseDuration(t, "h"); return },
	"cup_peak":          func(s *resin.Sheet, t string) (err error) { s.CupPeak, err = units.ParseTemperature(t, "C"); return },
	"cup_mass":          func(s *resin.Sheet, t string) (err error) { s.MassTested, err = units.ParseMass(t, "kg"); return },
	"cup_temperature":   func(s *resin.Sheet, t string) (err error) { s.TempTested, err = units.ParseTemperature(t, "C"); return },
	"film_set":          func(s *resin.Sheet, t string) (err error) { s.FilmSet, err = units.ParseDuration(t, "h"); return },
	"film_temperature":  func(s *resin.Sheet, t string) (err error) { s.FilmTemp, err = units.ParseTemperature(t, "C"); return },
	"rated_depth":       func(s *resin.Sheet, t string) (err error) { s.Rated, err = units.ParseLength(t, "mm"); return },
	"epoxy_equivalent":  func(s *resin.Sheet, t string) (err error) { s.EEW, err = units.ParseNumber(t); return },
	"parts_b":           func(s *resin.Sheet, t string) (err error) { s.PartsB, err = units.ParseNumber(t); return },
	"heat_kj_kg":        func(s *resin.Sheet, t string) (err error) { s.Heat, err = units.ParseNumber(t); return },
	"glass_transition":  func(s *resin.Sheet, t string) (err error) { s.Tg, err = units.ParseTemperature(t, "C"); return },
	"test_depth":        func(s *resin.Sheet, t string) (err error) { s.TestDepth, err = units.ParseLength(t, "mm"); return },
	"test_air":          func(s *resin.Sheet, t string) (err error) { s.TestAir, err = units.ParseTemperature(t, "C"); return },
	"test_pour":         nil, // a file beside the sheet
	"test_pour_content": nil, // its content, where there is no file
}

// fitFields reads fields as a sheet and fits it. open opens a test pour's file; nil
// where there are no files.
func fitFields(ctx context.Context, fields map[string]string, open opener) (resin.Fitted, string, error) {
	s := resin.Sheet{TestAir: 22}
	var names []string
	for n := range sheetFields {
		names = append(names, n)
	}
	slices.Sort(names)
	for _, n := range slices.Sorted(maps.Keys(fields)) {
		set, known := sheetFields[n]
		if !known {
			hint := strings.Join(names, ", ")
			if near := typed.Suggest(n, names); near != "" {
				hint = "did you mean " + near + "?"
			}
			return resin.Fitted{}, "", &hintedError{fmt.Errorf("no field is called %q", n), hint}
		}
		if set == nil || strings.TrimSpace(fields[n]) == "" {
			continue
		}
		if err := set(&s, fields[n]); err != nil {
			return resin.Fitted{}, "", &hintedError{fmt.Errorf("%s: %w", n, err), "write the value with its unit, such as 4.5 h, 25 C, 100 g, 50 mm"}
		}
	}
	if err := readTest(fields, open, &s); err != nil {
		return resin.Fitted{}, "", err
	}
	if err := likelySheet(s); err != nil {
		return resin.Fitted{}, "", err
	}
	f, err := resin.Fit(ctx, s)
	if errors.Is(err, resin.ErrTooLittle) {
		err = &hintedError{err, "the pot life of a stated mass at a stated temperature is on every data sheet"}
	}
	return f, s.Name, err
}

// likelySheet refuses values that no casting resin has.
func likelySheet(s resin.Sheet) error {
	for _, c := range []struct {
		name      string
		v         float64
		low, high float64
		unit      string
	}{
		{"pot_life", float64(s.PotLife), 0.02, 200, "h"}, {"gel", float64(s.Gel), 0.02, 500, "h"}, {"film_set", float64(s.FilmSet), 0.1, 1000, "h"},
		{"cup_mass", float64(s.MassTested), 0.01, 20, "kg"}, {"cup_temperature", float64(s.TempTested), 5, 45, "C"}, {"film_temperature", float64(s.FilmTemp), 5, 45, "C"},
		{"cup_peak", float64(s.CupPeak), 15, 280, "C"}, {"rated_depth", s.Rated.MM(), 1, 300, "mm"}, {"heat_kj_kg", s.Heat, 80, 600, "kJ/kg"},
		{"epoxy_equivalent", s.EEW, 100, 1000, "g"}, {"parts_b", s.PartsB, 5, 200, "to 100 of A by mass"},
		{"glass_transition", float64(s.Tg), 20, 200, "C"}, {"density", float64(s.Density), 900, 2200, "kg/m3"}, {"test_depth", s.TestDepth.MM(), 3, 300, "mm"},
	} {
		if c.v != 0 && (c.v < c.low || c.v > c.high) {
			return &hintedError{fmt.Errorf("%s is %g %s, outside %g to %g", c.name, c.v, c.unit, c.low, c.high), "check the number and its unit"}
		}
	}
	if s.PotLife > 0 && s.Gel > 0 && s.Gel < s.PotLife {
		return &hintedError{fmt.Errorf("gel, %.2f h, comes before the end of the pot life, %.2f h", s.Gel, s.PotLife), "check which is which on the data sheet"}
	}
	return nil
}

// A file is what a sheet's test pour is read from.
type file interface {
	io.Reader
	io.Closer
}

// An opener opens a file beside the sheet.
type opener func(name string) (file, error)

// beside opens files in the folder of name, and none outside it.
func beside(name string) opener {
	folder := os.DirFS(filepath.Dir(name))
	return func(n string) (file, error) { return folder.Open(n) }
}

// readTest reads the thermocouple's readings: time in hours and temperature in C.
func readTest(fields map[string]string, open opener, s *resin.Sheet) error {
	var from io.Reader
	name := strings.TrimSpace(fields["test_pour"])
	switch {
	case fields["test_pour_content"] != "":
		name, from = "test pour", strings.NewReader(fields["test_pour_content"])
	case name != "" && open != nil:
		f, err := open(filepath.ToSlash(name))
		if err != nil {
			return &fileError{name, err}
		}
		defer f.Close()
		from = f
	default:
		return nil
	}
	rs, err := readReadings(name, io.LimitReader(from, mostSheet))
	if err != nil {
		return err
	}
	if len(rs) < leastReadings {
		return &hintedError{fmt.Errorf("%s has %d readings, too few to fit to", name, len(rs)), fmt.Sprintf("give at least %d, from the pour to past the peak", leastReadings)}
	}
	if s.Test = rs; !(s.TestDepth > 0) {
		return &hintedError{fmt.Errorf("a test pour needs its depth"), "write test_depth, such as 40 mm, and test_air, the room's temperature"}
	}
	return nil
}

const mostReadings, leastReadings = 20_000, 5

// readReadings reads lines of hours and degrees C, or F where a first line of words heads
// the column so.
func readReadings(name string, from io.Reader) ([]resin.Reading, error) {
	r := csv.NewReader(from)
	r.FieldsPerRecord, r.TrimLeadingSpace = -1, true
	fahrenheit := false
	var out []resin.Reading
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return thinned(out), nil
		}
		line, _ := r.FieldPos(0)
		if err != nil {
			return nil, fmt.Errorf("read %s: %w", name, err)
		}
		bad := func(why string) error {
			return &hintedError{fmt.Errorf("%s:%d: %s", name, line, why), "write one reading a line: hours after the pour, then degrees C"}
		}
		if len(row) < 2 {
			return nil, bad("a reading has a time and a temperature")
		}
		h, err1 := units.ParseNumber(row[0])
		c, err2 := units.ParseNumber(row[1])
		switch {
		case (err1 != nil || err2 != nil) && line == 1:
			head := strings.ToLower(strings.TrimSpace(row[1]))
			fahrenheit = strings.HasSuffix(head, "f") || strings.Contains(head, "fahrenheit")
			continue
		case err1 != nil || err2 != nil:
			return nil, bad(fmt.Sprintf("%q, %q is no reading", row[0], row[1]))
		case h < 0 || h > 1000 || len(out) > 0 && h <= float64(out[len(out)-1].At):
			return nil, bad(fmt.Sprintf("%g h does not come after the reading before", h))
		case fahrenheit:
			c = (c - 32) * 5 / 9
		}
		switch {
		case c < -10 || c > 300:
			return nil, bad(fmt.Sprintf("%g C is no temperature of a pour", c))
		case len(out) >= mostReadings:
			return nil, bad(fmt.Sprintf("more than %d readings", mostReadings))
		}
		out = append(out, resin.Reading{At: units.Duration(h), Temp: units.Temperature(c)})
	}
}

// thinned keeps at most sixty readings, evenly chosen: more say nothing new.
func thinned(rs []resin.Reading) []resin.Reading {
	const most = 60
	if len(rs) <= most {
		return rs
	}
	out := make([]resin.Reading, 0, most)
	for i := range most {
		out = append(out, rs[i*(len(rs)-1)/(most-1)])
	}
	return out
}

// printFit prints the estimate, how well it meets the data, and a card for the shelf.
func printFit(w io.Writer, name string, f resin.Fitted) {
	if name == "" {
		name = "my resin"
	}
	fmt.Fprintf(w, "%s\nrate at 25 C %.3g /s (%.3g to %.3g), heat %.0f kJ/kg (+-%.0f), activation %.0f kJ/mol\n\n", name, f.K25, f.K25Low, f.K25Hi, f.Heat, f.HeatSD, f.E)
	for _, r := range f.Rows {
		mark := ""
		if r.SD > 2 || r.SD < -2 {
			mark = "  <- does not fit: check it"
		}
		fmt.Fprintf(w, "%-38s given %7.2f %s, model %7.2f, off by %+.1f standard deviations%s\n", r.Name, r.Given, r.Unit, r.Model, r.SD, mark)
	}
	fmt.Fprintf(w, "\na slab of %.0f mm on board at 22 C peaks at %.0f C, between %.0f and %.0f C\n", f.Slab.Depth, f.Slab.Peak, f.Slab.Low, f.Slab.High)
	for _, d := range f.Doubts {
		fmt.Fprintf(w, "doubt: %s\n", d)
	}
	if len(f.Doubts) > 0 {
		fmt.Fprintf(w, "do not pour by this card before the sheet is checked\n")
	}
	if f.Weak != "" {
		fmt.Fprintf(w, "to know it better, measure: %s\n", f.Weak)
	}
	printCard(w, name, f)
}

// printCard prints the estimate as a card; its ranges are two standard deviations each way.
func printCard(w io.Writer, name string, f resin.Fitted) {
	origin := "data sheet"
	for _, r := range f.Rows {
		if strings.HasPrefix(r.Name, "test pour") {
			origin = "measured"
		}
	}
	fmt.Fprintf(w, "\n# for a shelf of your own\nresins:\n  %s:\n    origin: %s\n    rate_25_per_s: {value: %.9f, range: [%.9f, %.9f]}\n    rate_ratio: %.3g\n    activation_kj_mol: %.1f\n    heat_kj_kg: {value: %.0f, range: [%.0f, %.0f]}\n    glass_transition: %.0f C\n",
		name, origin, f.K25, f.K25Low*f.K25Low/f.K25, f.K25Hi*f.K25Hi/f.K25, f.R, f.E, f.Heat, max(1, f.Heat-2*f.HeatSD), f.Heat+2*f.HeatSD, f.Tg)
}

// A hintedError knows what to do about itself.
type hintedError struct {
	error
	hint string
}

// Hint says what to do.
func (e *hintedError) Hint() string { return e.hint }

func (e *hintedError) Unwrap() error { return e.error }

// fitQuery fits the fields that the page sends; there are no files.
func fitQuery(ctx context.Context, fields map[string]string) (any, error) {
	f, _, err := fitFields(ctx, fields, nil)
	return f, err
}
