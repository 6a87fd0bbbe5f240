package heightmap

import "pourwright/internal/finding"

var (
	stretched = finding.Rule{
		Code: "heightmap/stretched", Severity: finding.Note,
		Title:  "the map keeps its proportions",
		Remedy: "Give only the length, and the width follows.",
	}
	notGrey = finding.Rule{
		Code: "heightmap/not-grey", Severity: finding.Note,
		Title:  "the picture is grey",
		Remedy: "Save it as grey, 16 bit if the program can.",
		Source: "itu-bt601",
	}
	seeThrough = finding.Rule{
		Code: "heightmap/see-through", Severity: finding.Caution,
		Title:  "every pixel has a height",
		Remedy: "Fill the clear parts with the grey they should have.",
	}
	flat = finding.Rule{
		Code: "heightmap/flat", Severity: finding.Stop,
		Title:  "the map holds a relief",
		Remedy: "Check that the right file is named.",
	}
	rescaled = finding.Rule{
		Code: "heightmap/rescaled", Severity: finding.Note,
		Title:  "the map's own depth is the stated one",
		Remedy: "Leave the depth out to keep the file's own.",
	}
	resized = finding.Rule{
		Code: "heightmap/resized", Severity: finding.Caution,
		Title:  "the map's own size is the stated one",
		Remedy: "Leave length and width out to keep the file's own cell size.",
	}
	signs = finding.Rule{
		Code: "heightmap/signs", Severity: finding.Note,
		Title:  "values are depths below the show face",
		Remedy: "Write \"values: height\" above the rows if they are heights.",
	}
	aboveFace = finding.Rule{
		Code: "heightmap/above-face", Severity: finding.Caution,
		Title:  "nothing stands above the show face",
		Remedy: "Write \"values: height\" above the rows if they are heights, or raise the face.",
	}
	missing = finding.Rule{
		Code: "heightmap/missing", Severity: finding.Caution,
		Title:  "every node has a value",
		Remedy: "Fill the gaps in the map.",
	}
	tooDeep = finding.Rule{
		Code: "heightmap/too-deep", Severity: finding.Caution,
		Title:  "the steps reach the map's depth",
		Remedy: "Add a step, make steps thicker, or make the map shallower.",
	}
	emptyStep = finding.Rule{
		Code: "heightmap/empty-step", Severity: finding.Caution,
		Title:  "every step holds something",
		Remedy: "Leave the step out, or make the map deeper.",
	}
	speck = finding.Rule{
		Code: "heightmap/speck", Severity: finding.Note,
		Title:  "spots are large enough to make",
		Remedy: "Lower the speck area to keep them.",
	}
	volume = finding.Rule{
		Code: "heightmap/volume", Severity: finding.Note,
		Title:  "the steps keep the map's volume",
		Remedy: "Use more and thinner steps, a smaller cutter or a smaller speck area to come nearer.",
	}
	badStep = finding.Rule{
		Code: "heightmap/step", Severity: finding.Stop,
		Title:  "steps have a thickness",
		Remedy: "Give every step a positive depth.",
	}
)

// Rules lists the findings of this reader.
func Rules() []finding.Rule {
	return []finding.Rule{stretched, notGrey, seeThrough, flat, rescaled, resized, signs, aboveFace, missing, tooDeep, emptyStep, speck, volume, badStep}
}
