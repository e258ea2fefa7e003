package light

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// each calls do for 0 to n-1 on several goroutines and returns when all are done, or with the
// context's error when it was cancelled. Each call must write to places of its own. worker tells the
// goroutines apart, from 0 to crew(w, n)-1.
func each(ctx context.Context, workers, n int, do func(worker, i int)) error {
	workers = crew(workers, n)
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

// crew is how many goroutines work on n tasks.
func crew(workers, n int) int {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	return min(workers, n)
}
