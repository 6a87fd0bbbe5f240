package plan

import (
	"context"
	"testing"

	"pourwright/internal/finding"
)

type pebble struct {
	a    float64
	B    string
	list []int
	at   *pebble
	m    map[string]int
}

func TestFingerprintSeesEveryPart(t *testing.T) {
	base := func() pebble {
		return pebble{a: 1, B: "x", list: []int{1, 2}, at: &pebble{a: 2}, m: map[string]int{"p": 1, "q": 2}}
	}
	same := fingerprint(base())
	if fingerprint(base()) != same {
		t.Fatal("equal values, made twice, differ")
	}
	for name, change := range map[string]func(*pebble){
		"unexported field": func(p *pebble) { p.a = 1.0000001 },
		"text":             func(p *pebble) { p.B = "y" },
		"element":          func(p *pebble) { p.list[1] = 3 },
		"length":           func(p *pebble) { p.list = p.list[:1] },
		"behind a pointer": func(p *pebble) { p.at.a = 3 },
		"nil pointer":      func(p *pebble) { p.at = nil },
		"map value":        func(p *pebble) { p.m["q"] = 3 },
		"map key":          func(p *pebble) { delete(p.m, "q"); p.m["r"] = 2 },
	} {
		p := base()
		change(&p)
		if fingerprint(p) == same {
			t.Errorf("%s: a change is not seen", name)
		}
	}
}

func TestRememberComputesOnce(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	w := &wiring{ctx: ctx, memory: &Memory{}}
	calls := 0
	compute := func(n int) (int, []finding.Finding) { calls++; return n * n, []finding.Finding{{Text: "squared"}} }
	for range 3 {
		if got, found := remember(w, "square", 7, compute); got != 49 || len(found) != 1 {
			t.Fatalf("got %d, %v", got, found)
		}
	}
	if calls != 1 {
		t.Errorf("computed %d times", calls)
	}
	if remember(w, "square", 8, compute); calls != 2 {
		t.Errorf("another input is taken from memory")
	}
	if remember(w, "other", 7, compute); calls != 3 {
		t.Errorf("another stage's result is taken")
	}
	cancel()
	remember(w, "square", 9, compute)
	if remember(w, "square", 9, compute); calls != 5 {
		t.Errorf("a computation that was cut short is kept")
	}
	for i := range 3 * mostKept {
		w.memory.put("many", remembered{result: i})
	}
	if n := len(w.memory.kept["many"]); n != mostKept {
		t.Errorf("%d results are kept", n)
	}
}
