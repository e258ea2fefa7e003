// Package page writes a document as one web page that needs nothing from outside itself: each
// sheet as true SVG, a switch for each layer, a tab for each sheet. Without JavaScript everything
// is shown, one sheet below the other.
package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"

	"scrimshaw/render/font"
	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
)

//go:embed page.css
var style string

//go:embed page.js
var script string

//go:embed page.html
var markup string

// Options say how a page is written. The zero value is ready to use.
type Options struct {
	Font *font.Family // that the sheets were laid out with; nil: the default
}

// sheet is one page of the document, ready for the template.
type sheet struct {
	ID, Title, Short string
	SVG              template.HTML
}

// layer is one switch.
type layer struct{ ID, Title string }

// view is what the template is filled with.
type view struct {
	Title, Language, Policy string
	Sheets                  []sheet
	Layers                  []layer
	Style                   template.CSS
	Script                  template.JS
}

// Write writes a document as one HTML page. Labels are escaped; the page's own policy forbids it
// to load or send anything.
func Write(w io.Writer, doc ink.Document, opts Options) error {
	if len(doc.Pages) == 0 {
		return fmt.Errorf("page: a document without pages")
	}
	page, err := template.New("page").Parse(markup)
	if err != nil {
		return fmt.Errorf("page: %w", err)
	}
	v := view{Title: ink.Clean(doc.Title), Language: ink.Clean(doc.Language), Policy: policy(),
		Style: template.CSS(style), Script: template.JS(script)}
	if v.Language == "" {
		v.Language = "en"
	}
	for i := range doc.Pages {
		s, err := sheetOf(doc, i, opts)
		if err != nil {
			return err
		}
		v.Sheets = append(v.Sheets, s)
	}
	v.Layers = layersOf(doc)
	var b bytes.Buffer
	if err := page.Execute(&b, v); err != nil {
		return fmt.Errorf("page: %w", err)
	}
	_, err = w.Write(b.Bytes())
	return err
}

// sheetOf draws one page. Its ids get a prefix, so that several can stand in one file.
func sheetOf(doc ink.Document, i int, opts Options) (sheet, error) {
	id := fmt.Sprintf("sheet-%d", i+1)
	var b bytes.Buffer
	if err := svg.Write(&b, doc, i, svg.Options{Font: opts.Font, Prefix: id + "-"}); err != nil {
		return sheet{}, fmt.Errorf("page: %w", err)
	}
	title := ink.Clean(doc.Pages[i].Title)
	if title == "" {
		title = fmt.Sprintf("Sheet %d", i+1)
	}
	return sheet{ID: id, Title: title, Short: fmt.Sprint(i + 1), SVG: template.HTML(b.String())}, nil
}

// layersOf lists the layers that any page uses, in drawing order.
func layersOf(doc ink.Document) []layer {
	used := map[ink.Layer]bool{}
	for i := range doc.Pages {
		for _, s := range doc.Pages[i].Strata() {
			used[s.Layer] = true
		}
	}
	var all []layer
	for _, l := range ink.Layers() {
		if used[l] {
			all = append(all, layer{ID: l.String(), Title: l.Title()})
		}
	}
	return all
}

// policy allows the page its own style and script, by their hashes, and pictures within it; all
// else is refused by the browser.
func policy() string {
	return fmt.Sprintf("default-src 'none'; img-src data:; style-src '%s'; script-src '%s'; base-uri 'none'; form-action 'none'",
		hash(style), hash(script))
}

// hash is a source expression of Content Security Policy level 2.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
