package serve

import (
	"context"
	"errors"
	"os"
	"slices"
	"sync"
	"time"

	"pourwright/internal/plan"
)

// Recompute reads a piece and works out its snapshot, telling how far it is through
// report. It returns the files to watch even when it fails, so that mending one of them
// is noticed. Version may be left empty.
type Recompute func(ctx context.Context, report func(plan.Progress)) (s Snapshot, files []string, err error)

// ErrCancelled is what Current reports after the maker stopped a computation.
var ErrCancelled = errors.New("the computation was stopped before its end")

// pollEvery is how often files are looked at. Chosen: an edit shows within about a
// second, and a look at a few files costs nothing.
const pollEvery = time.Second

// A FileSource is a Source over files: it looks at their times and sizes and
// computes anew when one changed.
type FileSource struct {
	recompute Recompute
	every     time.Duration

	ready    chan struct{} // closed when the first snapshot, or its error, is there
	mu       sync.Mutex
	current  Snapshot
	err      error
	working  *plan.Progress     // nil when nothing is computed
	stop     context.CancelFunc // of what is computed; nil
	told     time.Time          // when progress was last told
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

// NewFileSource returns a source that computes its first snapshot as Run begins. A
// failure to do so is what Current reports until a file changes.
func NewFileSource(f Recompute) *FileSource {
	return &FileSource{recompute: f, every: pollEvery, watchers: map[chan struct{}]bool{}, ready: make(chan struct{})}
}

// Run computes the first snapshot, then watches the files until ctx ends. It must run
// for changes to be seen.
func (s *FileSource) Run(ctx context.Context) {
	s.refresh(ctx, nil)
	close(s.ready)
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
	snap, files, err := s.work(ctx)
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
	s.files, s.stamps, s.err = slices.Clone(files), seen, err
	s.current = snap
	s.tell()
}

// work computes under a context that Cancel ends.
func (s *FileSource) work(ctx context.Context) (Snapshot, []string, error) {
	inner, stop := context.WithCancel(ctx)
	defer stop()
	s.mu.Lock()
	s.stop, s.working = stop, &plan.Progress{}
	s.tell()
	s.mu.Unlock()
	snap, files, err := s.recompute(inner, s.report)
	if err != nil && inner.Err() != nil && ctx.Err() == nil {
		err = ErrCancelled
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.stop, s.working = nil, nil
	return snap, files, err
}

// tellEvery is how often progress is told at most. Chosen: smooth to the eye.
const tellEvery = 100 * time.Millisecond

func (s *FileSource) report(p plan.Progress) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.working = &p
	if now := time.Now(); now.Sub(s.told) >= tellEvery {
		s.told = now
		s.tell()
	}
}

// Working returns how far the computation is, nil when there is none.
func (s *FileSource) Working() *plan.Progress {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.working
}

// Cancel stops what is computed. What was there before stays.
func (s *FileSource) Cancel() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stop != nil {
		s.stop()
	}
}

// Again computes anew at the next look if the last computation was stopped.
func (s *FileSource) Again() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.working == nil && errors.Is(s.err, ErrCancelled) {
		s.stamps = nil // no file has been seen
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

// Current returns the newest snapshot or the error of the newest attempt; it waits for
// the first.
func (s *FileSource) Current(ctx context.Context) (Snapshot, error) {
	select {
	case <-s.ready:
	case <-ctx.Done():
		return Snapshot{}, ctx.Err()
	}
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
