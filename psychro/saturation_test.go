package psychro_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

func saturation(t *testing.T, s psychro.Saturation, at quantity.Temperature) float64 {
	t.Helper()
	p, err := s.Pressure(at)
	if err != nil {
		t.Fatal(err)
	}
	return float64(p)
}

func TestSaturationPressure(t *testing.T) {
	for _, c := range []struct {
		source    verify.Source
		s         psychro.Saturation
		kelvin, p float64
		tolerance float64
	}{
		{verify.Source{Cite: "IAPWS R6-95(2018), table 8", Kind: verify.Published}, psychro.IAPWS,
			275, 698.451167, 1e-9},
		{verify.Source{Cite: "IAPWS R6-95(2018), table 8", Kind: verify.Published}, psychro.IAPWS,
			450, 932203.564, 1e-9},
		{verify.Source{Cite: "IAPWS R14-08(2011), computer-program verification",
			Kind: verify.Published}, psychro.IAPWS, 230, 8.94735, 5e-7},
		{verify.Source{Cite: "IAPWS R7-97(2012), table 35, as tests of public libraries reprint it",
			Kind: verify.Published}, psychro.IF97, 300, 3536.58941, 1e-9},
		{verify.Source{Cite: "IAPWS R14-08(2011), computer-program verification",
			Kind: verify.Published}, psychro.IF97, 230, 8.94735, 5e-7},
	} {
		verify.Relative(
			t, c.source, fmt.Sprintf("saturation pressure by %v at %g K", c.s, c.kelvin), "Pa", c.p,
			saturation(t, c.s, quantity.Kelvin(c.kelvin)), c.tolerance,
		)
	}
	// ASHRAE Handbook Fundamentals (2017), chapter 1, table 3. The handbook states
	// the equation of Hyland and Wexler to be within 300 parts in 10⁶ of it.
	table3 := verify.Source{
		Cite: "ASHRAE Handbook Fundamentals (2017), ch. 1, table 3",
		Kind: verify.Published,
	}
	for _, c := range []struct{ celsius, p, digit float64 }{
		{-20, 103.24, 0.01}, {-5, 401.74, 0.01}, {5, 872.6, 0.1}, {25, 3169.7, 0.1},
		{50, 12351.3, 0.1}, {100, 101418.0, 0.1}, {150, 476101.4, 0.1},
	} {
		at := quantity.Celsius(c.celsius)
		verify.Relative(
			t, table3, fmt.Sprintf("saturation pressure by Hyland-Wexler at %g °C", c.celsius),
			"Pa", c.p, saturation(t, psychro.HylandWexler, at), 3e-4,
		)
		verify.Value(
			t, table3, fmt.Sprintf("saturation pressure by IF97 at %g °C", c.celsius), "Pa", c.p,
			saturation(t, psychro.IF97, at), c.digit,
		)
	}
}

// The doc comment of Saturation states how far the equations are apart.
func TestSaturationsAgree(t *testing.T) {
	worst := 0.0
	for c := -60.0; c <= 200; c += 0.5 {
		hw := saturation(t, psychro.HylandWexler, quantity.Celsius(c))
		iapws := saturation(t, psychro.IAPWS, quantity.Celsius(c))
		worst = max(worst, math.Abs(hw/iapws-1))
	}
	if worst > 3.3e-4 || worst < 3e-4 {
		t.Errorf("apart by %v", worst)
	}
}

// Temperature is the inverse of Pressure, through the join of ice and water too.
func TestSaturationInverse(t *testing.T) {
	for _, s := range []psychro.Saturation{psychro.HylandWexler, psychro.IAPWS, psychro.IF97} {
		last := 0.0
		check := func(k float64) {
			p := saturation(t, s, quantity.Kelvin(k))
			back, err := s.Temperature(quantity.Pressure(p))
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(float64(back)-k) > 1e-10 {
				t.Errorf("%v: %.12g K came back as %.12g", s, k, float64(back))
			}
			if !(p > last) {
				t.Errorf("%v does not rise at %.12g K", s, k)
			}
			last = p
		}
		for k := 173.15; k < 473.15; k += 0.37 {
			check(k)
		}
		last = 0
		for k := 273.159; k < 273.161; k += 1e-6 {
			check(k)
		}
	}
}

func ExampleSaturation_Pressure() {
	for _, c := range []float64{-20, 25, 100} {
		p, err := psychro.IAPWS.Pressure(quantity.Celsius(c))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%4.0f °C: %.5g kPa\n", c, p.Kilopascals())
	}
	// Output:
	//  -20 °C: 0.10324 kPa
	//   25 °C: 3.1699 kPa
	//  100 °C: 101.42 kPa
}
