package calendar

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// fiveDays is open Monday to Friday 8 to 12 and 13 to 17.
func fiveDays() [7][]Span {
	var h [7][]Span
	for d := range 5 {
		h[d] = []Span{{8, 12}, {13, 17}}
	}
	return h
}

// daily is open from to to on all days.
func daily(from, to units.Duration) [7][]Span {
	var h [7][]Span
	for d := range h {
		h[d] = []Span{{from, to}}
	}
	return h
}

func codes(fs []finding.Finding) string {
	var out []string
	for _, f := range fs {
		out = append(out, strings.TrimPrefix(f.Code, "calendar/"))
	}
	return strings.Join(out, " ")
}

func lines(r Result) string {
	var out []string
	for _, s := range r.Steps {
		out = append(out, fmt.Sprintf("%s %s - %s", s.ID, s.Start, s.End))
	}
	return strings.Join(out, "\n")
}

func ExampleCompute() {
	r, fs := Compute(Input{
		Start: "2027-03-01", // a Monday
		Hours: daily(8, 18),
		Tasks: []Task{
			{ID: "form", Work: 12},
			{ID: "face", Work: 1, Wait: 0.25, Latest: 0.5, After: []string{"form"}},
			{ID: "backer", Work: 2, Wait: 6, Latest: 9, After: []string{"face"}},
			{ID: "level edges", Work: 0.5, Wait: 12, After: []string{"backer"}},
			{ID: "strip", Work: 2, After: []string{"level edges"}},
		},
	})
	for _, s := range r.Steps {
		fmt.Println(s.ID, s.Start, "to", s.End)
	}
	fmt.Println("done", r.Finish)
	fmt.Println(fs[0].Text)
	// Output:
	// form Mon 2027-03-01 08:00 to Tue 2027-03-02 10:00
	// face Wed 2027-03-03 08:00 to Wed 2027-03-03 09:00
	// backer Wed 2027-03-03 09:15 to Wed 2027-03-03 11:15
	// level edges Wed 2027-03-03 17:15 to Wed 2027-03-03 17:45
	// strip Thu 2027-03-04 08:00 to Thu 2027-03-04 10:00
	// done Thu 2027-03-04 10:00
	// Task "face" starts Wed 2027-03-03 08:00, not already Tue 2027-03-02 10:00: the timed steps that follow it then fall in shop hours, or nearest to them.

}

func TestTimes(t *testing.T) {
	for _, c := range []struct {
		name  string
		in    Input
		want  string
		codes string
	}{
		{"work pauses for lunch, night and weekend",
			Input{Start: "2027-03-05", Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 10}}}, // a Friday
			"a Fri 2027-03-05 08:00 - Mon 2027-03-08 10:00", ""},
		{"a wait runs through the night",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1, Wait: 12}, {ID: "b", Work: 1, After: []string{"a"}}}},
			"a day 1 08:00 - day 1 09:00\nb day 2 08:00 - day 2 09:00", ""},
		{"a wait runs over the weekend",
			Input{Start: "2027-03-05", Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 8, Wait: 24}, {ID: "b", Work: 1, After: []string{"a"}}}},
			"a Fri 2027-03-05 08:00 - Fri 2027-03-05 17:00\nb Mon 2027-03-08 08:00 - Mon 2027-03-08 09:00", ""},
		{"unbroken work waits for a stretch that holds it",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 2}, {ID: "b", Work: 3, Unbroken: true, After: []string{"a"}}}},
			"a day 1 08:00 - day 1 10:00\nb day 1 13:00 - day 1 16:00", ""},
		{"unbroken work longer than a stretch goes through the break",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 6, Unbroken: true}}},
			"a day 1 08:00 - day 1 14:00", "no-break"},
		{"unbroken work longer than a day runs past closing",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 10, Unbroken: true}}},
			"a day 1 08:00 - day 1 18:00", "past-closing"},
		{"a pure wait needs nobody",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 8}, {ID: "cure", Wait: 20, After: []string{"a"}}, {ID: "b", Work: 1, After: []string{"cure"}}}},
			"a day 1 08:00 - day 1 17:00\ncure day 1 17:00 - day 1 17:00\nb day 2 13:00 - day 2 14:00", ""},
		{"other work fills a wait",
			Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1, Wait: 3}, {ID: "b", Work: 1, After: []string{"a"}}, {ID: "c", Work: 2}}},
			"a day 1 08:00 - day 1 09:00\nc day 1 09:00 - day 1 11:00\nb day 1 13:00 - day 1 14:00", ""},
		{"other work does not close a window",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "a", Work: 1, Wait: 1, Latest: 2}, {ID: "b", Work: 1, After: []string{"a"}}, {ID: "c", Work: 5}}},
			"a day 1 08:00 - day 1 09:00\nb day 1 10:00 - day 1 11:00\nc day 1 11:00 - day 1 16:00", ""},
		{"a timed task waits until its follow-up falls in shop hours",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "a", Work: 4}, {ID: "coat", Work: 1, Wait: 6, Latest: 9, After: []string{"a"}}, {ID: "level", Work: 0.5, After: []string{"coat"}}}},
			"a day 1 08:00 - day 1 12:00\ncoat day 2 08:00 - day 2 09:00\nlevel day 2 15:00 - day 2 15:30", "start-moved"},
		{"a chain of windows is moved as a whole",
			Input{Hours: daily(8, 17), Tasks: []Task{
				{ID: "a", Work: 2},
				{ID: "face", Work: 1, Wait: 0.25, Latest: 0.5, After: []string{"a"}},
				{ID: "backer", Work: 1, Wait: 6, Latest: 9, After: []string{"face"}},
				{ID: "level", Work: 0.5, After: []string{"backer"}}}},
			"a day 1 08:00 - day 1 10:00\nface day 2 08:00 - day 2 09:00\nbacker day 2 09:15 - day 2 10:15\nlevel day 2 16:15 - day 2 16:45", "start-moved"},
		{"the middle of a chain uses its own window",
			Input{Hours: fiveDays(), Tasks: []Task{
				{ID: "face", Work: 1, Wait: 1, Latest: 6},
				{ID: "backer", Work: 1, Wait: 1, Latest: 1.5, After: []string{"face"}},
				{ID: "level", Work: 0.5, After: []string{"backer"}}}},
			"face day 1 08:00 - day 1 09:00\nbacker day 1 10:30 - day 1 11:30\nlevel day 1 13:00 - day 1 13:30", "start-moved"},
		{"the clock starts only when the rest is ready",
			Input{Hours: daily(8, 17), Tasks: []Task{
				{ID: "face", Work: 1, Wait: 0.25, Latest: 0.5},
				{ID: "net", Work: 3},
				{ID: "backer", Work: 1, After: []string{"face", "net"}}}},
			"net day 1 08:00 - day 1 11:00\nface day 1 11:00 - day 1 12:00\nbacker day 1 12:15 - day 1 13:15", ""},
		{"a window nobody can keep",
			Input{Hours: daily(8, 10), Tasks: []Task{{ID: "coat", Work: 1, Wait: 6, Latest: 9}, {ID: "level", Work: 0.5, After: []string{"coat"}}}},
			"coat day 1 08:00 - day 1 09:00\nlevel day 1 15:00 - day 1 15:30", "window-missed"},
		{"a window nobody can keep is brought near",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "a", Work: 4}, {ID: "coat", Work: 3, Wait: 6.25, Latest: 9, After: []string{"a"}}, {ID: "level", Work: 0.5, After: []string{"coat"}}}},
			"a day 1 08:00 - day 1 12:00\ncoat day 2 08:00 - day 2 11:00\nlevel day 2 17:15 - day 2 17:45", "start-moved window-missed"},
		{"a wait beyond its window",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "coat", Work: 1, Wait: 2, Latest: 1}, {ID: "next", Work: 1, After: []string{"coat"}}}},
			"coat day 1 08:00 - day 1 09:00\nnext day 1 11:00 - day 1 12:00", "window-missed"},
		{"a window binds the next task, not those after it",
			Input{Hours: daily(8, 17), Tasks: []Task{
				{ID: "face", Work: 1, Latest: 1}, {ID: "backer", Work: 4, After: []string{"face"}}, {ID: "strip", Work: 1, After: []string{"backer", "face"}}}},
			"face day 1 08:00 - day 1 09:00\nbacker day 1 09:00 - day 1 13:00\nstrip day 1 13:00 - day 1 14:00", ""},
		{"the clocks change and the shop does not",
			Input{Start: "2027-03-27", Hours: daily(8, 9), Tasks: []Task{{ID: "a", Work: 1, Wait: 23}, {ID: "b", Work: 1, After: []string{"a"}}}},
			"a Sat 2027-03-27 08:00 - Sat 2027-03-27 09:00\nb Sun 2027-03-28 08:00 - Sun 2027-03-28 09:00", ""},
		{"over the turn of a leap year",
			Input{Start: "2028-02-28", Hours: daily(8, 16), Tasks: []Task{{ID: "a", Work: 24}}},
			"a Mon 2028-02-28 08:00 - Wed 2028-03-01 16:00", ""},
		{"open all day and night",
			Input{Hours: daily(0, 24), Tasks: []Task{{ID: "a", Work: 30}}},
			"a day 1 00:00 - day 2 06:00", ""},
		{"thirds of an hour do not drift",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "a", Work: 1.0 / 3}, {ID: "b", Work: 1.0 / 3, After: []string{"a"}}, {ID: "c", Work: 1.0 / 3, After: []string{"b"}}, {ID: "d", After: []string{"c"}}}},
			"a day 1 08:00 - day 1 08:20\nb day 1 08:20 - day 1 08:40\nc day 1 08:40 - day 1 09:00\nd day 1 09:00 - day 1 09:00", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, fs := Compute(c.in)
			if got := lines(r); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if got := codes(fs); got != c.codes {
				t.Errorf("findings %q, want %q: %v", got, c.codes, fs)
			}
		})
	}
}

func TestBadInput(t *testing.T) {
	nan := units.Duration(math.NaN())
	for _, c := range []struct {
		name  string
		in    Input
		codes string
		worst finding.Severity
	}{
		{"closed all week", Input{Tasks: []Task{{ID: "a", Work: 1}}}, "closed", finding.Caution},
		{"hours backwards", Input{Hours: [7][]Span{{{17, 8}}}, Tasks: []Task{{ID: "a", Work: 1}}}, "hours closed", finding.Caution},
		{"hours past midnight", Input{Hours: [7][]Span{{{8, 25}, {9, 10}}}, Tasks: []Task{{ID: "a", Work: 1}}}, "hours", finding.Caution},
		{"hours not a number", Input{Hours: [7][]Span{{{nan, 10}, {9, 10}}}}, "hours", finding.Caution},
		{"date", Input{Start: "1 March", Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1}}}, "start", finding.Caution},
		{"no such day", Input{Start: "2027-02-30", Hours: fiveDays()}, "start", finding.Caution},
		{"work negative", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: -1}}}, "task", finding.Caution},
		{"wait not a number", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Wait: nan}}}, "task", finding.Caution},
		{"latest negative", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Latest: -2}}}, "task", finding.Caution},
		{"work without end", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: units.Duration(math.Inf(1))}}}, "task", finding.Caution},
		{"unknown id", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1, After: []string{"z"}}}}, "task", finding.Caution},
		{"id twice", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1}, {ID: "a", Work: 1}}}, "task", finding.Caution},
		{"waits for itself", Input{Hours: fiveDays(), Tasks: []Task{{ID: "a", Work: 1, After: []string{"a"}}}}, "circle", finding.Stop},
	} {
		r, fs := Compute(c.in)
		if got := codes(fs); got != c.codes {
			t.Errorf("%s: findings %q, want %q", c.name, got, c.codes)
		}
		if worst, _ := finding.Worst(fs); worst != c.worst {
			t.Errorf("%s: worst %v, want %v", c.name, worst, c.worst)
		}
		if len(r.Steps) != len(c.in.Tasks) {
			t.Errorf("%s: %d steps of %d tasks", c.name, len(r.Steps), len(c.in.Tasks))
		}
	}
}

func TestCircleIsNamedAndTheRestPlaced(t *testing.T) {
	r, fs := Compute(Input{Hours: fiveDays(), Tasks: []Task{
		{ID: "late", Work: 1, After: []string{"c"}},
		{ID: "b", Work: 1, After: []string{"a"}},
		{ID: "c", Work: 1, After: []string{"b"}},
		{ID: "a", Work: 1, After: []string{"c"}},
		{ID: "free", Work: 1},
	}})
	if len(fs) != 1 || !strings.Contains(fs[0].Text, `"b" then "c" then "a" then "b"`) {
		t.Fatalf("findings %v", fs)
	}
	if r.Steps[0].ID != "free" || r.Steps[0].Start != "day 1 08:00" {
		t.Errorf("first step %+v, want the free task placed", r.Steps[0])
	}
	for _, s := range r.Steps[1:] {
		if s.Start != "" {
			t.Errorf("step %q of the circle has the time %q", s.ID, s.Start)
		}
	}
}

func TestClosedStillListsDurations(t *testing.T) {
	r, _ := Compute(Input{Tasks: []Task{{ID: "b", Work: 2, After: []string{"a"}}, {ID: "a", Work: 1, Wait: 5}}})
	if r.Hands != 3 || r.Finish != "" || r.Elapsed != 0 || r.Steps[0].ID != "a" || r.Steps[0].Wait != 5 {
		t.Errorf("result %+v", r)
	}
}

func TestWindowFindingSaysWhenToBeThere(t *testing.T) {
	_, fs := Compute(Input{Start: "2027-03-01", Hours: daily(8, 17), Tasks: []Task{{ID: "coat", Work: 3, Wait: 6.25, Latest: 9}, {ID: "level", Work: 0.5, After: []string{"coat"}}}})
	if len(fs) != 1 {
		t.Fatalf("findings %v", fs)
	}
	for _, want := range []string{"between Mon 2027-03-01 17:15 and Mon 2027-03-01 20:00", "the hours are 08:00 to 17:00 that day"} {
		if !strings.Contains(fs[0].Text, want) {
			t.Errorf("text %q lacks %q", fs[0].Text, want)
		}
	}
	for _, want := range []string{`Start "coat" at Mon 2027-03-01 07:15 instead`, "ask a second person to be, Mon 2027-03-01 17:15 to 17:45"} {
		if !strings.Contains(fs[0].Remedy, want) {
			t.Errorf("remedy %q lacks %q", fs[0].Remedy, want)
		}
	}
}

func TestElapsedHoldsTheLastWait(t *testing.T) {
	r, _ := Compute(Input{Hours: fiveDays(), Tasks: []Task{{ID: "pour", Work: 1, Wait: 168}}})
	if r.Elapsed != 169 || r.Finish != "day 8 09:00" {
		t.Errorf("elapsed %v, finish %q", r.Elapsed, r.Finish)
	}
}
