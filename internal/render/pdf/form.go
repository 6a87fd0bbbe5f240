package pdf

import (
	"fmt"
	"io"

	"pourwright/internal/cutlist"
	"pourwright/internal/drawing"
	"pourwright/internal/plan"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// RenderPanels prints what is cut and put together for form and base: lists to tick,
// drawings, the cuts in the order of the saw. Same input, same bytes.
func RenderPanels(w io.Writer, p *plan.Plan, ds []drawing.Drawing, opt Options) error {
	b := newBook(p, opt)
	b.SetTitle(Clean(p.Piece.Name)+", panels", true)
	if len(p.Form.Panels) > 0 {
		b.panelList()
	} else {
		b.begin("Form panels")
		b.say("", 10, ink, "No panels could be planned.")
	}
	b.formPages()
	var mine []drawing.Drawing
	for _, d := range ds {
		if d.Room == "form" || d.Room == "base" {
			mine = append(mine, d)
		}
	}
	b.figures(mine)
	if err := b.Error(); err != nil {
		return fmt.Errorf("print panels: %w", err)
	}
	return b.Output(w)
}

// formPages prints assembly, cuts, readings and supplies of the form, and the base.
func (b *book) formPages() {
	f := b.plan.Form
	if len(f.Panels) == 0 {
		return
	}
	b.assembly()
	b.cuts("Cuts of the form", f.Cutting)
	b.cuts("Cuts of the base", b.plan.Base.Cutting)
	b.bars()
}

func (b *book) assembly() {
	f := b.plan.Form
	b.begin("Putting the form together")
	w := b.w - 2*margin
	t := table{b, []column{{"", 11, false, "", 12}, {"", 9, true, "", 10}, {"step", w - 20, false, "", 10.5}}, 10.5}
	t.heads()
	for _, s := range f.Assembly {
		t.row(box, fmt.Sprint(s.Number), s.Text)
	}
	b.Ln(4)
	b.say("", 10, ink, "%d of %s. Mix %s.", f.Screws.Count, f.Screws.Name, f.Pressure)
	for _, x := range f.Battens {
		b.say("", 10, ink, "%d x %s behind %s: %s long, %s x %s, on edge.", x.Count, x.Name, x.Wall, b.length(x.Length), b.length(x.Width), b.length(x.Depth))
	}
	for _, s := range f.Bought {
		b.say("", 10, ink, "%s: %.2f %s.", s.Name, s.Need, s.Unit)
	}
	b.Ln(3)
	r := table{b, []column{{"", 11, false, "", 12}, {"read", 62, false, "", 10.5}, {"target", 28, true, "B", 10.5}, {"may be off", 26, true, "", 10.5}, {"how", w - 127, false, "", 9}}, 10}
	r.heads()
	for _, x := range f.Readings {
		target := "0"
		if x.Target > 0 {
			target = b.length(x.Target)
		}
		r.row(box, x.Name, target, b.length(x.Limit), x.How)
	}
	b.caution("Caulk, wax and release: fresh air, gloves; read the safety data sheets.")
}

// cuts prints the passes of the saw grouped by setting.
func (b *book) cuts(title string, c cutlist.Result) {
	if len(c.Cuts) == 0 {
		return
	}
	b.begin(title)
	b.say("", 10, ink, "Board %s, kerf %s, %s trimmed from every edge. %d to buy.", c.Board, b.length(c.Kerf), b.length(c.Trim), c.Buy)
	b.Ln(3)
	w := b.w - 2*margin
	t := table{b, []column{{"", 11, false, "", 12}, {"cut", 12, true, "B", 11}, {"sheet, part", 30, false, "", 10}, {"fence", 30, true, "B", 11}, {"makes", w - 83, false, "", 10}}, 10}
	t.heads()
	for i, g := range c.Settings {
		b.keep(18)
		b.say("B", 10, ink, "Setting %d. %s", i+1, g.ReZero)
		for _, x := range c.Cuts {
			if x.Number >= g.First && x.Number <= g.Last {
				t.row(box, fmt.Sprint(x.Number), x.Sheet+", "+x.Part, drawing.Measure(lengthOf(x.FenceMM), b.plan.Piece.Units), makes(x))
			}
		}
	}
	b.Ln(3)
	for _, x := range c.Remains {
		b.say("", 10, soft, "Stays in the shop: %d x %s, %s x %s.", x.Count, x.Name, b.length(x.Length), b.length(x.Width))
	}
	b.caution("Saw: guard on, push stick, eyes and ears, nobody behind the blade. Board dust: extraction and a fitted mask.")
}

func makes(c saw.Cut) string {
	switch {
	case c.Trim:
		return "cleans the edge"
	case c.CannotHold:
		return c.Makes + "; too narrow to hold, use a carrier board"
	}
	return c.Makes
}

// bars prints the lengths cut from every bar.
func (b *book) bars() {
	for _, x := range b.plan.Base.Bars {
		if len(x.Bars) == 0 {
			continue
		}
		b.begin("Cuts of " + x.Bar)
		w := b.w - 2*margin
		t := table{b, []column{{"", 11, false, "", 12}, {"bar", 18, false, "", 11}, {"cut", 14, true, "", 11}, {"stop", 34, true, "B", 11}, {"makes", w - 77, false, "", 10.5}}, 10.5}
		t.heads()
		for _, bar := range x.Bars {
			for _, c := range bar.Cuts {
				t.row(box, bar.ID, fmt.Sprint(c.Number), drawing.Measure(lengthOf(c.StopMM), b.plan.Piece.Units), c.Name)
			}
			if bar.Offcut != "" {
				b.say("", 10, soft, "Keep what is left of %s, %s, as %s.", bar.ID, b.length(lengthOf(bar.RestMM)), bar.Offcut)
			}
		}
		b.caution("Metal saw: vice tight, eyes, no gloves near the blade; deburr every end.")
	}
}

func lengthOf(mm float64) units.Length { return units.Length(mm) }
