package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/meter"
)

// said is what a command says on both streams.
func said(t *testing.T, scene string, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	run(context.Background(), args, streams{in: strings.NewReader(scene), out: &out, err: &out})
	return out.String()
}

// quoting are the two pages that show what comes of the samples: the first page of all, and the samples' own.
var quoting = []string{"../../README.md", "../../samples/README.md"}

// readPages is what the two pages say, one after the other: a figure is held wherever it stands.
func readPages(t *testing.T) (all string) {
	t.Helper()
	for _, name := range quoting {
		page, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all += string(page) + "\n"
	}
	return all
}

// sentences are the pages without their line ends.
func sentences(t *testing.T) string {
	t.Helper()
	return strings.Join(strings.Fields(readPages(t)), " ")
}

// quoted is the indented block of the pages that begins with a line.
func quoted(t *testing.T, readme, first string) string {
	t.Helper()
	_, rest, found := strings.Cut(readme, "\n    "+first+"\n")
	if !found {
		t.Fatalf("no page shows a block that begins with %q", first)
	}
	block := first + "\n"
	for line := range strings.Lines(rest) {
		text, in := strings.CutPrefix(line, "    ")
		if !in {
			break
		}
		block += text
	}
	return block
}

// TestReadmeIsShort holds README.md to what somebody reads at one go: 1800 words, code and tables counted.
func TestReadmeIsShort(t *testing.T) {
	page, err := os.ReadFile(quoting[0])
	if err != nil {
		t.Fatal(err)
	}
	if words := len(strings.Fields(string(page))); words > 1800 {
		t.Errorf("README.md has %d words: what is reference belongs into the samples' page, into help or into DEVELOPERS.md", words)
	}
}

// TestReadmeLinksLeadSomewhere looks for each picture and each file that a page points to, and for the heading where it names one.
func TestReadmeLinksLeadSomewhere(t *testing.T) {
	found := 0
	for _, name := range quoting {
		page, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, link := range regexp.MustCompile(`\]\(([^)#]*)#?([^)]*)\)`).FindAllStringSubmatch(string(page), -1) {
			found++
			to, err := os.ReadFile(filepath.Join(filepath.Dir(name), link[1]))
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			heading := "\n## " + strings.ReplaceAll(link[2], "-", " ") + "\n"
			if link[2] != "" && !strings.Contains(strings.ToLower(string(to)), heading) {
				t.Errorf("%s points to %s in %s, which has no such heading", name, link[2], link[1])
			}
		}
	}
	if found < 9 {
		t.Errorf("only %d links were found", found)
	}
}

// TestReadmeShowsWhatComes holds what the pages show of scenes, of a sheet and of a fault to what the program gives.
func TestReadmeShowsWhatComes(t *testing.T) {
	readme := readPages(t)
	napkin, err := os.ReadFile("../../samples/napkin.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if got := quoted(t, readme, "scrimshaw: 1"); got != string(napkin) {
		t.Errorf("the six lines are not the napkin's:\n%s", got)
	}
	face := quoted(t, readme, "AT THE FACE OF INES")
	if drawn := said(t, "", "draw", "-o", "-", "--format", "txt"); !strings.Contains(drawn, face) {
		t.Errorf("the sheet does not say\n%s", face)
	}
	square := quoted(t, readme, "with nothing in the way, at full                  E0 = I × c / d²")
	if explained := strings.ReplaceAll(said(t, "", "explain", "ines.key"), "\n    ", "\n"); !strings.Contains(explained, square) {
		t.Errorf("explain does not say\n%s", square)
	}
	faulty := "scrimshaw: 1\nrooms:\n  den: {size: [5, 4]}\ncameras:\n  A: {at: [1, 1], lens: 35}\n"
	_, found, _ := strings.Cut(said(t, faulty, "review", "-"), "-:5:25: ")
	_, shown, _ := strings.Cut(quoted(t, readme, `scene.yaml:5:25: error: a lens needs mm, and "35" has none [missing-unit]`), "scene.yaml:5:25: ")
	if !strings.HasPrefix(found, shown) {
		t.Errorf("the fault is\n%s\nand the page shows\n%s", found, shown)
	}
}

// TestReadmeTellsTheReadings holds the figures in its sentences to the readings of the samples.
func TestReadmeTellsTheReadings(t *testing.T) {
	readme := sentences(t)
	cases := []struct {
		sample, sentence string
		readings         []string // in the table of meter, in this order
	}{
		{"map-room", "gives 87 % through the window and 7 % off the walls and furniture. On her fill side 28 % is that same head, coming back off the wall, the flag and the desk.",
			[]string{"ines.key 301 lx", "sunset through quay 87 %, 1 sunset reflected 7 %", "ines.fill 68.6 lx", "sunset reflected 28 % (map-room.right 8 %, black 7 %, desk 5 %)"}},
		{"two-sizes", "White side out, she has 124 lx there and 1.0 stops of contrast; black side out, 51 lx and 2.2 stops.",
			[]string{"set-up close", "mara.fill 124 lx", "mara: key side right, 1.0 stops", "set-up black", "mara.fill 51.0 lx", "mara: key side right, 2.2 stops"}},
		{"fitting-room", "Imre's key side has 229 lx, of which 87 % comes `by glass`, from where no stand would have fitted; his edge gets 11 % of its 466 lx off a hammered silver board, and 22 % of 530 lx once that shows its polished side.",
			[]string{"imre.key 229 lx", "day by glass through yard 87 %", "imre.edge 466 lx", "day by board through yard 11 %", "imre.edge 530 lx", "day by board through yard 22 %"}},
		{"night-log", "it gives Inga 93 % of the 47 lx on her key side, 78 % off the log and 11 % off the desk, and the lamp in the picture 7 %.",
			[]string{"inga.key 47.", "1 desk-lamp 5 %, 1 desk-lamp reflected 2 %, 2 page reflected 93 % (log 78 %, desk 11 %)"}},
		{"night-log", "it goes from 2390 K to 2160 K, and the page that passes for it goes with it, so that her key side loses 2.0 stops.",
			[]string{"cue q1, she turns the lamp down, over 3 s", "1 desk-lamp: 30 % → 10 %, 2390 K → 2160 K", "inga.key 12.1 lx T0.7+⅓ -2.8 -2.0"}},
		{"night-log", "The wall behind her lies 5.5 stops under grey, and its darkest corners sink under the 6 stops that its camera holds; the lamp is 3.0 over.",
			[]string{"station.bottom 50 % -5.5", "1 desk-lamp 21 % +3.0", "under the 6 stops that A holds: station.bottom 7.0 stops under grey"}},
		{"spot-and-flood", "The face keeps its light to a tenth of a stop, and the wall behind it has 1.2 stops less.",
			[]string{"set-up flood", "sela.key 291 lx", "wall 160 lx", "set-up spot", "sela.key 278 lx", "wall 67.8 lx"}},
		{"ferry-office", "(\"own left is camera right for A, which looks from the shadow side\")", []string{"own left is camera right for A, which looks from the shadow side"}},
		{"ironing-room", "Lena comes from the shelves to the board within half a stop of T2.8, but for one step 2 m along, through the strip of hard light, 1.7 stops over; at the mark `gap` her key side has T5.6+⅓ and 0.7 stops of contrast.",
			[]string{"lena.gap.key", "T5.6+⅓ +2.3", "1 sun through yard 78 %", "lena.gap: key side right, 0.7 stops over", "0.0 left", "+0.4 left", "-0.4 right", "-0.1 right", "2.00 m 2.85 m, 2.10 m 542 lx T4+⅔ +1.7", "+0.1 right",
				"for A: at 2.00 m: 1.7 stops over"}},
		{"ironing-room", "the key has 3.6 stops up to full, and `led-point-60-bicolour` at 40 % would give as much with the same modifier, 72 W and 1.4 kg in place of 350 W and 3.4 kg.",
			[]string{"2 key: 3.6 stops up to full,", "smallest that would do: led-point-60-bicolour at 40 %, 72 W and 1.4 kg in place of 350 W and 3.4 kg"}},
		{"ferry-office", "could come 0.55 m nearer along its line before A sees it, and would gain 1.3 stops on Signe.",
			[]string{"2 soft: 3.9 stops", "0.55 m nearer along its line before A sees it: 1.3 stops more at signe"}},
		{"press-house", "rolls the camera 1.36 m on rails. The list has the shot at both ends, from a medium shot to a medium close-up; from 0.21 m on it looks from the shadow side of Moira, and the dome toward it falls from 359 lx to 294 lx.",
			[]string{"moira.dome.A 359 lx", "moira.dome.A.end 294 lx", "medium shot,", "on a track of 1.36 m from 0.21 m on: A looks from the shadow side of moira", "medium close-up, head"}},
		{"press-house", "has 445 lx in a hole of it on the wall behind Moira, 1.4 stops over,", []string{"wall 445 lx", "+1.4"}},
	}
	for _, c := range cases {
		if !strings.Contains(readme, c.sentence) {
			t.Errorf("no page says %q", c.sentence)
		}
		rest := strings.Join(strings.Fields(said(t, "", "meter", "../../samples/"+c.sample+".yaml")), " ")
		for _, reading := range c.readings {
			_, after, found := strings.Cut(rest, reading)
			if !found {
				t.Errorf("meter of %s does not read %q where a page needs it", c.sample, reading)
			}
			rest = after
		}
	}
	const plays = "has the same colour, comes from 21° beside it, 17° higher, and looks 1.63 times as wide, so its shadows are softer. Left at its own 5600 K it would be 192 mired cooler: the nearest gels, " +
		"two sheets of 3/4 CTO, leave 9 mired and take 1.3 stops; set to 2700 K it leaves nothing and takes 0.3. What it wears comes off where other gels do better, and `explain signe.key` works it out. `review` warns over 20 mired, 0.006 Duv or 30°."
	ferry, err := os.ReadFile("../../samples/ferry-office.yaml")
	if err != nil {
		t.Fatal(err)
	}
	as := strings.Join(strings.Fields(said(t, string(ferry), "meter", "-")+said(t, strings.Replace(string(ferry), "    colour: 2700 K ", "", 1), "meter", "-")), " ")
	told := strings.Contains(readme, plays) && colour.PassMired == 20 && colour.PassDuv == 0.006 && meter.PassAngle == 30
	for _, figure := range []string{"2 soft stands for 1 lamp at signe, 72 % of the light there: the same colour from 21° beside it: 17° higher,", "1.63 times as wide: softer shadows",
		"192 mired cooler add 3/4 CTO + 3/4 CTO: leaves 9 mired warmer, takes 1.3 stops or set it to 2700 K: leaves nothing, takes 0.3 stops"} {
		told = told && strings.Contains(as, figure)
	}
	if !told {
		t.Errorf("the page tells how a light plays a lamp by\n%s\nand meter\n%s", plays, as)
	}
	notes := strings.Join(strings.Fields(said(t, "", "draw", "../../samples/four-keys.yaml", "--setup", "three-quarter", "--notes", "teach", "-o", "-", "--format", "txt")), " ")
	for _, sentence := range []string{"Without 2 fill that side falls to 18.7 lx, T0.7+⅔, 3.3 stops under the other.", "Moved 0.50 m back at its height"} {
		if !strings.Contains(readme, sentence) || !strings.Contains(notes, sentence) {
			t.Errorf("the pages and the notes of four-keys do not both say %q", sentence)
		}
	}
	const throws = "draws the throw in two legs, 2.25 m to the log and 0.69 m on to her face,"
	list := said(t, "", "draw", "../../samples/night-log.yaml", "-o", "-", "--format", "txt")
	if !strings.Contains(readme, throws) || !strings.Contains(list, " 2.25\n") || !strings.Contains(list, "off log 0.69 on to inga") {
		t.Errorf("a page says %q, and the list:\n%s", throws, list)
	}
}

// TestReadmeTellsTheList holds the figures that it gives of a list to the list.
func TestReadmeTellsTheList(t *testing.T) {
	const sentence = "the parlour above takes 7 sandbags, 2 of them to balance the head on its boom."
	if !strings.Contains(sentences(t), sentence) {
		t.Errorf("no page says %q", sentence)
	}
	kit := said(t, "", "list", "../../samples/two-sizes.yaml")
	if !strings.Contains(kit, "\n       7  sandbag 12 kg") || !strings.Contains(kit, "2 to balance 1 on its boom") {
		t.Errorf("the list is\n%s", kit)
	}
}

// TestReadmeTellsTheRevision holds what it lists of the revised napkin to what comes.
func TestReadmeTellsTheRevision(t *testing.T) {
	rows := quoted(t, readPages(t), "1        lamp: new: table lamp")
	sheet := strings.ReplaceAll(said(t, "", "draw", "../../samples/since/napkin.yaml", "--since", "../../samples/napkin.yaml", "-o", "-", "--format", "txt"), "\n  ", "\n")
	if !strings.Contains(sheet, "REVISED SINCE THE SHEET BEFORE\n"+rows) || !strings.Contains(sheet, "ruth, fill side 63.0 lx T1.4+⅔, was 89.2 lx T2; −0.5 stops") || !strings.Contains(sentences(t), "Ruth's fill side has half a stop less") {
		t.Errorf("the pages list\n%s\nand the sheet\n%s", rows, sheet)
	}
	if strings.Contains(sheet, "warning") {
		t.Errorf("the sample has warnings:\n%s", sheet)
	}
}

// TestReadmeTellsTheDay holds the figures that it gives of the day at the bindery to the page that it shows.
func TestReadmeTellsTheDay(t *testing.T) {
	readme := sentences(t)
	digest := strings.Join(strings.Fields(said(t, "", "draw", "../../samples/bindery.yaml", "-o", "-", "--format", "txt", "--quality", "draft")), " ")
	for told, comes := range map[string]string{
		"keeps the two after dark apart from the four by day": "MATCHING, SEQUENCE DAY, PIET wide A oda-close A piet-close A store A",
		"Oda alone is in both of those by night":              "MATCHING, SEQUENCE NIGHT, ODA night A oda-night A",
	} {
		if !strings.Contains(readme, told) || !strings.Contains(digest, comes) {
			t.Errorf("a page says %q; the day, which should have %q:\n%s", told, comes, digest)
		}
	}
	last := strings.Join(strings.Fields(said(t, "", "draw", "../../samples/bindery.yaml", "--setup", "oda-night", "-o", "-", "--format", "txt")), " ")
	for told, comes := range map[string]string{
		"Oda turns the lamp down over 3 s: her key side goes from T4 to T2+⅓, 1.5 stops.":                   "oda, key side T4 T2+⅓ 304 lx 107 lx −1.5",
		"**Changes since night** has the 10 changes that come before, 26 min by the minutes that the scene": "10 changes: 1 set, 2 move, 2 level, 2 aim, 2 mark, 1 camera; 26 min by the scene's own rates.",
	} {
		if !strings.Contains(readme, told) || !strings.Contains(last, comes) {
			t.Errorf("a page says %q; the page, which should have %q:\n%s", told, comes, last)
		}
	}
}
