package days

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"scrimshaw/plan/source"
)

// plainWord is a text that needs no quotes.
var plainWord = regexp.MustCompile(`^[A-Za-z0-9+.-][A-Za-z0-9 _.+%/-]*$`)

// Flat is the tree of a set-up as a file of its own, without set-ups: the cameras that roll stand first. What of is gives a thing
// at a dotted path, as text, takes the place of what stands there.
func Flat(tree *source.Node, shown []string, of map[string]string) string {
	var b strings.Builder
	for _, k := range tree.Keys {
		if k.Name == "setups" {
			continue
		}
		value := k.Value
		if k.Name == "cameras" {
			value = first(value, shown)
		}
		fmt.Fprintf(&b, "%s: %s\n", k.Name, written(value, k.Name, of))
	}
	return b.String()
}

// first is a map with some of its entries first.
func first(n *source.Node, names []string) *source.Node {
	out := &source.Node{Kind: source.Map}
	for _, name := range names {
		if k := n.Key(name); k != nil {
			out.Keys = append(out.Keys, *k)
		}
	}
	for _, k := range n.Keys {
		if out.Key(k.Name) == nil {
			out.Keys = append(out.Keys, k)
		}
	}
	return out
}

// written is a value in one line.
func written(n *source.Node, path string, of map[string]string) string {
	var parts []string
	switch n.Kind {
	case source.Map:
		for _, k := range n.Keys {
			at := path + "." + k.Name
			value, given := of[at]
			if !given {
				value = written(k.Value, at, of)
			}
			parts = append(parts, k.Name+": "+value)
		}
		for at, value := range of {
			if thing, key, is := strings.Cut(strings.TrimPrefix(at, path+"."), "."); !is && thing != at && n.Key(thing) == nil {
				parts = append(parts, thing+key+": "+value)
			}
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case source.List:
		for i, item := range n.Items {
			parts = append(parts, written(item, path+"."+strconv.Itoa(i), of))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	if n.Quoted || !plainWord.MatchString(n.Text) {
		return strconv.Quote(n.Text)
	}
	return n.Text
}
