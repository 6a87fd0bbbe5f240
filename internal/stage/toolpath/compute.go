package toolpath

import (
	"fmt"
	"math"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A computer carries the settled machine and gathers findings.
type computer struct {
	in    Input
	m     Machine
	files []string // names given
	short []Sheet  // too thick for the flutes
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

// Compute writes the programs. A sheet that cannot be cut well has none, and a
// finding says why. It is pure; its time grows with the corners but for sorting and
// the order of paths, whose effort is bounded.
func Compute(in Input) (Result, []finding.Finding) {
	if !in.Machine.Router {
		return Empty(), nil
	}
	c := &computer{in: in}
	m, ok := c.settle(in.Machine)
	if !ok {
		return Empty(), c.found
	}
	c.m = m
	out := Result{Programs: []Program{}, Used: used(m)}
	add := func(p Program, ok bool) {
		if ok {
			out.Programs = append(out.Programs, p)
			out.Minutes += p.Minutes
		}
	}
	for i, s := range in.Sheets {
		add(c.sheet(i, s))
	}
	c.sayShort()
	if in.Carving != nil {
		add(c.carve(*in.Carving))
	}
	return out, c.found
}

// Empty returns the result of a job without a router.
func Empty() Result { return Result{Programs: []Program{}} }

// sheet writes the program of one sheet, unless something stands against it.
func (c *computer) sheet(index int, s Sheet) (Program, bool) {
	if len(s.Parts) == 0 || !c.stockFits(s) || !c.partsFit(s) {
		return Program{}, false
	}
	loops := c.loops(s)
	if len(loops) == 0 {
		c.say(emptyPart.At(finding.Where{Element: s.Name}, "The cutter finds nothing to go round on %s.", s.Name))
	}
	if len(loops) == 0 || !c.reaches(s, loops) {
		return Program{}, false
	}
	c.sayTabs(s, loops)
	if !c.in.ChannelsSaid {
		c.sayChannels(s)
	}
	order, travel := c.order(s, loops)
	p := c.program(index, s, order)
	p.Travel = lengthOf(travel)
	return p, true
}

// loops returns the paths of all parts, turned to the wanted side, with their tabs.
func (c *computer) loops(s Sheet) []loop {
	var out []loop
	for i, p := range s.Parts {
		out = append(out, loopsOf(i, p.Region.Shape(), c.m.Cutter.MM()/2, c.m.ArcTol.MM())...)
	}
	nest(out)
	orient(out, c.m.Against)
	for i := range out {
		if out[i].kind == outlineLoop {
			placeTabs(&out[i], s.Parts[out[i].part], c.m)
		}
	}
	return out
}

// mostPasses bounds a program's length. Chosen: more is a slip of units.
const mostPasses = 200

// stockFits reports whether the sheet can be cut through by this cutter.
func (c *computer) stockFits(s Sheet) bool {
	where := finding.Where{Element: s.Name}
	if !positive(s.Thickness.MM()) || s.Thickness > 1000 {
		c.say(noStock.At(where, "The thickness of %s is %g mm: no program is written.", s.Name, s.Thickness.MM()))
		return false
	}
	deep := s.Thickness + c.m.Overcut
	if n := math.Ceil(float64(deep / c.m.StepDown)); n > mostPasses {
		c.say(badNumber.At(where, "A step down of %.2f mm takes %.0f passes through %s: no program is written.", c.m.StepDown, n, s.Name).As(finding.Stop))
		return false
	}
	if c.m.Flute > 0 && c.m.Flute < deep {
		c.short = append(c.short, s)
		return false
	}
	return true
}

// sayShort tells once which sheets are too thick for the flutes.
func (c *computer) sayShort() {
	if len(c.short) == 0 {
		return
	}
	var names []string
	deep := units.Length(0)
	for _, s := range c.short {
		names = append(names, s.Name)
		deep = max(deep, s.Thickness+c.m.Overcut)
	}
	c.say(flute.At(machineAt, "The flutes are %.1f mm long and the foam is cut %.1f mm deep: no program is written for %s.", c.m.Flute, deep, list(names)).
		Measured(c.m.Flute.MM(), deep.MM(), "mm").Do("Use a cutter with flutes of at least %.0f mm, or thinner foam.", math.Ceil(deep.MM())))
}

// list writes names as a sentence has them, at most six.
func list(names []string) string {
	const most = 6
	if len(names) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

func finite(r geom.Region) bool {
	for _, ring := range r.Rings() {
		for _, p := range ring {
			if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) || math.Abs(p.X)+math.Abs(p.Y) > 1e6 {
				return false
			}
		}
	}
	return true
}
