package job

import (
	"fmt"
	"math"
	"path"
	"slices"
	"strings"

	"pourwright/internal/typed"
	"pourwright/internal/units"
)

// basin reads where the hollow comes from and its steps; the foam must be known.
func (r *resolver) basin() {
	b, j := r.doc.Basin, r.job
	j.Basin = Basin{Drawing: string(b.Drawing), HeightMap: string(b.HeightMap)}
	r.basinFile()
	r.place(b.Place)
	j.Basin.Resolution = r.resolution(b.Resolution)
	j.Basin.ChordError, _ = r.length("basin.chord_error", b.ChordError, defaultChord, likelyChord)
	j.Basin.Smooth, _ = r.length("basin.smooth", b.Smooth, defaultSmooth, likelySmooth)
	j.Basin.Speck = r.speck(b.Speck)
	for i, s := range b.Steps {
		j.Basin.Steps = append(j.Basin.Steps, r.step(i, s))
	}
	r.heights(b.Map)
	if len(j.Basin.Steps) == 0 && j.Basin.HeightMap == "" {
		r.missing("basin.steps", "write steps: from the show face down, each with an outline and a depth")
	}
}

func (r *resolver) basinFile() {
	b := &r.job.Basin
	switch {
	case b.Drawing != "" && b.HeightMap != "":
		r.say(basinSource, "basin.height_map", "The basin names both a drawing and a height map; the drawing is used.").Remedy = "keep one of the two"
		b.HeightMap = ""
	case b.Drawing == "" && b.HeightMap == "":
		r.say(basinSource, "basin", "The basin names neither a drawing nor a height map.")
	}
	b.Drawing = r.beside("basin.drawing", b.Drawing, ".svg")
	b.HeightMap = r.beside("basin.height_map", b.HeightMap, ".png", ".txt", ".asc", ".grid", ".csv")
}

// beside accepts the name of a file in the document's folder or below.
func (r *resolver) beside(field, name string, endings ...string) string {
	if name == "" {
		return ""
	}
	clean := path.Clean(strings.ReplaceAll(name, `\`, "/"))
	if path.IsAbs(clean) || clean == ".." || strings.HasPrefix(clean, "../") || strings.Contains(clean, ":") {
		r.say(basinSource, field, "%q leads out of the piece's folder.", name).Remedy = "copy the file beside the document and write its name alone"
		return ""
	}
	if end := strings.ToLower(path.Ext(clean)); !slices.Contains(endings, end) {
		r.say(basinSource, field, "%q does not end in %s.", name, strings.Join(endings, ", "))
		return ""
	}
	return clean
}

// place reads page, centre or [x, y].
func (r *resolver) place(in typed.List) {
	b := &r.job.Basin
	b.Place = "page"
	switch {
	case len(in) == 0:
	case len(in) == 1:
		b.Place = r.word("basin.place", typed.Choice(strings.Replace(in[0], "center", "centre", 1)), "page", "centre")
	case len(in) == 2:
		x, okX := parse(r, "basin.place", in[0], func(s string) (units.Length, error) { return units.ParseLength(s, r.job.Units) })
		y, okY := parse(r, "basin.place", in[1], func(s string) (units.Length, error) { return units.ParseLength(s, r.job.Units) })
		if okX && okY {
			b.Place, b.AtX, b.AtY = "at", x, y
		}
	default:
		r.say(unknownWord, "basin.place", "basin.place has %s.", units.Count(len(in), "value", "values")).Remedy = "write page, centre or [x, y]"
	}
}

func (r *resolver) resolution(text typed.Number) float64 {
	if text == "" {
		return defaultResolution
	}
	v, ok := parse(r, "basin.resolution", string(text), units.ParseNumber)
	if !ok {
		return defaultResolution
	}
	if v < 1 || v > 10000 {
		r.say(wrongUnit, "basin.resolution", "A resolution of %s units per inch is no drawing's; %d is used.", text, defaultResolution).Remedy = "write user units per inch: 96, 90 or 72 are usual, 25.4 where a unit is a millimetre"
		return defaultResolution
	}
	return v
}

func (r *resolver) speck(text typed.Area) units.Area {
	if text == "" {
		return defaultSpeck
	}
	a, ok := parse(r, "basin.speck", string(text), func(s string) (units.Area, error) { return units.ParseArea(s, r.job.Units+"2") })
	if !ok {
		return defaultSpeck
	}
	if a < 0 || a > 1e6 {
		r.say(wrongUnit, "basin.speck", "A speck of %s is no speck; %.0f mm2 is used.", text, float64(defaultSpeck)).Remedy = "write a small area such as 100 mm2"
		return defaultSpeck
	}
	return a
}

func (r *resolver) step(i int, s StepText) Step {
	field := fmt.Sprintf("basin.steps[%d]", i)
	out := Step{Name: string(s.Name), Outlines: []string{}, Islands: []string{}}
	out.Outlines = append(out.Outlines, s.Outline...)
	out.Islands = append(out.Islands, s.Islands...)
	if out.Name == "" {
		out.Name = fmt.Sprintf("step %d", i+1)
		if len(out.Outlines) > 0 {
			out.Name = strings.Join(out.Outlines, ", ")
		}
	}
	if len(out.Outlines) == 0 && r.job.Basin.Drawing != "" {
		r.say(stepOutline, field+".outline", "Step %d (%s) names no outline.", i+1, out.Name)
	}
	foam := strings.ToLower(strings.TrimSpace(string(s.Depth)))
	if foam == "" || foam == "foam" {
		out.Depth, out.IsFoam = r.job.Foam.Measured, true
		return out
	}
	out.Depth, _ = r.length(field+".depth", s.Depth, r.job.Foam.Measured, likelyStep)
	return out
}

// heights reads the size of a height map; without steps it is cut into steps of one
// sheet of foam each.
func (r *resolver) heights(m MapText) {
	b, j := &r.job.Basin, r.job
	var length, width units.Length // 0: the size that a text grid states itself
	if strings.HasSuffix(strings.ToLower(b.HeightMap), ".png") && m.Length == "" && m.Width == "" {
		length, width = j.Length, j.Width
	}
	b.MapLength, _ = r.length("basin.map.length", m.Length, length, likelyMap)
	b.MapWidth, _ = r.length("basin.map.width", m.Width, width, likelyMap)
	b.MapDepth, _ = r.length("basin.map.depth", m.Depth, 0, likelyStep)
	if b.HeightMap == "" {
		return
	}
	if len(b.Steps) > 0 {
		return
	}
	if b.MapDepth == 0 {
		r.missing("basin.map.depth", "write map: with the depth of the deepest place, or steps: with their depths")
		return
	}
	n := max(1, int(math.Round(float64(b.MapDepth/j.Foam.Measured))))
	for i := range min(n, 100) {
		b.Steps = append(b.Steps, Step{Name: fmt.Sprintf("step %d", i+1), Outlines: []string{}, Islands: []string{}, Depth: j.Foam.Measured, IsFoam: true})
	}
}

// depth returns the depth of the whole basin.
func (b Basin) depth() units.Length {
	var sum units.Length
	for _, s := range b.Steps {
		sum += s.Depth
	}
	return sum
}

// basinFits checks the basin's depth against the piece and the resin.
func (r *resolver) basinFits(whole bool) {
	j := r.job
	depth := j.Basin.depth()
	if depth <= 0 {
		return
	}
	if room := j.Height - j.Shell(); whole && depth >= room {
		f := r.say(basinTooDeep, "basin.steps", "The basin is %s deep; the piece less its shell leaves %s.", units.FormatMM(depth, 1), units.FormatMM(room, 1))
		f.Got, f.Limit, f.Unit = depth.MM(), room.MM(), "mm"
	}
	c := j.Resin.Card
	if depth < c.MinDepth.Value {
		f := r.say(resinDepth, "resin", "The basin is %s deep and %s wants lifts of %s to %s.", units.FormatMM(depth, 1), c.Name, units.FormatMM(c.MinDepth.Value, 0), units.FormatMM(c.MaxDepth.Value, 0))
		f.Got, f.Limit, f.Unit = depth.MM(), c.MinDepth.Value.MM(), "mm"
	}
	if lifts := float64(depth / max(c.MaxDepth.Value, 0.1)); math.Ceil(lifts) > mostLifts {
		f := r.say(resinLifts, "resin", "The basin is %s deep: %.0f lifts of %s.", units.FormatMM(depth, 1), math.Ceil(lifts), c.Name)
		f.Got, f.Limit, f.Unit = math.Ceil(lifts), mostLifts, "lifts"
	}
}
