package concrete

import (
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// leanSealer is the least that a litre of acrylic sealer covers, m2.
// Source: [memory], 6.1 to 7.4 m2/l.
const leanSealer = 6.1

// masks says what is done to each kind of surface before resin: what shows is sealed
// so that spilled resin wipes off; the basin stays keyed, since resin holds on open
// concrete and peels off sealer.
func (c *computer) masks(s Surfaces) []Mask {
	box := geom.Rect(0, 0, c.in.Length.MM(), c.in.Width.MM()).Region()
	basin, face := view.Of[view.Finished](nil), box
	if len(c.in.Layers) > 0 {
		basin = c.in.Layers[0].Region
		face = geom.Subtract(box, basin.Shape())
	}
	out := []Mask{}
	for _, m := range []Mask{
		{Surface: "face", Finish: "sealed", Area: s.Face, Why: "resin that runs over wipes off; masked 5 mm back from the basin's edge", Region: view.Of[view.Finished](face)},
		{Surface: "wall", Finish: "sealed", Area: s.Wall, Why: "drips wipe off", Region: view.Of[view.Finished](nil)},
		{Surface: "floor", Finish: "keyed", Area: s.Floor, Why: "resin must hold: sanded open, no dust, no wax, no sealer but a thin coat of resin", Region: basin},
		{Surface: "riser", Finish: "keyed", Area: s.Riser, Why: "as the floors; release wax washed off", Region: view.Of[view.Finished](nil)},
	} {
		if m.Finish == "sealed" && slices.Contains(c.in.Bare, m.Surface) {
			m.Finish, m.Why = "bare", "left unsealed as the document says; mask it with film against drips"
		}
		if m.Finish == "sealed" {
			m.Sealer = units.Volume(max(0, m.Area.M2()) / leanSealer)
		}
		out = append(out, m)
	}
	return out
}
