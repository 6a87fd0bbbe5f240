package serve

import (
	"fmt"
	"net/http"
	"time"

	"pourwright/internal/units"
)

// mostTried is how many fields may be tried at once. Chosen: more is no trial.
const mostTried = 60

// try answers with the plan as it would be with the query's fields in place of the
// document's: /api/try?resin.lifts[0].depth=30+mm. The document stays as it is.
func (a *api) try(w http.ResponseWriter, r *http.Request) {
	if a.Try == nil {
		fail(w, http.StatusNotImplemented, problem{Error: "this program was built without trials", Hint: "edit the piece's document; the page follows"})
		return
	}
	fields, ok := fieldsOf(w, r, "resin.peak_limit=55+C")
	if !ok {
		return
	}
	unhurried(w)
	s, err := a.Try(r.Context(), fields)
	if err != nil {
		fail(w, http.StatusUnprocessableEntity, explain(err))
		return
	}
	answer(w, r, s, s.Plan)
}

// longestTrial is how long a trial may take until its answer is written: a basin of many
// lifts takes minutes. Chosen. It ends at once when the reader leaves.
const longestTrial = 15 * time.Minute

// unhurried puts off the time by which an answer must be written.
func unhurried(w http.ResponseWriter) {
	// A writer without deadlines, as in tests, has none to put off.
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(longestTrial))
}

// cancel stops what is computed.
func (a *api) cancel(w http.ResponseWriter, r *http.Request) {
	if worker, ok := a.Source.(Worker); ok {
		worker.Cancel()
	}
	w.WriteHeader(http.StatusNoContent)
}

// again takes up what was stopped.
func (a *api) again(w http.ResponseWriter, r *http.Request) {
	if worker, ok := a.Source.(Worker); ok {
		worker.Again()
	}
	w.WriteHeader(http.StatusNoContent)
}

// fieldsOf returns the fields of the query, or answers that there are none or too many.
func fieldsOf(w http.ResponseWriter, r *http.Request, example string) (map[string]string, bool) {
	fields := map[string]string{}
	for name, values := range r.URL.Query() {
		fields[name] = values[len(values)-1]
	}
	if len(fields) == 0 || len(fields) > mostTried {
		fail(w, http.StatusBadRequest, problem{Error: units.Count(len(fields), "field was", "fields were") + " given", Hint: fmt.Sprintf("give 1 to %d, such as ?%s", mostTried, example)})
		return nil, false
	}
	return fields, true
}

// fit answers with a resin's cure as estimated from the query's fields.
func (a *api) fit(w http.ResponseWriter, r *http.Request) {
	if a.Fit == nil {
		fail(w, http.StatusNotImplemented, problem{Error: "this program was built without fitting", Hint: "use the command line: pourwright shelf fit FILE"})
		return
	}
	fields, ok := fieldsOf(w, r, "pot_life=4.5+h&rated_depth=50+mm")
	if !ok {
		return
	}
	unhurried(w)
	got, err := a.Fit(r.Context(), fields)
	if err != nil {
		fail(w, http.StatusUnprocessableEntity, explain(err))
		return
	}
	answer(w, r, Snapshot{}, got)
}
