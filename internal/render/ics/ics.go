// Package ics writes the steps of a plan as an iCalendar file, RFC 5545, so that they
// stand in the calendar of a phone.
//
// Times are floating (RFC 5545 section 3.3.5, form 1): the shop's own wall time, whatever
// zone the reader is in, as the plan reckons. A day off or a change of the clocks in the
// reader's zone moves nothing. The time stamp of all entries is midnight UTC of the
// document's start and not the clock's, so that the same plan gives the same bytes. The
// identity of an entry comes from the piece's name and the step's id, and stays when the
// plan is computed again: a reader that imports the file a second time moves its entries.
package ics

import (
	"crypto/sha256"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/units"
)

// Dated reports whether there is anything to write: a plan without a start has no dates.
func Dated(p *plan.Plan) bool {
	_, err := time.Parse(time.DateOnly, p.Piece.Date)
	return err == nil && p.Calendar.Finish != ""
}

// Render writes all steps that have times. The error is w's, or that the plan has no
// dates.
func Render(w io.Writer, p *plan.Plan) error {
	if !Dated(p) {
		return fmt.Errorf("write calendar: the plan has no dates")
	}
	day1, _ := time.Parse(time.DateOnly, p.Piece.Date)
	f := file{day1: day1, piece: p.Piece.Name}
	f.line("BEGIN:VCALENDAR")
	f.line("VERSION:2.0")
	f.line("PRODID:-//pourwright//steps of a piece//EN")
	f.line("CALSCALE:GREGORIAN")
	for _, s := range p.Calendar.Steps {
		if s.Start != "" {
			f.event(s)
		}
	}
	f.line("END:VCALENDAR")
	_, err := io.WriteString(w, f.text.String())
	return err
}

// A file grows line by line.
type file struct {
	text  strings.Builder
	day1  time.Time
	piece string
}

func (f *file) event(s calendar.Step) {
	sum := sha256.Sum256([]byte(f.piece + "\x00" + s.ID))
	f.line("BEGIN:VEVENT")
	f.line(fmt.Sprintf("UID:%x@pourwright", sum[:16]))
	f.line("DTSTAMP:" + f.day1.Format(stamp) + "Z")
	f.line("DTSTART:" + f.at(s.StartH))
	if s.EndH > s.StartH {
		f.line("DTEND:" + f.at(s.EndH))
	}
	f.line("SUMMARY:" + escaped(s.Title))
	f.line("DESCRIPTION:" + escaped(strings.Join(f.about(s), "\n")))
	f.line("CATEGORIES:" + escaped(s.Room))
	f.line("END:VEVENT")
}

// about says what stands below the title.
func (f *file) about(s calendar.Step) []string {
	out := []string{fmt.Sprintf("%s, step %d", f.piece, s.Number)}
	if len(s.Who) > 0 {
		out = append(out, "Who: "+strings.Join(s.Who, ", "))
	}
	if s.OffHours {
		out = append(out, "Outside the hours: somebody has to be there.")
	}
	if s.Wait > 0 {
		out = append(out, strings.TrimSuffix("Then wait "+units.FormatDuration(s.Wait)+": "+s.WaitFor, ": "))
	}
	if s.Latest > 0 {
		out = append(out, "The next step starts within "+units.FormatDuration(s.Latest)+".")
	}
	return append(out, s.Cautions...)
}

const stamp = "20060102T150405"

// at writes hours after midnight of day 1, to the minute.
func (f *file) at(h units.Duration) string {
	return f.day1.Add(time.Duration(float64(h)*60+0.5) * time.Minute).Format(stamp)
}

// longestLine is in octets, without the line's end. Source: RFC 5545 section 3.1.
const longestLine = 75

// line writes a line, folded where it is too long, never inside a character.
func (f *file) line(s string) {
	room := longestLine
	for len(s) > room {
		cut := room
		for !utf8.RuneStart(s[cut]) {
			cut--
		}
		f.text.WriteString(s[:cut] + "\r\n ")
		s, room = s[cut:], longestLine-1
	}
	f.text.WriteString(s + "\r\n")
}

// escaped writes text as a value, RFC 5545 section 3.3.11: without control characters.
func escaped(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' {
			return -1
		}
		return r
	}, s)
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`).Replace(s)
}
