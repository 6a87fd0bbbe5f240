package structure

import "pourwright/internal/finding"

var (
	massUnknown = finding.Rule{
		Code: "structure/mass-unknown", Severity: finding.Stop,
		Title:  "every mass is a number",
		Remedy: "Give its volume and density, or its mass, before anyone lifts the piece.",
	}
	flipTeam = finding.Rule{
		Code: "structure/flip-team", Severity: finding.Caution,
		Title:  "enough people to turn the piece over",
		Remedy: "Call in the missing hands for the day the form is turned, or turn it with a hoist.",
		Source: "hse-l23",
	}
	carryTeam = finding.Rule{
		Code: "structure/carry-team", Severity: finding.Note,
		Title:  "enough people to carry the finished piece",
		Remedy: "Arrange helpers, a trolley or a hoist for the day it leaves the shop.",
		Source: "hse-l23",
	}
)

// Rules lists the findings of this stage.
func Rules() []finding.Rule { return []finding.Rule{massUnknown, flipTeam, carryTeam} }
