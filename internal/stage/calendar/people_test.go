package calendar

import (
	"fmt"
	"strings"
	"testing"
)

func who(r Result) string {
	var out []string
	for _, s := range r.Steps {
		out = append(out, fmt.Sprintf("%s %s - %s %s", s.ID, s.Start, s.End, strings.Join(s.Who, "+")))
	}
	return strings.Join(out, "\n")
}

func TestPeople(t *testing.T) {
	mornings := daily(8, 12)
	two := []Person{{Name: "a"}, {Name: "b"}}
	for _, c := range []struct {
		name  string
		in    Input
		want  string
		codes string
	}{
		{"two work side by side",
			Input{Hours: daily(8, 17), People: two, Tasks: []Task{{ID: "form", Work: 4}, {ID: "foam", Work: 3}, {ID: "fix", Work: 1, After: []string{"form", "foam"}}}},
			"foam day 1 08:00 - day 1 11:00 b\nform day 1 08:00 - day 1 12:00 a\nfix day 1 12:00 - day 1 13:00 a", ""},
		{"both wait for each other",
			Input{Hours: daily(8, 17), People: two, Tasks: []Task{{ID: "form", Work: 4}, {ID: "cast", Work: 2, Hands: 2}}},
			"cast day 1 08:00 - day 1 10:00 a+b\nform day 1 10:00 - day 1 14:00 a", ""},
		{"two are there together only in the morning",
			Input{Hours: daily(8, 17), People: []Person{{Name: "a"}, {Name: "b", Hours: &mornings}},
				Tasks: []Task{{ID: "form", Work: 3}, {ID: "cast", Work: 2, Hands: 2, Unbroken: true, After: []string{"form"}}}},
			"form day 1 08:00 - day 1 11:00 a\ncast day 2 08:00 - day 2 10:00 a+b", ""},
		{"a helper comes only where two are asked for",
			Input{Hours: daily(8, 17), People: []Person{{Name: "a"}, {Name: "h", Called: true}}, Tasks: []Task{{ID: "form", Work: 4}, {ID: "foam", Work: 3}, {ID: "cast", Work: 1, Hands: 2, After: []string{"form", "foam"}}}},
			"foam day 1 08:00 - day 1 11:00 a\nform day 1 11:00 - day 1 15:00 a\ncast day 1 15:00 - day 1 16:00 a+h", ""},
		{"more hands than there are",
			Input{Hours: daily(8, 17), Tasks: []Task{{ID: "cast", Work: 1, Hands: 3}}},
			"cast day 1 08:00 - day 1 09:00 maker", "hands"},
		{"the one who is there does it",
			Input{Start: "2027-03-01", Hours: daily(8, 17), People: []Person{{Name: "a", Away: []string{"2027-03-01"}}, {Name: "b"}}, Tasks: []Task{{ID: "form", Work: 4}}},
			"form Mon 2027-03-01 08:00 - Mon 2027-03-01 12:00 b", ""},
		{"a holiday stops work but no wait",
			Input{Start: "2027-03-01", Hours: daily(8, 12), Closed: []string{"2027-03-02"}, Tasks: []Task{{ID: "a", Work: 6, Wait: 12}, {ID: "b", Work: 1, After: []string{"a"}}}},
			"a Mon 2027-03-01 08:00 - Wed 2027-03-03 10:00 maker\nb Thu 2027-03-04 08:00 - Thu 2027-03-04 09:00 maker", ""},
		{"a holiday keeps a window out of it",
			Input{Start: "2027-03-01", Hours: daily(8, 12), Closed: []string{"2027-03-02"}, Tasks: []Task{{ID: "coat", Work: 1, Wait: 20, Latest: 24}, {ID: "next", Work: 1, After: []string{"coat"}}}},
			"coat Wed 2027-03-03 08:00 - Wed 2027-03-03 09:00 maker\nnext Thu 2027-03-04 08:00 - Thu 2027-03-04 09:00 maker", "start-moved"},
		{"a round by the way",
			Input{Hours: daily(8, 17), Tasks: []Task{
				{ID: "pour", Work: 1, Wait: 24}, {ID: "form", Work: 3},
				{ID: "torch", Work: 0.25, Links: []Link{{"pour", 0.25, 0.5}}},
				{ID: "sand", Work: 1, After: []string{"pour"}}}},
			"pour day 1 08:00 - day 1 09:00 maker\ntorch day 1 09:15 - day 1 09:30 maker\nform day 1 09:30 - day 1 12:30 maker\nsand day 2 09:00 - day 2 10:00 maker", ""},
		{"a second person keeps a window that one cannot",
			Input{Hours: daily(8, 17), People: two, Tasks: []Task{
				{ID: "pour", Work: 1}, {ID: "torch", Work: 0.25, Links: []Link{{"pour", 0.25, 0.5}}},
				{ID: "coat", Work: 2, Unbroken: true, Links: []Link{{"pour", 0, 0.1}}}}},
			"pour day 1 08:00 - day 1 09:00 a\ncoat day 1 09:00 - day 1 11:00 a\ntorch day 1 09:15 - day 1 09:30 b", ""},
		{"a window with another way out is given up before the hours",
			Input{Hours: daily(8, 10), Tasks: []Task{{ID: "lift", Work: 1, Wait: 6, Latest: 9, Otherwise: "Sand it."}, {ID: "next", Work: 0.5, After: []string{"lift"}}}},
			"lift day 1 08:00 - day 1 09:00 maker\nnext day 2 08:00 - day 2 08:30 maker", "window-missed"},
		{"work is not split over a night where it need not be",
			Input{Hours: daily(8, 12), Tasks: []Task{{ID: "foam", Work: 2}, {ID: "form", Work: 4}, {ID: "wait", Wait: 70, After: []string{"foam"}}, {ID: "fix", Work: 1, After: []string{"wait", "form"}}}},
			"foam day 1 08:00 - day 1 10:00 maker\nwait day 1 10:00 - day 1 10:00 \nform day 2 08:00 - day 2 12:00 maker\nfix day 4 08:00 - day 4 09:00 maker", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, fs := Compute(c.in)
			if got := who(r); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if got := codes(fs); got != c.codes {
				t.Errorf("findings %q, want %q: %v", got, c.codes, fs)
			}
			if !r.Earliest {
				t.Error("not proven")
			}
		})
	}
}

func TestHandsOfEachPersonAddUp(t *testing.T) {
	r, _ := Compute(Input{Hours: daily(8, 12), People: []Person{{Name: "a"}, {Name: "b"}},
		Tasks: []Task{{ID: "form", Work: 6}, {ID: "cast", Work: 1, Hands: 2, After: []string{"form"}}}})
	if r.Hands != 8 || r.People[0].Hours+r.People[1].Hours != 8 || r.People[0] != (PersonHours{"a", 7, 2}) || r.People[1] != (PersonHours{"b", 1, 1}) {
		t.Errorf("%v h, by person %v", r.Hands, r.People)
	}
}

func TestWhoIsToBeAskedIsSaid(t *testing.T) {
	_, fs := Compute(Input{Start: "2027-03-01", Hours: daily(8, 17), Tasks: []Task{{ID: "cast", Work: 1, Hands: 3}}})
	if len(fs) != 1 || !strings.Contains(fs[0].Text, "asks for 3 people at once; the shop has 1") || !strings.Contains(fs[0].Remedy, "Ask 2 more to be there Mon 2027-03-01 08:00 to 09:00") {
		t.Errorf("%v", fs)
	}
}

func TestBadPeople(t *testing.T) {
	for _, c := range []struct {
		name  string
		in    Input
		codes string
	}{
		{"days off without a first day", Input{Hours: daily(8, 9), Closed: []string{"2027-03-08"}}, "day-off"},
		{"a day off that is none", Input{Start: "2027-03-01", Hours: daily(8, 9), People: []Person{{Name: "a", Away: []string{"soon"}}}}, "day-off"},
		{"a crowd", Input{Hours: daily(8, 9), People: make([]Person, 9)}, "people"},
		{"only helpers", Input{Hours: daily(8, 9), People: []Person{{Name: "h", Called: true}}, Tasks: []Task{{ID: "a", Work: 1}}}, "closed"},
	} {
		r, fs := Compute(c.in)
		if got := codes(fs); got != c.codes || len(r.Steps) != len(c.in.Tasks) {
			t.Errorf("%s: findings %q, want %q; %d steps", c.name, got, c.codes, len(r.Steps))
		}
	}
}
