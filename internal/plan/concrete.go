package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/stage/structure"
	"pourwright/internal/units"
)

func (w *wiring) concrete() (string, []finding.Finding) {
	if !w.basin() {
		w.plan.Concrete = concrete.Nothing()
		return notComputed, nil
	}
	in := w.casting()
	r, found := concrete.Compute(in)
	w.plan.Concrete = r
	return fmt.Sprintf("shell %.1f l, %.1f kg, %s, %s", r.ShellVolume, r.ShellMass, units.Count(len(r.Coats), "coat", "coats"), units.Count(len(r.Batches), "batch", "batches")), found
}

// casting gathers what the concrete is computed from.
func (w *wiring) casting() concrete.Input {
	j, k := w.job, w.job.Casting
	in := concrete.Input{
		Length: j.Length, Width: j.Width, Height: j.Height,
		Tub: j.Mixing.Tub, Freeboard: j.Mixing.Freeboard, Spare: j.Mixing.Spare,
		People: j.Mixing.People, Temperature: j.Room.Temperature, Humidity: j.Room.Humidity,
		Mixer: k.Mixer, PackRate: k.PackRate, Scale: k.Scale, Patch: k.Patch,
		MixTemp: k.MixTemp, HasMix: k.HasMix, Draught: k.Draught, DryDays: k.Drying, Bare: k.Bare,
		Needs:   concrete.Needs{Demould: k.Demould, Flip: k.Flip, Work: k.Work},
		Scrim:   concrete.Scrim{Use: k.Scrim, Roll: k.Roll, Lap: k.Lap},
		Climate: w.climate(),
	}
	for _, l := range w.plan.Relief.Layers {
		in.Layers = append(in.Layers, concrete.Layer{From: l.From, To: l.To, Region: l.Region})
	}
	for _, m := range w.plan.Relief.Mouths {
		in.Mouths = append(in.Mouths, concrete.Edge{Side: fmt.Sprint(m.Side), From: m.From, Width: m.Width})
	}
	for _, n := range w.plan.Relief.Narrow {
		in.Necks = append(in.Necks, concrete.Spot{X: n.X, Y: n.Y, Width: n.Width})
	}
	for _, c := range j.Coats {
		in.Coats = append(in.Coats, concrete.Coat{Name: c.Name, Thickness: c.Thickness, Mix: c.Mix})
	}
	for _, z := range k.Zones {
		in.Zones = append(in.Zones, concrete.Zone{Surface: z.Surface, Thickness: z.Thickness, Height: z.Height})
	}
	for _, t := range k.Tests {
		in.Records = append(in.Records, concrete.Record{Age: t.Age, Temperature: t.Temperature, Strength: t.Strength})
	}
	return in
}

// climate returns the room's temperatures in time; without any, the one temperature
// holds.
func (w *wiring) climate() concrete.Climate {
	room := w.job.Room
	if len(room.History) > 0 {
		out := concrete.Climate{From: "stated"}
		if room.Logged {
			out.From = "logged"
		}
		for _, s := range room.History {
			out.Stretches = append(out.Stretches, concrete.Stretch{Time: s.Time, Temp: s.Temp})
		}
		return out
	}
	if room.DayHours > 0 {
		return concrete.DayAndNight(room.Temperature, room.Night, room.DayHours)
	}
	return concrete.Climate{}
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
