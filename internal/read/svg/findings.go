package svg

import (
	"fmt"

	"pourwright/internal/finding"
)

// What a drawing can have about it that a maker should know.
var (
	ruleOpen      = finding.Rule{Code: "svg/open-path", Severity: finding.Caution, Title: "every line of an outline is closed", Remedy: "close the line in the drawing; until then it is not used"}
	ruleGapClosed = finding.Rule{Code: "svg/gap-closed", Severity: finding.Note, Title: "small gaps are closed", Remedy: "nothing to do; close the line in the drawing to be rid of this note"}
	ruleSelfCross = finding.Rule{Code: "svg/self-crossing", Severity: finding.Caution, Title: "a line does not cross itself", Remedy: "move the nodes apart at the place named; until then the fill rule decides what is inside"}
	ruleCross     = finding.Rule{Code: "svg/crossing-outlines", Severity: finding.Caution, Title: "outlines lie inside or beside one another", Remedy: "pull one outline clear of the other, or draw both as one"}
	ruleDuplicate = finding.Rule{Code: "svg/duplicate", Severity: finding.Note, Title: "an outline is drawn once", Remedy: "delete one of the two; only the first counts"}
	ruleSpeck     = finding.Rule{Code: "svg/speck", Severity: finding.Note, Title: "specks are dropped", Remedy: "delete the speck, or draw it larger if it is meant"}
	ruleZeroArea  = finding.Rule{Code: "svg/zero-area", Severity: finding.Caution, Title: "an outline encloses something", Remedy: "give the shape a width and a height, or delete it"}
	ruleFillRule  = finding.Rule{Code: "svg/fill-rule", Severity: finding.Caution, Title: "a ring inside a ring is a hole or not, plainly", Remedy: `set fill-rule="evenodd" on the element if the inner line is a hole, or draw the inner line as an element of its own`, Source: "w3c-svg2"}
	ruleNoClosed  = finding.Rule{Code: "svg/no-closed-outline", Severity: finding.Stop, Title: "the drawing holds a closed outline", Remedy: "draw at least one closed line, turn text into paths, and show hidden layers"}
	ruleScale     = finding.Rule{Code: "svg/scale-assumed", Severity: finding.Caution, Title: "the page has a size in real units", Remedy: `measure the longest outline against this; if it is wrong, give the page a width and height in mm, or state the resolution`, Source: "w3c-svg2"}
	ruleScaleBox  = finding.Rule{Code: "svg/scale-mismatch", Severity: finding.Stop, Title: "the page is the size of the piece", Remedy: "give the page the piece's length and width in mm, or state the resolution"}
	ruleViewBox   = finding.Rule{Code: "svg/view-box", Severity: finding.Stop, Title: "viewBox is four numbers, width and height above zero", Remedy: `write viewBox="0 0 WIDTH HEIGHT" with the page's own width and height`, Source: "w3c-svg2"}
	rulePageSize  = finding.Rule{Code: "svg/page-size", Severity: finding.Stop, Title: "width and height of the page can be used", Remedy: `write width and height as positive numbers with mm, cm, in, pt, pc, px or Q`, Source: "w3c-svg2"}
	ruleNoPage    = finding.Rule{Code: "svg/no-page", Severity: finding.Caution, Title: "the page has a size", Remedy: "give the svg element a width and a height in mm and a viewBox"}
	ruleOffPage   = finding.Rule{Code: "svg/off-page", Severity: finding.Caution, Title: "outlines lie on the page", Remedy: "move the outline onto the page or delete it"}
	ruleRange     = finding.Rule{Code: "svg/out-of-range", Severity: finding.Caution, Title: "coordinates are finite and under 100 m", Remedy: "correct the numbers or the transform; the element is left out"}
	rulePath      = finding.Rule{Code: "svg/path-error", Severity: finding.Caution, Title: "path data follow the grammar", Remedy: "correct the data there; the line is drawn up to that place and no further", Source: "w3c-svg2"}
	ruleLength    = finding.Rule{Code: "svg/length", Severity: finding.Caution, Title: "lengths are numbers with a known unit", Remedy: "write a number with mm, cm, in, pt, pc, px, Q, % or none; the element is left out"}
	ruleTransform = finding.Rule{Code: "svg/transform", Severity: finding.Caution, Title: "transforms can be read", Remedy: "write matrix, translate, scale, rotate, skewX or skewY with plain numbers; the element is left out", Source: "w3c-svg2"}
	ruleNegative  = finding.Rule{Code: "svg/negative-size", Severity: finding.Caution, Title: "sizes are not negative", Remedy: "write the size as a positive number; the element is left out", Source: "w3c-svg2"}
	ruleUse       = finding.Rule{Code: "svg/use-target", Severity: finding.Caution, Title: "what is used is in the same file", Remedy: "copy the shape into this file, or correct the reference"}
	ruleUseLoop   = finding.Rule{Code: "svg/use-loop", Severity: finding.Caution, Title: "no element uses itself", Remedy: "replace the use by the shape that is meant; it is left out"}
	ruleEntity    = finding.Rule{Code: "svg/entity", Severity: finding.Caution, Title: "nothing is hidden behind an entity", Remedy: "write the elements themselves in place of the reference; entities are never expanded"}
	ruleClipped   = finding.Rule{Code: "svg/clipped", Severity: finding.Caution, Title: "outlines are drawn whole", Remedy: "cut the outline itself to the shape that is meant; clipping and masks are ignored"}
	ruleIgnored   = finding.Rule{Code: "svg/ignored", Severity: finding.Note, Title: "only outlines are read", Remedy: "turn it into a path if it is meant as an outline"}
	ruleHidden    = finding.Rule{Code: "svg/hidden", Severity: finding.Note, Title: "hidden elements are not read", Remedy: "show the element or its layer if it is meant"}
	ruleUnseen    = finding.Rule{Code: "svg/unseen", Severity: finding.Note, Title: "outlines can be seen", Remedy: "give the element a fill or a stroke, or delete it; it is read like any other"}
	ruleStyle     = finding.Rule{Code: "svg/style", Severity: finding.Note, Title: "styles are simple", Remedy: "put the property on the element itself"}
	ruleSameID    = finding.Rule{Code: "svg/duplicate-id", Severity: finding.Caution, Title: "an id names one element", Remedy: "give each outline an id of its own", Source: "w3c-svg2"}
	ruleNoID      = finding.Rule{Code: "svg/no-id", Severity: finding.Note, Title: "outlines have ids", Remedy: "give the outlines ids of their own, so that the document can name them whatever is drawn before them"}
	ruleVertices  = finding.Rule{Code: "svg/many-vertices", Severity: finding.Note, Title: "outlines are not needlessly fine", Remedy: "simplify the outline in the drawing program if work gets slow"}
)

// What ends the reading of a drawing.
var (
	ruleTooLarge    = finding.Rule{Code: "svg/too-large", Severity: finding.Stop, Title: "the file is of a size that can be read", Remedy: "remove images and unused elements, or simplify the drawing"}
	ruleTooDeep     = finding.Rule{Code: "svg/too-deep", Severity: finding.Stop, Title: "elements are not nested without end", Remedy: "ungroup the drawing"}
	ruleTooMany     = finding.Rule{Code: "svg/too-many-elements", Severity: finding.Stop, Title: "the drawing is of a size that can be read", Remedy: "remove what is not an outline, and uses that multiply one another"}
	ruleTooFine     = finding.Rule{Code: "svg/too-many-vertices", Severity: finding.Stop, Title: "outlines have no more corners than can be worked", Remedy: "simplify the outlines, or allow a greater chord error"}
	ruleTooMuchWork = finding.Rule{Code: "svg/too-much-work", Severity: finding.Stop, Title: "style sheets end in reasonable time", Remedy: "put the properties on the elements and delete the style sheet"}
	ruleTangled     = finding.Rule{Code: "svg/tangled", Severity: finding.Stop, Title: "outlines do not cross without end", Remedy: "simplify the drawing: remove hatching and scribbles, and draw each outline once round"}
	ruleNotXML      = finding.Rule{Code: "svg/not-xml", Severity: finding.Stop, Title: "the file is whole and well formed", Remedy: "export the drawing again as plain SVG; the file is cut short or damaged at the place named"}
	ruleNotSVG      = finding.Rule{Code: "svg/not-svg", Severity: finding.Stop, Title: "the file is an SVG drawing", Remedy: "export the drawing as plain SVG and name that file"}
	ruleCompressed  = finding.Rule{Code: "svg/compressed", Severity: finding.Stop, Title: "the file is not compressed", Remedy: "unpack it (gunzip reads .svgz) or export it as plain, uncompressed SVG"}
	ruleEncoding    = finding.Rule{Code: "svg/encoding", Severity: finding.Stop, Title: "the file is text in UTF-8 or Latin-1", Remedy: "save the drawing with the encoding UTF-8"}
)

// Rules returns all rules of this package.
func Rules() []finding.Rule {
	return []finding.Rule{
		ruleOpen, ruleGapClosed, ruleSelfCross, ruleCross, ruleDuplicate, ruleSpeck, ruleZeroArea, ruleFillRule,
		ruleNoClosed, ruleScale, ruleScaleBox, ruleViewBox, rulePageSize, ruleNoPage, ruleOffPage, ruleRange, rulePath,
		ruleLength, ruleTransform, ruleNegative, ruleUse, ruleUseLoop, ruleEntity, ruleClipped, ruleIgnored, ruleHidden,
		ruleUnseen, ruleStyle, ruleSameID, ruleNoID, ruleVertices,
		ruleTooLarge, ruleTooDeep, ruleTooMany, ruleTooFine, ruleTooMuchWork, ruleTangled, ruleNotXML, ruleNotSVG, ruleCompressed, ruleEncoding,
	}
}

// An Error says why a drawing could not be read at all.
type Error struct {
	Rule  finding.Rule
	Where finding.Where
	Text  string
}

// Error returns the place and the reason.
func (e *Error) Error() string { return fmt.Sprintf("read drawing %s: %s", e.Where, e.Text) }

// Hint returns what to do.
func (e *Error) Hint() string { return e.Rule.Remedy }

// Finding returns e as a finding, for a plan that goes on without the drawing.
func (e *Error) Finding() finding.Finding { return e.Rule.At(e.Where, "%s", e.Text) }

// perRule is how many findings of one rule are told in full.
const perRule = 20

// A notebook gathers findings, so many of each rule.
type notebook struct {
	list  []finding.Finding
	count map[string]int
}

func (n *notebook) add(f finding.Finding) {
	if n.count == nil {
		n.count = map[string]int{}
	}
	if n.count[f.Code]++; n.count[f.Code] <= perRule {
		n.list = append(n.list, f)
	}
}

// all returns the findings in their order, with a last word for each rule that had
// more than were told.
func (n *notebook) all(file string) []finding.Finding {
	out := n.list
	if out == nil {
		out = []finding.Finding{}
	}
	for _, r := range Rules() {
		if more := n.count[r.Code] - perRule; more > 0 {
			out = append(out, r.At(finding.Where{File: file}, "%d more of the same kind are not listed", more))
		}
	}
	finding.Sort(out)
	return out
}
