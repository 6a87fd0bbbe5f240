package serve

import (
	"encoding/json"
	"errors"
	"net/http"

	"pourwright/internal/finding"
)

// A problem is what is answered in place of a result.
type problem struct {
	Error    string            `json:"error"`
	Hint     string            `json:"hint"`
	Findings []finding.Finding `json:"findings,omitempty"` // all that is wrong, where known
	Stopped  bool              `json:"stopped,omitempty"`  // by the maker: nothing is wrong
}

// explain turns an error into a problem. An error may carry a Hint() string and
// Reasons() []finding.Finding.
func explain(err error) problem {
	p := problem{Error: err.Error(), Hint: "mend the document; the page follows within a second"}
	if errors.Is(err, ErrCancelled) {
		p.Stopped, p.Hint = true, "take it up again when you like, or change the document"
	}
	var h interface{ Hint() string }
	if errors.As(err, &h) && h.Hint() != "" {
		p.Hint = h.Hint()
	}
	var r interface{ Reasons() []finding.Finding }
	if errors.As(err, &r) {
		p.Findings = r.Reasons()
	}
	return p
}

// fail answers with p as JSON.
func fail(w http.ResponseWriter, status int, p problem) {
	body, err := json.Marshal(p)
	if err != nil {
		body = []byte(`{"error":"the reason cannot be told","hint":""}`)
	}
	h := w.Header()
	h.Set("Content-Type", "application/json; charset=utf-8")
	h.Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(body) // a reader who left needs no answer
}
