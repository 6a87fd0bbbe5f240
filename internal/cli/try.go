package cli

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing/fstest"

	"github.com/goccy/go-yaml"

	"pourwright/internal/drawing"
	"pourwright/internal/plan"
	"pourwright/internal/read"
	"pourwright/internal/serve"
)

// try computes the piece with some fields typed otherwise. The document on disk stays
// as it is, and what does not hang on those fields comes from memory.
func (c *serveCmd) try(ctx context.Context, fields map[string]string) (serve.Snapshot, error) {
	shelf, err := openShelf(c.Shelf)
	if err != nil {
		return serve.Snapshot{}, err
	}
	data, err := readFile(c.File, read.MaxDocument)
	if err != nil {
		return serve.Snapshot{}, err
	}
	if data, err = setFields(data, fields); err != nil {
		return serve.Snapshot{}, err
	}
	base := filepath.Base(c.File)
	piece, err := read.Open(overlay{os.DirFS(filepath.Dir(c.File)), base, data}, base, shelf)
	if err != nil {
		return serve.Snapshot{}, err
	}
	p, err := plan.Options{Memory: &c.memory}.Compute(ctx, piece.Input)
	if err != nil {
		return serve.Snapshot{}, err
	}
	s := serve.Snapshot{Plan: p, Drawings: drawing.All(p)}
	s.Version, err = serve.Hash(p, s.Drawings)
	return s, err
}

// An overlay is a folder with one file's content replaced.
type overlay struct {
	fs.FS
	name string
	data []byte
}

// Stat tells of the other files without opening them.
func (o overlay) Stat(name string) (fs.FileInfo, error) {
	if name == o.name {
		return fs.Stat(fstest.MapFS{name: &fstest.MapFile{Data: o.data, Mode: 0o444}}, name)
	}
	return fs.Stat(o.FS, name)
}

// Open opens a file of the folder.
func (o overlay) Open(name string) (fs.File, error) {
	if name == o.name {
		return fstest.MapFS{name: &fstest.MapFile{Data: o.data, Mode: 0o444}}.Open(name)
	}
	return o.FS.Open(name)
}

// setFields returns the document with fields such as resin.lifts[1].depth set to texts.
// Groups that are not there are added; an empty text takes the field away.
func setFields(data []byte, fields map[string]string) ([]byte, error) {
	var doc yaml.MapSlice
	if err := yaml.Unmarshal(data, &doc); err != nil {
		return nil, fmt.Errorf("read the document: %w", err)
	}
	var paths []string
	for p := range fields {
		paths = append(paths, p)
	}
	slices.Sort(paths)
	for _, p := range paths {
		steps, err := parsePath(p)
		if err != nil {
			return nil, err
		}
		v, err := setAt(doc, steps, fields[p])
		if err != nil {
			return nil, fmt.Errorf("try %s: %w", p, err)
		}
		doc = v.(yaml.MapSlice)
	}
	return yaml.Marshal(doc)
}

// A step of a path is a name, or an index in a list where name is "".
type step struct {
	name  string
	index int
}

func parsePath(path string) ([]step, error) {
	var out []step
	for _, part := range strings.Split(path, ".") {
		name, rest, indexed := strings.Cut(part, "[")
		if name == "" {
			return nil, fmt.Errorf("%q is no field: write names with dots, such as resin.lifts[0].depth", path)
		}
		out = append(out, step{name: name})
		if !indexed {
			continue
		}
		i, err := strconv.Atoi(strings.TrimSuffix(rest, "]"))
		if err != nil || i < 0 || i > 999 || !strings.HasSuffix(rest, "]") {
			return nil, fmt.Errorf("%q is no field: write a place in a list as [0]", path)
		}
		out = append(out, step{index: i})
	}
	return out, nil
}

// setAt returns into with the text set at the end of the path.
func setAt(into any, path []step, text string) (any, error) {
	if len(path) == 0 {
		return text, nil
	}
	if path[0].name != "" {
		return setNamed(into, path, text)
	}
	list, ok := into.([]any)
	if !ok && into != nil {
		return nil, fmt.Errorf("the field is no list")
	}
	i := path[0].index
	if i > len(list) {
		return nil, fmt.Errorf("the list has %d entries, so there is no place %d", len(list), i)
	}
	list = slices.Clone(list)
	if text == "" && len(path) == 1 {
		return list[:i], nil // what follows goes too
	}
	if i == len(list) {
		list = append(list, nil)
	}
	v, err := setAt(list[i], path[1:], text)
	list[i] = v
	return list, err
}

func setNamed(into any, path []step, text string) (any, error) {
	group, ok := into.(yaml.MapSlice)
	if m, is := into.(map[string]any); is {
		for k, v := range m {
			group = append(group, yaml.MapItem{Key: k, Value: v})
		}
		slices.SortFunc(group, func(a, b yaml.MapItem) int { return strings.Compare(a.Key.(string), b.Key.(string)) })
		ok = true
	}
	if !ok && into != nil {
		return nil, fmt.Errorf("%s stands in no group of fields", path[0].name)
	}
	group = slices.Clone(group)
	at := slices.IndexFunc(group, func(e yaml.MapItem) bool { return e.Key == path[0].name })
	if text == "" && len(path) == 1 {
		if at >= 0 {
			group = slices.Delete(group, at, at+1)
		}
		return group, nil
	}
	if at < 0 {
		at, group = len(group), append(group, yaml.MapItem{Key: path[0].name})
	}
	v, err := setAt(group[at].Value, path[1:], text)
	group[at].Value = v
	return group, err
}
