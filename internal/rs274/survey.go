package rs274

import (
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A Survey sums up what a program does, in mm.
type Survey struct {
	Lines    int            `json:"lines"`
	Moves    int            `json:"moves"`
	Arcs     int            `json:"arcs"`
	Units    string         `json:"units"` // of the file: mm, in, mixed or not stated
	Low      Vec            `json:"low_mm"`
	High     Vec            `json:"high_mm"`     // of all places it goes to
	CutLow   Vec            `json:"cut_low_mm"`  // of cutting moves below Z 0
	CutHigh  Vec            `json:"cut_high_mm"` // both zero where there are none
	Cut      units.Length   `json:"cut_length_mm"`
	Travel   units.Length   `json:"travel_mm"`
	Feeds    []FeedUse      `json:"feeds"`  // slowest first
	Depths   []float64      `json:"z_mm"`   // heights at which it cuts level, lowest first, at most 50
	Minutes  units.Duration `json:"time_h"` // at the stated speeds, without speeding up and slowing down
	Rapid    units.Speed    `json:"rapid_mm_min"`
	Dwell    float64        `json:"dwell_s"`
	Spindle  bool           `json:"spindle"`
	Tools    []int          `json:"tools"`
	Stops    []Stop         `json:"stops"`
	Coords   []string       `json:"coordinate_systems"`
	Unstated []string       `json:"not_stated"`
	Refused  int            `json:"lines_not_read"` // above 0, nothing here is sure
}

// A FeedUse is how far a program cuts at one feed.
type FeedUse struct {
	Feed   units.Speed  `json:"feed_mm_min"`
	Length units.Length `json:"length_mm"`
}

// mostListed feeds and depths are listed.
const mostListed = 50

var lowRapid = finding.Rule{Code: "rs274/low-rapid", Severity: finding.Caution, Title: "rapid moves stay above Z 0",
	Remedy: "If Z 0 is the top of the work, the cutter runs into it here: raise the move, or make it a cut (G1)."}

// Survey sums up p; rapid moves go at the given speed. It reports rapid moves that go
// sideways or down below Z 0, a few of them with their lines.
func (p Program) Survey(name string, rapid units.Speed) (Survey, []finding.Finding) {
	s := Survey{Lines: p.Lines, Moves: len(p.Moves), Units: p.Units, Rapid: rapid, Dwell: p.Dwell, Spindle: p.Spindle,
		Tools: append([]int{}, p.Tools...), Stops: append([]Stop{}, p.Stops...),
		Coords: append([]string{}, p.Coords...), Unstated: append([]string{}, p.Unstated...),
		Refused: p.Refused, Feeds: []FeedUse{}, Depths: []float64{}, Minutes: p.Minutes(Rates{Rapid: rapid})}
	if s.Units == "" {
		s.Units = "not stated"
	}
	all, cut := newSpan(), newSpan()
	feeds, depths := map[float64]float64{}, map[float64]bool{}
	var found []finding.Finding
	for i := range p.Moves {
		m := &p.Moves[i]
		all.add(*m)
		if m.Kind == Rapid {
			s.Travel += units.Length(m.Length())
			if len(found) < 3 && m.low() {
				found = append(found, lowRapid.At(finding.Where{File: name, Line: m.Line}, "Line %d moves rapidly at Z %.2f mm.", m.Line, math.Min(m.From[2], m.To[2])))
			}
			continue
		}
		s.cut(m, feeds, depths)
		if math.Min(m.From[2], m.To[2]) < 0 {
			cut.add(*m)
		}
	}
	s.Low, s.High = all.ends()
	s.CutLow, s.CutHigh = cut.ends()
	s.list(feeds, depths)
	return s, found
}

// low reports whether a rapid move goes sideways or down below Z 0.
func (m Move) low() bool {
	sideways := m.From.XY() != m.To.XY()
	return sideways && math.Min(m.From[2], m.To[2]) < 0 || m.To[2] < math.Min(0, m.From[2])
}

func (s *Survey) cut(m *Move, feeds map[float64]float64, depths map[float64]bool) {
	s.Cut += units.Length(m.Length())
	if m.Kind == Circle {
		s.Arcs++
	}
	feeds[math.Round(m.Feed*10)/10] += m.Length()
	if m.From[2] == m.To[2] {
		depths[math.Round(m.To[2]*1e4)/1e4] = true
	}
}

func (s *Survey) list(feeds map[float64]float64, depths map[float64]bool) {
	for f, l := range feeds {
		s.Feeds = append(s.Feeds, FeedUse{units.Speed(f), units.Length(l)})
	}
	slices.SortFunc(s.Feeds, func(a, b FeedUse) int { return int(math.Copysign(1, float64(a.Feed-b.Feed))) })
	for z := range depths {
		s.Depths = append(s.Depths, z)
	}
	slices.Sort(s.Depths)
	s.Feeds, s.Depths = s.Feeds[:min(len(s.Feeds), mostListed)], s.Depths[:min(len(s.Depths), mostListed)]
}

// A span is the extent of places along each axis.
type span struct{ low, high Vec }

func newSpan() span {
	inf := math.Inf(1)
	return span{Vec{inf, inf, inf}, Vec{-inf, -inf, -inf}}
}

func (s *span) add(m Move) {
	for _, v := range m.Chords(0.01) {
		for i := range v {
			s.low[i], s.high[i] = math.Min(s.low[i], v[i]), math.Max(s.high[i], v[i])
		}
	}
}

// ends returns the extent, zero where it is empty.
func (s *span) ends() (low, high Vec) {
	if s.low[0] > s.high[0] {
		return Vec{}, Vec{}
	}
	return s.low, s.high
}
