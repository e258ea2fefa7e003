package main

import (
	"fmt"
	"strings"
)

// sameFile is the fault of two files of one run that would have one name, on a disk that may not tell
// capitals from small letters.
func sameFile(files []output) error {
	first := map[string]output{}
	for _, f := range files {
		if f.path == "-" {
			continue
		}
		key := strings.ToLower(placeOf(f.path))
		if before, twice := first[key]; twice {
			return fmt.Errorf("%s and %s would both be written to %s: give one of them another name, or write a .pdf, which holds all sheets",
				before.what(), f.what(), f.path)
		}
		first[key] = f
	}
	return nil
}

// what says in words what an output is.
func (o *output) what() string {
	if o.page == "" {
		return "-o " + o.asked
	}
	return fmt.Sprintf("%q of -o %s", o.page, o.asked)
}
