package files

import "strings"

// longestLine is how many characters LM-63-2002 allows in a line.
const longestLine = 256

// labels reads the first line, the keywords and the TILT= line; next is then behind it.
func (r *lm63Reader) labels() bool {
	i := 0
	for ; i < len(r.lines); i++ { // blank lines before the first
		if s, _ := r.line(i); s != "" {
			break
		}
	}
	if s, p := r.line(i); r.edition(s, p) {
		i++
	}
	for ; i < len(r.lines); i++ {
		s, p := r.line(i)
		if value, ok := tiltLine(s); ok {
			r.closeKeyword()
			r.next = r.lines[i].end
			return r.tiltForm(value, p)
		}
		if p.end-p.start > longestLine {
			r.noteQuirk(p, CodeLabel, "", "the line is too long: the format allows %d characters", longestLine)
		}
		r.label(s, p)
	}
	r.fault(r.end(), CodeFormat, r.hintOfFormat(), "the line TILT=NONE, TILT=INCLUDE or TILT= with a file name is missing after the keywords")
	return false
}

// hintOfFormat guesses what a file without a TILT= line is.
func (r *lm63Reader) hintOfFormat() string {
	if s, _ := r.line(2); len(r.lines) > 40 && len(s) == 1 && digit(s[0]) {
		return "it looks like EULUMDAT: name it with the ending .ldt"
	}
	return "check that this is an LM-63 file and that it is complete"
}

// edition reads the line that names the edition; not ok for any other line, as the edition of 1986
// has none.
func (r *lm63Reader) edition(s string, p part) bool {
	e, ok := editionOf(s)
	if !ok {
		if strings.HasPrefix(s, "[") {
			r.noteQuirk(p, CodeQuirk, "begin the file with IESNA:LM-63-2002", "the file does not name its edition; it is read as one of 1986")
		}
		return false
	}
	r.out.Edition = e
	if s != firstLines[e] {
		r.noteQuirk(p, CodeQuirk, "write "+firstLines[e], "%s is not the first line of an edition; the file is read as one of %s", quoted(s), e)
	}
	return true
}

// editionOf is the edition that a first line names, however it is spaced; one that is not known
// counts as 2002.
func editionOf(s string) (Edition, bool) {
	word := strings.ToUpper(strings.Join(strings.Fields(s), ""))
	if !strings.HasPrefix(word, "IESNA91") && !strings.HasPrefix(word, "IESNA:") && !strings.HasPrefix(word, "IES:") {
		return Edition1986, false
	}
	for e := Edition1991; e <= Edition2019; e++ {
		if strings.HasSuffix(word, e.String()) || word == firstLines[e] {
			return e, true
		}
	}
	if strings.HasSuffix(word, "1986") {
		return Edition1991, true // with a first line, as of 1991, and by the same rules
	}
	return Edition2002, true
}

// tiltForm notes the form of the TILT= line.
func (r *lm63Reader) tiltForm(value string, p part) bool {
	tilt := &r.out.Tilt
	switch strings.ToUpper(value) {
	case "NONE":
	case "INCLUDE":
		tilt.Form = TiltInclude
		r.noteQuirk(p, CodeUnused, "", "the lamp's light depends on its tilt: a scene takes the tilt into account, and the figures here are those of the design position")
	case "":
		r.noteQuirk(p, CodeQuirk, "write TILT=NONE", "the TILT= line says nothing; it is taken as NONE")
	default:
		tilt.Form, tilt.File = TiltFile, value
		r.noteQuirk(p, CodeUnused, "", "the tilt file %s is not read: the light is that of the design position", quoted(value))
		if r.out.Edition == Edition2019 {
			r.noteQuirk(p, CodeQuirk, "", "the edition of 2019 has no tilt files")
		}
	}
	return true
}

// label reads a line before TILT=.
func (r *lm63Reader) label(s string, p part) {
	key, rest, bracketed := "", s, false
	if strings.HasPrefix(s, "[") {
		if key, rest, bracketed = strings.Cut(s[1:], "]"); !bracketed {
			key, rest = "", s
			r.noteQuirk(p, CodeQuirk, "", "a keyword lacks its closing bracket; the line is kept as a remark")
		}
		key, rest = strings.TrimSpace(key), strings.TrimSpace(rest)
	}
	switch {
	case s == "":
	case bracketed && strings.EqualFold(key, "MORE"):
		if len(r.out.Keywords) > 0 {
			r.more = append(r.more, rest)
			return
		}
		r.noteQuirk(p, CodeQuirk, "", "[MORE] continues a keyword, but no keyword comes before it; it is kept as [_MORE]")
		r.keyword("_MORE", rest)
	case bracketed && key == "":
		r.noteQuirk(p, CodeQuirk, "", "a keyword has no name; the line is left out")
	default:
		if !bracketed && r.out.Edition > Edition1986 {
			r.noteQuirk(p, CodeQuirk, "begin it with [MORE] or a keyword of its own, [_NOTE]", "a line before TILT= has no keyword; it is kept as a remark")
		}
		r.keyword(key, rest)
	}
}

// keyword begins a keyword, which lines of [MORE] may continue.
func (r *lm63Reader) keyword(key, first string) {
	r.closeKeyword()
	r.out.Keywords = append(r.out.Keywords, Keyword{key, first})
}

// closeKeyword gives the last keyword the lines that continue it, all at once: a text that grew line
// by line would be copied for each of them.
func (r *lm63Reader) closeKeyword() {
	if len(r.more) == 0 {
		return
	}
	last := &r.out.Keywords[len(r.out.Keywords)-1]
	last.Text += "\n" + strings.Join(r.more, "\n")
	r.more = nil
}
