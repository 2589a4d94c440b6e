package words

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestMagnitude(t *testing.T) {
	for place := -290; place <= 307; place++ {
		ten := math.Pow10(place)
		for v, want := range map[float64]int{
			ten: place, math.Nextafter(ten, 0): place - 1, math.Nextafter(ten, math.MaxFloat64): place,
			2 * ten: place, 9.999 * ten: place,
		} {
			if got := magnitude(v); got != want {
				t.Errorf("%v is of magnitude %d, want %d", v, got, want)
			}
		}
	}
	for bits := -960; bits <= 1023; bits++ {
		v := math.Ldexp(1, bits)
		_, exponent, _ := strings.Cut(strconv.FormatFloat(v, 'e', 16, 64), "e")
		if want, _ := strconv.Atoi(exponent); magnitude(v) != want {
			t.Errorf("2^%d is of magnitude %d, want %d", bits, magnitude(v), want)
		}
	}
}
