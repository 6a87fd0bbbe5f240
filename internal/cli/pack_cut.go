package cli

import (
	"io"
	"path/filepath"

	"pourwright/internal/drawing"
	"pourwright/internal/plan"
	"pourwright/internal/render/svg"
	"pourwright/internal/render/template"
)

// cuttingFiles are the files to cut the foam by: programs that were verified and their
// dry runs, layers and sheets at true size, and paper templates.
func cuttingFiles(p *plan.Plan, paper string) []packFile {
	var out []packFile
	text := func(name, body string) {
		out = append(out, packFile{filepath.Join("cut", name), func(w io.Writer) error {
			_, err := io.WriteString(w, body)
			return err
		}})
	}
	verified := map[string]bool{}
	for _, r := range p.Proof {
		verified[r.File] = r.Verified
	}
	for _, q := range p.Toolpath.Programs {
		if verified[q.File] {
			text(q.File, q.Text)
		}
		if verified[q.File] && verified[q.DryRun.File] {
			text(q.DryRun.File, q.DryRun.Text)
		}
	}
	drawings := func(folder string, ds []drawing.Drawing) {
		for _, d := range ds {
			out = append(out, packFile{filepath.Join(folder, d.Name+".svg"), func(w io.Writer) error { return svg.Render(w, d) }})
		}
	}
	drawings("layers", drawing.Layers(p))
	drawings("sheets", drawing.Sheets(p))
	if fs := template.Parts(p); len(fs) > 0 {
		out = append(out, packFile{"templates.pdf", func(w io.Writer) error {
			return template.Render(w, fs, template.Options{Paper: paper, Title: p.Piece.Name + ", templates"})
		}})
	}
	return out
}
