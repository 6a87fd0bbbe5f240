package cli

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

func fileOf(name, text string) packFile {
	return packFile{filepath.FromSlash(name), func(w io.Writer) error { _, err := io.WriteString(w, text); return err }}
}

// left lists the files below dir.
func left(t *testing.T, dir string) []string {
	t.Helper()
	out := []string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err == nil && path != dir {
			rel, _ := filepath.Rel(dir, path)
			out = append(out, filepath.ToSlash(rel))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestFailedPackLeavesNothing(t *testing.T) {
	broken := packFile{"b.txt", func(w io.Writer) error {
		_, _ = io.WriteString(w, "half")
		return errors.New("out of ink")
	}}
	dir := filepath.Join(t.TempDir(), "pack")
	if err := writePack(dir, []packFile{fileOf("cut/a.nc", "M2\n"), broken}); err == nil {
		t.Fatal("no error")
	}
	if _, err := os.Stat(dir); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the folder is left: %v", left(t, dir))
	}
	if err := writePack(dir, []packFile{fileOf("cut/a.nc", "old")}); err != nil {
		t.Fatal(err)
	}
	if err := writePack(dir, []packFile{fileOf("cut/a.nc", "new"), broken}); err == nil {
		t.Fatal("no error")
	}
	if got := left(t, dir); !slices.Equal(got, []string{"cut", "cut/a.nc", "files.txt"}) {
		t.Errorf("left %v", got)
	}
	if data, _ := os.ReadFile(filepath.Join(dir, "cut", "a.nc")); string(data) != "old" {
		t.Errorf("the earlier pack's file is now %q", data)
	}
}

func TestPackTakesEarlierFilesAway(t *testing.T) {
	dir := t.TempDir()
	own := filepath.Join(dir, "mine.txt")
	if err := os.WriteFile(own, []byte("keep"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := writePack(dir, []packFile{fileOf("cut/a.nc", "1"), fileOf("cut/b.nc", "1"), fileOf("old/x.svg", "1")}); err != nil {
		t.Fatal(err)
	}
	list, err := os.ReadFile(filepath.Join(dir, manifest))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, manifest), append(list, "../outside\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := writePack(dir, []packFile{fileOf("cut/b.nc", "2")}); err != nil {
		t.Fatal(err)
	}
	if got := left(t, dir); !slices.Equal(got, []string{"cut", "cut/b.nc", "files.txt", "mine.txt"}) {
		t.Errorf("left %v", got)
	}
}

// TestUnverifiedProgramsAreNotWritten takes the proof of a program away.
func TestUnverifiedProgramsAreNotWritten(t *testing.T) {
	p := examplePlan(t, "estuary-bench")
	count := func() (programs, all int) {
		for _, f := range cuttingFiles(p, "a4") {
			if filepath.Dir(f.name) == "cut" {
				programs++
			}
			all++
		}
		return programs, all
	}
	before, all := count()
	if before != 2*len(p.Toolpath.Programs) || before == 0 || all <= before {
		t.Fatalf("%d programs of %d files", before, all)
	}
	p.Proof[0].Verified = false
	if after, _ := count(); after != before-2 {
		t.Errorf("%d programs written, want %d: a program and its dry run less", after, before-2)
	}
	p.Proof = nil
	if after, _ := count(); after != 0 {
		t.Errorf("%d programs written without a proof", after)
	}
}

func TestPackWritesOverNothingOfTheMakers(t *testing.T) {
	dir := t.TempDir()
	own := filepath.Join(dir, "report.txt")
	if err := os.WriteFile(own, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	var refused *packError
	if err := writePack(dir, []packFile{fileOf("cut/a.nc", "M2\n"), fileOf("report.txt", "new")}); !errors.As(err, &refused) || refused.Hint() == "" {
		t.Errorf("error %v", err)
	}
	if got := left(t, dir); !slices.Equal(got, []string{"report.txt"}) {
		t.Errorf("left %v", got)
	}
	if data, _ := os.ReadFile(own); string(data) != "mine" {
		t.Errorf("the maker's file is now %q", data)
	}
	if err := writePack(own, []packFile{fileOf("a", "")}); !errors.As(err, &refused) {
		t.Errorf("a file as the folder: %v", err)
	}
	// Beside other files a pack is written, and again over itself.
	for range 2 {
		if err := writePack(dir, []packFile{fileOf("cut/a.nc", "M2\n")}); err != nil {
			t.Fatal(err)
		}
	}
	if data, _ := os.ReadFile(own); string(data) != "mine" {
		t.Errorf("the maker's file is now %q", data)
	}
}
