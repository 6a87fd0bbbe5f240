package resin

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// bandOf returns the band of peaks: what lies inside when bandOut is left out at each
// end, widened to hold the peak itself.
func bandOf(peaks []units.Temperature, peak units.Temperature) (low, high units.Temperature) {
	s := slices.Sorted(slices.Values(peaks))
	if len(s) == 0 {
		return peak, peak
	}
	out := int(bandOut * float64(len(s)))
	return min(s[out], peak), max(s[len(s)-1-out], peak)
}

// heatFindings says what the cure means for the piece.
func (c *computer) heatFindings(r *Result) {
	k, name := r.Cure, c.in.Card.Name
	where := finding.Where{Element: fmt.Sprintf("lift %d", k.PeakIn)}
	text := fmt.Sprintf("Lift %d of %s peaks at %.0f C, %.1f h after the first pour (%.0f to %.0f C by what is not known exactly)", k.PeakIn, name, k.Peak, k.PeakAt, k.Low, k.High)
	switch {
	case k.Peak > boils:
		c.say(boiling.At(where, "%s: it boils, foams and can smoke.", text).Measured(float64(k.Peak), float64(boils), "C"))
	case k.Peak > k.Limit:
		c.say(tooHot.At(where, "%s; %.0f C is the most that was asked for.", text, k.Limit).Measured(float64(k.Peak), float64(k.Limit), "C"))
	case k.High > k.Limit && !mayTip(k):
		c.say(overInTen.At(where, "%s; one time in ten it passes the %.0f C that were asked for.", text, k.Limit).Measured(float64(k.High), float64(k.Limit), "C"))
	case mayTip(k):
		c.say(mayRun.At(where, "%s: a little more warmth, depth or hardener tips it over.", text).Measured(float64(k.High), float64(yellows), "C"))
	}
	c.depths(r)
	c.contact(k)
	c.softPlaces(k)
	c.sanding(k)
	c.scuffing(r)
	switch e := k.Error; {
	case e.Grid > e.Asked+touching:
		c.say(widened.At(finding.Where{}, "The basin is too large for cells of %.0f mm: %d cells of %.0f mm are used, and on cells of %.0f mm the peak differs by %.1f K.", e.Asked, e.Cells, e.Grid, e.Wide, e.Off).Measured(e.Grid.MM(), e.Asked.MM(), "mm"))
	case e.Off > mostApart:
		c.say(coarse.At(finding.Where{}, "The peak on a grid of %.0f mm and on one of %.0f mm differ by %.1f K.", e.Grid, e.Wide, e.Off).Measured(float64(e.Off), float64(mostApart), "K"))
	}
}

// mayTip reports whether the band reaches where a little more tips the pour over.
func mayTip(k Cure) bool { return k.High > yellows }

// depths says which of the maker's own lifts leave the resin's range.
func (c *computer) depths(r *Result) {
	most := c.in.Card.MaxDepth.Value
	for i, p := range r.scheme.Pours {
		if deep := p.To - p.From; most > 0 && deep > most+0.05 {
			c.say(tooDeep.At(finding.Where{Element: fmt.Sprintf("lift %d", i+1)}, "Lift %d is %.1f mm deep and %s is for at most %.0f mm; its peak is computed as %.0f C, %.0f to %.0f C by what is not known exactly.",
				i+1, deep, c.in.Card.Name, most, r.scheme.Forecast.Lifts[i].Peak, r.Cure.Low, r.Cure.High).Measured(deep.MM(), most.MM(), "mm"))
		}
	}
}

const mostApart units.Temperature = 2 // K. Chosen: below what the room does

func (c *computer) softPlaces(k Cure) {
	if len(k.Soft) == 0 {
		return
	}
	s := k.Soft[0] // it stands for all; the maps show the rest
	x, y := s.X.MM(), s.Y.MM()
	c.say(staysSoft.At(finding.Where{At: &[2]float64{x, y}, View: "finished"}, "Where only %.0f mm of resin stand, a day after the last pour %.0f %% have reacted, and it is not hard before %.0f h after the first one.", s.Deep, 100*s.At24, s.When.H))
}

// scuffing says which lifts, and where on them, no longer bond when the next one comes.
func (c *computer) scuffing(r *Result) {
	s := r.scheme
	if s == nil || len(s.Scuff) == 0 {
		return
	}
	var names []string
	for _, n := range s.Scuff {
		names = append(names, fmt.Sprintf("%d%s", n, scuffedZones(s, n)))
	}
	noun, verb := "lift", "no longer bonds by itself"
	if len(names) > 1 {
		noun, verb = "lifts", "no longer bond by themselves"
	}
	c.say(scuff.At(finding.Where{}, "When the next one comes, %s %s %s.", noun, strings.Join(names, ", "), verb))
}

// scuffedZones names the parts of lift n that no longer bond when the next comes; "" where
// that is all of it.
func scuffedZones(s *Scheme, n int) string {
	if n >= len(s.Pours) || n > len(s.Alone) {
		return ""
	}
	zones, waits := s.Alone[n-1].Zones, s.Pours[n].At-s.Pours[n-1].At
	var names []string
	for _, z := range zones {
		if !z.Bonds.after(waits) {
			names = append(names, z.Name)
		}
	}
	if len(names) == 0 || len(names) == len(zones) {
		return ""
	}
	return " (" + strings.Join(names, " and ") + " part)"
}

// warmRooms are rooms in which resin that stays soft in its own is hardened, C. Chosen.
var warmRooms = []float64{25, 30, 35, 40, 45}

// sanding says where the room does not let the resin get hard enough to sand dry, and
// what warmth would.
func (c *computer) sanding(k Cure) {
	m, why := modelOf(c.in.Card)
	if len(k.Zones) == 0 || why != "" || !slices.ContainsFunc(k.Zones, func(z Zone) bool { return z.Sandable.Later }) {
		return
	}
	latest := k.Zones[0].Sandable.H
	text := ""
	need := sort.Search(1000, func(i int) bool { return m.Sandable(float64(i) / 1000) })
	for _, warm := range warmRooms {
		if h := m.FilmTime(float64(need)/1000, warm) / 3600; warm > float64(c.in.Room) && h < 7*24 {
			text = fmt.Sprintf(" Kept at %.0f C it would be after about %.0f h.", warm, h)
			break
		}
	}
	c.say(notSandable.At(finding.Where{}, "In a room of %.0f C %s can be sanded dry later than %.0f h after the first pour, if ever: its cure slows down as its glass transition nears the room.%s", c.in.Room, c.in.Card.Name, latest, text))
}
