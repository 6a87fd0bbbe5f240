package concrete

import "pourwright/internal/units"

// Drying before resin. The rules for slabs (28 days, 4 % of moisture, humidity of
// 80 %) do not carry over to a thin shell that dries from two sides: its weight
// decides. Source: [practice]; the sheet test as in [astm-d4263].
const (
	dryLeast, dryMost units.Duration = 7 * units.Day, 14 * units.Day // Chosen
	dryUsual          units.Duration = 10 * units.Day
	weighEvery        units.Duration = units.Day
	steadyShare                      = 0.0005 // of the shell's mass a day. Chosen
	leastSteady       units.Mass     = 0.02   // kg; Chosen: what a platform scale can tell
	sheetTest         units.Duration = 16     // Source: [astm-d4263]
)

// drying plans the days that the shell dries and the two tests that end them.
func (c *computer) drying(r *Result) Drying {
	d := Drying{Planned: c.in.DryDays, Usual: Span{dryLeast, dryMost}, Every: weighEvery, Sheet: sheetTest}
	if !(d.Planned > 0) || !known(d.Planned) {
		d.Planned = dryUsual
	}
	wet := units.Mass(0)
	for _, coat := range r.Coats {
		wet += coat.Mass
	}
	d.Loss = max(0, wet-r.ShellMass)
	d.Steady = max(leastSteady, r.ShellMass*steadyShare)
	d.Steps = []string{
		"Stand the shell on battens, air on both sides alike, no heater on one side: uneven drying bends it.",
		"Weigh it every day at the same hour, on the same scale, and write it down.",
		"Steady twice running: then tape a clear sheet of half a metre square or what fits to the basin floor for the hours of the sheet test.",
		"Damp or dark under the sheet: dry on. Dry: seal coat first, and pour while the temperature falls, since warming concrete breathes out.",
	}
	return d
}
