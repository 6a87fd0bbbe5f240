package cutlist

import "pourwright/internal/finding"

var (
	noStock = finding.Rule{Code: "cutlist/no-stock", Severity: finding.Stop, Title: "every part has stock to be cut from",
		Remedy: "Buy a larger sheet or bar, or join the part from several."}
	tooFew = finding.Rule{Code: "cutlist/too-few", Severity: finding.Stop, Title: "there is enough stock",
		Remedy: "Buy more of the stock."}
	kerf = finding.Rule{Code: "cutlist/kerf", Severity: finding.Stop, Title: "the saw's kerf leaves enough for the parts",
		Remedy: "Use a thinner blade, or buy more stock."}
	trim = finding.Rule{Code: "cutlist/trim", Severity: finding.Stop, Title: "the edge trim leaves enough for the parts",
		Remedy: "Trim less, or buy a larger sheet."}
	turn = finding.Rule{Code: "cutlist/turn", Severity: finding.Stop, Title: "parts fit with their grain",
		Remedy: "Let the part turn, or buy a sheet that holds it along its length."}
	zone = finding.Rule{Code: "cutlist/zone", Severity: finding.Stop, Title: "parts keep clear of the marks of a board",
		Remedy: "Use another board for this part."}
	badStock = finding.Rule{Code: "cutlist/bad-stock", Severity: finding.Caution, Title: "stock has a size and a count above zero",
		Remedy: "Correct the stock's size and count; it is left out."}
	badPart = finding.Rule{Code: "cutlist/bad-part", Severity: finding.Stop, Title: "parts have sizes above zero",
		Remedy: "Check the measures that the part comes from."}
	hold = finding.Rule{Code: "cutlist/hold", Severity: finding.Caution, Title: "what is cut can be held against the fence",
		Remedy: "Fix it to a carrier board, or cut it from a wider strip by hand saw."}
	kerfCosts = finding.Rule{Code: "cutlist/kerf-costs", Severity: finding.Note, Title: "the kerf does not cost a sheet",
		Remedy: "A thinner blade would save the sheet."}
	tooMany = finding.Rule{Code: "cutlist/too-many", Severity: finding.Stop, Title: "a list has a length that can be planned",
		Remedy: "Divide the list."}
)

// Rules lists the rules of this room.
func Rules() []finding.Rule {
	return []finding.Rule{noStock, tooFew, kerf, trim, turn, zone, badStock, badPart, hold, kerfCosts, tooMany}
}
