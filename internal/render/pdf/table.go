package pdf

// A column of a table.
type column struct {
	head  string
	width float64 // mm
	right bool    // numbers stand to the right
	style string  // "" or "B"
	size  float64 // points; 0 for the table's own
}

// A table prints rows under hairlines; rows stay whole and the heads are repeated on a
// new page. A cell that is box becomes a box to tick.
type table struct {
	b    *book
	cols []column
	size float64 // points
}

const (
	box     = "\x01box"
	padding = 1.6 // mm above and below a row's text
	gutter  = 3.0 // mm between columns
)

// heads prints the heads of the columns, small and soft.
func (t table) heads() {
	b := t.b
	b.font("", 8)
	b.SetTextColor(soft, soft, soft)
	x, y := margin, b.GetY()
	for _, c := range t.cols {
		b.SetXY(x, y)
		b.CellFormat(c.width-gutter, 4, c.head, "", 0, align(c.right), false, 0, "")
		x += c.width
	}
	b.SetTextColor(ink, ink, ink)
	b.SetXY(margin, y+4)
	b.rule(0.8, 0)
}

func align(right bool) string {
	if right {
		return "R"
	}
	return "L"
}

// row prints one row. The cells after the last column are remarks, printed small and
// soft below the last cell's text.
func (t table) row(cells ...string) {
	b := t.b
	var remarks []string
	if len(cells) > len(t.cols) {
		cells, remarks = cells[:len(t.cols)], cells[len(t.cols):]
	}
	lines, height := t.layout(cells, remarks)
	if b.GetY()+height > b.h-foot {
		b.AddPage()
		t.heads()
	}
	y := b.GetY()
	x := margin
	for i, c := range t.cols {
		t.cell(x, y+padding+t.drop(c), c, cells[i], lines[i])
		x += c.width
	}
	last := t.cols[len(t.cols)-1]
	t.remarks(x-last.width, y+padding+t.drop(last)+t.height(last, len(lines[len(t.cols)-1])), last.width, remarks)
	b.SetXY(margin, y+height)
	b.rule(0, 0)
}

func (t table) fontOf(c column) (style string, size float64) {
	if c.size > 0 {
		return c.style, c.size
	}
	return c.style, t.size
}

// height returns how high n lines of a column are, mm.
func (t table) height(c column, n int) float64 {
	_, size := t.fontOf(c)
	return float64(n) * size * pt * 1.25
}

// baseline is where letters stand in a line, as a share of its height. Cells centre
// letters; in the Go fonts their base lies 0.3 of the size below the middle.
const baseline = 0.5 + 0.3/1.25

// drop returns how far a column's first line is lowered so that all first lines stand
// on one base line, mm.
func (t table) drop(c column) float64 {
	high := 0.0
	for _, o := range t.cols {
		high = max(high, t.height(o, 1))
	}
	return baseline * (high - t.height(c, 1))
}

// Points of remarks. A table of standing points and more is read at arm's length.
const (
	smallRemark    = 8.5
	standingRemark = 10.5
	standing       = 12.5
)

// remarkSize is how large remarks are: small, but on pages that are read standing.
func (t table) remarkSize() float64 {
	if t.size >= standing {
		return standingRemark
	}
	return smallRemark
}

// layout breaks the cells into lines and returns the row's height.
func (t table) layout(cells, remarks []string) ([][]string, float64) {
	b, high := t.b, 0.0
	lines := make([][]string, len(t.cols))
	for i, c := range t.cols {
		style, size := t.fontOf(c)
		b.font(style, size)
		lines[i] = []string{cells[i]}
		if cells[i] != box {
			lines[i] = b.SplitText(Clean(cells[i]), c.width-gutter)
		}
		h := t.drop(c) + t.height(c, max(1, len(lines[i])))
		if i == len(t.cols)-1 {
			h += float64(len(t.split(c.width, remarks))) * t.remarkSize() * pt * 1.25
		}
		high = max(high, h)
	}
	return lines, high + 2*padding
}

// split breaks remarks into lines of a column of the given width.
func (t table) split(width float64, remarks []string) []string {
	t.b.font("", t.remarkSize())
	var out []string
	for _, r := range remarks {
		out = append(out, t.b.SplitText(Clean(r), width-gutter)...)
	}
	return out
}

func (t table) cell(x, y float64, c column, cell string, lines []string) {
	b := t.b
	style, size := t.fontOf(c)
	h := size * pt * 1.25
	if cell == box {
		side := min(h*0.8, 5.5)
		b.tick(x, y+(h-side)/2, side)
		return
	}
	b.font(style, size)
	for i, l := range lines {
		b.SetXY(x, y+float64(i)*h)
		b.CellFormat(c.width-gutter, h, l, "", 0, align(c.right), false, 0, "")
	}
}

func (t table) remarks(x, y, width float64, remarks []string) {
	b := t.b
	h := t.remarkSize() * pt * 1.25
	lines := t.split(width, remarks)
	b.SetTextColor(soft, soft, soft)
	for i, l := range lines {
		b.SetXY(x, y+float64(i)*h)
		b.CellFormat(width-gutter, h, l, "", 0, "L", false, 0, "")
	}
	b.SetTextColor(ink, ink, ink)
}
