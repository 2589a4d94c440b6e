package strictjson

import (
	"encoding/json"
	"math/rand/v2"
	"testing"
)

// What the tokens of a document make JSON is what encoding/json takes for JSON.
func TestTokensAreThoseOfJSON(t *testing.T) {
	whole := `{"a\u00e9\"": [1, -2.5e+3, 0.1E1, true, false, null, {}], "b": {"c": ""}, "": "°"}`
	parts := []string{
		"{", "}", "[", "]", ",", ":", `"`, `\`, "0", "1", "-", "+", ".", "e", " ", "\n", "true",
		"nul", `\u12`, `\ud800`, "\x01", "é",
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 100_000 {
		doc := whole
		for range 1 + rng.IntN(3) {
			from := rng.IntN(len(doc))
			to := min(len(doc), from+rng.IntN(3))
			doc = doc[:from] + parts[rng.IntN(len(parts))] + doc[to:]
		}
		d := tokenizer{data: []byte(doc)}
		ok := d.goThrough(0)
		ok = ok && d.past(d.at) == len(doc)
		if want := json.Valid([]byte(doc)); ok != want {
			t.Fatalf("%q is JSON: %v, want %v", doc, ok, want)
		}
	}
}

// goThrough goes past a value behind a separator.
func (d *tokenizer) goThrough(separator byte) bool {
	t, ok := d.next(separator)
	if !ok || t.kind == '}' || t.kind == ']' {
		return false
	}
	if t.kind != '{' && t.kind != '[' {
		return true
	}
	for separator = 0; !d.ends(); separator = ',' {
		if t.kind == '{' {
			if key, ok := d.next(separator); !ok || key.kind != '"' {
				return false
			}
			separator = ':'
		}
		if !d.goThrough(separator) {
			return false
		}
	}
	end, ok := d.next(0)
	return ok && end.kind == t.kind+2 // in ASCII
}
