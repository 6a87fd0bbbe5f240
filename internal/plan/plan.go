// Package plan is the wiring: it turns a job into the Input of each stage, in
// building order, and gathers results and findings. It is the only place where one
// stage's Result becomes another's Input.
package plan

import (
	"pourwright/internal/finding"
	"pourwright/internal/stage/base"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/stage/cost"
	"pourwright/internal/stage/form"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/stage/proof"
	"pourwright/internal/stage/relief"
	"pourwright/internal/stage/resin"
	"pourwright/internal/stage/structure"
	"pourwright/internal/stage/toolpath"
	"pourwright/internal/units"
)

// A Plan is everything computed for one piece. Same document, drawing and shelf:
// same bytes.
type Plan struct {
	Piece     Piece             `json:"piece"`
	Relief    relief.Result     `json:"relief"`
	Knockout  knockout.Result   `json:"knockout"`
	Toolpath  toolpath.Result   `json:"toolpath"`
	Proof     []proof.Result    `json:"proof"` // of every program and dry run, in their order
	Form      form.Result       `json:"form"`
	Base      base.Result       `json:"base"`
	Concrete  concrete.Result   `json:"concrete"`
	Structure structure.Result  `json:"structure"`
	Resin     resin.Result      `json:"resin"`
	Calendar  calendar.Result   `json:"calendar"`
	Cost      cost.Result       `json:"cost"`
	Stages    []Stage           `json:"stages"`
	Assumed   []Assumed         `json:"measure_first"` // values that are typical, not measured
	Findings  []finding.Finding `json:"findings"`
}

// Piece is the head of the document.
type Piece struct {
	Name        string            `json:"name"`
	Version     string            `json:"version"`
	Client      string            `json:"client,omitempty"`
	Units       string            `json:"units"` // mm or in
	Length      units.Length      `json:"length_mm"`
	Width       units.Length      `json:"width_mm"`
	Height      units.Length      `json:"height_mm"`
	Shell       units.Length      `json:"shell_mm"`
	Board       units.Length      `json:"board_mm"` // form board, as measured
	Corner      string            `json:"corner"`
	Mixes       []string          `json:"mixes"`
	Resin       string            `json:"resin"`
	Room        units.Temperature `json:"room_temp_c"`
	Date        string            `json:"date"`        // of the document's start, never of the clock; "" if not stated
	Fingerprint string            `json:"fingerprint"` // first 8 hex digits of the input's hash: which inputs made this paper
}

// Stage tells how far one stage came.
type Stage struct {
	Name    string `json:"name"`    // relief, knockout, toolpath, form, concrete, structure, resin, calendar, cost
	Title   string `json:"title"`   // in the maker's words
	State   string `json:"state"`   // fine, caution, stop, not computed
	Summary string `json:"summary"` // one line with numbers
}

// Assumed is a value that would be better measured.
type Assumed struct {
	What   string `json:"what"`
	Value  string `json:"value"`
	Origin string `json:"origin"`
	Source string `json:"source"`
	Field  string `json:"field"` // where the maker would write the measured value
}
