package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/stage/structure"
	"pourwright/internal/units"
)

func (w *wiring) concrete() (string, []finding.Finding) {
	j := w.job
	if !w.basin() {
		w.plan.Concrete = concrete.Nothing()
		return notComputed, nil
	}
	in := concrete.Input{
		Length: j.Length, Width: j.Width, Height: j.Height,
		Tub: j.Mixing.Tub, Freeboard: j.Mixing.Freeboard, Spare: j.Mixing.Spare,
		People: j.Mixing.People, Temperature: j.Room.Temperature,
	}
	for _, l := range w.plan.Relief.Layers {
		in.Layers = append(in.Layers, concrete.Layer{From: l.From, To: l.To, Region: l.Region})
	}
	for _, c := range j.Coats {
		in.Coats = append(in.Coats, concrete.Coat{Name: c.Name, Thickness: c.Thickness, Mix: c.Mix})
	}
	r, found := concrete.Compute(in)
	w.plan.Concrete = r
	return fmt.Sprintf("shell %.1f l, %.1f kg, %d coats, %d batches", r.ShellVolume, r.ShellMass, len(r.Coats), len(r.Batches)), found
}

func (w *wiring) structure() (string, []finding.Finding) {
	j := w.job
	if !w.basin() {
		return notComputed, nil
	}
	in := structure.Input{
		ShellVolume: w.plan.Concrete.ShellVolume, ShellDensity: w.curedDensity(),
		ResinVolume: w.plan.Relief.Volume, ResinDensity: j.Resin.Card.Density.Value,
		FormMass: w.plan.Form.Mass, FoamMass: w.plan.Knockout.Mass, People: j.Mixing.People,
	}
	for _, e := range j.Extras {
		in.Extras = append(in.Extras, structure.Extra{Name: e.Name, Mass: e.Mass})
	}
	r, found := structure.Compute(in)
	w.plan.Structure = r
	return fmt.Sprintf("delivered %.1f kg; turned over with its form %.1f kg", r.Delivered, r.Flip), found
}

// curedDensity returns the density of the shell: the coats' cured densities,
// weighted by their volumes.
func (w *wiring) curedDensity() units.Density {
	var mass, volume float64
	for i, c := range w.plan.Concrete.Coats {
		if i >= len(w.job.Coats) {
			break
		}
		mass += float64(c.Volume) * float64(w.job.Coats[i].Mix.Cured.Value)
		volume += float64(c.Volume)
	}
	if volume <= 0 {
		return 0
	}
	return units.Density(mass / volume)
}
