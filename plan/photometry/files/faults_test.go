package files_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

const goodIES = "IESNA91\n[TEST] a\nTILT=NONE\n1 -1 1 3 2 1 2 0 0 0\n1 1 100\n0 45 90\n0 90\n9 5 1\n9 4 2\n"

// goodLDT has two planes, C0 and C90, of three angles.
const goodLDT = "nobody\n3\n4\n4\n90\n3\n45\nreport\nname\nnumber\nfile\ndate\n600\n300\n100\n500\n200\n0\n0\n0\n0\n100\n94\n1\n0\n" +
	"1\n2\nlamp\n1000\n3000 K\n1A\n40\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n90\n180\n270\n0\n45\n90\n300\n200\n100\n300\n150\n50\n"

// fault is a change to a good file, with what is said of it and where.
type fault struct{ name, old, new, place, message, hint string }

func TestFaults(t *testing.T) {
	for _, f := range []fault{
		{"no TILT line", "TILT=NONE", "", "x.ies:9:6", "the line TILT=NONE, TILT=INCLUDE or TILT= with a file name is missing after the keywords", "check that this is an LM-63 file and that it is complete"},
		{"a word among numbers", "45 90\n0", "45 x90\n0", "x.ies:6:6", `vertical angle 3 of 3 belongs here, not "x90"`, "a value before it may be missing, or there is one too many"},
		{"a keyword too late", "9 4 2", "[OTHER] b", "x.ies:9:1", `candela value 1 of 3 at the horizontal angle 90 belongs here, not "[OTHER]"`, "keywords stand before the TILT= line"},
		{"a power of Fortran", "9 4 2", "9 4D0 2", "x.ies:9:3", `candela value 2 of 3 at the horizontal angle 90 belongs here, not "4D0"`, "write powers of ten with an E"},
		{"decimal commas", "0 45 90\n", "0 22,5 90\n", "x.ies:6:6", "the vertical angles must ascend, and 5 comes after 22", "commas separate numbers in this format: write decimals with a point"},
		{"not enough for the counts", "3 2 1 2", "4 6 1 2", "x.ies:4:10", "6 horizontal by 4 vertical angles need 24 candela values, and the rest of the file has room for 13 at most", "the file was cut off, or a number of angles is wrong"},
		{"a failed value", "9 4 2", "9 NaN 2", "x.ies:9:3", `candela value 2 of 3 at the horizontal angle 90 belongs here, not "NaN"`, "the program that wrote the file failed to measure or compute this value"},
		{"cut off", "9 4 2\n", "9 4", "x.ies:9:4", "the file ends where candela value 3 of 3 at the horizontal angle 90 belongs", "the file was cut off, or it announces more angles than it has"},
		{"a wrong type", "3 2 1 2", "3 2 4 2", "x.ies:4:12", `the photometric type is 1 (C), 2 (B) or 3 (A), not "4"`, "a value before it may be missing, or there is one too many"},
		{"too large a count", "1 3 2", "1 3000000 2", "x.ies:4:8", "the number of vertical angles is 3000000, and the rest of the file has room for 23 values at most", "the file was cut off, or the number is wrong"},
		{"half a count", "1 3 2", "1 3.5 2", "x.ies:4:8", `the number of vertical angles is a whole number from 1, not "3.5"`, "a value before it may be missing, or there is one too many"},
		{"angles in disorder", "0 45 90", "0 90 45", "x.ies:6:6", "the vertical angles must ascend, and 45 comes after 90", "a number of angles may be wrong, or a value missing"},
		{"angles beyond", "0 45 90", "0 45 190", "x.ies:6:6", "the vertical angles of type C lie from 0 to 180, and 190 does not", "a number of angles may be wrong, or a value missing"},
		{"half the planes", "\n0 90\n", "\n0 70\n", "x.ies:7:1", "the horizontal angles run from 0 to 70; type C has one plane, or runs from 0 to 90, 180 or 360 (or from 90 to 270)", "a horizontal angle may be missing or wrong"},
		{"no light", "9 5 1\n9 4 2", "0 0 0 0 0 0", "x.ies:8:1", "the table gives no light", ""},
		{"a binary file", "[TEST] a", "[TEST] \x00", "x.ies:2:8", "the file is not text: it holds a byte 0", "check that it is a photometric file, saved as plain text"},
	} {
		t.Run(f.name, func(t *testing.T) { f.check(t, "x.ies", goodIES) })
	}
	for _, f := range []fault{
		{"the other format", goodIES, goodLDT, "x.ies:55:3", "the line TILT=NONE, TILT=INCLUDE or TILT= with a file name is missing after the keywords", "it looks like EULUMDAT: name it with the ending .ldt"},
	} {
		t.Run(f.name, func(t *testing.T) { f.check(t, "x.ies", goodIES) })
	}
	for _, f := range []fault{
		{"the other format", goodLDT, goodIES, "x.ldt:1:1", "this is no EULUMDAT file", "it looks like IES LM-63: name it with the ending .ies"},
		{"empty", goodLDT, "", "x.ldt:1:1", "the file is empty", ""},
		{"a wrong symmetry", "nobody\n3\n4", "nobody\n3\n5", "x.ldt:3:1", `the symmetry indicator is a whole number from 0 to 4, not "5"`, "a line before it may be missing, or there is one too many"},
		{"planes and symmetry", "\n4\n4\n90", "\n4\n5\n90", "x.ldt:4:1", "with the symmetry indicator 4 the number of C planes is a multiple of 4, not 5", "C360 is C0 and not counted again"},
		{"another symmetry fits", "nobody\n3\n4", "nobody\n3\n2", "x.ldt:55:3", "the file has 55 lines and needs 58 for 4 planes of 3 angles with the symmetry indicator 2 and 1 lamp set", "the symmetry indicator 4 would fit"},
		{"no ratios", "40\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n", "40\n", "x.ldt:45:3", "the file has 45 lines and needs 55 for 4 planes of 3 angles with the symmetry indicator 4 and 1 lamp set", "the ten direct ratios may be missing"},
		{"no ratios, no colour", "3000 K\n1A\n40\n0\n0\n0\n0\n0\n0\n0\n0\n0\n0\n", "", "x.ldt:42:3", "the file has 42 lines and needs 55 for 4 planes of 3 angles with the symmetry indicator 4 and 1 lamp set", "the ten direct ratios and the lamps' colour, rendering and watts may be missing"},
		{"cut off", "\n300\n150\n50\n", "\n300\n", "x.ldt:53:4", "the file has 53 lines and needs 55 for 4 planes of 3 angles with the symmetry indicator 4 and 1 lamp set", "the file was cut off, or lines are missing"},
		{"words for a number", "\n3\n45\nreport", "\n3\nreport\nreport", "x.ldt:7:1", `the distance between gamma angles belongs in line 7, not "report"`, "a line before it may be missing, or there is one too many"},
		{"several a line", "\n200\n100\n300\n150", "\n200 100\n100\n300\n150", "x.ldt:51:1", `intensity 2 of 3 of C0 belongs in line 51, not "200 100"`, "the format has one number a line"},
		{"an empty line", "\n200\n100\n300", "\n\n100\n300", "x.ldt:51:1", "intensity 2 of 3 of C0 belongs in line 51, not nothing", "a line may be empty where a value belongs, or the file was cut off"},
		{"no flux", "lamp\n1000", "lamp\n0", "x.ldt:29:1", "the flux of the lamps is 0, and intensities in cd/klm say nothing without it", "write the flux of all lamps of the set, lm"},
		{"planes elsewhere", "\n90\n180", "\n80\n180", "x.ldt:43:1", "with the symmetry indicator 4 the measured planes run from C0 to C90, and here from C0 to C80", "the number of C planes or the symmetry indicator is wrong"},
		{"angles in disorder", "\n270\n0\n45", "\n270\n50\n45", "x.ldt:48:1", "the gamma angles must ascend, and 45 comes after 50", "a line may be missing, or a count wrong"},
	} {
		t.Run(f.name, func(t *testing.T) { f.check(t, "x.ldt", goodLDT) })
	}
}

func (f fault) check(t *testing.T, name, good string) {
	if !strings.Contains(good, f.old) {
		t.Fatal("the change does not apply")
	}
	log := &source.Log{}
	text := strings.Replace(good, f.old, f.new, 1)
	if _, ok := files.Read(&source.File{Name: name, Text: []byte(text)}, log); ok {
		t.Fatal("was read")
	}
	want := f.place + ": error: " + f.message
	got := said(log)
	if !strings.Contains(got, want+" [") || f.hint != "" && !strings.Contains(got, "fix: "+f.hint+"\n") {
		t.Errorf("got\n%s\nwant\n%s\nfix: %s", got, want, f.hint)
	}
}

// What is known from files in use is read, each with a warning, and gives the light that was meant.
func TestQuirks(t *testing.T) {
	for _, f := range []fault{
		{"spaces in the first line", "IESNA91", "IESNA 91", "x.ies:1:1", `"IESNA 91" is not the first line of an edition; the file is read as one of 1991`, "write IESNA91"},
		{"an unknown edition", "IESNA91", "IESNA:LM-63-2030", "x.ies:1:1", `"IESNA:LM-63-2030" is not the first line of an edition; the file is read as one of 2002`, ""},
		{"keywords without an edition", "IESNA91\n", "", "x.ies:1:1", "the file does not name its edition; it is read as one of 1986", ""},
		{"TILT in small letters", "TILT=NONE", "tilt = ", "x.ies:3:1", "the TILT= line says nothing; it is taken as NONE", ""},
		{"a tilt file", "TILT=NONE", "TILT=arc.tlt", "x.ies:3:1", `the tilt file "arc.tlt" is not read: the light is that of the design position`, ""},
		{"tilts in disorder", "TILT=NONE", "TILT=INCLUDE\n1 2\n90 0\n1 .9", "x.ies:5:1", "the tilt angles do not ascend, or a factor is not from 0 to 2; the factors are left out", ""},
		{"a factor of tilt that cannot be", "TILT=NONE", "TILT=INCLUDE\n1 2\n0 90\n1 -9", "x.ies:5:1", "the tilt angles do not ascend, or a factor is not from 0 to 2; the factors are left out", ""},
		{"a geometry that does not exist", "TILT=NONE", "TILT=INCLUDE\n7 2\n0 90\n1 .9", "x.ies:4:1", "the lamp-to-luminaire geometry is 1, 2 or 3; the factors of tilt are left out", ""},
		{"a bracket that does not close", "[TEST] a", "[TEST a", "x.ies:2:1", "a keyword lacks its closing bracket; the line is kept as a remark", ""},
		{"a line without a keyword", "[TEST] a", "[TEST] a\nb", "x.ies:3:1", "a line before TILT= has no keyword; it is kept as a remark", ""},
		{"no lamps", "\n1 -1", "\n0 -1", "x.ies:4:1", `the number of lamps is "0"; it is taken as 1`, ""},
		{"no multiplier", "-1 1 3", "-1 0 3", "x.ies:4:6", "a candela multiplier of 0 would leave no light; it is taken as 1", ""},
		{"no units", "1 2 0 0 0", "1 0 0 0 0", "x.ies:4:14", `the type of units is 1 (feet) or 2 (metres), not "0"; metres are taken`, ""},
		{"numbers left over", "9 4 2", "9 4 2 7 7", "x.ies:9:7", "2 more words follow the last candela value; they are ignored", ""},
		{"cut vertical angles", "0 45 90\n", "0 45 80\n", "x.ies:6:1", "the vertical angles run from 0 to 80, not from 0 or 90 to 90 or 180; no light is taken beyond them", ""},
		{"an open round", "3 2 1 2 0 0 0\n1 1 100\n0 45 90\n0 90\n9 5 1\n9 4 2", "3 3 1 2 0 0 0\n1 1 100\n0 45 90\n0 120 240\n9 5 1\n9 5 1 9 5 1", "x.ies:7:1", "the last horizontal angle is 240; the first plane is taken again at 360", ""},
		{"a value below 0", "9 4 2", "9 4 -2", "x.ies:8:1", "a candela value below 0 is taken as no light", ""},
		{"planes that differ on the axis", "9 4 2", "7 4 2", "x.ies:8:1", "the planes do not agree on the intensity along the axis", ""},
		{"more than the lamps give", "\n1 -1", "\n1 5", "x.ies:8:1", "the intensities add up to 24 lm, more than the 5 lm of the lamps", ""},
		{"a first keyword that continues one", "[TEST] a", "[MORE] a", "x.ies:2:1", "[MORE] continues a keyword, but no keyword comes before it; it is kept as [_MORE]", ""},
		{"a keyword without a name", "[TEST] a", "[TEST] a\n[] b", "x.ies:3:1", "a keyword has no name; the line is left out", ""},
		{"a long line", "[TEST] a", "[TEST] " + strings.Repeat("a", 300), "x.ies:2:1", "the line is too long: the format allows 256 characters", ""},
		{"light that depends on tilt", "TILT=NONE", "TILT=INCLUDE\n1 2\n0 90\n1 .9", "x.ies:3:1", "the lamp's light depends on its tilt: a scene takes the tilt into account, and the figures here are those of the design position", ""},
		{"a tilt file of an edition that has none", "IESNA91\n[TEST] a\nTILT=NONE", "IES:LM-63-2019\n[TEST] a\nTILT=arc.tlt", "x.ies:3:1", "the edition of 2019 has no tilt files", ""},
	} {
		t.Run(f.name, func(t *testing.T) { f.warns(t, "x.ies", goodIES) })
	}
	for _, f := range []fault{
		{"decimal commas", "\n200\n100\n300", "\n200,5\n100,25\n300", "x.ldt:51:1", "the decimal comma is read as a point (2 times)", ""},
		{"an empty figure", "date\n600", "date\n", "x.ldt:13:1", "the length of the luminaire is left empty; it is taken as 0", ""},
		{"words behind a number", "1A\n40", "1A\n40 W", "x.ldt:32:1", "the power of the lamps has words after its number; they are ignored", ""},
		{"lines left over", "150\n50\n", "150\n50\n1\n2\n", "x.ldt:56:1", "2 lines follow the last intensity; they are ignored", ""},
		{"no conversion factor", "94\n1\n0", "94\n0\n0", "x.ldt:24:1", "a conversion factor of 0 would leave no light; it is taken as 1", ""},
		{"figures that contradict", "100\n94\n1", "100\n50\n1", "x.ldt:23:1", "the intensities add up to 944 lm; a light output ratio of 50 % of 1000 lm says 500 lm", ""},
		{"two sets of lamps", "1\n2\nlamp\n1000\n3000 K\n1A\n40\n", "2\n2\nlamp\n1000\n3000 K\n1A\n40\n1\nlamp\n500\n3000 K\n1A\n20\n", "x.ldt:29:1", "the file has 2 sets of lamps; the light is that of the first", ""},
		{"sets field by field", "1\n2\nlamp\n1000\n3000 K\n1A\n40\n", "2\n2\n1\nlamp\nspare\n1000\n500\n3000 K\n3000 K\n1A\n1A\n40\n20\n", "x.ldt:27:1", "the lamp sets stand field by field, not set by set", ""},
		{"a value below 0", "\n200\n100\n300", "\n200\n-100\n300", "x.ldt:52:1", "an intensity below 0 is taken as no light", ""},
		{"half a round without a symmetry", goodLDT, strings.Replace(strings.Replace(goodLDT, "nobody\n3\n4\n4\n90", "nobody\n3\n0\n2\n90", 1), "\n90\n180\n270\n0", "\n90\n0", 1), "x.ldt:43:1", "without a symmetry the planes go all round, and here only from C0 to C90; light is taken to change evenly between the two", ""},
	} {
		t.Run(f.name, func(t *testing.T) { f.warns(t, "x.ldt", goodLDT) })
	}
}

func (f fault) warns(t *testing.T, name, good string) {
	if !strings.Contains(good, f.old) {
		t.Fatal("the change does not apply")
	}
	log := &source.Log{}
	d, ok := files.Read(&source.File{Name: name, Text: []byte(strings.Replace(good, f.old, f.new, 1))}, log)
	if want := ": " + f.message + " ["; !ok || !strings.Contains(said(log), f.place+": warning"+want) && !strings.Contains(said(log), f.place+": info"+want) {
		t.Fatalf("got\n%s\nwant\n%s%s", said(log), f.place, want)
	}
	checkRewritten(t, name, d)
}

func TestGoodFilesHaveNoWarnings(t *testing.T) {
	for name, text := range map[string]string{"x.ies": goodIES, "x.ldt": goodLDT} {
		if _, warnings := read(t, name, text); len(warnings) > 0 {
			t.Errorf("%s: %q", name, warnings)
		}
	}
	// By what they look like, where the name does not say.
	for name, text := range map[string]string{"IES LM-63-1991": goodIES, "EULUMDAT": goodLDT} {
		if d, _ := read(t, "lamp.txt", text); d.Format() != name {
			t.Errorf("%s was read as %s", name, d.Format())
		}
	}
}
