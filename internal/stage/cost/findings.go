package cost

import "pourwright/internal/finding"

var (
	badNeed = finding.Rule{
		Code: "cost/need", Severity: finding.Stop,
		Title:  "every need is a number of sensible size",
		Remedy: "Correct the quantity that this need comes from.",
	}
	badPackage = finding.Rule{
		Code: "cost/package", Severity: finding.Caution,
		Title:  "packages have a size in the unit of the need",
		Remedy: "Correct the package on the shelf card.",
	}
	noPackage = finding.Rule{
		Code: "cost/no-package", Severity: finding.Note,
		Title:  "every material has a package to buy",
		Remedy: "Write on its shelf card in what sizes it is sold.",
	}
	noPrice = finding.Rule{
		Code: "cost/no-price", Severity: finding.Note,
		Title:  "every package has a price",
		Remedy: "Write the prices on the shelf cards; until then the total is only of the lines that have one.",
	}
)

// Rules lists the findings of this stage.
func Rules() []finding.Rule { return []finding.Rule{badNeed, badPackage, noPackage, noPrice} }
