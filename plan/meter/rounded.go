package meter

import "strconv"

func orNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// Rounded keeps nine significant figures: more than any light is known to, and few enough that
// the last bits of a machine's arithmetic do not show.
func Rounded(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 8, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// figure rounds what may have no meaning.
func figure(v *float64) *float64 {
	if v == nil {
		return nil
	}
	r := Rounded(*v)
	return &r
}

// orNone is a length that is not known where it is 0.
func orNone(metres float64) *float64 {
	if metres == 0 {
		return nil
	}
	return figure(&metres)
}
