package refrigerant

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// fiftyPound is a common size of recovery cylinder.
var fiftyPound = Cylinder{WaterCapacity: quantity.Pounds(47.7), Tare: quantity.Pounds(28)}

func TestCylinderVolume(t *testing.T) {
	source := verify.Source{
		Cite: "49 CFR 173.304a(a)(2), note 1 to the table: one pound of water is 27.737 cubic " +
			"inches at 60 °F",
		Kind: verify.Published,
	}
	c := Cylinder{WaterCapacity: quantity.Pounds(1)}
	verify.Relative(
		t, source, "volume of a cylinder of 1 lb water capacity", "in³", 27.737,
		c.Volume().CubicInches(), 1e-12,
	)
	water := verify.Source{
		Cite: "ISO 4064 annex, density of water 0.99910 kg/L at 15 °C and 0.99894 kg/L at 16 " +
			"°C: 62.37 lb/ft³ at 60 °F",
		Kind: verify.Published,
	}
	verify.Relative(
		t, water, "water in a cylinder per cubic foot", "lb", 62.37, 1/c.Volume().CubicFeet(),
		1.5e-3,
	)
}

func TestSafeFill(t *testing.T) {
	r := mustLookup(t, "R-22")
	f, err := fiftyPound.SafeFill(r)
	if err != nil {
		t.Fatal(err)
	}
	if f.Gross != f.Net+fiftyPound.Tare {
		t.Errorf("gross %v is not net %v and tare", f.Gross, f.Net)
	}
	level, err := fiftyPound.LiquidLevel(r, f.Net, fillTemperature)
	if err != nil || math.Abs(level-0.8) > 1e-9 {
		t.Errorf("level at 130 °F is %v, %v", level, err)
	}
	full, err := fiftyPound.LiquidFullTemperature(r, f.Net)
	if err != nil || full < quantity.Fahrenheit(131) {
		t.Errorf("liquid-full at %v, %v: 49 CFR 173.304(b) wants above 131 °F", full, err)
	}
	flammable, err := fiftyPound.SafeFill(mustLookup(t, "R-290"))
	if err != nil || len(flammable.Cautions) <= len(f.Cautions) {
		t.Errorf("R-290: %v, %v", flammable.Cautions, err)
	}
}

// A gas with a filling density of its own never gets more than that, and none in
// a cylinder that is too weak for it.
func TestSafeFillByFillingDensity(t *testing.T) {
	source := verify.Source{
		Cite: "49 CFR 173.304a(a)(2), table 1, maximum permitted filling density",
		Kind: verify.Published,
	}
	c := Cylinder{WaterCapacity: quantity.Kilograms(100), Tare: quantity.Kilograms(50)}
	for _, d := range []struct{ service, ratio float64 }{{1800, 68}, {1900, 68}, {2000, 70.3},
		{2265, 73.2}, {2400, 74.5}, {4500, 74.5}} {
		c.Service = quantity.PSIG(d.service)
		f, err := c.SafeFill(mustLookup(t, "R-744"))
		if err != nil || f.Service != quantity.PSIG(1800) {
			t.Fatalf("%v psig: %+v, %v", d.service, f, err)
		}
		verify.Value(
			t, source, fmt.Sprintf("R-744 filling density, cylinder of %v psig", d.service), "%",
			d.ratio, f.Net.Kilograms(), 1e-9,
		)
	}
	for _, d := range fillingDensities {
		c.Service = quantity.PSIG(d.service)
		f, err := c.SafeFill(mustLookup(t, d.designation))
		if err != nil || f.Net.Kilograms() > 100*d.ratio+1e-9 {
			t.Errorf(
				"%s: %v kg in 100 kg of water, table says %v %%, %v", d.designation,
				f.Net.Kilograms(), 100*d.ratio, err,
			)
		}
	}
	var out *RangeError
	for _, tc := range []struct {
		designation string
		service     float64
	}{
		{"R-744", 0}, {"R-744", 400}, {"R-744", 1799}, {"R-1132a", 0}, {"R-1132a", 1800},
		{"R-472A", 0}, {"R-472A", 400},
		{"R-22", 200}, {"R-410A", 350}, {"R-717", 400},
		{"R-23", 0}, {"R-23", 2400}, // no filling density, and no liquid at 130 °F
	} {
		c.Service = quantity.PSIG(tc.service)
		if f, err := c.SafeFill(mustLookup(t, tc.designation)); !errors.As(err, &out) {
			t.Errorf("%s in a cylinder of %v psig: %+v, %v", tc.designation, tc.service, f, err)
		}
	}
}

// The service pressure that 5/4 asks for is that of the cylinders in use.
func TestLeastServicePressure(t *testing.T) {
	practice := verify.Source{
		Cite: "recovery cylinders for R-410A are stamped DOT-4BA400",
		Kind: verify.CommonPractice,
	}
	least, err := mustLookup(t, "R-410A").leastService()
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, practice, "least service pressure of a cylinder for R-410A, 49 CFR 173.301a(d)", "psig",
		400, least.PSIG(), 15,
	)
}

// No fill is liquid-full at 131 °F, and one that is near to it says how near.
func TestLiquidFullMargin(t *testing.T) {
	c := Cylinder{WaterCapacity: quantity.Kilograms(100), Service: quantity.PSIG(1800)}
	for _, r := range All() {
		f, err := c.SafeFill(r)
		if err != nil || r.supercriticalInSummer() {
			continue
		}
		if f.LiquidFull != 0 && f.LiquidFull < quantity.Fahrenheit(131) {
			t.Errorf("%v: liquid-full at %v", r, f.LiquidFull)
		}
	}
	f, err := c.SafeFill(mustLookup(t, "R-469A"))
	if err != nil || f.LiquidFull < quantity.Fahrenheit(131) ||
		f.LiquidFull > quantity.Fahrenheit(134) {
		t.Errorf("R-469A: liquid-full at %v, %v", f.LiquidFull, err)
	}
}

func TestRoomFor(t *testing.T) {
	r := mustLookup(t, "R-134a")
	room, err := fiftyPound.RoomFor(r, quantity.Pounds(28+10))
	if err != nil || math.Abs(room.Contents.Pounds()-10) > 1e-9 ||
		math.Abs(float64(room.Safe-room.Contents-room.MayTake)) > 1e-9 {
		t.Errorf("%+v, %v", room, err)
	}
	over, err := fiftyPound.RoomFor(r, quantity.Pounds(28+60))
	if err != nil || over.MayTake >= 0 || over.Cautions[0].Code != "caution.overfilled" {
		t.Errorf("%+v, %v", over, err)
	}
	var out *RangeError
	if _, err := fiftyPound.RoomFor(r, quantity.Pounds(20)); !errors.As(err, &out) {
		t.Errorf("less than the tare: %v", err)
	}
}

// Level and contents are inverse, a warmer cylinder is fuller, and the liquid-full
// temperature is where the level reaches one.
func TestCylinderLevels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		c := Cylinder{
			WaterCapacity: quantity.Kilograms(rapid.Float64Range(1, 500).Draw(t, "water")),
			Tare:          quantity.Kilograms(rapid.Float64Range(0, 200).Draw(t, "tare")),
		}
		low, high := r.Limits().MinTemperature, r.Critical().Temperature
		place := rapid.Float64Range(0.05, 0.9).Draw(t, "temperature")
		temp := low + quantity.Temperature(place)*(high-low)
		level := rapid.Float64Range(0.3, 0.97).Draw(t, "level")
		net, err := c.ContentsFromLevel(r, level, temp)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := c.LiquidLevel(r, net, temp); err != nil || math.Abs(back-level) > 1e-9 {
			t.Fatalf("%v: level %v becomes %v, %v", r, level, back, err)
		}
		full, err := c.LiquidFullTemperature(r, net)
		var out *RangeError
		if errors.As(err, &out) {
			return // so little that it never fills
		}
		if err != nil || full < temp {
			t.Fatalf("%v: full at %v, below %v, %v", r, full, temp, err)
		}
		if full > 0.99*high {
			return // levels change with a root there
		}
		if before, err := c.LiquidLevel(r, net, full-0.01); err != nil || before < 0.99 {
			t.Errorf("%v: level just below the liquid-full temperature is %v, %v", r, before, err)
		}
		if full+1 < high {
			if _, err := c.LiquidLevel(r, net, full+1); !errors.As(err, &out) {
				t.Errorf("%v: past liquid-full: %v", r, err)
			}
		}
	})
}

func TestCylinderRefusals(t *testing.T) {
	r := mustLookup(t, "R-22")
	nan := quantity.Mass(math.NaN())
	for name, err := range map[string]error{
		"no capacity":   second(Cylinder{}.SafeFill(r)),
		"NaN capacity":  second(Cylinder{WaterCapacity: nan}.SafeFill(r)),
		"negative tare": second(Cylinder{WaterCapacity: 1, Tare: -1}.SafeFill(r)),
		"NaN gross":     second(fiftyPound.Contents(nan)),
		"level 1.2":     second(fiftyPound.ContentsFromLevel(r, 1.2, 300)),
		"NaN net":       second(fiftyPound.LiquidLevel(r, nan, 300)),
		"too hot":       second(fiftyPound.LiquidLevel(r, 1, 500)),
		"too much":      second(fiftyPound.LiquidFullTemperature(r, 1000)),
		"too little":    second(fiftyPound.LiquidFullTemperature(r, 0.1)),
	} {
		var out *RangeError
		if !errors.As(err, &out) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzCylinder(f *testing.F) {
	f.Add(uint8(3), 21.6, 12.7, 35.0, 0.5, 300.0)
	f.Add(uint8(31), 0.0, -1.0, math.Inf(1), 2.0, math.NaN())
	f.Add(uint8(3), 21.6, math.Inf(-1), 35.0, 0.5, 300.0)
	f.Fuzz(func(t *testing.T, i uint8, water, tare, gross, level, temp float64) {
		r := &roster[int(i)%len(roster)]
		c := Cylinder{WaterCapacity: quantity.Mass(water), Tare: quantity.Mass(tare)}
		for _, v := range []func() (float64, error){
			func() (float64, error) { v, err := c.SafeFill(r); return float64(v.Net), err },
			func() (float64, error) {
				v, err := c.RoomFor(r, quantity.Mass(gross))
				return float64(v.MayTake), err
			},
			func() (float64, error) {
				v, err := c.Contents(quantity.Mass(gross))
				return float64(v), err
			},
			func() (float64, error) {
				v, err := c.ContentsFromLevel(r, level, quantity.Temperature(temp))
				return float64(v), err
			},
			func() (float64, error) {
				return c.LiquidLevel(r, quantity.Mass(gross), quantity.Temperature(temp))
			},
			func() (float64, error) {
				v, err := c.LiquidFullTemperature(r, quantity.Mass(gross))
				return float64(v), err
			},
		} {
			if x, err := v(); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
				t.Errorf("%v, %+v: %v", r, c, x)
			}
		}
	})
}

// At the critical temperature nothing parts liquid from vapor, whatever the cylinder holds.
func TestNoLiquidLevelAtTheCriticalTemperature(t *testing.T) {
	for _, designation := range []string{"R-22", "R-744", "R-410A", "R-448A"} {
		r := mustLookup(t, designation)
		c := r.Critical()
		net := quantity.Kilograms(float64(c.Density) * float64(fiftyPound.Volume()))
		for _, share := range []quantity.Mass{0.2, 0.999999, 1, 1.000001, 1.4} {
			for _, at := range []quantity.Temperature{c.Temperature, c.Temperature + 1e-6,
				c.Temperature + 20} {
				level, err := fiftyPound.LiquidLevel(r, share*net, at)
				var outside *RangeError
				if !errors.As(err, &outside) || level != 0 {
					t.Errorf("%v of %v at %v: level %v, %v", share*net, r, at, level, err)
				} else if full := strings.Contains(outside.Advice,
					"liquid-full"); at == c.Temperature && share != 1 && full != (share > 1) {
					t.Errorf("%v of %v at %v: %v", share*net, r, at, err)
				}
			}
			if level, err := fiftyPound.LiquidLevel(r, min(share, 0.999999)*net,
				c.Temperature*(1-1e-9)); err != nil ||
				!(level >= 0 && level <= 1) {
				t.Errorf(
					"%v of %v just below its critical temperature: level %v, %v", share*net, r,
					level, err,
				)
			}
		}
	}
}
