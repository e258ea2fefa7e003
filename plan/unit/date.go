package unit

import "time"

// ParseDate checks a date as a sheet prints it, year first, and returns it as written: `2031-05-14`.
func ParseDate(text string) (string, error) {
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		return "", fault("", "a date is written like 2031-05-14, and %q is not", text)
	}
	return text, nil
}
