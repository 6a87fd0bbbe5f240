package knockout

import "pourwright/internal/finding"

var (
	thickness = finding.Rule{Code: "knockout/thickness", Severity: finding.Caution, Title: "layers are whole sheets of the foam really owned",
		Remedy: "Make the step a whole number of sheets."}
	stack = finding.Rule{Code: "knockout/stack", Severity: finding.Note, Title: "the sheet is as thick as the layer",
		Remedy: "Glue the sheets of a part to one before it goes into the form; or buy thicker foam."}
	seam = finding.Rule{Code: "knockout/seam", Severity: finding.Note, Title: "parts fit on the bed and the sheet",
		Remedy: "Glue the pieces by the glue map; a larger bed or sheet needs fewer seams."}
	noFit = finding.Rule{Code: "knockout/no-fit", Severity: finding.Stop, Title: "every part fits a sheet and the bed",
		Remedy: "Use a larger bed or sheet, allow other turns, or allow smaller pieces."}
	tooSmall = finding.Rule{Code: "knockout/bed-small", Severity: finding.Stop, Title: "the bed holds the smallest piece allowed",
		Remedy: "Use a larger bed, a smaller margin, or allow smaller pieces."}
	smallPiece = finding.Rule{Code: "knockout/small-piece", Severity: finding.Caution, Title: "no piece is smaller than allowed",
		Remedy: "Use a larger bed or sheet, or allow smaller pieces."}
	stagger = finding.Rule{Code: "knockout/stagger", Severity: finding.Caution, Title: "seams of neighbouring layers keep apart",
		Remedy: "Use a larger bed or sheet, or a smaller stagger; glue this joint with care and weigh it down."}
	weak = finding.Rule{Code: "knockout/seam-weak", Severity: finding.Caution, Title: "seams keep out of narrow places",
		Remedy: "Widen the place in the drawing, use a larger bed or sheet, or reinforce the joint with a dowel along it."}
	island = finding.Rule{Code: "knockout/seam-island", Severity: finding.Caution, Title: "rings of foam round islands stay whole",
		Remedy: "Use a larger bed or sheet, or move the island; else glue the ring flat on a true board."}
	dowels = finding.Rule{Code: "knockout/dowels", Severity: finding.Caution, Title: "every part is held in place and goes on one way only",
		Remedy: "Place it by the check dimensions of the glue map."}
	channel = finding.Rule{Code: "knockout/channel", Severity: finding.Caution, Title: "the cutter enters every channel and hole",
		Remedy: "Use a smaller cutter or widen the place."}
	corner = finding.Rule{Code: "knockout/corner", Severity: finding.Note, Title: "what a round cutter leaves in corners",
		Remedy: "Pare the corners with a knife, or round them in the drawing."}
	flute = finding.Rule{Code: "knockout/flute", Severity: finding.Stop, Title: "the cutter reaches through the foam",
		Remedy: "Use a longer cutter or thinner foam."}
	smallDowel = finding.Rule{Code: "knockout/dowel-cutter", Severity: finding.Caution, Title: "the cutter enters the holes for dowels",
		Remedy: "Use thicker dowels, or drill the holes by hand."}
	changed = finding.Rule{Code: "knockout/changed", Severity: finding.Stop, Title: "parts that are cut stay as they are",
		Remedy: "Undo what changed the part, or cut it anew."}
	nesting = finding.Rule{Code: "knockout/nesting", Severity: finding.Stop, Title: "every part lies on a sheet",
		Remedy: "Use a larger sheet, allow other turns, or a smaller margin."}
	unused = finding.Rule{Code: "knockout/offcut", Severity: finding.Note, Title: "offcuts that are listed can be used",
		Remedy: "Saw it to the bed's size, or take it off the list."}
	uplift = finding.Rule{Code: "knockout/uplift", Severity: finding.Note, Title: "the knockout stays down",
		Remedy: "Glue it to the form's base all round and caulk its edge; weights help until the first coat is firm.", Source: "analytic"}
	touches = finding.Rule{Code: "knockout/touches", Severity: finding.Note, Title: "what may touch polystyrene",
		Remedy: "Use water-based or polyurethane glue and silicone or soap as release; test anything else on a scrap.", Source: "polystyrene-resistance"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{thickness, stack, seam, noFit, tooSmall, smallPiece, stagger, weak, island, dowels, channel, corner, flute,
		smallDowel, changed, nesting, unused, uplift, touches}
}
