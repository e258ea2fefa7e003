package frame_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// Somebody out of the picture is a thing like a stand: they are seen past the set, they hide nothing, and the offered move clears them. Who is
// meant for one camera alone is judged by the others.
func TestPeopleOutOfThePicture(t *testing.T) {
	const scene = "people: {ada: {at: [0, 4], faces: 180}, reader: {at: [0.5, 2.5], faces: ada, seen: SEEN}}\n" +
		"cameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 35 mm}}\n" +
		"grip: {f: {flag: [0.2, 0.2], at: [0.62, 3.2], height: 1.5, faces: 180}}\n"
	for seen, shows := range map[string]bool{"false": true, "true": false, "A": false} {
		s := resolvedText(t, scene, "SEEN", seen)
		all := frame.Judge(s)
		reader, flag := sightOf(all, frame.Person, "reader"), sightOf(all, frame.Grip, "f")
		if (reader != nil && reader.Shows()) != shows {
			t.Errorf("seen: %s shows %+v", seen, reader)
		}
		if flag.Hidden == shows {
			t.Errorf("behind somebody with seen: %s the flag is %+v", seen, flag)
		}
		if !shows {
			continue
		}
		b := newBrute(s, &s.Cameras[0])
		if want := b.share(frame.BodiesOf(s, frame.Person, "reader", "A")); !(math.Abs(reader.Share-want) <= shareSlack*want) || want < 0.01 {
			t.Errorf("the reader takes %.5f of the frame, and by rays %.5f", reader.Share, want)
		}
		moved := resolvedText(t, scene, "SEEN", seen, "[0.5, 2.5]", place(0.5+reader.Move.By.X, 2.5+reader.Move.By.Y))
		if is := sightOf(frame.Judge(moved), frame.Person, "reader"); is.Shows() {
			t.Errorf("after %+v the reader takes %.5f", reader.Move, is.Share)
		}
	}
}

// A camera on a track in a mirrored scene sees the mirror image: as much, as far along.
func TestMirroredTracks(t *testing.T) {
	const scene = "rooms: {den: {at: [-4, 0], size: [8, 6]}}\nfurniture: {chest: {box: [1, 0.5, 1.4], at: [AT1, 3]}}\n" +
		"people: {ada: {at: [AT2, 5], faces: 180}}\ncameras: {A: {track: [[AT3, 1], [AT4, 1.6]], height: 1.4, lens: 28 mm, looks: ada}}\n" +
		"grip: {f: {flag: [0.8, 0.8], at: [AT5, 4], height: 1.4, faces: 180, mount: hand}, g: {flag: [0.8, 0.8], at: [AT6, 3.4], height: 1.4, faces: 180, mount: hand}}\n"
	at := [6]float64{0.8, 0.3, -2.5, 1.5, 1.9, -0.9}
	one := frame.Judge(resolvedText(t, scene, numbered(at, 1)...))
	other := frame.Judge(resolvedText(t, scene, numbered(at, -1)...))
	shown := 0
	for i := range one {
		a, b := &one[i], &other[i]
		if a.Shows() != b.Shows() || !(math.Abs(a.Share-b.Share) <= 1e-4) || !(math.Abs(a.Track.Worst-b.Track.Worst) <= 0.01) || !(math.Abs(a.Track.From-b.Track.From) <= 0.01) || !(math.Abs(a.Track.To-b.Track.To) <= 0.01) {
			t.Errorf("%s is %+v %+v, and mirrored %+v %+v", a.Name, a, a.Track, b, b.Track)
		}
		if a.Shows() {
			shown++
		}
		if (a.Move == nil) != (b.Move == nil) || a.Move != nil && !(math.Abs(a.Move.Least-b.Move.Least) <= 0.01) {
			t.Errorf("%s is moved %+v, and mirrored %+v", a.Name, a.Move, b.Move)
		}
	}
	if shown < 2 {
		t.Errorf("%d things show: that tries too little", shown)
	}
}

// resolvedText resolves a scene in which words are replaced by others, in pairs.
func resolvedText(t *testing.T, text string, pairs ...string) *plan.Setup {
	t.Helper()
	text = strings.NewReplacer(pairs...).Replace(text)
	s := laidOut(t, &staged{set: text})
	if s == nil {
		t.Fatalf("a fault in\n%s", text)
	}
	return s
}

// place writes a place.
func place(x, y float64) string { return fmt.Sprintf("[%.6f, %.6f]", x, y) }

// numbered gives the words AT1, AT2 … their figures, each times a sign.
func numbered(figures [6]float64, sign float64) (pairs []string) {
	for i, f := range figures {
		pairs = append(pairs, fmt.Sprintf("AT%d", i+1), fmt.Sprint(sign*f))
	}
	return pairs
}
