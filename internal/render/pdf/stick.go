package pdf

import (
	"fmt"
	"math"

	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// longestStick is how deep a basin's stick still fits a page at full size, mm.
const longestStick = 190.0

// beforePouring prints what is ready before the first bucket is mixed, and the stick.
func (b *book) beforePouring() {
	b.begin("Before pouring")
	w := b.w - 2*margin
	t := table{b, []column{{"", 12, false, "", 16}, {"", w - 12, false, "", 12.5}}, 12.5}
	for _, c := range b.readyList() {
		t.row(box, c[0], c[1])
	}
	if depth := b.plan.Relief.Depth; depth > 0 && depth.MM() <= longestStick {
		b.stick(b.plan.Resin.Lifts, depth)
	}
}

// readyList lists what must be so before pouring, each with how.
func (b *book) readyList() [][2]string {
	r := b.plan.Resin
	out := [][2]string{{"Level, lengthwise and across", "Read at both ends and in the middle; the resin finds its own level and shows every fault."}}
	if s := r.Shim; s != nil {
		out[0] = [2]string{fmt.Sprintf("Level: a shim of %s under the low end", b.length(s.Under)), fmt.Sprintf("As it stands it reads %.1f mm per metre, and the resin would stand %s deeper at that end.", s.Reading, b.length(s.Off))}
	}
	for _, d := range b.plan.Form.Dams {
		how := "Stop every drip; dry the basin through before resin."
		if d.Test > 0 {
			how = fmt.Sprintf("At most %.0f ml of water lost in %s. ", d.Water, clock(d.Test)) + how
		}
		out = append(out, [2]string{fmt.Sprintf("Dam %s, %s side, filled with water and tight", d.Mark, d.Side), how})
	}
	return append(out,
		[2]string{"Dry, clean, sealed where it is to be sealed", "No dust, no release, no wet concrete."},
		[2]string{fmt.Sprintf("Room at %.0f C, as planned", b.plan.Piece.Room), "Resin and piece have stood in it since the day before. A warmer room makes it hotter: see the pour card."},
		[2]string{units.Count(buckets(r.Lifts), "clean bucket", "clean buckets") + ", and as many to pour over into", "Scale, stirring sticks, the marked stick, a torch with a full cartridge, gloves and goggles."},
		[2]string{"A place outside for a bucket that gets hot", "On bare ground, away from walls and anything that burns."})
}

// stick prints the marked stick at full size, its foot on the deepest floor.
func (b *book) stick(lifts []resin.Lift, depth units.Length) {
	high := depth.MM()
	b.Ln(5)
	b.keep(high + 24)
	b.say("B", 13, ink, "Marked stick, full size")
	b.say("", 9.5, soft, "Check with a rule before cutting it out. The foot stands on the deepest floor. Litres are what the basin holds up to a mark.")
	y, x := b.GetY()+6, margin+8.0
	b.SetLineWidth(0.35)
	b.Rect(x, y, 22, high, "D")
	b.stickMarks(lifts, x, y, high)
	b.SetXY(margin, y+high+5)
}

// stickMarks prints a mark every 5 mm and at every terrace, the height and the litres up
// to it beside those that have room, and a strong one where each lift ends.
func (b *book) stickMarks(lifts []resin.Lift, x, y, high float64) {
	for _, m := range b.plan.Resin.Stick {
		mm := m.Height.MM()
		at, long := y+high-mm, 3.0
		b.SetLineWidth(0.13)
		if whole := math.Abs(mm-10*math.Round(mm/10)) < 0.01; whole && mm < high-3 {
			long = 6
			b.text(x+7, at-1.9, 14, "", 8.5, ink, fmt.Sprintf("%.0f", mm))
			if !near(lifts, mm) {
				b.text(x+24, at-1.9, 30, "", 8.5, soft, fmt.Sprintf("%.2f l", m.Volume))
			}
		}
		if m.Lift == 0 {
			b.Line(x, at, x+long, at)
		}
	}
	b.SetLineWidth(0.7)
	lowest := 1e9
	for _, l := range lifts {
		at := y + high - l.To.MM()
		b.Line(x, at, x+30, at)
		text := min(at-2.9, lowest-5.5)
		lowest = text
		b.text(x+32, text, 110, "B", 13, ink, fmt.Sprintf("lift %d: %s%s", l.Number, b.length(l.To), b.litresTo(l.Number)))
	}
	b.text(x+24, y+high-3.4, 90, "", 8.5, soft, "deepest floor, 0")
}

// litresTo writes what the basin holds up to the end of a lift; "" where it is not known.
func (b *book) litresTo(lift int) string {
	for _, m := range b.plan.Resin.Stick {
		if m.Lift == lift {
			return fmt.Sprintf(", %.2f l", m.Volume)
		}
	}
	return ""
}

// near reports whether the label of a mark would stand in that of a lift's end.
func near(lifts []resin.Lift, mm float64) bool {
	for _, l := range lifts {
		if d := l.To.MM() - mm; d > -4.5 && d < 4.5 {
			return true
		}
	}
	return false
}
