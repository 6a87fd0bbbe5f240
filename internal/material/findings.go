package material

import "pourwright/internal/finding"

var (
	badValue = finding.Rule{Code: "shelf/value", Severity: finding.Stop,
		Title: "every value of a card can be read", Remedy: "write a number with its unit"}
	absurdValue = finding.Rule{Code: "shelf/absurd", Severity: finding.Stop,
		Title: "every value of a card is possible", Remedy: "check the number and its unit"}
	badRange = finding.Rule{Code: "shelf/range", Severity: finding.Stop,
		Title: "every value lies in its usual range", Remedy: "write range: [low, high] around the value"}
	noOrigin = finding.Rule{Code: "shelf/origin", Severity: finding.Stop,
		Title: "every value says how it came to be known", Remedy: "write origin: measured, data sheet or typical, for the value, its card or the whole file"}
	noSource = finding.Rule{Code: "shelf/source", Severity: finding.Stop,
		Title: "every typical value names its source", Remedy: "write source: with a key of the register, or \"practice\", \"memory\" or \"chosen\""}
	missingValue = finding.Rule{Code: "shelf/missing", Severity: finding.Stop,
		Title: "every card is whole", Remedy: "write the value, or begin the card with like: and the name of a similar one"}
	unknownWord = finding.Rule{Code: "shelf/word", Severity: finding.Stop,
		Title: "every choice is one of its words", Remedy: "write one of the words"}
)

// Rules lists what may be said of a shelf.
func Rules() []finding.Rule {
	return []finding.Rule{badValue, absurdValue, badRange, noOrigin, noSource, missingValue, unknownWord}
}
