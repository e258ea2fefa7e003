package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"github.com/chromedp/chromedp"
)

// tool finds the first of some programs. Where changes are checked it may not be missing.
func tool(t *testing.T, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatalf("%s is needed", names[0])
	}
	t.Skipf("%s is not installed", names[0])
	return ""
}

// typefaces puts the typeface of the sheets where programs find it, and no other, and returns the
// setting that tells them.
func typefaces(t *testing.T) (setting string) {
	t.Helper()
	dir := t.TempDir()
	for name, data := range map[string][]byte{
		"regular.ttf": liberationsansregular.TTF, "bold.ttf": liberationsansbold.TTF,
		"fonts.conf": fmt.Appendf(nil, `<?xml version="1.0"?><fontconfig><dir>%s</dir><cachedir>%s/cache</cachedir></fontconfig>`, dir, dir),
	} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return "FONTCONFIG_FILE=" + filepath.Join(dir, "fonts.conf")
}

// execute runs a program with a setting and returns what it prints.
func execute(t *testing.T, setting, path string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(path, args...)
	cmd.Env = append(os.Environ(), setting)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", filepath.Base(path), err, out)
	}
	return out
}

// window is a browser without a screen.
type window struct{ ctx context.Context }

func openWindow(t *testing.T, path, setting string) window {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.Env(setting), chromedp.NoSandbox, chromedp.UserDataDir(profileFolder(t)),
		chromedp.Flag("font-render-hinting", "none"), chromedp.Flag("disable-lcd-text", true))
	allocated, end := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(end)
	ctx, shut := chromedp.NewContext(allocated)
	t.Cleanup(shut)
	if err := chromedp.Run(ctx); err != nil {
		t.Fatalf("%s does not start: %v", path, err)
	}
	return window{ctx}
}

// shot is a drawing as the browser shows it at a size, pixels.
func (w window) shot(t *testing.T, svg string, size image.Point) image.Image {
	t.Helper()
	page := svg + ".html"
	html := fmt.Sprintf(`<!doctype html><body style="margin:0;background:#fff"><img alt="" src=%q style="display:block;width:%dpx;height:%dpx">`,
		filepath.Base(svg), size.X, size.Y)
	if err := os.WriteFile(page, []byte(html), 0o600); err != nil {
		t.Fatal(err)
	}
	var shot []byte
	err := chromedp.Run(w.ctx,
		chromedp.EmulateViewport(int64(size.X), int64(size.Y)),
		chromedp.Navigate("file://"+page),
		chromedp.CaptureScreenshot(&shot))
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// profileFolder is a folder for what a browser keeps. A browser that ends may still write there as the test does, which is no fault of a page: what is
// left is let be.
func profileFolder(t *testing.T) string {
	t.Helper()
	folder, err := os.MkdirTemp("", "browser")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(folder) })
	return folder
}
