package toolpath

import "pourwright/internal/finding"

// Rules lists what may be said of the programs.
func Rules() []finding.Rule { return nil }
