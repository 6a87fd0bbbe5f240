// Package read opens a piece: the document, the drawing or height map beside it and
// the shop's own shelf, and puts the basin's outlines into the outer box in
// finished view. It is the only place below the commands that touches files, and it
// does so through an fs.FS, so that tests and the server can hand it any.
package read

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"

	"pourwright/internal/finding"
	"pourwright/internal/job"
	"pourwright/internal/material"
	"pourwright/internal/plan"
)

// Limits of files, bytes.
const (
	MaxDocument = 1 << 20
	MaxShelf    = 4 << 20
	MaxDrawing  = 64 << 20
)

// A Piece is everything read for one piece.
type Piece struct {
	Document string // file name
	Job      *job.Job
	Input    plan.Input
	Files    []string // names of the files read, for watching
}

// A DocumentError is a document that could not become a job; its findings say where
// and why, all at once.
type DocumentError struct {
	File     string
	Findings []finding.Finding
}

// Error counts what stands in the way and quotes the first.
func (e *DocumentError) Error() string {
	if len(e.Findings) == 0 {
		return fmt.Sprintf("read %s: not a piece", e.File)
	}
	f := e.Findings[0]
	if len(e.Findings) == 1 {
		return fmt.Sprintf("read %s: %s", f.Where, f.Text)
	}
	return fmt.Sprintf("read %s: %s (and %d more)", f.Where, f.Text, len(e.Findings)-1)
}

// Hint returns the first remedy.
func (e *DocumentError) Hint() string {
	if len(e.Findings) == 0 {
		return "start from one of the examples"
	}
	return e.Findings[0].Remedy
}

// Reasons returns all that stands in the way, for those who can show a list.
func (e *DocumentError) Reasons() []finding.Finding { return e.Findings }

// Open reads the piece document name in fsys with the given shelf. Errors are for a
// file that cannot be read or a document that cannot be understood at all; all
// that is wrong with the decisions in it comes back as findings in Input.
func Open(fsys fs.FS, name string, shelf material.Shelf) (*Piece, error) {
	data, err := readLimited(fsys, name, MaxDocument)
	if err != nil {
		return nil, err
	}
	doc, problems := job.Read(name, data)
	if doc == nil {
		return nil, &DocumentError{File: name, Findings: problems}
	}
	j, found := job.Resolve(doc, shelf)
	if j == nil {
		return nil, &DocumentError{File: name, Findings: append(problems, found...)}
	}
	p := &Piece{Document: name, Job: j, Files: []string{name}}
	hash := sha256.New()
	hash.Write(data)
	b := &basinReader{fsys: fsys, dir: path.Dir(name), job: j, hash: hash, piece: p}
	steps, seen := b.read()
	seen = append(seen, b.roomLog()...)
	p.Input = plan.Input{Job: j, Basin: steps, Heights: b.depths, Findings: append(append(problems, found...), seen...), Fingerprint: hex.EncodeToString(hash.Sum(nil))[:8]}
	return p, nil
}

// readLimited reads a whole file of at most limit bytes.
func readLimited(fsys fs.FS, name string, limit int64) ([]byte, error) {
	info, err := fs.Stat(fsys, name)
	if err != nil {
		return nil, missing(name, err)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("read %s: a folder, a pipe or a device, no file", name) // which may wait for ever once opened
	}
	f, err := fsys.Open(name)
	if err != nil {
		return nil, missing(name, err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	if int64(len(data)) > limit {
		return nil, fmt.Errorf("read %s: larger than the limit of %d MiB", name, limit>>20)
	}
	return data, nil
}

func missing(name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("read %s: no such file", name)
	}
	return fmt.Errorf("read %s: %w", name, err)
}
