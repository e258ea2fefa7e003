// Package page writes a document as one web page that needs nothing from outside itself: each
// sheet as true SVG, a tab for each sheet, a switch for each layer, paper of the right size in
// print.
//
// The page has no script. Tabs and switches are links and boxes that the style sheet listens to,
// so that they also work in the previews of mail programs, which run none; where a browser does
// not know the selectors, everything is shown.
package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"

	"scrimshaw/render/font"
	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
)

//go:embed page.css
var style string

//go:embed page.html
var markup string

// Options say how a page is written. The zero value is ready to use.
type Options struct {
	Font *font.Family // that the sheets were laid out with; nil: the default
	// Phone is what a narrow screen shows in place of the sheets; none: the plan of each sheet above it.
	Phone []Column
}

// Column is a part of the document as a narrow screen shows it: a drawing as wide as the screen, and cards that wrap.
type Column struct {
	Heading string
	Lines   []string
	Drawing ink.Page
	Cards   []Card

	SVG template.HTML // filled in
}

// Card is a list under a heading.
type Card struct {
	Title         string
	Alarm         bool
	Words, Points []string
	Rows          []Row
}

// Row is an entry of a list, with its figures and notes.
type Row struct {
	Revised bool // not as on the sheet before
	Struck  bool // its name holds figures that are struck through
	Name    string
	Figures []Figure
	Notes   []string
}

// Figure is a value, and what it is of.
type Figure struct {
	Of, Value string
	Struck    bool
}

// view is what the template is filled with.
type view struct {
	Title, Language, Policy string
	Families                string // of lettering
	Sheets                  []sheet
	Phone                   []Column
	PhoneTab                string // what those are called among the sheets
	Layers                  []ink.Layer
	Style                   template.CSS
}

// sheet is one page of the document, ready for the template.
type sheet struct {
	ID, Title     string
	Tab           string  // its title without the document's
	Width, Height float64 // mm
	SVG           template.HTML
	Plan          string   // the view box of what is drawn to scale, "" where nothing is
	Layers        []string // the ids of its layers
}

// Write writes a document as one HTML page. Labels are escaped, and the page's own policy forbids
// it to run, load or send anything.
func Write(w io.Writer, doc ink.Document, opts Options) error {
	if len(doc.Pages) == 0 {
		return fmt.Errorf("page: a document without pages")
	}
	if opts.Font == nil {
		var err error
		if opts.Font, err = font.Default(); err != nil {
			return fmt.Errorf("page: %w", err)
		}
	}
	v := view{Title: ink.Clean(doc.Title), Language: ink.Clean(doc.Language), Layers: layers(&doc), Families: svg.Families(opts.Font)}
	numbers := numbered(&doc)
	for i := range doc.Pages {
		s, err := newSheet(doc, i, numbers[i], opts)
		if err != nil {
			return fmt.Errorf("page: %w", err)
		}
		v.Sheets = append(v.Sheets, s)
	}
	for i, c := range opts.Phone {
		own := ink.Document{Language: doc.Language, Pages: []ink.Page{c.Drawing}}
		var b bytes.Buffer
		if err := svg.Write(&b, own, 0, svg.Options{Font: opts.Font, Prefix: fmt.Sprintf("phone-%d-", i+1)}); err != nil {
			return fmt.Errorf("page: %w", err)
		}
		c.SVG = template.HTML(b.String())
		v.Phone = append(v.Phone, c)
	}
	if v.Title == "" {
		v.Title = v.Sheets[0].Title
	}
	if v.Language == "" {
		v.Language = "en"
	}
	v.PhoneTab = phoneTab(len(v.Phone))
	css := style + rules(v.Sheets, v.Layers, len(v.Phone) > 0) + dark(&doc)
	v.Style, v.Policy = template.CSS(css), policy(css)
	page, err := template.New("page").Parse(markup)
	if err != nil {
		return fmt.Errorf("page: %w", err)
	}
	var b bytes.Buffer
	if err := page.Execute(&b, v); err != nil {
		return fmt.Errorf("page: %w", err)
	}
	_, err = w.Write(b.Bytes())
	return err
}

// phoneTab is what a number of set-ups for a narrow screen are called among the sheets.
func phoneTab(columns int) string {
	if columns == 1 {
		return "Plan for a phone"
	}
	return "Set-ups for a phone"
}

// numbered gives pages of one title each a number behind it, and returns those: "", or ", 2 of 3". Who chooses one has to know which.
func numbered(doc *ink.Document) (numbers []string) {
	doc.Pages = slices.Clone(doc.Pages)
	of, seen := map[string]int{}, map[string]int{}
	for i := range doc.Pages {
		of[doc.Pages[i].Title]++
	}
	for i := range doc.Pages {
		title, number := &doc.Pages[i].Title, ""
		if seen[*title]++; *title != "" && of[*title] > 1 {
			number = fmt.Sprintf(", %d of %d", seen[*title], of[*title])
		}
		numbers = append(numbers, number)
		*title += number
	}
	return numbers
}

// newSheet draws one page, which has a number behind its title where that needs one. Its ids get a prefix, so that several can stand in one file.
func newSheet(doc ink.Document, i int, number string, opts Options) (sheet, error) {
	p := &doc.Pages[i]
	s := sheet{ID: sheetID(i), Title: ink.Clean(p.Title), Width: p.Width, Height: p.Height}
	if s.Title == "" {
		s.Title = fmt.Sprintf("Sheet %d", i+1)
	}
	s.Tab = tab(strings.TrimSuffix(s.Title, number), ink.Clean(doc.Title)) + number
	var b bytes.Buffer
	if err := svg.Write(&b, doc, i, svg.Options{Font: opts.Font, Prefix: s.ID + "-", Follow: follow(&doc, i)}); err != nil {
		return sheet{}, err
	}
	s.SVG = template.HTML(b.String())
	if len(opts.Phone) == 0 {
		s.focus(p, opts.Font)
	}
	return s, nil
}

// follow says where links of a page lead to: to the tab of the page of that name.
func follow(doc *ink.Document, from int) func(name string) (address, title string) {
	return func(name string) (address, title string) {
		to := slices.IndexFunc(doc.Pages, func(p ink.Page) bool { return p.Name == name && name != "" })
		if to < 0 || to == from {
			return "", ""
		}
		return "#" + sheetID(to), ink.Clean(doc.Pages[to].Title)
	}
}

// sheetID is the id of a page, from 0.
func sheetID(i int) string { return fmt.Sprintf("sheet-%d", i+1) }

// focus finds the plan on a page: all that is drawn on other layers than the collar's.
func (s *sheet) focus(p *ink.Page, family *font.Family) {
	const round = 3 // mm
	var all ink.Extent
	p = p.Unfolded()
	for i := range p.Items {
		it := &p.Items[i]
		if b := it.Bounds(family); it.Layer != ink.Collar && b.Box.Max.X-b.Box.Min.X < p.Width { // not the ground of a dark look
			all.Join(b)
		}
	}
	for _, stratum := range p.Strata() {
		if stratum.Layer != ink.Collar {
			s.Layers = append(s.Layers, fmt.Sprintf("%s-layer-%s", s.ID, stratum.Layer))
		}
	}
	if len(s.Layers) == 0 || all.Empty() {
		return
	}
	b := all.Grown(round).Box
	left, low := max(b.Min.X, 0), max(b.Min.Y, 0)
	right, high := min(b.Max.X, p.Width), min(b.Max.Y, p.Height)
	var box []byte
	for i, v := range [...]float64{left, p.Height - high, right - left, high - low} {
		if i > 0 {
			box = append(box, ' ')
		}
		box = ink.AppendNumber(box, v, 2)
	}
	s.Plan = string(box)
}

// tab is what a page is called among others of one document: what its title says more than the
// document's.
func tab(title, document string) string {
	if title == document {
		return "Plan"
	}
	own, ok := strings.CutPrefix(title, document+", ")
	if !ok || own == "" {
		return title
	}
	return ink.Capital(own)
}

// layers lists those that any page uses, in drawing order.
func layers(doc *ink.Document) []ink.Layer {
	var used []ink.Layer
	for i := range doc.Pages {
		for _, s := range doc.Pages[i].Strata() {
			used = append(used, s.Layer)
		}
	}
	slices.Sort(used)
	return slices.Compact(used)
}

// Which pages are open. A link within a drawing leads to a sheet as a tab does.
const (
	noneChosen   = "body:not(:has(section:target, main:target))"
	narrowScreen = "screen and (max-width: 45rem)"
)

// rules is the part of the style sheet that depends on the document: the size of each sheet, its
// tab, and what the switches hide. With columns for a narrow screen that shows these until a sheet is chosen.
func rules(sheets []sheet, layers []ink.Layer, phone bool) string {
	var css []byte
	for i, s := range sheets {
		width, height := string(ink.AppendNumber(nil, s.Width, 2)), string(ink.AppendNumber(nil, s.Height, 2))
		css = fmt.Appendf(css, "@page %s { size: %smm %smm; margin: 0; }\n", s.ID, width, height)
		css = fmt.Appendf(css, "#%s { page: %s; --width: %smm; --height: %smm; }\n", s.ID, s.ID, width, height)
		css = open(css, "body:has(#"+s.ID+":target)", s.ID)
		switch first := open(nil, noneChosen, s.ID); {
		case i == 0 && phone:
			css = fmt.Appendf(css, "@media not %s {\n%s}\n", narrowScreen, first)
			css = fmt.Appendf(css, "@media %s {\n%s}\n", narrowScreen, open(nil, noneChosen, "phone"))
		case i == 0:
			css = append(css, first...)
		}
	}
	css = open(css, "body:has(#all:target)", "all")
	for _, l := range layers {
		css = fmt.Appendf(css, "body:has(#layer-%s:not(:checked)) [data-layer=\"%s\"] { display: none; }\n", l, l)
	}
	return string(css)
}

// open marks a tab, and says its name in the line that the tabs are folded into, while something holds.
func open(css []byte, while, id string) []byte {
	css = fmt.Appendf(css, "%s nav a[href=\"#%s\"] { background: #18181c; color: #fff; }\n", while, id)
	return fmt.Appendf(css, "%s .fold .at-%s { display: inline; }\n", while, id)
}

// policy allows the page its own style, by its hash, and pictures within it; all else is refused by
// the browser (Content Security Policy level 2).
func policy(css string) string {
	sum := sha256.Sum256([]byte(css))
	return "default-src 'none'; img-src data:; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; base-uri 'none'; form-action 'none'"
}
