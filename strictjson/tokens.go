package strictjson

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
)

// tokens are those of a document, as json.Decoder tells them.
type tokens interface {
	Token() (json.Token, error)
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
	return d
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

func (s *scanner) Token() (json.Token, error) {
	begin := s.next()
	if begin == len(s.data) {
		return nil, io.EOF
	}
	switch c := s.data[begin]; c {
	case '{', '}', '[', ']':
		s.at = begin + 1
		return json.Delim(c), nil
	case '"':
		return s.text(begin)
	}
	s.at = begin
	for s.at < len(s.data) && strings.IndexByte(between+"]}", s.data[s.at]) < 0 {
		s.at++
	}
	switch word := string(s.data[begin:s.at]); word {
	case "null":
		return nil, nil
	case "true", "false":
		return word == "true", nil
	default:
		return json.Number(word), nil
	}
}

func (s *scanner) text(begin int) (json.Token, error) {
	escaped := false
	for s.at = begin + 1; s.data[s.at] != '"'; s.at++ {
		if s.data[s.at] == '\\' {
			escaped = true
			s.at++
		}
	}
	s.at++
	if !escaped {
		return string(s.data[begin+1 : s.at-1]), nil
	}
	var text string
	err := json.Unmarshal(s.data[begin:s.at], &text)
	return text, err
}
