package cli

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"pourwright/internal/plan"
)

// Longest that nothing may be heard of a computation, and that it may go on after it was
// stopped, on a machine that has other work as well.
const (
	longestSilence = 5 * time.Second
	longestStop    = 3 * time.Second
)

// TestProgressMoves: while the example is computed something is heard all the time, and
// within a stage it only goes forward.
func TestProgressMoves(t *testing.T) {
	piece, err := pieceArg{File: examples + "estuary-bench/piece.yaml"}.open()
	if err != nil {
		t.Fatal(err)
	}
	last, worst, where := time.Now(), time.Duration(0), plan.Progress{}
	before := plan.Progress{}
	told := 0
	_, err = plan.Options{Progress: func(p plan.Progress) {
		if gap := time.Since(last); gap > worst {
			worst, where = gap, before
		}
		if p.Stage == before.Stage && p.Share < before.Share-1e-9 || p.Share < 0 || p.Share > 1 {
			t.Errorf("%s goes from %.3f (%s) back to %.3f (%s)", p.Stage, before.Share, before.Doing, p.Share, p.Doing)
		}
		last, before, told = time.Now(), p, told+1
	}}.Compute(context.Background(), piece.Input)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d reports, longest silence %v after %s: %s", told, worst, where.Title, where.Doing)
	if worst > longestSilence || told < 50 {
		t.Errorf("nothing heard for %v, %d reports", worst, told)
	}
}

// TestCancelledPackLeavesNothing stops a pack in the middle of each part of the cure.
func TestCancelledPackLeavesNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pack")
	for _, wait := range []time.Duration{0, 700 * time.Millisecond, 2 * time.Second} {
		ctx, cancel := context.WithCancel(context.Background())
		stopped := time.Now()
		time.AfterFunc(wait, func() { stopped = time.Now(); cancel() })
		var out, errOut bytes.Buffer
		code := run(ctx, []string{"pack", examples + "estuary-bench/piece.yaml", "--out", dir}, &out, &errOut)
		after := time.Since(stopped)
		cancel()
		if code != exitError || out.Len() > 0 || errOut.Len() == 0 {
			t.Errorf("stopped after %v: exit %d, out %q, error %q", wait, code, out.String(), errOut.String())
		}
		if _, err := os.Stat(dir); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("stopped after %v: the pack's folder is there: %v", wait, left(t, dir))
		}
		t.Logf("stopped after %v: ended %v later", wait, after)
		if after > longestStop {
			t.Errorf("it went on for %v", after)
		}
	}
}
