package toolpath

import "pourwright/internal/finding"

var (
	noCutter = finding.Rule{Code: "toolpath/cutter", Severity: finding.Stop, Title: "the card states the cutter",
		Remedy: "Measure the cutter's diameter and write it on the machine's card as cutter."}
	noFeed = finding.Rule{Code: "toolpath/feed", Severity: finding.Caution, Title: "the card states the feeds",
		Remedy: "Write feed and plunge on the machine's card after a trial cut in a scrap of the same foam.", Source: "router-practice"}
	tooFast = finding.Rule{Code: "toolpath/max-feed", Severity: finding.Caution, Title: "no feed is above what the machine can do",
		Remedy: "Lower feed, or raise max_feed if the machine really runs as fast."}
	flute = finding.Rule{Code: "toolpath/flute", Severity: finding.Stop, Title: "the flutes reach through the sheet",
		Remedy: "Use a longer cutter or thinner foam."}
	lowSafe = finding.Rule{Code: "toolpath/safe-height", Severity: finding.Caution, Title: "rapid moves clear the sheet and its clamps",
		Remedy: "Raise safe_height on the machine's card above the highest clamp."}
	badNumber = finding.Rule{Code: "toolpath/setting", Severity: finding.Caution, Title: "every setting of the machine is possible",
		Remedy: "Correct it on the machine's card."}
	noStock = finding.Rule{Code: "toolpath/thickness", Severity: finding.Stop, Title: "the sheet's thickness is known",
		Remedy: "Measure the foam and write its thickness."}
	offSheet = finding.Rule{Code: "toolpath/off-sheet", Severity: finding.Stop, Title: "every part lies on its sheet",
		Remedy: "Nest the parts again with a larger margin, or use a larger sheet."}
	offBed = finding.Rule{Code: "toolpath/off-bed", Severity: finding.Stop, Title: "the cutter stays within the bed",
		Remedy: "Split the part, turn it on the sheet, or use a larger bed."}
	beside = finding.Rule{Code: "toolpath/beside-origin", Severity: finding.Note, Title: "the cutter has room round the sheet",
		Remedy: "Clamp the sheet's lower left corner that far from the ends of the machine's travel."}
	tooClose = finding.Rule{Code: "toolpath/too-close", Severity: finding.Stop, Title: "cutting one part leaves the others whole",
		Remedy: "Nest the parts with more spacing, or use a smaller cutter."}
	channel = finding.Rule{Code: "toolpath/channel", Severity: finding.Caution, Title: "the cutter enters every channel and hole",
		Remedy: "Use a smaller cutter, widen the place in the drawing, or pare it by hand."}
	noTabs = finding.Rule{Code: "toolpath/tabs", Severity: finding.Caution, Title: "parts are held while they are cut loose",
		Remedy: "Tape the part down inside its outline before cutting, or cut it by hand for the last pass."}
	emptyPart = finding.Rule{Code: "toolpath/empty", Severity: finding.Stop, Title: "every part has an outline",
		Remedy: "Check the part's outline in the drawing."}
	noCarving = finding.Rule{Code: "toolpath/carve", Severity: finding.Stop, Title: "a height map can be carved",
		Remedy: "State the stock, a ball cutter that reaches the deepest point, and a height map no deeper than the stock."}
)

// Rules lists what may be said of the programs.
func Rules() []finding.Rule {
	return []finding.Rule{noCutter, noFeed, tooFast, flute, lowSafe, badNumber, noStock, offSheet, offBed, beside, tooClose,
		channel, noTabs, emptyPart, noCarving}
}
