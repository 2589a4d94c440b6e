package airside

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func mustAir(t testing.TB, db, wb float64, p quantity.Pressure) psychro.Air {
	t.Helper()
	a, err := psychro.FromWetBulb(quantity.Fahrenheit(db), quantity.Fahrenheit(wb), p)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// A coil fitted to what another coil does, does the same.
func TestFitCoilReproduces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := quantity.Kilopascals(rapid.Float64Range(75, 103).Draw(t, "pressure"))
		in, err := psychro.FromRelativeHumidity(
			quantity.Celsius(rapid.Float64Range(18, 33).Draw(t, "entering")),
			rapid.Float64Range(0.2, 0.75).Draw(t, "humidity"), p,
		)
		if err != nil {
			t.Fatal(err)
		}
		flow := quantity.CFM(rapid.Float64Range(400, 2000).Draw(t, "flow"))
		m := float64(in.DryAirFlow(flow))
		ntu := rapid.Float64Range(0.5, 2.5).Draw(t, "ntu")
		ratio := rapid.Float64Range(0.8, 3).Draw(t, "ratio")
		ref := quantity.Celsius(rapid.Float64Range(-5, 12).Draw(t, "refrigerant"))
		real := Coil{
			AirSide:         quantity.Conductance(1020 * m * ntu),
			RefrigerantSide: quantity.Conductance(1020 * m * ntu * ratio),
			RatedDryAir:     quantity.MassFlow(m),
		}
		want, err := real.Through(in, flow, ref)
		if err != nil {
			t.Fatal(err)
		}
		if want.Leaving.RelativeHumidity() > 0.99 {
			return // fog tells nothing of the coil
		}
		fit, err := FitCoil(in, want.Leaving, flow, ref)
		if err != nil {
			t.Fatal(err)
		}
		got, err := fit.Through(in, flow, ref)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(got.Leaving.DryBulb()-want.Leaving.DryBulb())) > 1e-5 ||
			math.Abs(got.Leaving.HumidityRatio()-want.Leaving.HumidityRatio()) > 1e-8 {
			t.Fatalf(
				"fitted leaves %v %v, measured %v %v", got.Leaving.DryBulb(),
				got.Leaving.HumidityRatio(), want.Leaving.DryBulb(), want.Leaving.HumidityRatio(),
			)
		}
		if want.WetShare == 0 && fit.Assumed == "" {
			t.Fatal("a dry coil shows one conductance, and nothing is said to be assumed")
		}
		if split, err := FitCoilSplit(in, want.Leaving.DryBulb(), flow, ref); err != nil {
			t.Fatal(err)
		} else if again, err := split.Through(in, flow, ref); err != nil ||
			math.Abs(float64(again.Split-want.Split)) > 1e-6 {
			t.Fatalf("fitted to the split: %v, measured %v (%v)", again.Split, want.Split, err)
		}
	})
}

// Fitted at one condition, the coil is the same coil at another.
func TestFitCoilPredicts(t *testing.T) {
	real := Coil{
		AirSide:         1200,
		RefrigerantSide: 2000,
		RatedDryAir:     quantity.KilogramsPerSecond(0.65),
	}
	p := quantity.StandardAtmosphere
	first, err := real.Through(mustAir(t, 75, 62, p), quantity.CFM(1150), quantity.Fahrenheit(41))
	if err != nil {
		t.Fatal(err)
	}
	fit, err := FitCoil(first.Entering, first.Leaving, quantity.CFM(1150), quantity.Fahrenheit(41))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ db, wb, cfm, ref float64 }{{82, 70, 1150, 45}, {78, 60, 800, 38},
		{70, 58, 500, 30}, {80, 67, 1400, 46}} {
		in := mustAir(t, c.db, c.wb, p)
		want, err := real.Through(in, quantity.CFM(c.cfm), quantity.Fahrenheit(c.ref))
		if err != nil {
			t.Fatal(err)
		}
		got, err := fit.Through(in, quantity.CFM(c.cfm), quantity.Fahrenheit(c.ref))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(got.Split-want.Split)) > 1e-5 ||
			math.Abs(float64(got.Surface-want.Surface)) > 1e-5 {
			t.Errorf(
				"%+v: split %v, surface %v; want %v, %v", c, got.Split, got.Surface, want.Split,
				want.Surface,
			)
		}
	}
}

// The split of a rated coil at 400 CFM per ton, its refrigerant settling where a
// compressor that gains 2 % per °F balances it and a blower warming the air by
// 1.1 °F (365 W per 1000 CFM), against the table of targets.
func TestRatedCoilMeetsTheSplitTable(t *testing.T) {
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	worst, at, target := 0.0, "", 0.0
	least, most := 1.0, 0.0
	for _, db := range []float64{72, 75, 78, 80, 82} {
		for wb := 58.0; wb <= 70; wb += 2 {
			want, err := TargetSplit(quantity.Fahrenheit(db), quantity.Fahrenheit(wb))
			if err != nil {
				continue
			}
			in := mustAir(t, db, wb, quantity.StandardAtmosphere)
			te, ok := rising(func(f float64) float64 {
				p, err := c.Through(in, quantity.CFM(1200), quantity.Fahrenheit(f))
				if err != nil {
					t.Fatal(err)
				}
				return 3*(1+0.02*(f-45)) - p.Capacity.Total.Value.Tons()
			}, 0, 20, 60, 1e-9)
			if !ok {
				t.Fatalf("%v/%v does not balance", db, wb)
			}
			p, err := c.Through(in, quantity.CFM(1200), quantity.Fahrenheit(te))
			if err != nil {
				t.Fatal(err)
			}
			got := p.Split.Fahrenheit() - 1.1
			if math.Abs(got-want.Fahrenheit()) > math.Abs(worst) {
				worst, at, target = got-want.Fahrenheit(), fmt.Sprintf("%v/%v °F", db, wb),
					want.Fahrenheit()
			}
			e := float64(p.Split) / float64(in.DryBulb()-quantity.Fahrenheit(te))
			if db-wb >= 6 { // no building that is cooled is more humid
				least, most = min(least, e), max(most, e)
			}
		}
	}
	if least < usualEffectiveness || least < 0.53 || most > 0.64 {
		t.Errorf(
			"a sound coil cools the air %.3f to %.3f of the way to the refrigerant", least, most,
		)
	}
	verify.Value(
		t, cecTable, "split of the coil model at 400 CFM per ton, worst at "+at, "°F", target,
		target+worst, 2,
	)
}

func TestCoilRefuses(t *testing.T) {
	p := quantity.StandardAtmosphere
	in, out := mustAir(t, 75, 62, p), mustAir(t, 55, 53.5, p)
	flow, ref := quantity.CFM(1200), quantity.Fahrenheit(40)
	_, swapped := FitCoil(out, in, flow, ref)
	_, warm := FitCoil(in, out, flow, quantity.Fahrenheit(56))
	_, noFlow := FitCoil(in, out, 0, ref)
	_, wetter := FitCoil(in, mustAir(t, 62, 61.9, p), flow, ref)
	_, dryAir := FitCoil(in, mustAir(t, 60, 42, p), flow, ref)
	_, noAir := FitCoil(psychro.Air{}, out, flow, ref)
	_, noCoil := Coil{}.Through(in, flow, ref)
	_, little := RatedCoil(quantity.Tons(5), quantity.CFM(200))
	_, nan := RatedCoil(quantity.Power(math.NaN()), flow)
	c, _ := RatedCoil(quantity.Tons(3), flow)
	_, tooMuch := c.Through(in, quantity.VolumeFlow(math.Inf(1)), ref)
	_, fog := c.Through(mustAir(t, 140, 136, p), quantity.CFM(6000), quantity.Fahrenheit(-80))
	_, noPlant := FindFreezeLimits(nil, Conditions{Return: in, Airflow: flow, Outdoor: ref})
	for name, err := range map[string]error{
		"fog": fog, "no plant": noPlant,
		"swapped": swapped, "warm": warm, "no flow": noFlow, "wetter": wetter, "dry": dryAir,
		"no air": noAir, "no coil": noCoil, "little air": little, "NaN": nan, "infinite": tooMuch,
	} {
		var re *RangeError
		if !errors.As(err, &re) || re.Advice == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestBypass(t *testing.T) {
	p := quantity.StandardAtmosphere
	in := mustAir(t, 80, 67, p)
	cooled, err := psychro.CoolAndDehumidify(in, quantity.Fahrenheit(50), 0.15)
	if err != nil {
		t.Fatal(err)
	}
	b, err := BypassOf(in, cooled.End)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(b.Factor-0.15) > 1e-6 ||
		math.Abs(b.ApparatusDewPoint.Value.Fahrenheit()-50) > 1e-5 {
		t.Errorf("%+v", b)
	}
	if !(b.At(2) > b.Factor && b.At(0.5) < b.Factor && b.At(1) == b.Factor && b.At(0) == 0) {
		t.Errorf(
			"bypass at 2, 1, 0.5 and no flow: %v %v %v %v", b.At(2), b.At(1), b.At(0.5), b.At(0),
		)
	}
	if out, err := b.Leaving(in, b.ApparatusDewPoint.Value); err != nil ||
		math.Abs(float64(out.DryBulb()-cooled.End.DryBulb())) > 1e-5 {
		t.Errorf("leaves %v, want %v (%v)", out.DryBulb(), cooled.End.DryBulb(), err)
	}
	if all := (Bypass{Factor: 1}); all.At(2) != 1 {
		t.Error("all bypass stays all bypass")
	}
	dry, err := psychro.SensibleHeatCool(in, quantity.Fahrenheit(70))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := BypassOf(in, dry.End); err == nil {
		t.Error("a dry coil has an apparatus dew point")
	}
	r := capacityExample()
	m, err := MeasureBypass(r)
	if err != nil || !(m.FactorStd > 0 && m.ApparatusDewPoint.Std > 0) {
		t.Errorf("%+v, %v", m, err)
	}
}

// Common practice, no source: a return read as 62 °F with a supply of 53 °F is a
// wet bulb taken for a dry bulb until shown otherwise.
func TestReturnOf62WithSupplyOf53(t *testing.T) {
	evap := fahrenheit(40, 0.5)
	for name, c := range map[string]struct {
		r       ReturnReadings
		suspect bool
	}{
		"the pattern": {ReturnReadings{fahrenheit(62, 0.6), fahrenheit(53, 0.6),
			&evap}, true},
		"without the refrigerant": {ReturnReadings{fahrenheit(62, 0.6), fahrenheit(53, 0.6),
			nil}, true},
		"a sound machine": {ReturnReadings{fahrenheit(75, 0.6), fahrenheit(56, 0.6),
			&evap}, false},
		"a cool room, a sound split": {ReturnReadings{fahrenheit(66, 0.6), fahrenheit(50, 0.6),
			&evap}, false},
		"not cooling at all": {ReturnReadings{fahrenheit(62, 0.6), fahrenheit(63, 0.6),
			&evap}, false},
		"a warm room, no capacity": {ReturnReadings{fahrenheit(78, 0.6), fahrenheit(70, 0.6),
			&evap}, false},
	} {
		got, err := CheckReturn(c.r)
		if err != nil {
			t.Fatal(err)
		}
		if got.Suspect != c.suspect {
			t.Errorf("%s: suspect %v, %+v", name, got.Suspect, got)
		}
		if b, err := json.Marshal(got); err != nil {
			t.Errorf("%s: %v %s", name, err, b)
		}
	}
	if _, err := CheckReturn(ReturnReadings{fahrenheit(math.NaN(), 0.6), fahrenheit(53, 0.6),
		nil}); err == nil {
		t.Error("not a number was checked")
	}
}

func BenchmarkFitCoil(b *testing.B) {
	b.ReportAllocs()
	p := quantity.StandardAtmosphere
	in, out := mustAir(b, 75, 62, p), mustAir(b, 55.5, 53.5, p)
	for b.Loop() {
		if _, err := FitCoil(in, out, quantity.CFM(1150), quantity.Fahrenheit(41)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCoilThrough(b *testing.B) {
	b.ReportAllocs()
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		b.Fatal(err)
	}
	in := mustAir(b, 75, 62, quantity.StandardAtmosphere)
	for b.Loop() {
		if _, err := c.Through(in, quantity.CFM(1150), quantity.Fahrenheit(41)); err != nil {
			b.Fatal(err)
		}
	}
}
