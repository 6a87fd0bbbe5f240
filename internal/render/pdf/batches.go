package pdf

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/stage/concrete"
)

// An addition is one thing that goes into the tub, with the reading of a scale that is
// never set back.
type addition struct {
	what  string
	how   string
	grams float64
	scale float64
}

// order is how roles go into the tub: liquids and pigment, then the dry parts; fibre
// comes last, after the rest of the water. Common practice of the trade.
var order = [][]string{{"polymer", "plasticiser", "pigment"}, {"blend", "cement", "pozzolan", "sand"}}

// additions lists what goes into a batch in the order of mixing, to the gram, and the
// scale's reading that the water must never carry it past.
func additions(x concrete.Batch) (list []addition, never float64) {
	sum := 0.0
	add := func(what, how string, grams float64) {
		if grams > 0 {
			sum += grams
			list = append(list, addition{what, how, grams, sum})
		}
	}
	water, first := math.Round(x.WaterUpTo.G()), math.Round(x.WaterFirst.G())
	taken := func(role string) bool {
		return slices.Contains(order[0], role) || role == "water" || role == "fibre"
	}
	add("water", "the first four fifths", first)
	for _, role := range order[0] {
		addRole(x, func(r string) bool { return r == role }, add)
	}
	addRole(x, func(r string) bool { return !taken(r) }, add)
	add("water, the rest", "in small steps, up to this reading and no more than the mix needs", water-first)
	never = sum + math.Round(x.WaterNever.G()) - water
	addRole(x, func(r string) bool { return r == "fibre" }, add)
	return list, never
}

func addRole(x concrete.Batch, is func(string) bool, add func(what, how string, grams float64)) {
	for _, p := range x.Parts {
		if !is(p.Role) {
			continue
		}
		how := ""
		if p.Role == "fibre" {
			how = "last, at low speed, only until it is spread"
		}
		add(p.Name, how, math.Round(p.Mass.G()))
	}
}

// batches prints one page for each tub.
func (b *book) batches() {
	n := len(b.plan.Concrete.Batches)
	in := map[string]int{}
	for _, x := range b.plan.Concrete.Batches {
		in[x.Coat]++
		b.batch(x, in[x.Coat], n)
	}
}

func (b *book) batch(x concrete.Batch, nth, all int) {
	b.begin(fmt.Sprintf("Batch %d of %d: %s", x.Number, all, x.Coat))
	b.say("", 11, ink, "%s %d of %d in this coat. %.2f kg, %.1f l. One tub on one scale, never set back to zero.", "Tub", nth, x.Of, x.Mass, x.Volume)
	b.Ln(3)
	list, never := additions(x)
	w := b.w - 2*margin
	t := table{b, []column{{"", 14, false, "", 20}, {"add", w - 14 - 38 - 56, false, "", 13}, {"grams", 38, true, "", 17}, {"scale reads, g", 56, true, "B", 24}}, 12}
	t.heads()
	for _, a := range list {
		t.row(box, lines(a.what, a.how), fmt.Sprintf("%.0f", a.grams), fmt.Sprintf("%.0f", a.scale))
	}
	b.Ln(5)
	b.waterLimits(x, never)
	b.Ln(4)
	b.blanks("mixed at", "start packing by", "use up by")
	b.blanks("kg packed", "water used, g", "by")
	b.caution("Dry cement, sand and pigment: fitted respirator, no sweeping. Fresh mix is caustic: gloves, goggles, long sleeves; rinse at once.",
		"Too stiff: a little more plasticiser, never more water than the limit above.")
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
