package main

import (
	"encoding/json"
	"encoding/xml"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scrimshaw/samples"
	"scrimshaw/symbols/ink"
)

// TestPDFSpeaks reads every sample's PDF with a program that knows nothing of this one (qpdf): its
// language and title, a bookmark a page in order, and the layers by the names that viewers show.
func TestPDFSpeaks(t *testing.T) {
	qpdf := tool(t, "qpdf")
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			var titles []string
			for _, base := range drawnPages(t, dir, []string{name}) {
				titles = append(titles, svgOf(t, base+".svg").Title)
			}
			file := readPDF(t, execute(t, "LC_ALL=C", qpdf, "--json=2", filepath.Join(dir, "a.pdf")))
			if got := file.catalog["/Lang"]; got != "u:en-GB" {
				t.Errorf("the language is %v", got)
			}
			if title, _, _ := strings.Cut(titles[0], ", Set-up"); file.info["/Title"] != "u:"+title {
				t.Errorf("the title is %v, want %s", file.info["/Title"], title)
			}
			if !slices.Equal(file.bookmarks, titles) {
				t.Errorf("the bookmarks are %q, want those of the pages, %q", file.bookmarks, titles)
			}
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

// pdfFile is what a viewer says about a file.
type pdfFile struct {
	catalog, info     map[string]any
	bookmarks, layers []string
}

// readPDF reads what qpdf prints: the outline, and the objects, strings marked by "u:".
func readPDF(t *testing.T, printed []byte) (f pdfFile) {
	t.Helper()
	var said struct {
		Outlines []struct{ Title string }
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
	for _, o := range said.Outlines {
		f.bookmarks = append(f.bookmarks, o.Title)
	}
	properties, _ := f.catalog["/OCProperties"].(map[string]any)
	groups, _ := properties["/OCGs"].([]any)
	for _, g := range groups {
		name, _ := read(g)["/Name"].(string)
		f.layers = append(f.layers, strings.TrimPrefix(name, "u:"))
	}
	return f
}

// svgFile is what a screen reader is told of a drawing.
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
