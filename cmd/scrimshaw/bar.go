package main

import (
	"fmt"
	"io"
	"strings"
	"time"
)

// When a bar first shows, and how often it moves.
const (
	barAfter = time.Second
	barEvery = 100 * time.Millisecond
	barCells = 30
)

// bar shows on a terminal how far the work has come, once it takes longer than a second.
type bar struct {
	out   io.Writer // nil where nobody watches
	parts int
	since time.Time
	last  time.Time
}

// newBar is a bar for work in equal parts. It shows only where out is a terminal.
func newBar(out io.Writer, parts int) *bar {
	b := &bar{parts: parts, since: time.Now()}
	if isTerminal(out) {
		b.out = out
	}
	return b
}

// show tells how much of a part, counted from 0, is done.
func (b *bar) show(part int, done float64) {
	now := time.Now()
	if b.out == nil || now.Sub(b.since) < barAfter || now.Sub(b.last) < barEvery {
		return
	}
	b.last = now
	share := (float64(part) + done) / float64(b.parts)
	full := min(int(share*barCells), barCells)
	fmt.Fprintf(b.out, "\rlight [%s%s] %3.0f %%", strings.Repeat("#", full), strings.Repeat(".", barCells-full), 100*share)
}

// end wipes the bar away.
func (b *bar) end() {
	if b.out != nil && !b.last.IsZero() {
		fmt.Fprint(b.out, "\r\x1b[K")
	}
}
