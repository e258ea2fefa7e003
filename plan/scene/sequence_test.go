package scene

import (
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// TestSequences: a set-up is in the sequence that it writes, else in that of the set-up it starts from, else in that of the first of the file.
func TestSequences(t *testing.T) {
	for _, c := range []struct{ name, setups, want string }{
		{"nothing written", "a: {}, b: {after: a}, c: {}", "a:, b:, c:"},
		{"the first", "a: {sequence: noon}, b: {after: a}, c: {}", "a:noon, b:noon, c:noon"},
		{"a later one", "a: {}, b: {after: a, sequence: night}, c: {after: b}, d: {}", "a:, b:night, c:night, d:"},
		{"one that comes back", "a: {sequence: noon}, b: {sequence: night}, c: {after: b, sequence: noon}, d: {after: c}", "a:noon, b:night, c:noon, d:noon"},
		{"the first after a later one", "a: {after: c}, b: {}, c: {sequence: 12}", "a:12, b:12, c:12"},
		{"a reverse", "a: {sequence: noon}, b: {sequence: night, camera: A}, c: {reverse: {of: b, swap: [[ada, noor]]}}", "a:noon, b:night, c:night"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := Open(testEnv(t), sequenced(c.setups), &source.Log{})
			var got []string
			for _, name := range d.Setups {
				got = append(got, name+":"+d.Scene(name, &source.Log{}).Sequence)
			}
			if is := strings.Join(got, ", "); is != c.want {
				t.Errorf("got %s, want %s", is, c.want)
			}
		})
	}
}

// sequenced is a scene with some set-ups.
func sequenced(setups string) *source.File {
	return &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\npeople: {ada: {at: [1, 1]}, noor: {at: [3, 1]}}\nline: [ada, noor]\n" +
		"cameras: {A: {at: [2, 3], looks: ada, lens: 35 mm}}\nlights: {l: {output: {candela: 100, shape: uniform}, at: [1, 2]}}\nsetups: {" + setups + "}\n")}
}

// TestSequenceFaults: what a sequence may be called is bounded as a name is, other words for it lead to it, set-ups that wait for each other do not
// hang it, and a set-up that is another over again in another sequence is no fault.
func TestSequenceFaults(t *testing.T) {
	for _, c := range []struct{ setups, want string }{
		{"a: {sequence: by night}", `the name "by night" holds something else than letters, digits, - and _ (write by-night)`},
		{"a: {sequence: " + strings.Repeat("n", maxName+1) + "}", "a name has at most 64 characters (shorten it)"},
		{"a: {sequence: [night]}", "the name of a sequence belongs here, not a list (write it like night)"},
		{"a: {sequence: }", `"sequence" has no value (remove the key or give it a value)`},
		{"a: {sequnce: night}", `a set-up has no key "sequnce" (did you mean "sequence"?)`},
		{"a: {scene: 12}", `a set-up has no key "scene" (did you mean "sequence"?)`},
		{"a: {after: b}, b: {after: a}", "these set-ups wait for each other: a after b after a (leave one after out)"},
		{"a: {}, b: {after: a}", "b changes nothing: it is a over again (write what changes, or leave the set-up out)"},
		{"a: {}, b: {after: a, sequence: night}", ""},
		{"a: {sequence: night}, b: {after: a, sequence: night}", "b changes nothing: it is a over again (write what changes, or leave the set-up out)"},
	} {
		log := &source.Log{}
		d := Open(testEnv(t), sequenced(c.setups), log)
		d.Base(log)
		for _, name := range d.Setups {
			d.Scene(name, log)
		}
		got := ""
		if all := log.All(); len(all) > 0 {
			got = all[0].Message + " (" + all[0].Hint + ")"
		}
		if got != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.setups, got, c.want)
		}
	}
}
