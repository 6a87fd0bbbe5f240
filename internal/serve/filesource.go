package serve

import (
	"context"
	"fmt"
	"os"
	"slices"
	"sync"
	"time"
)

// Recompute reads a piece and works out its snapshot. It returns the files to watch
// even when it fails, so that mending one of them is noticed. Version may be left
// empty.
type Recompute func(ctx context.Context) (s Snapshot, files []string, err error)

// pollEvery is how often files are looked at. Chosen: an edit shows within about a
// second, and a look at a few files costs nothing.
const pollEvery = time.Second

// A FileSource is a Source over files: it looks at their times and sizes and
// computes anew when one changed.
type FileSource struct {
	recompute Recompute
	every     time.Duration

	mu       sync.Mutex
	current  Snapshot
	err      error
	files    []string
	stamps   []stamp
	watchers map[chan struct{}]bool
}

// A stamp is what tells that a file changed.
type stamp struct {
	modified time.Time
	size     int64
	missing  bool
}

// NewFileSource computes the first snapshot. A failure to do so is not returned: it
// is what Current reports until a file changes.
func NewFileSource(ctx context.Context, f Recompute) *FileSource {
	s := &FileSource{recompute: f, every: pollEvery, watchers: map[chan struct{}]bool{}}
	s.refresh(ctx, nil)
	return s
}

// Run watches the files until ctx ends. It must run for changes to be seen.
func (s *FileSource) Run(ctx context.Context) {
	tick := time.NewTicker(s.every)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
			s.look(ctx)
		}
	}
}

// look computes anew if a file's stamp differs from the one of the last time.
func (s *FileSource) look(ctx context.Context) {
	s.mu.Lock()
	files, before := s.files, s.stamps
	s.mu.Unlock()
	if now := stamps(files); !slices.Equal(now, before) {
		s.refresh(ctx, now)
	}
}

// refresh computes a snapshot and tells the watchers if it differs from the last.
// seen are the stamps taken before the files were read, so that a change during
// the reading is noticed at the next look.
func (s *FileSource) refresh(ctx context.Context, seen []stamp) {
	start := time.Now()
	snap, files, err := s.recompute(ctx)
	if err == nil && snap.Version == "" {
		snap.Version, err = Hash(snap.Plan, snap.Drawings)
	}
	if ctx.Err() != nil && err != nil {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if !slices.Equal(files, s.files) {
		seen = settled(stamps(files), start)
	}
	changed := snap.Version != s.current.Version || fmt.Sprint(err) != fmt.Sprint(s.err)
	s.files, s.stamps, s.err = slices.Clone(files), seen, err
	s.current = snap
	if changed {
		s.tell()
	}
}

// tell leaves a token with every watcher that has none.
func (s *FileSource) tell() {
	for ch := range s.watchers {
		select {
		case ch <- struct{}{}:
		default:
		}
	}
}

// Current returns the newest snapshot or the error of the newest attempt.
func (s *FileSource) Current(context.Context) (Snapshot, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.current, s.err
}

// Watch returns a channel that holds a token after each change.
func (s *FileSource) Watch(ctx context.Context) <-chan struct{} {
	ch := make(chan struct{}, 1)
	s.mu.Lock()
	s.watchers[ch] = true
	s.mu.Unlock()
	context.AfterFunc(ctx, func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		delete(s.watchers, ch)
		close(ch)
	})
	return ch
}

func stamps(files []string) []stamp {
	out := make([]stamp, len(files))
	for i, name := range files {
		info, err := os.Stat(name)
		if err != nil {
			out[i] = stamp{missing: true}
			continue
		}
		out[i] = stamp{modified: info.ModTime(), size: info.Size()}
	}
	return out
}

// settled blanks the stamps of files changed since start: they may have been read
// before the change.
func settled(ss []stamp, start time.Time) []stamp {
	for i := range ss {
		if ss[i].modified.After(start) {
			ss[i] = stamp{}
		}
	}
	return ss
}
