package form

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// Thickness of board that suits a form, mm. Chosen: between hardboard and two sheets
// glued together.
const (
	thinnestMM = 6
	thickestMM = 60
)

// Compute cuts the box into panels, braces and screws them, puts them together, plans
// dams and inserts, and cuts the boards. Any corner but "mitre" is a butt, any order
// but "short" lets the long sides run past, any seat but "on" puts the sides outside
// the base. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Nothing()
	if !sound(in.Length) || !sound(in.Width) || !sound(in.Height) || !sound(in.Thickness) {
		return r, []finding.Finding{noPanels.At(finding.Where{}, "A box of %.1f x %.1f x %.1f mm from %.1f mm board cannot be made.", in.Length, in.Width, in.Height, in.Thickness)}
	}
	corners, found := outline(in)
	if len(corners) == 4 && len(found) > 0 && found[0].Code == notConvex.Code {
		in.Outline = nil
	}
	if len(in.Outline) > 0 {
		found = append(found, outlineOnly.At(finding.Where{Field: "box.outline"}, "Only the form follows the outline; concrete, masses and drawings are worked out for the box of %.0f x %.0f mm.", in.Length, in.Width))
	}
	for _, c := range corners {
		r.Outline = append(r.Outline, c.at)
	}
	r.Seat = "outside"
	if in.Seat == "on" {
		r.Seat = "on"
	}
	panels, ws, marks := panels(in, corners)
	r.Panels = panels
	weigh(in, &r)
	found = append(found, stand(in, &r, corners, ws, marks)...)
	measureUp(in, &r)
	assemble(in, &r)
	supplies(in, &r)
	r.Readings = readings(in, &r)
	var more []finding.Finding
	r.Dams, more = dams(in)
	found = append(found, more...)
	r.Inserts, more = inserts(in)
	found = append(found, more...)
	found = append(found, oddThickness(in)...)
	return r, append(found, cut(in, &r)...)
}

// Nothing is a form without panels.
func Nothing() Result {
	return Result{Panels: []Panel{}, Outline: []geom.Point{}, Walls: []Wall{}, Battens: []BattenPart{}, Assembly: []Step{}, Seams: []Seam{},
		Bought: []Supply{}, Readings: []Reading{}, Dams: []Dam{}, Inserts: []Placed{}, Cutting: cutlist.Empty()}
}

// weigh gives every panel its mass.
func weigh(in Input, r *Result) {
	area := 0.0
	for i := range r.Panels {
		p := &r.Panels[i]
		one := units.Area(p.Length * p.Width)
		if len(p.Outline) > 0 {
			one = units.Area(geom.Ring(p.Outline).Area())
		}
		p.Mass = in.Density.Of(one.Times(p.Thickness))
		r.Mass += p.Mass * units.Mass(p.Count)
		area += float64(p.Length*p.Width) * float64(p.Count)
	}
	if sheet := float64(in.SheetX) * float64(in.SheetY); sheet > 0 && area < 1e6*sheet {
		r.Sheets = int(math.Ceil(area/sheet - 1e-9))
	}
}

// measureUp adds up inside corners and inside faces.
func measureUp(in Input, r *Result) {
	ring := geom.Ring(r.Outline)
	round := units.Length(ring.Perimeter())
	r.Seam = units.Length(len(ring))*in.Height + round
	r.Release = max(0, units.Area(ring.Area())+units.Area(in.Height*round)-max(0, in.Covered))
}

// stand braces and screws every wall.
func stand(in Input, r *Result, corners []corner, ws []wallPanel, marks []string) []finding.Finding {
	var found []finding.Finding
	r.Pressure = "packed by hand"
	if in.Mix.Flowable {
		r.Pressure = "flowable, as a liquid"
	}
	foot, _ := pressure(in)
	byLength := map[float64]brace{}
	for i, c := range corners {
		to := corners[(i+1)%len(corners)].at
		l := to.Sub(c.at).Norm()
		w := Wall{Mark: marks[i], Panel: ws[i].name, Place: ws[i].place, From: c.at, To: to, Load: units.Pressure(foot), Limit: units.Length(bowLimit(in))}
		b, ok := byLength[l]
		if !ok {
			b = in.brace(l)
			byLength[l] = b
		}
		w.Bow, w.BattenBow, w.Bare, w.Uprights, w.Rail = units.Length(b.bow), units.Length(b.batten), units.Length(b.bare), b.uprights, b.rail
		in.seat(&w, l)
		r.Walls = append(r.Walls, w)
		r.Battens = append(r.Battens, battens(in, w.Mark, l, b)...)
		found = append(found, doubts(in, w, b)...)
	}
	if !(in.Board.Modulus > 0) && in.Board.Name != "" {
		found = append(found, stiffness.At(finding.Where{}, "How stiff %s is is not known; bowing is not checked.", nameOr(in.Board.Name, "the board")))
	}
	screwLines(in, r, ws, marks)
	count(in, r)
	return found
}

// doubts says what is wrong with a wall.
func doubts(in Input, w Wall, b brace) []finding.Finding {
	where := finding.Where{Element: w.Mark + ", " + words(w)}
	var found []finding.Finding
	switch {
	case b.known && !b.ok:
		found = append(found, bowing.At(where, "%s bows %.1f mm under the mix even with battens; %.1f mm are allowed.", w.Mark, w.Bow+w.BattenBow, w.Limit).Measured((w.Bow+w.BattenBow).MM(), w.Limit.MM(), "mm"))
	case b.rail:
		found = append(found, braced.At(where, "%s would bow %.1f mm and %.1f mm are allowed; with %s it bows %.1f mm.", w.Mark, w.Bare, w.Limit, braceOf(w.Uprights), w.Bow+w.BattenBow).Measured(w.Bare.MM(), w.Limit.MM(), "mm"))
	}
	_, length := screwOf(in)
	switch {
	case length-in.Thickness < 15:
		found = append(found, shortScrew.At(where, "Screws of %.0f mm leave %.0f mm of thread behind a side of %.1f mm.", length, max(0, length-in.Thickness), in.Thickness).Measured(length.MM(), in.Thickness.MM()+25, "mm"))
	case w.Allowable > 0 && w.Allowable < closest*max(w.FootForce, w.EndForce)/1000:
		found = append(found, closeScrews.At(where, "%s needs a screw every %.0f mm, and closer than %.0f mm splits the board.", w.Mark, 1000*w.Allowable/max(w.FootForce, w.EndForce), closest).Measured(1000*w.Allowable/max(w.FootForce, w.EndForce), closest, "mm"))
	}
	return found
}

// count adds up the screws: every row drawn, for every board that carries it, and six
// for each batten and its ends.
func count(in Input, r *Result) {
	d, l := screwOf(in)
	r.Screws.Name = nameOr(in.Screw.Name, fmt.Sprintf("screw %.1f x %.0f mm", d, l))
	for _, p := range r.Panels {
		for _, line := range p.Lines {
			r.Screws.Count += line.Count * p.Count
		}
	}
	for _, b := range r.Battens {
		r.Screws.Count += b.Count * max(2, int(math.Ceil(b.Length.MM()/widest)))
	}
}

// cut plans the sawing of panels and dams from the form's board.
func cut(in Input, r *Result) []finding.Finding {
	c := in.Cut
	c.Board, c.SheetX, c.SheetY, c.Kerf = in.Board.Name, in.SheetX, in.SheetY, in.Kerf
	c.Parts = nil
	for _, p := range r.Panels {
		if p.Count == 1 || len(p.Marks) < p.Count {
			c.Parts = append(c.Parts, cutlist.Part{Name: named1(p), Length: p.Length, Width: p.Width, Count: p.Count, Bevels: bevels(p)})
			continue
		}
		for _, m := range p.Marks {
			c.Parts = append(c.Parts, cutlist.Part{Name: m + " " + p.Name, Length: p.Length, Width: p.Width, Count: 1, Bevels: bevels(p)})
		}
	}
	for _, d := range r.Dams {
		if d.Board == in.Board.Name && d.Board != "" {
			c.Parts = append(c.Parts, cutlist.Part{Name: d.Mark + " dam", Length: d.Length, Width: d.Height, Count: 1})
		}
	}
	var found []finding.Finding
	r.Cutting, found = cutlist.Compute(c)
	large := map[string]bool{}
	for _, p := range r.Panels {
		if unplaced(r.Cutting, p) {
			for _, f := range tooLarge(in, p) {
				large[p.Name] = true
				found = append(found, f)
			}
		}
	}
	return slices.DeleteFunc(found, func(f finding.Finding) bool { // said of the kind of panel
		_, name, _ := strings.Cut(f.Where.Element, " ")
		return f.Code == "cutlist/no-stock" && large[name]
	})
}

// unplaced reports whether a board of p found no place.
func unplaced(c cutlist.Result, p Panel) bool {
	return slices.ContainsFunc(c.Unplaced, func(m saw.Missing) bool { return strings.HasSuffix(m.Name, " "+p.Name) })
}

func named1(p Panel) string {
	if len(p.Marks) > 0 {
		return p.Marks[0] + " " + p.Name
	}
	return p.Name
}

// sound reports whether l is a length that a form can have.
func sound(l units.Length) bool { return l > 0 && l < 1e5 }

// oddThickness doubts a thickness that no board for a form has.
func oddThickness(in Input) []finding.Finding {
	t, where := in.Thickness, finding.Where{Field: "form.measured"}
	switch {
	case t > min(in.Length, in.Width)/4 || t > thickestMM:
		return []finding.Finding{thick.At(where, "Board of %.1f mm is thick for a box of %.0f x %.0f mm.", t, in.Length, in.Width).Measured(float64(t), thickestMM, "mm")}
	case t < thinnestMM:
		return []finding.Finding{thin.At(where, "Board of %.1f mm is thin: wet mix %.0f mm high bends it.", t, in.Height).Measured(float64(t), thinnestMM, "mm")}
	}
	return nil
}

// tooLarge says where a panel fits the sheet neither way round.
func tooLarge(in Input, p Panel) []finding.Finding {
	if !(in.SheetX > 0 && in.SheetY > 0) || max(p.Length, p.Width) <= max(in.SheetX, in.SheetY) && min(p.Length, p.Width) <= min(in.SheetX, in.SheetY) {
		return nil
	}
	return []finding.Finding{noSheet.At(finding.Where{Element: p.Name}, "The %s is %.1f x %.1f mm and the sheet %.0f x %.0f mm.", p.Name, p.Length, p.Width, in.SheetX, in.SheetY)}
}

// braceOf names a rail and the uprights that stand with it.
func braceOf(uprights int) string {
	if uprights == 0 {
		return "a rail"
	}
	return "a rail and " + units.Count(uprights, "upright", "uprights")
}
