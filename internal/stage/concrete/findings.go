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
	coatSum = finding.Rule{Code: "concrete/coat-sum", Severity: finding.Caution, Title: "the coats add up to the shell",
		Remedy: "Change a coat's thickness or the shell's until they agree."}
	badZone = finding.Rule{Code: "concrete/zone", Severity: finding.Caution, Title: "zones of another thickness can be cast",
		Remedy: "Name the zone top or heel, and give it a thickness above that of the first coat."}
	pocket = finding.Rule{Code: "concrete/pocket", Severity: finding.Note, Title: "the shell stays hollow everywhere",
		Remedy: "Pack it solid with the backer and tamp well; or widen the place, or thin the shell there."}
	workable = finding.Rule{Code: "concrete/workable", Severity: finding.Stop, Title: "a batch can be mixed and packed within its working life",
		Remedy: "Cool the mix with chilled water, work in a cooler shop, or take a mix of longer working life."}
	tubSmall = finding.Rule{Code: "concrete/tub-small", Severity: finding.Caution, Title: "the tub holds a workable batch",
		Remedy: "Use a larger tub or mixer."}
	scaleStep = finding.Rule{Code: "concrete/scale", Severity: finding.Caution, Title: "the scale can tell the least part",
		Remedy: "Weigh that part on a finer scale, or weigh it for all batches at once and divide it by weight.", Source: "chosen"}
	lateCoat = finding.Rule{Code: "concrete/late-coat", Severity: finding.Caution, Title: "every place gets its next coat within the window",
		Remedy: "Cool the mix and the shop, take a mix of longer windows, or work with more people in small sections.", Source: "gfrc-guides"}
	badClimate = finding.Rule{Code: "concrete/climate", Severity: finding.Caution, Title: "the history of temperatures can be used",
		Remedy: "Write temperatures in C, or with F beside them, one after the other in time."}
	shortClimate = finding.Rule{Code: "concrete/short-climate", Severity: finding.Note, Title: "the history of temperatures lasts a day",
		Remedy: "Go on logging until the form comes off."}
	tooCold = finding.Rule{Code: "concrete/too-cold", Severity: finding.Stop, Title: "the shop is warm enough to harden concrete",
		Remedy: "Warm the shop to at least 10 C and keep it there.", Source: "astm-c1074"}
	weak = finding.Rule{Code: "concrete/weak", Severity: finding.Caution, Title: "the concrete gets strong enough to strip and turn",
		Remedy: "Check the mix's strength, warm the shop, or plan more days; test a bar cast beside it.", Source: "aci-209"}
	crazing = finding.Rule{Code: "concrete/crazing", Severity: finding.Caution, Title: "a fresh face does not dry out",
		Remedy: "Stop fans and draughts, damp the air, cool the mix, cover every zone with film as soon as it is packed.", Source: "uno-1998"}
	sandWet = finding.Rule{Code: "concrete/wet-sand", Severity: finding.Stop, Title: "the sand brings no more water than the mix takes",
		Remedy: "Dry the sand, or check its moisture: it is a share of its dry mass."}
	saturated = finding.Rule{Code: "concrete/saturated", Severity: finding.Note, Title: "more pigment still colours more",
		Remedy: "Expect little more colour from more pigment; cast a sample.", Source: "memory"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noBox, noCoats, noThickness, noLayer, undercut, coarse, solid, thickness, tub, smallBatch,
		badAir, badPart, noParts, noCement, noDensity, noLimit, tooWet, tooDry, fibre, polymer, plasticiser, pigment,
		coatSum, badZone, pocket, workable, tubSmall, scaleStep, lateCoat, badClimate, shortClimate, tooCold, weak, crazing, sandWet, saturated}
}
