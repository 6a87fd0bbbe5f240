package concrete

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// reach is how far a coat stands off the mould with all before it: sideways, at right
// angles to face and floors, and at the heel.
type reach struct{ side, top, heel float64 }

// reaches returns the cumulative thicknesses coat by coat. Where a zone has another
// thickness in all, the first coat keeps its own and the others share the difference:
//
//	top_k = t_1 + (t_k - t_1) (T - t_1)/(t - t_1)
func (c *computer) reaches(coats []Coat) []reach {
	out := make([]reach, len(coats))
	t := 0.0
	for i, coat := range coats {
		t += coat.Thickness.MM()
		out[i] = reach{t, t, t}
	}
	if len(coats) < 2 {
		return out
	}
	first, all := out[0].side, t
	for i := range out {
		share := (out[i].side - first) / (all - first)
		if top, ok := c.zone("top"); ok {
			out[i].top = first + share*(top.Thickness.MM()-first)
		}
		if heel, ok := c.zone("heel"); ok {
			out[i].heel = first + share*(heel.Thickness.MM()-first)
		}
	}
	return out
}

func (c *computer) zone(surface string) (Zone, bool) {
	for _, z := range c.in.Zones {
		if z.Surface == surface {
			return z, true
		}
	}
	return Zone{}, false
}

// zonesThatAre keeps the zones that can be cast.
func (c *computer) zonesThatAre(zones []Zone, coats []Coat, height units.Length) []Zone {
	var out []Zone
	if len(coats) == 0 {
		return nil
	}
	for _, z := range zones {
		w := finding.Where{Field: "shell.zones", Element: z.Surface}
		switch {
		case z.Surface != "top" && z.Surface != "heel":
			c.say(badZone.At(w, "%q is no zone of the shell, so it is left out.", z.Surface))
		case len(coats) < 2 || !(z.Thickness >= coats[0].Thickness) || z.Thickness > largest:
			c.say(badZone.At(w, "The zone %s of %.1f mm cannot be made with a first coat of %.1f mm that stays, so it is left out.", z.Surface, z.Thickness, coats[0].Thickness).Measured(float64(z.Thickness), float64(coats[0].Thickness), "mm"))
		case z.Surface == "heel" && !(z.Height > 0 && z.Height < height):
			c.say(badZone.At(w, "The heel is %.1f mm high of a side of %.1f mm, so it is left out.", z.Height, height).Measured(float64(z.Height), float64(height), "mm"))
		default:
			out = append(out, z)
		}
	}
	return out
}

// flattened returns the mould with its heights scaled by f. A shell that reaches a
// sideways and b upwards is the image of one that reaches a every way:
//
//	V(a, b; mould) = b/a V(a; mould with heights scaled by a/b)
//
// since offsetting with an ellipsoid is offsetting with a ball in scaled heights.
func (m mould) flattened(f float64) mould {
	m.height *= f
	m.foam *= f
	layers := make([]prism, len(m.layers))
	for i, l := range m.layers {
		layers[i] = prism{l.top * f, l.region}
	}
	m.layers = layers
	return m
}

// heel returns how much the shell's volume changes where the sides are t rather than
// side thick for the last height mm below the rim, mm3. The heel stands above the
// bottom's coat and, as everywhere in this trade, clear of the knockout.
func (m mould) heel(side, t, height float64) float64 {
	ring := func(t float64) float64 {
		t = max(0, min(t, min(m.length, m.width)/2))
		return m.length*m.width - (m.length-2*t)*(m.width-2*t)
	}
	return (ring(t) - ring(side)) * height
}
