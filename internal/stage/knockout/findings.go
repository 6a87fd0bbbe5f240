package knockout

import "pourwright/internal/finding"

var (
	thickness = finding.Rule{Code: "knockout/thickness", Severity: finding.Caution, Title: "layers are whole sheets of the foam really owned",
		Remedy: "Make the step a whole number of sheets."}
	seam = finding.Rule{Code: "knockout/seam", Severity: finding.Caution, Title: "parts fit on a sheet",
		Remedy: "Join two pieces with a seam away from necks, islands and the seams above and below, or use a larger sheet."}
	uplift = finding.Rule{Code: "knockout/uplift", Severity: finding.Note, Title: "the knockout stays down",
		Remedy: "Glue it to the form's base all round and caulk its edge; weights help until the first coat is firm.", Source: "analytic"}
	touches = finding.Rule{Code: "knockout/touches", Severity: finding.Note, Title: "what may touch polystyrene",
		Remedy: "Use water-based or polyurethane glue and silicone or soap as release; test anything else on a scrap.", Source: "polystyrene-resistance"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule { return []finding.Rule{thickness, seam, uplift, touches} }
