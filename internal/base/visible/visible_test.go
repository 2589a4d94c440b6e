package visible

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

func TestWhatSteersIsShown(t *testing.T) {
	for _, s := range []string{
		"\x1b[2J", "\x00", "\x7f", "\u009b31m", "\u202e", "\u2066", "\u200f", "\u061c", "\u00ad",
		"\ufeff", "\xff",
	} {
		for name, got := range map[string]string{"Line": Line("a" + s + "b"),
			"Text": Text("a" + s + "b")} {
			if !strings.HasPrefix(got, "a\ufffd") || !strings.HasSuffix(got, "b") {
				t.Errorf("%s of %q is %q", name, s, got)
			}
		}
	}
	for _, s := range []string{"Café, 21 °C ± 0.5 °C", "雨\u3000", "👩\u200d🔧", "नमस्\u200cते"} {
		if Line(s) != s || Text(s) != s {
			t.Errorf("%q is changed", s)
		}
	}
	if got := Text("a\r\n\tb\x1b\nc\rd"); got != "a\n\tb\ufffd\nc d" {
		t.Errorf("%q", got)
	}
}

func TestNothingSteersAfterwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "text")
		line, text := Line(s), Text(s)
		for _, r := range line {
			if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
				t.Fatalf("%q has %U", line, r)
			}
		}
		for _, r := range text {
			if unicode.IsControl(r) && r != '\n' && r != '\t' ||
				unicode.Is(unicode.Bidi_Control, r) {
				t.Fatalf("%q has %U", text, r)
			}
		}
		if Line(line) != line || Text(text) != text {
			t.Fatalf("%q and %q change again", line, text)
		}
	})
}
