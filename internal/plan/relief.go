package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/relief"
	"pourwright/internal/units"
)

// Chosen: places narrower than these are hard to pack, hold or cut; the maker sees
// them circled.
const (
	narrowNeck   units.Length = 25 // of the basin: a stirring stick and a heat gun still get in
	narrowLand   units.Length = 40 // of concrete between basin and side: two shells of about 20 mm
	narrowIsland units.Length = 30 // of an island: two face coats and something between
	meetsSide    units.Length = 0.01
)

func (w *wiring) relief() (string, []finding.Finding) {
	j := w.job
	in := relief.Input{
		Length: j.Length, Width: j.Width, Height: j.Height, Shell: j.Shell(),
		Neck: narrowNeck, Land: narrowLand, Island: narrowIsland, Tolerance: meetsSide,
	}
	for _, s := range w.in.Basin {
		in.Steps = append(in.Steps, relief.Step{Name: s.Name, Depth: s.Depth, Region: s.Region, Where: s.Where})
	}
	if len(in.Steps) == 0 {
		w.plan.Relief = relief.Result{Layers: []relief.Layer{}, Mouths: []relief.Mouth{}, Fill: []relief.FillPoint{}, Narrow: []relief.Narrow{}}
		return notComputed, nil
	}
	r, found := relief.Compute(in)
	w.plan.Relief = r
	if !w.basin() {
		return notComputed, found
	}
	return fmt.Sprintf("%s, %s, %.1f mm deep, %.2f l", mouths(len(r.Mouths)), units.Count(len(r.Layers), "layer", "layers"), r.Depth, r.Volume), found
}

func mouths(n int) string {
	if n == 0 {
		return "closed basin"
	}
	return units.Count(n, "mouth", "mouths")
}
