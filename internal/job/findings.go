package job

import "pourwright/internal/finding"

// The rules of a document. Those of package typed and of the shelf come before.
var (
	missing = finding.Rule{Code: "document/missing", Severity: finding.Stop,
		Title: "what must be given is given", Remedy: "write the field"}
	unreadable = finding.Rule{Code: "document/unreadable", Severity: finding.Stop,
		Title: "every measure can be read", Remedy: "write a number with its unit"}
	notPositive = finding.Rule{Code: "document/not-positive", Severity: finding.Stop,
		Title: "sizes are above zero", Remedy: "write a size above zero"}
	wrongUnit = finding.Rule{Code: "document/wrong-unit", Severity: finding.Stop,
		Title: "sizes are of a likely order", Remedy: "write the unit beside the number"}
	unusual = finding.Rule{Code: "document/unusual", Severity: finding.Caution,
		Title: "values are usual", Remedy: "check the value"}
	unknownWord = finding.Rule{Code: "document/word", Severity: finding.Stop,
		Title: "every choice is one of its words", Remedy: "write one of the words"}
	notOnShelf = finding.Rule{Code: "document/not-on-shelf", Severity: finding.Stop,
		Title: "every material is on the shelf", Remedy: "write a name of the shelf, or add the card under materials"}
	newerForm = finding.Rule{Code: "document/form", Severity: finding.Stop,
		Title: "the document has a form this program reads", Remedy: "write pourwright: 1"}
	shellTooThick = finding.Rule{Code: "document/shell-too-thick", Severity: finding.Stop,
		Title: "the shell fits into the box", Remedy: "make the shell thinner or the box larger; 16 to 25 mm is usual", Source: "gfrc-guides"}
	coatSum = finding.Rule{Code: "document/coat-sum", Severity: finding.Stop,
		Title: "the coats add up to the shell", Remedy: "change the coats or the thickness, or leave the thickness out"}
	coatMix = finding.Rule{Code: "document/coat-mix", Severity: finding.Caution,
		Title: "each coat has a mix made for it", Remedy: "use a face mix for the first coat and a backer for the others", Source: "gfrc-guides"}
	basinTooDeep = finding.Rule{Code: "document/basin-too-deep", Severity: finding.Stop,
		Title: "the basin is less deep than the piece less its shell", Remedy: "make the basin shallower or the piece higher"}
	basinSource = finding.Rule{Code: "document/basin-source", Severity: finding.Stop,
		Title: "the basin comes from one file", Remedy: "write drawing: with an SVG file, or height_map: with a PNG or a text grid"}
	stepOutline = finding.Rule{Code: "document/step-outline", Severity: finding.Stop,
		Title: "every step names its outline", Remedy: "write outline: with the id of a closed outline in the drawing"}
	ratioDoubt = finding.Rule{Code: "document/ratio", Severity: finding.Stop,
		Title: "the ratio is the resin's", Remedy: "copy the ratio from the data sheet: ratio: by volume, ratio_mass: by mass"}
	resinDepth = finding.Rule{Code: "document/resin-depth", Severity: finding.Stop,
		Title: "the resin can be poured at this depth", Remedy: "choose a resin whose range holds the depth"}
	resinLifts = finding.Rule{Code: "document/resin-lifts", Severity: finding.Caution,
		Title: "the resin suits the depth", Remedy: "choose a resin made for deeper lifts"}
	measuredFar = finding.Rule{Code: "document/measured-far", Severity: finding.Caution,
		Title: "caliper and label agree", Remedy: "measure again at three places; the measured value is used"}
	sheetSmall = finding.Rule{Code: "document/sheet-small", Severity: finding.Caution,
		Title: "the largest part fits on a sheet", Remedy: "choose a larger sheet, or plan a joint"}
	badShare = finding.Rule{Code: "document/share", Severity: finding.Stop,
		Title: "shares lie between nothing and all", Remedy: "write a share such as 30 % or 0.3"}
	badDate = finding.Rule{Code: "document/date", Severity: finding.Stop,
		Title: "the start is a day", Remedy: "write the day as YYYY-MM-DD, for example 2027-03-01"}
	badHours = finding.Rule{Code: "document/hours", Severity: finding.Stop,
		Title: "opening hours go forward and do not overlap", Remedy: "write hours as 8:00-17:00, [8:00-12:00, 13:00-17:00] or closed"}
	badDayOff = finding.Rule{Code: "document/day-off", Severity: finding.Stop,
		Title: "days off are days", Remedy: "write a day as 2027-03-08, or several as 2027-03-08 to 2027-03-12"}
	tooMany = finding.Rule{Code: "document/people", Severity: finding.Caution,
		Title: "the shop is a few people", Remedy: "list those who work on this piece"}
	sameName = finding.Rule{Code: "document/same-name", Severity: finding.Caution,
		Title: "people can be told apart", Remedy: "call one of them something else"}
)

// Rules lists what may be said of a document.
func Rules() []finding.Rule {
	return []finding.Rule{missing, unreadable, notPositive, wrongUnit, unusual, unknownWord, notOnShelf, newerForm, shellTooThick, coatSum, coatMix,
		basinTooDeep, basinSource, stepOutline, ratioDoubt, resinDepth, resinLifts, measuredFar, sheetSmall, badShare, badDate, badHours, badDayOff, tooMany, sameName,
		roomTwice, LogUnread, LogFahrenheit, LogGap, LogOrder}
}
