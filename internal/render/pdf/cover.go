package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// cover prints what the piece is, the numbers that decide, what is found wrong and
// what to measure first.
func (b *book) cover() {
	p := b.plan.Piece
	b.section = ""
	b.AddPage()
	b.say("", 10, soft, "SHOP PACK")
	b.Ln(1)
	b.say("B", 28, ink, "%s", p.Name)
	b.Ln(1)
	parts := identity(p)
	if p.Client != "" {
		parts = append([]string{"for " + p.Client}, parts...)
	}
	b.say("", 10, ink, "%s", strings.Join(parts, "   "))
	b.Ln(3)
	own, other := b.systems()
	b.say("B", 15, ink, "%s %s", sizes(b, own), own)
	b.say("", 10, soft, "%s %s, shell %s, %s", sizes(b, other), other, b.length(p.Shell), p.Resin)
	b.rule(3, 4)
	if b.stopped {
		b.banner()
	}
	b.keyNumbers()
	b.findings()
	b.measureFirst()
}

// sizes writes the outer box in a system.
func sizes(b *book, system string) string {
	p := b.plan.Piece
	return fmt.Sprintf("%s x %s x %s", drawing.Measure(p.Length, system), drawing.Measure(p.Width, system), drawing.Measure(p.Height, system))
}

// banner says that nothing may be made from this pack.
func (b *book) banner() {
	n := 0
	for _, f := range b.plan.Findings {
		if f.Severity == finding.Stop {
			n++
		}
	}
	b.SetFillColor(ink, ink, ink)
	b.SetTextColor(255, 255, 255)
	y := b.GetY()
	b.Rect(margin, y, b.w-2*margin, 26, "F")
	b.font("B", 30)
	b.SetXY(margin+6, y+3)
	b.CellFormat(0, 12, "STOP", "", 1, "L", false, 0, "")
	b.font("B", 13)
	b.SetX(margin + 6)
	b.CellFormat(0, 7, fmt.Sprintf("Not to be cut, cast or poured: %s below must be settled first.", units.Count(n, "finding", "findings")), "", 1, "L", false, 0, "")
	b.SetTextColor(ink, ink, ink)
	b.SetXY(margin, y+31)
}

// A fact is a number on the cover, with its other units under it.
type fact struct{ label, value, other string }

func (b *book) facts() []fact {
	p := b.plan
	var out []fact
	if len(p.Relief.Layers) > 0 {
		out = append(out,
			fact{"basin", fmt.Sprintf("%.2f l", p.Relief.Volume), fmt.Sprintf("%.2f US gal", p.Relief.Volume.USGal())},
			fact{"basin, deepest", b.length(p.Relief.Depth), b.other(p.Relief.Depth)},
			fact{"resin to order", fmt.Sprintf("%.2f l", p.Resin.Order), fmt.Sprintf("%.1f kg, %.2f US gal", p.Resin.OrderKG, p.Resin.OrderUS)},
			fact{"lifts", fmt.Sprint(len(p.Resin.Lifts)), units.Count(buckets(p.Resin.Lifts), "bucket", "buckets")},
			fact{"shell, true offset", fmt.Sprintf("%.2f l", p.Concrete.ShellVolume), fmt.Sprintf("area x thickness %+.1f %%", 100*p.Concrete.NaiveOver)},
			fact{"batches", fmt.Sprint(len(p.Concrete.Batches)), units.Count(len(p.Concrete.Coats), "coat", "coats")},
			fact{"turned over in its form", fmt.Sprintf("%.0f kg", p.Structure.Flip), lifted(p.Structure.Flip, p.Structure.Lifters)},
			fact{"delivered", fmt.Sprintf("%.0f kg", p.Structure.Delivered), lifted(p.Structure.Delivered, p.Structure.Carriers)})
	}
	if p.Calendar.Finish != "" {
		out = append(out, fact{"done", p.Calendar.Finish, fmt.Sprintf("%.0f h of work", p.Calendar.Hands)})
	}
	return out
}

// lifted writes a mass in pounds and who it takes.
func lifted(m units.Mass, people int) string {
	return fmt.Sprintf("%.0f lb, %s", m.Lb(), units.Count(people, "person", "people"))
}

// keyNumbers prints the facts four in a row.
func (b *book) keyNumbers() {
	const across, high = 4, 19.0
	w := (b.w - 2*margin) / across
	y := b.GetY()
	facts := b.facts()
	for i, f := range facts {
		x := margin + float64(i%across)*w
		at := y + float64(i/across)*high
		b.text(x, at, w-2, "", 8, soft, f.label)
		size := 17.0
		for b.font("B", size); b.GetStringWidth(f.value) > w-2 && size > 8; b.font("B", size) {
			size--
		}
		b.text(x, at+4, w-2, "B", size, ink, f.value)
		b.text(x, at+11, w-2, "", 8.5, soft, f.other)
	}
	if n := len(facts); n > 0 {
		b.SetXY(margin, y+float64((n+across-1)/across)*high-2)
		b.rule(0, 4)
	}
}

// text prints one line in a box, cropped to its width.
func (b *book) text(x, y, width float64, style string, size float64, grey int, text string) {
	b.font(style, size)
	b.SetTextColor(grey, grey, grey)
	b.SetXY(x, y)
	b.CellFormat(width, size*pt*1.25, b.cropped(Clean(text), width), "", 0, "L", false, 0, "")
	b.SetTextColor(ink, ink, ink)
}

// findings prints stops and cautions with their remedies, then the notes small.
func (b *book) findings() {
	count := map[finding.Severity]int{}
	for _, f := range b.plan.Findings {
		count[f.Severity]++
	}
	b.keep(20)
	b.say("B", 13, ink, "Findings")
	b.say("", 9, soft, "%d stop, %d caution, %s", count[finding.Stop], count[finding.Caution], units.Count(count[finding.Note], "note", "notes"))
	b.Ln(2)
	for _, f := range b.plan.Findings {
		b.finding(f)
	}
}

func (b *book) finding(f finding.Finding) {
	const indent = 20.0
	w := b.w - 2*margin - indent
	size, style := 9.5, ""
	if f.Severity == finding.Note {
		size = 8.5
	}
	h := size * pt * 1.28
	b.font(style, size)
	text, remedy := b.SplitText(Clean(f.Text), w), b.SplitText(Clean("Do: "+f.Remedy), w)
	place := f.Where.String()
	lines := len(text) + len(remedy)
	if place != "" {
		lines++
	}
	b.keep(float64(lines)*h + 2)
	y := b.GetY()
	b.severity(f.Severity, y, h)
	put := func(grey int, l string) {
		b.text(margin+indent, y, w, style, size, grey, l)
		y += h
	}
	for _, l := range text {
		put(ink, l)
	}
	for _, l := range remedy {
		put(ink, l)
	}
	if place != "" {
		put(soft, place)
	}
	b.SetXY(margin, y+2)
}

// severity marks a finding by word and weight, never by colour alone.
func (b *book) severity(s finding.Severity, y, h float64) {
	switch s {
	case finding.Stop:
		b.SetFillColor(ink, ink, ink)
		b.Rect(margin, y, 15, h, "F")
		b.SetTextColor(255, 255, 255)
		b.font("B", 9)
		b.SetXY(margin, y)
		b.CellFormat(15, h, "STOP", "", 0, "C", false, 0, "")
		b.SetTextColor(ink, ink, ink)
	case finding.Caution:
		b.text(margin, y, 18, "B", 9, ink, "caution")
	default:
		b.text(margin, y, 18, "", 8.5, soft, "note")
	}
}

// measureFirst lists what decides the plan and nobody has measured.
func (b *book) measureFirst() {
	if len(b.plan.Assumed) == 0 {
		return
	}
	b.keep(20 + 8*float64(len(b.plan.Assumed)))
	b.Ln(4)
	b.say("B", 13, ink, "Measure first")
	b.say("", 9, soft, "Typical values that decide the plan. Measure them, or take them from the data sheet, and write them into the document.")
	b.Ln(2)
	w := b.w - 2*margin
	t := table{b, []column{{"", 9, false, "", 0}, {"what", w - 9 - 32 - 40, false, "", 0}, {"taken as", 32, true, "", 0}, {"measured", 40, true, "", 0}}, 9.5}
	t.heads()
	for _, a := range b.plan.Assumed {
		t.row(box, a.What, a.Value, "______________")
	}
}
