package font_test

import (
	"fmt"

	"scrimshaw/render/font"
)

func Example() {
	family, err := font.Default()
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f mm\n", family.Width("T2.8", 3.5, true))
	fmt.Printf("%q\n", family.Missing("key 光"))
	// Output:
	// 7.00 mm
	// ['光']
}
