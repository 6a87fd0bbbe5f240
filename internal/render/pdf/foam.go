package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/stage/knockout"
)

// partList prints the foam parts to tick, the seams between them and the sheets they
// are cut from.
func (b *book) partList() {
	k := b.plan.Knockout
	own, _ := b.systems()
	b.begin("Foam parts of the knockout")
	b.say("", 10, ink, "Write the id and its mark, FORM SIDE UP and an arrow to the near side on every part as it is cut. Glue in this order: %s.", strings.Join(k.Glue, ", "))
	b.Ln(4)
	w := b.w - 2*margin
	t := table{b, []column{{"", 12, false, "", 14}, {"part", 28, false, "B", 16}, {"mark", 17, false, "", 11}, {"layer", 13, true, "", 11}, {"thick", 22, true, "", 11},
		{"sheets", 14, true, "", 11}, {"kg", 15, true, "", 10}, {"outer size", w - 121, false, "", 12}}, 10}
	t.heads()
	for _, x := range k.Parts {
		t.row(box, x.ID, x.Mark, fmt.Sprint(x.Layer), b.length(x.Thickness), fmt.Sprint(x.Sheets), fmt.Sprintf("%.2f", x.Mass), times(x.BoxX, x.BoxY, own), remark(x))
	}
	b.seamList()
	b.sheetList()
	b.caution("Only what leaves polystyrene alone may touch it: no solvent contact cement, petrol, paraffin oil or petroleum jelly.",
		"Foam dust: extraction and a mask. Hot wire only in fresh air.")
}

// remark says what lies beside, under and over a part.
func remark(x knockout.Part) string {
	var all []string
	for _, where := range []string{"beside", "under", "over"} {
		var ids []string
		for _, n := range x.Neighbours {
			if n.Where == where {
				ids = append(ids, n.Part)
			}
		}
		if len(ids) > 0 {
			all = append(all, map[string]string{"beside": "beside ", "under": "lies on ", "over": "carries "}[where]+strings.Join(ids, ", "))
		}
	}
	if x.Done {
		all = append(all, "cut already")
	}
	return strings.Join(all, "; ")
}

// seamList prints the seams with their reasons.
func (b *book) seamList() {
	k := b.plan.Knockout
	if len(k.Seams) == 0 {
		return
	}
	b.Ln(6)
	b.keep(40)
	w := b.w - 2*margin
	t := table{b, []column{{"seam", 19, false, "B", 11}, {"joins", 32, false, "", 10}, {"kind", 18, false, "", 10}, {"long", 21, true, "", 10}, {"shows", 21, true, "", 10},
		{"from seams of the layers next to it", w - 111, false, "", 10}}, 10}
	t.heads()
	for _, s := range k.Seams {
		var apart []string
		for _, g := range s.Staggers {
			apart = append(apart, b.length(g.Distance))
		}
		t.row(s.ID, strings.Join(s.Parts, " + "), s.Kind, b.length(s.Length), b.length(s.Visible), strings.Join(apart, ", "), s.Why)
	}
}

// sheetList prints what lies on each sheet.
func (b *book) sheetList() {
	k := b.plan.Knockout
	if len(k.Sheets) == 0 {
		return
	}
	own, _ := b.systems()
	b.Ln(6)
	b.keep(40)
	w := b.w - 2*margin
	t := table{b, []column{{"", 12, false, "", 12}, {"foam", 42, false, "B", 11}, {"size", 44, true, "", 11}, {"used", 18, true, "", 11}, {"parts", w - 12 - 42 - 44 - 18, false, "", 11}}, 10}
	t.heads()
	for _, s := range k.Sheets {
		var parts []string
		for _, q := range s.Placements {
			parts = append(parts, q.Part)
		}
		row := []string{box, s.Name, times(s.SizeX, s.SizeY, own), fmt.Sprintf("%.0f %%", 100*s.Share), strings.Join(parts, ", ")}
		if s.Keep != nil {
			row = append(row, "keep "+times(s.Keep.SizeX, s.Keep.SizeY, own)+" as "+s.Keep.Name)
		}
		t.row(row...)
	}
}
