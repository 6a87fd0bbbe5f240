package term

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"pourwright/internal/units"
)

func (p page) resin() {
	r := p.plan.Resin
	p.title("Resin: " + r.Resin)
	fmt.Fprintf(p, "net %.3f l; order %.3f l = %.2f kg = %.3f US gal = %.3f imperial gal\n", r.Volume, r.Order, r.OrderKG, r.OrderUS, r.OrderImp)
	fmt.Fprintf(p, "of it shrink %.3f, overfill %.3f, film %.3f, reserve %.3f l; %.1f kg of B for 100 kg of A\n", r.Shrink, r.Overfill, r.Film, r.Reserve, r.AToB)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "lift\tfrom mm\tto mm\tdepth mm\tnet l\tpour l\tA kg\tB kg\tbuckets\tthen wait h")
		for _, l := range r.Lifts {
			fmt.Fprintf(t, "%d\t%.1f\t%.1f\t%.1f\t%.3f\t%.3f\t%.3f\t%.3f\t%d\t%.0f\n", l.Number, l.From, l.To, l.Depth, l.Volume, l.Pour, l.A, l.B, len(l.Batches), l.Wait)
		}
	})
	p.cure()
	p.handling()
}

// cure tells what the computed cure is.
func (p page) cure() {
	r := p.plan.Resin
	k := r.Cure
	if !k.Computed {
		return
	}
	p.title("Cure, hours after the first pour")
	fmt.Fprintf(p, "peak %.0f C at %s in lift %d, %.0f mm above the deepest floor, at x %.0f, y %.0f mm, finished view\n", k.Peak, hours(k.PeakAt), k.PeakIn, k.PeakZ, k.PeakX, k.PeakY)
	fmt.Fprintf(p, "band %.0f to %.0f C, from %d runs with other rooms, rates, films and depths; dam face %.0f C\n", k.Low, k.High, k.Members, k.Dam)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "lift\tpoured at h\tpeak C\tpeak at h\tgelled h\tbonds until h\ttack-free h")
		for _, l := range r.Lifts {
			bonds := hours(l.At + l.BondsUntil)
			if l.BondsUntil == 0 {
				bonds = "-"
			}
			if l.Scuffed {
				bonds = "scuff"
			}
			fmt.Fprintf(t, "%d\t%.1f\t%.0f\t%.1f\t%s\t%s\t%s\n", l.Number, l.At, l.Peak, l.At+l.PeakAt, comes(l.At, l.Gels), bonds, comes(l.At, l.Tacky))
		}
	})
	for _, x := range k.Rooms {
		fmt.Fprintf(p, "in a room of %.0f C: peak %.0f C, dam face %.0f C, hard %s\n", x.Room, x.Peak, x.Dam, after(x.Hard))
	}
	for _, a := range r.Alternatives {
		mark := "or"
		if a.Chosen {
			mark = "chosen"
		}
		fmt.Fprintf(p, "%s: %s; %.1f h of hands\n", mark, a.Sentence, a.Hands)
	}
	fmt.Fprintf(p, "computed with %d cells of %.0f mm, %d steps; a grid twice as wide differs by %.1f K\n", k.Error.Cells, k.Error.Grid, k.Error.Steps, k.Error.Off)
}

// handling tells what the hands need beside litres.
func (p page) handling() {
	r := p.plan.Resin
	if d := r.Degas; d != nil {
		fmt.Fprintf(p, "vacuum pot %.1f l: at most %.1f l at once, it rises %.0f times; at %.0f inHg gas grows %.0f times\n", d.Pot, d.Pull, d.Rise, d.Gauge, d.Swell)
	}
	if s := r.Shim; s != nil {
		fmt.Fprintf(p, "shim %.1f mm under the low end: the level reads %.1f mm per metre\n", s.Under, s.Reading)
	}
	if len(r.Shades) > 0 {
		var parts []string
		for _, s := range r.Shades {
			parts = append(parts, fmt.Sprintf("%s at %.0f mm", s.Colour, s.Depth))
		}
		fmt.Fprintf(p, "tint looks %s\n", strings.Join(parts, ", "))
	}
}

func hours(d units.Duration) string { return fmt.Sprintf("%.1f h", d) }

// comes writes when something happens after a pour, counted from the first.
func comes(at, d units.Duration) string {
	if d == 0 {
		return "not yet"
	}
	return fmt.Sprintf("%.1f", at+d)
}

func after(d units.Duration) string {
	if d == 0 {
		return "not within the run"
	}
	return fmt.Sprintf("after %.0f h", d)
}
