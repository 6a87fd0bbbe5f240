package serve

import (
	"bufio"
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pourwright/internal/plan"
)

// An event as a browser sees it.
type event struct{ name, data string }

// listen reads events until the stream ends.
func listen(t *testing.T, url string) <-chan event {
	t.Helper()
	r, err := http.Get(url + "api/events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = r.Body.Close() })
	if got := r.Header.Get("Content-Type"); got != "text/event-stream" || r.Header.Get("Cache-Control") != "no-store" {
		t.Fatalf("stream of type %q, %q", got, r.Header.Get("Cache-Control"))
	}
	out := make(chan event, 16)
	go func() {
		defer close(out)
		var e event
		for sc := bufio.NewScanner(r.Body); sc.Scan(); {
			switch line := sc.Text(); {
			case strings.HasPrefix(line, "event: "):
				e.name = line[7:]
			case strings.HasPrefix(line, "data: "):
				e.data = line[6:]
			case line == "" && e.name != "":
				out <- e
				e = event{}
			}
		}
	}()
	return out
}

func want(t *testing.T, ch <-chan event, name, data string) {
	t.Helper()
	select {
	case e, ok := <-ch:
		if !ok || e.name != name || e.data != data {
			t.Fatalf("got event %+v (open %v), want %s %s", e, ok, name, data)
		}
	case <-time.After(10 * time.Second):
		t.Fatalf("no event, want %s %s", name, data)
	}
}

// start serves source on a free port and returns its address and a way to stop it.
func start(t *testing.T, source Source) (string, func()) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- Run(ctx, l, New(Options{Source: source})) }()
	stop := func() {
		cancel()
		select {
		case err := <-done:
			if err != nil {
				t.Errorf("Run returned %v", err)
			}
		case <-time.After(10 * time.Second):
			t.Error("Run does not end")
		}
	}
	return URL(l.Addr()), stop
}

// A hinted error knows what to do about itself and names no findings.
type hinted struct{ error }

func (hinted) Hint() string { return "write one" }

func TestEventsTellOfChangesAndOfTheEnd(t *testing.T) {
	source := newHand()
	url, stop := start(t, source)
	ch := listen(t, url)
	want(t, ch, "plan", `{"version":"v1"}`)
	source.set(snapshot("v2"), nil)
	want(t, ch, "plan", `{"version":"v2"}`)
	source.set(Snapshot{}, hinted{errors.New("line 3: no length")})
	want(t, ch, "plan", `{"version":"","problem":{"error":"line 3: no length","hint":"write one"}}`)
	stop()
	want(t, ch, "closing", "{}")
	if _, open := <-ch; open {
		t.Error("the stream goes on after closing")
	}
}

func TestFileSourceFollowsItsFiles(t *testing.T) {
	name := filepath.Join(t.TempDir(), "piece.yaml")
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("one")
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	source := NewFileSource(func(context.Context, func(plan.Progress)) (Snapshot, []string, error) {
		data, err := os.ReadFile(name)
		return Snapshot{Plan: &plan.Plan{Piece: plan.Piece{Name: string(data)}}}, []string{name}, err
	})
	source.every = 5 * time.Millisecond
	go source.Run(ctx)
	changes := source.Watch(ctx)
	expect := func(text string, fails bool) {
		t.Helper()
		deadline := time.After(10 * time.Second)
		for {
			s, err := source.Current(ctx)
			if (err != nil) == fails && (fails || s.Plan.Piece.Name == text) {
				return
			}
			select {
			case <-changes:
			case <-deadline:
				t.Fatalf("got %v, %v, want %q", s.Plan, err, text)
			}
		}
	}
	expect("one", false)
	first, _ := source.Current(ctx)
	write("one and more")
	expect("one and more", false)
	if second, _ := source.Current(ctx); second.Version == first.Version || first.Version == "" {
		t.Errorf("versions %q and %q must differ", first.Version, second.Version)
	}
	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	expect("", true)
	write("back")
	expect("back", false)
	cancel()
	deadline := time.After(10 * time.Second)
	for {
		select {
		case _, open := <-changes:
			if !open {
				return
			}
		case <-deadline:
			t.Fatal("the watch does not end with its context")
		}
	}
}

func TestHashTellsContentsApart(t *testing.T) {
	hash := func(s Snapshot) string {
		t.Helper()
		v, err := Hash(s.Plan, s.Drawings)
		if err != nil || len(v) != 16 {
			t.Fatalf("got %q, %v", v, err)
		}
		return v
	}
	a, b := snapshot("x"), snapshot("y")
	if hash(a) != hash(b) {
		t.Error("the same content has two versions")
	}
	b.Drawings[1].Title = "Section A"
	if hash(a) == hash(b) {
		t.Error("two contents have one version")
	}
}

func TestURL(t *testing.T) {
	for text, want := range map[string]string{
		"127.0.0.1:8470": "http://127.0.0.1:8470/", "[::1]:80": "http://[::1]:80/", "0.0.0.0:81": "http://localhost:81/", "[::]:82": "http://localhost:82/",
	} {
		a, err := net.ResolveTCPAddr("tcp", text)
		if err != nil {
			t.Fatal(err)
		}
		if got := URL(a); got != want {
			t.Errorf("%s: got %s, want %s", text, got, want)
		}
	}
}

// TestProgressAndCancel follows a slow computation, stops it, and sees that the piece
// is computed again when its file changes.
func TestProgressAndCancel(t *testing.T) {
	name := filepath.Join(t.TempDir(), "piece.yaml")
	if err := os.WriteFile(name, []byte("slow"), 0o600); err != nil {
		t.Fatal(err)
	}
	source := NewFileSource(func(ctx context.Context, report func(plan.Progress)) (Snapshot, []string, error) {
		data, _ := os.ReadFile(name)
		if string(data) == "slow" {
			report(plan.Progress{Stage: "resin", Share: 0.5})
			<-ctx.Done()
			return Snapshot{}, []string{name}, ctx.Err()
		}
		s := snapshot("done")
		return s, []string{name}, nil
	})
	source.every = 5 * time.Millisecond
	ctx, end := context.WithCancel(context.Background())
	defer end()
	go source.Run(ctx)
	url, stop := start(t, source)
	defer stop()
	ch := listen(t, url)
	for e := range ch {
		if e.name != "progress" {
			t.Fatalf("got %+v", e)
		}
		if strings.Contains(e.data, `"share":0.5`) {
			break
		}
	}
	r, err := http.Post(url+"api/cancel", "", nil)
	if err != nil || r.StatusCode != http.StatusNoContent {
		t.Fatalf("cancel: %v %v", r, err)
	}
	_ = r.Body.Close()
	for e := range ch {
		if e.name == "plan" {
			if !strings.Contains(e.data, "stopped before its end") {
				t.Fatalf("after cancelling: %s", e.data)
			}
			break
		}
	}
	again, err := http.Post(url+"api/again", "", nil)
	if err != nil || again.StatusCode != http.StatusNoContent {
		t.Fatalf("again: %v %v", again, err)
	}
	_ = again.Body.Close()
	for e := range ch {
		if e.name == "progress" && strings.Contains(e.data, `"share":0.5`) {
			break // it is computed again though no file changed
		}
	}
	source.Cancel()
	for e := range ch {
		if e.name == "plan" && strings.Contains(e.data, `"stopped":true`) {
			break
		}
	}
	if err := os.WriteFile(name, []byte("quick now"), 0o600); err != nil {
		t.Fatal(err)
	}
	for e := range ch {
		if e.name == "plan" {
			if e.data != `{"version":"done"}` {
				t.Fatalf("after the edit: %s", e.data)
			}
			return
		}
	}
}
