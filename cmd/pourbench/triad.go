package main

import (
	"math"
	"sync"
	"time"
)

// triad measures the memory's bandwidth, bytes a second, by a = b + s c on arrays far
// larger than the caches, best of 7; on one thread by processor time.
func triad(threads int) float64 {
	const n = 24 << 20
	a, b, c := make([]float32, n), make([]float32, n), make([]float32, n)
	for i := range b {
		b[i], c[i] = float32(i&7), float32(i&3)
	}
	least := math.Inf(1)
	for range 7 {
		start, cpu := time.Now(), cpuSeconds()
		var wg sync.WaitGroup
		for t := range threads {
			wg.Go(func() {
				lo, hi := t*n/threads, (t+1)*n/threads
				x, y, z := a[lo:hi], b[lo:hi], c[lo:hi]
				y, z = y[:len(x)], z[:len(x)]
				for i := range x {
					x[i] = y[i] + 3*z[i]
				}
			})
		}
		wg.Wait()
		if threads == 1 {
			least = math.Min(least, cpuSeconds()-cpu)
			continue
		}
		least = math.Min(least, time.Since(start).Seconds())
	}
	return 12 * n / least
}
