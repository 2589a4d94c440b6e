package strictjson

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A scanner tells the tokens that json.Decoder tells, and where they end.
func TestTokensAreThoseOfTheDecoder(t *testing.T) {
	space := rapid.SampledFrom([]string{"", " ", "\n\t", "\r\n "})
	scalar := rapid.OneOf(
		rapid.SampledFrom([]string{"null", "true", "false", "-0", "1e-300", "12.5E+7",
			`"a\"b\\"`, `"\\\""`, `"\ud834\udd1e\ud800x"`, `"°,:]}{["`, `""`}),
		rapid.Map(rapid.String(), func(s string) string {
			text, _ := json.Marshal(s)
			return string(text)
		}),
	)
	var value func(depth int) *rapid.Generator[string]
	value = func(depth int) *rapid.Generator[string] {
		if depth == 0 {
			return scalar
		}
		return rapid.Custom(func(t *rapid.T) string {
			var items []string
			kind := rapid.IntRange(0, 2).Draw(t, "kind")
			if kind == 0 {
				return scalar.Draw(t, "scalar")
			}
			for i := range rapid.IntRange(0, 4).Draw(t, "items") {
				gap := space.Draw(t, "space")
				item := gap + value(depth-1).Draw(t, "item") + gap
				if kind == 1 {
					item = fmt.Sprintf(`%s"key %d"%s:%s`, gap, i, gap, item)
				}
				items = append(items, item)
			}
			in := "[]"
			if kind == 1 {
				in = "{}"
			}
			return in[:1] + strings.Join(items, ",") + space.Draw(t, "space") + in[1:]
		})
	}
	rapid.Check(t, func(t *rapid.T) {
		data := []byte(value(3).Draw(t, "document"))
		decoder := json.NewDecoder(bytes.NewReader(data))
		decoder.UseNumber()
		want := decoding{decoder}
		got, own := tokensOf(data).(*scanner)
		if !own {
			t.Fatalf("%s is taken for no JSON", data)
		}
		for {
			if g, w := got.More(), want.More(); g != w {
				t.Fatalf("%s at %d: more %v, want %v", data, got.at, g, w)
			}
			g, gErr := got.Token()
			w, wErr := want.Token()
			differ := g.kind != w.kind || !bytes.Equal(g.text, w.text)
			if wErr == nil && differ || (gErr == nil) != (wErr == nil) {
				t.Fatalf("%s: %#v, %v, want %#v, %v", data, g, gErr, w, wErr)
			}
			if gErr == io.EOF {
				return
			}
			if got.InputOffset() != want.InputOffset() {
				t.Fatalf("%s: %v ends at %d, want %d", data, g, got.InputOffset(),
					want.InputOffset())
			}
		}
	})
}
