package cli

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"pourwright/internal/plan"
)

// showEvery is how often the progress line is written at most. Chosen: smooth to the eye.
const showEvery = 100 * time.Millisecond

// lineWidth is how much of a terminal's line the progress takes.
const lineWidth = 78

// progress returns a function that shows, on one line of a terminal that it writes over
// and over, what is computed; and one that wipes the line. Both do nothing where w is a
// file or a pipe.
func progress(w io.Writer) (show func(plan.Progress), wipe func()) {
	if !terminal(w) {
		return nil, func() {}
	}
	var last time.Time
	show = func(p plan.Progress) {
		if now := time.Now(); now.Sub(last) >= showEvery {
			last = now
			fmt.Fprintf(w, "\r%-*.*s", lineWidth, lineWidth, progressLine(p))
		}
	}
	return show, func() {
		if !last.IsZero() {
			fmt.Fprintf(w, "\r%s\r", strings.Repeat(" ", lineWidth))
		}
	}
}

func progressLine(p plan.Progress) string {
	line := fmt.Sprintf("%s %3.0f %%", p.Title, 100*p.Share)
	if p.Doing != "" {
		line += ": " + p.Doing
	}
	return line + "  (Ctrl-C stops)"
}

func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
