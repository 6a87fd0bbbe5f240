package resin

// newOven returns what simulates the cure of in, or nil and why there is none.
func newOven(in Input) (oven, string) {
	if len(in.Basin) == 0 {
		return nil, "since the shape of the basin is not known"
	}
	return nil, "since this build has no model of it"
}
