package typed

import "pourwright/internal/finding"

var (
	notYAML = finding.Rule{Code: "document/syntax", Severity: finding.Stop,
		Title: "the file is YAML", Remedy: "correct the line; fields of one group start in the same column, with spaces, not tabs"}
	tooLarge = finding.Rule{Code: "document/too-large", Severity: finding.Stop,
		Title: "the file keeps within limits", Remedy: "a document is a page or two; check that this is the right file"}
	notPlain = finding.Rule{Code: "document/not-plain", Severity: finding.Stop,
		Title: "the file is plain YAML", Remedy: "write the value out where it is used"}
	unknownField = finding.Rule{Code: "document/unknown-field", Severity: finding.Stop,
		Title: "every field is known", Remedy: "remove the field or correct its name"}
	repeatedField = finding.Rule{Code: "document/repeated-field", Severity: finding.Stop,
		Title: "no field stands twice", Remedy: "keep one of the two"}
	wrongShape = finding.Rule{Code: "document/shape", Severity: finding.Stop,
		Title: "every field holds what it should", Remedy: "write it as in the examples"}
)

// Rules lists what the reader of documents may say.
func Rules() []finding.Rule {
	return []finding.Rule{notYAML, tooLarge, notPlain, unknownField, repeatedField, wrongShape}
}
