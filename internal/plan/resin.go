package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

func (w *wiring) resin() (string, []finding.Finding) {
	j := w.job
	if !w.basin() {
		w.plan.Resin = resin.Result{Lifts: []resin.Lift{}}
		return notComputed, nil
	}
	in := resin.Input{
		TopArea: w.plan.Relief.Layers[0].Area,
		Wetted:  w.plan.Concrete.Surfaces.Floor + w.plan.Concrete.Surfaces.Riser,
		Card:    j.Resin.Card, Bucket: j.Resin.Bucket, Freeboard: j.Resin.Freeboard,
		Reserve: j.Resin.Reserve, Overfill: j.Resin.Overfill, Film: j.Resin.Film,
		Gap: j.Resin.Gap, Room: j.Room.Temperature,
		Pot: j.Resin.Pot, Vacuum: j.Resin.Vacuum, Slope: j.Resin.Slope, Length: j.Length,
		Tint: resin.Tint{Colour: j.Resin.Tint.Colour, Depth: j.Resin.Tint.Depth, Share: j.Resin.Tint.Share, Floor: j.Resin.Tint.Floor},
	}
	for _, f := range w.plan.Relief.Fill {
		in.Fill = append(in.Fill, resin.FillPoint{Depth: f.Depth, Volume: f.Volume})
	}
	w.oven(&in)
	r, found := remember(w, "resin", in, func(in resin.Input) (resin.Result, []finding.Finding) {
		return resin.Run(w.ctx, in, w.progress)
	})
	w.plan.Resin = r
	return fmt.Sprintf("%.2f l in %s; order %.2f l = %.2f US gal", r.Volume, units.Count(len(r.Lifts), "lift", "lifts"), r.Order, r.OrderUS), found
}

// oven adds what the cure is computed from.
func (w *wiring) oven(in *resin.Input) {
	j := w.job
	in.Width, in.Shell, in.Board = j.Width, j.Shell(), j.Form.Measured
	in.FoamLeft, in.Limit, in.Pouring = j.Resin.FoamLeft, j.Resin.PeakLimit, j.Resin.Pouring
	in.Night, in.DayHours = j.Room.Night, j.Room.DayHours
	if j.Room.Logged {
		for _, s := range j.Room.History {
			in.History = append(in.History, resin.Stretch{Time: s.Time, Temp: s.Temp})
		}
	}
	for _, l := range w.plan.Relief.Layers {
		in.Basin = append(in.Basin, resin.Layer{From: l.From, To: l.To, Region: l.Region})
	}
	for _, m := range w.plan.Relief.Mouths {
		in.Dams = append(in.Dams, resin.Dam{Side: m.Side, From: m.From, Width: m.Width, Depth: m.Depth})
	}
	for d, spans := range j.Shop.Hours {
		for _, s := range spans {
			in.Hours[d] = append(in.Hours[d], resin.Span(s))
		}
	}
	in.DamParts, in.Others = w.damParts(), j.Resin.Others
	in.Foam = resin.Part{Name: j.Foam.Card.Name, Most: j.Foam.Card.Service.Value}
	for _, l := range j.Resin.Lifts {
		in.Own = append(in.Own, resin.OwnLift{Depth: l.Depth, After: l.After})
	}
}

// damParts lists what warm resin meets at a mouth, and what each bears.
func (w *wiring) damParts() []resin.Part {
	d := w.job.Form.Making.Dam
	var out []resin.Part
	add := func(name string, most material.Value[units.Temperature]) {
		if most.Known() {
			out = append(out, resin.Part{Name: name, Most: most.Value})
		}
	}
	add(d.Board.Name, d.Board.Service)
	add(d.Liner.Name, d.Liner.Service)
	if d.Release != nil {
		add(d.Release.Name, d.Release.Service)
	}
	return out
}
