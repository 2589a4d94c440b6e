package words

import (
	"fmt"
	"slices"
	"strings"
)

// A template is a sentence in pieces.
type template []piece

// A piece is text, a value, or an optional part of a sentence.
type piece struct {
	text     string
	name     string   // of a value; empty for text
	forms    []string // what a count chooses from; of a list, what stands before the last
	optional template
}

// parse panics on a sentence that is not well formed: catalogs are part of the program, and
// a test reads all of them.
func parse(s string) template {
	var out template
	for s != "" {
		at := strings.IndexAny(s, "{[")
		if at < 0 {
			return append(out, piece{text: s})
		}
		if at > 0 {
			out = append(out, piece{text: s[:at]})
		}
		end := strings.IndexByte(s, map[byte]byte{'{': '}', '[': ']'}[s[at]])
		if end < at {
			panic(fmt.Sprintf("words: %q does not close what it opens", s))
		}
		inner := s[at+1 : end]
		if s[at] == '[' {
			out = append(out, piece{optional: parse(inner)})
		} else {
			parts := strings.Split(inner, "|")
			out = append(out, piece{name: parts[0], forms: parts[1:]})
		}
		s = s[end+1:]
	}
	return out
}

// names lists the values that a template uses, in order, each once.
func (t template) names(out []string) []string {
	for _, p := range t {
		if p.name != "" && !slices.Contains(out, p.name) {
			out = append(out, p.name)
		}
		out = p.optional.names(out)
	}
	slices.Sort(out)
	return out
}
