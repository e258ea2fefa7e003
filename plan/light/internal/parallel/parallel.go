// Package parallel runs the steps of a loop on several goroutines. The results do not depend on how many there are.
package parallel

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// For calls do for 0 to n-1 on several goroutines and returns when all are done, or with the
// context's error when it was cancelled. Each call must write to places of its own. worker numbers the
// goroutines, from 0 to Workers(workers, n)-1.
func For(ctx context.Context, workers, n int, do func(worker, i int)) error {
	workers = Workers(workers, n)
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

// Workers is how many goroutines work on n tasks. 0 stands for one a core.
func Workers(workers, n int) int {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	return min(workers, n)
}
