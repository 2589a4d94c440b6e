package refrigerant

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"github.com/satline/satline/quantity"
)

// A nil *Refrigerant, the result of an error that was not looked at, and the zero
// one answer every question with "none" or ErrNoRefrigerant.
func TestNoRefrigerant(t *testing.T) {
	wants := reflect.TypeFor[error]()
	for _, none := range []*Refrigerant{nil, {}} {
		v := reflect.ValueOf(none)
		for i := range v.NumMethod() {
			name, m := v.Type().Method(i).Name, v.Method(i)
			args := make([]reflect.Value, m.Type().NumIn())
			for k := range args {
				args[k] = reflect.Zero(m.Type().In(k))
				if m.Type().In(k) == reflect.TypeFor[LeakCase]() {
					args[k] = reflect.ValueOf(
						LeakCase{Temperature: 280, From: Vapor, Lost: []float64{0.1}},
					)
				}
			}
			if name == "MarshalText" {
				continue // of none, as of its designation, no text
			}
			for _, out := range m.Call(args) {
				switch {
				case out.Type() == wants:
					if err, _ := out.Interface().(error); !errors.Is(err, ErrNoRefrigerant) {
						t.Errorf("%s of %#v: %v", name, none, err)
					}
				case out.Kind() == reflect.Float64:
					if x := out.Float(); x != 0 {
						t.Errorf("%s of none is %g", name, x)
					}
				}
			}
		}
	}
	for _, err := range []error{
		second(Cylinder{WaterCapacity: 20, Tare: 10}.SafeFill(nil)),
		second(Cylinder{WaterCapacity: 20, Tare: 10}.RoomFor(nil, 12)),
		second(Cylinder{WaterCapacity: 20, Tare: 10}.ContentsFromLevel(nil, 0.5, 290)),
		second(Cylinder{WaterCapacity: 20, Tare: 10}.LiquidLevel(nil, 5, 290)),
		second(Cylinder{WaterCapacity: 20, Tare: 10}.LiquidFullTemperature(nil, 15)),
	} {
		if !errors.Is(err, ErrNoRefrigerant) {
			t.Errorf("a cylinder of no refrigerant: %v", err)
		}
	}
	fits, err := StandingPressure(1e6, 290, 1, nil, new(Refrigerant), mustLookup(t, "R-22"))
	if err != nil || len(fits) != 1 {
		t.Errorf("standing pressure among none and R-22: %v, %v", fits, err)
	}
}

// What is not known is not called safe.
func TestNoRefrigerantIsNotSafe(t *testing.T) {
	var none *Refrigerant
	if !none.Flammable() || none.SafetyGroup() != Unclassified || len(none.Hazards()) < 3 {
		t.Errorf(
			"flammable %v, group %q, hazards %v", none.Flammable(), none.SafetyGroup(),
			none.Hazards(),
		)
	}
}

// Nothing that is asked of a refrigerant gives an infinity or what is no number.
func TestNumbersThatAreNone(t *testing.T) {
	r := mustLookup(t, "R-454B")
	hostile := []float64{
		0, math.NaN(), math.Inf(1), math.Inf(-1), -300, math.MaxFloat64, -math.MaxFloat64, 5e-324,
	}
	for _, x := range hostile {
		for _, y := range hostile {
			p, line := quantity.Pressure(x), quantity.Temperature(y)
			for name, err := range map[string]error{
				"Superheat":       second(r.Superheat(p, line)),
				"Subcooling":      second(r.Subcooling(p, line)),
				"State":           second(r.State(p, line)),
				"StateAtEnthalpy": second(r.StateAtEnthalpy(p, quantity.SpecificEnthalpy(y))),
				"StateAtEntropy":  second(r.StateAtEntropy(p, quantity.SpecificEntropy(y))),
				"StateAtQuality":  second(r.StateAtQuality(p, y)),
				"SaturatedVapor":  second(r.SaturatedVapor(line)),
			} {
				var out *RangeError
				if !errors.As(err, &out) || out.Advice == "" {
					t.Errorf("%s at %g and %g: %v", name, x, y, err)
				}
			}
		}
	}
}

// A designation pasted from a document has dashes for hyphens.
func TestLookupTakesDashes(t *testing.T) {
	for _, c := range [][2]string{
		{"R\u2013410A", "R-410A"}, {"R\u2011454B", "R-454B"}, {"R\u221222", "R-22"},
		{"R\u00a0\u2010 1234ze(E)", "R-1234ze(E)"},
	} {
		if r := mustLookup(t, c[0]); r.Designation() != c[1] {
			t.Errorf("%q is %v", c[0], r)
		}
	}
}
