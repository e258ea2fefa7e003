package pdf

import (
	"bytes"
	"slices"
	"testing"

	"scrimshaw/symbols/ink"
)

// Lists are read before what is lettered on the drawing, each in the order in which they were drawn.
func TestInOrder(t *testing.T) {
	got := inOrder([]ink.Layer{ink.Contours, ink.Tags, ink.Contours, ink.Collar, ink.Collar})
	if want := []int{3, 4, 1, 0, 2}; !slices.Equal(got, want) {
		t.Errorf("the order is %v, want %v", got, want)
	}
}

// A file that is not as the library writes one, or that lacks a page, is an error and no file.
func TestAStrangeFileIsAnError(t *testing.T) {
	for _, file := range []string{"", "startxref\n", "startxref\n-7\n", "startxref\n9\n", "xref\n0 1\nabcdefghijkl\ntrailer\nstartxref\n1\n", "....xref\n0 2\n0000000000 65535 f \n9999999999 00000 n \ntrailer <</Root 1 0 R>>\nstartxref\n4\n",
		"1 0 obj\n\nendobj\n2 0 obj\n\nendobj\nxref\n0 3\n0000000000 65535 f \n0000000000 00000 n \n0000000016 00000 n \ntrailer <</Root 1 0 R>>\nstartxref\n32\n"} {
		var out bytes.Buffer
		b := builder{doc: &ink.Document{}, packed: [][]byte{nil}}
		if err := b.assemble(&out, []byte(file)); err == nil || out.Len() > 0 {
			t.Errorf("%q becomes %q, %v", file, out.String(), err)
		}
	}
}

// A document with a structure has links and marks, and the same bytes twice; one without has none.
func TestWriteTagged(t *testing.T) {
	page := func(name, to string) ink.Page {
		p := ink.Page{Name: name, Title: name, Width: 100, Height: 100, Links: []ink.Link{{To: to}, {To: "nowhere"}, {To: name}}}
		ink.NewCanvas(&p, ink.Collar).Text(ink.Text{S: "word of " + name, Size: 5})
		return p
	}
	doc := ink.Document{Title: "Two", Pages: []ink.Page{page("a", "b"), page("b", "a")}, Tagged: true}
	write := func() []byte {
		var b bytes.Buffer
		if err := Write(&b, doc, Options{}); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	file := write()
	if !bytes.Equal(file, write()) {
		t.Error("the same document has other bytes")
	}
	for words, want := range map[string]int{"/Subtype /Link": 2, "/StructTreeRoot ": 2, "/Type /StructTreeRoot ": 1, "/StructParents ": 2, "/S /Sect": 2} {
		if got := bytes.Count(file, []byte(words)); got != want {
			t.Errorf("%q stands there %d times, want %d", words, got, want)
		}
	}
	if doc.Tagged = false; bytes.Contains(write(), []byte("StructTreeRoot")) {
		t.Error("a document without a structure has one")
	}
}
