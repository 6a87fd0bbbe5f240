package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/units"
)

// trimmed writes v with at most three decimals.
func trimmed(v float64) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", v), "0"), ".")
}

// systems returns the maker's unit of length and the other one.
func (b *book) systems() (own, other string) {
	if b.plan.Piece.Units == "in" {
		return "in", "mm"
	}
	return "mm", "in"
}

// length writes l in the maker's unit.
func (b *book) length(l units.Length) string {
	own, _ := b.systems()
	return drawing.Measure(l, own) + " " + own
}

// other writes l in the unit that is not the maker's.
func (b *book) other(l units.Length) string {
	_, other := b.systems()
	return drawing.Measure(l, other) + " " + other
}

// times writes a size of two lengths in a unit.
func times(x, y units.Length, unit string) string {
	return drawing.Measure(x, unit) + " x " + drawing.Measure(y, unit) + " " + unit
}

// panels prints the form's panels and the foam parts as lists to tick.
func (b *book) panels() {
	if len(b.plan.Form.Panels) > 0 {
		b.panelList()
		b.formPages()
	}
	if len(b.plan.Knockout.Parts) > 0 {
		b.partList()
	}
}

func (b *book) panelList() {
	f := b.plan.Form
	b.begin("Form panels")
	own, other := b.systems()
	board := b.plan.Piece.Board
	b.say("", 10, ink, "Board %s (%s) as measured, %s corners, %s. %s to buy.",
		b.length(board), b.other(board), b.plan.Piece.Corner, seated(f.Seat), units.Count(f.Cutting.Buy, "sheet", "sheets"))
	b.Ln(4)
	w := b.w - 2*margin
	t := table{b, []column{{"", 12, false, "", 14}, {"cut", 16, true, "B", 16}, {"panel", w - 12 - 16 - 40 - 40 - 20, false, "", 11},
		{"length, " + own, 40, true, "B", 16}, {"width, " + own, 40, true, "B", 16}, {"kg each", 20, true, "", 10}}, 10}
	t.heads()
	for _, x := range f.Panels {
		name := strings.Join(x.Marks, ", ") + " " + x.Name + "\n" + times(x.Length, x.Width, other)
		if x.Bevel != "" {
			name += "\nbevel " + x.Bevel
		}
		t.row(box, fmt.Sprint(x.Count), name, drawing.Measure(x.Length, own), drawing.Measure(x.Width, own), fmt.Sprintf("%.1f", x.Mass))
	}
	b.Ln(5)
	b.say("", 10, soft, "Inside corners to caulk %.2f m. Inside faces to wax %.2f m2. All panels %.1f kg.", f.Seam.MM()/1000, f.Release.M2(), f.Mass)
	b.caution("Saw: guard on, push stick, eyes and ears. Board dust: extraction and a fitted mask.")
}

// seated says where the sides stand.
func seated(seat string) string {
	if seat == "on" {
		return "sides on the base"
	}
	return "sides outside the base, covering its edge"
}

// caution prints the cautions of a page under a rule.
func (b *book) caution(texts ...string) {
	b.font("", 9.5)
	lines := 0
	for _, t := range texts {
		lines += len(b.SplitText(Clean(t), b.w-2*margin-22))
	}
	b.Ln(4)
	h := 9.5 * pt * 1.3
	b.keep(float64(lines)*h + 6)
	b.rule(0, 2.5)
	b.text(margin, b.GetY(), 20, "B", 9.5, ink, "caution")
	y := b.GetY()
	for _, t := range texts {
		b.font("", 9.5)
		for _, l := range b.SplitText(Clean(t), b.w-2*margin-22) {
			b.text(margin+22, y, b.w-2*margin-22, "", 9.5, ink, l)
			y += h
		}
	}
	b.SetXY(margin, y+2)
}
