package serve

import (
	"context"
	"io"
	"net/http"

	"pourwright/web"
)

// Options are what a handler needs.
type Options struct {
	Source Source
	// SVG writes the drawing of the given name; without it, .svg is not offered.
	SVG func(w io.Writer, s Snapshot, name string) error
	// PDF writes the shop pack on "a4" or "letter"; without it, it is not offered.
	PDF func(w io.Writer, s Snapshot, paper string) error
	// Try works the piece out with some of its fields typed otherwise, as the maker
	// tries them on the page; nothing is kept. Without it, it is not offered.
	Try func(ctx context.Context, fields map[string]string) (Snapshot, error)
	// Fit estimates a resin's cure from the fields of its data sheet; without it, it is
	// not offered.
	Fit func(ctx context.Context, fields map[string]string) (any, error)
	// Hosts are names beside localhost and the loopback addresses that requests may
	// be for, such as this machine's name on the shop's network.
	Hosts []string
}

// New returns the handler of the page and its API.
func New(o Options) http.Handler {
	a := &api{Options: o}
	mux := http.NewServeMux()
	mux.HandleFunc("/api/plan", a.plan)
	mux.HandleFunc("/api/drawings", a.drawings)
	mux.HandleFunc("/api/drawings/{name}", a.drawing)
	mux.HandleFunc("/api/pack.pdf", a.pack)
	mux.HandleFunc("/api/cure", a.cure)
	mux.HandleFunc("/api/events", a.events)
	mux.HandleFunc("/api/try", a.try)
	mux.HandleFunc("/api/fit", a.fit)
	mux.HandleFunc("POST "+cancelling, a.cancel)
	mux.HandleFunc("POST "+resuming, a.again)
	mux.HandleFunc("/api/", unknown)
	files, built := web.Pages()
	mux.Handle("/", pages(files, built))
	return guard(o.Hosts, mux)
}

func unknown(w http.ResponseWriter, r *http.Request) {
	fail(w, http.StatusNotFound, problem{Error: "no such address: " + r.URL.Path, Hint: "the page starts at /"})
}

type api struct{ Options }

// snapshot returns the current snapshot, or answers with the reason there is none.
func (a *api) snapshot(w http.ResponseWriter, r *http.Request) (Snapshot, bool) {
	s, err := a.Source.Current(r.Context())
	if err != nil {
		fail(w, http.StatusUnprocessableEntity, explain(err))
		return s, false
	}
	return s, true
}
