package charge_test

import (
	"errors"
	"fmt"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func ExampleJudge() {
	superheat, _ := charge.NewMeasurement(
		charge.Superheat, quantity.FahrenheitDelta(23).PlusMinus(quantity.FahrenheitDelta(1)),
	)
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(65).PlusMinus(quantity.FahrenheitDelta(0.7)),
		quantity.Fahrenheit(85).PlusMinus(quantity.FahrenheitDelta(0.6)))
	verdict, _ := charge.Judge(superheat, target)
	fmt.Println(verdict.Outcome)
	fmt.Println(
		"off by", verdict.Deviation.Format(quantity.IP), "of",
		verdict.Target.Tolerance.Format(quantity.IP),
	)
	fmt.Printf("low %.3f\n", verdict.Low)
	fmt.Println(verdict.Fact().Code) // satline.Say makes a sentence of the fact
	// Output:
	// undercharged
	// off by 9.3 °F ± 1.6 °F of 5.0 °F
	// low 0.996
	// reading.above
}

// The superheat may or may not be in band, and the wet bulb is to blame.
func ExampleVerdict_Better() {
	superheat, _ := charge.NewMeasurement(
		charge.Superheat, quantity.FahrenheitDelta(17).PlusMinus(quantity.FahrenheitDelta(0.8)),
	)
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(65).PlusMinus(quantity.FahrenheitDelta(1.5)),
		quantity.Fahrenheit(85).PlusMinus(quantity.FahrenheitDelta(0.6)))
	verdict, _ := charge.Judge(superheat, target)
	fmt.Println(verdict.Outcome)
	if better, ok := verdict.Better(); ok {
		fmt.Println(
			better.Reading, better.Now.Format(quantity.IP), "to", better.Need.Format(quantity.IP),
		)
	}
	// Output:
	// cannot-tell
	// returnWetBulb 2.6 °F to 1.0 °F
}

// A fixed restrictor whose table has no target now, and whose readings speak
// all the same.
func ExampleJudgeTogether() {
	superheat, _ := charge.NewMeasurement(
		charge.Superheat, quantity.FahrenheitDelta(0.4).PlusMinus(quantity.FahrenheitDelta(0.9)),
	)
	subcooling, _ := charge.NewMeasurement(
		charge.Subcooling, quantity.FahrenheitDelta(26).PlusMinus(quantity.FahrenheitDelta(1.1)),
	)
	verdict, _ := charge.JudgeTogether(superheat, subcooling, nil)
	fmt.Println(verdict.Outcome, verdict.LiquidReturning)
	fmt.Println(verdict.StackedLiquid.Format(quantity.IP))
	// Output:
	// overcharged true
	// 26.0 °F ± 1.1 °F
}

func ExampleNewMeasurement() {
	m, err := charge.NewMeasurement(
		charge.Superheat, quantity.FahrenheitDelta(0.4).PlusMinus(quantity.FahrenheitDelta(0.9)),
	)
	fmt.Println(m.Value.Format(quantity.IP), m.LiquidReturning(), err)
	// Output: 0.4 °F ± 0.9 °F true <nil>
}

func ExampleObstacles() {
	outdoor := quantity.Fahrenheit(48).PlusMinus(quantity.FahrenheitDelta(0.6))
	s := charge.Situation{
		Metering: refrigerant.TXV, LabelSubcooling: true,
		OutdoorDryBulb: &outdoor,
		Running:        8 * time.Minute,
	}
	for _, o := range charge.Obstacles(s, charge.Subcooling) {
		fmt.Println(o.Says, o.WeighIn)
	}
	// Output:
	// condition.run-short measured=8m0s limit=15m0s false
	// condition.outdoor-cold measured=8.9 °C limit=12.8 °C true
}

// A doubt lets a verdict stand; an obstacle that forbids does not.
func ExampleForbidden() {
	dirty := charge.Situation{Metering: refrigerant.FixedRestrictor, FilterDirty: true}
	iced := charge.Situation{Metering: refrigerant.FixedRestrictor, CoilIced: true}
	for _, s := range []charge.Situation{dirty, iced} {
		obstacles := charge.Obstacles(s, charge.Superheat)
		fmt.Printf(
			"%s: forbidden %v, mend first %v\n", obstacles[0].Code, charge.Forbidden(obstacles),
			obstacles[0].MendFirst,
		)
	}
	// Output:
	// filter-dirty: forbidden false, mend first true
	// coil-iced: forbidden true, mend first true
}

func ExampleChooseMethod() {
	s := charge.Situation{Metering: refrigerant.FixedRestrictor, CoilWet: true}
	method, obstacles := charge.ChooseMethod(s)
	fmt.Println(method, "because of", obstacles[0].Code)
	// Output: weigh-in because of coil-wet
}

// A machine that answered to the first dose gets the second by what it showed.
func ExampleDosing_Next() {
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(65).PlusMinus(quantity.FahrenheitDelta(0.7)),
		quantity.Fahrenheit(85).PlusMinus(quantity.FahrenheitDelta(0.6)))
	reading := func(f float64) quantity.Uncertain[quantity.TemperatureDelta] {
		return quantity.FahrenheitDelta(f).PlusMinus(quantity.FahrenheitDelta(1))
	}
	d := charge.Dosing{
		Target:      target,
		LabelCharge: quantity.Pounds(7),
		History:     []charge.Moved{{Net: 0, Value: reading(34)}},
	}
	dose, _ := d.Next()
	fmt.Println(
		dose.Action, dose.Mass.Format(quantity.IP), dose.LimitedBy, dose.After.Format(quantity.IP),
	)

	d.History = append(d.History, charge.Moved{Net: dose.Mass, Value: reading(22)})
	dose, _ = d.Next()
	fmt.Println(
		dose.Action, dose.Mass.Format(quantity.IP), dose.LimitedBy, dose.After.Format(quantity.IP),
	)

	d.History = append(
		d.History, charge.Moved{Net: d.History[1].Net + dose.Mass, Value: reading(15)},
	)
	dose, _ = d.Next()
	fmt.Println(dose.Fact())
	// Output:
	// add 10.5 oz step 25.1 °F ± 6.1 °F
	// add 6.5 oz overshoot 14.5 °F ± 3.0 °F
	// halt.in-band
}

// Where no target is to be had, the error says why.
func ExampleNotNowError() {
	_, err := charge.TableSuperheat(quantity.Fahrenheit(63), quantity.Fahrenheit(46))
	if not, ok := errors.AsType[*charge.NotNowError](err); ok {
		fmt.Println(not.Code())
		fmt.Println(not.Says())
		fmt.Println("forbids:", not.Obstacle().Forbids)
	}
	// Output:
	// outdoor-cold
	// condition.outdoor-cold measured=7.8 °C limit=12.8 °C
	// forbids: true
}

func ExampleMethodFor() {
	fmt.Println(
		charge.MethodFor(refrigerant.FixedRestrictor), charge.MethodFor(refrigerant.TXV),
		charge.MethodFor(refrigerant.EXV),
	)
	// Output: superheat subcooling subcooling
}
