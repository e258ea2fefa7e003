// Package crew shares work among goroutines so that their number leaves no trace in the results.
package crew

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls do for 0 to n-1 on several goroutines and returns when all are done, or with the
// context's error when it was cancelled. Each call must write to places of its own. worker tells the
// goroutines apart, from 0 to Size(workers, n)-1.
func Each(ctx context.Context, workers, n int, do func(worker, i int)) error {
	workers = Size(workers, n)
	if workers <= 1 {
		for i := range n {
			if err := ctx.Err(); err != nil {
				return err
			}
			do(0, i)
		}
		return ctx.Err()
	}
	var next atomic.Int64
	var done sync.WaitGroup
	for k := range workers {
		done.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				do(k, i)
			}
		})
	}
	done.Wait()
	return ctx.Err()
}

// Size is how many goroutines work on n tasks; 0 workers stands for one a core.
func Size(workers, n int) int {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	return min(workers, n)
}
