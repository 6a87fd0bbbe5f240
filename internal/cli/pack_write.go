package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// packFile is one file of the pack.
type packFile struct {
	name   string
	render func(io.Writer) error
}

// manifest is the file of a pack that lists the others, one a line.
const manifest = "files.txt"

// writePack renders all files into a folder of their own inside dir and only then moves
// them to their places: where one fails, nothing of the new pack is left and the old one
// stands. Files that an earlier pack listed and this one does not have are taken away, so
// that no program of another plan lies among those of this one.
func writePack(dir string, files []packFile) error {
	_, missing := os.Stat(dir)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("write pack: %w", err)
	}
	tmp, err := os.MkdirTemp(dir, ".writing-*")
	if err != nil {
		return fmt.Errorf("write pack: %w", err)
	}
	names := []string{}
	for _, f := range files {
		names = append(names, filepath.ToSlash(f.name))
	}
	list := packFile{manifest, func(w io.Writer) error { _, err := io.WriteString(w, strings.Join(names, "\n")+"\n"); return err }}
	files = append(slices.Clone(files), list)
	for _, f := range files {
		if err = f.write(tmp); err != nil {
			break
		}
	}
	if err == nil {
		err = moveInto(dir, tmp, files)
	}
	if gone := os.RemoveAll(tmp); err == nil && gone != nil {
		err = fmt.Errorf("write pack: %w", gone)
	}
	if err != nil && errors.Is(missing, os.ErrNotExist) {
		_ = os.Remove(dir) // only where nothing is in it
	}
	return err
}

// write renders the file below dir.
func (f packFile) write(dir string) error {
	path := filepath.Join(dir, f.name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("write %s: %w", f.name, err)
	}
	out, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return fmt.Errorf("write %s: %w", f.name, err)
	}
	err = f.render(out)
	if closed := out.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return fmt.Errorf("write %s: %w", f.name, err)
	}
	return nil
}

// moveInto moves the files from tmp to dir and removes those of an earlier pack.
func moveInto(dir, tmp string, files []packFile) error {
	old, _ := os.ReadFile(filepath.Join(dir, manifest))
	for _, f := range files {
		to := filepath.Join(dir, f.name)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return fmt.Errorf("write %s: %w", f.name, err)
		}
		if err := os.Rename(filepath.Join(tmp, f.name), to); err != nil {
			return fmt.Errorf("write %s: %w", f.name, err)
		}
	}
	for _, name := range strings.Split(strings.TrimSpace(string(old)), "\n") {
		name = filepath.FromSlash(name)
		if name == "" || !filepath.IsLocal(name) || slices.ContainsFunc(files, func(f packFile) bool { return f.name == name }) {
			continue
		}
		if err := os.Remove(filepath.Join(dir, name)); err != nil && !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("remove %s of an earlier pack: %w", name, err)
		}
		_ = os.Remove(filepath.Dir(filepath.Join(dir, name))) // only where nothing is left in it
	}
	return nil
}
