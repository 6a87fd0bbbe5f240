package proof

import (
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/rs274"
)

var (
	noInput = finding.Rule{Code: "proof/input", Severity: finding.Stop, Title: "sheet and cutter are known",
		Remedy: "Measure the foam's thickness and the cutter's diameter and write them down; the program is not written until then."}
	modes = finding.Rule{Code: "proof/modes", Severity: finding.Stop, Title: "a program states its modes before it moves",
		Remedy: "Write the program anew; it is not written out like this.", Source: "rs274ngc"}
	faulty = finding.Rule{Code: "proof/fault", Severity: finding.Stop, Title: "every line of a program can be read",
		Remedy: "Settle the line that is named; the program is not written out like this."}
	gouge = finding.Rule{Code: "proof/gouge", Severity: finding.Stop, Title: "no part is cut into",
		Remedy: "Do not run this program: it is not written out. Check the cutter's diameter on the machine's card and the place of the part."}
	uncut = finding.Rule{Code: "proof/uncut", Severity: finding.Stop, Title: "every part is cut free all round",
		Remedy: "Do not run this program: it is not written out. Check the foam's thickness and the passes on the machine's card."}
	remains = finding.Rule{Code: "proof/remains", Severity: finding.Note, Title: "the cutter reaches every corner",
		Remedy: "Pare the corner by hand, or use a smaller cutter."}
	closed = finding.Rule{Code: "proof/closed", Severity: finding.Caution, Title: "the cutter enters every hole and channel",
		Remedy: "Use a smaller cutter, or cut the place by hand."}
	tabMissing = finding.Rule{Code: "proof/tabs", Severity: finding.Stop, Title: "every wanted tab stands",
		Remedy: "Do not run this program: the part would come loose while it is cut. It is not written out."}
	tabShows = finding.Rule{Code: "proof/tab-shows", Severity: finding.Caution, Title: "tabs stand where they do not show",
		Remedy: "Pare this tab flush with care: its edge prints in the concrete or must fit another part."}
	rapidLow = finding.Rule{Code: "proof/rapid-low", Severity: finding.Stop, Title: "no rapid move goes sideways below the safe height",
		Remedy: "Do not run this program: it is not written out. Raise the move, or make it a cut (G1)."}
	rapidPlunge = finding.Rule{Code: "proof/rapid-plunge", Severity: finding.Stop, Title: "no rapid move goes down into the sheet",
		Remedy: "Do not run this program: it is not written out. Go down with G1 and a plunge feed."}
	offBed = finding.Rule{Code: "proof/off-bed", Severity: finding.Stop, Title: "the cutter stays on the bed",
		Remedy: "Do not run this program: it is not written out. Turn or split the part, or correct the bed's size."}
	offSheet = finding.Rule{Code: "proof/off-sheet", Severity: finding.Stop, Title: "the cutter stays on the sheet and the parts lie on it",
		Remedy: "Do not run this program: it is not written out. Nest the parts again on this sheet."}
	overEdge = finding.Rule{Code: "proof/over-edge", Severity: finding.Caution, Title: "the cutter's middle stays on the sheet",
		Remedy: "See that no clamp stands at this edge."}
	tooDeep = finding.Rule{Code: "proof/too-deep", Severity: finding.Stop, Title: "the cutter does not go deep into the board below",
		Remedy: "Do not run this program: it is not written out. Check the foam's thickness and the overcut on the machine's card."}
	shortFlute = finding.Rule{Code: "proof/flute", Severity: finding.Stop, Title: "the flutes are as long as the cut is deep",
		Remedy: "Use a longer cutter."}
	spindleOff = finding.Rule{Code: "proof/spindle", Severity: finding.Stop, Title: "the spindle turns before the first cut",
		Remedy: "Do not run this program: it is not written out. Put M3 before the first cut."}
	fastFeed = finding.Rule{Code: "proof/max-feed", Severity: finding.Caution, Title: "no feed is above what the machine can do",
		Remedy: "Lower the feed, or raise max_feed on the machine's card if the machine really runs as fast."}
	tools = finding.Rule{Code: "proof/tools", Severity: finding.Stop, Title: "a program cuts with one cutter",
		Remedy: "Write one program for each cutter."}
	dryLow = finding.Rule{Code: "proof/dry-run", Severity: finding.Stop, Title: "a dry run touches nothing",
		Remedy: "Do not run this program: it is not written out. Raise it to the safe height."}
)

// Rules lists what this stage can find, and what reading a program can.
func Rules() []finding.Rule {
	return slices.Concat(rs274.Rules(), []finding.Rule{noInput, modes, faulty, gouge, uncut, remains, closed, tabMissing, tabShows, rapidLow, rapidPlunge,
		offBed, offSheet, overEdge, tooDeep, shortFlute, spindleOff, fastFeed, tools, dryLow})
}
