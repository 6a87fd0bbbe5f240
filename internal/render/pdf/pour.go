package pdf

import (
	"fmt"
	"slices"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// buckets counts the buckets of all lifts.
func buckets(lifts []resin.Lift) int {
	n := 0
	for _, l := range lifts {
		n += len(l.Batches)
	}
	return n
}

// pour prints the card of the whole pour, what is ready before it, the marked stick,
// then a page a lift.
func (b *book) pour() {
	r := b.plan.Resin
	if len(r.Lifts) == 0 {
		return
	}
	b.pourCard()
	b.beforePouring()
	for _, l := range r.Lifts {
		b.lift(l)
	}
}

func (b *book) pourCard() {
	r := b.plan.Resin
	b.begin("Pour card")
	b.say("B", 14, ink, "%s", pourLead(r))
	b.Ln(2)
	w := b.w - 2*margin
	t := table{b, []column{{"lift", 14, false, "B", 20}, {"start", w - 14 - 40 - 32 - 22, false, "", 13}, {"fill to", 40, true, "B", 18}, {"pour", 32, true, "", 14}, {"buckets", 22, true, "", 14}}, 13}
	t.heads()
	for _, l := range r.Lifts {
		t.row(fmt.Sprint(l.Number), b.startOf(l), b.length(l.To), fmt.Sprintf("%.2f l", l.Pour), fmt.Sprint(len(l.Batches)))
	}
	b.Ln(1.5)
	b.say("", 9, soft, "Heights above the deepest floor.")
	b.Ln(3)
	b.cure()
	b.Ln(3)
	b.say("B", 12, ink, "Resin: %s", r.Resin)
	b.say("", 11, ink, "Order %.2f l = %.2f kg = %.2f US gal = %.2f imperial gal. By mass %.1f g of B to 100 g of A.", r.Order, r.OrderKG, r.OrderUS, r.OrderImp, r.AToB)
	b.say("", 9.5, soft, "Of it basin %.2f, shrink %.2f, overfill %.2f, film %.2f, reserve %.2f l.", r.Volume, r.Shrink, r.Overfill, r.Film, r.Reserve)
	b.Ln(2)
	b.zones()
	if len(r.Cautions) > 0 {
		b.caution(r.Cautions...)
	} else {
		b.resinCautions()
	}
}

// pourLead says the whole pour in one sentence.
func pourLead(r resin.Result) string {
	n := len(r.Lifts)
	text := fmt.Sprintf("%s, %s.", units.Count(n, "lift", "lifts"), units.Count(buckets(r.Lifts), "bucket", "buckets"))
	if k := r.Cure; k.Computed {
		text += fmt.Sprintf(" Warmest %.0f C, likely %.0f to %.0f C; at most %.0f C is asked for.", k.Peak, k.Low, k.High, k.Limit)
	}
	return text
}

// startOf writes when a lift is poured, by the calendar or else by the cure.
func (b *book) startOf(l resin.Lift) string {
	if s, ok := drawing.PourStep(b.plan, l.Number); ok {
		return drawing.Later(s.Start, 0)
	}
	if l.Number > 1 && l.At > 0 {
		return fmt.Sprintf("%.0f h after lift 1", l.At)
	}
	return ""
}

func (b *book) lift(l resin.Lift) {
	n := len(b.plan.Resin.Lifts)
	title := fmt.Sprintf("Pour lift %d of %d", l.Number, n)
	if start := b.startOf(l); start != "" {
		title += ": " + start
	}
	b.begin(title)
	b.levels(l)
	b.say("", 11.5, ink, "%s", b.mixing(l))
	b.Ln(2)
	b.bucketTable(l)
	b.Ln(3)
	b.blanks("room, C", "first bucket poured at", "last bucket poured at", "level on the stick, mm")
	b.Ln(2)
	b.afterPour(l)
	b.resinCautions()
}

// levels prints how far to fill and how much, readable at arm's length.
func (b *book) levels(l resin.Lift) {
	w, y := (b.w-2*margin)/3, b.GetY()
	below := max(0, b.plan.Relief.Depth-l.To)
	under := fact{"or", b.length(below), "below the face, " + b.other(below)}
	if below < 0.05 {
		under = fact{"or", "the rim", "level with the face"}
	}
	for i, f := range []fact{
		{"fill to", b.length(l.To), "above the deepest floor, " + b.other(l.To)}, under,
		{"pour", fmt.Sprintf("%.2f l", l.Pour), fmt.Sprintf("%.3f kg, %.2f US gal", l.Mass, l.Pour.USGal())},
	} {
		x := margin + float64(i)*w
		b.text(x, y, w-2, "", 10, soft, f.label)
		size := 32.0
		for b.font("B", size); b.GetStringWidth(f.value) > w-4 && size > 12; b.font("B", size) {
			size--
		}
		b.text(x, y+4.5, w-2, "B", size, ink, f.value)
		b.text(x, y+19, w-2, "", 9.5, soft, f.other)
	}
	b.SetXY(margin, y+27)
}

// stirring tells how long to stir and how long the bucket keeps. Chosen: a second bucket,
// since what sticks to the wall of the first stays unmixed.
func stirring(l resin.Lift) string {
	text := "Stir slowly as long as the data sheet says"
	if len(l.Batches) > 0 && l.Batches[0].Stir > 0 {
		text = fmt.Sprintf("Stir slowly for %.0f min", 60*float64(l.Batches[0].Stir))
	}
	text += "; scrape wall and bottom; pour over into a clean bucket and stir 1 min more."
	if len(l.Batches) > 0 && l.Batches[0].Keeps > 0 {
		text += fmt.Sprintf(" In the basin within %s of mixing.", clock(l.Batches[0].Keeps))
	}
	return text
}

// mixing tells how a bucket is mixed.
func (b *book) mixing(l resin.Lift) string {
	parts := []string{"Scale to zero with the empty bucket on it. A to the first reading, B to the second.",
		stirring(l)}
	if l.HoldBack > 0 {
		parts = append(parts, fmt.Sprintf("Hold %.0f ml back for topping up.", 1000*float64(l.HoldBack)))
	}
	if l.Tint > 0 {
		parts = append(parts, fmt.Sprintf("Tint %.1f g in all, into A, the same share in every bucket.", 1000*float64(l.Tint)))
	}
	if d := b.plan.Resin.Degas; d != nil {
		parts = append(parts, fmt.Sprintf("Vacuum: at most %.1f l at once in the pot of %.1f l.", d.Pull, d.Pot))
	}
	return strings.Join(parts, " ")
}

func (b *book) bucketTable(l resin.Lift) {
	w := b.w - 2*margin
	pulls, tint := b.plan.Resin.Degas != nil, l.Tint > 0
	cols := []column{{"", 13, false, "", 22}, {"bucket", 19, true, "", 15}, {"litres", 24, true, "", 15}}
	if tint {
		cols = append(cols, column{"tint, g", 21, true, "", 15})
	}
	if pulls {
		cols = append(cols, column{"pulls", 16, true, "", 15})
	}
	left := w
	for _, c := range cols {
		left -= c.width
	}
	t := table{b, append(cols, column{"scale after A, kg", left / 2, true, "B", 26}, column{"after A and B, kg", left / 2, true, "B", 26}), 13}
	t.heads()
	for _, x := range l.Batches {
		cells := []string{box, fmt.Sprint(x.Number), fmt.Sprintf("%.2f", x.Volume)}
		if tint {
			cells = append(cells, fmt.Sprintf("%.1f", 1000*float64(x.Tint)))
		}
		if pulls {
			cells = append(cells, fmt.Sprint(x.Pulls))
		}
		t.row(append(cells, fmt.Sprintf("%.3f", x.ScaleA), fmt.Sprintf("%.3f", x.ScaleAB))...)
	}
}

func (b *book) resinCautions() {
	texts := []string{"Resin and hardener sensitise the skin for good: nitrile gloves, goggles, fresh air; stop at the first rash.",
		"Mixed resin standing in a bucket heats itself, smokes and can catch fire: pour at once, carry a hot bucket outside."}
	if b.torched() {
		texts = append(texts, "Flame: no foam, solvent or loose sleeve near it, never over a hot or smoking surface, an extinguisher at hand.")
	}
	if !b.plan.Resin.Cure.Computed {
		texts = append(texts, "The cure is not computed: keep to the data sheet's depth and waiting time, and pour a test of the full depth first.")
	}
	b.caution(texts...)
}

// torched reports whether any lift is passed over with a flame.
func (b *book) torched() bool {
	return slices.ContainsFunc(b.plan.Resin.Lifts, func(l resin.Lift) bool { return len(l.Torch) > 0 })
}

// clock writes a time to five minutes below half a day, to the hour above.
func clock(d units.Duration) string {
	if d >= 12 {
		return fmt.Sprintf("%.0f h", d)
	}
	minutes := int(float64(d)*12+0.5) * 5
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d", minutes/60, minutes%60)
}
