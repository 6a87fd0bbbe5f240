package form

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

const (
	usualLap       = 40.0  // mm. Chosen: room for tape, caulk and a clamp
	leastLap       = 20.0  // mm. Chosen
	usualAbove     = 15.0  // mm over the face
	usualViscosity = 0.5   // Pa s of a deep pour resin at 25 C. Source: [memory]
	usualFluid     = 12.0  // h. Chosen
	leakGap        = 0.1   // mm. Chosen: a gap that tape hides
	mostLeak       = 10.0  // ml until it gels. Chosen: a drip that a rag takes
	waterViscosity = 0.001 // Pa s at 20 C. Source: [memory]
	testHours      = 0.5
	clampEvery     = 200.0 // mm. Chosen
)

// dams plans the board before every mouth.
func dams(in Input) ([]Dam, []finding.Finding) {
	out := []Dam{}
	var found []finding.Finding
	for i, m := range in.Mouths {
		if !(m.Width > 0 && m.Depth > 0) || len(m.Profile) < 3 {
			continue
		}
		d, fs := dam(in, m)
		d.Mark = fmt.Sprintf("D%d", i+1)
		for _, f := range fs {
			f.Where = finding.Where{Element: d.Mark + ", " + string(m.Side) + " side"}
			found = append(found, f)
		}
		out = append(out, d)
	}
	return out, found
}

// dam plans one board: it laps the opening below and at both sides, stands over the
// face, and ends with the side of the piece.
//
//	force  rho g integral of depth over the opening
//	leak   gap^3 rho g / 12 mu lap * integral of depth along the seal * time
//
// the second for a slit of the gap's width that runs the whole lap, laminar flow.
func dam(in Input, m Mouth) (Dam, []finding.Finding) {
	rules := in.Dam
	lap, above := orMM(rules.Lap, usualLap), orMM(rules.Above, usualAbove)
	side := in.Width
	if m.Side == view.Near || m.Side == view.Far {
		side = in.Length
	}
	from, to := max(0, m.From-lap), min(side, m.From+m.Width+lap)
	foot := min(lap, in.Height-m.Depth)
	d := Dam{Side: m.Side, From: from, Length: to - from, Height: m.Depth + foot + above, Top: above, Profile: m.Profile,
		LapLeft: m.From - from, LapRight: to - m.From - m.Width, LapFoot: foot, Test: testHours, Gap: leakGap}
	area, moment := depths(m.Profile)
	seal, along := sealed(m.Profile)
	weight := float64(in.Resin.Density) * gravity // N/m3
	least := min(d.LapLeft, d.LapRight, d.LapFoot)
	d.Seal = units.Length(seal)
	d.Force = weight * moment * 1e-9
	d.Pressure = units.Pressure(weight * m.Depth.MM() * 1e-6)
	d.Leak, d.Water = leak(in.Resin, weight, along, least.MM())
	d.Clamps = 2 + 2*int(math.Ceil(d.Length.MM()/clampEvery))
	var found []finding.Finding
	if least < leastLap {
		found = append(found, damLap.At(finding.Where{}, "The dam laps %.0f mm at its narrowest where the opening of %.0f mm2 ends near an edge of the piece.", least, area).Measured(least.MM(), leastLap, "mm"))
	}
	board, fs := damBoard(in, &d)
	d.Board = board
	return d, append(found, fs...)
}

func orMM(v units.Length, usual float64) units.Length {
	if v > 0 {
		return v
	}
	return units.Length(usual)
}

// depths returns the area of an opening and the first moment of its depth below the
// face, mm2 and mm3.
func depths(profile []geom.Point) (area, moment float64) {
	r := geom.Ring(profile)
	for i, p := range r {
		q := r[(i+1)%len(r)]
		c := p.Cross(q)
		area += c / 2
		moment += c * (p.Y + q.Y) / 6
	}
	return math.Abs(area), math.Abs(moment)
}

// sealed returns the length of an opening's edge below the face and the integral of
// the depth along it, mm and mm2.
func sealed(profile []geom.Point) (length, along float64) {
	for i, p := range profile {
		q := profile[(i+1)%len(profile)]
		if math.Abs(p.Y) < 1e-6 && math.Abs(q.Y) < 1e-6 {
			continue // the open top
		}
		l := q.Sub(p).Norm()
		length += l
		along += l * math.Abs(p.Y+q.Y) / 2
	}
	return length, along
}

// leak returns the resin lost through the chosen gap until it gels, and the most water
// that the dam may lose in its test, ml: water is thinner, so it shows in half an hour
// what resin does in hours.
func leak(r Resin, weight, along, lap float64) (resinML, waterML float64) {
	mu, hours := r.Viscosity, float64(r.Fluid)
	if !(mu > 0) {
		mu = usualViscosity
	}
	if !(hours > 0) {
		hours = usualFluid
	}
	if lap <= 0 || weight <= 0 {
		return 0, 0
	}
	flow := math.Pow(leakGap/1000, 3) / (12 * mu) * weight / (lap / 1000) * along * 1e-6 // m3/s
	resinML = flow * hours * 3600 * 1e6
	waterML = mostLeak * (1000 * gravity / weight) * (mu / waterViscosity) * (testHours / hours)
	return resinML, waterML
}

// A damStuff is what a dam may be made of and what heat it bears. Chosen: usual values
// of the trade, to be checked on the data sheet.
type damStuff struct {
	board string
	most  units.Temperature
	liner string
}

var damStuffs = []damStuff{
	{"", 60, "polypropylene packing tape, laid without folds"},
	{"film-faced plywood", 80, "polyethylene sheet, taped round the edges"},
	{"film-faced plywood with an aluminium sheet", 120, "polyester or polyimide tape"},
}

// damBoard chooses board and liner by the heat at the dam: the maker's own where they
// bear it, else the first of the usual ones that does.
func damBoard(in Input, d *Dam) (string, []finding.Finding) {
	own, most := in.Dam.Board, in.Dam.Most
	if own == "" {
		own = in.Board.Name
	}
	if !(most > 0) {
		most = damStuffs[0].most
	}
	if d.Liner = in.Dam.Liner; d.Liner == "" {
		d.Liner = damStuffs[0].liner
	}
	if !(in.Resin.Peak > most) {
		return own, nil
	}
	hot := damHot.At(finding.Where{}, "Resin at the dam may reach %.0f C, and %s with %s is good to about %.0f C.", in.Resin.Peak, nameOr(own, "the form's board"), d.Liner, most).
		Measured(float64(in.Resin.Peak), float64(most), "C")
	for _, s := range damStuffs[1:] {
		if in.Resin.Peak <= s.most && s.most > most {
			d.Liner = s.liner
			return s.board, []finding.Finding{hot.Do("Make the dam of %s with %s.", s.board, s.liner)}
		}
	}
	last := damStuffs[len(damStuffs)-1]
	d.Liner = last.liner
	return last.board, []finding.Finding{damHot.At(finding.Where{}, "Resin at the dam may reach %.0f C; no usual dam bears that.", in.Resin.Peak).
		Measured(float64(in.Resin.Peak), float64(last.most), "C").As(finding.Stop).Do("Pour thinner lifts or a slower resin.")}
}

func nameOr(name, other string) string {
	if name == "" {
		return other
	}
	return name
}
