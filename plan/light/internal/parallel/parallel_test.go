package parallel_test

import (
	"context"
	"errors"
	"testing"

	"scrimshaw/plan/light/internal/parallel"
)

// Each step runs once, on a goroutine whose number is among those announced.
func TestForRunsEachStepOnce(t *testing.T) {
	for _, workers := range []int{0, 1, 2, 7} {
		const n = 1000
		var ran, worker [n]int
		if err := parallel.For(context.Background(), workers, n, func(k, i int) { ran[i]++; worker[i] = k }); err != nil {
			t.Fatal(err)
		}
		for i := range ran {
			if ran[i] != 1 || worker[i] < 0 || worker[i] >= parallel.Workers(workers, n) {
				t.Fatalf("%d workers: step %d ran %d times, last on worker %d", workers, i, ran[i], worker[i])
			}
		}
	}
}

func TestForStopsWhenCancelled(t *testing.T) {
	for _, workers := range []int{1, 3} {
		ctx, cancel := context.WithCancel(context.Background())
		ran := make([]int, workers)
		err := parallel.For(ctx, workers, 1000, func(k, _ int) { ran[k]++; cancel() })
		if !errors.Is(err, context.Canceled) {
			t.Errorf("%d workers: %v, want that it was cancelled", workers, err)
		}
		for k, n := range ran {
			if n > 1 {
				t.Errorf("worker %d of %d began %d steps, want no more after the first", k, workers, n)
			}
		}
	}
}

func TestWorkers(t *testing.T) {
	if got := parallel.Workers(8, 3); got != 3 {
		t.Errorf("8 workers on 3 tasks: %d, want 3", got)
	}
	if got := parallel.Workers(0, 1); got != 1 {
		t.Errorf("one task: %d workers, want 1", got)
	}
}
