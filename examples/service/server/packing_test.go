package server

import (
	"bytes"
	"compress/gzip"
	"io"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// unpackedBy compress/gzip, which wants one member and nothing behind it.
func unpackedBy(t rapid.TB, packed []byte) []byte {
	in := bytes.NewReader(packed)
	z, err := gzip.NewReader(in)
	if err != nil {
		t.Fatal(err)
	}
	z.Multistream(false)
	text, err := io.ReadAll(z)
	if err != nil || in.Len() != 0 {
		t.Fatal(err, in.Len())
	}
	return text
}

func TestWhatIsPackedUnpacks(t *testing.T) {
	word := rapid.OneOf(
		rapid.SliceOfN(rapid.Byte(), 0, 40),
		rapid.Map(rapid.IntRange(0, 700), func(n int) []byte { return bytes.Repeat([]byte{'a'}, n) }),
		rapid.SampledFrom([][]byte{[]byte(`{"name":"`), []byte("° ±"), []byte(api.ExampleVisit)}),
		rapid.Map(rapid.IntRange(0, 70_000), func(n int) []byte {
			text := make([]byte, n)
			for i, state := 0, uint32(n); i < n; i++ {
				state = state*1664525 + 1013904223
				text[i] = byte(state >> 24)
			}
			return text
		}),
	)
	rapid.Check(t, func(t *rapid.T) {
		text := bytes.Join(rapid.SliceOfN(word, 0, 12).Draw(t, "words"), nil)
		before := []byte("before")
		packed := appendGzip(before, text)
		if !bytes.HasPrefix(packed, before) {
			t.Fatal("what stood before is gone")
		}
		if again := unpackedBy(t, packed[len(before):]); !bytes.Equal(again, text) {
			t.Fatalf("%d bytes come back as %d, or others", len(text), len(again))
		}
	})
}

func TestAnAnswerIsPackedWell(t *testing.T) {
	text := bytes.Repeat([]byte(api.ExampleVisit), 3)
	if packed := appendGzip(nil, text); len(packed) > len(text)/3 {
		t.Errorf("%d bytes of %d", len(packed), len(text))
	}
}

func BenchmarkGzip(b *testing.B) {
	v, err := satline.DecodeVisit([]byte(api.ExampleVisit))
	if err != nil {
		b.Fatal(err)
	}
	a, err := satline.Assess(v)
	if err != nil {
		b.Fatal(err)
	}
	text, err := api.AppendInUnits(nil, &a, quantity.IP)
	if err != nil {
		b.Fatal(err)
	}
	var room []byte
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		room = appendGzip(room[:0], text)
	}
	b.ReportMetric(float64(len(room))/float64(len(text)), "of-it")
}
