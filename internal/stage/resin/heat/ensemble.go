package heat

import (
	"context"
	"sync"
	"sync/atomic"
)

// Ensemble solves n cases, threads of them at a time, each on one thread, and returns
// their results in order. It stops at the first error.
func Ensemble(ctx context.Context, n, threads int, member func(i int) (Case, Options)) ([]Result, error) {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	out := make([]Result, n)
	var wg sync.WaitGroup
	var next atomic.Int64
	for range max(1, threads) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				c, o := member(i)
				o.Threads = 1
				var err error
				if out[i], err = Solve(ctx, c, o); err != nil {
					cancel(err)
				}
			}
		})
	}
	wg.Wait()
	if err := context.Cause(ctx); err != nil {
		return nil, err
	}
	return out, nil
}
