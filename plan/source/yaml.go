package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	// The one import of the YAML library: its maintained twin go.yaml.in/yaml/v3 fits here as it is.
	yaml "gopkg.in/yaml.v3"
)

// yamlNode is the library's value, of which only the builder knows.
type yamlNode = yaml.Node

const (
	mappingNode  = yaml.MappingNode
	sequenceNode = yaml.SequenceNode
	aliasNode    = yaml.AliasNode

	taggedStyle  = yaml.TaggedStyle
	doubleQuoted = yaml.DoubleQuotedStyle
	singleQuoted = yaml.SingleQuotedStyle
	literalStyle = yaml.LiteralStyle
	foldedStyle  = yaml.FoldedStyle
	flowStyle    = yaml.FlowStyle
)

// errSecond says that a document follows the first.
var errSecond = errors.New("a second document")

// decodeYAML reads the first document of text. It returns nil without an error where there is
// none, and errSecond with the first document where more follows.
func decodeYAML(text []byte) (doc *yamlNode, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			doc, err = nil, fmt.Errorf("%v", fault) // a fault of the library is one of this file
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	first, second := new(yamlNode), new(yamlNode)
	switch err := decoder.Decode(first); {
	case errors.Is(err, io.EOF):
		return nil, nil
	case err != nil:
		return nil, err
	}
	if err := decoder.Decode(second); !errors.Is(err, io.EOF) {
		return first, errSecond
	}
	return first, nil
}

// problem is the library's message without its prefix and line, which is often wrong.
func problem(err error) string {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	if rest, ok := strings.CutPrefix(text, "line "); ok {
		if _, after, ok := strings.Cut(rest, ": "); ok {
			return after
		}
	}
	return text
}
