package concrete

import "pourwright/internal/finding"

var (
	noBox = finding.Rule{Code: "concrete/no-box", Severity: finding.Stop, Title: "there is a box to cast in",
		Remedy: "Give the box sizes above zero."}
	coarse = finding.Rule{Code: "concrete/coarse", Severity: finding.Caution, Title: "the shell's volume is converged",
		Remedy: "Mix a little more than stated."}
	solid = finding.Rule{Code: "concrete/solid", Severity: finding.Caution, Title: "the shell leaves a hollow",
		Remedy: "Check the shell's thickness and its unit."}
	thickness = finding.Rule{Code: "concrete/coat", Severity: finding.Caution, Title: "coats can be laid",
		Remedy: "Split the shell into coats of 3 to 5 mm for the face and 6 to 13 mm for the backers.", Source: "gfrc-guides"}
	tub = finding.Rule{Code: "concrete/tub", Severity: finding.Caution, Title: "the tub suits the coat",
		Remedy: "Check the tub's volume and its unit, or use a larger tub."}
	badAir = finding.Rule{Code: "concrete/air", Severity: finding.Caution, Title: "air is a small part",
		Remedy: "Write the mix's air as a share between 0 and 0.3."}
	noDensity = finding.Rule{Code: "concrete/no-density", Severity: finding.Caution, Title: "the mix has densities",
		Remedy: "Weigh a full litre of the mix and write its wet density."}
	tooWet = finding.Rule{Code: "concrete/too-wet", Severity: finding.Caution, Title: "water stays under its limit",
		Remedy: "Take water out and thin the mix with plasticiser instead.", Source: "gfrc-guides"}
	tooMuchFibre = finding.Rule{Code: "concrete/fibre", Severity: finding.Caution, Title: "fibre can be mixed in",
		Remedy: "Check on what basis the fibre is stated.", Source: "gfrc-guides"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noBox, coarse, solid, thickness, tub, badAir, noDensity, tooWet, tooMuchFibre}
}
