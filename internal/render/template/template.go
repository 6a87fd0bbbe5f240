// Package template prints outlines at true size on sheets of paper that are taped
// together: for a shop that cuts its foam with a saw. Every page has bars of 100 mm and
// of 4 in along both axes, so that a print that was scaled shows before foam is cut.
//
// A figure is laid out in tiles that overlap. In the middle of every overlap stand
// crosses that two neighbours have in common, at places where both are printed; a map
// shows which tile lies where. Tiles with nothing on them to cut are not printed.
package template

import (
	"fmt"
	"io"

	"pourwright/internal/geom"
	"pourwright/internal/render/pdf"
)

// A Stroke says how a line is printed.
type Stroke int

// The strokes.
const (
	Cut    Stroke = iota // full: what is cut
	Dashed               // what lies beside or below
	Dotted               // what is only to be seen
)

// A Line is traced through its points, mm.
type Line struct {
	Stroke Stroke
	Points geom.Ring
	Closed bool
}

// A Label stands in the middle of its place, mm.
type Label struct {
	At   geom.Point
	Text string
	Size float64 // height on paper, mm
}

// A Figure is printed at true size, x to the right and y up.
type Figure struct {
	Name   string      // short, on every tile: L1-A
	Title  string      // what it is
	View   string      // "form", "finished" or "": stamped on every tile
	Region geom.Region // the material, on which Name is written on every tile
	Lines  []Line
	Labels []Label
	Arrow  string   // what lies towards -y; "" draws no arrow
	Notes  []string // printed beside the map
}

// Options say on what paper.
type Options struct {
	Paper string // "a4" or "letter"; a4 unless said
	Title string // of the document
}

// Sizes on paper, mm.
const (
	edge     = 10.0 // kept free: few printers reach further
	strip    = 16.0 // for the bars, left and below
	headRoom = 15.0 // for title and stamp
	Overlap  = 12.0 // of neighbouring tiles
	arm      = 4.0  // of a cross
	fine     = 0.15 // line widths
	thick    = 0.3
)

// Render prints the figures: each with a map, then its tiles. Same input, same bytes.
// Figures without a finite, positive extent are left out.
func Render(w io.Writer, fs []Figure, opt Options) error {
	b := &sheets{Fpdf: pdf.Document(opt.Paper, pdf.Clean(opt.Title)), title: pdf.Clean(opt.Title)}
	b.SetMargins(edge, edge, edge)
	b.SetAutoPageBreak(false, 0)
	b.SetCellMargin(0)
	b.AliasNbPages("{n}")
	for _, f := range fs {
		if g, ok := layOut(f, opt.Paper); ok {
			b.figure(g)
		}
	}
	if b.PageCount() == 0 {
		b.AddPage()
		b.print(edge, edge+10, 12, "B", "There is nothing to trace.")
	}
	if err := b.Error(); err != nil {
		return fmt.Errorf("print templates: %w", err)
	}
	return b.Output(w)
}
