package plan

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/stage/proof"
	"pourwright/internal/stage/toolpath"
	"pourwright/internal/units"
)

// proof reads every program back and simulates it. Only a verified program may be
// written to a file.
func (w *wiring) proof() (string, []finding.Finding) {
	w.plan.Proof = []proof.Result{}
	if !w.basin() {
		return notComputed, nil
	}
	programs := w.plan.Toolpath.Programs
	var found []finding.Finding
	verified, gouged, tabs := 0, units.Length(0), 0
	for i, p := range programs {
		w.progress(float64(i)/float64(len(programs)), p.File)
		for _, in := range []proof.Input{w.proofInput(p), w.dryInput(p)} {
			if in.Text == "" {
				continue
			}
			r, fs := remember(w, "proof "+in.File, in, proof.Compute)
			w.plan.Proof = append(w.plan.Proof, r)
			found = append(found, fs...)
			if r.Verified && !in.DryRun {
				verified++
			}
			for _, part := range r.Parts {
				gouged, tabs = units.Length(math.Max(gouged.MM(), part.Gouged.MM())), tabs+len(part.Tabs)
			}
		}
	}
	if len(programs) == 0 {
		return "no programs to prove", found
	}
	return fmt.Sprintf("%d of %s verified, at most %.3f mm into a part, %s left standing", verified, units.Count(len(programs), "program", "programs"), gouged, units.Count(tabs, "tab", "tabs")), found
}

func (w *wiring) proofInput(p toolpath.Program) proof.Input {
	used, card := w.plan.Toolpath.Used, w.job.Machine
	in := proof.Input{
		File: p.File, Text: p.Text, SizeX: units.Length(p.Box.Max.X), SizeY: units.Length(p.Box.Max.Y), Thickness: p.Stock,
		Overcut: used.Overcut, BedX: w.job.Knockout.BedX, BedY: w.job.Knockout.BedY,
		Cutter: p.Cutter, Flute: card.Flute.Value, SafeHeight: used.SafeHeight, Rapid: used.Rapid, MaxFeed: card.MaxFeed.Value,
	}
	if p.Index < 0 {
		if c := w.toolpathInput().Carving; c != nil {
			in.Carving = &proof.Carving{Heights: c.Heights, Ball: c.Ball, Scallop: c.Scallop}
		}
		return in
	}
	s := w.plan.Knockout.Sheets[p.Index]
	in.SizeX, in.SizeY, in.Outline = s.SizeX, s.SizeY, s.Outline
	for i, q := range s.Placements {
		part := proof.Part{ID: q.Part, Region: q.Region, TabsOn: w.tabsOn(q)}
		for _, t := range p.Tabs {
			if t.Place == i {
				part.Tabs++
				part.TabWidth, part.TabHeight = max(part.TabWidth, t.Width), max(part.TabHeight, t.Height)
			}
		}
		in.Parts = append(in.Parts, part)
	}
	return in
}

func (w *wiring) dryInput(p toolpath.Program) proof.Input {
	in := w.proofInput(p)
	in.File, in.Text, in.DryRun, in.Parts = p.DryRun.File, p.DryRun.Text, true, nil
	in.Carving = nil
	return in
}
