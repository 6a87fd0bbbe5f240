package plan

import "context"

// ComputeFoam works through basin and knockout alone, so that tests of the foam do not
// wait for the cure.
func ComputeFoam(in Input) *Plan {
	w := &wiring{ctx: context.Background(), in: in, job: in.Job, plan: newPlan(in)}
	w.relief()
	_, found := w.knockout()
	w.add(found)
	return w.plan
}
