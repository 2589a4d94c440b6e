// Package picturetest looks at pictures for the tests of those who draw them.
package picturetest

import (
	"bytes"
	"encoding/xml"
	"image"
	"io"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Texts parses an SVG and returns the words in it and its view box. An attribute
// that is no number fails the test.
func Texts(t interface {
	Fatalf(string, ...any)
}, svg []byte) (words []string, viewBox string) {
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return words, viewBox
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch v := token.(type) {
		case xml.StartElement:
			for _, a := range v.Attr {
				if strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
					t.Fatalf("%s %s=%q", v.Name.Local, a.Name.Local, a.Value)
				}
				if v.Name.Local == "svg" && a.Name.Local == "viewBox" {
					viewBox = a.Value
				}
			}
		case xml.CharData:
			if s := strings.TrimSpace(string(v)); s != "" {
				words = append(words, s)
			}
		}
	}
}

// Translated holds that no word of a picture stays in English in another language, but for the
// labels that a program gives it, and that one without a known language is in English.
func Translated(t interface {
	Errorf(string, ...any)
	Fatalf(string, ...any)
}, draw func(tag string) []byte) {
	in := func(tag string) []string {
		all, _ := Texts(t, draw(tag))
		return words(all)
	}
	english := in("en")
	if none := in("no tag"); len(english) < 10 || !slices.Equal(english, none) {
		t.Errorf("%q in English, %q of no tag", english, none)
	}
	for _, w := range in("es-MX") {
		if slices.Contains(english, w) {
			t.Errorf("%q in Spanish is that of English", w)
		}
	}
}

// words are those of five letters and more in texts: no figure, unit or short name.
func words(texts []string) (words []string) {
	for _, text := range texts {
		for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
			return !unicode.IsLetter(r)
		}) {
			if utf8.RuneCountInString(w) >= 5 {
				words = append(words, w)
			}
		}
	}
	return words
}

// Marked counts the pixels of the color of marks within a circle.
func Marked(m image.Image, x, y, radius float64) (n int) {
	for i := int(x - radius); i <= int(x+radius); i++ {
		for j := int(y - radius); j <= int(y+radius); j++ {
			if math.Hypot(float64(i)-x, float64(j)-y) > radius {
				continue
			}
			if r, g, b, _ := m.At(i, j).RGBA(); r>>8 > 0xa0 && g>>8 < 0x50 && b>>8 < 0x30 {
				n++
			}
		}
	}
	return n
}
