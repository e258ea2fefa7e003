package pdf

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"scrimshaw/symbols/ink"
)

// The structure of a document is that of ISO 32000-1, 14.7 and 14.8: every line of lettering is marked content with a number on its page, and an element
// a page lists these numbers in the order of reading. The library underneath writes none of it, so that it is put behind its file as an update, 7.5.6.

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

// tagged is the file with its structure behind it; the file as it is where it is not as the library writes it.
func tagged(file []byte, marks [][]ink.Layer) []byte {
	u := update{file: file, at: map[int]int{}}
	if !u.read() || len(u.pages) != len(marks) {
		return file
	}
	tree, parents, whole := u.size, u.size+1, u.size+2
	kids, nums := elements(whole+1, marks)
	u.put(tree, fmt.Sprintf("<</Type /StructTreeRoot /K [%d 0 R] /ParentTree %d 0 R /ParentTreeNextKey %d>>", whole, parents, len(marks)))
	u.put(parents, "<</Nums ["+nums+"]>>")
	u.put(whole, fmt.Sprintf("<</Type /StructElem /S /Document /P %d 0 R /K [%s]>>", tree, kids))
	for i, layers := range marks {
		u.put(whole+1+i, fmt.Sprintf("<</Type /StructElem /S /Sect /P %d 0 R /Pg %d 0 R /K %s>>", whole, u.pages[i], fmt.Sprint(inOrder(layers))))
		u.amend(u.pages[i], fmt.Sprintf("/StructParents %d", i))
	}
	u.amend(u.catalog, fmt.Sprintf("/MarkInfo <</Marked true>> /StructTreeRoot %d 0 R", tree))
	return u.finish()
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

// update is what is put behind a file.
type update struct {
	file    []byte
	pages   []int // the numbers of the pages' objects, in their order
	catalog int
	size    int // how many objects the file counts
	info    int
	start   int         // of its table
	offsets []int       // of its objects, by their numbers
	at      map[int]int // of those that the update writes
}

// The words of a file that are looked for.
const (
	startWord = "startxref\n"
	endObject = "\nendobj"
)

// read finds the table of a file, and what it says of pages and catalog.
func (u *update) read() bool {
	at := bytes.LastIndex(u.file, []byte(startWord))
	if at < 0 {
		return false
	}
	line, _, _ := bytes.Cut(u.file[at+len(startWord):], []byte("\n"))
	start, err := strconv.Atoi(string(line))
	if err != nil || start <= 0 || start >= at {
		return false
	}
	u.start = start
	table, trailer, ok := bytes.Cut(u.file[start:at], []byte("trailer"))
	if !ok {
		return false
	}
	if !u.readTable(table) {
		return false
	}
	u.size, u.catalog, u.info = len(u.offsets), reference(trailer, "/Root "), reference(trailer, "/Info ")
	for n := range u.offsets {
		if bytes.HasPrefix(u.object(n), []byte("<</Type /Page\n")) {
			u.pages = append(u.pages, n)
		}
	}
	return u.catalog > 0 && u.object(u.catalog) != nil
}

// readTable reads where the objects of a file are.
func (u *update) readTable(table []byte) bool {
	const digits = 10
	lines := bytes.Split(table, []byte("\n"))
	for _, l := range lines[min(2, len(lines)):] {
		if len(l) < digits {
			continue
		}
		offset, err := strconv.Atoi(string(l[:digits]))
		if err != nil || offset < 0 {
			return false
		}
		u.offsets = append(u.offsets, offset)
	}
	return true
}

// reference is the number of the object that a key of a dictionary refers to; 0 without.
func reference(dictionary []byte, key string) int {
	_, rest, _ := bytes.Cut(dictionary, []byte(key))
	word, _, _ := bytes.Cut(rest, []byte(" "))
	n, _ := strconv.Atoi(string(word))
	return n
}

// object is what an object of the file holds; nil where it is not found.
func (u *update) object(n int) []byte {
	head := fmt.Appendf(nil, "%d 0 obj\n", n)
	if n <= 0 || n >= len(u.offsets) || !bytes.HasPrefix(u.file[min(u.offsets[n], len(u.file)):], head) {
		return nil
	}
	body, _, ok := bytes.Cut(u.file[u.offsets[n]+len(head):], []byte(endObject))
	if !ok {
		return nil
	}
	return body
}

// put writes an object behind the file.
func (u *update) put(n int, body string) {
	u.at[n] = len(u.file)
	u.file = fmt.Appendf(u.file, "%d 0 obj\n%s%s\n", n, body, endObject)
}

// amend writes a dictionary of the file anew with more in it.
func (u *update) amend(n int, more string) {
	body := string(bytes.TrimSuffix(bytes.TrimSpace(u.object(n)), []byte(">>")))
	u.put(n, body+"\n"+more+"\n>>")
}

// finish writes the table of the update.
func (u *update) finish() []byte {
	var numbers []int
	for n := range u.at {
		numbers = append(numbers, n)
	}
	slices.Sort(numbers)
	start := len(u.file)
	u.file = append(u.file, "xref\n"...)
	for _, n := range numbers {
		u.file = fmt.Appendf(u.file, "%d 1\n%010d 00000 n \n", n, u.at[n])
	}
	return fmt.Appendf(u.file, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n/Prev %d\n>>\n%s%d\n%%%%EOF\n", numbers[len(numbers)-1]+1, u.catalog, u.info, u.start, startWord, start)
}
