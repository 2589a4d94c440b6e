package charge_test

import (
	"errors"
	"fmt"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
)

func ExampleJudge() {
	superheat, _ := charge.Taken(charge.Superheat, quantity.FahrenheitDelta(23).PlusMinus(quantity.FahrenheitDelta(1)))
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(62).PlusMinus(quantity.FahrenheitDelta(0.7)),
		quantity.Fahrenheit(77).PlusMinus(quantity.FahrenheitDelta(0.6)))
	verdict, _ := charge.Judge(superheat, target)
	fmt.Println(verdict.Outcome)
	for _, reason := range verdict.Reasons(quantity.IP) {
		fmt.Println("-", reason)
	}
	// Output:
	// undercharged
	// - superheat 23.0 °F ± 1.0 °F is 9.0 °F ± 1.5 °F above the target of 14.0 °F ± 1.1 °F (California Energy Commission, Reference Appendices, Table RA3.2-2 (from memory)); the band is ±5.0 °F (California Energy Commission, Reference Appendices 2008, RA3.2.2)
	// - chance that the charge is low: above 99 %; in band: below 1 %; high: below 1 %
}

// The superheat may or may not be in band, and the wet bulb is to blame.
func ExampleVerdict_Better() {
	superheat, _ := charge.Taken(charge.Superheat, quantity.FahrenheitDelta(17).PlusMinus(quantity.FahrenheitDelta(0.8)))
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(62).PlusMinus(quantity.FahrenheitDelta(1.5)),
		quantity.Fahrenheit(77).PlusMinus(quantity.FahrenheitDelta(0.6)))
	verdict, _ := charge.Judge(superheat, target)
	fmt.Println(verdict.Outcome)
	if better, ok := verdict.Better(); ok {
		fmt.Println(better.Text(quantity.IP))
	}
	// Output:
	// cannot-tell
	// take the return wet bulb better: it is good to ±1.5 °F (one standard uncertainty), and ±0.8 °F would settle it
}

// A fixed restrictor whose table has no target now, and whose readings speak
// all the same.
func ExampleJudgeTogether() {
	superheat, _ := charge.Taken(charge.Superheat, quantity.FahrenheitDelta(0.4).PlusMinus(quantity.FahrenheitDelta(0.9)))
	subcooling, _ := charge.Taken(charge.Subcooling, quantity.FahrenheitDelta(26).PlusMinus(quantity.FahrenheitDelta(1.1)))
	verdict, _ := charge.JudgeTogether(superheat, subcooling, nil)
	fmt.Println(verdict.Outcome, verdict.LiquidReturning)
	fmt.Println(verdict.Reasons(quantity.IP)[1])
	// Output:
	// overcharged true
	// a subcooling of 26.0 °F ± 1.1 °F beside no superheat is liquid stacked in the condenser: too much charge
}

func ExampleTaken() {
	m, err := charge.Taken(charge.Superheat, quantity.FahrenheitDelta(0.4).PlusMinus(quantity.FahrenheitDelta(0.9)))
	fmt.Println(m.Value.Format(quantity.IP), m.LiquidReturning(), err)
	// Output: 0.4 °F ± 0.9 °F true <nil>
}

func ExampleObstacles() {
	outdoor := quantity.Fahrenheit(48).PlusMinus(quantity.FahrenheitDelta(0.6))
	s := charge.Situation{
		Metering: charge.TXV, LabelSubcooling: true,
		OutdoorDryBulb: &outdoor,
		Running:        8 * time.Minute,
	}
	for _, o := range charge.Obstacles(s, charge.Subcooling) {
		fmt.Printf("%s: %s\n  instead: %s\n", o.Code, o.Reason, o.Instead)
	}
	// Output:
	// run-short: the machine has run 8 min, less than 15 min
	//   instead: let it run on without a stop, and read again
	// outdoor-cold: outdoor air 48.0 °F is below 55.0 °F: the condenser is so cold that pressures, superheat and subcooling say little about the charge
	//   instead: wait for warmer air, or recover the charge and weigh in what the label says; a procedure for cold weather from the unit's maker comes before this rule
}

// A doubt lets a verdict stand; an obstacle that forbids does not.
func ExampleForbidden() {
	dirty := charge.Situation{Metering: charge.FixedRestrictor, FilterDirty: true}
	iced := charge.Situation{Metering: charge.FixedRestrictor, CoilIced: true}
	for _, s := range []charge.Situation{dirty, iced} {
		obstacles := charge.Obstacles(s, charge.Superheat)
		fmt.Printf("%s: forbidden %v, mend first %v\n", obstacles[0].Code, charge.Forbidden(obstacles), obstacles[0].MendFirst)
	}
	// Output:
	// filter-dirty: forbidden false, mend first true
	// coil-iced: forbidden true, mend first true
}

func ExampleChoose() {
	s := charge.Situation{Metering: charge.FixedRestrictor, CoilWet: true}
	method, obstacles := charge.Choose(s)
	fmt.Println(method, "because:", obstacles[0].Reason)
	// Output: weigh-in because: the outdoor coil is wet: evaporation holds the condensing pressure down, and the charge reads low
}

// A machine that answered to the first dose gets the second by what it showed.
func ExampleDosing_Next() {
	target, _ := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(62).PlusMinus(quantity.FahrenheitDelta(0.7)),
		quantity.Fahrenheit(77).PlusMinus(quantity.FahrenheitDelta(0.6)))
	reading := func(f float64) quantity.Uncertain[quantity.TemperatureDelta] {
		return quantity.FahrenheitDelta(f).PlusMinus(quantity.FahrenheitDelta(1))
	}
	d := charge.Dosing{
		Target:      target,
		LabelCharge: quantity.Pounds(7),
		History:     []charge.Moved{{Net: 0, Value: reading(34)}},
	}
	dose, _ := d.Next()
	fmt.Println(dose.Text(quantity.IP))

	d.History = append(d.History, charge.Moved{Net: dose.Mass, Value: reading(22)})
	dose, _ = d.Next()
	fmt.Println(dose.Text(quantity.IP))

	d.History = append(d.History, charge.Moved{Net: d.History[1].Net + dose.Mass, Value: reading(15)})
	dose, _ = d.Next()
	fmt.Println(dose.Action, "-", dose.Text(quantity.IP))
	// Output:
	// add 11.0 oz, wait 15 min, and read again: expect a superheat of 24.7 °F ± 6.3 °F; more is not moved at once
	// add 6.5 oz, wait 15 min, and read again: expect a superheat of 14.8 °F ± 2.9 °F; the dose is less than the whole way, because how this machine answers is not known well enough yet
	// leave - the charge is in band: leave it, put the caps on and write the readings down
}

// Where no target is to be had, the error says why and what to do instead.
func ExampleNotNowError() {
	_, err := charge.TargetSuperheat(quantity.Fahrenheit(62), quantity.Fahrenheit(48))
	if not, ok := errors.AsType[*charge.NotNowError](err); ok {
		fmt.Println(not.Code())
		fmt.Println(not.Reason(quantity.IP))
		fmt.Println(not.Instead())
		fmt.Println("forbids:", not.Obstacle(quantity.IP).Forbids)
	}
	// Output:
	// outdoor-cold
	// outdoor air 48.0 °F is below 55.0 °F: the condenser is so cold that pressures, superheat and subcooling say little about the charge
	// wait for warmer air, or recover the charge and weigh in what the label says; a procedure for cold weather from the unit's maker comes before this rule
	// forbids: true
}

// The reading to take better first.
func ExampleBudget_Largest() {
	target, err := charge.SuperheatTarget(nil,
		quantity.Fahrenheit(62).PlusMinus(quantity.FahrenheitDelta(0.7)),
		quantity.Fahrenheit(85).PlusMinus(quantity.FahrenheitDelta(0.6)))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range target.Budget.Terms() {
		fmt.Println(t.Reading.Name(), t.Contribution().Format(quantity.IP))
	}
	if most, ok := target.Budget.Largest(); ok {
		fmt.Println("most:", most.Reading.Name())
	}
	// Output:
	// return wet bulb 1.3 °F
	// outdoor dry bulb 0.4 °F
	// most: return wet bulb
}

func ExampleMetering_Method() {
	fmt.Println(charge.FixedRestrictor.Method(), charge.TXV.Method(), charge.EXV.Method())
	// Output: superheat subcooling subcooling
}
