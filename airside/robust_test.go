package airside

import (
	"encoding/json"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// results are one of each type that an application may write as JSON.
var results = []any{
	SplitVerdict{}, ReturnCheck{}, Capacity{}, CapacityReadings{}, Efficiency{}, Closure{},
	Factors{}, Coil{}, Passage{}, Bypass{}, Airflow{}, HeatRise{}, GasInput{}, ElectricInput{},
	Traverse{}, DropReading{}, FanSpeedReading{}, RefrigerantBalance{}, SplitBackwards{},
	CombinedAirflow{}, CapacityLine{}, Running{}, Frost{}, FrostReadings{}, FreezeLimits{}, Thaw{},
	ThawTime{}, StaticVerdict{}, PartDrop{}, DropVerdict{}, FanPoint{}, FilterChoice{},
}

// Every field has a name of its own in JSON, in lowerCamel.
func TestJSONNames(t *testing.T) {
	lowerCamel := regexp.MustCompile(`^[a-z][A-Za-z]*$`)
	for _, r := range results {
		typ := reflect.TypeOf(r)
		seen := map[string]bool{}
		for i := range typ.NumField() {
			f := typ.Field(i)
			if !f.IsExported() {
				continue
			}
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "-" {
				continue
			}
			if !lowerCamel.MatchString(name) || seen[name] {
				t.Errorf("%s.%s is %q in JSON", typ.Name(), f.Name, name)
			}
			seen[name] = true
		}
	}
}

// Whatever is read, an answer without an error is finite: JSON and the text
// forms of package quantity take nothing else.
func TestNothingIsNaN(t *testing.T) {
	wild := rapid.OneOf(
		rapid.Float64Range(-50, 150),
		rapid.SampledFrom(
			[]float64{
				0, 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324,
				math.MaxFloat64,
			},
		),
	)
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string) float64 { return wild.Draw(t, name) }
		temp := func(name string) quantity.Uncertain[quantity.Temperature] {
			return quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Fahrenheit(f(name)),
				Std:   f(name + " std"),
			}
		}
		power := func(name string) quantity.Uncertain[quantity.Power] {
			return quantity.Uncertain[quantity.Power]{
				Value: quantity.BtuPerHour(1000 * f(name)),
				Std:   f(name + " std"),
			}
		}
		static := func(name string) quantity.Uncertain[quantity.StaticPressure] {
			return quantity.Uncertain[quantity.StaticPressure]{
				Value: quantity.StaticPressure(f(name)),
				Std:   f(name + " std"),
			}
		}
		atm := quantity.Uncertain[quantity.Pressure]{
			Value: quantity.Kilopascals(f("atmosphere")),
			Std:   f("atmosphere std"),
		}
		flow := quantity.Uncertain[quantity.VolumeFlow]{
			Value: quantity.CFM(20 * f("flow")),
			Std:   f("flow std"),
		}
		at := AirAt{temp("dry bulb"), temp("wet bulb"), atm}
		capacityReadings := CapacityReadings{
			AirReading{temp("rdb"), temp("rwb")}, AirReading{temp("sdb"), temp("swb")}, flow, atm,
		}
		cl := Coil{
			quantity.Conductance(100 * f("UAa")), quantity.Conductance(100 * f("UAr")),
			quantity.MassFlow(f("rated")), "",
		}
		elapsed := time.Duration(rapid.Int64().Draw(t, "elapsed"))
		p := FanPoint{flow.Value, static("p").Value, power("w").Value}
		curve, curveErr := NewFanCurve(
			[]FanPoint{p, {quantity.CFM(f("q2")), static("p2").Value, 0}},
		)
		if curveErr == nil {
			answersFinite(t, "curve flow", curve.StandardFlow, static("at").Value)
			_, err := curve.Airflow(static("at"), at, f("table"))
			_ = err
		}
		for _, c := range []struct {
			name string
			call func() (any, error)
		}{
			{"JudgeSplit", func() (any, error) {
				return JudgeSplit(SplitReadings{temp("rdb"), temp("rwb"), temp("sdb"), atm.Value})
			}},
			{"CheckReturn", func() (any, error) {
				e := temp("e")
				return CheckReturn(ReturnReadings{temp("r"), temp("s"), &e})
			}},
			{"MeasureCapacity", func() (any, error) {
				return MeasureCapacity(capacityReadings)
			}},
			{"MeasureBypass", func() (any, error) { return MeasureBypass(capacityReadings) }},
			{"EfficiencyOf", func() (any, error) { return EfficiencyOf(power("q"), power("w")) }},
			{"ClosureOf", func() (any, error) { return ClosureOf(power("q"), power("w")) }},
			{"RatedCoil", func() (any, error) { return RatedCoil(power("q").Value, flow.Value) }},
			{"HeatRise", func() (any, error) {
				return HeatRise{power("q"), at, temp("s")}.Airflow()
			}},
			{"GasInput", func() (any, error) {
				return GasInput{quantity.Uncertain[quantity.Volume]{Value: quantity.Volume(f("v")),
					Std: f("s")}, elapsed, 0,
					quantity.Uncertain[quantity.HeatingValue]{Value: quantity.BtuPerCubicFoot(20 *
						f("hv")), Std: f("s")}, f("eff"), f("effstd")}.Heat()
			}},
			{"ElectricInput", func() (any, error) {
				return ElectricInput{
					quantity.Uncertain[quantity.Voltage]{Value: quantity.Voltage(f("v")),
						Std: f("s")},
					quantity.Uncertain[quantity.Current]{Value: quantity.Current(f("a")),
						Std: f("s")}, true, f("pf"), f("pfs")}.Heat()
			}},
			{"Traverse", func() (any, error) {
				return Traverse{VelocityPressures: []quantity.StaticPressure{static("a").Value,
					static("b").Value}, InstrumentStd: f("i"),
					Area: quantity.Uncertain[quantity.Area]{Value: quantity.Area(f("area")),
						Std: f("s")}, Air: at}.Airflow()
			}},
			{"DropReading", func() (any, error) {
				return DropReading{Part: FilterPart, Rated: static("r").Value, RatedFlow: flow,
					Drop: static("d"), WithGrid: static("g"), Normal: static("n"),
					Air: at}.Airflow()
			}},
			{"FanSpeedReading", func() (any, error) {
				return FanSpeedReading{flow, RPM(f("n")), RPM(f("m")), RPM(f("s")), at}.Airflow()
			}},
			{"RefrigerantBalance", func() (any, error) {
				return RefrigerantBalance{power("q"), capacityReadings.Return,
					capacityReadings.Supply, atm}.Airflow()
			}},
			{"SplitBackwards", func() (any, error) {
				return SplitBackwards{cl, f("std"), at, temp("s"), temp("e")}.Airflow()
			}},
			{"JudgeFrost", func() (any, error) {
				return JudgeFrost(FrostReadings{at, flow, temp("e"), cl, f("std")})
			}},
			{"JudgeStatic", func() (any, error) {
				return JudgeStatic(StaticReadings{static("a"), static("b"), static("m").Value})
			}},
			{"PartDrop", func() (any, error) {
				return PartDrop{CoilPart, static("r").Value, flow.Value, flow, at,
					static("m")}.Judge()
			}},
			{"FanLaws", func() (any, error) {
				return FanLaws(p, RPM(f("n")), RPM(f("m")), quantity.Density(f("a")),
					quantity.Density(f("b")))
			}},
			{"FaceVelocity", func() (any, error) {
				return FaceVelocity(flow.Value, quantity.Area(f("area")))
			}},
			{"FilterChoices", func() (any, error) {
				return FilterChoices(flow.Value, quantity.FeetPerMinute(10*f("v")))
			}},
		} {
			got, err := c.call()
			if err != nil {
				continue
			}
			if b, err := json.Marshal(got); err != nil {
				t.Fatalf("%s: %v in %+v (%s)", c.name, err, got, b)
			}
		}
		air, err := psychro.FromRelativeHumidity(
			quantity.Celsius(rapid.Float64Range(-40, 60).Draw(t, "t")),
			rapid.Float64Range(0, 1).Draw(t, "rh"),
			quantity.Kilopascals(rapid.Float64Range(21, 120).Draw(t, "kPa")),
		)
		if err != nil {
			return
		}
		where := Conditions{air, flow.Value, temp("outdoor").Value}
		for _, c := range []struct {
			name string
			call func() (any, error)
		}{
			{"Through", func() (any, error) {
				return cl.Through(air, flow.Value, temp("e").Value)
			}},
			{"FitCoilSplit", func() (any, error) {
				return FitCoilSplit(air, temp("s").Value, flow.Value, temp("e").Value)
			}},
			{"NewCapacityLine", func() (any, error) {
				return NewCapacityLine(cl, where, temp("e").Value)
			}},
			{"Run", func() (any, error) {
				return CapacityLine{cl, power("q").Value, temp("e").Value, temp("o").Value, f("pe"),
					f("po")}.Run(where)
			}},
			{"FreezeLimits", func() (any, error) {
				return FindFreezeLimits(CapacityLine{cl, power("q").Value, temp("e").Value,
					temp("o").Value, 0, 0}, where)
			}},
			{"Thaw", func() (any, error) {
				return Thaw{quantity.Mass(f("ice")), air, flow.Value}.Time()
			}},
			{"FactorsOf", func() (any, error) { return FactorsOf(air) }},
			{"Design", func() (any, error) {
				return DesignAirflow(power("s").Value, power("l").Value, air)
			}},
		} {
			got, err := c.call()
			if err != nil {
				continue
			}
			if b, err := json.Marshal(got); err != nil {
				t.Fatalf("%s: %v in %+v (%s)", c.name, err, got, b)
			}
		}
	})
}

func answersFinite[T, U ~float64](t *rapid.T, name string, f func(T) (U, error), x T) {
	if y, err := f(x); err == nil && (math.IsNaN(float64(y)) || math.IsInf(float64(y), 0)) {
		t.Fatalf("%s: %v", name, y)
	}
}
