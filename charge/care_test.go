package charge

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func psia(v float64) *pressure {
	u := quantity.PSIA(v).PlusMinus(quantity.PSIA(0.6))
	return &u
}

func amperes(v, std float64) *quantity.Uncertain[quantity.Current] {
	u := quantity.Amperes(v).PlusMinus(quantity.Amperes(std))
	return &u
}

// easy is a compressor that is well.
func easy() Compressor {
	return Compressor{
		Superheat: about(12), Evaporating: at(40), Condensing: at(110), DischargeLine: at(165),
		Suction: psia(83), Discharge: psia(241),
	}
}

func codes(risks []Risk) string {
	var out []string
	for _, r := range risks {
		out = append(out, r.Code)
	}
	return strings.Join(out, " ")
}

func TestRisks(t *testing.T) {
	low := df(1)
	hot := func(condensing float64, outdoor *quantity.Uncertain[quantity.Temperature]) func(
		*Compressor,
	) {
		return func(c *Compressor) {
			c.Condensing, c.Outdoor, c.DischargeLine = at(condensing), outdoor, nil
		}
	}
	for _, c := range []struct {
		want   string
		change func(*Compressor)
	}{
		{"", func(*Compressor) {}},
		{"current-high", func(c *Compressor) { c.Current, c.RatedLoad = amperes(18, 0.5), 16.5 }},
		// Not to be told from it.
		{"", func(c *Compressor) { c.Current, c.RatedLoad = amperes(17, 0.5), 16.5 }},
		{"", func(c *Compressor) { c.Current = amperes(18, 0.5) }}, // no label
		{"floodback", func(c *Compressor) { c.Superheat = about(0.4) }},
		{"floodback", func(c *Compressor) { c.Superheat = about(-3) }},
		{"superheat-low", func(c *Compressor) { c.Superheat = about(4) }},
		{"", func(c *Compressor) { c.Superheat = about(4.96) }}, // told as the limit itself
		{"", func(c *Compressor) { c.Evaporating = at(31.96) }},
		{"condensing-highest", func(c *Compressor) { c.Outdoor = at(62) }}, // no fan
		{"condensing-high", func(c *Compressor) { c.Outdoor = at(70) }},
		{"", func(c *Compressor) { c.Outdoor = at(80) }},
		// The hottest days.
		{"", hot(134, at(112))},
		{"condensing-high", hot(138, at(112))},
		{"condensing-high", hot(141, at(118))},
		{"condensing-highest", hot(141, at(112))},
		{"condensing-highest", hot(146, at(122))},
		{"condensing-highest", hot(141, nil)},
		// A head-pressure control, in the cold.
		{"", func(c *Compressor) { c.Condensing, c.Outdoor = at(98), at(20) }},
		{"condensing-highest", func(c *Compressor) { c.Condensing, c.Outdoor = at(112), at(20) }},
		{"discharge-hot", func(c *Compressor) { c.DischargeLine = at(225.04) }},
		{"slugging", func(c *Compressor) { c.Superheat, c.LowestSuperheat = about(8), &low }},
		{"floodback", func(c *Compressor) { c.Superheat, c.LowestSuperheat = about(1), &low }},
		// Readings that swing say little of their mean, and not that it is liquid.
		{"", func(c *Compressor) { c.Superheat = new(df(9).PlusMinus(df(8))) }},
		{"discharge-hottest", func(c *Compressor) { c.DischargeLine = at(231) }},
		{"discharge-hot", func(c *Compressor) { c.DischargeLine = at(208) }},
		{"discharge-cool", func(c *Compressor) { c.DischargeLine = at(122) }},
		{"compression-ratio-high", func(c *Compressor) { c.Suction = psia(43) }},
		{"compression-ratio-highest", func(c *Compressor) { c.Suction = psia(22) }},
		{"suction-in-vacuum compression-ratio-highest", func(c *Compressor) {
			c.Suction = psia(11)
		}},
		{"evaporating-cold", func(c *Compressor) { c.Evaporating = at(29) }},
		{"evaporating-coldest", func(c *Compressor) { c.Evaporating = at(21) }},
		{"", func(c *Compressor) { c.Evaporating, c.Suction, c.Heating = at(21), psia(43), true }},
		{"evaporating-coldest floodback discharge-cool", func(c *Compressor) {
			c.Superheat, c.Evaporating, c.DischargeLine = about(0), at(22), at(118)
		}},
	} {
		m := easy()
		c.change(&m)
		risks := Risks(m)
		if got := codes(risks); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
		for _, r := range risks {
			_, figure := r.Says.Value("figure")
			_, limit := r.Says.Value("limit")
			_, over := r.Says.Value("over")
			ofHead := strings.HasPrefix(r.Code, "condensing")
			if !figure || !limit || over && !ofHead || r.Source.Standing == 0 {
				t.Errorf("%+v", r)
			}
		}
	}
	if r := Risks(Compressor{}); len(r) != 0 {
		t.Errorf("nothing known: %+v", r)
	}
}

// Below the atmosphere of a high site is a vacuum there, not at sea level.
func TestVacuumIsThatOfTheSite(t *testing.T) {
	m := easy()
	m.Suction, m.Discharge = psia(13), psia(60)
	m.Atmosphere = quantity.AtmosphereAt(quantity.Feet(6000))
	if got := codes(Risks(m)); strings.Contains(got, "vacuum") {
		t.Errorf("13 psia at 6,000 ft: %s", got)
	}
	m.Atmosphere = 0
	if got := codes(Risks(m)); !strings.Contains(got, "vacuum") {
		t.Errorf("13 psia at sea level: %s", got)
	}
}

// Values that are not numbers raise no alarm and no panic.
func TestRisksLeaveOutNonsense(t *testing.T) {
	nan := math.NaN()
	bad := quantity.TemperatureDelta(nan)
	r := Risks(Compressor{
		Superheat: &delta{Value: bad}, LowestSuperheat: &bad,
		Evaporating: &temperature{
			Value: quantity.Temperature(nan),
		}, Condensing: &temperature{Value: quantity.Temperature(math.Inf(1))},
		DischargeLine: &temperature{Value: quantity.Temperature(nan)},
		Suction: &pressure{
			Value: quantity.Pressure(nan),
		}, Discharge: &pressure{Value: quantity.Pressure(nan)},
		Atmosphere: quantity.Pressure(nan),
	})
	if len(r) != 0 {
		t.Errorf("%+v", r)
	}
	for _, c := range []Compressor{
		{Current: &quantity.Uncertain[quantity.Current]{Value: 1e308}, RatedLoad: 10},
		{Current: &quantity.Uncertain[quantity.Current]{Value: 10}, RatedLoad: 5e-324},
	} {
		if r := Risks(c); len(r) != 0 {
			t.Errorf("%+v", r)
		}
	}
}

// A worse value never makes a compressor look safer: gravity does not fall as
// the superheat falls, the discharge line or the ratio rises.
func TestRisksAreMonotone(t *testing.T) {
	gravity := func(c Compressor, family ...string) int {
		worst := 0
		for _, r := range Risks(c) {
			for _, f := range family {
				if strings.HasPrefix(r.Code, f) {
					worst = max(worst, 1)
					if r.Grave {
						worst = 2
					}
				}
			}
		}
		return worst
	}
	rapid.Check(t, func(rt *rapid.T) {
		value, step := rapid.Float64Range(-10, 20).
			Draw(rt, "superheat"),
			rapid.Float64Range(0, 10).
				Draw(rt, "step")
		a, b := easy(), easy()
		a.Superheat, b.Superheat = about(value), about(value-step)
		if gravity(b, "floodback", "superheat-low") < gravity(a, "floodback", "superheat-low") {
			rt.Fatalf("superheat %v and %v less", value, step)
		}
		hot := rapid.Float64Range(120, 260).Draw(rt, "discharge")
		a.DischargeLine, b.DischargeLine = at(hot), at(hot+step)
		if gravity(b, "discharge-hot") < gravity(a, "discharge-hot") {
			rt.Fatalf("discharge %v and %v more", hot, step)
		}
		p := rapid.Float64Range(15, 90).Draw(rt, "suction")
		a.Suction, b.Suction = psia(p), psia(max(p-step, 1))
		if gravity(b, "compression") < gravity(a, "compression") {
			rt.Fatalf("suction %v and %v less", p, step)
		}
	})
}

func TestCompressionRatio(t *testing.T) {
	ratio, std, err := CompressionRatio(*psia(80), *psia(240))
	if err != nil || math.Abs(ratio-3) > 1e-12 ||
		math.Abs(std/ratio-math.Hypot(0.6/80, 0.6/240)) > 1e-12 {
		t.Errorf("%v ± %v, %v", ratio, std, err)
	}
	var r *RangeError
	for _, p := range []quantity.Pressure{0, -1, quantity.Pressure(math.NaN()),
		quantity.Pressure(math.Inf(1)), 5e-324} {
		if v, _, err := CompressionRatio(p.PlusMinus(0), *psia(240)); !errors.As(err, &r) ||
			v != 0 {
			t.Errorf("suction %v: %v, %v", p, v, err)
		}
	}
}
