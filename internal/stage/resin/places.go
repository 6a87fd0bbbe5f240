package resin

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/units"
)

func isTooLarge(err error) bool { return errors.Is(err, heat.ErrTooLarge) }

// lagging is how much later than the quicker parts of the basin a place must harden to
// be spoken of, and mostSoft how many are. Chosen.
const (
	lagging  units.Duration = 12
	mostSoft int            = 5
)

// soft lists shallow places that harden late, the latest first, and the last of all.
func (h *hearth) soft(r heat.Result, endH float64) ([]Soft, *Soft) {
	cols := slices.Clone(r.Columns)
	if len(cols) == 0 {
		return nil, nil
	}
	slices.SortStableFunc(cols, func(a, b heat.Column) int {
		return cmp.Or(cmp.Compare(b.SetH, a.SetH), cmp.Compare(a.CureADay, b.CureADay))
	})
	quick := cols[len(cols)*3/4].SetH
	var out []Soft
	for _, c := range cols {
		s := h.softAt(r, c, endH)
		apart := func(o Soft) bool { return math.Hypot((o.X-s.X).MM(), (o.Y-s.Y).MM()) > 150 }
		if len(out) >= mostSoft || c.SetH < quick+float64(lagging) {
			break
		}
		if !slices.ContainsFunc(out, func(o Soft) bool { return !apart(o) }) {
			out = append(out, s)
		}
	}
	last := h.softAt(r, cols[0], endH)
	return out, &last
}

func (h *hearth) softAt(r heat.Result, c heat.Column, endH float64) Soft {
	return Soft{X: units.Length(r.OffXMM + (float64(c.I)+0.5)*r.CellMM), Y: units.Length(r.OffYMM + (float64(c.J)+0.5)*r.CellMM),
		Deep: units.Length(c.DeepMM), At24: c.CureADay, Hard: finite(units.Duration(c.SetH)), When: momentOf(c.SetH, 0, endH)}
}

// fields puts the frames into maps.
func (h *hearth) fields(r heat.Result) *Fields {
	f := &Fields{X0: units.Length(r.OffXMM), Y0: units.Length(r.OffYMM), Step: units.Length(r.CellMM), NX: r.CX, NY: r.CY, SectionY: units.Length(r.CutYMM)}
	n := poured(r)
	for k := n; k >= 0; k-- {
		f.Levels = append(f.Levels, units.Length(h.deep-r.LayersMM[k]))
	}
	for _, x := range r.Frames {
		f.Hours = append(f.Hours, x.Hour)
		f.Hottest = append(f.Hottest, small(x.TempC, 10))
		f.Least = append(f.Least, small(x.Cure, 1000))
		f.Temp = append(f.Temp, small(upwards(x.CutC, r.CX, n), 10))
		f.Cure = append(f.Cure, small(upwards(x.CutCure, r.CX, n), 1000))
	}
	maps := []struct {
		to   *[]int16
		from func(heat.Column) float64
	}{
		{&f.Gel, func(c heat.Column) float64 { return c.GelH }}, {&f.Bonds, func(c heat.Column) float64 { return c.BondsH }},
		{&f.Tacky, func(c heat.Column) float64 { return c.TackyH }}, {&f.Hard, func(c heat.Column) float64 { return c.SetH }},
		{&f.Sand, func(c heat.Column) float64 { return c.SmoothH }},
	}
	for _, m := range maps {
		*m.to = slices.Repeat([]int16{NoValue}, r.CX*r.CY)
		for _, c := range r.Columns {
			(*m.to)[c.J*r.CX+c.I] = rounded(m.from(c), 10)
		}
	}
	return f
}

// poured returns how many layers from the top hold resin: those above the deepest floor.
func poured(r heat.Result) int {
	n := 0
	for n+1 < len(r.LayersMM) && r.LayersMM[n+1] <= r.DeepestMM+1e-6 {
		n++
	}
	return n
}

// upwards returns the first n rows of a cut, the lowest first.
func upwards(rows []float32, nx, n int) []float32 {
	out := make([]float32, 0, n*nx)
	for k := n - 1; k >= 0; k-- {
		out = append(out, rows[k*nx:(k+1)*nx]...)
	}
	return out
}

func small(v []float32, scale float64) []int16 {
	out := make([]int16, len(v))
	for i, x := range v {
		out[i] = rounded(float64(x), scale)
	}
	return out
}

// rounded returns v by scale as a small whole number; NoValue for what is none or does
// not fit.
func rounded(v, scale float64) int16 {
	if x := math.Round(v * scale); x == x && math.Abs(x) < 32000 {
		return int16(x)
	}
	return NoValue
}
