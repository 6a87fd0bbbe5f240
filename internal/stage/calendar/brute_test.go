package calendar

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// brute tries every start on the half hour, and every choice of people, of a few tasks,
// counting half hours one by one.
type brute struct {
	in      Input
	names   []string
	horizon int // half hours
	best    int // finish of the best found, half hours after midnight of day 1
	start   []int
	end     []int
	who     [][]string
}

func halves(d units.Duration) int { return int(2*d + 0.5) }

// finish returns the earliest finish that keeps all windows, false if there is none.
func (b *brute) finish() (int, bool) {
	b.best = b.horizon + 1
	n := len(b.in.Tasks)
	b.start, b.end, b.who = make([]int, n), make([]int, n), make([][]string, n)
	b.place(0)
	return b.best, b.best <= b.horizon
}

func (b *brute) place(i int) {
	if i == len(b.in.Tasks) {
		last := 0
		for k, t := range b.in.Tasks {
			last = max(last, b.end[k]+halves(t.Wait))
		}
		b.best = min(b.best, last)
		return
	}
	t := b.in.Tasks[i]
	from, to := b.window(i)
	for s := from; s <= min(to, b.best-1); s++ {
		if t.Work == 0 {
			b.start[i], b.end[i], b.who[i] = s, s, nil
			b.place(i + 1)
			continue
		}
		for _, who := range b.choices(max(1, t.Hands)) {
			if end, ok := b.runs(t, s, who); ok && end+halves(t.Wait) < b.best && b.free(i, s, end, who) {
				b.start[i], b.end[i], b.who[i] = s, end, who
				b.place(i + 1)
			}
		}
	}
}

// window returns the first and last start of task i by the tasks before it, all of
// which have lower numbers.
func (b *brute) window(i int) (from, to int) {
	to = b.horizon
	for _, id := range b.in.Tasks[i].After {
		var k int
		fmt.Sscan(id, &k)
		t := b.in.Tasks[k]
		from = max(from, b.end[k]+halves(t.Wait))
		if t.Latest > 0 && b.next(k, i) {
			to = min(to, b.end[k]+halves(t.Latest))
		}
	}
	return from, to
}

// next reports whether i comes after k with no task between.
func (b *brute) next(k, i int) bool {
	var leads func(a, c int) bool
	leads = func(a, c int) bool {
		for x := a + 1; x <= c; x++ {
			if slices.Contains(b.in.Tasks[x].After, fmt.Sprint(a)) && (x == c || leads(x, c)) {
				return true
			}
		}
		return false
	}
	for x := k + 1; x < i; x++ {
		if slices.Contains(b.in.Tasks[x].After, fmt.Sprint(k)) && leads(x, i) {
			return false
		}
	}
	return true
}

func (b *brute) choices(hands int) [][]string {
	var out [][]string
	for bits := 1; bits < 1<<len(b.names); bits++ {
		var who []string
		for p, name := range b.names {
			if bits&(1<<p) != 0 {
				who = append(who, name)
			}
		}
		if len(who) == hands {
			out = append(out, who)
		}
	}
	return out
}

// runs returns when work begun at s is done; not if somebody is missing at its start, or
// later where it must not pause.
func (b *brute) runs(t Task, s int, who []string) (int, bool) {
	left := halves(t.Work)
	at := s
	for ; left > 0; at++ {
		there := allThere(b.in, who, units.Duration(at)/2)
		switch {
		case there:
			left--
		case at == s || t.Unbroken || t.Latest > 0 || at > b.horizon:
			return 0, false
		}
	}
	return at, true
}

func (b *brute) free(i, s, end int, who []string) bool {
	for k := range i {
		same := func(name string) bool { return slices.Contains(b.who[k], name) }
		if slices.ContainsFunc(who, same) && s < b.end[k] && b.start[k] < end {
			return false
		}
	}
	return true
}

// drawSmall draws a few tasks of whole half hours for one or two people who come every
// day, so that two days show every pattern.
func drawSmall(t *rapid.T) Input {
	half := func(from, to int, label string) units.Duration {
		return units.Duration(rapid.IntRange(from, to).Draw(t, label)) / 2
	}
	week := func() (h [7][]Span) {
		from := half(12, 20, "opens")
		noon := from + half(2, 6, "morning")
		for d := range h {
			h[d] = []Span{{from, noon}, {noon + half(1, 2, "break"), noon + half(3, 10, "evening")}}
		}
		return h
	}
	in := Input{Start: "2027-03-01", Hours: week()}
	in.People = []Person{{Name: "a"}}
	if rapid.Bool().Draw(t, "two") {
		h := week()
		in.People = append(in.People, Person{Name: "b", Hours: &h})
	}
	for i := range rapid.IntRange(2, 4).Draw(t, "tasks") {
		k := Task{ID: fmt.Sprint(i), Work: half(0, 4, "work"), Wait: half(0, 8, "wait"), Unbroken: rapid.Bool().Draw(t, "unbroken"), Hands: 1}
		if len(in.People) == 2 && rapid.IntRange(0, 3).Draw(t, "both") == 0 {
			k.Hands = 2
		}
		if rapid.Bool().Draw(t, "windowed") {
			k.Latest = k.Wait + half(1, 4, "latest")
		}
		for b := range i {
			if rapid.IntRange(0, 1).Draw(t, "after") == 0 {
				k.After = append(k.After, fmt.Sprint(b))
			}
		}
		in.Tasks = append(in.Tasks, k)
	}
	return in
}

// What is said to be the earliest finish is the earliest of all there are, and a window
// said to be out of reach is out of reach.
func TestNoEarlierFinishOnSmallShops(t *testing.T) {
	proven, unkept := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		in := drawSmall(t)
		r, fs := Compute(in)
		verify(t, in, r, fs)
		codes := map[string]bool{}
		for _, f := range fs {
			codes[f.Code] = true
		}
		if codes[through.Code] || codes[overtime.Code] || codes[hands.Code] {
			return // the search bends hours that the count of half hours does not
		}
		b := brute{in: in, horizon: 2 * 24 * 3, names: []string{"a"}}
		if len(in.People) == 2 {
			b.names = append(b.names, "b")
		}
		worst, _ := finding.Worst(fs)
		if codes[window.Code] {
			if end, ok := b.finish(); ok {
				t.Fatalf("%v, but all can be kept and done at half hour %d", fs, end)
			}
			unkept++
			return
		}
		ours := 0
		for _, s := range r.Steps {
			ours = max(ours, halves(s.EndH+s.Wait))
		}
		if b.horizon = ours; !r.Earliest || worst > finding.Note {
			t.Fatalf("not proven: %v", fs)
		}
		if end, ok := b.finish(); !ok || end != ours {
			t.Fatalf("done at half hour %d, but %d (%v) is the earliest", ours, end, ok)
		}
		proven++
	})
	t.Logf("%d earliest finishes and %d windows out of reach agree with trying everything", proven, unkept)
	if proven < 20 || unkept < 5 {
		t.Errorf("only %d finishes and %d windows were looked at", proven, unkept)
	}
}
