package rs274

import (
	"fmt"
	"strings"

	"pourwright/internal/finding"
)

// A reader goes through a file.
type reader struct {
	name    string
	line    int
	state   state
	program Program
	found   []finding.Finding
	hidden  int
	lost    bool // a line was left out since X and Y were last stated together
}

// say reports something of the line at work.
func (r *reader) say(rule finding.Rule, column int, format string, args ...any) {
	r.report(&fault{rule: rule, column: column, text: fmt.Sprintf(format, args...)})
}

func (r *reader) report(f *fault) {
	if len(r.found) >= MaxFindings {
		r.hidden++
		return
	}
	out := f.rule.At(finding.Where{File: r.name, Line: r.line, Column: f.column}, "%s", f.text)
	if f.remedy != "" {
		out = out.Do("%s", f.remedy)
	}
	r.found = append(r.found, out)
}

// file reads the whole text.
func (r *reader) file(text string) {
	r.state = state{motion: none, coords: 540}
	if len(text) > MaxBytes {
		r.say(tooLarge, 0, "The file has %d MiB; at most %d MiB are read.", len(text)>>20, MaxBytes>>20)
		r.program.Refused++
		return
	}
	text = strings.TrimPrefix(text, "\ufeff")
	r.program.Moves = make([]Move, 0, min(strings.Count(text, "\n"), MaxLines))
	percent, begun := 0, false
	for text != "" {
		var one string
		one, text, _ = strings.Cut(text, "\n")
		if r.line++; r.line > MaxLines {
			r.say(tooLarge, 0, "The file has more than %d lines; what follows is not read.", MaxLines)
			r.program.Refused++
			break
		}
		trimmed := strings.TrimSpace(one)
		if trimmed == "%" && (!begun || percent == 1) {
			begun = true
			if percent++; percent == 2 {
				break
			}
			continue
		}
		begun = begun || trimmed != ""
		r.one(one)
		if r.program.Ended {
			break
		}
	}
	r.end(percent, text)
}

// one reads one line.
func (r *reader) one(text string) {
	l, f := parse(text)
	var b *block
	if f == nil {
		b, f = sortWords(l.words)
	}
	if f == nil {
		r.remarks(l)
		f = r.run(b)
	}
	if f == nil {
		return
	}
	r.program.Refused++
	if !r.lost || f.rule.Code != badArc.Code { // from an unknown place no arc can be judged
		r.report(f)
	}
	r.lost = true
}

// mostComments are kept of a file.
const mostComments = 200

func (r *reader) remarks(l line) {
	if l.deleted {
		r.say(blockDelete, 1, "The line begins with a slash: a switch at the machine decides whether it is run.")
	}
	if l.semicolon && r.program.semicolons == 0 {
		r.say(semicolon, 0, "A remark stands behind a semicolon; this is the first such line.")
	}
	if l.semicolon {
		r.program.semicolons++
	}
	if l.comment != "" && len(r.program.Comments) < mostComments {
		r.program.Comments = append(r.program.Comments, TextLine{r.line, l.comment})
	}
}

// end closes the account of a file; rest is what stands behind its end.
func (r *reader) end(percent int, rest string) {
	p := &r.program
	p.Lines = r.line
	if percent == 2 {
		p.Ended = true
	}
	switch rest = strings.TrimSpace(rest); {
	case percent == 1 && rest != "%" && !(p.Ended && strings.HasPrefix(rest, "%")):
		r.say(badEnd, 0, "The file begins with a percent line and has no second one at its end.")
	case percent != 1 && !p.Ended:
		r.say(badEnd, 0, "The file ends without M2, M30 or a percent line.")
	case rest != "" && rest != "%":
		r.say(afterEnd, 0, "There is more text behind the program's end.")
	}
	if r.hidden > 0 {
		r.found = append(r.found, more.At(finding.Where{File: r.name}, "%d more findings of this file are not shown.", r.hidden))
	}
}
