package main

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(suite{m}, map[string]func(){
		"scrimshaw": func() { os.Exit(realMain()) },
	})
}

// TestScripts runs the commands as a user types them. UPDATE_GOLDEN=1 rewrites what the
// scripts compare with.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       os.Getenv("UPDATE_GOLDEN") != "",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("SOURCE_DATE_EPOCH", "1940000000")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"make": makeFile},
	})
}

// hostile are inputs that do not fit into a script.
var hostile = map[string]func() string{
	"deep":     func() string { return "a: " + strings.Repeat("[", 20_000) },
	"huge":     func() string { return strings.Repeat("# fifty megabytes of remarks\n", 50<<20/29) },
	"binary":   func() string { return "\x00\x01\x02\x7fELF" },
	"bad-utf8": func() string { return "scrimshaw: 1\ntitle: caf\xe9\n" },
	"bom":      func() string { return "\ufeffscrimshaw: 1\r\nrooms:\r\n  den: {size: [5, 4]}\r\n" },
}

// makeFile is the script command `make KIND FILE`.
func makeFile(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 || hostile[args[0]] == nil {
		ts.Fatalf("usage: make KIND FILE")
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(hostile[args[0]]()), 0o644))
}
