package main

import (
	"runtime"
	"sync/atomic"
	"testing"
)

// A run that needs little has the soft limit; one that needs more than that has what it needs and some room.
func TestMemoryLimit(t *testing.T) {
	for live, want := range map[uint64]int64{0: 152 << 20, 130 << 20: 152 << 20, 400 << 20: 460 << 20} {
		if got := memoryLimit(live); got < want-1 || got > want+1 {
			t.Errorf("%d MiB, want %d for a run that needs %d", got>>20, want>>20, live>>20)
		}
	}
}

// Each collection is heard of, with about what it left.
func TestCollectionsAreHeardOf(t *testing.T) {
	held := make([]byte, 64<<20)
	var heard, live atomic.Uint64
	afterCollection(func(bytes uint64) { heard.Add(1); live.Store(bytes) })
	for n := 0; heard.Load() < 3; n++ {
		if n == 1000 {
			t.Fatalf("%d of %d collections were heard of", heard.Load(), n)
		}
		runtime.GC()
		runtime.Gosched()
	}
	if got := live.Load(); got < uint64(len(held)) {
		t.Errorf("%d bytes are live, want %d at least", got, len(held))
	}
	runtime.KeepAlive(held)
}
