package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

var update = flag.Bool("update", os.Getenv("UPDATE_GOLDEN") != "", "rewrite the goldens")

func written(t testing.TB, doc ink.Document, page int, opts Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, doc, page, opts); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func family(t testing.TB) *font.Family {
	t.Helper()
	f, err := font.Default()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// element is an element of a file with what stands in it.
type element struct {
	name     string
	attrs    map[string]string
	text     string
	children []*element
}

// parsed reads a file as XML, strictly.
func parsed(t testing.TB, file []byte) *element {
	t.Helper()
	root := &element{}
	stack := []*element{root}
	for d := xml.NewDecoder(bytes.NewReader(file)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return root.children[0]
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, file)
		}
		top := stack[len(stack)-1]
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			top.children = append(top.children, e)
			stack = append(stack, e)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			top.text += string(token)
		}
	}
}

// all returns the elements of a name in a file.
func (e *element) all(name string) []*element {
	var found []*element
	if e.name == name {
		found = append(found, e)
	}
	for _, c := range e.children {
		found = append(found, c.all(name)...)
	}
	return found
}

// tool finds a program that checks files. Where changes are checked it may not be missing.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI") != "" {
		t.Fatalf("%s is needed: %v", name, err)
	}
	if err != nil {
		t.Skipf("%s is not installed", name)
	}
	return path
}

func TestSpecimenIsAsItWas(t *testing.T) {
	const golden = "testdata/specimen.svg"
	got := written(t, specimen.Document(), 0, Options{})
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is out of date: look at the difference, and set UPDATE_GOLDEN=1 if it is meant\n%s", golden, firstDifference(got, want))
	}
}

func firstDifference(got, want []byte) string {
	g, w := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	for i := range min(len(g), len(w)) {
		if g[i] != w[i] {
			return "line " + strconv.Itoa(i+1) + "\n got  " + g[i] + "\n want " + w[i]
		}
	}
	return "one goes on where the other ends"
}

func TestPaperIsInMillimetres(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 1, Options{}))
	for name, want := range map[string]string{"width": "297mm", "height": "210mm", "viewBox": "0 0 297 210", "role": "img", "lang": "en-GB"} {
		if root.attrs[name] != want {
			t.Errorf("%s is %q, want %q", name, root.attrs[name], want)
		}
	}
	var lengths []float64
	for _, p := range root.all("path") {
		n := regexp.MustCompile(`^M([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)$`).FindStringSubmatch(p.attrs["d"])
		if n == nil {
			t.Fatalf("path %q", p.attrs["d"])
		}
		lengths = append(lengths, math.Hypot(number(n[3])-number(n[1]), number(n[4])-number(n[2])))
		if number(n[2]) != 110 {
			t.Errorf("a line 100 mm above the lower edge of 210 mm lies at %v", n[2])
		}
	}
	if !slices.Equal(lengths, []float64{100}) {
		t.Errorf("a line of 100 mm is %v", lengths)
	}
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

func TestLayersAreGroupsInDrawingOrder(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 0, Options{Prefix: "p1-"}))
	var got, want []string
	for _, c := range root.children {
		if layer := c.attrs["data-layer"]; layer != "" {
			got = append(got, layer)
			if c.attrs["id"] != "p1-layer-"+layer {
				t.Errorf("layer %q has the id %q", layer, c.attrs["id"])
			}
		}
	}
	for _, l := range ink.Layers() {
		if slices.Contains(got, l.String()) {
			want = append(want, l.String())
		}
	}
	if len(got) < 6 || !slices.Equal(got, want) {
		t.Errorf("layers %v, want %v", got, want)
	}
}

func TestThingsCanBeFoundAndHeard(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 0, Options{}))
	if title := root.all("title")[0]; title.text != "Specimen: one of everything" || root.attrs["aria-labelledby"] != "title desc" {
		t.Errorf("title %q", title.text)
	}
	if desc := root.all("desc")[0].text; !strings.HasPrefix(desc, "Lines, fills") {
		t.Errorf("description %q", desc)
	}
	found := 0
	for _, g := range root.all("g") {
		if g.attrs["data-object"] == "light:fill" {
			found++
			if len(g.children) != 4 || g.children[0].name != "title" || g.children[0].text != "A thing, turned by 60 degrees." {
				t.Errorf("the fill light has %d children", len(g.children))
			}
		}
	}
	if found != 1 {
		t.Errorf("the fill light is drawn in %d groups", found)
	}
}

func TestTextIsText(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 0, Options{}))
	read := map[string]int{}
	family := family(t)
	for _, e := range root.all("text") {
		if e.attrs["aria-hidden"] == "" {
			read[e.text]++
		}
		if e.attrs["aria-hidden"] != "" && (e.attrs["stroke-width"] == "" || e.attrs["stroke"] != e.attrs["fill"]) {
			t.Errorf("halo %v", e.attrs)
		}
		width := family.Width(e.text, number(e.attrs["font-size"]), e.attrs["font-weight"] == "bold")
		if math.Abs(width-number(e.attrs["textLength"])) > 0.02 {
			if len(e.text) > 1 {
				t.Errorf("%q has the textLength %s, and is %v long", e.text, e.attrs["textLength"], width)
			}
		}
	}
	for s, n := range map[string]int{"Key 4300 K T2.8": 4, "turned": 8, "470 lx halo": 1, "sloped": 1, "  two  spaces  ": 1, ink.Clean(specimen.Hostile): 1} {
		if read[s] != n {
			t.Errorf("%q is written %d times, want %d", s, read[s], n)
		}
	}
}

func TestOutlinesHaveNoText(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 0, Options{Outlines: true}))
	if n := len(root.all("text")); n != 0 {
		t.Errorf("%d texts", n)
	}
	labels := 0
	for _, p := range root.all("path") {
		if p.attrs["aria-label"] == "turned" {
			labels++
		}
	}
	if labels != 8 {
		t.Errorf("%d outlines say what they are, want 8", labels)
	}
}

// Other programs than browsers know neither style sheets nor transparency by rgba.
func TestOnlyWhatEveryProgramReads(t *testing.T) {
	known := map[string]bool{"svg": true, "title": true, "desc": true, "g": true, "path": true, "text": true, "image": true, "rect": true, "clipPath": true}
	var walk func(e *element)
	walk = func(e *element) {
		if !known[e.name] {
			t.Errorf("element %q", e.name)
		}
		for name, value := range e.attrs {
			if name == "style" || name == "class" || strings.Contains(value, "rgb") || name == "opacity" || strings.Contains(value, "NaN") {
				t.Errorf("%s=%q on %s", name, value, e.name)
			}
			if name == "href" && !strings.HasPrefix(value, "data:") {
				t.Errorf("the file needs %q", value)
			}
		}
		for _, c := range e.children {
			walk(c)
		}
	}
	walk(parsed(t, written(t, specimen.Document(), 0, Options{})))
}

func TestClipsThatAreNamedExist(t *testing.T) {
	root := parsed(t, written(t, specimen.Document(), 0, Options{Prefix: "x"}))
	ids := map[string]bool{}
	for _, c := range root.all("clipPath") {
		ids["url(#"+c.attrs["id"]+")"] = true
	}
	named := 0
	for _, e := range append(root.all("path"), root.all("g")...) {
		if clip := e.attrs["clip-path"]; clip != "" {
			named++
			if !ids[clip] {
				t.Errorf("there is no %s", clip)
			}
		}
	}
	if named != 2 || len(ids) != 1 {
		t.Errorf("%d marks name %d clips", named, len(ids))
	}
}

func TestFamilies(t *testing.T) {
	const twins = "Liberation Sans, Arimo, Arial, Helvetica, sans-serif"
	if root := parsed(t, written(t, specimen.Document(), 1, Options{})); root.attrs["font-family"] != twins {
		t.Errorf("families %q", root.attrs["font-family"])
	}
	// The same font under another name of the same length.
	renamed := bytes.ReplaceAll(liberationsansregular.TTF, []byte("Liberation Sans"), []byte(`My "F'nt" <1> \`))
	family, err := font.Load(renamed, nil)
	if err != nil {
		t.Fatal(err)
	}
	root := parsed(t, written(t, specimen.Document(), 1, Options{Font: family}))
	if want := `'My "F\'nt" <1> \\', ` + twins; root.attrs["font-family"] != want {
		t.Errorf("families %q, want %q", root.attrs["font-family"], want)
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	sized := func(w, h float64) ink.Document { return ink.Document{Pages: []ink.Page{{Width: w, Height: h}}} }
	for name, c := range map[string]struct {
		doc  ink.Document
		page int
		want string
	}{
		"no pages":    {ink.Document{}, 0, "no page 1 in a document of 0"},
		"beyond":      {specimen.Document(), 2, "no page 3"},
		"negative":    {specimen.Document(), -1, "no page 0"},
		"no size":     {sized(0, 10), 0, "0 by 10 mm"},
		"no number":   {sized(math.NaN(), 10), 0, "NaN"},
		"without end": {sized(math.Inf(1), 10), 0, "+Inf"},
	} {
		if err := Write(io.Discard, c.doc, c.page, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", name, err, c.want)
		}
	}
	if err := Write(broken{}, specimen.Document(), 0, Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a full disk gives %v", err)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestSameBytesFromManyGoroutines(t *testing.T) {
	want := written(t, specimen.Document(), 0, Options{})
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, specimen.Document(), 0, Options{}); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("another result: %v", err)
			}
		})
	}
	group.Wait()
}

func TestOtherProgramsReadIt(t *testing.T) {
	for _, c := range [][]string{{"xmllint", "--noout", "-"}, {"rsvg-convert", "-o", t.TempDir() + "/out.png"}} {
		for page := range specimen.Document().Pages {
			cmd := exec.Command(tool(t, c[0]), c[1:]...)
			cmd.Stdin = bytes.NewReader(written(t, specimen.Document(), page, Options{}))
			if out, err := cmd.CombinedOutput(); err != nil || len(out) > 0 {
				t.Errorf("%s, page %d: %v\n%s", c[0], page+1, err, out)
			}
		}
	}
}
