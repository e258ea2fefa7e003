package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

const sample = `package p

func f(a, b int) (s string) {
	for i := 0; i < a; i++ {
		if i == b || i > 9 {
			continue
		}
		s += "x" + s
		b *= a - 1
	}
	return s
}
`

// Each operator and each word that a slip may change is found where it stands, and texts are left alone.
func TestChangesOfAFile(t *testing.T) {
	all, err := changes("p.go", []byte(sample))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, c := range all {
		got = append(got, fmt.Sprintf("%d %s %s", c.line, c.from, c.to))
	}
	slices.Sort(got)
	want := []string{"4 ++ --", "4 < <=", "4 < >=", "5 == !=", "5 > <=", "5 > >=", "5 || &&", "6 continue break", "8 += -=", "9 *= /=", "9 - +"}
	if !slices.Equal(got, want) {
		t.Errorf("the changes are %q, want %q", got, want)
	}
}

// A change stands in the place of what it changes, and nothing else moves.
func TestAChangeIsOneSlip(t *testing.T) {
	all, err := changes("p.go", []byte(sample))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range all {
		if strings.Count(sample, c.from) != 1 {
			continue
		}
		if got, want := c.apply([]byte(sample)), strings.Replace(sample, c.from, c.to, 1); got != want {
			t.Errorf("%v gives\n%s", c, got)
		}
	}
	if _, err := changes("p.go", []byte("package p\nfunc {")); err == nil {
		t.Error("what is no Go has changes")
	}
}
