package ics

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ical "github.com/emersion/go-ical"
	"pgregory.net/rapid"

	"pourwright/internal/plan"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/units"
)

func casting() *plan.Plan {
	p := &plan.Plan{Piece: plan.Piece{Name: "Bench; \"low\", \\ two\nlines", Date: "2027-03-27"}}
	r, _ := calendar.Compute(calendar.Input{Start: p.Piece.Date, Hours: [7][]calendar.Span{{{From: 8, To: 17}}, {{From: 8, To: 17}}, 5: {{From: 8, To: 17}}}, Tasks: []calendar.Task{
		{ID: "coat-1", Title: "Cast the face, äöü; " + strings.Repeat("nâive ", 30), Room: "concrete", Work: 1.25, Wait: 40, WaitFor: "coat, to firm", Latest: 60, Cautions: []string{"Caustic: gloves.\x07", "Dust; mask."}},
		{ID: "next", Title: "Next", Room: "concrete", Work: 10, After: []string{"coat-1"}},
		{ID: "mark", Title: "Marked", Room: "form", After: []string{"next"}},
	}})
	p.Calendar = r
	return p
}

func render(t testing.TB, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	if err := Render(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// events reads text with a reader of another hand.
func events(t testing.TB, text string) []ical.Event {
	t.Helper()
	cal, err := ical.NewDecoder(strings.NewReader(text)).Decode()
	if err != nil {
		t.Fatalf("does not read back: %v\n%s", err, text)
	}
	// The reader's own writer refuses what lacks a required property.
	if err := ical.NewEncoder(new(bytes.Buffer)).Encode(cal); err != nil {
		t.Fatalf("not valid: %v", err)
	}
	return cal.Events()
}

func property(e ical.Event, name string) string {
	text, err := e.Props.Text(name)
	if err != nil {
		return err.Error()
	}
	return text
}

func TestAnotherReaderReadsTheSteps(t *testing.T) {
	p := casting()
	es := events(t, render(t, p))
	if len(es) != len(p.Calendar.Steps) {
		t.Fatalf("%d entries of %d steps", len(es), len(p.Calendar.Steps))
	}
	newYork, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Skip("no zones on this machine:", err)
	}
	for i, s := range p.Calendar.Steps {
		e := es[i]
		if got := property(e, ical.PropSummary); got != s.Title {
			t.Errorf("summary %q, want %q", got, s.Title)
		}
		for _, zone := range []*time.Location{time.UTC, newYork} { // floating: the same clock everywhere
			start, err := e.DateTimeStart(zone)
			if err != nil || start.Format("Mon 2006-01-02 15:04") != s.Start {
				t.Errorf("starts %v (%v), want %s", start, err, s.Start)
			}
			end, err := e.DateTimeEnd(zone)
			if err != nil || end.Format("Mon 2006-01-02 15:04") != s.End {
				t.Errorf("ends %v (%v), want %s", end, err, s.End)
			}
		}
		if stamp, err := e.Props.DateTime(ical.PropDateTimeStamp, time.Local); err != nil || !stamp.Equal(time.Date(2027, 3, 27, 0, 0, 0, 0, time.UTC)) {
			t.Errorf("stamped %v, %v", stamp, err)
		}
	}
	about := property(es[0], ical.PropDescription)
	for _, want := range []string{"Bench; \"low\", \\ two\nlines, step 1\n", "Who: maker", "Then wait 40 h: coat, to firm", "within 2 d 12 h", "Caustic: gloves.\nDust; mask."} {
		if !strings.Contains(about, want) {
			t.Errorf("description %q lacks %q", about, want)
		}
	}
}

func TestIdentityStays(t *testing.T) {
	uids := func(p *plan.Plan) (out []string) {
		for _, e := range events(t, render(t, p)) {
			out = append(out, property(e, ical.PropUID))
		}
		return out
	}
	p := casting()
	before := uids(p)
	p.Calendar.Steps[1].StartH += 24
	p.Calendar.Steps = append([]calendar.Step{{ID: "new", Number: 1, Title: "New", Room: "form", Start: "x", StartH: 8, EndH: 9}}, p.Calendar.Steps...)
	after := uids(p)
	if !slices.Equal(before, after[1:]) {
		t.Errorf("identities %v became %v", before, after[1:])
	}
	slices.Sort(after)
	if len(slices.Compact(after)) != 4 {
		t.Error("two entries of one identity")
	}
	p.Piece.Name = "Another"
	if slices.Contains(before, uids(p)[1]) {
		t.Error("two pieces share an identity")
	}
}

// checkLines holds every line to RFC 5545 section 3.1: at most 75 octets before CRLF, no
// bare line ends, whole characters.
func checkLines(t testing.TB, text string) {
	t.Helper()
	for _, line := range strings.SplitAfter(text, "\r\n") {
		body := strings.TrimSuffix(line, "\r\n")
		if len(body) > 75 || strings.ContainsAny(body, "\r\n\x00\x07") || !utf8.ValidString(body) || line != "" && body == line {
			t.Fatalf("line of %d octets: %q", len(body), line)
		}
	}
}

func TestLinesAreFolded(t *testing.T) { checkLines(t, render(t, casting())) }

func TestAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		title := rapid.String().Draw(t, "title")
		p := &plan.Plan{Piece: plan.Piece{Name: rapid.String().Draw(t, "piece"), Date: "2027-03-01"}}
		p.Calendar = calendar.Result{Finish: "x", Steps: []calendar.Step{{ID: "a", Title: title, Start: "x", StartH: units.Duration(rapid.Float64Range(0, 1e5).Draw(t, "start"))}}}
		p.Calendar.Steps[0].EndH = p.Calendar.Steps[0].StartH + 1
		var b bytes.Buffer
		if err := Render(&b, p); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.SplitAfter(b.String(), "\r\n") {
			if len(strings.TrimSuffix(line, "\r\n")) > 75 || !utf8.ValidString(line) {
				t.Fatalf("line %q", line)
			}
		}
		cal, err := ical.NewDecoder(&b).Decode()
		if err != nil {
			t.Fatal(err)
		}
		want := strings.Map(func(r rune) rune {
			if r < 0x20 && r != '\n' || r >= 0x7f && r < 0xa0 {
				return -1
			}
			return r
		}, title)
		if got := property(cal.Events()[0], ical.PropSummary); got != want {
			t.Fatalf("summary %q, want %q", got, want)
		}
	})
}

func TestNoDatesNoFile(t *testing.T) {
	p := casting()
	p.Piece.Date = ""
	var b bytes.Buffer
	if err := Render(&b, p); err == nil || b.Len() > 0 || Dated(p) {
		t.Errorf("wrote %q, %v", b.String(), err)
	}
}

func TestSameBytes(t *testing.T) {
	if a, b := render(t, casting()), render(t, casting()); a != b {
		t.Error("two renderings differ")
	}
}

func ExampleRender() {
	p := &plan.Plan{Piece: plan.Piece{Name: "Tray", Date: "2027-03-01"}}
	p.Calendar = calendar.Result{Finish: "Mon 2027-03-01 09:00", Steps: []calendar.Step{{Number: 1, ID: "cut", Title: "Cut 5 form panels", Room: "form", Who: []string{"maker"}, Start: "Mon 2027-03-01 08:00", StartH: 8, EndH: 9}}}
	var b strings.Builder
	_ = Render(&b, p)
	fmt.Print(strings.ReplaceAll(b.String(), "\r\n", "\n"))
	// Output:
	// BEGIN:VCALENDAR
	// VERSION:2.0
	// PRODID:-//pourwright//steps of a piece//EN
	// CALSCALE:GREGORIAN
	// BEGIN:VEVENT
	// UID:ae5d3b0a40c9fe25711f3b672e0611ed@pourwright
	// DTSTAMP:20270301T000000Z
	// DTSTART:20270301T080000
	// DTEND:20270301T090000
	// SUMMARY:Cut 5 form panels
	// DESCRIPTION:Tray\, step 1\nWho: maker
	// CATEGORIES:form
	// END:VEVENT
	// END:VCALENDAR
}
