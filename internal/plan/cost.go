package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/stage/cost"
	"pourwright/internal/units"
)

func (w *wiring) cost() (string, []finding.Finding) {
	if !w.basin() {
		w.plan.Cost = cost.Result{Lines: []cost.Line{}}
		return notComputed, nil
	}
	r, found := cost.Compute(cost.Input{Needs: w.needs()})
	w.plan.Cost = r
	if r.Unpriced > 0 {
		return fmt.Sprintf("%s, %d without a price", units.Count(len(r.Lines), "line", "lines"), r.Unpriced), found
	}
	return fmt.Sprintf("%s, %.2f", units.Count(len(r.Lines), "line", "lines"), r.Total), found
}

func (w *wiring) needs() []cost.Need {
	j, p := w.job, w.plan
	needs := []cost.Need{
		{Name: j.Form.Board.Name, Room: "form", Quantity: float64(p.Form.Cutting.Buy), Unit: "sheet", Packages: j.Form.Board.Packages},
		{Name: j.Foam.Card.Name, Room: "knockout", Quantity: float64(p.Knockout.Buy), Unit: "sheet", Packages: j.Foam.Card.Packages},
	}
	needs = append(needs, w.mixNeeds()...)
	needs = append(needs, cost.Need{Name: j.Resin.Card.Name + ", A and B together", Room: "resin",
		Quantity: float64(p.Resin.Order), Unit: "l", Packages: j.Resin.Card.Packages})
	needs = append(needs, w.baseNeeds()...)
	return needs
}

// baseNeeds adds up the carcass's board, bars, caulk, wax, release and screws: whole
// sheets and bars as the cutting plans buy them.
func (w *wiring) baseNeeds() []cost.Need {
	j, p := w.job, w.plan
	var needs []cost.Need
	if j.Base != nil && p.Base.Cutting.Buy > 0 {
		needs = append(needs, cost.Need{Name: j.Base.Board.Name, Room: "base", Quantity: float64(p.Base.Cutting.Buy), Unit: "sheet", Packages: j.Base.Board.Packages})
	}
	for _, b := range p.Base.Bars {
		for _, e := range j.Extras {
			if e.Tube != nil && e.Tube.Name == b.Bar && b.Buy > 0 {
				needs = append(needs, cost.Need{Name: b.Bar, Room: "base", Quantity: float64(b.Buy), Unit: "bar", Packages: e.Tube.Packages})
				break
			}
		}
	}
	for _, s := range p.Form.Bought {
		quantity := s.Need
		if s.Pieces > 0 {
			quantity = float64(s.Pieces)
		}
		needs = append(needs, cost.Need{Name: s.Name, Room: "form", Quantity: quantity, Unit: s.Unit})
	}
	if n := p.Form.Screws.Count; n > 0 {
		needs = append(needs, cost.Need{Name: p.Form.Screws.Name, Room: "form", Quantity: float64(n), Unit: "piece", Packages: j.Form.Making.Screw.Packages})
	}
	return needs
}

// mixNeeds adds up the batches part by part, in the order parts first appear; water
// comes from the tap.
func (w *wiring) mixNeeds() []cost.Need {
	var needs []cost.Need
	index := map[string]int{}
	for _, b := range w.plan.Concrete.Batches {
		for _, part := range b.Parts {
			if part.Role == "water" {
				continue
			}
			i, ok := index[part.Name]
			if !ok {
				i = len(needs)
				index[part.Name] = i
				needs = append(needs, cost.Need{Name: part.Name, Room: "concrete", Unit: "kg", Packages: w.packages(part.Role)})
			}
			needs[i].Quantity += float64(part.Mass)
		}
	}
	return needs
}

// packages returns the packages stated for the part that a mix's packages are of:
// the dry blend of a bagged mix, the cement of a scratch mix.
func (w *wiring) packages(role string) []material.Package {
	for _, c := range w.job.Coats {
		if (c.Mix.Kind == material.Bagged && role == "blend") || (c.Mix.Kind == material.Scratch && role == "cement") {
			return c.Mix.Packages
		}
	}
	return nil
}
