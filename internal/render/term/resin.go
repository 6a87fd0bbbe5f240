package term

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"pourwright/internal/drawing"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// resin tells first what a maker asks first: how many lifts, when, how much, how hot.
func (p page) resin() {
	r := p.plan.Resin
	p.title("Resin: " + r.Resin)
	p.lead()
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "lift\tstart\tfill to mm\tdeep mm\tpour l\tbuckets\tpeak C\tnext lift")
		for _, l := range r.Lifts {
			fmt.Fprintf(t, "%d\t%s\t%.1f\t%.1f\t%.3f\t%d\t%s\t%s\n", l.Number, p.startOf(l), l.To, l.Depth, l.Pour, len(l.Batches), warm(l.Peak), p.nextLift(l))
		}
	})
	p.buckets()
	p.order()
	p.cure()
	p.handling()
}

// lead says the whole pour in one line.
func (p page) lead() {
	r := p.plan.Resin
	n := 0
	for _, l := range r.Lifts {
		n += len(l.Batches)
	}
	text := fmt.Sprintf("%s, %s, order %.2f l", units.Count(len(r.Lifts), "lift", "lifts"), units.Count(n, "bucket", "buckets"), r.Order)
	if k := r.Cure; k.Computed {
		text += fmt.Sprintf("; peak %.0f C, likely %.0f to %.0f C, limit %.0f C; dam face %.0f C", k.Peak, k.Low, k.High, k.Limit, k.Dam)
	}
	fmt.Fprintln(p, text)
}

// startOf writes when a lift is poured, by the calendar or else by the cure.
func (p page) startOf(l resin.Lift) string {
	if s, ok := drawing.PourStep(p.plan, l.Number); ok {
		return drawing.Later(s.Start, 0)
	}
	return fmt.Sprintf("%.0f h", l.At)
}

func warm(t units.Temperature) string {
	if t == 0 {
		return "-"
	}
	return fmt.Sprintf("%.0f", t)
}

// nextLift writes when the next lift may go on a lift, or when the last is hard.
func (p page) nextLift(l resin.Lift) string {
	switch {
	case l.Number == len(p.plan.Resin.Lifts):
		return fmt.Sprintf("none; worked on after %.0f h", l.Wait)
	case l.Scuffed:
		return fmt.Sprintf("after %.0f h, sanded dull", l.Wait)
	case len(l.Zones) > 0 && l.RecoatUntil.Later:
		return fmt.Sprintf("from %.0f h, past %.0f h", l.RecoatFrom.H, l.RecoatUntil.H)
	case len(l.Zones) > 0:
		return fmt.Sprintf("%.0f to %.0f h", l.RecoatFrom.H, l.RecoatUntil.H)
	case l.BondsUntil > 0:
		return fmt.Sprintf("%.0f to %.0f h", l.Wait, l.BondsUntil)
	default:
		return fmt.Sprintf("from %.0f h", l.Wait)
	}
}

// buckets prints the readings of the scale, and what the calendar does otherwise than
// the cure was computed for.
func (p page) buckets() {
	r := p.plan.Resin
	fmt.Fprintln(p)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "lift\tbucket\tlitres\tscale after A kg\tafter A and B kg\tstir min\tpoured within h")
		for _, l := range r.Lifts {
			for _, b := range l.Batches {
				fmt.Fprintf(t, "%d\t%d\t%.3f\t%.3f\t%.3f\t%s\t%s\n", l.Number, b.Number, b.Volume, b.ScaleA, b.ScaleAB, orDash("%.0f", 60*b.Stir), orDash("%.1f", b.Keeps))
			}
		}
	})
	for _, l := range r.Lifts {
		if late := drawing.Lateness(p.plan, l.Number) - drawing.Lateness(p.plan, l.Number-1); late > 1 || late < -1 {
			fmt.Fprintf(p, "the calendar pours lift %d %.0f h %s than the cure was computed for\n", l.Number, max(late, -late), map[bool]string{true: "later", false: "earlier"}[late > 0])
		}
	}
}

func (p page) order() {
	r := p.plan.Resin
	fmt.Fprintln(p)
	fmt.Fprintf(p, "order %.3f l = %.2f kg = %.3f US gal = %.3f imperial gal; %.1f kg of B for 100 kg of A\n", r.Order, r.OrderKG, r.OrderUS, r.OrderImp, r.AToB)
	fmt.Fprintf(p, "of it basin %.3f, shrink %.3f, overfill %.3f, film %.3f, reserve %.3f l\n", r.Volume, r.Shrink, r.Overfill, r.Film, r.Reserve)
}

// cure tells what the computed cure is.
func (p page) cure() {
	r := p.plan.Resin
	k := r.Cure
	if !k.Computed {
		return
	}
	p.title("Cure, hours after each lift's pour as if nothing came after")
	fmt.Fprintf(p, "peak %.1f C, %s after the first pour, in lift %d,\n  %.0f mm above the deepest floor, at x %.0f, y %.0f mm, finished view\n", k.Peak, hours(k.PeakAt), k.PeakIn, k.PeakZ, k.PeakX, k.PeakY)
	if k.DamLimit > 0 {
		fmt.Fprintf(p, "dam face %.0f C, in nine of ten cases below %.0f C; %s bears %.0f C\n", k.Dam, k.DamHigh, printable(k.DamWeakest), k.DamLimit)
	}
	if k.Foam > 0 {
		fmt.Fprintf(p, "foam %.0f C, in nine of ten cases below %.0f C; %s bears %.0f C\n", k.Foam, k.FoamHigh, printable(k.FoamName), k.FoamLimit)
	}
	for _, i := range k.Influences[:min(3, len(k.Influences))] {
		fmt.Fprintf(p, "%s, %.2g %s more: peak %+.1f K\n", printable(i.Name), i.SD, i.Unit, i.Peak)
	}
	fmt.Fprintln(p)
	p.zones()
	fmt.Fprintln(p)
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "room C\tpeak C\tdam face C\thard")
		for _, x := range k.Rooms {
			over := ""
			if x.Peak > k.Limit {
				over = ", above the limit"
			}
			fmt.Fprintf(t, "%.0f\t%.0f%s\t%.0f\t%s\n", x.Room, x.Peak, over, x.Dam, after(x.Hard))
		}
	})
	fmt.Fprintln(p)
	for _, a := range r.Alternatives {
		mark := "or"
		if a.Chosen {
			mark = "chosen"
		}
		why := ""
		if a.Why != "" {
			why = "; not taken: " + a.Why
		}
		p.wrap(mark, fmt.Sprintf("%s; %.1f h of hands%s", a.Sentence, a.Hands, why))
	}
	fmt.Fprintf(p, "%s with other rooms, rates, films and depths; %d cells of %.0f mm, %d steps;\n", units.Count(k.Members, "run", "runs"), k.Error.Cells, k.Error.Grid, k.Error.Steps)
	fmt.Fprintf(p, "a grid twice as wide differs by %.1f K\n", k.Error.Off)
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

// orDash writes a duration, or a dash where it is not known.
func orDash(format string, d units.Duration) string {
	if d == 0 {
		return "-"
	}
	return fmt.Sprintf(format, d)
}

// zones prints when each part of each lift's surface gels, bonds and hardens.
func (p page) zones() {
	p.table(func(t *tabwriter.Writer) {
		fmt.Fprintln(t, "lift\tpart\tresin mm\tgelled h\tbonds until h\ttack-free h\thard h\tsandable h")
		for _, l := range p.plan.Resin.Lifts {
			for _, z := range l.Zones {
				bonds := moment(z.Bonds)
				if z.Scuff {
					bonds = "sand it"
				}
				fmt.Fprintf(t, "%d\t%s\t%.0f to %.0f\t%s\t%s\t%s\t%s\t%s\n", l.Number, z.Name, z.From, z.To, moment(z.Gels), bonds, moment(z.Tacky), moment(z.Hard), moment(z.Sandable))
			}
		}
	})
}

// moment writes hours, or that they come after those computed.
func moment(m resin.Moment) string {
	if m.Later {
		return fmt.Sprintf("past %.0f", m.H)
	}
	return fmt.Sprintf("%.1f", m.H)
}

func after(d units.Duration) string {
	if d == 0 {
		return "not within the run"
	}
	return fmt.Sprintf("after %.0f h", d)
}
