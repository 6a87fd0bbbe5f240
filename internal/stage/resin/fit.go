package resin

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"pourwright/internal/numeric"
	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
)

// A Sheet is what a data sheet, or the maker's own test, says of a resin. Zero values are
// not stated.
type Sheet struct {
	Name       string
	Density    units.Density
	PotLife    units.Duration // of MassTested at TempTested, to about .15 of cure
	Gel        units.Duration // of the same
	CupPeak    units.Temperature
	MassTested units.Mass        // 0 takes 0.1 kg
	TempTested units.Temperature // 0 takes 25 C
	FilmSet    units.Duration    // a thin film is no longer tacky
	FilmTemp   units.Temperature // 0 takes 22 C
	Rated      units.Length      // greatest depth of one pour
	Heat       float64           // kJ/kg; 0 where not known
	EEW        float64           // g of A to an equivalent, with PartsB an estimate of Heat
	PartsB     float64           // of hardener to 100 of A, by mass
	Tg         units.Temperature // fully cured; 0 takes 52 C
	Test       []Reading         // thermocouple in a test pour: the best datum
	TestDepth  units.Length
	TestAir    units.Temperature
}

// A Reading is one of a thermocouple in the middle of a test pour.
type Reading struct {
	At   units.Duration
	Temp units.Temperature
}

// A Fitted is a resin's cure as estimated.
type Fitted struct {
	K25    float64           `json:"rate_25_per_s"`
	K25Low float64           `json:"rate_25_low_per_s"` // one standard deviation
	K25Hi  float64           `json:"rate_25_high_per_s"`
	R      float64           `json:"ratio_of_rates"`
	Heat   float64           `json:"heat_kj_kg"`
	HeatSD float64           `json:"heat_sd_kj_kg"`
	E      float64           `json:"activation_kj_mol"`
	Tg     units.Temperature `json:"glass_transition_c"`
	Rows   []Residual        `json:"data"`
	Slab   SlabBand          `json:"slab"`
	Weak   string            `json:"measure_next"` // what would narrow the band most
	Doubts []string          `json:"doubts"`       // why the estimate may be no resin's
}

// A Residual is how well one datum is met.
type Residual struct {
	Name  string  `json:"name"`
	Given float64 `json:"given"`
	Model float64 `json:"model"`
	Unit  string  `json:"unit"`
	SD    float64 `json:"off_by_sd"`
}

// A SlabBand is the peak of a slab of the rated depth on board at 22 C.
type SlabBand struct {
	Depth units.Length      `json:"depth_mm"`
	Peak  units.Temperature `json:"peak_c"`
	Low   units.Temperature `json:"low_c"`
	High  units.Temperature `json:"high_c"`
}

// ErrTooLittle is what a sheet that says nothing of rates gives.
var ErrTooLittle = errors.New("too little to fit a cure to")

// Priors and how far data are trusted: standard deviations of logarithms. Source:
// [resin-presets], chosen.
const (
	priorHeat, sdHeat = 280e3, 0.12
	priorE, sdE       = 55e3, 0.06
	priorR, sdR       = 0.2, 0.7
	sdPot, sdGel      = 0.15, 0.15
	sdPeak, sdFilm    = 0.2, 0.2
	sdRated           = 0.3
	ratedPeak         = 70.0 // C: what a maker of resin lets a slab of the rated depth reach
	ratedAir          = 22.0
	sdReading         = 2.0 // K
)

// Fit estimates a cure from what is known: maximum a posteriori over ln k25, ln r, ln H
// and ln E, started by a bisection on the pot life, or on what there is in its place.
// The error is ErrTooLittle, or ctx's.
func Fit(ctx context.Context, s Sheet) (Fitted, error) {
	s = s.filled()
	if s.PotLife <= 0 && s.Gel <= 0 && s.FilmSet <= 0 && s.Rated <= 0 && len(s.Test) < 5 {
		return Fitted{}, fmt.Errorf("%w: state the pot life with its mass and temperature, the gel time, when a thin film sets, or the greatest depth of a pour; a thermocouple in a test pour is best", ErrTooLittle)
	}
	f := &fitting{ctx: ctx, s: s}
	x0 := []float64{math.Log(f.start()), math.Log(priorR), math.Log(s.Heat * 1000), math.Log(priorE)}
	got := numeric.LeastSquares(f.residuals, x0)
	if err := ctx.Err(); err != nil {
		return Fitted{}, err
	}
	return f.fitted(got), nil
}

func (s Sheet) filled() Sheet {
	if !(s.Density > 0) {
		s.Density = assumedDensity
	}
	if !(s.MassTested > 0) {
		s.MassTested = 0.1
	}
	if s.TempTested == 0 {
		s.TempTested = cupTemp
	}
	if s.FilmTemp == 0 {
		s.FilmTemp = filmTemp
	}
	if !(s.Heat > 0) {
		s.Heat = kinetics.HeatOfReaction(s.EEW, s.PartsB/100) / 1000
	}
	if !(s.Heat > 0) {
		s.Heat = priorHeat / 1000
	}
	if s.Tg == 0 {
		s.Tg = 52
	}
	return s
}

type fitting struct {
	ctx  context.Context
	s    Sheet
	rows []Residual
}

func (f *fitting) model(x []float64) kinetics.Model {
	m := kinetics.Typical(math.Exp(x[0]), math.Exp(x[2]), float64(f.s.Tg))
	m.R, m.EJMol, m.RhoKGM3 = math.Exp(x[1]), math.Exp(x[3]), float64(f.s.Density)
	return m
}

// start finds k25 by bisection on isothermal times: rough, and near enough.
func (f *fitting) start() float64 {
	want, at, tempC := float64(f.s.PotLife)*3600, potCure, float64(f.s.TempTested)
	switch {
	case f.s.PotLife > 0:
	case f.s.Gel > 0:
		want, at = float64(f.s.Gel)*3600, kinetics.Gel
	case f.s.FilmSet > 0:
		want, at, tempC = float64(f.s.FilmSet)*3600, 0.7, float64(f.s.FilmTemp)
	default:
		return 3e-5 * 50 / max(f.s.Rated.MM(), 1)
	}
	low, high := 1e-8, 1.0
	for range 60 {
		mid := math.Sqrt(low * high)
		m := kinetics.Typical(mid, priorHeat, float64(f.s.Tg))
		m.NoSlowing = true
		if m.IsothermalTime(at, tempC) > want {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Sqrt(low * high)
}

// residuals are data and priors in standard deviations.
func (f *fitting) residuals(x []float64) []float64 {
	m := f.model(x)
	f.rows = f.rows[:0]
	out := []float64{(x[1] - math.Log(priorR)) / sdR, (x[2] - math.Log(f.s.Heat*1000)) / sdHeat, (x[3] - math.Log(priorE)) / sdE}
	add := func(name string, given, got float64, unit string, sd float64) {
		off := math.Log(got/given) / sd
		f.rows = append(f.rows, Residual{name, given, got, unit, off})
		out = append(out, off)
	}
	s := f.s
	if s.PotLife > 0 || s.Gel > 0 || s.CupPeak > 0 {
		cup, err := cupOf(f.ctx, m, float64(s.MassTested), float64(s.TempTested))
		if err != nil {
			return append(out, math.NaN())
		}
		if s.PotLife > 0 {
			add("pot life", float64(s.PotLife), cup.pot, "h", sdPot)
		}
		if s.Gel > 0 {
			add("gel", float64(s.Gel), cup.gel, "h", sdGel)
		}
		if rise := float64(s.CupPeak - s.TempTested); s.CupPeak > 0 && rise > 0 {
			add("peak of the cup over the air", rise, cup.peak-float64(s.TempTested), "K", sdPeak)
		}
	}
	if s.FilmSet > 0 {
		add("thin film sets", float64(s.FilmSet), m.FilmTime(0.7, float64(s.FilmTemp))/3600, "h", sdFilm)
	}
	if s.Rated > 0 {
		peak, err := slabPeak(f.ctx, m, s.Rated.MM(), ratedAir, board)
		if err != nil {
			return append(out, math.NaN())
		}
		add("slab of the rated depth over the air", ratedPeak-ratedAir, peak-ratedAir, "K", sdRated)
	}
	return append(out, f.test(m)...)
}

// test compares a test pour's readings with the middle of a slab. Of many readings as
// much is taken as of twenty: they are not independent.
func (f *fitting) test(m kinetics.Model) []float64 {
	if len(f.s.Test) < 5 || !(f.s.TestDepth > 0) {
		return nil
	}
	var hours []float64
	for _, r := range f.s.Test {
		hours = append(hours, float64(r.At))
	}
	temps, err := slabMiddle(f.ctx, m, f.s.TestDepth.MM(), float64(f.s.TestAir), float64(f.s.Test[0].Temp), hours)
	if err != nil || len(temps) != len(hours) {
		return []float64{math.NaN()}
	}
	weight := math.Sqrt(math.Min(1, 20/float64(len(hours))))
	var out []float64
	worst := Residual{Name: "test pour, worst reading", Unit: "C"}
	for i, r := range f.s.Test {
		off := (temps[i] - float64(r.Temp)) / sdReading
		if math.Abs(off) >= math.Abs(worst.SD) {
			worst.Given, worst.Model, worst.SD = float64(r.Temp), temps[i], off
		}
		out = append(out, weight*off)
	}
	f.rows = append(f.rows, worst)
	return out
}

// slabMiddle returns the temperature in the middle of a slab on board at given hours.
func slabMiddle(ctx context.Context, m kinetics.Model, deepMM, airC, pouredC float64, hours []float64) ([]float64, error) {
	c := slab(m, deepMM, airC, board)
	c.Pours[0].TempC, c.EndH = pouredC, hours[len(hours)-1]+0.01
	r, err := heat.Solve(ctx, c, heat.Options{DXMM: 100, DZMM: 2, TolK: 2e-3, Frames: hours})
	if err != nil {
		return nil, err
	}
	n := poured(r)
	var out []float64
	for _, fr := range r.Frames {
		out = append(out, (float64(fr.CutC[(n-1)/2])+float64(fr.CutC[n/2]))/2)
	}
	return out, nil
}

// fitted puts the estimate into words, with its band.
func (f *fitting) fitted(got numeric.Fit) Fitted {
	f.residuals(got.X)
	m := f.model(got.X)
	sd := func(i int) float64 {
		if got.Cov == nil || got.Cov[i][i] < 0 {
			return 1
		}
		return math.Sqrt(got.Cov[i][i])
	}
	out := Fitted{K25: m.K25, K25Low: m.K25 * math.Exp(-sd(0)), K25Hi: m.K25 * math.Exp(sd(0)), R: m.R, Heat: m.HJKG / 1000, HeatSD: m.HJKG / 1000 * sd(2),
		E: m.EJMol / 1000, Tg: f.s.Tg, Rows: append([]Residual{}, f.rows...), Weak: f.weak()}
	out.Slab = f.band(got)
	out.Doubts = out.doubts()
	return out
}

// farOff is from how many standard deviations on a datum contradicts the others. Chosen.
const farOff = 3.0

// doubts lists what is unlikely about an estimate: data that contradict each other, and
// values that no casting resin has.
func (f Fitted) doubts() []string {
	out := []string{}
	for _, r := range f.Rows {
		if math.Abs(r.SD) > farOff {
			out = append(out, fmt.Sprintf("%s contradicts the other data or the unit it is read in: given %.4g %s, the estimate makes it %.4g", r.Name, r.Given, r.Unit, r.Model))
		}
	}
	for _, c := range []struct {
		name, unit   string
		v, low, high float64
	}{{"heat of reaction", "kJ/kg", f.Heat, leastHeat, mostHeat}, {"activation energy", "kJ/mol", f.E, 40, 75}, {"ratio of rates", "", f.R, 0.005, 5}} {
		if !inside(c.v, c.low, c.high) {
			out = append(out, strings.TrimSpace(fmt.Sprintf("the estimate's %s of %.4g %s is none that resins have, %g to %g", c.name, c.v, c.unit, c.low, c.high)))
		}
	}
	return out
}

// weak names what is missing that would say most.
func (f *fitting) weak() string {
	s := f.s
	var miss []string
	if len(s.Test) < 5 {
		miss = append(miss, "a thermocouple in a test pour of the full depth")
	}
	if s.Gel <= 0 {
		miss = append(miss, "gel time of a stated mass")
	}
	if s.CupPeak <= 0 {
		miss = append(miss, "peak temperature of that mass")
	}
	if s.FilmSet <= 0 {
		miss = append(miss, "when a thin film sets")
	}
	return strings.Join(miss, "; ")
}

// band returns the slab's peak over draws from the estimate's own distribution.
func (f *fitting) band(got numeric.Fit) SlabBand {
	deep := f.s.Rated
	if !(deep > 0) {
		deep = 25
	}
	peakOf := func(x []float64) units.Temperature {
		p, err := slabPeak(f.ctx, f.model(x), deep.MM(), ratedAir, board)
		if err != nil {
			return units.Temperature(math.NaN())
		}
		return units.Temperature(p)
	}
	b := SlabBand{Depth: deep, Peak: peakOf(got.X)}
	b.Low, b.High = b.Peak, b.Peak
	root := numeric.Cholesky(got.Cov)
	if root == nil {
		return b
	}
	var peaks []units.Temperature
	for i := range members {
		x := append([]float64{}, got.X...)
		for k := range x {
			for j := 0; j <= k; j++ {
				x[k] += root[k][j] * normal(halton(i+1, [4]int{2, 3, 5, 7}[j]))
			}
		}
		if p := peakOf(x); known(p) {
			peaks = append(peaks, p)
		}
	}
	b.Low, b.High = bandOf(peaks, b.Peak)
	return b
}
