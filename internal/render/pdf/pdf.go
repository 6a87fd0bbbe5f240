// Package pdf prints the shop pack: vector drawings, lists and one page for each
// batch, black and grey, on A4 or Letter, with an embedded humanist sans.
package pdf

import (
	"fmt"
	"io"
	"strings"
	"time"
	"unicode"

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
	margin = 16.0 // mm, left and right
	top    = 15.0 // mm
	foot   = 18.0 // mm, kept free for the footer
	pt     = 25.4 / 72
)

// Greys, 0 black to 255 white.
const (
	ink   = 0
	soft  = 95  // labels and remarks; 6.7:1 on white
	faint = 165 // rules
)

// book is the document being written.
type book struct {
	*fpdf.Fpdf
	plan    *plan.Plan
	stopped bool
	w, h    float64
	section string // title of the section being printed
	opened  bool   // its first page is begun
}

// Render prints the pack of p with its drawings. Same input, same bytes.
func Render(w io.Writer, p *plan.Plan, ds []drawing.Drawing, opt Options) error {
	b := newBook(p, opt)
	b.cover()
	b.figures(ds)
	b.panels()
	b.batches()
	b.pour()
	b.steps()
	b.shopping()
	b.cautions()
	if err := b.Error(); err != nil {
		return fmt.Errorf("print pack: %w", err)
	}
	return b.Output(w)
}

// Document begins a document on paper "a4" or "letter", in mm, with the pack's face as
// font "go", regular and bold. Its bytes depend on what is drawn alone.
func Document(paper, title string) *fpdf.Fpdf {
	size := "A4"
	if paper == "letter" {
		size = "Letter"
	}
	doc := fpdf.New("P", "mm", size, "")
	fixed := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // the paper's date is the document's, not the clock's
	doc.SetCreationDate(fixed)
	doc.SetModificationDate(fixed)
	doc.SetCatalogSort(true)
	doc.SetTitle(title, true)
	doc.AddUTF8FontFromBytes("go", "", goregular.TTF)
	doc.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	return doc
}

func newBook(p *plan.Plan, opt Options) *book {
	b := &book{Fpdf: Document(opt.Paper, Clean(p.Piece.Name)+", shop pack"), plan: p}
	b.SetMargins(margin, top, margin)
	b.SetAutoPageBreak(true, foot)
	b.SetCellMargin(0)
	b.w, b.h = b.GetPageSize()
	b.AliasNbPages("{n}")
	worst, any := finding.Worst(p.Findings)
	b.stopped = any && worst == finding.Stop
	b.SetHeaderFunc(b.header)
	b.SetFooterFunc(b.footer)
	return b
}

// header prints the section's title: large on its first page, small where it goes on.
func (b *book) header() {
	b.w, b.h = b.GetPageSize()
	b.SetXY(margin, top)
	if b.stopped {
		b.SetFillColor(ink, ink, ink)
		b.SetTextColor(255, 255, 255)
		b.font("B", 10)
		b.CellFormat(0, 6.5, "  STOP: not to be cut, cast or poured. See page 1.", "", 1, "L", true, 0, "")
		b.SetTextColor(ink, ink, ink)
		b.Ln(3)
	}
	if b.section == "" {
		return
	}
	if b.opened {
		b.say("", 9, soft, "%s, continued", b.section)
	} else {
		b.say("B", 19, ink, "%s", b.section)
	}
	b.opened = true
	b.rule(1.5, 5)
}

func (b *book) footer() {
	pc := b.plan.Piece
	b.w, b.h = b.GetPageSize() // of the page that ends
	y := b.h - 12
	b.SetDrawColor(faint, faint, faint)
	b.SetLineWidth(0.1)
	b.Line(margin, y-1.5, b.w-margin, y-1.5)
	b.SetDrawColor(ink, ink, ink)
	b.font("", 8)
	parts := append([]string{pc.Name}, identity(pc)...)
	const right = 26
	b.SetXY(margin, y)
	b.CellFormat(b.w-2*margin-right, 4, b.cropped(Clean(strings.Join(parts, "   ")), b.w-2*margin-right-3), "", 0, "L", false, 0, "")
	b.CellFormat(right, 4, fmt.Sprintf("page %d of {n}", b.PageNo()), "", 0, "R", false, 0, "")
}

// identity tells which document a sheet was made from.
func identity(pc plan.Piece) []string {
	var out []string
	for _, f := range [][2]string{{"version", pc.Version}, {"starts", pc.Date}, {"inputs", pc.Fingerprint}} {
		if f[1] != "" {
			out = append(out, f[0]+" "+f[1])
		}
	}
	return out
}

// begin starts a section on a new page.
func (b *book) begin(title string) {
	b.section, b.opened = Clean(title), false
	b.AddPage()
}

// beginLying starts a section on a new page that lies on its long side.
func (b *book) beginLying(title string) {
	b.section, b.opened = Clean(title), false
	w, h, _ := b.PageSize(0)
	b.AddPageFormat("L", fpdf.SizeType{Wd: min(w, h), Ht: max(w, h)})
}

func (b *book) font(style string, size float64) { b.SetFont("go", style, size) }

// rule draws a hairline across the page, with air before and after it, mm.
func (b *book) rule(before, after float64) {
	y := b.GetY() + before
	b.SetDrawColor(faint, faint, faint)
	b.SetLineWidth(0.1)
	b.Line(margin, y, b.w-margin, y)
	b.SetDrawColor(ink, ink, ink)
	b.SetXY(margin, y+after)
}

// say prints a paragraph from the left margin.
func (b *book) say(style string, size float64, grey int, format string, args ...any) {
	b.font(style, size)
	b.SetTextColor(grey, grey, grey)
	b.SetX(margin)
	b.MultiCell(0, size*pt*1.32, Clean(fmt.Sprintf(format, args...)), "", "L", false)
	b.SetTextColor(ink, ink, ink)
}

// keep starts a new page unless height mm are left on this one.
func (b *book) keep(height float64) {
	if b.GetY()+height > b.h-foot {
		b.AddPage()
	}
}

// tick draws a box to tick with its upper left corner at x, y.
func (b *book) tick(x, y, side float64) {
	b.SetLineWidth(0.25)
	b.Rect(x, y, side, side, "D")
}

// cropped shortens text to width mm in the font that is set.
func (b *book) cropped(text string, width float64) string {
	if b.GetStringWidth(text) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 1 && b.GetStringWidth(string(runes)+"...") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "..."
}

// Clean makes text printable: control characters become spaces, characters that the
// font's tables cannot hold become a question mark.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case unicode.IsControl(r):
			return ' '
		case r > 0xFFFF || r == unicode.ReplacementChar:
			return '?'
		}
		return r
	}, text)
}
