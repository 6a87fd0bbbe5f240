package plan

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/stage/toolpath"
	"pourwright/internal/units"
)

// Heights is a field of depths or heights, mm.
type Heights = toolpath.Heights

func (w *wiring) toolpath() (string, []finding.Finding) {
	w.plan.Toolpath = toolpath.Empty()
	if !w.basin() {
		return notComputed, nil
	}
	in := w.toolpathInput()
	if !in.Machine.Router {
		return "no router: the parts are cut by paper templates", nil
	}
	r, found := remember(w, "toolpath", in, toolpath.Compute)
	w.plan.Toolpath = r
	w.placed(found)
	return fmt.Sprintf("%s, %.0f min, cutter %.2f mm, %.0f mm/min", units.Count(len(r.Programs), "program", "programs"), math.Ceil(60*float64(r.Minutes)), r.Used.Cutter, r.Used.Feed), found
}

func (w *wiring) toolpathInput() toolpath.Input {
	in := toolpath.Input{Piece: w.job.Name, Machine: toolpathMachine(w.job.Machine), ChannelsSaid: true}
	in.Machine.Router = w.job.Knockout.Router
	in.Machine.BedX, in.Machine.BedY = w.job.Knockout.BedX, w.job.Knockout.BedY
	for _, s := range w.plan.Knockout.Sheets {
		one := toolpath.Sheet{Name: s.Name, SizeX: s.SizeX, SizeY: s.SizeY, Outline: s.Outline, Thickness: w.job.Foam.Measured}
		for _, p := range s.Placements {
			one.Parts = append(one.Parts, toolpath.Part{ID: p.Part, Region: p.Region, TabsOn: w.tabsOn(p)})
		}
		in.Sheets = append(in.Sheets, one)
	}
	if w.job.Knockout.Carve && w.in.Heights != nil {
		stock, _ := toolpath.Stock(*w.in.Heights, w.job.Foam.Measured)
		in.Carving = &toolpath.Carving{Name: "carved block", Stock: stock, Heights: toolpath.Block(*w.in.Heights, w.job.Length, w.job.Width, stock),
			Ball: w.job.Machine.Ball.Value, Scallop: w.job.Machine.Scallop.Value}
	}
	return in
}

func toolpathMachine(m material.Machine) toolpath.Machine {
	out := toolpath.Machine{
		Name: m.Name, Cutter: m.Cutter.Value, Flute: m.Flute.Value, Feed: m.Feed.Value, Plunge: m.Plunge.Value,
		MaxFeed: m.MaxFeed.Value, Rapid: m.Rapid.Value, StepDown: m.PassDown.Value, SafeHeight: m.SafeHeight.Value,
		Overcut: m.Overcut.Value, Accel: m.Acceleration.Value, ArcTol: m.ArcTolerance.Value, Ramp: m.RampAngle.Value,
		Tabs: int(m.Tabs.Value), TabWidth: m.TabWidth.Value, TabHeight: m.TabHeight.Value,
		Spindle: m.Spindle == "yes", Speed: m.SpindleRPM.Value, Inch: m.Units == "in", Against: m.Direction == "conventional",
	}
	if m.Tabs.Known() && out.Tabs == 0 {
		out.Tabs = -1
	}
	return out
}

// tabsOn returns the lines on the sheet along which a tab of the part is not seen: the
// box's sides, where the foam ends against the form, and its seams but for their keys
// and steps.
func (w *wiring) tabsOn(p knockout.Placement) []geom.Ring {
	box := geom.Rect(0, 0, w.job.Length.MM(), w.job.Width.MM()).Ring()
	lines := []geom.Ring{append(box, box[0])}
	for _, s := range w.plan.Knockout.Seams {
		if !slices.Contains(s.Parts, p.Part) {
			continue
		}
		for i := 1; i < len(s.Curve); i++ {
			if a, b := s.Curve[i-1], s.Curve[i]; onLine(a, s.Line) && onLine(b, s.Line) {
				lines = append(lines, geom.Ring{a, b})
			}
		}
	}
	sin, cos := math.Sincos(p.Turn * math.Pi / 180)
	for i, l := range lines {
		lines[i] = l.Map(func(q geom.Point) geom.Point {
			return geom.Point{X: q.X*cos - q.Y*sin + p.X.MM(), Y: q.X*sin + q.Y*cos + p.Y.MM()}
		})
	}
	return lines
}

// onLine reports whether p lies on the straight line through l.
func onLine(p geom.Point, l [2]geom.Point) bool {
	v := l[1].Sub(l[0])
	return math.Abs(v.Cross(p.Sub(l[0]))) <= 0.05*v.Norm()
}
