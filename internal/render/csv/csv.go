// Package csv writes the lists of a plan for a spreadsheet: panels, foam parts and the
// shopping list. Heads carry units; numbers use a point.
package csv

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pourwright/internal/cutlist"
	"pourwright/internal/plan"
	"pourwright/internal/saw"
)

// Panels writes the form's panels, one kind a row.
func Panels(w io.Writer, p *plan.Plan) error {
	rows := [][]string{{"panel", "count", "length_mm", "width_mm", "thickness_mm", "mass_each_kg", "bevel"}}
	for _, x := range p.Form.Panels {
		rows = append(rows, []string{text(x.Name), strconv.Itoa(x.Count), number(x.Length.MM(), 1), number(x.Width.MM(), 1),
			number(x.Thickness.MM(), 1), number(float64(x.Mass), 2), text(x.Bevel)})
	}
	return write(w, rows)
}

// Parts writes the foam parts of the knockout, one a row.
func Parts(w io.Writer, p *plan.Plan) error {
	rows := [][]string{{"part", "layer", "thickness_mm", "sheets", "box_x_mm", "box_y_mm", "area_mm2", "mass_kg", "mark", "on", "beside", "dowels"}}
	for _, x := range p.Knockout.Parts {
		var beside []string
		for _, n := range x.Neighbours {
			if n.Where == "beside" {
				beside = append(beside, n.Part)
			}
		}
		rows = append(rows, []string{text(x.ID), strconv.Itoa(x.Layer), number(x.Thickness.MM(), 1), strconv.Itoa(x.Sheets),
			number(x.BoxX.MM(), 1), number(x.BoxY.MM(), 1), number(float64(x.Area), 0), number(float64(x.Mass), 3),
			text(x.Mark), text(sheetsOf(p, x.ID)), text(strings.Join(beside, " ")), strconv.Itoa(len(x.Dowels))})
	}
	return write(w, rows)
}

// sheetsOf names the sheets that a part lies on, one for each of its thicknesses.
func sheetsOf(p *plan.Plan, id string) string {
	var names []string
	for _, s := range p.Knockout.Sheets {
		for _, q := range s.Placements {
			if q.Part == id {
				names = append(names, s.Name)
			}
		}
	}
	return strings.Join(names, " + ")
}

// Shopping writes what to buy, one material a row.
func Shopping(w io.Writer, p *plan.Plan) error {
	rows := [][]string{{"material", "room", "need", "unit", "buy", "left_over", "price"}}
	for _, x := range p.Cost.Lines {
		var buy []string
		for _, b := range x.Buy {
			buy = append(buy, fmt.Sprintf("%d x %s", b.Count, strconv.FormatFloat(b.Size, 'f', -1, 64)))
		}
		price := ""
		if x.Priced {
			price = number(x.Price, 2)
		}
		rows = append(rows, []string{text(x.Name), text(x.Room), number(x.Need, 3), text(x.Unit), strings.Join(buy, " + "), number(x.Left, 3), price})
	}
	return write(w, rows)
}

// Cuts writes the passes of the saw in their order, of form and base, then those of bars.
func Cuts(w io.Writer, p *plan.Plan) error {
	rows := [][]string{{"room", "board", "cut", "sheet", "part", "setting", "fence_mm", "tilt_deg", "cut_length_mm", "makes", "note"}}
	for _, x := range []struct {
		room string
		list cutlist.Result
	}{{"form", p.Form.Cutting}, {"base", p.Base.Cutting}} {
		for _, c := range x.list.Cuts {
			rows = append(rows, []string{x.room, text(x.list.Board), strconv.Itoa(c.Number), c.Sheet, c.Part, strconv.Itoa(settingOf(x.list, c.Number)), number(c.FenceMM, 1),
				number(c.TiltDeg, 1), number(c.LengthMM, 1), text(c.Makes), cutNote(c)})
		}
	}
	for _, b := range p.Base.Bars {
		for _, bar := range b.Bars {
			for _, c := range bar.Cuts {
				rows = append(rows, []string{"base", text(b.Bar), strconv.Itoa(c.Number), bar.ID, text(bar.Name), "", number(c.StopMM, 1), "0.0", "", text(c.Name), "at " + number(c.AtMM, 1) + " mm from the left end"})
			}
		}
	}
	return write(w, rows)
}

// settingOf returns the number of the setting that a cut belongs to, from 1.
func settingOf(c cutlist.Result, cut int) int {
	for i, g := range c.Settings {
		if cut >= g.First && cut <= g.Last {
			return i + 1
		}
	}
	return 0
}

func cutNote(c saw.Cut) string {
	switch {
	case c.Trim:
		return "clean edge"
	case c.CannotHold:
		return "too narrow to hold: carrier board"
	case c.Edge != "":
		return "bevel " + string(c.Edge)
	}
	return ""
}

func write(w io.Writer, rows [][]string) error {
	out := csv.NewWriter(w)
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("write list: %w", err)
	}
	return nil
}

// number writes v with n decimals; what is no number is left empty.
func number(v float64, n int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(v, 'f', n, 64)
}

// text keeps a spreadsheet from taking a name for a formula.
func text(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
