package template

import "fmt"

// A bar is a length to measure.
type bar struct {
	length float64 // mm
	step   float64 // between its marks, mm
	text   string
}

var measures = [2]bar{{100, 10, "100 mm"}, {101.6, 25.4, "4 in"}}

// Bar places on a page, mm from its upper left corner: where the bars begin.
const (
	barFirst  = edge + 3   // from the edge of the page to the outer bar
	barSecond = edge + 11  // to the inner one
	barStart  = edge + 20. // along it
)

// bars prints the bars of both lengths along both axes, and what to do with them. The
// bars' ends are the outer marks' middles.
func (b *sheets) bars() {
	g := b.g
	for k, m := range measures {
		d := [2]float64{barFirst, barSecond}[k]
		y := g.pageH - d
		b.SetLineWidth(0.2)
		b.Line(barStart, y, barStart+m.length, y)
		m.marks(func(at, long float64) { b.Line(barStart+at, y, barStart+at, y-long) })
		b.print(barStart+m.length+2, y, 8, "B", m.text)
		x := d
		top := edge + headRoom + 2
		b.Line(x, top, x, top+m.length)
		m.marks(func(at, long float64) { b.Line(x, top+at, x+long, top+at) })
		b.TransformBegin()
		b.TransformRotate(90, x+2.4, top+m.length+14)
		b.print(x+2.4, top+m.length+14, 8, "B", m.text)
		b.TransformEnd()
	}
	x := barStart + 101.6 + 18
	b.SetFont("go", "", 7)
	for i, l := range b.SplitText(caution, g.pageW-edge-x) {
		b.Text(x, g.pageH-edge-10+3*float64(i), l)
	}
	b.print(g.pageW-edge-18, g.pageH-edge+3, 7, "", fmt.Sprintf("page %d of {n}", b.PageNo()))
}

// marks calls draw for every mark of a bar: where it is and how long, the ends longest.
func (m bar) marks(draw func(at, long float64)) {
	for i := 0; float64(i)*m.step <= m.length+1e-9; i++ {
		at, long := float64(i)*m.step, 1.5
		if i == 0 || at > m.length-1e-9 {
			long = 4
		}
		draw(at, long)
	}
}
