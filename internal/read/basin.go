package read

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/job"
	"pourwright/internal/plan"
	"pourwright/internal/read/heightmap"
	"pourwright/internal/read/svg"
	"pourwright/internal/view"
)

// basinReader reads what the document names as its basin.
type basinReader struct {
	fsys   fs.FS
	dir    string
	job    *job.Job
	hash   io.Writer
	piece  *Piece
	depths *plan.Heights // of a height map
	found  []finding.Finding
}

func (b *basinReader) say(f finding.Finding) { b.found = append(b.found, f) }

func (b *basinReader) where(field string) finding.Where {
	if w, ok := b.job.Places[field]; ok {
		return w
	}
	return finding.Where{File: b.piece.Document, Field: field}
}

// read returns the steps in the outer box; none when the file cannot be used, with
// a stop finding that says why.
func (b *basinReader) read() ([]plan.BasinStep, []finding.Finding) {
	var steps []plan.BasinStep
	switch {
	case b.job.Basin.Drawing != "":
		if data, ok := b.file(b.job.Basin.Drawing, "basin.drawing"); ok {
			steps = b.outlines(data)
		}
	case b.job.Basin.HeightMap != "":
		if data, ok := b.file(b.job.Basin.HeightMap, "basin.height_map"); ok {
			steps = b.heights(data)
		}
	}
	return steps, b.found
}

// file reads a file beside the document.
func (b *basinReader) file(name, field string) ([]byte, bool) {
	full := path.Join(b.dir, name)
	if !fs.ValidPath(full) {
		b.say(noDrawing.At(b.where(field), "%q leads out of the piece's folder.", name).Do("Copy the file into the folder of the document and name it from there."))
		return nil, false
	}
	b.piece.Files = append(b.piece.Files, full)
	data, err := readLimited(b.fsys, full, MaxDrawing)
	if err != nil {
		b.say(noDrawing.At(b.where(field), "The drawing %s could not be read: %v.", name, errors.Unwrap(err)))
		if errors.Unwrap(err) == nil {
			b.found[len(b.found)-1].Text = fmt.Sprintf("The drawing %s could not be opened: %v.", name, err)
		}
		return nil, false
	}
	_, _ = b.hash.Write(data)
	return data, true
}

// outlines picks the steps' outlines out of a drawing.
func (b *basinReader) outlines(data []byte) []plan.BasinStep {
	basin := b.job.Basin
	d, found, err := svg.Read(basin.Drawing, data, svg.Options{Resolution: basin.Resolution, ChordError: basin.ChordError.MM()})
	b.found = append(b.found, found...)
	if err != nil {
		var e *svg.Error
		if errors.As(err, &e) {
			b.say(e.Finding().As(finding.Stop))
		} else {
			b.say(noDrawing.At(b.where("basin.drawing"), "The drawing %s could not be read: %v.", basin.Drawing, err))
		}
		return nil
	}
	if len(basin.Steps) == 0 {
		b.say(noSteps.At(b.where("basin.steps"), "The basin has no steps; the drawing holds %s.", list(d.IDs())))
		return nil
	}
	b.found = append(b.found, d.CheckScale(b.job.Length.MM(), b.job.Width.MM())...)
	move := b.placement(d)
	var steps []plan.BasinStep
	used := map[string]bool{}
	for i, s := range basin.Steps {
		region := b.step(d, i, s, used)
		if len(region) == 0 {
			continue
		}
		steps = append(steps, plan.BasinStep{Name: s.Name, Depth: s.Depth, Where: b.where(fmt.Sprintf("basin.steps[%d]", i)),
			Region: view.Of[view.Finished](region.Map(func(p geom.Point) geom.Point { return p.Add(move) }, false))})
	}
	b.unused(d, used)
	if len(steps) < len(basin.Steps) {
		return nil // a step without its outline would make every later number wrong
	}
	return steps
}

// step returns the region of one step: its outlines less its islands.
func (b *basinReader) step(d *svg.Drawing, i int, s job.Step, used map[string]bool) geom.Region {
	pick := func(refs []string, field string) []svg.Outline {
		var out []svg.Outline
		for _, ref := range refs {
			got := d.Select(ref)
			if len(got) == 0 {
				b.say(unknownOutline.At(b.where(field), "Step %d names %q, which is not in %s; it holds %s.", i+1, ref, d.File, list(d.IDs())))
			}
			for _, o := range got {
				used[o.ID] = true
			}
			out = append(out, got...)
		}
		return out
	}
	water := pick(s.Outlines, fmt.Sprintf("basin.steps[%d].outline", i))
	islands := pick(s.Islands, fmt.Sprintf("basin.steps[%d].islands", i))
	region := d.PieceRegion(water)
	if len(water) > 0 && len(region) == 0 {
		b.say(emptyOutline.At(b.where(fmt.Sprintf("basin.steps[%d].outline", i)), "Step %d (%s) encloses no area: its outline is open or a mere speck.", i+1, strings.Join(s.Outlines, ", ")))
	}
	if len(islands) > 0 {
		region = geom.Subtract(region, d.PieceRegion(islands))
	}
	return region
}

func (b *basinReader) unused(d *svg.Drawing, used map[string]bool) {
	for _, o := range d.Outlines {
		if !used[o.ID] && o.AllClosed() && o.DuplicateOf == "" {
			b.say(unusedOutline.At(finding.Where{File: d.File, Line: o.Line, Column: o.Column, Element: o.ID}, "No step names the outline %s.", o.ID))
		}
	}
}

// placement returns where the drawing's lower left corner comes in the box.
func (b *basinReader) placement(d *svg.Drawing) geom.Point {
	l, w := b.job.Length.MM(), b.job.Width.MM()
	switch b.job.Basin.Place {
	case "centre":
		return geom.Point{X: (l - d.PageWidthMM) / 2, Y: (w - d.PageHeightMM) / 2}
	case "at":
		return geom.Point{X: b.job.Basin.AtX.MM(), Y: b.job.Basin.AtY.MM()}
	}
	if math.Abs(d.PageWidthMM-l) > 0.5 || math.Abs(d.PageHeightMM-w) > 0.5 {
		b.say(pageSize.At(b.where("basin.drawing"), "The drawing's page is %.1f x %.1f mm and the box is %.1f x %.1f mm; the page's lower left corner is put on the box's.",
			d.PageWidthMM, d.PageHeightMM, l, w))
	}
	return geom.Point{}
}

// list writes a few names out.
func list(names []string) string {
	const most = 12
	if len(names) == 0 {
		return "no outline"
	}
	if len(names) > most {
		return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", len(names)-most)
	}
	return strings.Join(names, ", ")
}

// heights turns a height map into steps.
func (b *basinReader) heights(data []byte) []plan.BasinStep {
	basin := b.job.Basin
	m, found, err := heightmap.Read(basin.HeightMap, data, heightmap.Options{Length: basin.MapLength, Width: basin.MapWidth, Depth: basin.MapDepth})
	b.found = append(b.found, found...)
	if err != nil {
		var e *heightmap.Error
		if errors.As(err, &e) {
			b.say(noDrawing.At(e.Where, "The height map %s could not be used: %s.", basin.HeightMap, strings.TrimSuffix(e.Text, ".")).Do("%s", e.Remedy))
		} else {
			b.say(noDrawing.At(b.where("basin.height_map"), "The height map %s could not be used: %v.", basin.HeightMap, err))
		}
		return nil
	}
	opt := heightmap.StepOptions{Smooth: basin.Smooth, Speck: basin.Speck, Tolerance: basin.ChordError}
	for _, s := range basin.Steps {
		opt.Thickness = append(opt.Thickness, s.Depth)
	}
	if len(opt.Thickness) == 0 && b.job.Foam.Measured > 0 {
		_, deepest := m.Depth.Range()
		for d := 0.0; d < deepest-0.1*b.job.Foam.Measured.MM() && len(opt.Thickness) < 200; d += b.job.Foam.Measured.MM() {
			opt.Thickness = append(opt.Thickness, b.job.Foam.Measured)
		}
	}
	steps, _, told := m.Steps(opt)
	b.found = append(b.found, told...)
	move := b.mapPlacement(m)
	b.lay(m, move)
	var out []plan.BasinStep
	for i, s := range steps {
		name := fmt.Sprintf("step %d", i+1)
		if i < len(basin.Steps) && basin.Steps[i].Name != "" {
			name = basin.Steps[i].Name
		}
		out = append(out, plan.BasinStep{Name: name, Depth: s.To - s.From, Where: b.where("basin.height_map"),
			Region: view.Of[view.Finished](s.Region.Map(func(p geom.Point) geom.Point { return p.Add(move) }, false))})
	}
	return out
}

// lay keeps the map's depths where they lie in the box.
func (b *basinReader) lay(m heightmap.Map, move geom.Point) {
	placed := m.Depth
	placed.Origin = placed.Origin.Add(move)
	b.depths = &placed
}

// mapPlacement returns where the map's lower left corner comes in the box.
func (b *basinReader) mapPlacement(m heightmap.Map) geom.Point {
	box := m.Depth.Box()
	switch b.job.Basin.Place {
	case "centre":
		return geom.Point{X: b.job.Length.MM() / 2, Y: b.job.Width.MM() / 2}.Sub(box.Center())
	case "at":
		return geom.Point{X: b.job.Basin.AtX.MM(), Y: b.job.Basin.AtY.MM()}.Sub(box.Min)
	}
	return geom.Point{}.Sub(box.Min)
}
