package job

import (
	"fmt"
	"math"

	"pourwright/internal/material"
	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// Shares by which caliper and label may differ before the maker is asked.
// Chosen: foam varies by 6 % (AASHTO M 230), boards by 2 %.
const (
	foamApart  = 0.15
	boardApart = 0.10
)

func (r *resolver) foam() {
	t, j := r.doc.Foam, r.job
	c := card(r, "foam.material", t.Material, defaultFoam, r.shelf.Foam)
	if nominal, ok := r.length("foam.nominal", t.Nominal, c.Thickness.Value, likelyFoam); ok && t.Nominal != "" {
		c.Thickness = stated(nominal, string(t.Nominal))
	}
	c.Length, c.Width = r.sheet("foam.sheet", t.Sheet, c.Length, c.Width)
	measured, ok := r.length("foam.measured", t.Measured, c.Thickness.Value, likelyFoam)
	j.Foam = Foam{Card: c, Measured: measured, WasMeasured: ok && t.Measured != ""}
	r.apart("foam.measured", measured, c.Thickness.Value, foamApart)
}

func (r *resolver) form() {
	t, j := r.doc.Form, r.job
	c := card(r, "form.board", t.Board, defaultBoard, r.shelf.Board)
	c.Length, c.Width = r.sheet("form.sheet", t.Sheet, c.Length, c.Width)
	measured, ok := r.length("form.measured", t.Measured, c.Thickness.Value, likelyBoard)
	j.Form = Form{Board: c, Measured: measured, WasMeasured: ok && t.Measured != ""}
	r.apart("form.measured", measured, c.Thickness.Value, boardApart)
	j.Form.Kerf, _ = r.length("form.kerf", t.Kerf, defaultKerf, likelyKerf)
	j.Form.Trim, _ = r.length("form.trim", t.Trim, defaultTrim, likelyTrim)
	j.Form.Corner = r.word("form.corner", t.Corner, "butt", "mitre")
	j.Form.ButtOrder = r.word("form.butt_order", t.ButtOrder, "long", "short")
	r.making()
}

// stated marks a value the maker typed.
func stated[Q ~float64](v Q, text string) material.Value[Q] {
	return material.Value[Q]{Value: v, Origin: material.Measured, Typed: text}
}

func (r *resolver) sheet(field string, t SheetText, length, width material.Value[units.Length]) (l, w material.Value[units.Length]) {
	one := func(field string, text typed.Length, from material.Value[units.Length]) material.Value[units.Length] {
		if v, ok := r.length(field, text, from.Value, likelySheet); ok && text != "" {
			return stated(v, string(text))
		}
		return from
	}
	return one(field+".length", t.Length, length), one(field+".width", t.Width, width)
}

func (r *resolver) apart(field string, measured, nominal units.Length, most float64) {
	if nominal > 0 && math.Abs(float64(measured/nominal)-1) > most {
		f := r.say(measuredFar, field, "%s is %s and the label says %s.", field, units.FormatMM(measured, 1), units.FormatMM(nominal, 1))
		f.Got, f.Limit, f.Unit = measured.MM(), nominal.MM(), "mm"
	}
}

// partsFit checks the largest panels against the trimmed sheet.
func (r *resolver) partsFit(whole bool) {
	if !whole {
		return
	}
	j := r.job
	f := j.Form
	x, y := f.Board.Length.Value-2*f.Trim, f.Board.Width.Value-2*f.Trim
	for _, p := range []struct {
		name string
		l, w units.Length
	}{
		{"base", j.Length, j.Width},
		{"long side", j.Length + 2*f.Measured, j.Height},
	} {
		if max(p.l, p.w) > max(x, y) || min(p.l, p.w) > min(x, y) {
			r.say(sheetSmall, "form", "The form's %s, %s, does not fit on a trimmed sheet of %s.", p.name, size(p.l, p.w), size(x, y))
		}
	}
}

func size(l, w units.Length) string { return fmt.Sprintf("%.0f x %.0f mm", l.MM(), w.MM()) }
