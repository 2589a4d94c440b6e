package readcheck

import (
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func temp(f float64) Temp {
	u := quantity.Fahrenheit(f).PlusMinus(quantity.FahrenheitDelta(0.6))
	return &u
}

func gauge(p float64) Gauge {
	u := quantity.PSIG(p).PlusMinus(quantity.PSIG(0.6))
	return &u
}

// sound is an R-410A machine on a mild day; invented.
func sound() Input {
	return Input{
		SuctionPressure: gauge(118), LiquidPressure: gauge(318),
		EvaporatingDew: temp(40), CondensingBubble: temp(100), CondensingDew: temp(100.2),
		SuctionLine: temp(52), LiquidLine: temp(90), DischargeLine: temp(150),
		OutdoorDryBulb: temp(82), CondenserLeaving: temp(97),
		ReturnDryBulb: temp(75), ReturnWetBulb: temp(63),
		SupplyDryBulb: temp(56), SupplyWetBulb: temp(54.5),
	}
}

func TestSoundReadingsPass(t *testing.T) {
	if got := Check(new(sound())); len(got) != 0 {
		t.Errorf("sound readings were doubted: %+v", got)
	}
	if got := Check(&Input{}); len(got) != 0 {
		t.Errorf("no readings were doubted: %+v", got)
	}
}

func TestEachRuleFires(t *testing.T) {
	for code, change := range map[string]func(*Input){
		"gauges-swapped": func(in *Input) {
			in.SuctionPressure, in.LiquidPressure = in.LiquidPressure, in.SuctionPressure
		},
		"pressures-equal": func(in *Input) { in.LiquidPressure = gauge(120) },
		"return-wet-bulb-above-dry-bulb": func(in *Input) {
			in.ReturnDryBulb, in.ReturnWetBulb = in.ReturnWetBulb, in.ReturnDryBulb
		},
		"supply-wet-bulb-above-dry-bulb": func(in *Input) { in.SupplyWetBulb = temp(60) },
		"return-drier-than-dry":          func(in *Input) { in.ReturnWetBulb = temp(36) },
		"return-saturated":               func(in *Input) { in.ReturnWetBulb = temp(74) },
		"return-dry-bulb-is-a-wet-bulb": func(in *Input) {
			in.ReturnDryBulb, in.ReturnWetBulb, in.SupplyDryBulb = temp(62), nil, temp(53)
		},
		"supply-dry-bulb-is-a-wet-bulb": func(in *Input) {
			in.ReturnWetBulb, in.SupplyDryBulb, in.SupplyWetBulb = temp(57), temp(48), nil
		},
		"suction-line-cannot-be": func(in *Input) { in.SuctionLine = temp(15) },
		// 10 and 32 °C beside what boils at 40 °F and condenses at 100 °F.
		"lines-in-celsius": func(in *Input) {
			in.SuctionLine, in.LiquidLine = temp(10), temp(32)
		},
		"suction-line-below-saturation":         func(in *Input) { in.SuctionLine = temp(36) },
		"liquid-line-below-outdoor":             func(in *Input) { in.LiquidLine = temp(78) },
		"liquid-line-above-saturation":          func(in *Input) { in.LiquidLine = temp(104) },
		"condensing-below-outdoor":              func(in *Input) { in.CondensingDew = temp(78) },
		"evaporating-above-return":              func(in *Input) { in.EvaporatingDew = temp(80) },
		"evaporating-above-supply":              func(in *Input) { in.EvaporatingDew = temp(60) },
		"suction-line-above-outdoor-and-return": func(in *Input) { in.SuctionLine = temp(95) },
		"discharge-line-below-condensing":       func(in *Input) { in.DischargeLine = temp(90) },
		"supply-above-return": func(in *Input) {
			in.SupplyDryBulb, in.SupplyWetBulb = temp(80), nil
		},
		"condenser-leaving-below-entering": func(in *Input) { in.CondenserLeaving = temp(78) },
	} {
		in := sound()
		change(&in)
		found := false
		for _, d := range Check(&in) {
			found = found || d.Code == code
			if len(d.Values) == 0 || len(d.Fields) == 0 {
				t.Errorf("%s: incomplete doubt %+v", code, d)
			}
		}
		if !found {
			t.Errorf("%s did not fire", code)
		}
	}
	codes := map[string]bool{}
	for _, r := range rules {
		if codes[r.code] {
			t.Errorf("rule %s stands twice", r.code)
		}
		codes[r.code] = true
	}
	if len(codes) != 20 {
		t.Errorf("%d rules, and the table above tests 20", len(codes))
	}
}

// Nothing cools air far below what boils in its coil; somewhat below, an instrument may be off.
func TestSupplyFarBelowEvaporating(t *testing.T) {
	for supply, want := range map[float64]Weight{32: Doubtful, 13: Impossible} {
		in := Input{EvaporatingDew: temp(40), SupplyDryBulb: temp(supply)}
		if got := Check(&in); len(got) != 1 || got[0].Weight != want {
			t.Errorf("supply %v °F: %+v", supply, got)
		}
	}
}

// A supply "dry bulb" that is a wet bulb, common practice, no source: a return
// read as 62 °F with a supply of 53 °F.
func TestReturnOf62WithSupplyOf53(t *testing.T) {
	in := Input{ReturnDryBulb: temp(62), SupplyDryBulb: temp(53), EvaporatingDew: temp(40)}
	got := Check(&in)
	if len(got) != 1 || got[0].Code != "return-dry-bulb-is-a-wet-bulb" ||
		got[0].Weight != Doubtful {
		t.Errorf("got %+v", got)
	}
}

// A doubt needs more than the instruments can explain, whatever they are.
func TestNoDoubtWithinUncertainty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		std := rapid.Float64Range(0.05, 3).Draw(t, "std")
		low := rapid.Float64Range(280, 300).Draw(t, "low")
		below := rapid.Float64Range(0, coverage).Draw(t, "below")
		sat := quantity.Temperature(low).PlusMinus(0)
		line := quantity.Temperature(low - below*std*0.999).PlusMinus(quantity.KelvinDelta(std))
		if got := Check(&Input{EvaporatingDew: &sat, SuctionLine: &line}); len(got) != 0 {
			t.Fatalf("doubted %v against %v: %+v", line, sat, got)
		}
	})
}

func TestHeatingTurnsCoolingChecksOff(t *testing.T) {
	in := sound()
	in.Heating = true
	in.SupplyDryBulb = temp(95)
	for _, d := range Check(&in) {
		if d.Code == "supply-above-return" {
			t.Errorf("a heating machine was doubted: %s", d.Code)
		}
	}
}

// From a wet coil the supply wet bulb is nearly its dry bulb: there the rule
// has nothing to say, however cold the supply is. From dry air it does, and
// air cooled to the target split is left alone.
func TestSupplyWetBulbShowsInDryAirOnly(t *testing.T) {
	for _, c := range []struct {
		db, wb, supply float64
		want           bool
	}{
		{76, 59, 50, true}, {76, 59, 54.5, false}, {76, 59, 40, false}, {76, 66, 50, false},
		{76, 66, 58, false}, {74, 54, 47, true},
	} {
		in := Input{
			ReturnDryBulb: temp(c.db),
			ReturnWetBulb: temp(c.wb),
			SupplyDryBulb: temp(c.supply),
		}
		got := false
		for _, d := range Check(&in) {
			got = got || d.Code == "supply-dry-bulb-is-a-wet-bulb"
		}
		if got != c.want {
			t.Errorf(
				"return %v / %v °F, supply %v °F: fired %v, want %v", c.db, c.wb, c.supply, got,
				c.want,
			)
		}
	}
}
