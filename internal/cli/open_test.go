package cli

import (
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// within fails a test whose work waits for ever, as a pipe that nobody writes to does.
func within(t *testing.T, work func()) {
	t.Helper()
	done := make(chan struct{})
	go func() { work(); close(done) }()
	select {
	case <-done:
	case <-time.After(20 * time.Second):
		t.Fatal("it waits for ever")
	}
}

func TestWhatIsNoFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe.yaml")
	if err := syscall.Mkfifo(pipe, 0o644); err != nil {
		t.Skip("no pipes here:", err)
	}
	loop := filepath.Join(dir, "loop.svg")
	if err := os.Symlink("loop.svg", loop); err != nil {
		t.Skip("no links here:", err)
	}
	folder := filepath.Join(dir, "folder")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		args []string
		want string
	}{
		{"plan of a pipe", []string{"plan", pipe}, "no file"},
		{"shelf that is a pipe", []string{"plan", "--shelf", pipe, pipe}, "is a pipe or a device"},
		{"fit of a pipe", []string{"shelf", "fit", pipe}, "is a pipe or a device"},
		{"inspect of a device", []string{"inspect", "/dev/zero"}, "is a pipe or a device"},
		{"inspect of a folder", []string{"inspect", folder}, "is a folder"},
		{"inspect of a link to itself", []string{"inspect", loop}, "symbolic links"},
		{"plan of a folder without a piece", []string{"plan", folder}, "no such file"},
		{"plan of a drawing", []string{"plan", examples + "estuary-bench/estuary.svg"}, "inspect looks at it"},
		{"inspect of a document", []string{"inspect", examples + "estuary-bench/piece.yaml"}, "plan reads it"},
	} {
		within(t, func() {
			code, _, errs := call(t, c.args...)
			if code != 1 || !strings.Contains(errs, c.want) {
				t.Errorf("%s: exit %d, %q lacks %q", c.name, code, errs, c.want)
			}
		})
	}
}

func TestPortInUseSaysWhatToDo(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Skip("no network here:", err)
	}
	defer l.Close()
	for _, address := range []string{l.Addr().String(), "127.0.0.1:99999", "nowhere"} {
		within(t, func() {
			code, _, errs := call(t, "serve", "--address", address, examples+"estuary-bench/piece.yaml")
			if code != 1 || !strings.Contains(errs, "listen on "+address) || !strings.Contains(errs, "hint: another program") {
				t.Errorf("%s: exit %d, %s", address, code, errs)
			}
		})
	}
}

func TestDrawingThatIsAPipeIsAFinding(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile(examples + "estuary-bench/piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "piece.yaml"), append([]byte("\ufeff"), text...), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mkfifo(filepath.Join(dir, "estuary.svg"), 0o644); err != nil {
		t.Skip("no pipes here:", err)
	}
	within(t, func() {
		code, out, errs := call(t, "plan", dir)
		if code != 3 || !strings.Contains(out, "could not be opened") || strings.Contains(out, "has no field") {
			t.Errorf("exit %d, %s%s", code, out, errs)
		}
	})
}
