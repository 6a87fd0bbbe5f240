package plan

import (
	"slices"

	"pourwright/internal/cutlist"
	"pourwright/internal/finding"
	"pourwright/internal/stage/base"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/stage/concrete"
	"pourwright/internal/stage/cost"
	"pourwright/internal/stage/form"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/stage/proof"
	"pourwright/internal/stage/relief"
	"pourwright/internal/stage/resin"
	"pourwright/internal/stage/structure"
	"pourwright/internal/stage/toolpath"
)

// Rules lists the rules of all stages in building order.
func Rules() []finding.Rule {
	return slices.Concat(relief.Rules(), knockout.Rules(), toolpath.Rules(), proof.Rules(), form.Rules(), base.Rules(), cutlist.Rules(), []finding.Rule{otherThickness}, concrete.Rules(),
		resin.Rules(), structure.Rules(), calendar.Rules(), cost.Rules())
}
