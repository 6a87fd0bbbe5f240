package resin

import (
	"fmt"
	"math"
	"slices"
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
	case k.High > yellows:
		c.say(mayRun.At(where, "%s: a little more warmth, depth or hardener tips it over.", text).Measured(float64(k.High), float64(yellows), "C"))
	}
	c.depths(r)
	c.contact(k)
	c.softPlaces(k)
	c.scuffing(r)
	if k.Error.Off > mostApart {
		c.say(coarse.At(finding.Where{}, "The peak on a grid of %.0f mm and on one twice as wide differ by %.1f K.", k.Error.Grid, k.Error.Off).Measured(float64(k.Error.Off), float64(mostApart), "K"))
	}
}

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

func (c *computer) contact(k Cure) {
	if k.Dam > damSoftens {
		c.say(damHot.At(finding.Where{Element: "dam"}, "The dam's face gets %.0f C where resin lies deepest against it.", k.Dam).Measured(float64(k.Dam), float64(damSoftens), "C"))
	}
	if k.Foam > foamSoftens {
		c.say(foamHot.At(finding.Where{Element: "resin.foam"}, "Foam left under the shell gets %.0f C.", k.Foam).Measured(float64(k.Foam), float64(foamSoftens), "C"))
	}
}

func (c *computer) softPlaces(k Cure) {
	if len(k.Soft) == 0 {
		return
	}
	s := k.Soft[0] // it stands for all; the maps show the rest
	x, y := s.X.MM(), s.Y.MM()
	until := "within the time computed"
	if s.Hard > 0 {
		until = fmt.Sprintf("before %.0f h", s.Hard)
	}
	c.say(staysSoft.At(finding.Where{At: &[2]float64{x, y}, View: "finished"}, "Where only %.0f mm of resin stand, a day after the pour %.0f %% have reacted, and it is not hard %s.", s.Deep, 100*s.At24, until))
}

func (c *computer) scuffing(r *Result) {
	if s := r.scheme; s != nil && len(s.Scuff) > 0 {
		var names []string
		for _, n := range s.Scuff {
			names = append(names, fmt.Sprint(n))
		}
		c.say(scuff.At(finding.Where{}, "The next lift comes when lift %s no longer bonds by itself.", strings.Join(names, ", ")))
	}
}

// alternative prices a scheme: its hours of hands are those of mixing its buckets, and
// half an hour for each scuffing.
func (c *computer) alternative(s Scheme, chosen bool) Alternative {
	a := Alternative{Peak: s.Forecast.Peak, Dam: s.Forecast.Dam, Done: finite(s.done()), Scuff: append([]int{}, s.Scuff...), Within: s.Within, Chosen: chosen}
	for _, p := range s.Pours {
		a.Lifts = append(a.Lifts, p.To-p.From)
		a.At = append(a.At, p.At)
		room := float64(c.in.Bucket) * (1 - float64(min(atLeastZero(c.in.Freeboard), 0.95)))
		if n := math.Ceil(float64(c.volumeAt(p.To)-c.volumeAt(p.From)) / room); known(n) && room > 0 {
			a.Hands += units.Duration(max(n, 1)) * mixing
		}
	}
	a.Hands += units.Duration(len(s.Scuff)) * scuffing
	a.Sentence = sentence(a)
	return a
}

const scuffing units.Duration = 0.5 // h to sand, wash and dry one lift. Common practice, no source

func sentence(a Alternative) string {
	done := "not hard within the run"
	if a.Done > 0 {
		done = fmt.Sprintf("hard after %.0f h", a.Done)
	}
	text := fmt.Sprintf("%s, peak %.0f C, %s", lifts(len(a.Lifts)), a.Peak, done)
	if len(a.Scuff) > 0 {
		text += fmt.Sprintf(", %d to scuff", len(a.Scuff))
	}
	if !a.Within {
		text += ", too hot"
	}
	return text
}

func lifts(n int) string { return units.Count(n, "lift", "lifts") }
