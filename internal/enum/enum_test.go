package enum

import "testing"

type color int

const (
	red color = iota + 1
	green
)

var colors = []string{"no color", "red", "green"}

func TestNames(t *testing.T) {
	for v, want := range map[color]string{-1: "no color", 0: "no color", red: "red", green: "green", 3: "no color"} {
		if got := Name(colors, v); got != want {
			t.Errorf("%d is named %q, want %q", v, got, want)
		}
	}
	for i, name := range colors {
		v := color(-1)
		if err := Parse("color", colors, []byte(name), &v); err != nil || v != color(i) {
			t.Errorf("%q reads as %d, %v", name, v, err)
		}
	}
	v := green
	err := Parse("color", colors, []byte("mauve"), &v)
	if want := `color "mauve" is not known; write one of "red", "green"`; err == nil || err.Error() != want || v != green {
		t.Errorf("%v and %d, want %s", err, v, want)
	}
}
