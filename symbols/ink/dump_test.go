package ink_test

import (
	"strings"
	"testing"

	"scrimshaw/symbols/ink/specimen"
	"scrimshaw/testdata/golden"
)

func TestDump(t *testing.T) {
	page := specimen.Page()
	got := golden.Dump(&page)
	for _, want := range []string{
		"layer furniture\n    line 0.35 #1a1a1e fill #e8e2cd : M 6,70 L 22,70 L 22,86 L 6,86 Z\n",
		"line 1 #b21452 0 2 round : M 6,92 L 40,92\n",
		"\"470 lx halo\" at 70,42, 5 mm #1a1a1e on #ffffff\n",
		"\"sloped\" at 104,34, 4 mm #b21452 bold to the right turned -5.4 on #ffffff\n",
		"\"clipped text\" at 22,18, 6 mm #b21452 centred within 22,8 38,20 22,32 6,20\n",
		"image 8 by 4 in 46,8 78,24\n",
		"  light:key A thing, turned by 0 degrees.\n    fill #1a1a1e : M 91,14",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if marks := strings.Count(got, "\n    ") + strings.Count(got, "\n  "); marks < len(page.Items) {
		t.Errorf("%d lines for %d marks", marks, len(page.Items))
	}
}
