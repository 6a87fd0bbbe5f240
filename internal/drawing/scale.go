package drawing

import "pourwright/internal/units"

// Lettering is the height of texts on paper, mm. Source: [iso-3098], from memory: 2.5
// is the smallest customary size.
const Lettering = 2.5

// scales are the customary scales of drawings, with those of the inch trade (1/4, 1/8
// and 1/16 of full size). Source: [iso-5455], from memory.
var scales = []float64{1, 2, 4, 5, 8, 10, 16, 20, 25, 50, 100, 200, 500, 1000}

// Room for a figure on the smaller of the two papers, mm, with its margins.
const (
	PaperWidth  = 178.0
	PaperHeight = 196.0
	surround    = 20.0 // dimensions and side names beside the figure, mm on paper
)

// scaleFor returns the customary scale at which a figure of w x h mm, its dimensions
// and lines lines of notes fit the paper.
func scaleFor(w, h float64, lines int) float64 {
	wide, high := PaperWidth-surround, PaperHeight-surround-1.6*Lettering*float64(lines)
	for _, s := range scales {
		if w <= wide*s && h <= high*s {
			return s
		}
	}
	return scales[len(scales)-1]
}

// Fitting returns the customary scale, d's own or a smaller one, at which d fits
// w x h mm of paper; false when none does.
func (d Drawing) Fitting(w, h float64) (scale float64, ok bool) {
	for _, s := range scales {
		if s >= d.Scale && d.Box.Width() <= w*s && d.Box.Height() <= h*s {
			return s, true
		}
	}
	return 0, false
}

// Measure writes a length as it stands on a drawing, without its unit: to 0.1 mm, or
// to 1/32 in when system is "in".
func Measure(l units.Length, system string) string {
	text := ""
	if system == "in" {
		text = units.FormatInches(l, 32)
		return text[:len(text)-len(" in")]
	}
	text = units.FormatMM(l, 1)
	text = text[:len(text)-len(" mm")]
	if n := len(text); n > 2 && text[n-2:] == ".0" {
		text = text[:n-2]
	}
	return text
}

// unitNote says in what the lengths of a drawing are given.
func unitNote(system string) string {
	if system == "in" {
		return "lengths in inches, to the nearest 1/32"
	}
	return "lengths in mm"
}
