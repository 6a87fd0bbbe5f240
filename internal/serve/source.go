package serve

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"pourwright/internal/drawing"
	"pourwright/internal/plan"
)

// A Snapshot is all that is shown of a piece at one time.
type Snapshot struct {
	Plan     *plan.Plan
	Drawings []drawing.Drawing
	Version  string // hash of the plan and drawings: other content, other version
}

// A Source brings the current snapshot of a piece and says when there is another.
type Source interface {
	// Current returns the newest snapshot, or the error that keeps it from being
	// made, such as a document that cannot be read.
	Current(ctx context.Context) (Snapshot, error)
	// Watch returns a channel that holds a token after each change of what Current
	// returns; changes in quick succession may share one. It is closed when ctx ends.
	Watch(ctx context.Context) <-chan struct{}
}

// A Worker is a Source that computes for a while: it tells how far it is, and can be
// stopped and taken up again.
type Worker interface {
	Working() *plan.Progress // nil when nothing is computed
	Cancel()
	Again() // takes up what was stopped
}

// Hash returns the version of a snapshot: the same plan and drawings have the same.
func Hash(p *plan.Plan, ds []drawing.Drawing) (string, error) {
	h := sha256.New()
	if err := json.NewEncoder(h).Encode([]any{p, ds}); err != nil {
		return "", fmt.Errorf("hash snapshot: %w", err)
	}
	return hex.EncodeToString(h.Sum(nil))[:16], nil
}
