package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"scrimshaw/plan/photometry/files"
)

// convertFile writes a photometric file in the format that the ending of the new name asks for.
func convertFile(ctx context.Context, std streams, args []string, flags *kitFlags) error {
	if err := checkConversion(args, flags); err != nil {
		return err
	}
	data, _, err := openMeasured(ctx, std, flags.convert, flags.faults)
	if err != nil {
		return err
	}
	made, err := files.As(data, photometricEnding(args[0]))
	if err != nil {
		return fmt.Errorf("cannot convert %s: %w", flags.convert, err)
	}
	text, err := made.Bytes()
	if err != nil {
		return fmt.Errorf("cannot convert %s: %w", flags.convert, err)
	}
	if err := writeAndReport(ctx, std, only(output{path: args[0], data: text})); err != nil {
		return err
	}
	if _, indoor := made.(*files.LDT); indoor && made != data {
		fmt.Fprintln(std.err, "its ten direct ratios, which only indoor utilisation tables use, are not computed and stand as 0")
	}
	return nil
}

// checkConversion refuses what is no conversion of one file to one other.
func checkConversion(args []string, flags *kitFlags) error {
	switch {
	case len(args) == 0:
		return errors.New("--convert needs the name of the new file: scrimshaw kit --convert lamp.ies lamp.ldt")
	case len(args) > 1:
		return fmt.Errorf("--convert writes one new file; %q is one too many", args[1])
	case flags.json || len(flags.outputs) > 0:
		return errors.New("--convert writes one file and prints nothing; leave --json and -o out")
	}
	if to := photometricEnding(args[0]); to != ".ies" && to != ".ldt" {
		return fmt.Errorf("%s: the endings of photometric files are .ies and .ldt", args[0])
	}
	return refuseReplacing(args[0], flags.convert)
}

func photometricEnding(name string) string { return strings.ToLower(filepath.Ext(name)) }

// refuseReplacing refuses a new file in the place of one that is there: a measurement is not made again as a drawing is.
func refuseReplacing(path, source string) error {
	if canonicalPath(path) == canonicalPath(source) {
		return fmt.Errorf("%s is the file to convert; give the new file another name", path)
	}
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("there is a file %s already; remove it first, or give the new file another name", path)
	}
	return nil
}
