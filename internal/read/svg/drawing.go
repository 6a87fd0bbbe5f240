package svg

import (
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
)

// A Drawing is a page of outlines, millimetres, y down from the upper left corner.
type Drawing struct {
	File         string
	PageWidthMM  float64
	PageHeightMM float64
	UnitNote     string // how the page came by its size
	Physical     bool   // the file states its size in real units
	MMPerUnit    float64
	Resolution   float64 // px per inch that were assumed where no unit stood
	Outlines     []Outline
	Vertices     int

	toMM matrix // from user units of the root's viewBox
}

// An Outline is one element of the drawing.
type Outline struct {
	ID       string   // unique in the drawing: the element's id, or its name and number
	Named    bool     // ID is the element's own
	Element  string   // "path", "rect"
	Source   string   // id of the element itself where it is drawn by a use
	Groups   []string // ids of the groups and uses around it, outermost first
	Labels   []string // names of the groups around it and its own, as drawing programs show them
	Classes  []string // its own and those of the groups around it
	Line     int
	Column   int
	FillRule geom.FillRule
	Filled   bool
	Stroked  bool

	Rings   []geom.Ring // lines as chords, mm; an open line keeps both its ends
	Closed  []bool      // per ring
	Speck   []bool      // per ring: closed around less than the stated limit
	AreaMM2 float64     // inside by the fill rule; open lines closed straight, as a fill does
	Box     geom.Box    // exact extent of all lines, mm

	DuplicateOf string   // id of an outline drawn before it that is the same
	Parent      string   // id of the smallest outline around it, or ""
	Holes       []string // ids of the outlines directly inside it

	exact []float64 // signed exact area per ring, mm2
}

// AllClosed reports whether every line of o is closed.
func (o Outline) AllClosed() bool { return !slices.Contains(o.Closed, false) }

// Used returns the rings of o that count: closed and no speck.
func (o Outline) Used() []geom.Ring {
	var out []geom.Ring
	for i, r := range o.Rings {
		if o.Closed[i] && !o.Speck[i] {
			out = append(out, r)
		}
	}
	return out
}

// Region returns the inside of o by its fill rule, mm, y down as on the page.
func (o Outline) Region() geom.Region {
	used := o.Used()
	if len(used) == 0 {
		return nil
	}
	return geom.Build(used, o.FillRule)
}

func (o Outline) where(file string) finding.Where {
	return finding.Where{File: file, Line: o.Line, Column: o.Column, Element: o.ID}
}

// whereAt is where with a place on the page, mm, y down.
func (o Outline) whereAt(file string, p geom.Point) finding.Where {
	w := o.where(file)
	w.View, w.At = "page", &[2]float64{round(p.X, 1e-3), round(p.Y, 1e-3)}
	return w
}

// Select returns the outlines that ref names: the outline of that id; or all inside
// the group, or drawn by the use, of that id; or drawn by way of a use from the
// element of that id; or under the layer of that name; or for ".deep" all of class
// deep, their own or a group's.
func (d *Drawing) Select(ref string) []Outline {
	pick := func(match func(*Outline) bool) []Outline {
		var out []Outline
		for i := range d.Outlines {
			if match(&d.Outlines[i]) {
				out = append(out, d.Outlines[i])
			}
		}
		return out
	}
	ref = strings.TrimSpace(ref)
	if class, ok := strings.CutPrefix(ref, "."); ok {
		return pick(func(o *Outline) bool { return slices.Contains(o.Classes, class) })
	}
	ref = strings.TrimPrefix(ref, "#")
	if ref == "" {
		return nil
	}
	for _, match := range []func(*Outline) bool{
		func(o *Outline) bool { return o.ID == ref },
		func(o *Outline) bool { return slices.Contains(o.Groups, ref) },
		func(o *Outline) bool { return o.Source == ref },
		func(o *Outline) bool { return slices.Contains(o.Labels, ref) },
	} {
		if out := pick(match); len(out) > 0 {
			return out
		}
	}
	return nil
}

// IDs returns the ids of all outlines in drawing order, for a maker who named one
// that is not there.
func (d *Drawing) IDs() []string {
	out := make([]string, len(d.Outlines))
	for i, o := range d.Outlines {
		out[i] = o.ID
	}
	return out
}

// Region returns what is inside any of outlines, each by its own fill rule, mm, y
// down as on the page.
func (d *Drawing) Region(outlines []Outline) geom.Region {
	return union(outlines, func(o Outline) geom.Region { return o.Region() })
}

// PieceRegion is Region with y up: in the piece's coordinates when the page is the
// outer box, x from the left edge, y from the lower edge of the page,
//
//	xPiece = xPage,  yPiece = PageHeightMM - yPage
func (d *Drawing) PieceRegion(outlines []Outline) geom.Region {
	return union(outlines, func(o Outline) geom.Region {
		rings := o.Used()
		for i, r := range rings {
			rings[i] = r.Map(d.PiecePoint)
		}
		if len(rings) == 0 {
			return nil
		}
		return geom.Build(rings, o.FillRule)
	})
}

func union(outlines []Outline, region func(Outline) geom.Region) geom.Region {
	var parts []geom.Region
	for _, o := range outlines {
		if r := region(o); len(r) > 0 {
			parts = append(parts, r)
		}
	}
	switch len(parts) {
	case 0:
		return nil
	case 1:
		return parts[0]
	}
	return geom.Union(parts...)
}

// PiecePoint returns a place on the page with y up from the page's lower edge.
func (d *Drawing) PiecePoint(p geom.Point) geom.Point {
	return geom.Point{X: p.X, Y: d.PageHeightMM - p.Y}
}

// Longest returns the outline of the greatest extent along x or y and that extent, mm.
func (d *Drawing) Longest() (id string, mm float64) {
	for _, o := range d.Outlines {
		if e := max(o.Box.Width(), o.Box.Height()); e > mm {
			id, mm = o.ID, e
		}
	}
	return id, mm
}

// CheckScale compares the page with a piece of length by width, mm, and says what
// the drawing was probably made for when they differ by a known factor. It returns no
// finding where the page fits the piece within 0.5 %.
func (d *Drawing) CheckScale(length, width float64) []finding.Finding {
	if !(length > 0 && width > 0 && d.PageWidthMM > 0 && d.PageHeightMM > 0) {
		return nil
	}
	kx, ky := length/d.PageWidthMM, width/d.PageHeightMM
	const tolerance = 0.005 // Chosen: under the step between any two factors below
	if math.Abs(kx/ky-1) > tolerance || math.Abs(kx-1) <= tolerance {
		return nil
	}
	guess, severity := "", finding.Caution
	for _, g := range scaleGuesses {
		if math.Abs(kx/g.factor-1) <= tolerance {
			guess, severity = "; that is the factor of "+g.says, finding.Stop
		}
	}
	f := ruleScaleBox.At(finding.Where{File: d.File, Line: 1}, "the page is %.1f x %.1f mm, the piece %.1f x %.1f mm: %.4g times as large%s",
		d.PageWidthMM, d.PageHeightMM, length, width, kx, guess)
	return []finding.Finding{f.Measured(d.PageWidthMM, length, "mm").As(severity)}
}

var scaleGuesses = []struct {
	factor float64
	says   string
}{
	{96.0 / 72, "a drawing made at 72 px per inch and read at 96"},
	{96.0 / 90, "a drawing made at 90 px per inch and read at 96"},
	{90.0 / 72, "a drawing made at 72 px per inch and read at 90"},
	{72.0 / 96, "a drawing made at 96 px per inch and read at 72"},
	{96 / mmPerInch, "a drawing whose numbers are millimetres but were read as px"},
	{72 / mmPerInch, "a drawing whose numbers are millimetres but were read as points"},
	{96, "a drawing whose numbers are inches but were read as px"},
	{mmPerInch, "inches read as millimetres"},
	{1 / mmPerInch, "millimetres read as inches"},
	{10, "centimetres read as millimetres"},
	{0.1, "millimetres read as centimetres"},
}

func round(x, step float64) float64 { return math.Round(x/step) * step }

// ruleName returns the fill rule as SVG spells it.
func ruleName(o *Outline) string {
	if o.FillRule == geom.EvenOdd {
		return "evenodd"
	}
	return "nonzero"
}
