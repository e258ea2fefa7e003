package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"regexp"
	"strconv"
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
	file          []byte
	offsets       []int       // of its objects, by their numbers
	table         int         // where its table stands
	instead       map[int]any // what objects hold in place of what the library wrote: text or a stream
	added         []string    // objects behind its own
	catalog, info int
}

// errStrange says that a file of the library is not as it was when this was written.
var errStrange = errors.New("the library writes other files than it did")

// assemble writes the file with what stands on its pages, and an identifier made from its content (ISO 32000-1, 14.4).
func (b *builder) assemble(w io.Writer, file []byte) error {
	a := assembly{file: file, instead: map[int]any{}}
	if !a.read() || !a.rename(b.widths) {
		return errStrange
	}
	for i, content := range b.packed {
		if !bytes.HasPrefix(a.object(pageObject(i)), []byte("<</Type /Page\n")) {
			return errStrange
		}
		a.instead[pageObject(i)+1] = content
	}
	if b.doc.Tagged {
		a.tag(b.marks)
	}
	return a.write(w)
}

// The words of a file that are looked for.
const (
	startWord = "startxref\n"
	endObject = "\nendobj"
)

// read finds the objects of a file.
func (a *assembly) read() bool {
	at := bytes.LastIndex(a.file, []byte(startWord))
	if at < 0 {
		return false
	}
	line, _, _ := bytes.Cut(a.file[at+len(startWord):], []byte("\n"))
	start, err := strconv.Atoi(string(line))
	if err != nil || start <= 0 || start >= at {
		return false
	}
	table, trailer, ok := bytes.Cut(a.file[start:at], []byte("trailer"))
	if !ok || !a.readTable(table) {
		return false
	}
	a.table, a.catalog, a.info = start, reference(trailer, "/Root "), reference(trailer, "/Info ")
	return a.object(a.catalog) != nil && a.object(resources) != nil
}

// readTable reads where the objects of a file are.
func (a *assembly) readTable(table []byte) bool {
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
		a.offsets = append(a.offsets, offset)
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

// object is what an object of the file holds, up to a stream that ends before its end; nil where it is not found.
func (a *assembly) object(n int) []byte {
	head := fmt.Appendf(nil, "%d 0 obj\n", n)
	if n <= 0 || n >= len(a.offsets) || !bytes.HasPrefix(a.file[min(a.offsets[n], len(a.file)):], head) {
		return nil
	}
	body, _, ok := bytes.Cut(a.file[a.offsets[n]+len(head):], []byte(endObject))
	if !ok {
		return nil
	}
	return body
}

// whole is all that an object of the file holds, with its stream.
func (a *assembly) whole(n int) []byte {
	from, to := a.offsets[n], a.table
	for _, other := range a.offsets {
		if other > from {
			to = min(to, other)
		}
	}
	_, body, _ := bytes.Cut(a.file[from:to], []byte("\n"))
	return bytes.TrimSuffix(body, []byte(endObject+"\n"))
}

// first is where the first object of the file begins.
func (a *assembly) first() int {
	first := a.table
	for _, offset := range a.offsets[1:] {
		first = min(first, offset)
	}
	return first
}

// amend has a dictionary of the file written with more in it.
func (a *assembly) amend(n int, more string) {
	body := string(bytes.TrimSuffix(bytes.TrimSpace(a.object(n)), []byte(">>")))
	a.instead[n] = body + "\n" + more + "\n>>"
}

// resource is a line of the resources by which a name of the library leads to an object.
var resource = regexp.MustCompile(`\n/([FI])([0-9a-f]+) (\d+) 0 R`)

// rename gives typefaces and images the names that the pages call them by: these by their widths, of which no two are alike, those by which of them the first
// page sets first, the regular one.
func (a *assembly) rename(widths map[int]bool) bool {
	first, ok := inflated(a.whole(min(pageObject(0)+1, len(a.offsets)-1)))
	regular := setFont.FindSubmatch(first)
	if !ok || regular == nil {
		return false
	}
	known := true
	body := resource.ReplaceAllFunc(a.object(resources), func(line []byte) []byte {
		m := resource.FindSubmatch(line)
		n, _ := strconv.Atoi(string(m[3]))
		name := fontNames[1]
		switch {
		case m[1][0] == 'I':
			wide := a.widthOf(n)
			known = known && widths[wide]
			name = imageName(wide)
		case bytes.Equal(m[2], regular[1]):
			name = fontNames[0]
		}
		return fmt.Appendf(nil, "\n/%s %d 0 R", name, n)
	})
	a.instead[resources] = string(body)
	return known
}

// widthOf is the width of the image that an object holds, pixels; 0 where it holds none.
func (a *assembly) widthOf(n int) (wide int) {
	if found := imageWidth.FindSubmatch(a.object(n)); found != nil {
		wide, _ = strconv.Atoi(string(found[1]))
	}
	return wide
}

// inflated is the stream of an object.
func inflated(object []byte) ([]byte, bool) {
	_, packed, ok := bytes.Cut(object, []byte("\nstream\n"))
	r, err := zlib.NewReader(bytes.NewReader(packed))
	if !ok || err != nil {
		return nil, false
	}
	data, err := io.ReadAll(r)
	return data, err == nil
}

// What the library writes of typefaces and images.
var (
	setFont    = regexp.MustCompile(`BT /F([0-9a-f]+) `)
	imageWidth = regexp.MustCompile(`/Subtype /Image\n/Width (\d+)\n`)
)

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
	out.write(a.file[:a.first()])
	size := len(a.offsets) + len(a.added)
	at := make([]int, size)
	for n := 1; n < size; n++ {
		at[n] = out.n
		out.write(fmt.Appendf(nil, "%d 0 obj\n", n))
		a.writeObject(&out, n)
		out.write([]byte(endObject + "\n"))
	}
	start := out.n
	out.write(fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", size))
	for n := 1; n < size; n++ {
		out.write(fmt.Appendf(nil, "%010d 00000 n \n", at[n]))
	}
	out.write(fmt.Appendf(nil, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n", size, a.catalog, a.info))
	sum := out.sum.Sum(nil)
	out.write(fmt.Appendf(nil, "/ID [<%X> <%X>]\n>>\n%s%d\n%%%%EOF\n", sum[:16], sum[:16], startWord, start))
	return out.err
}

// writeObject writes what an object holds.
func (a *assembly) writeObject(out *counted, n int) {
	switch held := a.instead[n].(type) {
	case string:
		out.write([]byte(held))
	case []byte:
		out.write(fmt.Appendf(nil, "<</Filter /FlateDecode /Length %d>>\nstream\n", len(held)))
		out.write(held)
		out.write([]byte("\nendstream"))
	default:
		if n < len(a.offsets) {
			out.write(a.whole(n))
		} else {
			out.write([]byte(a.added[n-len(a.offsets)]))
		}
	}
}
