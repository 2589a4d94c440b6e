package quantity

import (
	"encoding"
	"math"
	"strconv"
	"testing"
)

// A named pair of constructor and accessor, and the symbol of the unit as text.
type named[T Quantity] struct {
	symbol string
	make   func(float64) T
	read   func(T) float64
}

// holdType holds what every type promises: each constructor is undone by its
// accessor and agrees with the text in its unit, and the texts that a value
// writes read back, bit for bit where that is promised. What is below the zero of a
// type that has one is neither read nor written.
func holdType[T Quantity](
	t *testing.T, parse func(string) (T, error), plusMinus func(T, T) Uncertain[T],
	units ...named[T],
) {
	t.Helper()
	for _, u := range units {
		for _, v := range []float64{0, 1, -3.25, 62, 1e4} {
			x := u.make(v)
			if got := u.read(x); math.Abs(got-v) > 1e-12*(math.Abs(v)+460) {
				t.Errorf("%v %s read back as %v", v, u.symbol, got)
			}
			text := strconv.FormatFloat(v, 'f', -1, 64) + " " + u.symbol
			got, err := parse(text)
			exact, written := any(x).(encoding.TextMarshaler).MarshalText()
			if x < 0 && x.kind().floor != "" {
				if err == nil || written == nil {
					t.Errorf("%q reads as %v and writes %q", text, float64(got), exact)
				}
				continue
			}
			if err != nil || math.Abs(float64(got-x)) > 1e-12*(math.Abs(float64(x))+460) {
				t.Errorf("%q reads as %v, want %v: %v", text, float64(got), float64(x), err)
			}
			back := x
			if written == nil {
				written = any(&back).(encoding.TextUnmarshaler).UnmarshalText(exact)
			}
			if written != nil || back != x {
				t.Errorf("%v %s written as %q reads as %v: %v",
					v, u.symbol, exact, float64(back), written)
			}
			if x != 0 || x.kind().floor == "" { // "-459.7 °F" is below 0 K
				holdStyles(t, x)
			}
		}
		if got := plusMinus(u.make(2), -u.make(1)); got.Std < 0 || got.Value != u.make(2) {
			t.Errorf("with an uncertainty below zero: %+v", got)
		}
	}
	if v, err := parse("1 parsec per fortnight"); err == nil {
		t.Errorf("%T reads any unit", v)
	}
}

// holdStyles holds that a value reads back in every style that it is shown in, and
// that showing it is one thing by whatever method.
func holdStyles[T Quantity](t *testing.T, x T) {
	t.Helper()
	for _, style := range []Style{{}, {System: SI}, {Comma: true}, {System: SI, Comma: true}} {
		text := x.Styled(style)
		back, err := ParseStyled[T](text, style)
		if err != nil {
			t.Errorf("%q is shown and not read: %v", text, err)
		}
		if again := back.Styled(style); again != text && x.kind().fineBelow == 0 {
			t.Errorf("%q reads back as %q", text, again)
		}
		if got := string(x.AppendStyled([]byte("x"), style)); got != "x"+text {
			t.Errorf("%q appended as %q", text, got)
		}
	}
	if x.String() != x.Format(SI) || x.Format(IP) != x.Styled(Style{}) {
		t.Errorf("String %q, Format %q and %q", x.String(), x.Format(SI), x.Format(IP))
	}
}
