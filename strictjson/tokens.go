package strictjson

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
	"strings"
)

// A token is a piece of a document.
type token struct {
	kind kind
	text []byte // of a text what it says, of a number or a boolean how it stands
}

// A kind of token is its bracket or brace, or one of these.
type kind byte

const (
	text    kind = '"'
	number  kind = '0'
	boolean kind = 't'
	null    kind = 'n'
)

// tokens are those of a document, as json.Decoder tells them.
type tokens interface {
	Token() (token, error)
	More() bool
	InputOffset() int64
}

// tokensOf tells the tokens of JSON by itself, for json.Decoder takes several times as long.
// What is no JSON it leaves to that, which says where.
func tokensOf(data []byte) tokens {
	if json.Valid(data) {
		return &scanner{data: data}
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	return decoding{d}
}

// decoding tells the tokens of json.Decoder.
type decoding struct{ *json.Decoder }

func (d decoding) Token() (token, error) {
	switch t, err := d.Decoder.Token(); t := t.(type) {
	case json.Delim:
		return token{kind: kind(t)}, err
	case string:
		return token{text, []byte(t)}, err
	case json.Number:
		return token{number, []byte(t)}, err
	case bool:
		return token{boolean, strconv.AppendBool(nil, t)}, err
	default:
		return token{kind: null}, err
	}
}

// A scanner goes over what is known to be JSON.
type scanner struct {
	data []byte
	at   int // the end of the last token
}

// between stand between tokens.
const between = " \t\r\n,:"

func (s *scanner) next() int {
	at := s.at
	for at < len(s.data) && strings.IndexByte(between, s.data[at]) >= 0 {
		at++
	}
	return at
}

func (s *scanner) InputOffset() int64 { return int64(s.at) }

func (s *scanner) More() bool {
	at := s.next()
	return at < len(s.data) && s.data[at] != ']' && s.data[at] != '}'
}

// Token tells the next; its text is to be read before the document changes.
func (s *scanner) Token() (token, error) {
	begin := s.next()
	if begin == len(s.data) {
		return token{}, io.EOF
	}
	switch c := s.data[begin]; c {
	case '{', '}', '[', ']':
		s.at = begin + 1
		return token{kind: kind(c)}, nil
	case '"':
		return s.quoted(begin)
	}
	s.at = begin
	for s.at < len(s.data) && strings.IndexByte(between+"]}", s.data[s.at]) < 0 {
		s.at++
	}
	word := s.data[begin:s.at]
	switch word[0] {
	case 'n':
		return token{kind: null}, nil
	case 't', 'f':
		return token{boolean, word}, nil
	}
	return token{number, word}, nil
}

func (s *scanner) quoted(begin int) (token, error) {
	escaped := false
	for s.at = begin + 1; s.data[s.at] != '"'; s.at++ {
		if s.data[s.at] == '\\' {
			escaped = true
			s.at++
		}
	}
	s.at++
	if !escaped {
		return token{text, s.data[begin+1 : s.at-1]}, nil
	}
	var said string
	err := json.Unmarshal(s.data[begin:s.at], &said)
	return token{text, []byte(said)}, err
}
