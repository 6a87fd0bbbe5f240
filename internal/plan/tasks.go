package plan

import (
	"fmt"

	"pourwright/internal/stage/calendar"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/stage/resin"
	"pourwright/internal/units"
)

// Hands-on times of the trade. Common practice, no source; the maker's own records
// replace them.
const (
	perPanelCut   units.Duration = 0.25
	perFoamPart   units.Duration = 0.5
	perBucket     units.Duration = 0.4 // weigh, stir, rest, pour
	perRound      units.Duration = 0.1 // with the torch over the surface
	glueSets      units.Duration = 12
	caulkCures    units.Duration = 12
	sealDries     units.Duration = 24
	lastLiftWaits units.Duration = 7 * units.Day // Chosen: before wet sanding; the data sheet decides
)

// tasks lists the work in building order, with what the other rooms found. A task comes
// after the one before it where it does not say what it comes after; those with links
// are done by the way.
func (w *wiring) tasks() []calendar.Task {
	var ts []calendar.Task
	last := ""
	add := func(t calendar.Task) {
		if last != "" && t.After == nil && t.Links == nil {
			t.After = []string{last}
		}
		if t.Links == nil {
			last = t.ID
		}
		ts = append(ts, t)
	}
	for _, group := range []func() []calendar.Task{w.prepare, w.cast, w.strip, w.pour, w.finish} {
		for _, t := range group() {
			add(t)
		}
	}
	return ts
}

func (w *wiring) prepare() []calendar.Task {
	panels := 0
	for _, p := range w.plan.Form.Panels {
		panels += p.Count
	}
	parts := len(w.plan.Knockout.Parts)
	return []calendar.Task{
		{ID: "cut-panels", Title: "Cut " + units.Count(panels, "form panel", "form panels"), Room: "form", Work: units.Duration(panels) * perPanelCut, After: []string{},
			Cautions: []string{"Saw: guard on, push stick, ears and eyes. Board dust: extraction and a mask."}},
		{ID: "cut-foam", Title: "Cut " + units.Count(parts, "foam part", "foam parts") + ", FORM SIDE marked", Room: "knockout", Work: units.Duration(parts) * perFoamPart, After: []string{},
			Cautions: []string{"Foam dust: extraction. No hot wire without fresh air."}},
		{ID: "glue-foam", Title: "Glue the foam parts, largest outline first", Room: "knockout", Work: 0.75, Wait: glueSets, WaitFor: "glue to set",
			Cautions: []string{"Only glues that leave polystyrene alone: no solvent contact cement."}},
		{ID: "assemble-form", Title: "Screw the form together, check square and flat", Room: "form", Work: 1.5, After: []string{"cut-panels"}},
		{ID: "fix-knockout", Title: "Fix and seal the knockout in the form, FORM VIEW up", Room: "knockout", Work: 1, After: []string{"glue-foam", "assemble-form"}},
		{ID: "caulk-wax", Title: "Caulk seams, then wax and release", Room: "form", Work: 1, Wait: caulkCures, WaitFor: "caulk to skin"},
	}
}

func (w *wiring) cast() []calendar.Task {
	var ts []calendar.Task
	r := w.plan.Concrete
	for i, c := range r.Coats {
		n := 0
		for _, b := range r.Batches {
			if b.Coat == c.Name {
				n++
			}
		}
		t := calendar.Task{ID: fmt.Sprintf("coat-%d", i+1), Title: fmt.Sprintf("Cast %s: %s", c.Name, units.Count(n, "batch", "batches")), Room: "concrete",
			Work: c.Takes, Hands: w.job.Mixing.People, Unbroken: true,
			Cautions: []string{"Fresh mix is caustic: gloves, goggles, wash off at once. Dry cement and sand: respirator."}}
		t.Wait, t.Latest = w.afterCoat(i)
		t.WaitFor = "coat to firm: timer and touch, soft but not sticky"
		if i+1 == len(r.Coats) {
			t.WaitFor = "edges to go semi-hard"
		}
		ts = append(ts, t)
	}
	return ts
}

// afterCoat returns the window of what follows a coat, from its end: the first water of
// the next coat as planned, so that no place is late if none need be, or the levelling
// of the edges.
func (w *wiring) afterCoat(i int) (from, until units.Duration) {
	r := w.plan.Concrete
	end := r.Coats[i].Starts + r.Coats[i].Takes
	if i+1 == len(r.Coats) {
		edges := w.window("edges").Planned
		return edges.From, edges.Until
	}
	from = max(0, r.Coats[i+1].Starts-end)
	slack := longestSlack
	for _, z := range r.Packing {
		if z.Coat == r.Coats[i+1].Name {
			slack = min(slack, z.Closes-z.End)
		}
	}
	return from, from + max(slack, leastSlack)
}

// leastSlack is how late a coat may begin where its window is over already: a finding
// says so, and the calendar need not say it again. Chosen.
const (
	leastSlack   units.Duration = 0.1
	longestSlack units.Duration = 48
)

// window returns the window of the whole casting of that name.
func (w *wiring) window(name string) concrete.Window {
	for _, x := range w.plan.Concrete.Windows {
		if x.Name == name {
			return x
		}
	}
	return concrete.Window{}
}

func (w *wiring) strip() []calendar.Task {
	return []calendar.Task{
		{ID: "level-edges", Title: "Level the edges, then cover and keep warm", Room: "concrete", Work: 0.5, Unbroken: true,
			Wait:     max(0, w.window("demould").Planned.From-w.window("edges").Planned.From-0.5),
			WaitFor:  "shell to be strong enough to strip",
			Cautions: []string{"Cover with film, no fans: a drying skin crazes."}},
		{ID: "strip", Title: "Turn the casting over, strip form and foam", Room: "structure", Work: 2,
			Wait: w.plan.Concrete.Drying.Planned, WaitFor: "shell to dry: weigh until steady, then the sheet test",
			Cautions: []string{fmt.Sprintf("The casting in its form weighs %.0f kg: lift as a team, feet and fingers clear.", w.plan.Structure.Flip)}},
		{ID: "seal", Title: "Patch, sand and seal what resin must not wet; build the dam", Room: "concrete", Work: 3, Wait: sealDries, WaitFor: "seal coat and dam caulk to cure",
			Cautions: []string{"Sanding concrete makes silica dust: wet, or shroud and extraction, with a fitted respirator."}},
	}
}

func (w *wiring) pour() []calendar.Task {
	var ts []calendar.Task
	lifts := w.plan.Resin.Lifts
	for i, l := range lifts {
		t := calendar.Task{ID: fmt.Sprintf("lift-%d", l.Number),
			Title: fmt.Sprintf("Pour lift %d of %d: %.1f mm, %.2f l", l.Number, len(lifts), l.Depth, l.Volume), Room: "resin",
			Work: units.Duration(len(l.Batches)) * perBucket, Unbroken: true, Wait: l.Wait, WaitFor: "lift to gel before the next",
			Cautions: []string{"Resin and hardener sensitise skin: nitrile gloves, goggles, fresh air. A bucket left standing can boil: outside with it."}}
		if i+1 == len(lifts) {
			t.Wait, t.WaitFor = max(l.Wait, lastLiftWaits), "resin to harden through, shallows last"
		} else if l.BondsUntil > l.Wait {
			t.Latest, t.Otherwise = l.BondsUntil, fmt.Sprintf("Sand lift %d dull before the next is poured: by then it no longer bonds by itself.", l.Number)
		}
		ts = append(ts, t)
		ts = append(ts, torchRounds(l)...)
	}
	return ts
}

// torchRounds are the rounds over a lift. A round may be passed until the next is due;
// the last hour given is when a flame begins to leave marks.
func torchRounds(l resin.Lift) []calendar.Task {
	var ts []calendar.Task
	for i := 0; i+1 < len(l.Torch); i++ {
		ts = append(ts, calendar.Task{ID: fmt.Sprintf("lift-%d-torch-%d", l.Number, i+1),
			Title: fmt.Sprintf("Pass the torch over lift %d, round %d of %d", l.Number, i+1, len(l.Torch)-1), Room: "resin",
			Work: perRound, Unbroken: true,
			Links:    []calendar.Link{{ID: fmt.Sprintf("lift-%d", l.Number), Wait: l.Torch[i], Latest: l.Torch[i+1]}},
			Cautions: []string{"Flame: nothing that burns near, no vapour in a closed room; keep it moving, a hand above."}})
	}
	return ts
}

func (w *wiring) finish() []calendar.Task {
	return []calendar.Task{
		{ID: "sand-resin", Title: "Take off the dam, sand wet, polish", Room: "resin", Work: 6,
			Cautions: []string{"Wet sanding: no mains tools without a residual-current device."}},
		{ID: "fit-base", Title: "Fit supports and base, check that it stands and does not tip", Room: "structure", Work: 2},
		{ID: "deliver", Title: fmt.Sprintf("Deliver %.0f kg", w.plan.Structure.Delivered), Room: "structure", Work: 2},
	}
}
