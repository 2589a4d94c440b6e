package table

import (
	"math"
	"testing"
)

// invented has the shape of a saturation curve: ln p linear in 1/T.
func invented(name string, glide float64) Source {
	const end, low, high, cells = 400.0, 250.0, 396.0, 60
	f := Source{Name: name, CriticalTemperature: end, Low: low, High: high}
	g := NewRoot(end, low, high, cells)
	pressure := func(t float64) float64 { return 4e6 * math.Exp(2700*(1/400.-1/t)) }
	value := func(c Curve, u float64) float64 {
		t := g.At(u)
		if c == DewPressure {
			t -= glide
		}
		if c.steep() {
			return c.Compress(pressure(t))
		}
		return 200 + t
	}
	for c := range Curves {
		for i := range cells + 1 {
			u, step := float64(i), 1e-4
			f.Curves[c].Values = append(f.Curves[c].Values, value(c, u))
			f.Curves[c].Slopes = append(
				f.Curves[c].Slopes, (value(c, u+step)-value(c, u-step))/(2*step),
			)
		}
	}
	return f
}

func TestCodecRoundTrip(t *testing.T) {
	stored := string(Encode([]Source{invented("pure", 0), invented("blend", 5)}))
	for _, tc := range []struct {
		name  string
		glide float64
	}{{"pure", 0}, {"blend", 5}} {
		s, err := Decode(stored, tc.name)
		if err != nil || s == nil {
			t.Fatalf("%s: %v, %v", tc.name, s, err)
		}
		for temp := 250.5; temp < 396; temp += 0.37 {
			b, ok1 := s.At(BubblePressure, temp)
			d, ok2 := s.At(DewPressure, temp)
			if !ok1 || !ok2 {
				t.Fatalf("%s: nothing at %v K", tc.name, temp)
			}
			want := 4e6 * math.Exp(2700*(1/400.-1/temp))
			if math.Abs(b/want-1) > 1e-6 {
				t.Errorf("%s at %v K: %v Pa, want %v", tc.name, temp, b, want)
			}
			if tc.glide == 0 && b != d {
				t.Errorf("bubble %v, dew %v", b, d)
			}
			if h, _ := s.At(BubbleEnthalpy, temp); math.Abs(h-200-temp) > 1e-3 {
				t.Errorf("enthalpy %v at %v K", h, temp)
			}
			if back, ok := s.Temperature(Bubble, b); !ok || math.Abs(back-temp) > 2*closely {
				t.Errorf("%s: bubble temperature at %v Pa is %v, want %v", tc.name, b, back, temp)
			}
		}
		for _, bad := range []float64{0, 100, 397, math.NaN(), math.Inf(1)} {
			if v, ok := s.At(BubblePressure, bad); ok {
				t.Errorf("At(%v) = %v", bad, v)
			}
			if v, ok := s.Temperature(Dew, bad); ok {
				t.Errorf("Temperature(%v) = %v", bad, v)
			}
		}
	}
	if s, err := Decode(stored, "none"); s != nil || err != nil {
		t.Errorf("unknown name: %v, %v", s, err)
	}
}

// Damaged data is refused, not read past its end.
func FuzzDecode(f *testing.F) {
	stored := Encode([]Source{invented("x", 1)})
	f.Add(stored)
	f.Add(stored[:len(stored)-1])
	f.Add([]byte(magic))
	f.Fuzz(func(t *testing.T, b []byte) {
		if s, err := Decode(string(b), "x"); s != nil && err == nil {
			s.At(BubblePressure, 300)
			s.Temperature(Dew, 1e6)
		}
	})
}
