package pdf

import (
	"fmt"

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

// pour prints the card of the whole pour with its marked stick, then a page a lift.
func (b *book) pour() {
	r := b.plan.Resin
	if len(r.Lifts) == 0 {
		return
	}
	b.pourCard()
	for _, l := range r.Lifts {
		b.lift(l)
	}
}

func (b *book) pourCard() {
	r := b.plan.Resin
	b.begin("Pour card")
	b.say("", 11, ink, "%s. Order %.2f l = %.2f kg = %.2f US gal = %.2f imperial gal: basin %.2f, shrink %.2f, overfill %.2f, film %.2f, reserve %.2f l.",
		r.Resin, r.Order, r.OrderKG, r.OrderUS, r.OrderImp, r.Volume, r.Shrink, r.Overfill, r.Film, r.Reserve)
	b.say("B", 11, ink, "By mass: %.1f g of B to 100 g of A.", r.AToB)
	b.Ln(3)
	depth := b.plan.Relief.Depth
	t := table{b, []column{{"lift", 16, false, "B", 16}, {"fill to", 42, true, "B", 16}, {"deep", 34, true, "", 12}, {"pour", 26, true, "", 12},
		{"buckets", 20, true, "", 12}, {"then wait", 28, true, "", 12}}, 12}
	t.heads()
	for _, l := range r.Lifts {
		t.row(fmt.Sprint(l.Number), b.length(l.To), b.length(l.Depth), fmt.Sprintf("%.2f l", l.Pour), fmt.Sprint(len(l.Batches)), fmt.Sprintf("%.0f h", l.Wait))
	}
	b.Ln(2)
	if r.Cure.Computed {
		b.say("", 9, soft, "Heights above the deepest floor. Waits by the computed cure; the data sheet and a touch test decide.")
		b.cure()
	} else {
		b.say("", 9, soft, "Heights above the deepest floor. Waits are typical, the cure is not computed: the data sheet and a touch test decide.")
	}
	b.resinCautions()
	if depth > 0 && depth.MM() <= longestStick {
		b.stick(r.Lifts, depth)
	}
}

// longestStick is how deep a basin's stick still fits a page at full size, mm.
const longestStick = 190.0

// stick prints the marked stick at full size, its foot on the deepest floor.
func (b *book) stick(lifts []resin.Lift, depth units.Length) {
	high := depth.MM()
	b.Ln(4)
	b.keep(high + 22)
	b.say("B", 11, ink, "Marked stick, full size")
	b.say("", 9, soft, "Check with a rule before cutting it out. The foot stands on the deepest floor.")
	y, x := b.GetY()+5, margin+8.0
	b.SetLineWidth(0.35)
	b.Rect(x, y, 18, high, "D")
	b.SetLineWidth(0.13)
	for mm := 10.0; mm < high; mm += 10 {
		b.Line(x, y+high-mm, x+4, y+high-mm)
	}
	b.SetLineWidth(0.5)
	last := -100.0
	for _, l := range lifts {
		at := y + high - l.To.MM()
		b.Line(x, at, x+24, at)
		text := at - 2.4
		if last-text < 4.5 && last > 0 {
			text = last - 4.5
		}
		last = text
		b.text(x+26, text, 90, "B", 11, ink, fmt.Sprintf("lift %d: %s", l.Number, b.length(l.To)))
	}
	b.text(x+26, y+high-4, 90, "", 9, soft, "deepest floor, 0")
	b.SetXY(margin, y+high+4)
}

func (b *book) lift(l resin.Lift) {
	n := len(b.plan.Resin.Lifts)
	b.begin(fmt.Sprintf("Pour lift %d of %d", l.Number, n))
	w, y := (b.w-2*margin)/3, b.GetY()
	below := max(0, b.plan.Relief.Depth-l.To)
	for i, f := range []fact{
		{"fill to", b.length(l.To), "above the deepest floor, " + b.other(l.To)},
		{"or", b.length(below), "below the face, " + b.other(below)},
		{"pour", fmt.Sprintf("%.2f l", l.Pour), fmt.Sprintf("%.3f kg, %.2f US gal", l.Mass, l.Pour.USGal())},
	} {
		x := margin + float64(i)*w
		b.text(x, y, w-2, "", 9, soft, f.label)
		b.text(x, y+4, w-2, "B", 26, ink, f.value)
		b.text(x, y+16, w-2, "", 9, soft, f.other)
	}
	b.SetXY(margin, y+24)
	b.say("", 10, ink, "Set the scale to zero with the empty bucket on it. Pour A to the first reading, then B to the second.")
	b.Ln(2)
	b.bucketTable(l)
	b.Ln(4)
	b.blanks("room, C", "first bucket poured at", "last bucket poured at")
	b.blanks("level read on the stick, mm", "next lift not before", "by")
	b.afterPour(l)
	b.resinCautions()
}

func (b *book) bucketTable(l resin.Lift) {
	w := b.w - 2*margin
	t := table{b, []column{{"", 14, false, "", 20}, {"bucket", 20, true, "", 14}, {"litres", 28, true, "", 14},
		{"scale after A, kg", (w - 62) / 2, true, "B", 24}, {"scale after A and B, kg", (w - 62) / 2, true, "B", 24}}, 12}
	t.heads()
	for _, x := range l.Batches {
		t.row(box, fmt.Sprint(x.Number), fmt.Sprintf("%.2f", x.Volume), fmt.Sprintf("%.3f", x.ScaleA), fmt.Sprintf("%.3f", x.ScaleAB))
	}
}

func (b *book) resinCautions() {
	texts := []string{"Resin and hardener sensitise the skin for good: nitrile gloves, goggles, fresh air; stop at the first rash.",
		"Mixed resin standing in a bucket heats itself, smokes and can catch fire: pour at once, carry a hot bucket outside."}
	if !b.plan.Resin.Cure.Computed {
		texts = append(texts, "The cure is not computed: keep to the data sheet's depth and waiting time, and pour a test of the full depth first.")
	}
	b.caution(texts...)
}
