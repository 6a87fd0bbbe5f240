package resin

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A Tint is a colour the maker saw: so much tint, by mass of mixed resin, looks like
// Colour over a pale floor at Depth.
type Tint struct {
	Colour string         // #rrggbb; "" for clear resin
	Depth  units.Length   // of the sample
	Share  units.Fraction // tint by mass of mixed resin
	Floor  string         // colour of the floor under the sample and the piece; "" is a pale grey
}

// A Shade is the colour of the basin at one depth.
type Shade struct {
	Depth  units.Length `json:"depth_mm"`
	Colour string       `json:"colour"` // #rrggbb
}

// paleFloor is bare sealed concrete. Chosen.
const paleFloor = "#d8d6d0"

// darkest is the least light a channel of a sample may keep: below it the sample says
// nothing about other depths. Chosen.
const darkest = 0.002

// shades returns the colour at depths, light going down and up again through the resin
// (Beer-Lambert) in each channel of linear light:
//
//	L(d) = F exp(-2 mu d),  mu = -ln(L0/F) / (2 d0)
//
// L0 the sample's light at depth d0, F the floor's. A sample brighter than the floor in
// a channel counts as not absorbing there. Surface gloss is left out.
func (t Tint) shades(depths []units.Length) ([]Shade, error) {
	sample, err := linear(t.Colour)
	if err != nil {
		return nil, err
	}
	floorText := t.Floor
	if floorText == "" {
		floorText = paleFloor
	}
	floor, err := linear(floorText)
	if err != nil {
		return nil, err
	}
	if !(t.Depth > 0) || !known(t.Depth) {
		return nil, fmt.Errorf("the sample's depth is %g mm", t.Depth.MM())
	}
	out := []Shade{}
	for _, d := range depths {
		var light [3]float64
		for k := range light {
			ratio := min(1, max(sample[k], darkest)/max(floor[k], darkest))
			light[k] = floor[k] * math.Pow(ratio, d.MM()/t.Depth.MM())
		}
		out = append(out, Shade{Depth: d, Colour: hex(light)})
	}
	return out, nil
}

// tint weighs the tint of each lift, the same share in all, and shows the colour at a
// quarter, half and all of the depth.
func (c *computer) tint(r *Result) {
	r.Shades = []Shade{}
	t := c.in.Tint
	if t.Colour == "" {
		return
	}
	depth := c.top().Depth
	shades, err := t.shades([]units.Length{depth / 4, depth / 2, depth})
	if err != nil {
		c.say(badTint.At(finding.Where{Element: "resin.tint"}, "The tint cannot be worked out: %v.", err))
		return
	}
	r.Shades = shades
	share := min(atLeastZero(t.Share), mostTint)
	for i := range r.Lifts {
		l := &r.Lifts[i]
		l.Tint = l.Mass * units.Mass(share)
		for k := range l.Batches {
			b := &l.Batches[k]
			b.Tint = (b.A + b.B) * units.Mass(share)
		}
	}
	if t.Share > mostTint {
		c.say(badTint.At(finding.Where{Element: "resin.tint"}, "Tint at %.1f %% of the resin disturbs its cure; %.1f %% is the most.", 100*t.Share, 100*mostTint).Measured(100*float64(t.Share), 100*float64(mostTint), "%"))
	}
}

// mostTint is the greatest share of tint by mass. Common practice, no source.
const mostTint units.Fraction = 0.06

// linear reads #rrggbb as linear light, 0 to 1. Source: [iec-61966-2-1].
func linear(colour string) ([3]float64, error) {
	var rgb [3]uint8
	if n, err := fmt.Sscanf(colour, "#%02x%02x%02x", &rgb[0], &rgb[1], &rgb[2]); n != 3 || err != nil || len(colour) != 7 {
		return [3]float64{}, fmt.Errorf("%q is no colour: write six hex digits after #, such as #1e5f74", colour)
	}
	var out [3]float64
	for k, v := range rgb {
		s := float64(v) / 255
		if s <= 0.04045 {
			out[k] = s / 12.92
		} else {
			out[k] = math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return out, nil
}

// hex writes linear light as #rrggbb.
func hex(light [3]float64) string {
	out := "#"
	for _, l := range light {
		s := 12.92 * l
		if l > 0.0031308 {
			s = 1.055*math.Pow(l, 1/2.4) - 0.055
		}
		out += fmt.Sprintf("%02x", int(math.Round(255*min(1, max(0, s)))))
	}
	return out
}
