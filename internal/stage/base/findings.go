package base

import "pourwright/internal/finding"

var (
	tooSmall = finding.Rule{Code: "base/too-small", Severity: finding.Stop, Title: "the carcass fits into the shell",
		Remedy: "Take thinner board, less clearance, or make the base with fewer dividers."}
	short = finding.Rule{Code: "base/short", Severity: finding.Stop, Title: "the carcass reaches from the floor to the shell",
		Remedy: "Make the base higher."}
	opening = finding.Rule{Code: "base/opening", Severity: finding.Caution, Title: "openings leave board round them",
		Remedy: "Leave out a divider, or make the base higher."}
	groove = finding.Rule{Code: "base/groove", Severity: finding.Stop, Title: "grooves leave board under them",
		Remedy: "Make grooves at most half as deep as the board is thick."}
	longTube = finding.Rule{Code: "base/tube-long", Severity: finding.Stop, Title: "supports fit inside the shell",
		Remedy: "Shorten the supports to the inside width less 2 mm."}
	holeWide = finding.Rule{Code: "base/hole-wide", Severity: finding.Stop, Title: "bolt head and socket go into the tube",
		Remedy: "Take a smaller bolt or a larger tube."}
	holeWeak = finding.Rule{Code: "base/hole-weak", Severity: finding.Caution, Title: "holes leave enough of the tube",
		Remedy: "Put the holes near the ends, where bending is small, or take a larger tube.", Source: "en-10219-2"}
	holeMiss = finding.Rule{Code: "base/hole-miss", Severity: finding.Caution, Title: "bolts meet the carcass",
		Remedy: "Move the holes over the middle of the carcass's sides."}
	outside = finding.Rule{Code: "base/support-outside", Severity: finding.Stop, Title: "supports stand inside the shell",
		Remedy: "Move the support between the shell's ends."}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{tooSmall, short, opening, groove, longTube, holeWide, holeWeak, holeMiss, outside}
}
