package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/resin"
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
	r, found := resin.Compute(in)
	w.plan.Resin = r
	return fmt.Sprintf("%.2f l in %d lifts; order %.2f l = %.2f US gal", r.Volume, len(r.Lifts), r.Order, r.OrderUS), found
}
