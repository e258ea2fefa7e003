package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/samples"
)

// doctype names the document type definition of SVG 1.1 (W3C Recommendation of 16 August 2011),
// which Debian has in w3c-sgml-lib, and declares what the files have beyond it: the attributes of
// WAI-ARIA 1.2 (W3C Recommendation of 6 June 2023), which SVG 2 takes over, and data attributes
// (HTML Living Standard, 3.2.6.6). A viewer of SVG 1.1 passes over them.
const doctype = `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd" [
<!ATTLIST svg role CDATA #IMPLIED aria-labelledby IDREFS #IMPLIED>
<!ATTLIST g data-layer CDATA #IMPLIED data-object CDATA #IMPLIED>
<!ATTLIST text aria-hidden CDATA #IMPLIED>
]>
`

// TestSVGIsValid holds every sample's drawings to the definition of SVG 1.1: elements, their
// content, attributes, and that each id is there once and every one that is named is there.
func TestSVGIsValid(t *testing.T) {
	xmllint := tool(t, "xmllint")
	runs := otherLooks()
	for _, name := range samples.Names() {
		runs = append(runs, []string{name})
	}
	for _, args := range runs {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			for _, base := range drawnSample(t, args[0], args[1:]...).pages {
				file, err := os.ReadFile(base + ".svg")
				if err != nil {
					t.Fatal(err)
				}
				validate(t, xmllint, filepath.Base(base), append([]byte(doctype), file...))
			}
		})
	}
}

// TestAnInvalidSVGIsTold: the check above can fail.
func TestAnInvalidSVGIsTold(t *testing.T) {
	xmllint := tool(t, "xmllint")
	for _, wrong := range []string{
		`<svg xmlns="http://www.w3.org/2000/svg"><rect/></svg>`,                       // without a width
		`<svg xmlns="http://www.w3.org/2000/svg"><g data-x="1"/></svg>`,               // not declared
		`<svg xmlns="http://www.w3.org/2000/svg"><g id="a"/><g id="a"/></svg>`,        // twice
		`<svg xmlns="http://www.w3.org/2000/svg"><text><path d="M0 0"/></text></svg>`, // not in text
	} {
		if _, valid := lint(t, xmllint, []byte(doctype+wrong)); valid {
			t.Errorf("%s passes", wrong)
		}
	}
}

func validate(t *testing.T, xmllint, name string, file []byte) {
	t.Helper()
	if said, valid := lint(t, xmllint, file); !valid {
		t.Errorf("%s.svg: %s", name, said)
	}
}

// lint checks a file against the definition that it names. Where that is not installed the test is
// skipped, but not where changes are checked.
func lint(t *testing.T, xmllint string, file []byte) (said string, valid bool) {
	t.Helper()
	cmd := exec.Command(xmllint, "--nonet", "--noout", "--valid", "-")
	cmd.Stdin = bytes.NewReader(file)
	out, err := cmd.CombinedOutput()
	if bytes.Contains(out, []byte("svg11.dtd")) && bytes.Contains(out, []byte("load")) {
		if os.Getenv("CI") != "" {
			t.Fatalf("w3c-sgml-lib is needed: %s", out)
		}
		t.Skip("w3c-sgml-lib is not installed")
	}
	return string(out), err == nil
}
