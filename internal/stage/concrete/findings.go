package concrete

import "pourwright/internal/finding"

var (
	noBox = finding.Rule{Code: "concrete/no-box", Severity: finding.Stop, Title: "there is a box to cast in",
		Remedy: "Give the box sizes above zero."}
	noCoats = finding.Rule{Code: "concrete/no-coats", Severity: finding.Stop, Title: "the shell has coats",
		Remedy: "Give at least a face coat and a backer."}
	noThickness = finding.Rule{Code: "concrete/no-thickness", Severity: finding.Stop, Title: "every coat has a thickness",
		Remedy: "Give the coat a thickness above zero."}
	noLayer = finding.Rule{Code: "concrete/no-layer", Severity: finding.Caution, Title: "every layer of the knockout is in the form",
		Remedy: "Check the step's depth and outline."}
	undercut = finding.Rule{Code: "concrete/undercut", Severity: finding.Caution, Title: "each step lies within the one above",
		Remedy: "Draw the deeper step within the shallower one."}
	coarse = finding.Rule{Code: "concrete/coarse", Severity: finding.Caution, Title: "the shell's volume is converged",
		Remedy: "Mix a little more than stated."}
	solid = finding.Rule{Code: "concrete/solid", Severity: finding.Caution, Title: "the shell leaves a hollow",
		Remedy: "Check the shell's thickness and its unit."}
	thickness = finding.Rule{Code: "concrete/coat", Severity: finding.Caution, Title: "coats can be laid",
		Remedy: "Split the shell into coats of 3 to 5 mm for the face and 6 to 13 mm for the backers.", Source: "gfrc-guides"}
	tub = finding.Rule{Code: "concrete/tub", Severity: finding.Caution, Title: "the tub suits the coat",
		Remedy: "Check the tub's volume and its unit, or use a larger tub."}
	smallBatch = finding.Rule{Code: "concrete/small-batch", Severity: finding.Note, Title: "a batch can be weighed",
		Remedy: "Weigh its parts on a scale that reads 0.1 g.", Source: "chosen"}
	badAir = finding.Rule{Code: "concrete/air", Severity: finding.Caution, Title: "air is a small part",
		Remedy: "Write the mix's air as a share between 0 and 30 %."}
	badPart = finding.Rule{Code: "concrete/bad-part", Severity: finding.Stop, Title: "parts have masses",
		Remedy: "Write the ingredient's parts as a number above zero."}
	noParts = finding.Rule{Code: "concrete/no-parts", Severity: finding.Stop, Title: "the mix has ingredients",
		Remedy: "List the mix's ingredients, with their parts by mass."}
	noCement = finding.Rule{Code: "concrete/no-cement", Severity: finding.Caution, Title: "the mix has a binder",
		Remedy: "Give one ingredient the role cement, or blend in a bagged mix."}
	noDensity = finding.Rule{Code: "concrete/no-density", Severity: finding.Caution, Title: "the mix has densities",
		Remedy: "Weigh a full litre of the mix and write its wet density."}
	noLimit = finding.Rule{Code: "concrete/no-water-limit", Severity: finding.Caution, Title: "water has a limit",
		Remedy: "Take the most water allowed from the data sheet, or 0.38 of cement and pozzolan.", Source: "gfrc-guides"}
	tooWet = finding.Rule{Code: "concrete/too-wet", Severity: finding.Caution, Title: "water stays under its limit",
		Remedy: "Take water out and thin the mix with plasticiser instead.", Source: "gfrc-guides"}
	tooDry = finding.Rule{Code: "concrete/too-dry", Severity: finding.Note, Title: "the mix has water enough",
		Remedy: "Check the recipe's water; keep the rest of the range at hand and add it in small steps.", Source: "gfrc-guides"}
	fibre = finding.Rule{Code: "concrete/fibre", Severity: finding.Caution, Title: "fibre is enough and can be mixed in",
		Remedy: "Check on what basis the fibre is stated: here it is a share of the whole mix.", Source: "gfrc-guides"}
	polymer = finding.Rule{Code: "concrete/polymer", Severity: finding.Caution, Title: "polymer holds the water in",
		Remedy: "Check the emulsion's dose and its share of solids.", Source: "gfrc-guides"}
	plasticiser = finding.Rule{Code: "concrete/plasticiser", Severity: finding.Caution, Title: "plasticiser is not overdosed",
		Remedy: "Take plasticiser out; keep to its data sheet.", Source: "practice"}
	pigment = finding.Rule{Code: "concrete/pigment", Severity: finding.Caution, Title: "pigment stays under a tenth of the cement",
		Remedy: "Take pigment out: colour is full at 5 to 6 %.", Source: "astm-c979"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noBox, noCoats, noThickness, noLayer, undercut, coarse, solid, thickness, tub, smallBatch,
		badAir, badPart, noParts, noCement, noDensity, noLimit, tooWet, tooDry, fibre, polymer, plasticiser, pigment}
}
