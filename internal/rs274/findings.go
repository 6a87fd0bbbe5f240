package rs274

import "pourwright/internal/finding"

const standard = "rs274ngc"

var (
	tooLarge = finding.Rule{Code: "rs274/too-large", Severity: finding.Stop, Title: "the file is no larger than what is read",
		Remedy: "Split the program, or have it written with arcs and fewer lines."}
	badText = finding.Rule{Code: "rs274/text", Severity: finding.Stop, Title: "every line is made of words of a letter and a number",
		Remedy: "Correct the line: a letter and a plain number with a decimal point, comments in round brackets.", Source: standard}
	semicolon = finding.Rule{Code: "rs274/semicolon", Severity: finding.Caution, Title: "comments stand in brackets",
		Remedy: "Put the remark in round brackets: not every controller knows the semicolon.", Source: standard}
	longLine = finding.Rule{Code: "rs274/long-line", Severity: finding.Stop, Title: "no line has more than 256 characters",
		Remedy: "Break the line, or shorten its comment.", Source: standard}
	unknownWord = finding.Rule{Code: "rs274/unknown-word", Severity: finding.Stop, Title: "every word is one of the language",
		Remedy: "Look the word up in the manual of the machine the file was written for, and have the file written for RS-274 with straight moves and arcs.", Source: standard}
	notFollowed = finding.Rule{Code: "rs274/not-followed", Severity: finding.Stop, Title: "where the cutter goes can be read from the file alone",
		Remedy: "Have the file written without it: plain G0 to G3 in one coordinate system.", Source: standard}
	parameters = finding.Rule{Code: "rs274/parameters", Severity: finding.Stop, Title: "numbers are plain",
		Remedy: "Have the file written with plain numbers in place of parameters and expressions.", Source: standard}
	modalClash = finding.Rule{Code: "rs274/modal-group", Severity: finding.Stop, Title: "a line holds one word of each modal group",
		Remedy: "Put the two words on two lines, in the order in which they are meant.", Source: standard}
	repeated = finding.Rule{Code: "rs274/repeated-word", Severity: finding.Stop, Title: "a line holds one word of each letter but G and M",
		Remedy: "Take one of the two out.", Source: standard}
	unused = finding.Rule{Code: "rs274/unused-word", Severity: finding.Stop, Title: "every word has another that uses it",
		Remedy: "Take the word out, or add the G word that it belongs to.", Source: standard}
	noMotion = finding.Rule{Code: "rs274/motion", Severity: finding.Stop, Title: "axis words have a motion word and motion words have axis words",
		Remedy: "Write G0, G1, G2 or G3 with the axes that move.", Source: standard}
	noFeed = finding.Rule{Code: "rs274/feed", Severity: finding.Stop, Title: "a feed is stated before the first cut",
		Remedy: "Write an F word before the first G1, G2 or G3; with G93, on every one of them.", Source: standard}
	badArc = finding.Rule{Code: "rs274/arc", Severity: finding.Stop, Title: "an arc's end lies on its circle",
		Remedy: "Have the arc written in centre format with four decimals or more.", Source: standard}
	badValue = finding.Rule{Code: "rs274/value", Severity: finding.Stop, Title: "every number is one its word can have",
		Remedy: "Correct the number.", Source: standard}
	unstated = finding.Rule{Code: "rs274/unstated", Severity: finding.Caution, Title: "a program states its modes before it moves",
		Remedy: "Write G17 G21 (or G20) G90 G94 G40 G49 G54 G80 at the start: else the machine keeps what the last program left.", Source: standard}
	unknownPlace = finding.Rule{Code: "rs274/unknown-place", Severity: finding.Caution, Title: "the height is stated before the first move sideways",
		Remedy: "Begin with G0 and a safe Z.", Source: standard}
	unitsChange = finding.Rule{Code: "rs274/units-change", Severity: finding.Caution, Title: "units stay the same",
		Remedy: "State the units once at the start, and every F after it.", Source: standard}
	blockDelete = finding.Rule{Code: "rs274/block-delete", Severity: finding.Caution, Title: "no line hangs on a switch at the machine",
		Remedy: "Take the slash out, or the line; it was read as if the switch were off.", Source: standard}
	badEnd = finding.Rule{Code: "rs274/end", Severity: finding.Stop, Title: "a program ends by M2, M30 or a second percent line",
		Remedy: "Write M2 as the last line: the file may be cut short.", Source: standard}
	afterEnd = finding.Rule{Code: "rs274/after-end", Severity: finding.Caution, Title: "nothing stands behind the end",
		Remedy: "Take it out: the machine never gets there.", Source: standard}
	more = finding.Rule{Code: "rs274/more", Severity: finding.Note, Title: "every fault is shown",
		Remedy: "Settle the first ones and read the file again."}
)

// Rules lists what this room can find.
func Rules() []finding.Rule {
	return []finding.Rule{tooLarge, badText, semicolon, longLine, unknownWord, notFollowed, parameters, modalClash, repeated,
		unused, noMotion, noFeed, badArc, badValue, unstated, unknownPlace, unitsChange, blockDelete, badEnd, afterEnd, lowRapid, more}
}
