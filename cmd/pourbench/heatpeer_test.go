package main

import (
	"context"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Peers that are not there are named with what to install, and end nothing.
func TestPeersThatAreAbsent(t *testing.T) {
	var out strings.Builder
	b := &heatBench{out: &out}
	b.outside("SciPy BDF", "python3-scipy", exec.Command("no-such-program-here"))
	b.outside("FreeFem++ P1", "freefem++", exec.Command("false"))
	for _, want := range []string{"SciPy BDF: not run", "Debian's python3-scipy is needed", "FreeFem++ P1: not run (exit status 1)", "Debian's freefem++ is needed"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in %q", want, out.String())
		}
	}
}

// Outside the repository the peers' programs are missed, and nothing else is said to be.
func TestPeersOutsideTheRepository(t *testing.T) {
	t.Chdir(t.TempDir())
	if _, err := os.Stat("bench"); err == nil {
		t.Skip("there is a folder bench here")
	}
	var out strings.Builder
	if err := (&heatBench{out: &out}).peers(context.Background()); err != nil || !strings.Contains(out.String(), "run from the repository's root") {
		t.Errorf("%v, %q", err, out.String())
	}
}
