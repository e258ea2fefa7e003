//go:build compare

package files_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// TestAgainstAnotherReader compares with the reader that .ci/compare-lm63 installs. That one divides by the
// greatest intensity, ignores tilt and extrapolates, so that only what lies within the measured angles
// is held to it; it knows type C alone.
func TestAgainstAnotherReader(t *testing.T) {
	peer := os.Getenv("SCRIMSHAW_PEER")
	if peer == "" {
		t.Fatal("run this by .ci/compare-lm63")
	}
	const number = 200
	folder := t.TempDir()
	g := generator{rand.New(rand.NewPCG(2026, 63))}
	made := make([]*files.LM63, number)
	for i := range made {
		made[i] = forPeer(g)
		text, err := made[i].Bytes()
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%03d.ies", i)), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if out, err := exec.Command("node", filepath.Join(peer, "peer.js"), folder).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	worst, compared := 0.0, 0
	for i := range made {
		name := filepath.Join(folder, fmt.Sprintf("%03d.ies", i))
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		raw, err := os.ReadFile(name + ".f32")
		if err != nil {
			t.Fatal(err)
		}
		other := make([]float32, len(raw)/4)
		if err := binary.Read(bytes.NewReader(raw), binary.LittleEndian, other); err != nil {
			t.Fatal(err)
		}
		d, _ := read(t, "x.ies", string(text))
		difference, n := apart(t, d.(*files.LM63), other)
		worst, compared = math.Max(worst, difference), compared+n
		if difference > 1e-7 { // the other reader gives 32-bit numbers
			t.Errorf("file %d: %g apart\n%s", i, difference, text)
		}
	}
	t.Logf("%d files, %d directions, at most %.2g of the peak apart", number, compared, worst)
}

// forPeer makes a file of type C without words that the other reader takes for its TILT line.
func forPeer(g generator) *files.LM63 {
	for {
		l := g.lm63()
		if l.System != photometry.TypeC {
			continue
		}
		l.Keywords = []files.Keyword{{Key: "TEST", Text: "generated"}}
		if last := len(l.Horizontal) - 1; last > 3 && l.Horizontal[last] == 360 && l.Horizontal[last-1] > 300 && g.IntN(2) == 0 {
			open := *l // the last plane left out, as some files have it
			open.Horizontal, open.Candela = l.Horizontal[:last], l.Candela[:last]
			if _, err := open.Source(); err == nil {
				return &open
			}
		}
		return l
	}
}

// apart is the greatest difference within the measured range, in parts of the peak.
func apart(t *testing.T, l *files.LM63, other []float32) (worst float64, n int) {
	s, err := l.Source()
	if err != nil {
		t.Fatal(err)
	}
	peak := s.Peak()
	first, last := l.Vertical[0], l.Vertical[len(l.Vertical)-1]
	for c := range len(other) / 180 {
		for i := range 180 {
			gamma := float64(i) * 180 / 179
			if gamma < first || gamma > last || gamma == 0 || gamma == 180 {
				continue // at the poles no angle round them is defined
			}
			got := s.Intensity(toward(gamma, l.Horizontal[0]+float64(c))) / peak
			worst = math.Max(worst, math.Abs(got-float64(other[c*180+i])))
			n++
		}
	}
	return worst, n
}
