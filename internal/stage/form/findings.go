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
	notConvex = finding.Rule{Code: "form/outline", Severity: finding.Stop, Title: "the outline is convex and fills the box",
		Remedy: "Draw a convex outline with straight sides; cast re-entrant corners with a block in the form."}
	outlineOnly = finding.Rule{Code: "form/outline-only", Severity: finding.Caution, Title: "all rooms know the outline",
		Remedy: "Take mix, masses and supports as upper bounds."}
	noButt = finding.Rule{Code: "form/butt-corner", Severity: finding.Stop, Title: "butt joints are at square corners",
		Remedy: "Write corner: mitre."}
	steep = finding.Rule{Code: "form/mitre-steep", Severity: finding.Stop, Title: "the saw tilts as far as the mitre needs",
		Remedy: "Cut the bevel with the board on end against a jig, or make the corner wider."}
	bowing = finding.Rule{Code: "form/bow", Severity: finding.Stop, Title: "walls stay straight under the mix",
		Remedy: "Use deeper battens, tie the rails across the top, or cast in lower lifts.", Source: "plate-series"}
	stiffness = finding.Rule{Code: "form/modulus", Severity: finding.Note, Title: "the board's stiffness is known",
		Remedy: "Write the board's modulus on its card."}
	braced = finding.Rule{Code: "form/battens", Severity: finding.Note, Title: "walls that would bow have battens",
		Remedy: "Screw the battens on before the mix goes in.", Source: "plate-series"}
	shortScrew = finding.Rule{Code: "form/screw-short", Severity: finding.Stop, Title: "screws hold in the edge behind the side",
		Remedy: "Take longer screws: at least the board and 25 mm.", Source: "nds"}
	closeScrews = finding.Rule{Code: "form/screws-close", Severity: finding.Caution, Title: "screws stand far enough apart",
		Remedy: "Add cleats behind the seam, or take thicker screws.", Source: "nds"}
	damLap = finding.Rule{Code: "form/dam-lap", Severity: finding.Caution, Title: "dams lap onto concrete all round",
		Remedy: "Wrap the dam round the corner with a second board, and seal the edge between them."}
	damHot = finding.Rule{Code: "form/dam-hot", Severity: finding.Caution, Title: "the dam's board bears the resin's heat",
		Remedy: "Take film-faced plywood, or a metal plate, with a liner that bears the heat."}
	cover = finding.Rule{Code: "form/cover", Severity: finding.Stop, Title: "inserts have concrete over them",
		Remedy: "Take a shorter insert, or cast a boss behind it."}
	edgeCover = finding.Rule{Code: "form/edge-cover", Severity: finding.Caution, Title: "inserts keep clear of edges",
		Remedy: "Move the insert inwards."}
	leaks = finding.Rule{Code: "form/cable-leak", Severity: finding.Stop, Title: "ways through the shell keep clear of the basin",
		Remedy: "Move the way out of the basin, or sleeve it to above the resin."}
	offPiece = finding.Rule{Code: "form/insert-off", Severity: finding.Stop, Title: "inserts lie in the piece",
		Remedy: "Write at: [x, y] in FINISHED VIEW from the near left corner."}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noPanels, noSheet, thick, thin, notConvex, outlineOnly, noButt, steep, bowing, stiffness, braced, shortScrew, closeScrews,
		damLap, damHot, cover, edgeCover, leaks, offPiece}
}
