package svg

import (
	"fmt"
	"io"
	"text/tabwriter"

	"pourwright/internal/finding"
)

// An Inspection is what a drawing holds, for the maker to compare with what was meant.
type Inspection struct {
	File       string            `json:"file"`
	Outlines   []Inspected       `json:"outlines"`
	UnitNote   string            `json:"unit_note"`
	PageMM     [2]float64        `json:"page_mm"` // width, height
	Longest    string            `json:"longest"` // id of the outline of the greatest extent
	LongestMM  float64           `json:"longest_mm"`
	ScaleCheck string            `json:"scale_check"` // "longest outline 1220.0 mm"
	Vertices   int               `json:"vertices"`
	ChordMM    float64           `json:"chord_error_mm"`
	Findings   []finding.Finding `json:"findings"`
}

// An Inspected is one outline of the drawing.
type Inspected struct {
	ID          string     `json:"id"`
	Element     string     `json:"element"`
	Closed      bool       `json:"closed"`   // every line of it
	AreaMM2     float64    `json:"area_mm2"` // inside by its fill rule, holes of its own left out; an open line is closed straight, as a fill does
	BoxMM       [4]float64 `json:"bbox_mm"`  // x0, y0, x1, y1 on the page, y down as in the file
	Parent      *string    `json:"parent"`   // id of the smallest outline around it, null if none
	Holes       []string   `json:"holes"`    // ids of the outlines directly inside it
	Rings       int        `json:"rings"`    // lines it is made of
	Vertices    int        `json:"vertices"`
	FillRule    string     `json:"fill_rule"`
	Groups      []string   `json:"groups"`
	Classes     []string   `json:"classes"`
	DuplicateOf *string    `json:"duplicate_of"` // id of the outline it repeats, null if none
	Used        bool       `json:"used"`         // has a closed line that counts
	Line        int        `json:"line"`
}

// Inspect reads a drawing and says what is in it.
func Inspect(file string, data []byte, opt Options) (Inspection, error) {
	d, notes, err := Read(file, data, opt)
	if err != nil {
		return Inspection{}, err
	}
	in := d.Inspect()
	in.ChordMM = opt.orDefault().ChordError
	in.Findings = notes
	return in, nil
}

// Inspect says what is in d; findings are left to the caller.
func (d *Drawing) Inspect() Inspection {
	in := Inspection{File: d.File, Outlines: []Inspected{}, UnitNote: d.UnitNote, Vertices: d.Vertices, Findings: []finding.Finding{},
		PageMM: [2]float64{round(d.PageWidthMM, 1e-4), round(d.PageHeightMM, 1e-4)}}
	id, mm := d.Longest()
	in.Longest, in.LongestMM = id, round(mm, 1e-4)
	in.ScaleCheck = fmt.Sprintf("longest outline %.1f mm", mm)
	for i := range d.Outlines {
		in.Outlines = append(in.Outlines, d.Outlines[i].inspected())
	}
	return in
}

func (o *Outline) inspected() Inspected {
	b := o.Box
	return Inspected{
		ID: o.ID, Element: o.Element, Closed: o.AllClosed(), AreaMM2: round(o.AreaMM2, 1e-4),
		BoxMM:  [4]float64{round(b.Min.X, 1e-4), round(b.Min.Y, 1e-4), round(b.Max.X, 1e-4), round(b.Max.Y, 1e-4)},
		Parent: orNil(o.Parent), Holes: orEmpty(o.Holes), Rings: len(o.Rings), Vertices: vertices(*o),
		FillRule: ruleName(o), Groups: orEmpty(o.Groups), Classes: orEmpty(o.Classes),
		DuplicateOf: orNil(o.DuplicateOf), Used: len(o.Used()) > 0 && o.DuplicateOf == "", Line: o.Line,
	}
}

func orNil(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func orEmpty(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

// Text writes the inspection as a table, the scale check and the findings.
func (in Inspection) Text(out io.Writer) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprint(w, "outline\tstate\tarea mm2\tx0 mm\ty0 mm\tx1 mm\ty1 mm\tinside\tholes\t\n")
	for _, o := range in.Outlines {
		fmt.Fprintf(w, "%s\t%s\t%s\t%.1f\t%.1f\t%.1f\t%.1f\t%s\t%d\t\n", o.ID, o.state(), o.areaText(),
			o.BoxMM[0], o.BoxMM[1], o.BoxMM[2], o.BoxMM[3], dash(o.Parent), len(o.Holes))
	}
	if err := w.Flush(); err != nil {
		return err
	}
	if _, err := fmt.Fprintf(out, "\n%s\n%s\n", in.UnitNote, in.ScaleCheck); err != nil {
		return err
	}
	for _, f := range in.Findings {
		if _, err := fmt.Fprintf(out, "\n%s: %s: %s\n  %s\n", f.Severity, f.Where, f.Text, f.Remedy); err != nil {
			return err
		}
	}
	return nil
}

func (o Inspected) state() string {
	switch {
	case o.DuplicateOf != nil:
		return "double"
	case !o.Closed:
		return "open"
	case !o.Used:
		return "speck"
	}
	return "closed"
}

func (o Inspected) areaText() string {
	if !o.Closed {
		return "-"
	}
	return fmt.Sprintf("%.1f", o.AreaMM2)
}

func dash(s *string) string {
	if s == nil {
		return "-"
	}
	return *s
}
