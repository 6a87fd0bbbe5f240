package serve

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/plan"
)

// A hand is a Source set by hand.
type hand struct {
	mu   sync.Mutex
	snap Snapshot
	err  error
	ch   chan struct{}
}

func (h *hand) Current(context.Context) (Snapshot, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.snap, h.err
}

func (h *hand) Watch(context.Context) <-chan struct{} { return h.ch }

func (h *hand) set(s Snapshot, err error) {
	h.mu.Lock()
	h.snap, h.err = s, err
	h.mu.Unlock()
	h.ch <- struct{}{}
}

func snapshot(version string, fs ...finding.Finding) Snapshot {
	return Snapshot{
		Version: version,
		Plan: &plan.Plan{Piece: plan.Piece{Name: "Test: bench", Length: 1220}, Findings: fs,
			Stages: []plan.Stage{{Name: "relief", Title: "Basin", State: "not computed"}}},
		Drawings: []drawing.Drawing{
			{Name: "plan-finished", Title: "Plan", View: "finished", Box: geom.Rect(0, 0, 10, 5), Items: []drawing.Item{}},
			{Name: "section", Title: "Section", Items: []drawing.Item{}},
		},
	}
}

func newHand(fs ...finding.Finding) *hand {
	return &hand{snap: snapshot("v1", fs...), ch: make(chan struct{}, 1)}
}

func handler(h *hand) http.Handler {
	return New(Options{Source: h, Hosts: []string{"Shop.local"},
		SVG: func(w io.Writer, _ Snapshot, name string) error {
			_, err := io.WriteString(w, "<svg>"+name+"</svg>")
			return err
		},
		PDF: func(w io.Writer, s Snapshot, paper string) error {
			_, err := io.WriteString(w, "%PDF "+paper)
			return err
		}})
}

// get asks for target on the loopback.
func get(h http.Handler, method, target string, header ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://127.0.0.1:8470"+target, nil)
	for i := 0; i+1 < len(header); i += 2 {
		if header[i] == "Host" {
			r.Host = header[i+1]
		} else {
			r.Header.Set(header[i], header[i+1])
		}
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func TestAnswers(t *testing.T) {
	h := handler(newHand())
	for _, c := range []struct {
		method, target string
		status         int
		kind, body     string
	}{
		{"GET", "/api/plan", 200, "application/json; charset=utf-8", `"name":"Test: bench"`},
		{"GET", "/api/drawings", 200, "application/json; charset=utf-8", `[{"name":"plan-finished","title":"Plan","room":"","view":"finished"},{"name":"section","title":"Section","room":"","view":""}]`},
		{"GET", "/api/drawings/plan-finished", 200, "application/json; charset=utf-8", `"box":{"min":[0,0],"max":[10,5]}`},
		{"GET", "/api/drawings/section.svg", 200, "image/svg+xml", "<svg>section</svg>"},
		{"GET", "/api/drawings/nothing", 404, "application/json; charset=utf-8", `no drawing is called \"nothing\"`},
		{"GET", "/api/drawings/nothing.svg", 404, "application/json; charset=utf-8", `"hint"`},
		{"GET", "/api/drawings/..%2f..%2fetc%2fpasswd", 404, "application/json; charset=utf-8", `"error"`},
		{"GET", "/api/pack.pdf", 200, "application/pdf", "%PDF a4"},
		{"GET", "/api/pack.pdf?paper=Letter", 200, "application/pdf", "%PDF letter"},
		{"GET", "/api/pack.pdf?paper=a5", 400, "application/json; charset=utf-8", "paper=a4 or paper=letter"},
		{"GET", "/api/", 404, "application/json; charset=utf-8", `"error":"no such address: /api/"`},
		{"GET", "/api/secret", 404, "application/json; charset=utf-8", `"hint"`},
		{"GET", "/", 200, "text/html; charset=utf-8", "<!doctype html>"},
		{"GET", "/index.html", 200, "text/html; charset=utf-8", "<!doctype html>"},
		{"GET", "/embed.go", 404, "application/json; charset=utf-8", `"error"`},
		{"GET", "/no/such/page", 404, "application/json; charset=utf-8", `"error"`},
		{"POST", "/api/plan", 405, "application/json; charset=utf-8", `"error"`},
		{"DELETE", "/", 405, "application/json; charset=utf-8", `"error"`},
	} {
		w := get(h, c.method, c.target)
		if w.Code != c.status || w.Header().Get("Content-Type") != c.kind || !strings.Contains(w.Body.String(), c.body) {
			t.Errorf("%s %s: got %d %s %.300s, want %d %s with %s", c.method, c.target, w.Code, w.Header().Get("Content-Type"), w.Body, c.status, c.kind, c.body)
		}
	}
}

func TestErrorsAreJSON(t *testing.T) {
	h := handler(newHand())
	for _, target := range []string{"/api/x", "/x", "/api/drawings/x", "/api/pack.pdf?paper=x"} {
		var p problem
		w := get(h, "GET", target)
		if err := json.Unmarshal(w.Body.Bytes(), &p); err != nil || p.Error == "" || p.Hint == "" {
			t.Errorf("%s: got %s, %v, want an error and a hint", target, w.Body, err)
		}
	}
}

func TestHead(t *testing.T) {
	server := httptest.NewServer(handler(newHand()))
	defer server.Close()
	for _, target := range []string{"/", "/api/plan", "/api/pack.pdf", "/api/events", "/api/drawings/section.svg"} {
		r, err := http.Head(server.URL + target)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r.Body)
		if err = errors.Join(err, r.Body.Close()); err != nil || r.StatusCode != 200 || len(body) != 0 {
			t.Errorf("HEAD %s: got %d, %d bytes, %v, want 200 and no body", target, r.StatusCode, len(body), err)
		}
	}
}

func TestHosts(t *testing.T) {
	h := handler(newHand())
	for host, want := range map[string]int{
		"localhost": 200, "localhost:8470": 200, "LOCALHOST.:1": 200, "127.0.0.1": 200, "127.9.9.9:80": 200, "[::1]:8470": 200, "[::1]": 200,
		"shop.local:8470": 200, "evil.example": 421, "127.0.0.1.evil.example:8470": 421, "192.168.1.7:8470": 421, "0.0.0.0:8470": 421,
		"localhost.evil.example": 421, "": 421, "localhost:8470:9": 421,
	} {
		for _, target := range []string{"/", "/api/plan", "/api/pack.pdf"} {
			if w := get(h, "GET", target, "Host", host); w.Code != want {
				t.Errorf("host %q, %s: got %d, want %d", host, target, w.Code, want)
			}
		}
	}
}

func TestEveryAnswerCarriesThePolicy(t *testing.T) {
	h := handler(newHand())
	for _, target := range []string{"/", "/nothing", "/api/plan", "/api/nothing", "/api/drawings", "/api/pack.pdf"} {
		for _, host := range []string{"localhost", "evil.example"} {
			got := get(h, "GET", target, "Host", host).Header()
			if !strings.HasPrefix(got.Get("Content-Security-Policy"), "default-src 'self';") || strings.Contains(got.Get("Content-Security-Policy"), "unsafe") {
				t.Errorf("%s: policy %q", target, got.Get("Content-Security-Policy"))
			}
			if got.Get("X-Content-Type-Options") != "nosniff" {
				t.Errorf("%s: no nosniff", target)
			}
			if strings.HasPrefix(target, "/api/") && got.Get("Cache-Control") != "no-store" {
				t.Errorf("%s: Cache-Control %q, want no-store", target, got.Get("Cache-Control"))
			}
		}
	}
	svg := get(h, "GET", "/api/drawings/section.svg").Header().Get("Content-Security-Policy")
	if !strings.HasPrefix(svg, "default-src 'none';") || !strings.Contains(svg, "sandbox") {
		t.Errorf("a drawing's policy is %q, want nothing loaded and a sandbox", svg)
	}
}

func TestCrossOriginWritesAreRefused(t *testing.T) {
	h := handler(newHand())
	w := get(h, "POST", "/api/plan", "Sec-Fetch-Site", "cross-site")
	if w.Code != http.StatusForbidden || !strings.Contains(w.Body.String(), `"hint"`) {
		t.Errorf("got %d %s, want 403 with a hint", w.Code, w.Body)
	}
}

func TestETag(t *testing.T) {
	source := newHand()
	h := handler(source)
	tag := get(h, "GET", "/api/plan").Header().Get("ETag")
	if tag != `"v1"` {
		t.Fatalf("ETag %s, want \"v1\"", tag)
	}
	for header, want := range map[string]int{tag: 304, "W/" + tag: 304, `"x", "v1"`: 304, "*": 304, `"x"`: 200, "": 200} {
		w := get(h, "GET", "/api/plan", "If-None-Match", header)
		if w.Code != want || (want == 304 && w.Body.Len() > 0) {
			t.Errorf("If-None-Match %s: got %d with %d bytes, want %d", header, w.Code, w.Body.Len(), want)
		}
	}
	source.set(snapshot("v2"), nil)
	if w := get(h, "GET", "/api/plan", "If-None-Match", tag); w.Code != 200 || w.Header().Get("ETag") != `"v2"` {
		t.Errorf("after a change: got %d %s, want 200 and a new tag", w.Code, w.Header().Get("ETag"))
	}
}

// A refusal is an error as a reader of documents makes it.
type refusal struct{ error }

func (refusal) Hint() string { return "write a length such as 1220 mm" }

func (refusal) Reasons() []finding.Finding {
	return []finding.Finding{{Code: "job/length", Severity: finding.Stop, Where: finding.Where{File: "piece.yaml", Line: 3}, Text: "The length is missing."}}
}

func TestNoPlan(t *testing.T) {
	source := newHand()
	source.err = refusal{errors.New("read piece.yaml:3: the length is missing")}
	h := handler(source)
	for _, target := range []string{"/api/plan", "/api/drawings", "/api/drawings/section", "/api/pack.pdf"} {
		w := get(h, "GET", target)
		var p problem
		if err := json.Unmarshal(w.Body.Bytes(), &p); err != nil {
			t.Fatal(err)
		}
		if w.Code != 422 || p.Hint != "write a length such as 1220 mm" || len(p.Findings) != 1 || p.Findings[0].Where.Line != 3 {
			t.Errorf("%s: got %d %+v, want 422 with hint and place", target, w.Code, p)
		}
	}
	if w := get(h, "GET", "/"); w.Code != 200 {
		t.Errorf("the page itself: got %d, want 200: it shows the reason", w.Code)
	}
}

func TestPackWithStopSaysSo(t *testing.T) {
	stop := finding.Rule{Code: "relief/too-deep", Severity: finding.Stop}.At(finding.Where{}, "The basin is too deep.")
	for _, c := range []struct {
		fs   []finding.Finding
		want string
	}{{nil, "inline; filename=Test--bench-a4.pdf"}, {[]finding.Finding{stop}, "inline; filename=STOP-Test--bench-a4.pdf"}} {
		w := get(handler(newHand(c.fs...)), "GET", "/api/pack.pdf?paper=a4")
		if w.Code != 200 || w.Header().Get("Content-Disposition") != c.want {
			t.Errorf("got %d %s, want 200 %s", w.Code, w.Header().Get("Content-Disposition"), c.want)
		}
	}
}

func TestRenderersAbsentOrFailing(t *testing.T) {
	bare := New(Options{Source: newHand()})
	broken := func(io.Writer, Snapshot, string) error { return errors.New("no ink") }
	failing := New(Options{Source: newHand(), SVG: broken, PDF: broken})
	for _, target := range []string{"/api/pack.pdf", "/api/drawings/section.svg"} {
		if w := get(bare, "GET", target); w.Code != http.StatusNotImplemented {
			t.Errorf("%s without a renderer: got %d, want 501", target, w.Code)
		}
		if w := get(failing, "GET", target); w.Code != 500 || !strings.Contains(w.Body.String(), "no ink") || w.Header().Get("Content-Type") != "application/json; charset=utf-8" {
			t.Errorf("%s with a failing renderer: got %d %s %s", target, w.Code, w.Header().Get("Content-Type"), w.Body)
		}
	}
}
