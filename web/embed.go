// Package web holds the built page. The sources stand in src and are built into
// dist by "npm run build"; without that, the program still builds and serves a
// page that says what is missing.
package web

import (
	"embed"
	"io/fs"
)

//go:embed all:dist*
var files embed.FS

// missing is the page served when dist was not built into the program.
const missing = "dist.missing.html"

// Pages returns the built page, and whether there is one. Without it, index.html is
// a page that says how to build it.
func Pages() (fs.FS, bool) {
	if dist, err := fs.Sub(files, "dist"); err == nil {
		if _, err := fs.Stat(dist, "index.html"); err == nil {
			return dist, true
		}
	}
	return instead{}, false
}

// instead serves the missing page as index.html.
type instead struct{}

func (instead) Open(name string) (fs.File, error) {
	if name != "index.html" {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return files.Open(missing)
}
