package toolpath

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// entriesMM is the distance between places where a path may begin. Chosen.
const (
	entriesMM   = 15.0
	mostEntries = 24
)

// order returns the loops in the order in which they are cut, each with its entry,
// and the length of the ways between them, mm.
func (c *computer) order(s Sheet, loops []loop) ([]loop, float64) {
	how := newCut(c.m, s.Thickness.MM())
	stops := make([]stop, len(loops))
	entries := make([][]float64, len(loops))
	for i, l := range loops {
		entries[i], stops[i] = c.stop(l, how)
	}
	t := shortest(stops)
	out := make([]loop, 0, len(loops))
	for _, i := range t.order {
		l := loops[i]
		l.entry = entries[i][t.pick[i]]
		out = append(out, l)
	}
	return out, t.length()
}

// stop returns where l may begin, mm along it, and the stop of these choices.
func (c *computer) stop(l loop, how cut) ([]float64, stop) {
	if l.drilled() {
		at := []geom.Point{l.at}
		return []float64{0}, stop{at, at, l.after}
	}
	length := l.path.length()
	n := min(max(4, int(length/entriesMM)), mostEntries)
	entries, st := make([]float64, n), stop{after: l.after}
	round := how.exit(l.path, 0)
	for k := range n {
		entries[k] = length * float64(k) / float64(n)
		st.in = append(st.in, l.path.at(entries[k]))
		st.out = append(st.out, l.path.at(entries[k]+round))
	}
	return entries, st
}

// program writes the program of one sheet.
func (c *computer) program(index int, s Sheet, loops []loop) Program {
	how := newCut(c.m, s.Thickness.MM())
	p := Program{
		File: c.fileName(s.Name), Kind: "cut", Sheet: s.Name, Index: index, Parts: []string{}, Tabs: []Tab{},
		Cutter: c.m.Cutter, Stock: s.Thickness, Passes: len(how.levels), Bottom: units.Length(how.levels[len(how.levels)-1]), Safe: c.m.SafeHeight, Box: boxOf(loops),
	}
	pen := newPen(c.m.Inch, how.safe)
	for _, l := range loops {
		how.loop(pen, l)
		p.Tabs = append(p.Tabs, l.placed...)
		if id := s.Parts[l.part].ID; l.kind == outlineLoop && !slices.Contains(p.Parts, id) {
			p.Parts = append(p.Parts, id)
		}
	}
	c.finish(&p, pen, c.cutHead(p, s))
	return p
}

// finish brings the cutter home, writes the text and measures the program.
func (c *computer) finish(p *Program, pen *pen, head []string) {
	pen.rapid(geom.Point{}, c.m.SafeHeight.MM())
	p.Moves = pen.moves
	p.Cut = units.Length(cutLength(p.Moves, p.Safe.MM()))
	p.Minutes = units.Duration(seconds(p.Moves, p.Safe.MM(), float64(c.m.Rapid), c.m.Accel) / 3600)
	p.Text, p.Lines = c.text(p.Moves, append(head, "Estimated "+minutes(p.Minutes)))
	p.DryRun = c.dryRun(*p)
}

func minutes(t units.Duration) string { return fmt.Sprintf("%.1f min", float64(t)*60) }

// text writes moves under the comments of head.
func (c *computer) text(moves []Move, head []string) (string, int) {
	w := newWriter(c.m.Inch)
	for _, h := range head {
		w.comment(h)
	}
	w.settings()
	if c.m.Spindle {
		speed := ""
		if c.m.Speed > 0 {
			speed = " S" + strconv.Itoa(int(c.m.Speed))
		}
		w.line("M3" + speed)
	}
	w.start(float64(c.m.Plunge), c.m.SafeHeight.MM())
	for _, m := range moves {
		w.move(m)
	}
	if c.m.Spindle {
		w.line("M5")
	}
	w.line("M2")
	return w.b.String(), w.lines
}

// dryRun goes once round the program's box at the safe height, the spindle still.
func (c *computer) dryRun(p Program) DryRun {
	still := *c
	still.m.Spindle = false
	pen := newPen(c.m.Inch, c.m.SafeHeight.MM())
	for _, at := range append(p.Box.Ring(), p.Box.Min, geom.Point{}) {
		pen.rapid(at, c.m.SafeHeight.MM())
	}
	text, _ := still.text(pen.moves, []string{
		c.in.Piece + " - " + p.Sheet + " - dry run",
		"Goes round the box of " + p.File + " at the safe height. Nothing may stand in its way",
		"Spindle off",
	})
	return DryRun{File: strings.TrimSuffix(p.File, ".nc") + "-dry-run.nc", Text: text}
}

// cutLength returns the length of all moves that are not rapid, mm.
func cutLength(moves []Move, startZ float64) float64 {
	sum := 0.0
	for _, l := range legsOf(moves, startZ, 1, 1) {
		if l.cuts {
			sum += l.length
		}
	}
	return sum
}

// fileName makes a file's name of a sheet's: small letters, digits and hyphens, and a
// number where another sheet has the same.
func (c *computer) fileName(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	base := strings.TrimSuffix(b.String(), "-")
	if base == "" {
		base = "sheet"
	}
	file := base
	for k := 2; slices.Contains(c.files, file); k++ {
		file = fmt.Sprintf("%s-%d", base, k)
	}
	c.files = append(c.files, file)
	return file + ".nc"
}
