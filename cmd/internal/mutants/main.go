// Command mutants changes the code of packages in one place at a time and runs their short tests each time: a change that
// no test notices has lived. It takes a sample, so that packages can be tried whose tests take seconds; .ci/mutate tries
// every change of the small ones. Run it from the root of the tree:
//
//	go run ./cmd/internal/mutants -n 80 -seed 1 plan/light/radiosity
//
// It exits with 1 where fewer than 85 % of the changes are noticed, and with 2 where nothing can be said: no package is
// named, or its tests fail as it is.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// least is the share of changes that tests have to notice, percent.
const least = 85

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run tries the packages that the arguments name, and returns the status to exit with.
func run(args []string, out, said io.Writer) (status int) {
	flags := flag.NewFlagSet("mutants", flag.ContinueOnError)
	flags.SetOutput(said)
	flags.Usage = func() {
		fmt.Fprintln(said, "usage: mutants [flags] FOLDER...\nName folders of packages from the root of the tree, as plan/lens.")
		flags.PrintDefaults()
	}
	n := flags.Int("n", 40, "how many changes of each package to try")
	seed := flags.Uint64("seed", 1, "which changes")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() == 0 {
		flags.Usage()
		return 2
	}
	for _, pkg := range flags.Args() {
		noticed, lived, err := try(pkg, *n, *seed, out)
		if err != nil {
			fmt.Fprintln(said, err)
			return 2
		}
		fmt.Fprintf(out, "%s: %d of %d changes noticed\n", pkg, noticed, noticed+lived)
		if 100*noticed < least*(noticed+lived) {
			status = 1
		}
	}
	return status
}

// try tries a sample of the changes of a package, and prints those that lived. Those that do not compile do not count. The
// tests have to pass without a change: else they would notice every one.
func try(pkg string, n int, seed uint64, lives io.Writer) (noticed, lived int, err error) {
	all, err := changesOf(pkg)
	if err != nil {
		return 0, 0, err
	}
	if len(all) == 0 {
		return 0, 0, fmt.Errorf("%s: nothing to change: name a folder with Go files, from the root of the tree", pkg)
	}
	if out, passed := tested(pkg); !passed {
		return 0, 0, fmt.Errorf("%s: its tests fail as it is, without any change: mend that first\n%s", pkg, out)
	}
	r := rand.New(rand.NewPCG(seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	folder, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return 0, 0, err
	}
	defer os.RemoveAll(folder)
	for _, c := range all {
		if noticed+lived == n {
			break
		}
		out, passed, err := test(pkg, c, folder)
		switch {
		case err != nil:
			return 0, 0, err
		case passed:
			lived++
			fmt.Fprintln(lives, c)
		case !strings.Contains(out, "[build failed]"):
			noticed++
		}
	}
	return noticed, lived, nil
}

// changesOf are those of all files of a package but its tests.
func changesOf(pkg string) (all []change, err error) {
	files, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return nil, err
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		found, err := changes(name, text)
		if err != nil {
			return nil, err
		}
		all = append(all, found...)
	}
	return all, nil
}

// test runs the short tests of a package with a change laid over its file, which stays as it is. A test that runs for ever
// has noticed.
func test(pkg string, c change, folder string) (out string, passed bool, err error) {
	text, err := os.ReadFile(c.file)
	if err != nil {
		return "", false, err
	}
	changed, overlay := filepath.Join(folder, "changed.go"), filepath.Join(folder, "overlay.json")
	whole, err := filepath.Abs(c.file)
	if err != nil {
		return "", false, err
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {whole: changed}})
	if err != nil {
		return "", false, err
	}
	for name, content := range map[string][]byte{changed: []byte(c.apply(text)), overlay: list} {
		if err := os.WriteFile(name, content, 0o600); err != nil {
			return "", false, err
		}
	}
	out, passed = tested(pkg, "-overlay", overlay)
	return out, passed, nil
}

// tested runs the short tests of a package, and says whether they pass.
func tested(pkg string, flags ...string) (out string, passed bool) {
	args := append([]string{"test", "-short", "-failfast", "-vet=off", "-timeout", "200s"}, flags...)
	found, failed := exec.Command("go", append(args, "./"+pkg)...).CombinedOutput()
	return string(found), failed == nil
}
