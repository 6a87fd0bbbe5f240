package cli

import (
	"fmt"
	"io"
	"path/filepath"

	"pourwright/internal/drawing"
	"pourwright/internal/render/csv"
	"pourwright/internal/render/ics"
	"pourwright/internal/render/pdf"
	"pourwright/internal/render/svg"
	"pourwright/internal/render/term"
	"pourwright/internal/serve"
)

type packCmd struct {
	pieceArg
	Out       string `help:"Folder to write into; made if it is not there." default:"pack" type:"path"`
	Paper     string `help:"Paper: a4 or letter." enum:"a4,letter" default:"a4"`
	WithStops bool   `help:"Write the pack even though the plan has stop findings; its cover says so."`
}

// Run writes the shop pack. A plan with stop findings is not handed out unless asked.
func (c *packCmd) Run(con *console) error {
	p, err := c.compute(con)
	if err != nil {
		return err
	}
	if stopIf(p) != nil && !c.WithStops {
		if err := term.Render(con.out, p); err != nil {
			return err
		}
		fmt.Fprintln(con.err, "error: no pack written: the plan has stop findings\nhint: settle them, or write it all the same with --with-stops; every page is marked")
		return errStopped
	}
	ds := drawing.All(p)
	files := []packFile{
		{"shop-pack.pdf", func(w io.Writer) error { return pdf.Render(w, p, ds, pdf.Options{Paper: c.Paper}) }},
		{"panels.pdf", func(w io.Writer) error { return pdf.RenderPanels(w, p, ds, pdf.Options{Paper: c.Paper}) }},
		{"plan.json", func(w io.Writer) error { return writeJSON(w, p) }},
		{filepath.Join("lists", "panels.csv"), func(w io.Writer) error { return csv.Panels(w, p) }},
		{filepath.Join("lists", "cuts.csv"), func(w io.Writer) error { return csv.Cuts(w, p) }},
		{filepath.Join("lists", "parts.csv"), func(w io.Writer) error { return csv.Parts(w, p) }},
		{filepath.Join("lists", "shopping.csv"), func(w io.Writer) error { return csv.Shopping(w, p) }},
		{"report.txt", func(w io.Writer) error { return term.Render(w, p) }},
	}
	for _, d := range ds {
		files = append(files, packFile{filepath.Join("drawings", d.Name+".svg"), func(w io.Writer) error { return svg.Render(w, d) }})
	}
	if ics.Dated(p) {
		files = append(files, packFile{"calendar.ics", func(w io.Writer) error { return ics.Render(w, p) }})
	}
	files = append(files, cuttingFiles(p, c.Paper)...)
	if err := writePack(c.Out, files); err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(con.out, filepath.Join(c.Out, f.name))
	}
	return stopIf(p)
}

// writeSVG renders the drawing of the given name.
func writeSVG(w io.Writer, s serve.Snapshot, name string) error {
	for _, d := range s.Drawings {
		if d.Name == name {
			return svg.Render(w, d)
		}
	}
	return fmt.Errorf("no drawing named %q", name)
}

// writePDF renders the shop pack.
func writePDF(w io.Writer, s serve.Snapshot, paper string) error {
	return pdf.Render(w, s.Plan, s.Drawings, pdf.Options{Paper: paper})
}
