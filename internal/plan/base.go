package plan

import (
	"pourwright/internal/finding"
	"pourwright/internal/stage/base"
)

func (w *wiring) base() (string, []finding.Finding) {
	w.plan.Base = base.Empty()
	return "none wanted", nil
}
