package plan

import (
	"context"
	"fmt"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/job"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Input is what the readers made of the maker's files.
type Input struct {
	Job         *job.Job
	Basin       []BasinStep       // from the show face down; empty when no drawing could be read
	Heights     *Heights          // depths of a height map, finished view, where it lies in the outer box; nil without one
	Findings    []finding.Finding // of the document and the drawing
	Fingerprint string            // hash of everything read
}

// A BasinStep is one step of the basin placed in the outer box.
type BasinStep struct {
	Name   string
	Depth  units.Length // thickness of the step
	Region view.Region[view.Finished]
	Where  finding.Where
}

// Options are what a computation may be given beside its input. They do not change its
// result.
type Options struct {
	Memory   *Memory        // results of earlier computations; nil computes all
	Progress func(Progress) // called as the work goes on, from one goroutine at a time; may be nil
}

// Progress is how far a computation is.
type Progress struct {
	Stage string  `json:"stage"`
	Title string  `json:"title"`
	Share float64 `json:"share"` // of this stage, 0 to 1
	Doing string  `json:"doing"` // what a slow stage is at; ""
}

// Compute works the whole job through with no options.
func Compute(ctx context.Context, in Input) (*Plan, error) {
	return Options{}.Compute(ctx, in)
}

// Compute works the whole job through, stage by stage, and shows them in building order. A stage
// whose input is missing is marked "not computed" and says what it waits for; the
// others still show. The error is only for a cancelled context or a missing job.
func (o Options) Compute(ctx context.Context, in Input) (*Plan, error) {
	if in.Job == nil {
		return nil, fmt.Errorf("compute plan: no document")
	}
	w := &wiring{ctx: ctx, memory: o.Memory, report: o.Progress, in: in, job: in.Job, plan: newPlan(in)}
	w.add(in.Findings)
	for _, s := range []work{
		{"relief", "Basin", w.relief},
		{"knockout", "Knockout", w.knockout},
		{"toolpath", "Cutting programs", w.toolpath},
		{"proof", "Proof of the programs", w.proof},
		{"base", "Base", w.base},
		{"concrete", "Concrete", w.concrete},
		{"resin", "Resin", w.resin},
		{"form", "Form", w.form}, // after the resin: the dam must bear its heat
		{"structure", "Weights", w.structure},
		{"calendar", "Calendar", w.calendar},
		{"cost", "Shopping list", w.cost},
	} {
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("compute plan: before %s: %w", s.name, err)
		}
		w.stage = Progress{Stage: s.name, Title: s.title}
		w.progress(0, "")
		summary, found := s.run()
		w.add(found)
		w.plan.Stages = append(w.plan.Stages, Stage{Name: s.name, Title: s.title, State: state(summary, found), Summary: summary})
	}
	if err := ctx.Err(); err != nil {
		return nil, fmt.Errorf("compute plan: %w", err)
	}
	finding.Sort(w.plan.Findings)
	inBuildingOrder(w.plan.Stages)
	return w.plan, nil
}

// work is one stage to be computed.
type work struct {
	name, title string
	run         func() (string, []finding.Finding)
}

// buildingOrder is how the stages are shown. The form is built long before resin is
// poured, and computed after it.
var buildingOrder = []string{"relief", "knockout", "toolpath", "proof", "form", "base", "concrete", "resin", "structure", "calendar", "cost"}

func inBuildingOrder(stages []Stage) {
	slices.SortStableFunc(stages, func(a, b Stage) int {
		return slices.Index(buildingOrder, a.Name) - slices.Index(buildingOrder, b.Name)
	})
}

// wiring carries the plan while it grows.
type wiring struct {
	ctx    context.Context
	memory *Memory
	report func(Progress)
	stage  Progress // at work
	in     Input
	job    *job.Job
	plan   *Plan
}

// progress tells how far the stage at work is.
func (w *wiring) progress(share float64, doing string) {
	if w.report == nil {
		return
	}
	p := w.stage
	p.Share, p.Doing = share, doing
	w.report(p)
}

func (w *wiring) add(fs []finding.Finding) { w.plan.Findings = append(w.plan.Findings, fs...) }

// basin reports whether there is a basin to work on.
func (w *wiring) basin() bool { return len(w.plan.Relief.Layers) > 0 }

const notComputed = "not computed: no basin could be read from the drawing"

// state sums a stage up in one word.
func state(summary string, fs []finding.Finding) string {
	if summary == notComputed {
		return "not computed"
	}
	switch worst, _ := finding.Worst(fs); worst {
	case finding.Stop:
		return "stop"
	case finding.Caution:
		return "caution"
	}
	return "fine"
}

func newPlan(in Input) *Plan {
	j := in.Job
	p := &Plan{Findings: []finding.Finding{}, Assumed: assumed(j)}
	p.Piece = Piece{
		Name: j.Name, Version: j.Version, Client: j.Client, Units: j.Units,
		Length: j.Length, Width: j.Width, Height: j.Height, Shell: j.Shell(),
		Board: j.Form.Measured, Corner: j.Form.Corner, Resin: j.Resin.Card.Name,
		Room: j.Room.Temperature, Date: j.Shop.Start, Fingerprint: in.Fingerprint,
		Mixes: []string{},
	}
	for _, c := range j.Coats {
		p.Piece.Mixes = append(p.Piece.Mixes, c.Mix.Name)
	}
	return p
}
