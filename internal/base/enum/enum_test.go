package enum

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
)

type color int

const (
	red color = iota + 1
	green
)

var colors = []string{"no color", "red", "green"}

func TestNames(t *testing.T) {
	for v, want := range map[color]string{-1: "no color", 0: "no color", red: "red", green: "green",
		3: "no color"} {
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
	for v, want := range map[color]string{0: "no color", green: "green"} {
		if got, err := Text("color", colors, v); err != nil || string(got) != want {
			t.Errorf("%d is written as %q, %v", v, got, err)
		}
	}
	v := green
	wrong, ok := errors.AsType[*quantity.NameError](Parse("color", colors, []byte("mauve"), &v))
	if want := (quantity.NameError{Of: "color", Given: "mauve",
		Known: []string{"red", "green"}}); !ok ||
		!cmp.Equal(*wrong, want) ||
		v != green {
		t.Errorf("%v and %d", wrong, v)
	}
}

// Constants that count from 0 are named in an error as they are.
func TestFromZero(t *testing.T) {
	names := []string{"", "red", "green"}
	for i, name := range names[1:] {
		if got, err := TextFromZero("color", names, color(i)); string(got) != name {
			t.Errorf("%d is written as %q, %v", i, got, err)
		}
		v := color(-1)
		if err := ParseFromZero("color", names, []byte(name), &v); err != nil || v != color(i) {
			t.Errorf("%q reads as %d, %v", name, v, err)
		}
	}
	_, err := TextFromZero("color", names, color(7))
	if wrong, ok := errors.AsType[*quantity.NameError](err); !ok || wrong.Given != "7" {
		t.Errorf("7 is written with %v", err)
	}
	v := green
	if err := ParseFromZero("color", names, []byte("mauve"), &v); !isNameError(err) || v != green {
		t.Errorf("mauve reads as %d, %v", v, err)
	}
}

// What is no constant is not written, neither is a zero that has no word.
func TestNoConstant(t *testing.T) {
	for _, v := range []color{-1, 3} {
		if text, err := Text("color", colors, v); !isNameError(err) {
			t.Errorf("%d is written as %q, %v", v, text, err)
		}
	}
	if text, err := Text("color", []string{"", "red"}, color(0)); !isNameError(err) {
		t.Errorf("written as %q, %v", text, err)
	}
}

func isNameError(err error) bool {
	_, ok := errors.AsType[*quantity.NameError](err)
	return ok
}
