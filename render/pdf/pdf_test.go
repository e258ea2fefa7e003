package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

func written(t testing.TB, doc ink.Document, opts Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, doc, opts); err != nil {
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

// run runs a program on a file and returns what it prints. Where changes are checked the program
// may not be missing.
func run(t *testing.T, file []byte, name string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI") != "" {
		t.Fatalf("%s is needed: %v", name, err)
	}
	if err != nil {
		t.Skipf("%s is not installed", name)
	}
	in := filepath.Join(t.TempDir(), "in.pdf")
	if err := os.WriteFile(in, file, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "IN" {
			args[i] = in
		}
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func TestTheFileIsClean(t *testing.T) {
	out := run(t, written(t, specimen.Document(), Options{}), "qpdf", "--check", "IN")
	if !strings.Contains(out, "No syntax or stream encoding errors found") || strings.Contains(out, "WARNING") {
		t.Errorf("qpdf: %s", out)
	}
}

func TestWordsAreFound(t *testing.T) {
	out := run(t, written(t, specimen.Document(), Options{}), "pdftotext", "IN", "-")
	for s, n := range map[string]int{
		"Key 4300 K T2.8": 4, "aligned at the line": 3, "exactly 100 mm": 1,
		"470 lx halo": 1, "sloped": 1, // a halo is not found again
		"turned":                    8, // at any angle
		ink.Clean(specimen.Hostile): 1,
	} {
		if got := strings.Count(out, s); got != n {
			t.Errorf("%q is found %d times, want %d, in\n%s", s, got, n, out)
		}
	}
}

func TestWhatAViewerSays(t *testing.T) {
	file := written(t, specimen.Document(), Options{})
	out := run(t, file, "pdfinfo", "-isodates", "-l", "2", "IN")
	for _, want := range []string{
		`Title: +Specimen\n`, `Subject: +One of everything\n`, `Author: +N\. N\.\n`, `Producer: +scrimshaw\n`,
		`CreationDate: +2031-05-14T00:00:00Z\n`, `ModDate: +2031-05-14T00:00:00Z\n`, `Pages: +2\n`,
		`Page +1 size: +510\.24 x 340\.16 pts\n`, `Page +2 size: +841\.89 x 595\.28 pts \(A4\)\n`,
	} {
		if !regexp.MustCompile(want).MatchString(out) {
			t.Errorf("no %s in\n%s", want, out)
		}
	}
	if !bytes.Contains(file, []byte("/Lang (en-GB)")) {
		t.Error("no language")
	}
	fonts := run(t, file, "pdffonts", "IN")
	if n := len(regexp.MustCompile(`(?m)CID TrueType +Identity-H +yes .* yes `).FindAllString(fonts, -1)); n != 2 {
		t.Errorf("%d embedded fonts with Unicode, want 2:\n%s", n, fonts)
	}
}

// Letters stand where the layout measured them.
func TestTextIsAsLongAsMeasured(t *testing.T) {
	page := ink.Page{Width: 200, Height: 100}
	c := ink.NewCanvas(&page, ink.Notes)
	const word = "AVToWa.illuminance"
	for i, a := range []ink.Align{ink.Left, ink.Centre, ink.Right} {
		c.Text(ink.Text{At: r2.Vec{X: 100, Y: 20 + 20*float64(i)}, S: word, Size: 6, Bold: i == 1, Align: a})
	}
	f := family(t)
	out := run(t, written(t, ink.Document{Pages: []ink.Page{page}}, Options{Font: f}), "pdftotext", "-bbox", "IN", "-")
	boxes := regexp.MustCompile(`xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">`+word).FindAllStringSubmatch(out, -1)
	if len(boxes) != 3 {
		t.Fatalf("%d words in\n%s", len(boxes), out)
	}
	for i, b := range boxes { // from the upper edge: right, centre, left
		align := ink.Right - ink.Align(i)
		width := f.Width(word, 6, align == ink.Centre)
		from := 100 - width*float64(align)/2
		var x0, x1 float64
		if _, err := fmt.Sscan(b[1]+" "+b[2], &x0, &x1); err != nil {
			t.Fatal(err)
		}
		if !(math.Abs(x0/points-from) <= 0.01) || !(math.Abs(x1/points-from-width) <= 0.01) {
			t.Errorf("align %d: from %.3f to %.3f mm, want %.3f to %.3f", align, x0/points, x1/points, from, from+width)
		}
	}
}

func TestALineOf100Millimetres(t *testing.T) {
	streams := contents(t, written(t, specimen.Document(), Options{}))
	if len(streams) != 2 {
		t.Fatalf("%d pages", len(streams))
	}
	s := streams[1]
	if want := "q 2.834646 0 0 2.834646 0 0 cm"; !strings.Contains(s, want) {
		t.Errorf("a millimetre is not 72/25.4 points in\n%s", s)
	}
	if want := "50 100 m 150 100 l S"; !strings.Contains(s, want) {
		t.Errorf("no %q in\n%s", want, s)
	}
}

func TestLayersAreSharedByPages(t *testing.T) {
	file := written(t, specimen.Document(), Options{})
	var want []string
	for i := range specimen.Document().Pages {
		for _, s := range specimen.Document().Pages[i].Strata() {
			want = append(want, s.Layer.Title())
		}
	}
	if n := bytes.Count(file, []byte("/Type /OCG ")); n != len(want) {
		t.Errorf("%d layers, want those of the pages: %q", n, want)
	}
	for i, title := range want {
		name := "/Name (\xFE\xFF\x00" + strings.Join(strings.Split(title, ""), "\x00") + ")"
		if !bytes.Contains(file, []byte(name)) {
			t.Errorf("layer %d is not %q", i, title)
		}
	}
}

func TestBookmarksLeadToTheTopOfTheirPage(t *testing.T) {
	file := string(written(t, specimen.Document(), Options{}))
	for _, want := range []string{"/Dest [3 0 R /XYZ 0 340.16 null]", "/Dest [5 0 R /XYZ 0 595.28 null]", "/PageMode /UseOutlines"} {
		if !strings.Contains(file, want) {
			t.Errorf("no %s", want)
		}
	}
	for _, page := range []string{"3 0 obj\n<</Type /Page\n", "5 0 obj\n<</Type /Page\n"} {
		if !strings.Contains(file, page) {
			t.Errorf("no %q", page)
		}
	}
}

// outlineOf reads the outline of a file back from its objects: a line an entry, deeper ones further in, with the object
// of the page that it leads to.
func outlineOf(t *testing.T, file []byte) (lines []string) {
	t.Helper()
	object := func(number string) []byte {
		_, from, ok := bytes.Cut(file, []byte("\n"+number+" 0 obj\n"))
		if !ok {
			t.Fatalf("no object %s", number)
		}
		body, _, _ := bytes.Cut(from, []byte("\nendobj"))
		return body
	}
	field := func(body []byte, pattern string) string {
		if m := regexp.MustCompile(`(?s)` + pattern).FindSubmatch(body); m != nil {
			return string(m[1])
		}
		return ""
	}
	const number = ` (\d+) 0 R`
	var walk func(parent, indent string)
	walk = func(parent, indent string) {
		before := ""
		for at := field(object(parent), "/First"+number); at != ""; {
			o := object(at)
			if field(o, "/Parent"+number) != parent || field(o, "/Prev"+number) != before {
				t.Errorf("entry %s has lost its parent %s or its neighbour %q", at, parent, before)
			}
			title := strings.ReplaceAll(strings.TrimPrefix(field(o, `/Title \((.*?)\)\n/Parent`), "\xFE\xFF"), "\x00", "")
			lines = append(lines, indent+title+" -> "+field(o, `/Dest \[(\d+) 0 R`))
			walk(at, indent+"  ")
			before, at = at, field(o, "/Next"+number)
		}
		if last := field(object(parent), "/Last"+number); last != before {
			t.Errorf("the last of %s is %q, want %q", parent, last, before)
		}
	}
	walk(field(file, "/Outlines"+number), "")
	return lines
}

// Pages stand under their headings; a heading leads to its first page and stands once for its neighbours.
func TestBookmarksAreNested(t *testing.T) {
	doc := ink.Document{Title: "Day", Language: "en-GB"}
	for _, place := range [][]string{{"Wide", "Plan"}, {"Wide", "Lists"}, {"Close", "Plan"}, {"Close", "Lists", "More"}, nil, {"Wide", "Plan"}, {"Cover"}, {"Cover", "More"}, {"Cover"}} {
		doc.Pages = append(doc.Pages, ink.Page{Title: "Changes", Outline: place, Width: 100, Height: 100})
	}
	want := []string{"Wide -> 3", "  Plan -> 3", "  Lists -> 5", "Close -> 7", "  Plan -> 7", "  Lists -> 9", "    More -> 9", "Changes -> 11",
		"Wide -> 13", "  Plan -> 13", "Cover -> 15", "  More -> 17", "Cover -> 19"}
	if got := outlineOf(t, written(t, doc, Options{})); !slices.Equal(got, want) {
		t.Errorf("the outline is\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// Files of different content have different identifiers, of the same content the same.
func TestIdentifier(t *testing.T) {
	id := func(doc ink.Document) string {
		found := regexp.MustCompile(`\n/ID \[<([0-9A-F]{32})> <([0-9A-F]{32})>\]\n>>\nstartxref\n`).FindSubmatch(written(t, doc, Options{}))
		if found == nil || !bytes.Equal(found[1], found[2]) {
			t.Fatalf("no identifier: %q", found)
		}
		return string(found[1])
	}
	other := specimen.Document()
	other.Title = "Another"
	first, again, another := id(specimen.Document()), id(specimen.Document()), id(other)
	if first != again || first == another {
		t.Errorf("%s, %s and %s", first, again, another)
	}
}

func TestDates(t *testing.T) {
	for in, want := range map[string]string{
		"2031-05-14": "D:20310514000000", "2031-05-14T06:07:08Z": "D:20310514060708",
		"": "D:19700101000000", "next week": "D:19700101000000", "0000-01-01": "D:19700101000000",
	} {
		if got := "D:" + day(in).Format("20060102150405"); got != want {
			t.Errorf("%q: %s, want %s", in, got, want)
		}
	}
}

// gallery has images of one width, which the library would put in any order.
func gallery() ink.Document {
	page := ink.Page{Width: 100, Height: 100}
	for i := range 6 {
		x := 15 * float64(i)
		page.Items = append(page.Items, ink.Item{Image: &ink.Image{Min: r2.Vec{X: x}, Max: r2.Vec{X: x + 10, Y: 10}, Width: 2, Height: 1, RGB: []byte{byte(40 * i), 0, 0, 0, byte(40 * i), 0}}})
	}
	return ink.Document{Pages: []ink.Page{page, page}}
}

func TestSameBytesEveryTime(t *testing.T) {
	for name, doc := range map[string]ink.Document{"specimen": specimen.Document(), "gallery": gallery()} {
		want := written(t, doc, Options{})
		var group sync.WaitGroup
		for range 12 {
			group.Go(func() {
				var b bytes.Buffer
				if err := Write(&b, doc, Options{}); err != nil || !bytes.Equal(b.Bytes(), want) {
					t.Errorf("%s: another result: %v", name, err)
				}
			})
		}
		group.Wait()
	}
}

// One family serves many documents at a time: the library must not write into it.
func TestOneFamilyForAll(t *testing.T) {
	opts := Options{Font: family(t)}
	before := bytes.Clone(opts.Font.File(false))
	want := written(t, specimen.Document(), opts)
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, specimen.Document(), opts); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("another result: %v", err)
			}
		})
	}
	group.Wait()
	if !bytes.Equal(opts.Font.File(false), before) {
		t.Error("the font was written to")
	}
}

func TestImagesKeepTheirPixels(t *testing.T) {
	out := run(t, written(t, gallery(), Options{}), "pdftoppm", "-r", "25.4", "-f", "1", "-l", "1", "IN")
	pixels := out[len(out)-3*100*100:]
	for i := range 6 {
		at := func(x int) string { return pixels[3*(95*100+x):][:3] }
		if left, want := at(15*i+2), string([]byte{byte(40 * i), 0, 0}); left != want {
			t.Errorf("image %d is %x on the left, want %x", i, left, want)
		}
		if right, want := at(15*i+7), string([]byte{0, byte(40 * i), 0}); right != want {
			t.Errorf("image %d is %x on the right, want %x", i, right, want)
		}
		if beside := at(15*i + 12); beside != "\xFF\xFF\xFF" {
			t.Errorf("beside image %d is %x", i, beside)
		}
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	for name, c := range map[string]struct {
		doc  ink.Document
		want string
	}{
		"no pages":  {ink.Document{}, "without pages"},
		"no size":   {ink.Document{Pages: []ink.Page{specimen.Page(), {Width: 10}}}, "page 2 is 10 by 0 mm"},
		"no number": {ink.Document{Pages: []ink.Page{{Width: math.NaN(), Height: 1}}}, "NaN"},
	} {
		if err := Write(io.Discard, c.doc, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", name, err, c.want)
		}
	}
	if err := Write(broken{}, specimen.Document(), Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("a full disk gives %v", err)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

// A font whose table of glyphs points beyond its end can be measured, but not embedded.
func TestADamagedFontIsAnError(t *testing.T) {
	f := family(t)
	file := bytes.Clone(f.Embeddable(false))
	at := bytes.Index(file, []byte("loca"))
	start := int(file[at+10])<<8 | int(file[at+11]) | int(file[at+9])<<16
	for i := start + 4*36; i < start+4*40; i += 4 {
		file[i] = 0x7F
	}
	damaged, err := font.Load(file, nil)
	if err != nil {
		t.Fatal(err)
	}
	page := ink.Page{Width: 10, Height: 10}
	ink.NewCanvas(&page, ink.Notes).Text(ink.Text{S: "ABCDEFGH", Size: 3})
	if err := Write(io.Discard, ink.Document{Pages: []ink.Page{page}}, Options{Font: damaged}); err == nil {
		t.Error("no error")
	}
}

// Name tables of format 1 make the library print to the standard output.
func TestFontsAreHandedOverWithoutNames(t *testing.T) {
	if bytes.Contains(family(t).Embeddable(false), []byte("\x00L\x00i\x00b\x00e\x00r")) || !bytes.Contains(liberationsansregular.TTF, []byte("\x00L\x00i\x00b\x00e\x00r")) {
		t.Error("the embedded font has names")
	}
}

func BenchmarkWrite(b *testing.B) {
	doc, opts := specimen.Document(), Options{Font: family(b)}
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, doc, opts); err != nil {
			b.Fatal(err)
		}
	}
}
