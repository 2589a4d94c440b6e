package strictjson

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// A token of a document, by the byte that it begins with: of a number '0', of a text '"'.
// What a text says, and the digits of a number, are its text.
type token struct {
	kind byte
	text []byte
}

// A tokenizer reads the tokens of a document (RFC 8259). What comes between them is asked for
// by who reads them.
type tokenizer struct {
	data []byte
	at   int
}

// next is the next token after a separator, that which ':' and ',' are; false where none is
// there, and then at stays where it was.
func (d *tokenizer) next(separator byte) (t token, ok bool) {
	at := d.past(d.at)
	if separator != 0 {
		if at >= len(d.data) || d.data[at] != separator {
			return t, false
		}
		at = d.past(at + 1)
	}
	if at >= len(d.data) {
		return t, false
	}
	rest := d.data[at:]
	n := 0
	switch c := rest[0]; c {
	case '{', '}', '[', ']':
		t, n = token{kind: c}, 1
	case '"':
		t, n = textAt(rest)
	case 't', 'f', 'n':
		for _, word := range [...]string{"true", "false", "null"} {
			if bytes.HasPrefix(rest, []byte(word)) {
				t, n = token{kind: c}, len(word)
			}
		}
	default:
		if n = numberAt(rest); n > 0 {
			t = token{'0', rest[:n]}
		}
	}
	d.at = at + n
	if n == 0 {
		d.at = at
	}
	return t, n > 0
}

// past is where what follows white space begins.
func (d *tokenizer) past(at int) int {
	for at < len(d.data) {
		switch d.data[at] {
		case ' ', '\t', '\r', '\n':
			at++
		default:
			return at
		}
	}
	return at
}

// ends says that nothing more is in an object or list.
func (d *tokenizer) ends() bool {
	at := d.past(d.at)
	return at >= len(d.data) || d.data[at] == '}' || d.data[at] == ']'
}

// textAt is the text that begins here, and its length in the document; 0 where it is none.
func textAt(b []byte) (token, int) {
	escaped := false
	for i := 1; i < len(b); i++ {
		switch c := b[i]; {
		case c == '"' && !escaped:
			return token{'"', b[1:i]}, i + 1
		case c == '"':
			var text string
			if json.Unmarshal(b[:i+1], &text) != nil {
				return token{}, 0
			}
			return token{'"', []byte(text)}, i + 1
		case c == '\\':
			escaped = true
			i++
		case c < ' ':
			return token{}, 0
		}
	}
	return token{}, 0
}

// numberAt is the length of the number that begins here; 0 where it is none.
func numberAt(b []byte) int {
	digits := func(i int) int {
		for i < len(b) && '0' <= b[i] && b[i] <= '9' {
			i++
		}
		return i
	}
	i := 0
	if b[0] == '-' {
		i++
	}
	whole := i
	if i = digits(i); i > whole && b[whole] == '0' {
		i = whole + 1
	}
	if i == whole {
		return 0
	}
	if i < len(b) && b[i] == '.' {
		from := i + 1
		if i = digits(from); i == from {
			return 0
		}
	}
	if i < len(b) && (b[i] == 'e' || b[i] == 'E') {
		from := i + 1
		if from < len(b) && (b[from] == '+' || b[from] == '-') {
			from++
		}
		if i = digits(from); i == from {
			return 0
		}
	}
	return i
}

// none is the error of a token that is not there, or not one that may be.
func (d *decoder) none(in *place, from int) error {
	rest := bytes.TrimLeft(d.data[from:], " \t\r\n,:")
	problem := fmt.Sprintf("not JSON from %q on", clip(string(rest)))
	if len(rest) == 0 || opensText(rest) {
		problem = "the document ends too early; a bracket, brace or quote is not closed"
	}
	return &Error{
		Path: in.String(), Line: lineAt(d.data, len(d.data)-len(rest)), Problem: problem,
	}
}

// opensText reports whether a text begins here that has no end.
func opensText(rest []byte) bool {
	if rest[0] != '"' {
		return false
	}
	for i := 1; i < len(rest); i++ {
		switch rest[i] {
		case '"':
			return false
		case '\\':
			i++
		}
	}
	return true
}
