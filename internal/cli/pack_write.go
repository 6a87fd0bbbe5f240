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
	info, missing := os.Stat(dir)
	if missing == nil && !info.IsDir() {
		return &packError{fmt.Errorf("write pack: %s is a file, no folder", dir)}
	}
	if err := foreign(dir, files); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return &packError{fmt.Errorf("write pack: %w", err)}
	}
	tmp, err := os.MkdirTemp(dir, ".writing-*")
	if err != nil {
		return &packError{fmt.Errorf("write pack: %w", err)}
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

// A packError is a folder that no pack can be written to.
type packError struct{ err error }

// Error says what stands in the way.
func (e *packError) Error() string { return e.err.Error() }

// Unwrap returns the cause.
func (e *packError) Unwrap() error { return e.err }

// Hint says where a pack can go.
func (e *packError) Hint() string {
	return "name another folder with --out, one that you may write to and that is empty or holds an earlier pack"
}

// foreign says where a file that no earlier pack listed stands in the way of one of the
// new pack: it is the maker's own and is not written over.
func foreign(dir string, files []packFile) error {
	old := earlier(dir)
	for _, f := range files {
		_, err := os.Lstat(filepath.Join(dir, f.name))
		if err == nil && !slices.Contains(old, f.name) {
			return &packError{fmt.Errorf("write pack: %s is there already and is of no earlier pack", filepath.Join(dir, f.name))}
		}
	}
	return nil
}

// earlier returns the files that an earlier pack in dir listed, without those that lead
// out of it.
func earlier(dir string) []string {
	data, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		return nil
	}
	var out []string
	for _, name := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		if name = filepath.FromSlash(strings.TrimSpace(name)); name != "" && filepath.IsLocal(name) {
			out = append(out, name)
		}
	}
	return out
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
	old := earlier(dir)
	for _, f := range files {
		to := filepath.Join(dir, f.name)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return fmt.Errorf("write %s: %w", f.name, err)
		}
		if err := os.Rename(filepath.Join(tmp, f.name), to); err != nil {
			return fmt.Errorf("write %s: %w", f.name, err)
		}
	}
	for _, name := range old {
		if slices.ContainsFunc(files, func(f packFile) bool { return f.name == name }) {
			continue
		}
		if err := os.Remove(filepath.Join(dir, name)); err != nil && !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("remove %s of an earlier pack: %w", name, err)
		}
		_ = os.Remove(filepath.Dir(filepath.Join(dir, name))) // only where nothing is left in it
	}
	return nil
}
