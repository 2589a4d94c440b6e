package table

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const domeLow, domeHigh, domeCritical = 220.0, 345.0, 350.0

// inventedDome has a term of each kind.
func inventedDome(name string) DomeSource {
	d := DomeSource{Name: name, Low: domeLow, High: domeHigh, Critical: domeCritical}
	for k := range d.Surfaces {
		s := &d.Surfaces[k]
		s.Rows, s.Columns = 3+k, 5-k
		for i := range s.Rows * s.Columns {
			s.Coefficients = append(
				s.Coefficients, math.Ldexp(float64(i%7-3), -i/3),
			) // exact in a float32
		}
	}
	return d
}

// The recurrences sum what cosines define.
func TestDomeIsItsSeries(t *testing.T) {
	source := inventedDome("x")
	d, err := DecodeDome(string(EncodeDomes([]DomeSource{inventedDome("other"), source})), "x")
	if err != nil || d == nil {
		t.Fatal(d, err)
	}
	a, b := math.Sqrt(domeCritical-domeLow), math.Sqrt(domeCritical-domeHigh)
	polynomial := func(n int, x float64) float64 {
		return math.Cos(float64(n) * math.Acos(max(-1, min(1, x))))
	}
	rapid.Check(t, func(t *rapid.T) {
		bubble := rapid.Float64Range(domeLow, domeHigh).Draw(t, "bubble")
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		var at Isobar
		if !d.At(bubble, &at) {
			t.Fatalf("nothing at %v K", bubble)
		}
		x := 1 - 2*(math.Sqrt(domeCritical-bubble)-b)/(a-b)
		for k := range Inners {
			want := 0.0
			s := &source.Surfaces[k]
			for i, c := range s.Coefficients {
				want += c * polynomial(i/s.Columns, x) * polynomial(i%s.Columns, 2*share-1)
			}
			want *= share * (1 - share)
			if got := at.Off(k, share); math.Abs(got-want) > 1e-9 {
				t.Errorf("property %d at %v K, share %v: %v, want %v", k, bubble, share, got, want)
			}
			const step = 1e-5
			slope := (at.Off(k, share+step) - at.Off(k, share-step)) / (2 * step)
			if got := at.Slope(k, share); math.Abs(got-slope) > 1e-6 {
				t.Errorf(
					"property %d at %v K, share %v: slope %v, want %v", k, bubble, share, got,
					slope,
				)
			}
		}
		for _, end := range []float64{0, 1} {
			if off := at.Off(InnerVolume, end); off != 0 {
				t.Errorf("at share %v it is %v off", end, off)
			}
		}
	})
}

func TestDomeRefuses(t *testing.T) {
	stored := string(EncodeDomes([]DomeSource{inventedDome("x")}))
	d, err := DecodeDome(stored, "x")
	if err != nil {
		t.Fatal(err)
	}
	var at Isobar
	for _, bad := range []float64{0, domeLow - 1, domeHigh + 1, domeCritical, domeCritical + 1,
		math.NaN(), math.Inf(1), math.Inf(-1)} {
		if d.At(bad, &at) {
			t.Errorf("an isobar at %v K", bad)
		}
	}
	if new(Dome).At(300, &at) {
		t.Error("the zero Dome answers")
	}
	if d, err := DecodeDome(stored, "none"); d != nil || err != nil {
		t.Errorf("unknown name: %v, %v", d, err)
	}
	if d, err := DecodeDome(stored[:len(stored)-1], "x"); d != nil || err == nil {
		t.Errorf("cut short: %v, %v", d, err)
	}
}

// Damaged data is refused, not read past its end.
func FuzzDecodeDome(f *testing.F) {
	stored := EncodeDomes([]DomeSource{inventedDome("x")})
	f.Add(stored)
	f.Add(stored[:len(stored)-1])
	f.Add([]byte(domeMagic))
	f.Fuzz(func(t *testing.T, b []byte) {
		if d, err := DecodeDome(string(b), "x"); d != nil && err == nil {
			var at Isobar
			for _, bubble := range []float64{200, 300, 340} {
				if d.At(bubble, &at) {
					at.Off(InnerTemperature, 0.3)
					at.Slope(InnerVolume, 0.7)
				}
			}
		}
	})
}
