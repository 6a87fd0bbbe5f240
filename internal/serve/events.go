package serve

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"time"
)

// Times of an event stream. Chosen: a heartbeat well within the half minute after
// which things between give up, and a write deadline that drops a reader who sleeps.
const (
	heartbeat  = 15 * time.Second
	writeLimit = 10 * time.Second
)

// events streams "plan" with the version of what there is to fetch or the reason for
// none, first at once and then at every change; "progress" while it is computed; and
// "closing" when the program stops.
func (a *api) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	s := &stream{w: w, control: http.NewResponseController(w)}
	changes := a.Source.Watch(r.Context())
	beat := time.NewTicker(heartbeat)
	defer beat.Stop()
	err := a.news(r.Context(), s)
	for err == nil {
		select {
		case <-r.Context().Done():
			_ = s.send("closing", struct{}{}) // the reader may have left first
			return
		case _, open := <-changes:
			if open {
				err = a.news(r.Context(), s)
			} else {
				changes = nil // the request is ending too
			}
		case <-beat.C:
			err = s.write(": still here\n\n")
		}
	}
}

// news sends how far a computation is, or what there is to fetch where that is not
// what was sent last.
func (a *api) news(ctx context.Context, s *stream) error {
	if w, ok := a.Source.(Worker); ok {
		if p := w.Working(); p != nil {
			s.last = offer{Version: "working"}
			return s.send("progress", p)
		}
	}
	o := a.offer(ctx)
	if o.same(s.last) {
		return nil
	}
	s.last = o
	return s.send("plan", o)
}

// An offer says what there is to fetch: a version, or the reason for none.
type offer struct {
	Version string   `json:"version"`
	Problem *problem `json:"problem,omitempty"`
}

// same reports whether o tells what p told.
func (o offer) same(p offer) bool {
	return o.Version == p.Version && (o.Problem == nil) == (p.Problem == nil) && (o.Problem == nil || o.Problem.Error == p.Problem.Error)
}

func (a *api) offer(ctx context.Context) offer {
	s, err := a.Source.Current(ctx)
	if err != nil {
		p := explain(err)
		return offer{Problem: &p}
	}
	return offer{Version: s.Version}
}

// A stream writes events to one reader.
type stream struct {
	w       http.ResponseWriter
	control *http.ResponseController
	last    offer // sent
}

func (s *stream) send(event string, data any) error {
	body, err := json.Marshal(data)
	if err != nil {
		return fmt.Errorf("send event %s: %w", event, err)
	}
	return s.write(fmt.Sprintf("event: %s\ndata: %s\n\n", event, body))
}

// write sends text at once and gives up on a reader who does not take it in time.
func (s *stream) write(text string) error {
	// A writer without deadlines, as in tests, still streams.
	_ = s.control.SetWriteDeadline(time.Now().Add(writeLimit))
	if _, err := s.w.Write([]byte(text)); err != nil {
		return err
	}
	return s.control.Flush()
}
