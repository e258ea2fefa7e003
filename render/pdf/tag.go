package pdf

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"

	"scrimshaw/symbols/ink"
)

// The structure of a document is that of ISO 32000-1, 14.7 and 14.8: every line of lettering is marked content with a number on its page, and an element
// a page lists these numbers in the order of reading. The library underneath writes none of it.

// mark begins and ends the marked content of a line of lettering.
func (b *builder) mark(it *ink.Item, write func()) {
	if !b.doc.Tagged {
		write()
		return
	}
	marks := &b.marks[len(b.marks)-1]
	b.op(fmt.Sprintf("/P <</MCID %d>> BDC\n", len(*marks)))
	*marks = append(*marks, it.Layer)
	write()
	b.op("EMC\n")
}

// inOrder are the numbers of the lettering of a page in the order of reading: what stands in lists first, and then what is lettered on the drawing.
func inOrder(layers []ink.Layer) []int {
	order := make([]int, len(layers))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(layers[b], layers[a]) })
	return order
}

// elements are the elements of the pages, which are numbered from first on: what the document lists, and what leads from each mark to its element.
func elements(first int, marks [][]ink.Layer) (kids, nums string) {
	var list, parents bytes.Buffer
	for i, layers := range marks {
		fmt.Fprintf(&list, "%d 0 R ", first+i)
		fmt.Fprintf(&parents, "%d [", i)
		for range layers {
			fmt.Fprintf(&parents, "%d 0 R ", first+i)
		}
		parents.WriteString("]\n")
	}
	return list.String(), parents.String()
}
