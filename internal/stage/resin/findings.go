package resin

import "pourwright/internal/finding"

var (
	noBasin = finding.Rule{Code: "resin/no-basin", Severity: finding.Caution, Title: "there is a basin to fill",
		Remedy: "Give the basin at least one step with depth and area."}
	badFill = finding.Rule{Code: "resin/bad-fill", Severity: finding.Stop, Title: "the basin's litres rise with its depth",
		Remedy: "Check the depths of the basin's steps."}
	noDensity = finding.Rule{Code: "resin/no-density", Severity: finding.Caution, Title: "the resin has a density",
		Remedy: "Take the mixed density from the data sheet."}
	noRatio = finding.Rule{Code: "resin/no-ratio", Severity: finding.Stop, Title: "the mixing ratio is known",
		Remedy: "Take the ratio from the data sheet and say whether it is by volume or by mass: a wrong ratio never cures.", Source: "practice"}
	swapped = finding.Rule{Code: "resin/ratio-swapped", Severity: finding.Caution, Title: "A is the resin, B the hardener",
		Remedy: "Check on both labels which part is which, and that the ratio is written A to B.", Source: "practice"}
	noParts = finding.Rule{Code: "resin/no-part-density", Severity: finding.Caution, Title: "parts A and B have densities",
		Remedy: "Take both densities from the data sheet: by volume and by mass differ by more than a tenth of the hardener."}
	blendOff = finding.Rule{Code: "resin/densities-clash", Severity: finding.Caution, Title: "mixed density and parts agree",
		Remedy: "Check the three densities on the data sheet: the ratio by weight hangs on them."}
	byVolume = finding.Rule{Code: "resin/ratio-by-volume", Severity: finding.Note, Title: "volume is not taken for weight",
		Remedy: "Weigh what the pour card says, not the ratio on the label."}
	noRange = finding.Rule{Code: "resin/no-range", Severity: finding.Caution, Title: "the depth of a lift is known",
		Remedy: "Take the least and greatest depth of one pour from the data sheet."}
	tooShallow = finding.Rule{Code: "resin/too-shallow", Severity: finding.Caution, Title: "the basin is deep enough for the resin",
		Remedy: "Choose a resin for thinner pours: a slow one stays soft in a shallow basin."}
	noSplit = finding.Rule{Code: "resin/no-split", Severity: finding.Caution, Title: "the depth splits into lifts",
		Remedy: "Choose a resin whose depth range fits, or change a step's depth."}
	onTerrace = finding.Rule{Code: "resin/ends-over-terrace", Severity: finding.Caution, Title: "no lift ends just above a terrace",
		Remedy: "Pour to the terrace itself and let the next lift cover it, or change a step's depth: a film of resin does not cure.", Source: "practice"}
	bucket = finding.Rule{Code: "resin/bucket", Severity: finding.Caution, Title: "the bucket suits the lift",
		Remedy: "Check the bucket's volume and its unit, or use a larger one."}
	potLife = finding.Rule{Code: "resin/pot-life", Severity: finding.Caution, Title: "a lift is poured within its pot life",
		Remedy: "Pour every bucket as soon as it is mixed, use larger buckets or a second pair of hands; a full bucket keeps for less time than a cup.", Source: "practice"}
	badRoom = finding.Rule{Code: "resin/room", Severity: finding.Caution, Title: "the room is warm enough and not too warm",
		Remedy: "Bring the room, the piece and the resin to the temperature of the data sheet before pouring, and hold it there.", Source: "practice"}
	shallow = finding.Rule{Code: "resin/shallow", Severity: finding.Caution, Title: "terraces are deep enough to cure",
		Remedy: "Expect it to stay soft for days there, keep the room warm, or make the step deeper.", Source: "practice"}
	thin = finding.Rule{Code: "resin/thin-on-terrace", Severity: finding.Note, Title: "a lift covers terraces well",
		Remedy: "Expect that place to be the last to gel: wait for it before the next lift.", Source: "practice"}
	slowPot = finding.Rule{Code: "resin/slow-pot", Severity: finding.Caution, Title: "degassing fits the pot life",
		Remedy: "Mix smaller buckets one after the other, use a larger pot, or let the mixed resin stand in place of the vacuum.", Source: "practice"}
	badTint = finding.Rule{Code: "resin/tint", Severity: finding.Caution, Title: "the tint is a colour and a share that cures",
		Remedy: "Give resin.tint a colour such as #1e5f74, the depth of the sample and a share of a few per cent at most.", Source: "practice"}
	outOfLevel = finding.Rule{Code: "resin/out-of-level", Severity: finding.Note, Title: "the basin stands level",
		Remedy: "Shim the low end before the first lift and check again with water or a level on the dam.", Source: "practice"}
	boiling = finding.Rule{Code: "resin/boils", Severity: finding.Stop, Title: "no lift boils",
		Remedy: "Pour thinner lifts and let each cool, or take a slower resin; never pour the whole depth at once.", Source: "practice"}
	tooHot = finding.Rule{Code: "resin/too-hot", Severity: finding.Caution, Title: "no lift passes its peak temperature",
		Remedy: "Pour thinner lifts, wait longer between them, cool the room, or take a slower resin.", Source: "practice"}
	mayRun = finding.Rule{Code: "resin/near-runaway", Severity: finding.Caution, Title: "the peak is sure to stay low",
		Remedy: "Keep room and resin at the planned temperature, measure the depth, and be there at the peak; a thinner lift takes the doubt away.", Source: "practice"}
	overInTen = finding.Rule{Code: "resin/may-pass-limit", Severity: finding.Caution, Title: "the peak stays under its limit in nine of ten cases",
		Remedy: "Keep the room no warmer than planned, measure the depth of every lift, or take one lift more.", Source: "practice"}
	noBand = finding.Rule{Code: "resin/no-band", Severity: finding.Caution, Title: "it is known how sure the peak is",
		Remedy: "Take the peak as a guess and pour thinner lifts than planned."}
	noRoom = finding.Rule{Code: "resin/no-other-room", Severity: finding.Note, Title: "the pours are known in other rooms",
		Remedy: "Keep the room as planned, or try it with room.temperature set."}
	widened = finding.Rule{Code: "resin/cells-widened", Severity: finding.Note, Title: "the basin fits into memory in fine cells",
		Remedy: "Take the band of the peak as wider by as much."}
	noOther = finding.Rule{Code: "resin/not-compared", Severity: finding.Note, Title: "other resins can be compared",
		Remedy: "Complete its card on the shelf, or take it out of resin.others."}
	unlikely = finding.Rule{Code: "resin/unlikely-cure", Severity: finding.Caution, Title: "the card's cure is one that resins have",
		Remedy: "Check rate, heat and glass transition on the card, or fit them from the data sheet with: pourwright shelf fit FILE."}
	rateClash = finding.Rule{Code: "resin/rate-and-pot-life", Severity: finding.Caution, Title: "rate and pot life tell of one resin",
		Remedy: "Fit the rate to the data sheet in hand with: pourwright shelf fit FILE. Until then peak and times are those of another resin."}
	hotBucket = finding.Rule{Code: "resin/bucket-keeps", Severity: finding.Caution, Title: "a bucket can be poured before it thickens",
		Remedy: "Mix smaller buckets, spread them out at once, and never leave one standing.", Source: "practice"}
	damHot = finding.Rule{Code: "resin/dam-too-hot", Severity: finding.Caution, Title: "the dam stays cool enough",
		Remedy: "Line the dam with silicone or sheet, not tape or bare edge banding, and let it cool before taking it off.", Source: "practice"}
	foamHot = finding.Rule{Code: "resin/foam-too-hot", Severity: finding.Caution, Title: "foam under the shell stays cool enough",
		Remedy: "Take the foam out before pouring, or pour thinner lifts: polystyrene shrinks away and the shell stands hollow.", Source: "practice"}
	staysSoft = finding.Rule{Code: "resin/stays-soft", Severity: finding.Note, Title: "shallow places harden with the rest",
		Remedy: "Leave it alone until then, keep the room warm, and test there before sanding; a covering of warmth helps more than more hardener.", Source: "practice"}
	scuff = finding.Rule{Code: "resin/scuff", Severity: finding.Note, Title: "lifts bond by themselves",
		Remedy: "Sand that surface dull with 120 grit when it is no longer tacky, wipe it with alcohol, then pour.", Source: "practice"}
	early = finding.Rule{Code: "resin/too-early", Severity: finding.Caution, Title: "a lift has gelled before the next comes",
		Remedy: "Pour it later: liquid under a new lift makes one deep, hot lift of the two.", Source: "practice"}
	coarse = finding.Rule{Code: "resin/coarse", Severity: finding.Note, Title: "the cure is computed finely enough",
		Remedy: "Take the band of the peak as wider by as much."}
	tooDeep = finding.Rule{Code: "resin/too-deep", Severity: finding.Caution, Title: "no lift is deeper than the resin's range",
		Remedy: "Split it: the data sheet's depth holds for a wider basin and a warmer day than the one computed, and a deeper pour voids it.", Source: "practice"}
	ownLifts = finding.Rule{Code: "resin/own-lifts", Severity: finding.Caution, Title: "the maker's lifts fill the basin",
		Remedy: "Make the depths under resin.lifts add up to the depth of the basin."}
	notSandable = finding.Rule{Code: "resin/not-sandable", Severity: finding.Note, Title: "the resin gets hard enough to sand dry in this room",
		Remedy: "Sand it wet, or warm the whole piece slowly and keep it warm before sanding; resin that is not warmed stays where the room lets it.", Source: "practice"}
	noCure = finding.Rule{Code: "resin/cure-not-computed", Severity: finding.Caution, Title: "the cure is known before pouring",
		Remedy: "Follow the resin's data sheet for depth and waiting time, make a test pour of the full depth, and keep the room at the stated temperature.", Source: "practice"}
)

// Rules lists the rules of this stage.
func Rules() []finding.Rule {
	return []finding.Rule{noBasin, badFill, noDensity, noRatio, swapped, noParts, blendOff, byVolume, noRange, tooShallow, noSplit,
		onTerrace, bucket, potLife, badRoom, shallow, thin, slowPot, badTint, outOfLevel,
		boiling, tooHot, overInTen, mayRun, noBand, noRoom, widened, noOther, unlikely, rateClash, hotBucket, damHot, foamHot, staysSoft, scuff, early, coarse, tooDeep, ownLifts, notSandable, noCure}
}
