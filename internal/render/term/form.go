package term

import (
	"fmt"
	"text/tabwriter"

	"pourwright/internal/cutlist"
	"pourwright/internal/units"
)

// making prints how the form is braced, put together and sealed.
func (p page) making() {
	f := p.plan.Form
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "wall\tpanel\tload kPa\tbow mm\tlimit mm\tbattens\tscrews foot, ends")
		for _, w := range f.Walls {
			battens := "none"
			if w.Rail {
				battens = "rail, " + units.Count(w.Uprights, "upright", "uprights")
			}
			fmt.Fprintf(t, "%s\t%s %s\t%.2f\t%.2f\t%.2f\t%s\t%d, %d\n", w.Mark, w.Place, w.Panel, float64(w.Load), w.Bow+w.BattenBow, w.Limit, battens, w.FootScrews, w.EndScrews)
		}
	})
	fmt.Fprintf(p, "mix %s; %d of %s\n", f.Pressure, f.Screws.Count, f.Screws.Name)
	for _, s := range f.Assembly {
		p.wrap(fmt.Sprint(s.Number), s.Text)
	}
	for _, s := range f.Bought {
		fmt.Fprintf(p, "%s: %.2f %s\n", s.Name, s.Need, s.Unit)
	}
	for _, d := range f.Dams {
		fmt.Fprintf(p, "dam %s, %s side: %.1f x %.1f mm of %s\n", d.Mark, d.Side, d.Length, d.Height, printable(d.Board))
		fmt.Fprintf(p, "  seal %.0f mm, pushed with %.1f N; water test: at most %.0f ml in %.1f h\n", d.Seal, d.Force, d.Water, d.Test)
	}
	for _, x := range f.Inserts {
		p.wrap(x.Kind, fmt.Sprintf("%s: finished view x %.1f, y %.1f; form view x %.1f, y %.1f; cover %.1f mm", x.Name, x.X, x.Y, x.FormX, x.FormY, x.Cover))
	}
	p.cutting("Cuts of the form", f.Cutting)
}

// cutting prints the cuts of a board, one line for each, and what stays.
func (p page) cutting(title string, c cutlist.Result) {
	if len(c.Cuts) == 0 {
		return
	}
	p.title(title)
	fmt.Fprintf(p, "%s, kerf %.1f mm: %s to buy\n", printable(c.Board), c.Kerf, units.Count(c.Buy, "sheet", "sheets"))
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "cut\tsheet\tpart\tfence mm\tblade\tmakes")
		for _, x := range c.Cuts {
			fmt.Fprintf(t, "%d\t%s\t%s\t%.1f\t%.1f\t%s\n", x.Number, x.Sheet, x.Part, x.FenceMM, x.TiltDeg, printable(x.Makes))
		}
	})
	for _, x := range c.Remains {
		fmt.Fprintf(p, "stays in the shop: %d x %s, %.0f x %.0f mm\n", x.Count, printable(x.Name), x.Length, x.Width)
	}
}

// base prints the carcass and the cross supports.
func (p page) base() {
	b := p.plan.Base
	if !b.Wanted && len(b.Supports) == 0 {
		return
	}
	p.title("Base and supports")
	if b.Wanted {
		fmt.Fprintf(p, "carcass %.1f x %.1f x %.1f mm, %.1f kg; the shell's foot hangs %.1f mm over the floor\n", b.Length, b.Width, b.Height, b.Mass, b.Reveal)
		p.table(func(t *tabwriter.Writer) {
			fmt.Fprintln(t, "part\tcount\tlength mm\twidth mm\tnote")
			for _, x := range b.Parts {
				fmt.Fprintf(t, "%s\t%d\t%.1f\t%.1f\t%s\n", x.Name, x.Count, x.Length, x.Width, x.Note)
			}
		})
	}
	for _, t := range b.Supports {
		fmt.Fprintf(p, "%d x %s, %s, %.1f mm\n", t.Count, printable(t.Name), printable(t.Tube), t.Length)
		for _, h := range t.Holes {
			fmt.Fprintf(p, "  %s face: %.1f mm at %.1f mm, %s\n", h.Face, h.Diameter, h.At, h.For)
		}
	}
	p.cutting("Cuts of the base", b.Cutting)
	for _, x := range b.Bars {
		for _, bar := range x.Bars {
			fmt.Fprintf(p, "bar %s of %s: %s, %.0f mm left\n", bar.ID, printable(x.Bar), units.Count(len(bar.Pieces), "piece", "pieces"), bar.RestMM)
		}
	}
}
