// Command mutants changes the code of packages in one place at a time and runs their short tests each time: a change that
// no test notices has lived. It takes a sample, so that packages can be tried whose tests take seconds; .ci/mutate tries
// every change of the small ones. All changes of a sample are built into one program, and the quick tests have the first go.
// Run it from the root of the tree:
//
//	go run ./cmd/internal/mutants -n 80 -seed 1 plan/light/radiosity
//	go run ./cmd/internal/mutants -of caster.go -run Doors plan/light    only changes of one file, and tests of some names
//	go run ./cmd/internal/mutants -also plan/meter plan/light    the tests of plan/meter may notice, too
//
// It exits with 1 where fewer than 85 % of the changes are noticed, and with 2 where nothing can be said: no package is
// named, or its tests fail as it is.
package main

import (
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
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
	of := flags.String("of", ".", "only changes like `this`, a regular expression, as lens.go:42:")
	only := flags.String("run", ".", "only tests whose names are like `this`, a regular expression")
	also := flags.String("also", "", "another `folder` whose tests may notice what those of the package do not")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() == 0 {
		flags.Usage()
		return 2
	}
	like, err := regexp.Compile(*of)
	if err != nil {
		fmt.Fprintln(said, err)
		return 2
	}
	for _, pkg := range flags.Args() {
		b := build{pkg: pkg, only: *only}
		noticed, lived, err := b.try(*also, choice{like, *n, *seed}, out)
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

// choice says which changes are tried.
type choice struct {
	like *regexp.Regexp
	n    int // at most
	seed uint64
}

// of is a sample of all changes.
func (s choice) of(all []change) []change {
	all = slices.DeleteFunc(all, func(c change) bool { return !s.like.MatchString(c.String()) })
	r := rand.New(rand.NewPCG(s.seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:min(s.n, len(all))]
}

// try tries a sample of the changes of a package, and prints those that lived. Those that do not compile do not count. The
// tests have to pass without a change: else they would notice every one.
func (b *build) try(also string, s choice, lives io.Writer) (noticed, lived int, err error) {
	all, err := changesOf(b.pkg)
	if err != nil {
		return 0, 0, err
	}
	if b.all = s.of(all); len(b.all) == 0 {
		return 0, 0, fmt.Errorf("%s: nothing to change: name a folder with Go files, from the root of the tree", b.pkg)
	}
	if b.folder, err = os.MkdirTemp("", "mutants"); err != nil {
		return 0, 0, err
	}
	defer os.RemoveAll(b.folder)
	rounds, err := b.rounds(b.pkg)
	if err == nil && also != "" {
		var more []round
		more, err = b.rounds(also)
		rounds = append(rounds, more...)
	}
	if err != nil {
		return 0, 0, err
	}
	for i, c := range b.all {
		switch {
		case c.file == "":
		case b.notices(rounds, i+1):
			noticed++
		default:
			lived++
			fmt.Fprintln(lives, c)
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
