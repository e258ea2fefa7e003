package main

import (
	"cmp"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/study"
	"scrimshaw/plan/unit"
	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// TestPDFSpeaks reads every sample's PDF with a program that knows nothing of this one (qpdf): its
// language and title, a bookmark a page in order, under its set-up where there are several, and the layers by the names that viewers show.
func TestPDFSpeaks(t *testing.T) {
	qpdf := tool(t, "qpdf")
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			d := drawnSample(t, name)
			var titles []string
			for _, base := range d.pages {
				titles = append(titles, svgOf(t, base+".svg").Title)
			}
			file := readPDF(t, execute(t, "LC_ALL=C", qpdf, "--json=2", filepath.Join(d.folder, "a.pdf")))
			if got := file.catalog["/Lang"]; got != "u:en-GB" {
				t.Errorf("the language is %v", got)
			}
			title, _, _ := strings.Cut(titles[0], ", Set-up")
			if title = strings.TrimSuffix(title, ", Cover"); file.info["/Title"] != "u:"+title {
				t.Errorf("the title is %v, want %s", file.info["/Title"], title)
			}
			bookmarked(t, file.outline, titles)
			var all []string
			for _, l := range ink.Layers() {
				all = append(all, l.Title())
			}
			for _, layer := range file.layers {
				if !slices.Contains(all, layer) {
					t.Errorf("%q is no layer of ink", layer)
				}
			}
			for _, must := range []ink.Layer{ink.Tint, ink.Contours, ink.Walls, ink.Symbols, ink.Tags, ink.Readings, ink.Collar} {
				if !slices.Contains(file.layers, must.Title()) {
					t.Errorf("no layer %q among %q", must.Title(), file.layers)
				}
			}
		})
	}
}

// bookmarked fails where the outline does not lead to the pages in order: by their titles those of one set-up, else under
// the set-ups that their titles name, and those of the day under what they are.
func bookmarked(t *testing.T, outline []bookmark, titles []string) {
	t.Helper()
	several := false
	for _, title := range titles {
		several = several || !strings.HasPrefix(title, titles[0])
	}
	page := 0
	lead := func(b bookmark, want string) {
		if page++; b.Page != page || len(b.Kids) > 0 || page > len(titles) || !strings.Contains(titles[page-1], want) {
			t.Errorf("the bookmark %q leads to page %d, want %d, of %q", b.Title, b.Page, page, titles)
		}
	}
	leadOn := func(b bookmark) { // to the first page of a list, and to those on which it goes on
		lead(bookmark{Title: b.Title, Page: b.Page}, b.Title)
		for i, on := range b.Kids {
			if lead(on, b.Title); on.Title != fmt.Sprintf("Page %d", i+2) {
				t.Errorf("page %d of %s is called %q", i+2, b.Title, on.Title)
			}
		}
	}
	for _, top := range outline {
		if !several {
			lead(top, top.Title)
			continue
		}
		if ofDay := []string{"Cover", "Matching", "Lists"}; slices.Contains(ofDay, top.Title) {
			if len(top.Kids) == 0 || top.Kids[0].Page > page+1 {
				leadOn(top)
				continue
			}
			for _, b := range top.Kids {
				leadOn(b)
			}
			continue
		}
		if !strings.HasPrefix(top.Title, "Set-up ") || top.Page != page+1 || len(top.Kids) == 0 || top.Kids[0].Title != "Plan" {
			t.Errorf("page %d stands under %+v", page+1, top)
		}
		for _, b := range top.Kids {
			lead(b, top.Title)
		}
	}
	if page != len(titles) {
		t.Errorf("the outline has %d pages, want %d", page, len(titles))
	}
}

// bookmark is an entry of an outline as qpdf prints it.
type bookmark struct {
	Title string
	Page  int `json:"destpageposfrom1"`
	Kids  []bookmark
}

// pdfFile is what a viewer says about a file.
type pdfFile struct {
	catalog, info map[string]any
	outline       []bookmark
	layers        []string
}

// readPDF reads what qpdf prints: the outline, and the objects, strings marked by "u:".
func readPDF(t *testing.T, printed []byte) (f pdfFile) {
	t.Helper()
	var said struct {
		Outlines []bookmark
		QPDF     []json.RawMessage
	}
	if err := json.Unmarshal(printed, &said); err != nil {
		t.Fatal(err)
	}
	type object struct{ Value json.RawMessage }
	var objects map[string]object
	if err := json.Unmarshal(said.QPDF[1], &objects); err != nil {
		t.Fatal(err)
	}
	read := func(name any) (fields map[string]any) {
		key, _ := name.(string)
		if key != "trailer" {
			key = "obj:" + key
		}
		if json.Unmarshal(objects[key].Value, &fields) != nil {
			return nil
		}
		return fields
	}
	trailer := read("trailer")
	f.catalog, f.info = read(trailer["/Root"]), read(trailer["/Info"])
	f.outline = said.Outlines
	properties, _ := f.catalog["/OCProperties"].(map[string]any)
	groups, _ := properties["/OCGs"].([]any)
	for _, g := range groups {
		name, _ := read(g)["/Name"].(string)
		f.layers = append(f.layers, strings.TrimPrefix(name, "u:"))
	}
	return f
}

// svgFile is what a screen reader says of a drawing.
type svgFile struct {
	Role   string     `xml:"role,attr"`
	Named  string     `xml:"aria-labelledby,attr"`
	Lang   string     `xml:"lang,attr"`
	Title  string     `xml:"title"`
	Desc   string     `xml:"desc"`
	Groups []svgGroup `xml:"g"`
}

type svgGroup struct {
	Object string     `xml:"data-object,attr"`
	Title  string     `xml:"title"`
	Groups []svgGroup `xml:"g"`
}

// said are the sentences of the drawing, by what they are about.
func (f *svgFile) said() map[string]string {
	all := map[string]string{}
	for _, layer := range f.Groups {
		for _, g := range layer.Groups {
			if g.Title != "" {
				all[g.Object] = g.Title
			}
		}
	}
	return all
}

func svgOf(t *testing.T, path string) (f svgFile) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := xml.Unmarshal(data, &f); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return f
}

// TestSVGSpeaks: every sample's drawings have a role, a language, a title and a description, and a
// sentence for each light and each reading of the set-up.
func TestSVGSpeaks(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			plans := map[string]svgFile{}
			for _, base := range drawnSample(t, name).pages {
				f := svgOf(t, base+".svg")
				if f.Role != "img" || f.Named != "title desc" || f.Lang != "en-GB" || f.Title == "" || f.Desc == "" {
					t.Errorf("%s: role %q, named by %q, language %q, title %q, description %q", filepath.Base(base), f.Role, f.Named, f.Lang, f.Title, f.Desc)
				}
				if strings.HasPrefix(f.Desc, "Lighting plan") {
					plans[f.Title] = f
				}
			}
			for _, s := range litSample(t, name) {
				f, drawn := plans[titleOf(s)]
				if !drawn {
					t.Fatalf("no plan %q", titleOf(s))
				}
				said := f.said()
				for i := range s.Setup.Lights {
					l := &s.Setup.Lights[i]
					words := said["light:"+l.Name]
					for _, want := range []string{"Light " + l.Tag, unit.FormatPercent(l.Level), unit.FormatLength(l.Height, s.Setup.Feet) + " high"} {
						if !strings.Contains(words, want) {
							t.Errorf("light %s says %q, without %q", l.Name, words, want)
						}
					}
				}
				for _, r := range s.Readings.Readings {
					if r.Person != "" && !strings.HasSuffix(r.Name, ".key") && !strings.HasSuffix(r.Name, ".fill") {
						continue // not on the sheet
					}
					if strings.Contains(r.Person, ".") {
						continue // of a mark: in the list
					}
					if words := said["reading:"+r.Name]; !strings.Contains(words, "eading "+r.Name) {
						t.Errorf("reading %s says %q", r.Name, words)
					}
				}
			}
		})
	}
}

// titleOf is the title of a set-up's plan.
func titleOf(s *study.Study) string {
	title := cmp.Or(s.Setup.Title, "Lighting plan")
	if s.Setup.Name == "" {
		return title
	}
	return title + ", Set-up " + s.Setup.Name
}

// figures are those of a text, without their sign: the plan prints what the fill is under the key
// as a negative, the table as a contrast.
var figures = regexp.MustCompile(`\d[\d.]*`)

// TestTheTextHoldsWhatThePlanSays: every figure that is lettered on the plan, beside lights, grip,
// cameras, furniture, readings, throws and contours, stands in the text table too; and every light is
// there with its height, level and colour and the two distances that place it.
func TestTheTextHoldsWhatThePlanSays(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			d := drawnSample(t, name)
			text := strings.Join(strings.Fields(read(t, filepath.Join(d.folder, "a.txt"))), " ")
			held := map[string]bool{}
			for _, s := range figures.FindAllString(text, -1) {
				held[strings.Trim(s, ".")] = true
			}
			for _, base := range d.pages {
				for _, s := range lettered(t, base+".svg") {
					for _, figure := range figures.FindAllString(s, -1) {
						if figure = strings.Trim(figure, "."); !held[figure] {
							t.Errorf("%s: %q is not in the text, of %q", filepath.Base(base), figure, s)
						}
					}
				}
			}
			lists := strings.Split(text, "LIGHTS")[1:]
			for _, s := range litSample(t, name) {
				if len(s.Setup.Lights) == 0 {
					continue
				}
				if len(lists) == 0 {
					t.Fatalf("%s has no list of lights", titleOf(s))
				}
				list := lists[0]
				lists = lists[1:]
				if want := headOf(s); !strings.HasPrefix(list, want) {
					t.Errorf("the lights of %s do not stand under %q", titleOf(s), want)
				}
				for i := range s.Setup.Lights {
					for _, want := range valuesOf(s, i) {
						if !strings.Contains(list, " "+want) {
							t.Errorf("light %s of %s is without %q in the text", s.Setup.Lights[i].Tag, titleOf(s), want)
						}
					}
				}
			}
			if len(lists) > 0 {
				t.Errorf("%d lists of lights are of no set-up", len(lists))
			}
		})
	}
}

// headOf is what stands over the lights of a set-up, with the units of what is under it.
func headOf(s *study.Study) string {
	if s.Setup.Feet {
		return " K % high throw"
	}
	return ", IN METRES K % high throw"
}

// valuesOf are what the text says of a light under its heads: the row of its figures, and the two distances that place it.
func valuesOf(s *study.Study, i int) []string {
	bare := func(m float64) string { return strings.TrimSuffix(unit.FormatLength(m, s.Setup.Feet), " m") }
	l := &s.Setup.Lights[i]
	kelvin := strings.TrimSuffix(unit.FormatKelvin(l.White.OnPlanck().Kelvin), " K")
	throw := "–"
	if l.Throw > 0 {
		throw = bare(l.Throw)
	}
	all := []string{strings.Join([]string{kelvin, strings.TrimSuffix(unit.FormatPercent(l.Level), " %"), bare(l.Height), throw}, " ") + " "}
	for _, d := range l.Placing {
		all = append(all, bare(d.Metres)+" from "+wallOf(s, d.From))
	}
	return all
}

// wallOf is what a tape starts from: the room of a wall is left out where no other room has a wall of that name.
func wallOf(s *study.Study, from string) string {
	room, rest, isWall := strings.Cut(from, ".")
	name, _, _ := strings.Cut(rest, ",")
	for i := range s.Setup.Rooms {
		for k := range s.Setup.Rooms[i].Walls {
			if isWall && s.Setup.Rooms[i].Walls[k].Name == name && s.Setup.Rooms[i].Name != room {
				return from
			}
		}
	}
	if isWall {
		return rest
	}
	return from
}

// lettered are the texts of a drawing's plan: of all layers but the collar, which is the last.
func lettered(t *testing.T, path string) (all []string) {
	t.Helper()
	plan, _, _ := strings.Cut(read(t, path), `<g id="layer-collar"`)
	for _, m := range regexp.MustCompile(`(?s)<text[^>]*>([^<]*)</text>`).FindAllStringSubmatch(plan, -1) {
		if !strings.Contains(m[0], `aria-hidden`) {
			all = append(all, html.UnescapeString(m[1]))
		}
	}
	return all
}

// TestPacketIsReadInOrder: the structure of a packet has all lettering of each page once: what stands in lists before what is lettered on the
// drawing, a cover from its title to its contents.
func TestPacketIsReadInOrder(t *testing.T) {
	pdfinfo := tool(t, "pdfinfo")
	d := drawnSample(t, "two-sizes")
	file := filepath.Join(d.folder, "a.pdf")
	if said := execute(t, "LC_ALL=C", pdfinfo, file); !strings.Contains(string(said), "Tagged:          yes") {
		t.Errorf("the file is not tagged:\n%s", said)
	}
	pages := strings.Split(string(execute(t, "LC_ALL=C", pdfinfo, "-struct-text", file)), "  Sect\n")[1:]
	if len(pages) != len(d.pages) {
		t.Fatalf("%d pages have a structure, of %d", len(pages), len(d.pages))
	}
	for i, base := range d.pages {
		lines := strings.Count(pages[i], "\n")
		if want := strings.Count(read(t, base+".svg"), "<text "); 10*lines < 9*want { // one that is lettered over itself counts once
			t.Errorf("page %d: %d lines of %d are in its structure", i+1, lines, want)
		}
	}
	for page, order := range map[int][]string{0: {"The boarding house parlour", "Contents", "Set-up wide", "Matching", "Contacts", "Not checked"}, 1: {"The boarding house parlour", "Set-up wide", "At the faces", "Lights", "parlour\""}} {
		rest := pages[page]
		for _, words := range order {
			_, after, found := strings.Cut(rest, words)
			if !found {
				t.Errorf("page %d: %q does not come in its place:\n%s", page+1, words, pages[page])
				break
			}
			rest = after
		}
	}
}
