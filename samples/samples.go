// Package samples embeds the scenes that a user copies. Their people, places and productions
// are invented.
package samples

import (
	"bytes"
	"embed"
	"fmt"
	"strings"
)

//go:embed *.yaml
var files embed.FS

//go:embed kit/own-kit.yaml
var ownKit []byte

// OwnKit returns a commented kit file of one's own, to start from.
func OwnKit() []byte { return bytes.Clone(ownKit) }

// Default is the sample that a command uses when it is given no file.
const Default = "map-room"

// Names lists the samples in the order in which they teach.
func Names() []string {
	return []string{"napkin", "map-room", "ironing-room", "ferry-office", "two-sizes", "spot-and-flood", "fitting-room", "night-log", "press-house", "four-keys", "bindery"}
}

// Text returns the sample's YAML.
func Text(name string) ([]byte, error) {
	text, err := files.ReadFile(name + ".yaml")
	if err != nil {
		return nil, fmt.Errorf("no sample %q; there are %s", name, strings.Join(Names(), ", "))
	}
	return text, nil
}
