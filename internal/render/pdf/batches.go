package pdf

import (
	"fmt"
	"math"

	"pourwright/internal/stage/concrete"
)

// batches prints the work of casting, then one page for each tub.
func (b *book) batches() {
	n := len(b.plan.Concrete.Batches)
	if n == 0 {
		return
	}
	b.casting()
	in := map[string]int{}
	for _, x := range b.plan.Concrete.Batches {
		in[x.Coat]++
		b.batch(x, in[x.Coat], n)
	}
}

func (b *book) batch(x concrete.Batch, nth, all int) {
	b.begin(fmt.Sprintf("Batch %d of %d: %s", x.Number, all, x.Coat))
	b.say("", 10, ink, "%s %d of %d in this coat. %.2f kg, %.1f l. One tub on one scale, never set back to zero.", "Tub", nth, x.Of, x.Mass, x.Volume)
	b.say("B", 10, ink, "First water %s after casting begins, at the latest %s. Works for %s: use up by %s.", clock(x.Start), clock(x.StartBy), clock(x.Life), clock(x.UseBy))
	b.Ln(1)
	w := b.w - 2*margin
	t := table{b, []column{{"", 14, false, "", 20}, {"add", w - 14 - 26 - 44, false, "", 12}, {"grams", 26, true, "", 15}, {"scale reads, g", 44, true, "B", 20}}, 12}
	t.heads()
	for _, a := range x.Steps {
		t.row(box, lines(a.What, a.How), grams(a.Mass.G()), grams(a.ScaleReads.G()))
	}
	b.Ln(2)
	b.waterLimits(x, x.ScaleNever.G())
	b.Ln(1)
	b.say("", 9.5, ink, "%s", mixTimes(x))
	b.blanks("mixed at", "kg packed", "water used, g", "by")
	b.caution(x.Cautions...)
}

// grams writes a mass to the gram, and to a tenth where there are tenths.
func grams(g float64) string {
	if math.Abs(g-math.Round(g)) < 0.05 {
		return fmt.Sprintf("%.0f", g)
	}
	return fmt.Sprintf("%.1f", g)
}

// mixTimes says how long to mix and how the mix must be.
func mixTimes(x concrete.Batch) string {
	text := fmt.Sprintf("Mix %.0f min", x.Minutes)
	if x.FibreMins > 0 {
		text += fmt.Sprintf("; with the fibre %.1f min at low speed", x.FibreMins)
	}
	text += ". " + x.Consistency
	if x.Flow > 0 {
		text += fmt.Sprintf(" Flow ring: spreads to about %.0f mm.", x.Flow)
	}
	return text
}

func lines(what, how string) string {
	if how == "" {
		return what
	}
	return what + "\n" + how
}

// waterLimits prints the three amounts of water large.
func (b *book) waterLimits(x concrete.Batch, never float64) {
	b.keep(24)
	w, y := (b.w-2*margin)/3, b.GetY()
	for i, f := range []fact{
		{"water first", fmt.Sprintf("%.0f g", math.Round(x.WaterFirst.G())), "four fifths of the recipe"},
		{"up to", fmt.Sprintf("%.0f g", math.Round(x.WaterUpTo.G())), "the recipe"},
		{"never above", fmt.Sprintf("%.0f g", math.Round(x.WaterNever.G())), fmt.Sprintf("scale without fibre below %.0f g", never)},
	} {
		at := margin + float64(i)*w
		b.text(at, y, w-2, "", 9, soft, f.label)
		b.text(at, y+4, w-2, "B", 22, ink, f.value)
		b.text(at, y+14, w-2, "", 8.5, soft, f.other)
	}
	b.SetXY(margin, y+19)
}

// blanks prints lines to fill in by hand, side by side.
func (b *book) blanks(labels ...string) {
	b.keep(13)
	w, y := (b.w-2*margin)/float64(len(labels)), b.GetY()
	b.SetLineWidth(0.2)
	for i, l := range labels {
		x := margin + float64(i)*w
		b.Line(x, y+8, x+w-6, y+8)
		b.text(x, y+8.6, w-6, "", 8.5, soft, l)
	}
	b.SetXY(margin, y+14)
}
