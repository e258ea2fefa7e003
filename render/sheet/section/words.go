package section

import (
	"fmt"
	"strings"
)

// NonEmpty leaves out what is empty.
func NonEmpty(parts ...string) []string {
	var some []string
	for _, s := range parts {
		if s != "" {
			some = append(some, s)
		}
	}
	return some
}

// Prefixed puts a prefix before what is not empty.
func Prefixed(prefix, s string) string {
	if s == "" {
		return ""
	}
	return prefix + s
}

// Count says how many there are of a thing.
func Count(n int, thing string) string {
	switch {
	case n == 1:
		return "1 " + thing
	case thing == "person":
		return fmt.Sprintf("%d people", n)
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Joined joins what is not empty.
func Joined(between string, parts ...string) string {
	var some []string
	for _, s := range parts {
		if s != "" {
			some = append(some, s)
		}
	}
	return strings.Join(some, between)
}
