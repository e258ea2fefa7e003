package main

import (
	"fmt"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
)

// A run that needs little has the soft limit; one that needs more than that has what it needs and some room.
func TestMemoryLimit(t *testing.T) {
	for live, want := range map[uint64]int64{0: 152 << 20, 100 << 20: 152 << 20, 130 << 20: 178 << 20, 400 << 20: 460 << 20} {
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

// Of a long day no set-up is kept laid out; of a short one all are.
func TestALongDayIsNotKept(t *testing.T) {
	for setups, kept := range map[int]int{4: 4, 30: 0} {
		var text strings.Builder
		text.WriteString("scrimshaw: 1\nrooms: {den: {size: [7, 6]}}\nlights:\n")
		for i := range 20 {
			fmt.Fprintf(&text, "  l%d: {output: {lumens: 1000, face: [0.5, 0.5]}, at: [%g, %d], height: 2.3, aim: down}\n", i, 0.5+0.3*float64(i), 1+i%5)
		}
		text.WriteString("setups:\n")
		for i := range setups {
			fmt.Fprintf(&text, "  s%d: {}\n", i)
		}
		in, err := open(t.Context(), streams{in: strings.NewReader(text.String())}, []string{"-"})
		if err != nil {
			t.Fatal(err)
		}
		w, err := survey(t.Context(), in, nil)
		if err != nil || in.log.Failed() || len(w.names) != setups || len(w.kept) != kept {
			t.Errorf("of %d set-ups %d are kept, want %d: %v", setups, len(w.kept), kept, err)
		}
	}
}
