package sheet

import "fmt"

func nonEmpty(parts ...string) []string {
	var some []string
	for _, s := range parts {
		if s != "" {
			some = append(some, s)
		}
	}
	return some
}

func prefixed(prefix, s string) string {
	if s == "" {
		return ""
	}
	return prefix + s
}

// count says how many there are of a thing.
func count(n int, thing string) string {
	switch {
	case n == 1:
		return "1 " + thing
	case thing == "person":
		return fmt.Sprintf("%d people", n)
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
