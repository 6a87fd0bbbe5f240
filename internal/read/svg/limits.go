package svg

import "math"

// Limits bound what a drawing may ask of the machine. A drawing beyond one of them
// is refused with an Error that says which. Zero fields take the value of
// DefaultLimits.
type Limits struct {
	Bytes      int // size of the file
	Elements   int // elements of the file, and elements drawn once every use is followed
	Depth      int // elements nested in one another
	Attributes int // attributes of one element, roughly counted
	UseDepth   int // uses that refer to uses
	Vertices   int // corners of all outlines once curves are chords, and eight more for each line
	Selectors  int // tests of a style selector against an element
	Pairs      int // comparisons in the search for crossings and nesting
}

// DefaultLimits returns the limits that hold unless others are given. Chosen: far
// above any drawing of a piece of furniture, low enough for a few seconds and a few
// hundred megabytes.
func DefaultLimits() Limits {
	return Limits{
		Bytes: 32 << 20, Elements: 300_000, Depth: 256, Attributes: 1000, UseDepth: 32,
		Vertices: 2_000_000, Selectors: 20_000_000, Pairs: 200_000_000,
	}
}

func (l Limits) orDefault() Limits {
	d := DefaultLimits()
	for _, p := range []struct{ have, want *int }{
		{&l.Bytes, &d.Bytes}, {&l.Elements, &d.Elements}, {&l.Depth, &d.Depth},
		{&l.Attributes, &d.Attributes}, {&l.UseDepth, &d.UseDepth}, {&l.Vertices, &d.Vertices},
		{&l.Selectors, &d.Selectors}, {&l.Pairs, &d.Pairs},
	} {
		if *p.have <= 0 {
			*p.have = *p.want
		}
	}
	return l
}

// Options say how a drawing is read. Zero fields take the value of DefaultOptions.
type Options struct {
	Resolution float64 // user units (px) per inch where a length has no physical unit
	ChordError float64 // greatest distance between a curve and its chords, mm
	Heal       float64 // gaps up to this are closed, mm
	Speck      float64 // closed lines around less than this are dropped, mm2
	Limits     Limits
}

// DefaultOptions returns the options that hold unless others are given.
func DefaultOptions() Options {
	return Options{
		Resolution: 96,   // Source: [w3c-svg2] section 8.9 by way of CSS: 1in = 96px
		ChordError: 0.05, // Chosen: a tenth of what a saw or a cutter holds in foam
		Heal:       0.2,  // Chosen: under what can be seen or cut, over the slips of drawing programs
		Speck:      1,    // Chosen: a millimetre square is neither a basin nor an island
		Limits:     DefaultLimits(),
	}
}

func (o Options) orDefault() Options {
	d := DefaultOptions()
	for _, p := range []struct{ have, want *float64 }{
		{&o.Resolution, &d.Resolution}, {&o.ChordError, &d.ChordError}, {&o.Heal, &d.Heal}, {&o.Speck, &d.Speck},
	} {
		if !(*p.have > 0) || math.IsInf(*p.have, 0) {
			*p.have = *p.want
		}
	}
	o.ChordError = max(o.ChordError, minChordErrorMM)
	o.Limits = o.Limits.orDefault()
	return o
}

// mmPerPx returns the size of a px, mm.
func (o Options) mmPerPx() float64 { return mmPerInch / o.Resolution }

const (
	mmPerInch       = 25.4   // Source: [nist-sp811] app. B.8, exact
	minChordErrorMM = 0.0005 // Chosen: five steps of geom.Grid; finer chords are lost in the grid
	areaTarget      = 1e-4   // share of a ring's area that its chords may change
	maxCoordinateMM = 1e5    // 100 m: beyond, differences of products leave 64-bit integers on geom.Grid
)
