package resin

import "pourwright/internal/finding"

var (
	noBasin = finding.Rule{Code: "resin/no-basin", Severity: finding.Caution, Title: "there is a basin to fill",
		Remedy: "Give the basin at least one step with depth and area."}
	noDensity = finding.Rule{Code: "resin/no-density", Severity: finding.Caution, Title: "the resin has a density",
		Remedy: "Take the mixed density from the data sheet."}
	noRatio = finding.Rule{Code: "resin/no-ratio", Severity: finding.Stop, Title: "the mixing ratio is known",
		Remedy: "Take the ratio from the data sheet and say whether it is by volume or by mass: a wrong ratio never cures.", Source: "practice"}
	noParts = finding.Rule{Code: "resin/no-part-density", Severity: finding.Caution, Title: "parts A and B have densities",
		Remedy: "Take both densities from the data sheet: by volume and by mass differ by more than a tenth of the hardener."}
	noRange = finding.Rule{Code: "resin/no-range", Severity: finding.Caution, Title: "the depth of a lift is known",
		Remedy: "Take the greatest depth of one pour from the data sheet."}
	tooShallow = finding.Rule{Code: "resin/too-shallow", Severity: finding.Caution, Title: "the basin is deep enough for the resin",
		Remedy: "Choose a resin for thinner pours: a slow one stays soft in a shallow basin."}
	noSplit = finding.Rule{Code: "resin/no-split", Severity: finding.Caution, Title: "the depth splits into lifts",
		Remedy: "Choose a resin whose depth range fits, or change a step's depth."}
	bucket = finding.Rule{Code: "resin/bucket", Severity: finding.Caution, Title: "the bucket suits the lift",
		Remedy: "Check the bucket's volume and its unit, or use a larger one."}
	shallow = finding.Rule{Code: "resin/shallow", Severity: finding.Caution, Title: "terraces are deep enough to cure",
		Remedy: "Expect it to stay soft for days there, keep the room warm, or make the step deeper.", Source: "practice"}
	noCure = finding.Rule{Code: "resin/cure-not-computed", Severity: finding.Caution, Title: "the cure is known before pouring",
		Remedy: "Follow the resin's data sheet for depth and waiting time, make a test pour of the full depth, and keep the room at the stated temperature.", Source: "practice"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noBasin, noDensity, noRatio, noParts, noRange, tooShallow, noSplit, bucket, shallow, noCure}
}
