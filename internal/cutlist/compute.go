package cutlist

import "pourwright/internal/finding"

// Compute plans the cuts of one board. Same input, same plan.
func Compute(in Input) (Result, []finding.Finding) { return Empty(), nil }

// ComputeBars plans the cuts of one kind of bar.
func ComputeBars(in Bars) (BarResult, []finding.Finding) { return BarResult{}, nil }
