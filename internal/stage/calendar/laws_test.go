package calendar

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/units"
)

// quarters draws a duration of whole quarters of an hour.
func quarters(t *rapid.T, most int, label string) units.Duration {
	return units.Duration(rapid.IntRange(0, 4*most).Draw(t, label)) / 4
}

func drawHours(t *rapid.T) [7][]Span {
	var h [7][]Span
	for d := range h {
		for range rapid.IntRange(0, 2).Draw(t, "spans") {
			from := quarters(t, 22, "from")
			h[d] = append(h[d], Span{from, min(24, from+0.25+quarters(t, 9, "length"))})
		}
	}
	h[2] = append(h[2], Span{9, 12}) // never closed all week
	return h
}

func drawTasks(t *rapid.T) []Task {
	tasks := make([]Task, rapid.IntRange(1, 9).Draw(t, "tasks"))
	for i := range tasks {
		k := Task{ID: fmt.Sprint(i), Work: quarters(t, 6, "work"), Unbroken: rapid.Bool().Draw(t, "unbroken")}
		k.Hands = rapid.IntRange(0, 2).Draw(t, "hands")
		k.Wait = quarters(t, 30, "wait")
		if rapid.IntRange(0, 2).Draw(t, "windowed") == 0 {
			k.Latest = k.Wait + 0.25 + quarters(t, 4, "latest")
		}
		for b := range i {
			if rapid.IntRange(0, 2).Draw(t, "after") == 0 {
				k.After = append(k.After, fmt.Sprint(b))
			} else if rapid.IntRange(0, 9).Draw(t, "link") == 0 {
				from := quarters(t, 8, "link from")
				k.Links = append(k.Links, Link{fmt.Sprint(b), from, from + quarters(t, 4, "link until")})
			}
		}
		tasks[i] = k
	}
	return tasks
}

func drawPeople(t *rapid.T) []Person {
	people := make([]Person, rapid.IntRange(0, 3).Draw(t, "people"))
	for i := range people {
		p := Person{Name: string(rune('a' + i)), Called: i > 0 && rapid.Bool().Draw(t, "called")}
		if rapid.Bool().Draw(t, "own hours") {
			h := drawHours(t)
			p.Hours = &h
		}
		for range rapid.IntRange(0, 2).Draw(t, "away") {
			p.Away = append(p.Away, fmt.Sprintf("2027-03-%02d", rapid.IntRange(1, 20).Draw(t, "day")))
		}
		people[i] = p
	}
	return people
}

func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Start: "2027-03-01", Hours: drawHours(t), People: drawPeople(t), Tasks: drawTasks(t)}
		if rapid.Bool().Draw(t, "closed") {
			in.Closed = []string{"2027-03-03", "2027-03-10"}
		}
		r, fs := Compute(in)
		verify(t, in, r, fs)
		if again, fs2 := Compute(in); !reflect.DeepEqual(r, again) || !reflect.DeepEqual(fs, fs2) {
			t.Fatalf("two runs differ")
		}
	})
}

// With any links at all, circles among them, every task is listed once and those
// without a time hang on a circle that a stop finding names.
func TestAnyLinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Hours: drawHours(t), Tasks: drawTasks(t)}
		for i := range in.Tasks {
			for range rapid.IntRange(0, 2).Draw(t, "links") {
				in.Tasks[i].After = append(in.Tasks[i].After, fmt.Sprint(rapid.IntRange(0, len(in.Tasks)).Draw(t, "to")))
			}
		}
		r, fs := Compute(in)
		seen := map[string]bool{}
		untimed := 0
		for _, s := range r.Steps {
			seen[s.ID] = true
			if s.Start == "" {
				untimed++
			}
		}
		stops := 0
		for _, f := range fs {
			if f.Code == circle.Code {
				stops++
			}
		}
		if len(seen) != len(in.Tasks) || (untimed > 0) != (stops == 1) {
			t.Fatalf("%d of %d tasks listed, %d without a time, %d circles said", len(seen), len(in.Tasks), untimed, stops)
		}
	})
}

// BenchmarkWindows places six chains of coats that no start can keep in hours, the
// slowest case of the search.
func BenchmarkWindows(b *testing.B) {
	in := Input{Hours: fiveDays()}
	for c := range 6 {
		for k := range 4 {
			t := Task{ID: fmt.Sprintf("%d-%d", c, k), Work: 1.5, Wait: 0.5, Latest: 2, Unbroken: true}
			if k == 3 {
				t.Wait, t.Latest = 10, 12
			}
			if k > 0 {
				t.After = []string{fmt.Sprintf("%d-%d", c, k-1)}
			}
			in.Tasks = append(in.Tasks, t)
		}
		in.Tasks = append(in.Tasks, Task{ID: fmt.Sprintf("%d-level", c), Work: 0.5, After: []string{fmt.Sprintf("%d-3", c)}})
	}
	for b.Loop() {
		Compute(in)
	}
}
