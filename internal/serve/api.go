package serve

import (
	"bytes"
	"encoding/json"
	"fmt"
	"mime"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/finding"
	"pourwright/internal/plan"
)

// plan answers with the plan as JSON; its ETag is the snapshot's version.
func (a *api) plan(w http.ResponseWriter, r *http.Request) {
	if s, ok := a.snapshot(w, r); ok {
		answer(w, r, s, s.Plan)
	}
}

// cure answers with the cure in space and time, null where it was not computed. It
// stands apart from the plan, which it would outweigh.
func (a *api) cure(w http.ResponseWriter, r *http.Request) {
	if s, ok := a.snapshot(w, r); ok {
		answer(w, r, s, s.Plan.Resin.Fields)
	}
}

// A title is one line of the list of drawings.
type title struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	Room  string `json:"room"`
	View  string `json:"view"`
}

// drawings answers with the list of drawings.
func (a *api) drawings(w http.ResponseWriter, r *http.Request) {
	s, ok := a.snapshot(w, r)
	if !ok {
		return
	}
	list := []title{}
	for _, d := range s.Drawings {
		list = append(list, title{d.Name, d.Title, d.Room, d.View})
	}
	answer(w, r, s, list)
}

// drawing answers with one display list, or with its SVG for NAME.svg.
func (a *api) drawing(w http.ResponseWriter, r *http.Request) {
	s, ok := a.snapshot(w, r)
	if !ok {
		return
	}
	name, isSVG := strings.CutSuffix(r.PathValue("name"), ".svg")
	i := slices.IndexFunc(s.Drawings, func(d drawing.Drawing) bool { return d.Name == name })
	switch {
	case i < 0:
		fail(w, http.StatusNotFound, problem{Error: fmt.Sprintf("no drawing is called %q", name), Hint: "/api/drawings lists them"})
	case !isSVG:
		answer(w, r, s, s.Drawings[i])
	case a.SVG == nil:
		fail(w, http.StatusNotImplemented, problem{Error: "this program was built without SVG drawings", Hint: "print the page in their place"})
	default:
		a.svg(w, r, s, name)
	}
}

func (a *api) svg(w http.ResponseWriter, r *http.Request, s Snapshot, name string) {
	var b bytes.Buffer
	if err := a.SVG(&b, s, name); err != nil {
		fail(w, http.StatusInternalServerError, explain(err))
		return
	}
	// A drawing opened by itself carries its own styles and runs nothing.
	w.Header().Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; font-src data:; sandbox")
	attach(w, "image/svg+xml", fileName(s, name, "svg"))
	send(w, r, s, b.Bytes())
}

// papers are the papers a pack can be printed on.
var papers = []string{"a4", "letter"}

// pack answers with the shop pack. A pack with stop findings is not withheld, since
// the maker needs its drawings to settle them; its name and its cover say STOP.
func (a *api) pack(w http.ResponseWriter, r *http.Request) {
	paper := strings.ToLower(r.URL.Query().Get("paper"))
	if paper == "" {
		paper = "a4"
	}
	if !slices.Contains(papers, paper) {
		fail(w, http.StatusBadRequest, problem{Error: fmt.Sprintf("no paper is called %q", paper), Hint: "use paper=a4 or paper=letter"})
		return
	}
	s, ok := a.snapshot(w, r)
	if !ok {
		return
	}
	if a.PDF == nil {
		fail(w, http.StatusNotImplemented, problem{Error: "this program was built without the shop pack", Hint: "print the page in its place"})
		return
	}
	var b bytes.Buffer
	if err := a.PDF(&b, s, paper); err != nil {
		fail(w, http.StatusInternalServerError, explain(err))
		return
	}
	attach(w, "application/pdf", fileName(s, paper, "pdf"))
	send(w, r, s, b.Bytes())
}

// stopped reports whether p has stop findings.
func stopped(p *plan.Plan) bool {
	worst, some := finding.Worst(p.Findings)
	return some && worst == finding.Stop
}

// fileName returns the name to save a file under: the piece's name and what it is,
// led by STOP where the plan has stop findings.
func fileName(s Snapshot, what, extension string) string {
	name := strings.TrimSpace(s.Plan.Piece.Name + " " + what)
	if stopped(s.Plan) {
		name = "STOP " + name
	}
	word := func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}
	return strings.Join(strings.Fields(strings.Map(word, name)), "-") + "." + extension
}

// attach sets a file's type and the name to save it under.
func attach(w http.ResponseWriter, kind, name string) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", mime.FormatMediaType("inline", map[string]string{"filename": name}))
}

// answer sends v as JSON.
func answer(w http.ResponseWriter, r *http.Request, s Snapshot, v any) {
	body, err := json.Marshal(v)
	if err != nil {
		fail(w, http.StatusInternalServerError, problem{Error: "write the answer: " + err.Error(), Hint: "this is a fault of the program: keep the document and report it"})
		return
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	send(w, r, s, body)
}

// send sends body with the snapshot's version as its tag, or "not modified".
func send(w http.ResponseWriter, r *http.Request, s Snapshot, body []byte) {
	tag := strconv.Quote(s.Version)
	w.Header().Set("ETag", tag)
	if matches(r.Header.Get("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	w.Header().Set("Content-Length", strconv.Itoa(len(body)))
	_, _ = w.Write(body) // a reader who left needs no answer
}

// matches reports whether an If-None-Match header holds tag.
func matches(header, tag string) bool {
	for _, t := range strings.Split(header, ",") {
		if t = strings.TrimSpace(t); t == "*" || strings.TrimPrefix(t, "W/") == tag {
			return true
		}
	}
	return false
}
