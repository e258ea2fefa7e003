package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/term"
)

// kitChoice says which units of the catalogue are wanted. The zero kitChoice wants all entries.
type kitChoice struct {
	class   string
	watts   float64 // the most that it may draw
	battery bool
	mount   string
}

// mounts are the spigots that a unit can be asked for by.
var mounts = []string{"16", "28"}

func addKitChoice(cmd *cobra.Command, c *kitChoice) {
	words := term.Words(term.Classes)
	cmd.Flags().StringVar(&c.class, "class", "", "only units of a class: "+strings.Join(words, ", "))
	cmd.Flags().Float64Var(&c.watts, "watts", 0, "only units that draw no more than these watts")
	cmd.Flags().BoolVar(&c.battery, "battery", false, "only units that run on batteries")
	cmd.Flags().StringVar(&c.mount, "mount", "", "only units for a stand with a spigot of: "+strings.Join(mounts, ", ")+" (mm)")
	completeWith(cmd, "class", words...)
	completeWith(cmd, "mount", mounts...)
}

// of keeps the rows that are wanted.
func (c *kitChoice) of(catalogue *kit.Catalogue, rows []kit.Listed) (kept []kit.Listed, err error) {
	if *c == (kitChoice{}) {
		return rows, nil
	}
	if err := c.check(); err != nil {
		return nil, err
	}
	for _, r := range rows {
		if r.Kind == "unit" && c.wants(catalogue.Unit(r.Name)) {
			kept = append(kept, r)
		}
	}
	if len(kept) == 0 {
		return nil, errors.New("no unit of the catalogue is like that; ask for less")
	}
	return kept, nil
}

// check refuses words that no unit has.
func (c *kitChoice) check() error {
	switch {
	case c.class != "" && !slices.Contains(term.Classes, term.Class(c.class)):
		return fmt.Errorf("--class %s: the classes are %s", c.class, strings.Join(term.Words(term.Classes), ", "))
	case c.mount != "" && !slices.Contains(mounts, c.mount):
		return fmt.Errorf("--mount %s: the spigots are %s mm; write --mount 16", c.mount, strings.Join(mounts, " and "))
	case c.watts < 0:
		return errors.New("--watts is the most that a unit may draw; write --watts 1000")
	}
	return nil
}

// wants reports whether a unit is as it is asked for.
func (c *kitChoice) wants(u *kit.Unit) bool {
	return (c.class == "" || string(u.Class) == c.class) &&
		(c.watts == 0 || u.Watts <= c.watts) &&
		(!c.battery || u.Battery.Runs()) &&
		(c.mount == "" || u.Spigot == c.mount+" mm" || u.Spigot == kit.SpigotEither)
}
