package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/page"
	"scrimshaw/symbols/ink"
)

// pageFile writes a web page of a day of a few pages, two of one name, the first of which leads to the third, with columns for a narrow screen or without.
func pageFile(t *testing.T, phone bool) string {
	t.Helper()
	doc := ink.Document{Title: "Day", Language: "en"}
	for _, title := range []string{"Day, cover", "Day, set-up wide", "Day, lists, Lamps", "Day, lists, Lamps"} {
		doc.Pages = append(doc.Pages, ink.Page{Title: title, Width: 297, Height: 210})
	}
	doc.Pages[0].Links = []ink.Link{{Min: r2.Vec{X: 20, Y: 150}, Max: r2.Vec{X: 120, Y: 190}, To: "lamps"}}
	doc.Pages[2].Name = "lamps"
	var o page.Options
	if phone {
		o.Phone = []page.Column{{Heading: "Set-up wide", Drawing: doc.Pages[1]}, {Heading: "Set-up close", Drawing: doc.Pages[1]}}
	}
	var b bytes.Buffer
	if err := page.Write(&b, doc, o); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "day.html")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// What a reader sees of a page: which tabs, which of them is marked, what the line says that they are folded into, and which parts are shown.
const (
	seenJS  = `[...document.querySelectorAll("QUERY")].filter(e => e.checkVisibility()).map(e => e.id || e.innerText.trim())`
	markJS  = `[...document.querySelectorAll("nav a")].filter(e => getComputedStyle(e).backgroundColor == "rgb(24, 24, 28)").map(e => e.innerText.trim())`
	foldJS  = `document.querySelector(".fold").checkVisibility() ? document.querySelector(".fold summary").innerText.trim() : ""`
	focusJS = `document.activeElement.closest(".fold") != null`
)

// seen are the parts of a page that are shown.
func seen(query string) string { return strings.Replace(seenJS, "QUERY", query, 1) }

// TestTabsOnANarrowScreen: one line names what is open, opens by a key, and closes; what is marked, what the line says and what is shown agree, in a
// narrow window and in a wide one, before anything is chosen and after. The page has no script: what runs here is the test's own.
func TestTabsOnANarrowScreen(t *testing.T) {
	w := openWindow(t, tool(t, "chromium", "chromium-browser", "google-chrome"), typefaces(t))
	ctx, stop := context.WithTimeout(w.ctx, 12*time.Second)
	t.Cleanup(stop)
	tabs := []string{"Cover", "Set-up wide", "Lists, Lamps, 1 of 2", "Lists, Lamps, 2 of 2", "All"}
	cases := []struct {
		phone        bool
		wide         int64
		at           string
		mark, fold   string
		parts, stand []string // shown, and tabs
	}{
		{true, 390, "", "", "Set-ups for a phone", []string{"phone"}, nil},
		{true, 390, "#sheet-1", "", "Cover", []string{"sheet-1"}, nil},
		{true, 390, "#sheet-4", "", "Lists, Lamps, 2 of 2", []string{"sheet-4"}, nil},
		{true, 390, "#phone", "", "Set-ups for a phone", []string{"phone"}, nil},
		{true, 390, "#all", "", "All", []string{"sheet-1", "sheet-2", "sheet-3", "sheet-4"}, nil},
		{false, 390, "", "", "Cover", []string{"sheet-1"}, nil},
		{true, 1400, "", "Cover", "", []string{"sheet-1"}, tabs},
		{true, 1400, "#phone", "Cover", "", []string{"sheet-1"}, tabs},
		{true, 1400, "#sheet-3", tabs[2], "", []string{"sheet-3"}, tabs},
		{false, 1400, "#all", "All", "", []string{"sheet-1", "sheet-2", "sheet-3", "sheet-4"}, tabs},
	}
	files := map[bool]string{true: pageFile(t, true), false: pageFile(t, false)}
	for _, c := range cases {
		var mark, parts, stand []string
		var fold string
		err := chromedp.Run(ctx, chromedp.EmulateViewport(c.wide, 844), chromedp.Navigate("about:blank"), chromedp.Navigate("file://"+files[c.phone]+c.at),
			chromedp.Evaluate(seen("section, .phone"), &parts), chromedp.Evaluate(seen("nav a"), &stand), chromedp.Evaluate(markJS, &mark), chromedp.Evaluate(foldJS, &fold))
		if err != nil {
			t.Fatalf("%d px, %q: %v", c.wide, c.at, err)
		}
		if !slices.Equal(parts, c.parts) || !slices.Equal(stand, c.stand) || fold != c.fold || c.mark != "" && !slices.Equal(mark, []string{c.mark}) {
			t.Errorf("%d px, %q: %q is shown of the tabs %q, marked %q, the line says %q", c.wide, c.at, parts, stand, mark, fold)
		}
	}
	var focused bool
	var mark, open, parts, folded []string
	var fold string
	err := chromedp.Run(ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate("about:blank"), chromedp.Navigate("file://"+files[true]),
		chromedp.KeyEvent(kb.Tab), chromedp.Evaluate(focusJS, &focused), chromedp.KeyEvent(kb.Enter), chromedp.Evaluate(seen("nav a"), &open), chromedp.Evaluate(markJS, &mark),
		chromedp.KeyEvent(kb.Tab+kb.Tab+kb.Enter), chromedp.Evaluate(seen("section, .phone"), &parts), chromedp.Evaluate(foldJS, &fold),
		chromedp.Evaluate(`document.querySelector(".fold summary").focus()`, nil), chromedp.KeyEvent(kb.Enter), chromedp.Evaluate(seen("nav a"), &folded))
	if err != nil {
		t.Fatal(err)
	}
	if !focused || !slices.Equal(open, append([]string{"Set-ups for a phone"}, tabs...)) || !slices.Equal(mark, open[:1]) {
		t.Errorf("the keys open %q with %q marked, focus in the line %v", open, mark, focused)
	}
	if !slices.Equal(parts, []string{"sheet-1"}) || fold != "Cover" || len(folded) > 0 {
		t.Errorf("the keys choose %q, the line says %q, and closed it has %q", parts, fold, folded)
	}
}

// TestLinksAreFollowed: who clicks into the rectangle of a link on a sheet sees the page that it leads to, by its tab, and beside it nothing happens; by a key,
// too, in a narrow window and in a wide one.
func TestLinksAreFollowed(t *testing.T) {
	w := openWindow(t, tool(t, "chromium", "chromium-browser", "google-chrome"), typefaces(t))
	ctx, stop := context.WithTimeout(w.ctx, 12*time.Second)
	t.Cleanup(stop)
	const focusLink = `document.querySelector("#sheet-1 svg a").focus()`
	on := func(x, y float64) chromedp.Action { // of the sheet, mm from its upper left
		return chromedp.ActionFunc(func(ctx context.Context) error {
			var at [2]float64
			err := chromedp.Evaluate(fmt.Sprintf(`(() => { const b = document.querySelector("#sheet-1 svg").getBoundingClientRect();
				return [b.left + %g / 297 * b.width, b.top + %g / 210 * b.height] })()`, x, y), &at).Do(ctx)
			if err != nil {
				return err
			}
			return chromedp.MouseClickXY(at[0], at[1]).Do(ctx)
		})
	}
	file := pageFile(t, true)
	for _, wide := range []int64{390, 1400} {
		for _, c := range []struct {
			act  chromedp.Action
			want string
		}{
			{on(70, 40), "sheet-3"}, {on(21, 21), "sheet-3"}, {on(119, 59), "sheet-3"}, {on(122, 40), "sheet-1"}, {on(70, 62), "sheet-1"},
			{chromedp.Tasks{chromedp.Evaluate(focusLink, nil), chromedp.KeyEvent(kb.Enter)}, "sheet-3"},
		} {
			var parts []string
			err := chromedp.Run(ctx, chromedp.EmulateViewport(wide, 844), chromedp.Navigate("about:blank"), chromedp.Navigate("file://"+file+"#sheet-1"), c.act,
				chromedp.Evaluate(seen("section, .phone"), &parts))
			if err != nil || !slices.Equal(parts, []string{c.want}) {
				t.Errorf("%d px: %q is shown, want %s: %v", wide, parts, c.want, err)
			}
		}
	}
}
