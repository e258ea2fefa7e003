package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"
)

func TestBarShowsAfterASecondAndIsWiped(t *testing.T) {
	var out bytes.Buffer
	b := &bar{out: &out, parts: 2, since: time.Now()}
	b.show(0, 0.5)
	b.end()
	if out.Len() != 0 {
		t.Errorf("within the first second it shows %q", out.String())
	}
	b.since = b.since.Add(-2 * barAfter)
	b.show(1, 0.5)
	b.show(1, 0.6) // too soon after
	if got := out.String(); !strings.Contains(got, " 75 %") || strings.Contains(got, "80 %") {
		t.Errorf("three quarters done it shows %q", got)
	}
	b.end()
	if !strings.HasSuffix(out.String(), "\r\x1b[K") {
		t.Errorf("in the end it leaves %q", out.String())
	}
}

func TestBarOnlyOnATerminal(t *testing.T) {
	f, err := os.CreateTemp(t.TempDir(), "log")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if b := newBar(f, 1); b.out != nil {
		t.Error("a file gets a bar")
	}
	if b := newBar(nil, 1); b.out != nil {
		t.Error("nobody gets a bar")
	}
}
