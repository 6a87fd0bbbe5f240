package relief

import (
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// maxMM is more than any length the geometry takes.
const maxMM = 1e6

// Compute checks the steps against the box and each other and measures the layers.
// Steps without depth or area are left out with a finding; a box without size, which
// the document does not let pass, gives an empty result. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	c := &computer{in: in, box: geom.Rect(0, 0, in.Length.MM(), in.Width.MM())}
	r := Result{Layers: []Layer{}, Mouths: []Mouth{}, Fill: []FillPoint{}, Narrow: []Narrow{}}
	if !(in.Length > 0 && in.Width > 0 && in.Length < maxMM && in.Width < maxMM) {
		return r, c.found
	}
	r.Layers = c.layers()
	if len(r.Layers) == 0 {
		return r, c.found
	}
	last := r.Layers[len(r.Layers)-1]
	r.Depth = last.To
	for _, l := range r.Layers {
		r.Volume += l.Volume
	}
	r.Fill = fill(r.Layers)
	r.Mouths = c.mouths(r.Layers)
	r.Narrow = c.narrow(r.Layers)
	if r.Depth+in.Shell > in.Height+1e-6 {
		c.say(tooDeep.At(finding.Where{Element: last.Name}, "The basin is %.1f mm deep and the shell %.1f mm thick, and the piece is only %.1f mm high.", r.Depth, in.Shell, in.Height).
			Measured(float64(r.Depth+in.Shell), float64(in.Height), "mm"))
	}
	return r, c.found
}

type computer struct {
	in    Input
	box   geom.Box
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

func at(w finding.Where, p geom.Point) finding.Where {
	w.View, w.At = view.Finished{}.Name(), &[2]float64{p.X, p.Y}
	return w
}

// fill returns the kinks of litres against depth, from the deepest floor up.
func fill(layers []Layer) []FillPoint {
	out := []FillPoint{{Area: layers[len(layers)-1].Area}}
	depth, volume := units.Length(0), units.Volume(0)
	for i := len(layers) - 1; i >= 0; i-- {
		l := layers[i]
		depth += l.To - l.From
		volume += l.Volume
		out = append(out, FillPoint{Depth: depth, Volume: volume, Area: l.Area})
	}
	return out
}
