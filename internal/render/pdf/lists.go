package pdf

import (
	"fmt"
	"strings"

	"pourwright/internal/stage/cost"
	"pourwright/internal/units"
)

// steps prints the work in order, with times, waits and each step's cautions.
func (b *book) steps() {
	c := b.plan.Calendar
	if len(c.Steps) == 0 {
		return
	}
	b.begin("Steps")
	text := fmt.Sprintf("%.1f hours of work.", c.Hands)
	if c.Finish != "" {
		text += " Done " + c.Finish + "."
	}
	b.say("", 10, ink, "%s", text)
	b.Ln(3)
	w := b.w - 2*margin
	t := table{b, []column{{"", 10, false, "", 12}, {"", 9, true, "", 10}, {"start", 42, false, "", 10}, {"work", 23, false, "", 10}, {"what", w - 84, false, "", 10.5}}, 10}
	t.heads()
	for _, s := range c.Steps {
		var remarks []string
		if len(c.People) > 1 && len(s.Who) > 0 {
			remarks = append(remarks, "who: "+strings.Join(s.Who, ", "))
		}
		if s.OffHours {
			remarks = append(remarks, "OUTSIDE THE HOURS: somebody has to be there")
		}
		if s.Wait > 0 {
			wait := "then wait " + units.FormatDuration(s.Wait)
			if s.WaitFor != "" {
				wait += ": " + s.WaitFor
			}
			remarks = append(remarks, wait)
		}
		if s.Latest > 0 {
			remarks = append(remarks, fmt.Sprintf("the next step starts within %s", units.FormatDuration(s.Latest)))
		}
		remarks = append(remarks, s.Cautions...)
		t.row(append([]string{box, fmt.Sprint(s.Number), s.Start, units.FormatDuration(s.Work), s.Title}, remarks...)...)
	}
}

// shopping prints what to buy in whole packages.
func (b *book) shopping() {
	c := b.plan.Cost
	if len(c.Lines) == 0 {
		return
	}
	b.begin("Shopping list")
	b.say("", 10, soft, "Whole packages. What has no package size is listed by need alone.")
	b.Ln(3)
	w := b.w - 2*margin
	t := table{b, []column{{"", 11, false, "", 12}, {"what", w - 11 - 30 - 48 - 26, false, "", 11}, {"need", 30, true, "", 11}, {"buy", 48, true, "B", 11}, {"left over", 26, true, "", 10}}, 10}
	t.heads()
	for _, l := range c.Lines {
		left := ""
		if len(l.Buy) > 0 {
			left = fmt.Sprintf("%.2f %s", l.Left, l.Unit)
		}
		t.row(box, l.Name, fmt.Sprintf("%.2f %s", l.Need, l.Unit), buying(l), left)
	}
	b.Ln(3)
	if c.Unpriced < len(c.Lines) {
		b.say("B", 12, ink, "%.2f for the lines with a price", c.Total)
	}
	if c.Unpriced > 0 {
		b.say("", 9, soft, "No price for %d of %s.", c.Unpriced, units.Count(len(c.Lines), "line", "lines"))
	}
}

// buying writes the packages of a line.
func buying(l cost.Line) string {
	var out []string
	for _, x := range l.Buy {
		out = append(out, fmt.Sprintf("%d x %s %s", x.Count, trimmed(x.Size), l.Unit))
	}
	return strings.Join(out, " + ")
}

// cautions prints what holds on every page.
func (b *book) cautions() {
	b.begin("Cautions")
	w := b.w - 2*margin
	t := table{b, []column{{"", 34, false, "B", 11}, {"", w - 34, false, "", 11}}, 11}
	for _, c := range [][2]string{
		{"who decides", "These numbers support a maker's judgement and do not replace it. Local codes, safety data sheets and licensed practice decide, above all for what carries people, stands in public or is fixed to a building."},
		{"dust", "Silica dust from cutting and sanding concrete scars lungs. Work wet, or with a shroud and a fine-dust extractor, and wear a fitted respirator. No dry sweeping, no compressed air."},
		{"alkali", "Fresh concrete is caustic and burns slowly, often unnoticed. Gloves, goggles, long sleeves; rinse with much water at once; wet clothes come off."},
		{"sensitisers", "Resins and hardeners sensitise, and once sensitised is for good. Nitrile gloves, goggles, fresh air; stop at the first rash."},
		{"heat", "A large or deep mass of mixed resin heats itself. Keep lifts to what the data sheet allows. Hot buckets go outside, away from anything that burns."},
		{"foam", "Polystyrene burns and is eaten by solvents. Keep flames, petrol and solvent glues away from it."},
		{"lifting", "Count people and agree on the words before you lift. A piece in its form weighs more than the finished piece."},
		{"tipping", "A heavy piece can tip and crush. Check that it stands, and fix it where children climb."},
	} {
		t.row(c[0], c[1])
	}
}
