package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"regexp"
	"slices"
	"strconv"

	"scrimshaw/symbols/ink"
)

// The library lays out the file: catalog, outline, typefaces, images, layers. What stands on its pages it does not know, and assemble puts that in where
// the library has written next to nothing, so that at no time more than one page is held as it is drawn.

// What the content streams call typefaces and images. The library has longer names for them, which are known only when all is written.
var fontNames = [2]string{"T0", "T1"}

func imageName(wide int) string { return "P" + strconv.Itoa(wide) }

// pageObject is the number of the object of a page in a file of the library, from 0; that of its content follows.
func pageObject(i int) int { return 3 + 2*i }

// resources is the number of the object that all pages share.
const resources = 2

// assembly is a file of the library in parts.
type assembly struct {
	head          []byte   // what stands before the objects
	objects       [][]byte // what each holds, by its number; there is none of number 0
	catalog, info int
}

// errStrange says that a file of the library is not as it was when this was written.
var errStrange = errors.New("the library writes other files than it did")

// assemble writes the file with what stands on its pages, and an identifier made from its content (ISO 32000-1, 14.4).
func (b *builder) assemble(w io.Writer, file []byte) error {
	var a assembly
	if !a.read(file) || !a.rename(b.widths) {
		return errStrange
	}
	for i, content := range b.packed {
		if page := pageObject(i); page+1 < len(a.objects) && bytes.HasPrefix(a.objects[page], []byte("<</Type /Page\n")) {
			a.objects[page+1] = content
			continue
		}
		return errStrange
	}
	if b.doc.Tagged {
		a.tag(b.marks)
	}
	return a.write(w)
}

// The words of a file that are looked for.
const (
	startWord = "startxref\n"
	endObject = "\nendobj\n"
)

// read takes a file apart.
func (a *assembly) read(file []byte) bool {
	at := max(0, bytes.LastIndex(file, []byte(startWord)))
	line, _, _ := bytes.Cut(bytes.TrimPrefix(file[at:], []byte(startWord)), []byte("\n"))
	start, err := strconv.Atoi(string(line))
	if err != nil || start <= 0 || start >= at {
		return false
	}
	table, trailer, ok := bytes.Cut(file[start:at], []byte("trailer"))
	offsets := offsetsIn(table)
	if !ok || len(offsets) <= resources {
		return false
	}
	a.catalog, a.info = reference(trailer, "/Root "), reference(trailer, "/Info ")
	return a.readObjects(file, offsets, start) && a.catalog > 0 && a.catalog < len(a.objects)
}

// offsetsIn are where the objects of a file begin, by their numbers from 1 on; nil where a line of its table is strange.
func offsetsIn(table []byte) (offsets []int) {
	const digits, before = 10, 3 // lines: a word, how many objects there are, and one of none
	lines := bytes.Split(table, []byte("\n"))
	for _, l := range lines[min(before, len(lines)):] {
		if len(l) < digits {
			continue
		}
		offset, err := strconv.Atoi(string(l[:digits]))
		if err != nil || offset < 0 {
			return nil
		}
		offsets = append(offsets, offset)
	}
	return offsets
}

// readObjects cuts objects out of a file, each of which ends where another begins, or the table.
func (a *assembly) readObjects(file []byte, offsets []int, table int) bool {
	ends := append(slices.Sorted(slices.Values(offsets)), table)
	if !slices.IsSorted(ends) {
		return false
	}
	a.head, a.objects = file[:ends[0]], make([][]byte, 1, len(ends))
	for i, from := range offsets {
		next, _ := slices.BinarySearch(ends, from+1)
		if next == len(ends) {
			return false
		}
		body, begins := bytes.CutPrefix(file[from:ends[next]], fmt.Appendf(nil, "%d 0 obj\n", i+1))
		body, closes := bytes.CutSuffix(body, []byte(endObject))
		if !begins || !closes {
			return false
		}
		a.objects = append(a.objects, body)
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

// add puts an object behind the others.
func (a *assembly) add(format string, args ...any) {
	a.objects = append(a.objects, fmt.Appendf(nil, format, args...))
}

// amend puts more into a dictionary.
func (a *assembly) amend(n int, more string) {
	a.objects[n] = fmt.Appendf(nil, "%s\n%s\n>>", bytes.TrimSuffix(bytes.TrimSpace(a.objects[n]), []byte(">>")), more)
}

// What the library writes of typefaces and images: by which name the resources lead to their objects, and how these begin.
var (
	resource   = regexp.MustCompile(`\n/[FI][0-9a-f]+ (\d+) 0 R`)
	baseFont   = regexp.MustCompile(`^<</Type /Font\n/Subtype /Type0\n/BaseFont /utf8` + fontFamily + `(B?)\n`)
	imageWidth = regexp.MustCompile(`^<</Type /XObject\n/Subtype /Image\n/Width (\d+)\n`)
)

// rename gives typefaces and images the names that the pages call them by: these by their widths, of which no two are alike.
func (a *assembly) rename(widths map[int]bool) bool {
	known := true
	a.objects[resources] = resource.ReplaceAllFunc(a.objects[resources], func(line []byte) []byte {
		n, _ := strconv.Atoi(string(resource.FindSubmatch(line)[1]))
		name := ""
		if n < len(a.objects) {
			name = nameOf(a.objects[n], widths)
		}
		known = known && name != ""
		return fmt.Appendf(nil, "\n/%s %d 0 R", name, n)
	})
	return known
}

// nameOf is what pages call a typeface or one of the images of some widths; "" for anything else.
func nameOf(object []byte, widths map[int]bool) string {
	if font := baseFont.FindSubmatch(object); font != nil {
		return fontNames[len(font[1])]
	}
	if image := imageWidth.FindSubmatch(object); image != nil {
		if wide, _ := strconv.Atoi(string(image[1])); widths[wide] {
			return imageName(wide)
		}
	}
	return ""
}

// counted writes on, and counts and sums what it writes.
type counted struct {
	w   io.Writer
	n   int
	sum hash.Hash
	err error
}

func (c *counted) write(p []byte) {
	if c.err == nil {
		_, c.err = c.w.Write(p)
	}
	c.n += len(p)
	c.sum.Write(p)
}

// write writes the file, object by object in the order of their numbers.
func (a *assembly) write(w io.Writer) error {
	out := counted{w: w, sum: sha256.New()}
	out.write(a.head)
	table := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(a.objects))
	for i, object := range a.objects[1:] {
		table = fmt.Appendf(table, "%010d 00000 n \n", out.n)
		out.write(fmt.Appendf(nil, "%d 0 obj\n", i+1))
		out.write(object)
		out.write([]byte(endObject))
	}
	start := out.n
	out.write(table)
	out.write(fmt.Appendf(nil, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n", len(a.objects), a.catalog, a.info))
	sum := out.sum.Sum(nil)
	out.write(fmt.Appendf(nil, "/ID [<%X> <%X>]\n>>\n%s%d\n%%%%EOF\n", sum[:16], sum[:16], startWord, start))
	return out.err
}

// tag puts the structure into a file.
func (a *assembly) tag(marks [][]ink.Layer) {
	tree := len(a.objects)
	parents, whole := tree+1, tree+2
	kids, nums := elements(whole+1, marks)
	a.add("<</Type /StructTreeRoot /K [%d 0 R] /ParentTree %d 0 R /ParentTreeNextKey %d>>", whole, parents, len(marks))
	a.add("<</Nums [%s]>>", nums)
	a.add("<</Type /StructElem /S /Document /P %d 0 R /K [%s]>>", tree, kids)
	for i, layers := range marks {
		a.add("<</Type /StructElem /S /Sect /P %d 0 R /Pg %d 0 R /K %v>>", whole, pageObject(i), inOrder(layers))
		a.amend(pageObject(i), fmt.Sprintf("/StructParents %d", i))
	}
	a.amend(a.catalog, fmt.Sprintf("/MarkInfo <</Marked true>> /StructTreeRoot %d 0 R", tree))
}
