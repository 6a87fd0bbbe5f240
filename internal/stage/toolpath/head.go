package toolpath

import (
	"fmt"
	"strings"

	"pourwright/internal/units"
)

// cutHead returns the comments at the head of a program that cuts parts.
func (c *computer) cutHead(p Program, s Sheet) []string {
	out := []string{
		c.in.Piece + " - " + s.Name,
		"Parts " + strings.Join(p.Parts, " "),
		"FORM SIDE up on every part, as the form is looked into",
	}
	out = append(out, c.stockHead(s.Thickness.MM(), -p.Bottom.MM()-s.Thickness.MM())...)
	out = append(out, units.Count(p.Passes, "pass", "passes")+", "+units.Count(len(p.Tabs), "tab", "tabs"))
	if len(p.Tabs) == 0 {
		out = append(out, "NO TABS: tape every part down inside its outline first")
	}
	return out
}

// stockHead returns what a program that cuts parts says of cutter and foam, and the
// cautions of every program.
func (c *computer) stockHead(thickness, overcut float64) []string {
	out := []string{
		fmt.Sprintf("Cutter %.3f mm diameter <%.4f in>", c.m.Cutter, c.m.Cutter.MM()/25.4),
		fmt.Sprintf("Foam %.2f mm thick, cut %.2f mm into the board below", thickness, overcut),
	}
	return append(out, c.cautions()...)
}

// cautions returns what stands at the head of every program.
func (c *computer) cautions() []string {
	out := []string{
		"Origin: X0 Y0 lower left corner, Z0 the top of the foam",
		"Eyes and ears protected, dust drawn off, a hand at the stop, dry run first",
	}
	if !c.m.Spindle {
		out = append(out, "No spindle words: start the spindle by hand")
	}
	return out
}
