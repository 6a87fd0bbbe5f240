package relief

import "pourwright/internal/finding"

var (
	outside = finding.Rule{Code: "relief/outside", Severity: finding.Stop, Title: "the basin lies in the box",
		Remedy: "Move the outline into the box, or check the drawing's scale and place."}
	overrun = finding.Rule{Code: "relief/overrun", Severity: finding.Note, Title: "outlines end at the side",
		Remedy: "Nothing to do where the basin is meant to run off this side; else draw it inside the box."}
	undercut = finding.Rule{Code: "relief/undercut", Severity: finding.Stop, Title: "no layer reaches out under the one above",
		Remedy: "Draw the deeper outline inside the shallower one: an undercut locks the foam into the casting."}
	tooDeep = finding.Rule{Code: "relief/too-deep", Severity: finding.Stop, Title: "basin and shell fit into the height",
		Remedy: "Make the basin shallower, the shell thinner or the piece higher."}
	noDepth = finding.Rule{Code: "relief/no-depth", Severity: finding.Stop, Title: "every step has a depth and an area",
		Remedy: "Give the step a depth above zero and a closed outline."}
	neck = finding.Rule{Code: "relief/neck", Severity: finding.Caution, Title: "necks of the basin are wide enough to cut and to pour",
		Remedy: "Widen the basin here, or expect foam that breaks and resin that hardly flows."}
	land = finding.Rule{Code: "relief/land", Severity: finding.Caution, Title: "lands are wide enough to pack",
		Remedy: "Move the outline away: concrete can hardly be packed into so narrow a place, and it will be weak."}
	island = finding.Rule{Code: "relief/island", Severity: finding.Caution, Title: "islands are wide enough to pack and to hold",
		Remedy: "Enlarge the island or leave it out."}
	notSought = finding.Rule{Code: "relief/not-sought", Severity: finding.Note, Title: "narrow places were looked for",
		Remedy: "Draw with fewer points if you want narrow places located."}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{outside, overrun, undercut, tooDeep, noDepth, neck, land, island, notSought}
}
