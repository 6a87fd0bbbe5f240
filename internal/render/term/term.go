// Package term prints a plan as a quiet report for the terminal: findings first, then
// the rooms in building order, aligned, with units in the headings.
package term

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"unicode"
	"unicode/utf8"

	"pourwright/internal/finding"
	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/units"
)

const width = 96

type page struct {
	*bufio.Writer
	plan *plan.Plan
}

// Render prints p on w.
func Render(w io.Writer, p *plan.Plan) error {
	pg := page{bufio.NewWriter(w), p}
	pg.head()
	pg.findings()
	if len(p.Relief.Layers) > 0 {
		pg.basin()
		pg.concrete()
	}
	pg.form()
	pg.base()
	if len(p.Relief.Layers) > 0 {
		pg.knockout()
		pg.resin()
		pg.weights()
		pg.calendar()
		pg.shopping()
	}
	pg.assumed()
	return pg.Flush()
}

// length prints l in the maker's unit with the other beside it.
func (p page) length(l units.Length) string {
	if p.plan.Piece.Units == "in" {
		return units.FormatInches(l, 32) + " (" + units.FormatMM(l, 1) + ")"
	}
	return units.FormatMM(l, 1) + " (" + units.FormatInches(l, 32) + ")"
}

// printable keeps control characters of names from steering the terminal.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

func (p page) title(s string) { fmt.Fprintf(p, "\n%s\n%s\n", s, strings.Repeat("-", len(s))) }

func (p page) table(rows func(t *tabwriter.Writer)) {
	t := tabwriter.NewWriter(p, 2, 8, 2, ' ', 0)
	rows(t)
	_ = t.Flush()
}

func (p page) head() {
	pc := p.plan.Piece
	fmt.Fprint(p, printable(pc.Name))
	if pc.Version != "" {
		fmt.Fprintf(p, ", version %s", printable(pc.Version))
	}
	fmt.Fprintln(p)
	fmt.Fprintf(p, "%s long, %s wide, %s high\n", p.length(pc.Length), p.length(pc.Width), p.length(pc.Height))
	fmt.Fprintf(p, "shell %s\n", p.length(pc.Shell))
	fmt.Fprintf(p, "inputs %s\n", pc.Fingerprint)
}

func (p page) findings() {
	count := map[finding.Severity]int{}
	for _, f := range p.plan.Findings {
		count[f.Severity]++
	}
	p.title(fmt.Sprintf("Findings: %d stop, %d caution, %d note", count[finding.Stop], count[finding.Caution], count[finding.Note]))
	if count[finding.Stop] > 0 {
		fmt.Fprintln(p, "NOT TO BE CUT, CAST OR POURED before the stops are settled.")
	}
	for _, f := range p.plan.Findings {
		p.wrap(fmt.Sprintf("%-8s", f.Severity), f.Text)
		if w := f.Where.String(); w != "" {
			p.wrap("", "at "+strings.TrimPrefix(w, "at "))
		}
		p.wrap("", "do: "+f.Remedy)
	}
}

// wrap prints text behind a label of eight characters, broken at width.
func (p page) wrap(label, text string) {
	for i, line := range broken(printable(text), width-8) {
		if i > 0 {
			label = ""
		}
		fmt.Fprintf(p, "%-8s%s\n", label, line)
	}
}

func (p page) basin() {
	r := p.plan.Relief
	p.title("Basin")
	fmt.Fprintf(p, "%s deep, %.3f l = %.3f US gal\n", p.length(r.Depth), r.Volume, r.Volume.USGal())
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "layer\tname\tfrom mm\tto mm\tarea mm2\tperimeter mm\tvolume l\tislands")
		for _, l := range r.Layers {
			fmt.Fprintf(t, "%d\t%s\t%.1f\t%.1f\t%.0f\t%.0f\t%.3f\t%d\n", l.Number, l.Name, l.From, l.To, l.Area, l.Perimeter, l.Volume, l.Islands)
		}
	})
	for _, m := range r.Mouths {
		fmt.Fprintf(p, "mouth on the %s side: %.1f mm wide, %.1f mm deep, opening %.0f mm2\n", m.Side, m.Width, m.Depth, m.Opening)
	}
}

func (p page) concrete() {
	c := p.plan.Concrete
	p.title("Concrete")
	fmt.Fprintf(p, "cast surface %.3f m2: face %.3f, floor %.3f, riser %.3f, wall %.3f\n", c.CastSurface.M2(), c.Surfaces.Face.M2(), c.Surfaces.Floor.M2(), c.Surfaces.Riser.M2(), c.Surfaces.Wall.M2())
	fmt.Fprintf(p, "shell, true offset %.2f l (converged to %.2f %%); area x thickness would say %.2f l, %+.1f %%\n", c.ShellVolume, 100*c.Converged, c.Naive, 100*c.NaiveOver)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "coat\tmix\tmm\tvolume l\tin place kg\tto mix kg")
		for _, x := range c.Coats {
			fmt.Fprintf(t, "%s\t%s\t%.1f\t%.2f\t%.2f\t%.2f\n", x.Name, x.Mix, x.Thickness, x.Volume, x.Mass, x.ToMix)
		}
	})
	p.title("Batches, kg")
	for _, b := range c.Batches {
		fmt.Fprintf(p, "%d  %s, one of %d: %.3f kg, %.1f l\n", b.Number, b.Coat, b.Of, b.Mass, b.Volume)
		for _, part := range b.Parts {
			fmt.Fprintf(p, "     %8.3f  %s\n", part.Mass, part.Name)
		}
		fmt.Fprintf(p, "     water: first %.3f, then up to %.3f, never above %.3f\n", b.WaterFirst, b.WaterUpTo, b.WaterNever)
	}
}

func (p page) form() {
	f := p.plan.Form
	if len(f.Panels) == 0 {
		return
	}
	p.title("Form")
	fmt.Fprintf(p, "board %.1f mm as measured, %s corners, %.1f kg\n", p.plan.Piece.Board, p.plan.Piece.Corner, f.Mass)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "panel\tcount\tlength mm\twidth mm\tlength in\twidth in")
		for _, x := range f.Panels {
			fmt.Fprintf(t, "%s\t%d\t%.1f\t%.1f\t%.3f\t%.3f\n", x.Name, x.Count, x.Length, x.Width, x.Length.In(), x.Width.In())
		}
	})
	for _, x := range f.Panels {
		if x.Bevel != "" {
			fmt.Fprintf(p, "%s: bevel %s\n", x.Name, x.Bevel)
		}
	}
	p.making()
}

func (p page) knockout() {
	k := p.plan.Knockout
	p.title("Knockout, FORM VIEW")
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "part\tlayer\tthick mm\tsheets\tbox mm\tkg")
		for _, x := range k.Parts {
			fmt.Fprintf(t, "%s\t%d\t%.1f\t%d\t%.0f x %.0f\t%.3f\n", x.ID, x.Layer, x.Thickness, x.Sheets, x.BoxX, x.BoxY, x.Mass)
		}
	})
	fmt.Fprintf(p, "glue in this order: %s\n", strings.Join(k.Glue, ", "))
	p.seams()
	p.sheets()
}

func (p page) weights() {
	s := p.plan.Structure
	p.title("Weights, kg")
	fmt.Fprintf(p, "shell %.1f, resin %.1f, extras %.1f, delivered %.1f; turned over with its form %.1f: %s\n", s.Shell, s.Resin, s.Extras, s.Delivered, s.Flip, units.Count(s.Lifters, "person", "people"))
}

// titleWidth is what the columns of times leave for a step's title.
const titleWidth = 52

// broken breaks text into lines of at most width characters, between words; at least
// one line.
func broken(text string, width int) []string {
	out := []string{""}
	for _, word := range strings.Fields(text) {
		last := &out[len(out)-1]
		switch {
		case *last == "":
			*last = word
		case utf8.RuneCountInString(*last)+1+utf8.RuneCountInString(word) <= width:
			*last += " " + word
		default:
			out = append(out, word)
		}
	}
	return out
}

func (p page) calendar() {
	c := p.plan.Calendar
	p.title("Steps")
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "step\tstart\twork h\twait h\twhat")
		for _, s := range c.Steps {
			lines := broken(printable(s.Title+people(c, s)), titleWidth)
			fmt.Fprintf(t, "%d\t%s\t%.1f\t%.1f\t%s\n", s.Number, s.Start, s.Work, s.Wait, lines[0])
			for _, l := range lines[1:] {
				fmt.Fprintf(t, "\t\t\t\t%s\n", l)
			}
		}
	})
	fmt.Fprintf(p, "%.1f hours of work; finished %s\n", c.Hands, c.Finish)
}

// people names who does a step where there is more than one to choose from, and says
// when it is outside the hours.
func people(c calendar.Result, s calendar.Step) string {
	text := ""
	if len(c.People) > 1 && len(s.Who) > 0 {
		text = " (" + strings.Join(s.Who, ", ") + ")"
	}
	if s.OffHours {
		text += " OUTSIDE THE HOURS"
	}
	return text
}

func (p page) shopping() {
	p.title("Shopping list")
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "what\tneed\tunit\tbuy\tleft")
		for _, l := range p.plan.Cost.Lines {
			var buy []string
			for _, b := range l.Buy {
				buy = append(buy, fmt.Sprintf("%d x %g", b.Count, b.Size))
			}
			fmt.Fprintf(t, "%s\t%.2f\t%s\t%s\t%.2f\n", l.Name, l.Need, l.Unit, strings.Join(buy, " + "), l.Left)
		}
	})
}

func (p page) assumed() {
	if len(p.plan.Assumed) == 0 {
		return
	}
	p.title("Measure first: these are typical values")
	for _, a := range p.plan.Assumed {
		fmt.Fprintf(p, "%s: %s\n", a.What, a.Value)
	}
}
