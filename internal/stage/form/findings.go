package form

import "pourwright/internal/finding"

var (
	noPanels = finding.Rule{Code: "form/no-panels", Severity: finding.Stop, Title: "the box can be made",
		Remedy: "Give the box and the board sizes above zero."}
	noSheet = finding.Rule{Code: "form/no-sheet", Severity: finding.Stop, Title: "panels fit on a sheet",
		Remedy: "Buy a larger sheet, or join two boards with a batten behind the joint."}
	thick = finding.Rule{Code: "form/thick", Severity: finding.Caution, Title: "the board suits the box",
		Remedy: "Check the measured thickness and its unit."}
	thin = finding.Rule{Code: "form/thin", Severity: finding.Caution, Title: "the board is stiff enough to be a form",
		Remedy: "Check the measured thickness and its unit, or take thicker board."}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule { return []finding.Rule{noPanels, noSheet, thick, thin} }
