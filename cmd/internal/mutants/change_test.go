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

const heads = `package p

type pair[K comparable] struct{ a, b K }

func (pair[K]) same(K) (bool, error) { return 1 < 2, nil }

func (p *pair[K]) add(_ int, more ...K) { p.a, _ = p.b, 1+1 }

func most[K int | float64](a, _ K, _ func(a, b int) bool) (r K) { r = a * 2; return }
`

// A function goes to its copy with all it was given, whatever its head leaves without a name.
func TestEveryHeadGoesToItsCopy(t *testing.T) {
	all, err := changes("p.go", []byte(heads))
	if err != nil {
		t.Fatal(err)
	}
	text, err := copied("p.go", []byte(heads), all)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"func (unnamed59__ pair[K]) same(unnamed73__ K) (bool, error) { if mutant__ == 1 { return unnamed59__.same__1(unnamed73__) }; if mutant__ == 2 {",
		"func (p *pair[K]) add(unnamed135__ int, more ...K) { if mutant__ == 3 { p.add__3(unnamed135__, more...); return }; p.a",
		"if mutant__ == 4 { return most__4[K](a, ", "\n//line mutant2:1\nfunc (pair[K]) same__2(K) (bool, error) { return 1 >= 2, nil }\n",
		"func most__4[K int | float64](a, _ K, _ func(a, b int) bool) (r K) { r = a / 2; return }",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %s in\n%s", want, text)
		}
	}
}
