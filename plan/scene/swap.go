package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// kindMark is a mark in the words of messages.
const kindMark = "a mark"

// swap is the pairs of a reverse on their way to an exchange.
type swap struct {
	setup *Setup
	tree  *source.Node // of the set-up that is reversed
	log   *source.Log
	pairs Exchange
	first map[string]source.Span // where each name stands first
	fine  bool
}

// exchangeOf is what the pairs of a reverse exchange; not ok after a fault, which is logged.
func exchangeOf(s *Setup, tree *source.Node, log *source.Log) (pairs Exchange, ok bool) {
	x := &swap{setup: s, tree: tree, log: log, pairs: Exchange{}, first: map[string]source.Span{}, fine: true}
	all := s.Reversed.Swap
	if len(all) == 0 {
		all = x.ends()
	}
	for _, pair := range all {
		x.pair(pair)
	}
	return x.pairs, x.fine
}

// ends are the people at the ends of the line of action.
func (x *swap) ends() [][2]Ref {
	line := x.tree.Get("line")
	if line != nil && len(line.Items) == 2 {
		var pair [2]Ref
		for i, item := range line.Items {
			pair[i].Name, _, _ = strings.Cut(item.Text, ".")
			pair[i].Span = item.Span
		}
		return [][2]Ref{pair}
	}
	hint := "add swap: [[ada, noor]], with the names of two people"
	if people := x.tree.Get("people"); people != nil && len(people.Keys) == 2 {
		hint = "add swap: [[" + people.Keys[0].Name + ", " + people.Keys[1].Name + "]]"
	}
	x.fault(x.setup.Reverse.Span, source.CodeMissingKey, hint, "the scene has no line of action, so the reverse has to say who change places")
	return nil
}

// pair takes a pair where it is one of two people, two cameras or two marks, each named once.
func (x *swap) pair(pair [2]Ref) {
	var kinds [2]string
	for i, ref := range pair {
		if kinds[i] = x.kind(ref.Name); kinds[i] == "" {
			x.unknown(ref)
			continue
		}
		if at, twice := x.first[ref.Name]; twice {
			x.fault(ref.Span, CodeTwice, "name each once", ref.Name+" changes places twice", source.Related{Span: at, Message: "here it does first"})
			return
		}
		x.first[ref.Name] = ref.Span
	}
	switch {
	case kinds[0] == "" || kinds[1] == "":
	case kinds[0] != kinds[1]:
		x.fault(pair[1].Span, CodeWrongThing, "pair a person with a person, a camera with a camera, a mark with a mark",
			pair[0].Name+" is "+kinds[0]+" and "+pair[1].Name+" is "+kinds[1]+": they cannot change places")
	default:
		x.pairs[pair[0].Name], x.pairs[pair[1].Name] = pair[1].Name, pair[0].Name
	}
}

// kind is that of what may change places; "" for anything else.
func (x *swap) kind(name string) string {
	who, mark, dotted := strings.Cut(name, ".")
	switch {
	case dotted && x.tree.Get("people").Get(who).Get("marks").Get(mark) != nil:
		return kindMark
	case x.tree.Get("people").Get(name) != nil:
		return kindPerson
	case x.tree.Get("cameras").Get(name) != nil:
		return kindCamera
	}
	return ""
}

// unknown refuses a name of nothing that may change places.
func (x *swap) unknown(ref Ref) {
	for _, section := range x.tree.Keys {
		if section.Value.Get(ref.Name) != nil && section.Name != "setups" {
			x.fault(ref.Span, CodeWrongThing, source.Offer(ref.Name, x.names()),
				ref.Name+" stands under "+section.Name+": people, cameras and marks change places, and what is by them follows")
			return
		}
	}
	x.fault(ref.Span, source.CodeUnknownName, source.Offer(ref.Name, x.names()), "no person, camera or mark is called "+ref.Name+" in "+x.setup.Reversed.Of.Name)
}

// names are all that may change places.
func (x *swap) names() (all []string) {
	for _, section := range []string{"people", "cameras"} {
		n := x.tree.Get(section)
		if n == nil {
			continue
		}
		for _, k := range n.Keys {
			all = append(all, k.Name)
			if marks := k.Value.Get("marks"); marks != nil {
				for _, mark := range marks.Keys {
					all = append(all, k.Name+"."+mark.Name)
				}
			}
		}
	}
	return all
}

func (x *swap) fault(span source.Span, code, hint, message string, related ...source.Related) {
	x.fine = false
	x.log.Add(source.Diagnostic{Severity: source.Error, Code: code, Span: span, Path: x.setup.Path + ".reverse", Setup: x.setup.Name,
		Message: message, Hint: hint, Related: related})
}

// tellStaying says which things a reverse leaves where they stand.
func tellStaying(s *Setup, told []Uncrossed, log *source.Log) {
	if len(told) == 0 {
		return
	}
	var names []string
	var related []source.Related
	for _, t := range told {
		if !slices.Contains(names, t.Name) {
			names = append(names, t.Name)
		}
		related = append(related, source.Related{Span: t.Span, Message: t.Name + " " + t.Why})
	}
	log.Add(source.Diagnostic{Severity: source.Info, Code: CodeCannotCross, Span: s.Reversed.Of.Span, Path: s.Path + ".reverse", Setup: s.Name,
		Message: "not all of " + s.Reversed.Of.Name + " goes across: " + strings.Join(names, ", "),
		Hint:    "give what should stand elsewhere its place in the change of " + s.Name + ", or strike it", Related: related})
}
