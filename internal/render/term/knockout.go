package term

import (
	"fmt"
	"strings"
	"text/tabwriter"
)

// seams prints where layers are cut, how far their seams keep apart, and why there.
func (p page) seams() {
	k := p.plan.Knockout
	if k.Limits.X > 0 {
		fmt.Fprintf(p, "cut by %s; a piece may be %.0f x %.0f mm (%s)\n", k.Limits.Route, k.Limits.X, k.Limits.Y, k.Limits.By)
	}
	if len(k.Seams) == 0 {
		return
	}
	p.title("Seams, FORM VIEW")
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "seam\tjoins\tkind\tmiddle x, y mm\tlong mm\tshows mm\tstagger mm")
		for _, s := range k.Seams {
			var apart []string
			for _, g := range s.Staggers {
				apart = append(apart, fmt.Sprintf("%.0f (layer %d)", g.Distance, g.Layer))
			}
			m := s.Line[0].Add(s.Line[1]).Mul(0.5)
			fmt.Fprintf(t, "%s\t%s\t%s\t%.0f, %.0f\t%.0f\t%.0f\t%s\n", s.ID, strings.Join(s.Parts, " + "), s.Kind,
				m.X, m.Y, s.Length, s.Visible, strings.Join(apart, ", "))
		}
	})
	for _, s := range k.Seams {
		p.wrap(s.ID, s.Why)
	}
}

// sheets prints what lies on each sheet of foam.
func (p page) sheets() {
	k := p.plan.Knockout
	if len(k.Sheets) == 0 {
		return
	}
	p.title("Foam sheets")
	fmt.Fprintf(p, "%d new; at least %d by area\n", k.Buy, k.AtLeast)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "sheet\tmm\tparts\tused\tkeep")
		for _, s := range k.Sheets {
			var parts []string
			for _, q := range s.Placements {
				parts = append(parts, q.Part)
			}
			keep := ""
			if s.Keep != nil {
				keep = fmt.Sprintf("%s, %.0f x %.0f mm", printable(s.Keep.Name), s.Keep.SizeX, s.Keep.SizeY)
			}
			fmt.Fprintf(t, "%s\t%.0f x %.0f\t%s\t%.0f %%\t%s\n", printable(s.Name), s.SizeX, s.SizeY, strings.Join(parts, ", "), 100*s.Share, keep)
		}
	})
}
