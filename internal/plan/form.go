package plan

import (
	"fmt"
	"math"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/job"
	"pourwright/internal/material"
	"pourwright/internal/stage/form"
	"pourwright/internal/units"
)

func (w *wiring) form() (string, []finding.Finding) {
	r, found := remember(w, "form", w.formInput(), form.Compute)
	found = append(found, w.oddStock()...)
	w.placed(found)
	w.plan.Form = r
	return fmt.Sprintf("%s of panel, %s corners, board %.1f mm, %.1f kg; %s to buy, %s, %s",
		units.Count(len(r.Panels), "kind", "kinds"), w.job.Form.Corner, w.job.Form.Measured, r.Mass, units.Count(r.Cutting.Buy, "sheet", "sheets"),
		units.Count(len(r.Cutting.Cuts), "cut", "cuts"), units.Count(r.Screws.Count, "screw", "screws")), found
}

func (w *wiring) formInput() form.Input {
	j := w.job
	f, m := j.Form, j.Form.Making
	in := form.Input{
		Length: j.Length, Width: j.Width, Height: j.Height, Thickness: f.Measured, Corner: f.Corner, ButtOrder: f.ButtOrder, Seat: m.Sides,
		SheetX: f.Board.Length.Value, SheetY: f.Board.Width.Value, Density: f.Board.Density.Value, Kerf: f.Kerf, MostTilt: units.Angle(m.Tilt),
		Board:  form.Board{Name: f.Board.Name, Modulus: units.Pressure(1000 * f.Board.Modulus.Value), Gravity: f.Board.Gravity.Value, Edge: float64(f.Board.Edge.Value)},
		Mix:    form.Mix{Density: w.freshDensity(), Flowable: m.Flowable},
		Screw:  form.Screw{Name: m.Screw.Name, Diameter: m.Screw.Diameter.Value, Length: m.Screw.Length.Value},
		Batten: form.Batten{Width: m.BattenX, Depth: m.BattenY},
		Bow:    m.Bow, Bead: m.Bead, Shell: j.Shell(),
		Wax: form.Coat{Name: "paste wax", Coverage: 55}, Release: form.Coat{Name: "form release, water-based", Coverage: 30},
		Dam:   form.DamRules{Board: m.DamBoard, Lap: m.DamLap, Liner: m.Dam.Liner.Name, Most: w.damBears()},
		Resin: form.Resin{Density: j.Resin.Card.Density.Value, Fluid: j.Resin.Card.Gel.Value, Peak: w.damFace()},
		Cut: cutlist.Input{Price: priceOf(f.Board.Packages), Trim: f.Trim, SmallestX: m.OffcutX, SmallestY: m.OffcutY, Narrowest: m.Narrowest,
			Stock: w.boards(f.Board.Name, f.Measured), Field: "form"},
	}
	for _, p := range j.Outline {
		in.Outline = append(in.Outline, geom.Point{X: p[0].MM(), Y: p[1].MM()})
	}
	for _, x := range m.Inserts {
		in.Inserts = append(in.Inserts, form.Insert{Name: x.Name, Kind: x.Kind, X: x.X, Y: x.Y, Diameter: x.Diameter, Depth: x.Depth, Field: x.Field})
	}
	if !w.basin() {
		return in
	}
	in.Covered = w.plan.Relief.Layers[0].Area
	in.Foot = w.plan.Relief.Layers[0].Perimeter
	for _, l := range w.plan.Relief.Layers {
		in.Basin = append(in.Basin, form.Layer{From: l.From, To: l.To, Region: l.Region})
	}
	for _, x := range w.plan.Relief.Mouths {
		in.Mouths = append(in.Mouths, form.Mouth{Side: x.Side, From: x.From, Width: x.Width, Depth: x.Depth, Opening: x.Opening, Profile: x.Profile})
	}
	return in
}

// damFace returns what the dam's face gets, likely at most, as computed; where the cure
// was not, what the resin may reach.
func (w *wiring) damFace() units.Temperature {
	if k := w.plan.Resin.Cure; k.Computed {
		return max(k.Dam, k.DamHigh)
	}
	return w.job.Resin.PeakLimit
}

// damBears returns what the dam's weakest part bears; 0 where none is known.
func (w *wiring) damBears() units.Temperature {
	least := units.Temperature(0)
	for _, p := range w.damParts() {
		if least == 0 || p.Most < least {
			least = p.Most
		}
	}
	return least
}

// freshDensity returns the density of the heaviest fresh mix that a card states, or
// 2100 kg/m3.
func (w *wiring) freshDensity() units.Density {
	heaviest := units.Density(0)
	for _, c := range w.job.Coats {
		heaviest = max(heaviest, c.Mix.WetDensity.Value, c.Mix.Cured.Value)
	}
	if heaviest <= 0 {
		return 2100
	}
	return heaviest
}

// priceOf returns the price of one sheet or bar; 0 when not stated.
func priceOf(packages []material.Package) float64 {
	for _, p := range packages {
		if p.Quantity.Value > 0 && p.Price.Value > 0 {
			return p.Price.Value / p.Quantity.Value
		}
	}
	return 0
}

// apartMM is how far owned boards may differ in thickness from the measured one.
// Chosen: what a plane takes off a joint.
const apartMM = 0.3

// boards returns the owned boards of a material and of the measured thickness.
func (w *wiring) boards(name string, measured units.Length) []cutlist.Stock {
	var out []cutlist.Stock
	for _, s := range w.job.Stock {
		if s.Material != name || s.Width <= 0 || !same(s, measured) {
			continue
		}
		one := cutlist.Stock{Name: s.Name, Length: s.Length, Width: s.Width, Count: s.Count}
		for _, m := range s.Marks {
			one.Marks = append(one.Marks, cutlist.Mark(m))
		}
		out = append(out, one)
	}
	return out
}

func same(s job.Stock, measured units.Length) bool {
	return s.Measured == 0 || math.Abs((s.Measured-measured).MM()) <= apartMM
}

// oddStock says which owned boards are left out for their thickness.
func (w *wiring) oddStock() []finding.Finding {
	var out []finding.Finding
	for _, s := range w.job.Stock {
		if s.Material == w.job.Form.Board.Name && s.Width > 0 && !same(s, w.job.Form.Measured) {
			out = append(out, otherThickness.At(finding.Where{Field: s.Field + ".measured"}, "%s is %.1f mm thick and the form's board %.1f mm; it is left out.", s.Name, s.Measured, w.job.Form.Measured).
				Measured(s.Measured.MM(), w.job.Form.Measured.MM(), "mm"))
		}
	}
	return out
}

var otherThickness = finding.Rule{Code: "form/stock-thickness", Severity: finding.Caution, Title: "boards of a form are equally thick",
	Remedy: "Cut all panels of a form from boards of one thickness, or write this one under form.measured."}
