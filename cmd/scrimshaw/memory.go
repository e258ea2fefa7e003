package main

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// softMemory is the memory, bytes, near which the garbage of a run is collected more eagerly: most runs need less than
// that by themselves, and without it as much again would lie about, in long runs too.
const softMemory = 152 << 20

// elbowRoom is how many times what a run needs by itself it may have, and leastRoom how many bytes more, at least: where it needs nearly
// all of the limit, or more, it would do nothing but collect garbage.
const (
	elbowRoom = 1.15
	leastRoom = 48 << 20
)

// limitMemory sets the limit, and raises it after each collection that leaves too little room.
func limitMemory() {
	debug.SetMemoryLimit(softMemory)
	afterCollection(func(live uint64) { debug.SetMemoryLimit(memoryLimit(live)) })
}

// memoryLimit is the limit, bytes, of a run that needs so much by itself.
func memoryLimit(live uint64) int64 {
	return max(softMemory, int64(elbowRoom*float64(live)), int64(live)+leastRoom)
}

// afterCollection calls f after each collection of garbage, with the bytes on the heap that it left. It hears of one by
// an object that nothing refers to.
func afterCollection(f func(live uint64)) {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	type canary struct{ _ [64]byte }
	var hear func(*canary)
	hear = func(c *canary) {
		metrics.Read(sample)
		f(sample[0].Value.Uint64())
		runtime.SetFinalizer(c, hear)
	}
	runtime.SetFinalizer(&canary{}, hear)
}
