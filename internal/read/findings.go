package read

import "pourwright/internal/finding"

var (
	noDrawing = finding.Rule{Code: "read/no-drawing", Severity: finding.Stop,
		Title: "the drawing can be read", Remedy: "Put the file beside the document, or correct its name under basin."}
	unknownOutline = finding.Rule{Code: "read/unknown-outline", Severity: finding.Stop,
		Title: "each step names outlines of the drawing", Remedy: "Use an id of the drawing: the inspect command lists them."}
	emptyOutline = finding.Rule{Code: "read/no-area", Severity: finding.Stop,
		Title: "each step encloses an area", Remedy: "Close the outline in the drawing."}
	unusedOutline = finding.Rule{Code: "read/unused-outline", Severity: finding.Note,
		Title: "outlines no step names", Remedy: "Name it in a step, or leave it if it is only a guide line."}
	noSteps = finding.Rule{Code: "read/no-steps", Severity: finding.Stop,
		Title: "the basin has steps", Remedy: "Write at least one step with an outline and a depth under basin.steps."}
	pageSize = finding.Rule{Code: "read/page-size", Severity: finding.Caution,
		Title: "the drawing's page is the outer box", Remedy: "Make the page as large as the box, or place the drawing with basin.place: centre or [x, y]."}
)

// Rules lists the rules of opening a piece.
func Rules() []finding.Rule {
	return []finding.Rule{noDrawing, unknownOutline, emptyOutline, unusedOutline, noSteps, pageSize}
}
