// Package pdf prints the shop pack: vector drawings, lists and one page for each
// batch, black and grey, on A4 or Letter.
package pdf

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/plan"
)

// Options say on what paper.
type Options struct {
	Paper string // "a4" or "letter"; a4 unless said
}

const (
	margin = 18.0 // mm
	line   = 5.6  // mm, height of a line of text
)

// book is the document being written.
type book struct {
	*fpdf.Fpdf
	plan    *plan.Plan
	stopped bool
	w, h    float64
}

// Render prints the pack of p with its drawings. Same input, same bytes.
func Render(w io.Writer, p *plan.Plan, ds []drawing.Drawing, opt Options) error {
	size := "A4"
	if opt.Paper == "letter" {
		size = "Letter"
	}
	b := &book{Fpdf: fpdf.New("P", "mm", size, ""), plan: p}
	fixed := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // the paper's date is the document's, not the clock's
	b.SetCreationDate(fixed)
	b.SetModificationDate(fixed)
	b.SetCatalogSort(true)
	b.AddUTF8FontFromBytes("go", "", goregular.TTF)
	b.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	b.SetMargins(margin, margin, margin)
	b.SetAutoPageBreak(true, 20)
	b.w, b.h = b.GetPageSize()
	b.AliasNbPages("{pages}")
	worst, any := finding.Worst(p.Findings)
	b.stopped = any && worst == finding.Stop
	b.SetFooterFunc(b.footer)
	b.cover()
	for _, d := range ds {
		b.figure(d)
	}
	b.panels()
	b.batches()
	b.pour()
	b.steps()
	b.shopping()
	b.cautions()
	return b.Output(w)
}

func (b *book) footer() {
	pc := b.plan.Piece
	b.SetY(-13)
	b.font("", 8)
	left := fmt.Sprintf("%s, version %s, inputs %s", pc.Name, pc.Version, pc.Fingerprint)
	if pc.Date != "" {
		left += ", starts " + pc.Date
	}
	if b.stopped {
		left = "STOP FINDINGS, see page 1.  " + left
	}
	b.CellFormat(b.w-2*margin-30, 5, left, "", 0, "L", false, 0, "")
	b.CellFormat(30, 5, fmt.Sprintf("page %d of {pages}", b.PageNo()), "", 0, "R", false, 0, "")
}

func (b *book) font(style string, size float64) { b.SetFont("go", style, size) }

func (b *book) head(title string) {
	b.AddPage()
	b.font("B", 17)
	b.MultiCell(0, 9, title, "", "L", false)
	b.rule()
}

func (b *book) rule() {
	b.SetLineWidth(0.2)
	b.Line(margin, b.GetY()+1, b.w-margin, b.GetY()+1)
	b.Ln(4)
}

func (b *book) say(style string, size float64, format string, args ...any) {
	b.font(style, size)
	b.MultiCell(0, size*0.5, fmt.Sprintf(format, args...), "", "L", false)
}

// numberHeads are the headings of columns of numbers.
var numberHeads = []string{"count", "length mm", "width mm", "kg each", "grams", "running total g", "litres",
	"scale after A kg", "scale after B kg", "work h", "wait h", "need", "bucket"}

// numeric reports whether c is a bare number.
func numeric(c string) bool {
	_, err := strconv.ParseFloat(c, 64)
	return err == nil
}

// row prints cells of the given widths (mm), numbers to the right.
func (b *book) row(style string, widths []float64, cells ...string) {
	b.font(style, 10)
	if b.GetY() > b.h-28 {
		b.AddPage()
	}
	for i, c := range cells {
		align := "L"
		if numeric(c) || style == "B" && slices.Contains(numberHeads, c) {
			align = "R"
		}
		for b.GetStringWidth(c) > widths[i]-2 && len(c) > 4 {
			c = strings.TrimSuffix(c[:len(c)-2], ".") + "."
		}
		b.CellFormat(widths[i], line+0.6, c, "B", 0, align, false, 0, "")
	}
	b.Ln(line + 0.6)
}

func (b *book) cover() {
	p := b.plan
	b.head(p.Piece.Name)
	b.say("", 11, "Shop pack, version %s. %.1f x %.1f x %.1f mm (%.2f x %.2f x %.2f in), shell %.1f mm.", p.Piece.Version,
		p.Piece.Length, p.Piece.Width, p.Piece.Height, p.Piece.Length.In(), p.Piece.Width.In(), p.Piece.Height.In(), p.Piece.Shell)
	b.Ln(3)
	if b.stopped {
		b.SetFillColor(0, 0, 0)
		b.SetTextColor(255, 255, 255)
		b.font("B", 16)
		b.CellFormat(0, 12, "STOP: NOT TO BE CUT, CAST OR POURED", "", 1, "C", true, 0, "")
		b.SetTextColor(0, 0, 0)
		b.Ln(3)
	}
	w := []float64{60, 57, 57}
	for _, r := range [][3]string{
		{"Basin", fmt.Sprintf("%.3f l", p.Relief.Volume), fmt.Sprintf("%.3f US gal", p.Relief.Volume.USGal())},
		{"Resin to order", fmt.Sprintf("%.2f l", p.Resin.Order), fmt.Sprintf("%.2f US gal", p.Resin.OrderUS)},
		{"Shell, true offset", fmt.Sprintf("%.2f l", p.Concrete.ShellVolume), fmt.Sprintf("%.1f kg", p.Structure.Shell)},
		{"Batches, lifts", fmt.Sprintf("%d", len(p.Concrete.Batches)), fmt.Sprintf("%d", len(p.Resin.Lifts))},
		{"Delivered", fmt.Sprintf("%.1f kg", p.Structure.Delivered), fmt.Sprintf("%.1f lb", p.Structure.Delivered.Lb())},
		{"Turned over in its form", fmt.Sprintf("%.1f kg", p.Structure.Flip), fmt.Sprintf("%.1f lb", p.Structure.Flip.Lb())},
		{"Finished", p.Calendar.Finish, fmt.Sprintf("%.1f h of work", p.Calendar.Hands)},
	} {
		b.row("", w, r[0], r[1], r[2])
	}
	b.Ln(5)
	b.say("B", 13, "Findings")
	for _, f := range p.Findings {
		b.say("B", 9.5, "%s  %s", strings.ToUpper(f.Severity.String()), f.Text)
		where := f.Where.String()
		if where != "" {
			where += ". "
		}
		b.say("", 9, "%sDo: %s", where, f.Remedy)
		b.Ln(1.2)
	}
	if len(p.Assumed) > 0 {
		b.Ln(3)
		b.say("B", 13, "Measure first: these are typical values")
		for _, a := range p.Assumed {
			b.say("", 9.5, "[  ]  %s: %s", a.What, a.Value)
		}
	}
}

func (b *book) panels() {
	if len(b.plan.Form.Panels) == 0 {
		return
	}
	b.head("Form panels")
	b.say("", 10, "Board %.1f mm as measured, %s corners. The sides stand outside the base and cover its edge.", b.plan.Piece.Board, b.plan.Piece.Corner)
	b.Ln(3)
	w := []float64{14, 34, 18, 36, 36, 36}
	b.row("B", w, "done", "panel", "count", "length mm", "width mm", "kg each")
	for _, x := range b.plan.Form.Panels {
		b.row("", w, "[   ]", x.Name, fmt.Sprint(x.Count), fmt.Sprintf("%.1f", x.Length), fmt.Sprintf("%.1f", x.Width), fmt.Sprintf("%.1f", x.Mass))
		if x.Bevel != "" {
			b.say("", 9, "        bevel %s", x.Bevel)
		}
	}
}

func (b *book) batches() {
	for _, x := range b.plan.Concrete.Batches {
		b.head(fmt.Sprintf("Batch %d: %s, one of %d", x.Number, x.Coat, x.Of))
		b.say("", 11, "%.3f kg, %.1f l. Water and other liquids first, then the dry parts, fibre last at low speed.", x.Mass, x.Volume)
		b.Ln(4)
		w := []float64{18, 70, 43, 43}
		b.row("B", w, "done", "part", "grams", "running total g")
		sum := 0.0
		for _, part := range x.Parts {
			sum += part.Mass.G()
			b.row("", w, "[   ]", part.Name, fmt.Sprintf("%.0f", part.Mass.G()), fmt.Sprintf("%.0f", sum))
		}
		b.Ln(6)
		b.say("B", 20, "Water: first %.0f g", x.WaterFirst.G())
		b.Ln(1)
		b.say("B", 20, "then up to %.0f g", x.WaterUpTo.G())
		b.Ln(1)
		b.say("B", 20, "never above %.0f g", x.WaterNever.G())
		b.Ln(8)
		b.say("", 12, "Started at ____________     used up by ____________     kg packed ____________")
		b.Ln(8)
		b.say("", 10, "Fresh mix is caustic: gloves, goggles, long sleeves; wash off at once. Dry cement and sand: fitted respirator, no sweeping. Follow the supplier's safety data sheet.")
	}
}

func (b *book) pour() {
	r := b.plan.Resin
	if len(r.Lifts) == 0 {
		return
	}
	b.head("Pour card: " + r.Resin)
	b.say("", 10, "Order %.2f l = %.2f kg = %.2f US gal = %.2f imperial gal. By mass: %.1f of B for 100 of A. Heights from the deepest floor.", r.Order, r.OrderKG, r.OrderUS, r.OrderImp, r.AToB)
	b.Ln(3)
	for _, l := range r.Lifts {
		b.say("B", 13, "Lift %d: %.1f to %.1f mm, %.1f mm deep, %.2f l net, pour %.2f l", l.Number, l.From, l.To, l.Depth, l.Volume, l.Pour)
		w := []float64{18, 32, 32, 46, 46}
		b.row("B", w, "done", "bucket", "litres", "scale after A kg", "scale after B kg")
		for _, x := range l.Batches {
			b.row("", w, "[   ]", fmt.Sprint(x.Number), fmt.Sprintf("%.2f", x.Volume), fmt.Sprintf("%.3f", x.ScaleA), fmt.Sprintf("%.3f", x.ScaleAB))
		}
		b.Ln(4)
	}
	b.say("", 10, "Resin and hardener sensitise skin: nitrile gloves, goggles, fresh air. Mixed resin left in a bucket heats up, smokes and can catch fire: spread it thin or carry it outside. This plan does not compute the cure: follow the data sheet for depth and waiting time, and pour a test first.")
}

func (b *book) steps() {
	if len(b.plan.Calendar.Steps) == 0 {
		return
	}
	b.head("Steps")
	w := []float64{10, 40, 16, 16, 92}
	b.row("B", w, "", "start", "work h", "wait h", "what")
	for _, s := range b.plan.Calendar.Steps {
		b.row("", w, fmt.Sprint(s.Number), s.Start, fmt.Sprintf("%.1f", s.Work), fmt.Sprintf("%.1f", s.Wait), s.Title)
		for _, c := range s.Cautions {
			b.say("", 8.5, "          %s", c)
		}
		if s.WaitFor != "" && s.Wait > 0 {
			b.say("", 8.5, "          wait for: %s", s.WaitFor)
		}
	}
}

func (b *book) shopping() {
	if len(b.plan.Cost.Lines) == 0 {
		return
	}
	b.head("Shopping list, in whole packages")
	w := []float64{14, 78, 24, 16, 42}
	b.row("B", w, "done", "what", "need", "", "buy")
	for _, l := range b.plan.Cost.Lines {
		var buy []string
		for _, x := range l.Buy {
			buy = append(buy, fmt.Sprintf("%d x %g", x.Count, x.Size))
		}
		b.row("", w, "[   ]", l.Name, fmt.Sprintf("%.2f", l.Need), l.Unit, strings.Join(buy, " + "))
	}
}

func (b *book) cautions() {
	b.head("Cautions")
	for _, c := range []string{
		"Silica dust from cutting and sanding concrete scars lungs. Work wet, or with a shroud and a fine-dust extractor, and wear a fitted respirator.",
		"Fresh concrete is caustic and burns slowly. Gloves, goggles, long sleeves; rinse with much water at once.",
		"Resins and hardeners sensitise. Nitrile gloves, goggles, fresh air; stop at the first rash.",
		"A large or deep mass of mixed resin heats itself. Keep lifts to what the data sheet allows; hot buckets go outside, away from anything that burns.",
		"Lifting: count people before you start. A piece in its form weighs more than the finished piece.",
		"A heavy piece can tip and crush. Fix it where children climb.",
		"These numbers support a maker's judgement; they do not replace it. Local codes, safety data sheets and licensed practice decide.",
	} {
		b.say("", 11, "%s", c)
		b.Ln(3)
	}
}
