package pdf

import (
	"fmt"

	"pourwright/internal/stage/concrete"
	"pourwright/internal/units"
)

// casting prints what is common to all batches: coats, order of addition, windows,
// packing, strength, drying.
func (b *book) casting() {
	r := b.plan.Concrete
	b.begin("Casting")
	b.coatTable()
	b.say("", 9, soft, "Area times thickness would say %.1f l, %+.1f %%: it counts inner corners twice and does not see that later coats cover less.", r.Naive, 100*r.NaiveOver)
	b.Ln(3)
	for _, s := range r.Sheet {
		b.say("", 10, ink, "%d. %s", s.Number, s.Text)
	}
	if r.Reserve.Dry > 0 {
		text := ""
		for _, p := range r.Reserve.Parts {
			text += fmt.Sprintf(", %s g %s", grams(p.Mass.G()), p.Name)
		}
		b.say("", 10, ink, "Keep for patches, of the same bags: %.1f kg of %s dry%s; %s g of water for all of it.", r.Reserve.Dry, r.Reserve.Mix, text, grams(r.Reserve.Water.G()))
	}
	b.Ln(2)
	b.windowTable()
	b.Ln(2)
	b.air()
	b.packingTable()
	b.scrimTable()
	b.drying()
}

func (b *book) coatTable() {
	t := table{b, []column{{"coat", 32, false, "B", 11}, {"thick", 22, true, "", 11}, {"with those before", 30, true, "", 11}, {"to mix", 24, true, "", 11}, {"batches", 18, true, "", 11}, {"decided by", 50, false, "", 11}}, 11}
	t.heads()
	for _, c := range b.plan.Concrete.Coats {
		n := 0
		for _, x := range b.plan.Concrete.Batches {
			if x.Coat == c.Name {
				n++
			}
		}
		remark := fmt.Sprintf("tub %.1f kg, hands %.1f kg", c.TubHolds, c.HandsPack)
		if c.MixerHolds > 0 {
			remark += fmt.Sprintf(", mixer %.1f kg", c.MixerHolds)
		}
		t.row(c.Name, b.length(c.Thickness), fmt.Sprintf("%.1f l", c.Cumulative), fmt.Sprintf("%.1f kg", c.ToMix), fmt.Sprint(n), c.Decided, remark)
	}
}

// windowTable prints every window by both models.
func (b *book) windowTable() {
	t := table{b, []column{{"window", 32, false, "B", 10}, {"at 20 C", 36, true, "", 10}, {"Arrhenius", 36, true, "", 10}, {"Nurse-Saul", 36, true, "", 10}, {"planned", 36, true, "B", 10}}, 10}
	t.heads()
	for _, w := range b.plan.Concrete.Windows {
		t.row(lines(w.Name, w.Coat), span(w.Reference), span(w.Arrhenius), span(w.NurseSaul), span(w.Planned))
	}
	b.say("", 8.5, soft, "Times count from the first water of the batch (working life), packing at the same place (next coat) or the end of the last coat. Planned lies inside both models. The touch test decides:")
	seen := map[string]bool{}
	for _, w := range b.plan.Concrete.Windows {
		if !seen[w.Name] {
			seen[w.Name] = true
			b.say("", 8.5, soft, "%s: %s.", w.Name, w.Touch)
		}
	}
	for _, s := range b.plan.Concrete.Strength {
		b.say("", 9.5, ink, "Strong enough to %s (%.0f MPa): %s after the last coat by ACI 209, %s by EN 1992; planned %s.", s.For, s.Need, clock(s.ACI), clock(s.EN), clock(s.Planned))
	}
}

func span(s concrete.Span) string {
	switch {
	case s.Until == 0:
		return "from " + clock(s.From)
	case s.From == 0:
		return "until " + clock(s.Until)
	}
	return clock(s.From) + " - " + clock(s.Until)
}

func (b *book) air() {
	a := b.plan.Concrete.Air
	b.say("", 9.5, ink, "Air: %.2f kg/m2 of water an hour leaves a fresh face (limit %.1f). Crazing: %s. Dew point %.0f C: no coat and no resin on a face under %.0f C.", a.Evaporation, a.Limit, a.Risk, a.DewPoint, a.Coldest)
}

// packingTable prints who packs what when.
func (b *book) packingTable() {
	r := b.plan.Concrete
	if len(r.Packing) == 0 {
		return
	}
	b.Ln(2)
	b.keep(30)
	t := table{b, []column{{"zone of", 30, false, "B", 10}, {"batch", 16, true, "", 10}, {"person", 18, true, "", 10}, {"along the form", 38, true, "", 10}, {"kg in place", 24, true, "B", 10}, {"pack", 50, true, "", 10}}, 10}
	t.heads()
	for _, z := range r.Packing {
		late := ""
		if z.Late {
			late = "\nlate: window until " + clock(z.Closes)
		}
		t.row(z.Coat, fmt.Sprint(z.Batch), fmt.Sprint(z.Person), fmt.Sprintf("%.0f - %.0f mm", z.From, z.To), fmt.Sprintf("%.1f", z.Mass), clock(z.Start)+" - "+clock(z.End)+late)
	}
	b.say("", 8.5, soft, "Along the form from the left edge in form view. That many kg used is that thick; check with the pin at the places of the packing drawing.")
}

func (b *book) scrimTable() {
	s := b.plan.Concrete.Scrim
	if len(s.Pieces) == 0 {
		return
	}
	b.Ln(2)
	b.say("B", 10, ink, "Mesh: %.2f m2 in %s, %.2f m of a roll %.0f mm wide; laps %.0f mm; pressed into %s, never on the first coat.", s.Area.M2(), units.Count(len(s.Pieces), "piece", "pieces"), s.Length/1000, s.Roll, s.Lap, s.Into)
	for _, p := range s.Pieces {
		b.say("", 9.5, ink, "%d  %s: %.0f x %.0f mm", p.Number, p.For, p.Length, p.Width)
	}
}

func (b *book) drying() {
	r := b.plan.Concrete
	d := r.Drying
	b.Ln(2)
	b.say("B", 10, ink, "Drying before resin: plan %.0f days. It may lose %.1f kg; steady is within %.0f g a day. Sheet test %.0f h.", d.Planned/24, d.Loss, d.Steady.G(), d.Sheet)
	for _, s := range d.Steps {
		b.say("", 9.5, ink, "%s", s)
	}
	for _, m := range r.Masks {
		text := ""
		if m.Sealer > 0 {
			text = fmt.Sprintf(", %.2f l of sealer a coat", m.Sealer)
		}
		b.say("", 9.5, ink, "%s: %s, %.2f m2%s; %s.", m.Surface, m.Finish, m.Area.M2(), text, m.Why)
	}
}
