package page

import (
	"bytes"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// sample is a document of two pages whose labels try to break out.
func sample() ink.Document {
	page := func(title string) ink.Page {
		p := ink.Page{Title: title, Width: 100, Height: 50}
		c := ink.NewCanvas(&p, ink.Walls)
		c.Rect(ink.Pen{Width: 0.5}, r2.Vec{X: 10, Y: 10}, r2.Vec{X: 90, Y: 40})
		c.On(ink.Notes).Text(ink.Text{At: r2.Vec{X: 12, Y: 12}, S: `</svg><script>alert("x")</script>`, Size: 3})
		return p
	}
	return ink.Document{Title: `A & B <script>`, Language: "en", Pages: []ink.Page{page(`one"><img src=x>`), page("two")}}
}

func write(t *testing.T, d ink.Document) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d, Options{}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestLabelsAreEscaped(t *testing.T) {
	got := write(t, sample())
	if n := strings.Count(got, "<script>"); n != 1 {
		t.Errorf("%d script elements, want the page's own", n)
	}
	if strings.Contains(got, "<img") {
		t.Error("a title made an element")
	}
}

func TestNothingComesFromOutside(t *testing.T) {
	got := write(t, sample())
	for _, word := range []string{"http-equiv=\"Content-Security-Policy\"", "default-src &#39;none&#39;"} {
		if !strings.Contains(got, word) {
			t.Errorf("no %s", word)
		}
	}
	for _, word := range []string{"src=\"http", "href=\"http", "@import", "url("} {
		if strings.Contains(got, word) {
			t.Errorf("the page asks for something: %s", word)
		}
	}
}

func TestTheHashesAreOfWhatIsWritten(t *testing.T) {
	got := write(t, sample())
	for element, text := range map[string]string{"style": style, "script": script} {
		if !strings.Contains(got, "<"+element+">"+text+"</"+element+">") {
			t.Errorf("the %s is not written as it was hashed", element)
		}
	}
}

func TestOneSwitchALayerAndOneTabASheet(t *testing.T) {
	got := write(t, sample())
	if n := strings.Count(got, "data-switch="); n != 2 {
		t.Errorf("%d switches for two layers", n)
	}
	if n := strings.Count(got, "<section "); n != 2 {
		t.Errorf("%d sections for two pages", n)
	}
	if n := strings.Count(got, `href="#sheet-`); n != 2 {
		t.Errorf("%d tabs for two pages", n)
	}
	one := sample()
	one.Pages = one.Pages[:1]
	if strings.Contains(write(t, one), "<nav") {
		t.Error("one sheet needs no tabs")
	}
}

func TestSameBytes(t *testing.T) {
	if write(t, sample()) != write(t, sample()) {
		t.Error("two runs differ")
	}
}

func TestNoPages(t *testing.T) {
	if err := Write(&bytes.Buffer{}, ink.Document{}, Options{}); err == nil {
		t.Error("no error for no pages")
	}
}
