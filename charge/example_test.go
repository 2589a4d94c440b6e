package charge_test

import (
	"errors"
	"fmt"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func ExampleTableSuperheat() {
	target, err := charge.TableSuperheat(quantity.Fahrenheit(68), quantity.Fahrenheit(86))
	fmt.Println(target.Format(quantity.IP), err)

	// A hot dry day: the table has no target.
	_, err = charge.TableSuperheat(quantity.Fahrenheit(56), quantity.Fahrenheit(100))
	fmt.Println(errors.Is(err, charge.ErrNotNow))
	var notNow *charge.NotNowError
	if errors.As(err, &notNow) {
		fmt.Println(notNow.Says())
	}
	// Output:
	// 18.5 °F <nil>
	// true
	// condition.target-below-floor limit=2.8 K
}

func ExampleSmoothSuperheat() {
	s, _ := charge.SmoothSuperheat(quantity.Fahrenheit(68), quantity.Fahrenheit(86))
	fmt.Printf(
		"%s, %+.1f per degree of wet bulb, %+.1f per degree outdoors\n",
		s.Target.Format(quantity.IP), s.PerWetBulb, s.PerOutdoor,
	)
	// Output: 18.4 °F, +1.8 per degree of wet bulb, -0.5 per degree outdoors
}

func ExampleFormulaSuperheat() {
	fmt.Println(
		charge.FormulaSuperheat(quantity.Fahrenheit(68), quantity.Fahrenheit(86)).
			Format(quantity.IP),
	)
	// Output: 19.0 °F
}

func ExampleSuperheatTarget() {
	wetBulb := quantity.Fahrenheit(68).PlusMinus(quantity.FahrenheitDelta(0.7))
	outdoor := quantity.Fahrenheit(86).PlusMinus(quantity.FahrenheitDelta(0.6))
	target, _ := charge.SuperheatTarget(nil, wetBulb, outdoor)
	fmt.Println(target.Value.Format(quantity.IP), "within", target.Tolerance.Format(quantity.IP))
	fmt.Println(target.Source)
	fmt.Println(target.ToleranceSource)
	for _, term := range target.Budget.Terms() {
		fmt.Println(term.Reading, term.Contribution.Format(quantity.IP))
	}
	// Output:
	// 18.5 °F ± 1.3 °F within 5.0 °F
	// California Energy Commission, Reference Appendices, Table RA3.2-2 (from memory)
	// California Energy Commission, Reference Appendices 2008, RA3.2.2
	// returnWetBulb 1.2 °F
	// outdoorDryBulb 0.3 °F
}

func ExampleSubcoolingTarget() {
	label := quantity.FahrenheitDelta(9).PlusMinus(0)
	target, _ := charge.SubcoolingTarget(&label)
	fmt.Println(target.Value.Format(quantity.IP), "from", target.Source)

	target, _ = charge.SubcoolingTarget(nil)
	fmt.Println(target.Value.Format(quantity.IP), "from", target.Source)
	// Output:
	// 9.0 °F from the unit's label
	// 10.0 °F ± 2.3 °F from common practice, no source
}

func ExampleApproachTarget() {
	_, err := charge.ApproachTarget(nil)
	fmt.Println(err)
	// Output: charge: do not charge by approach now: no-label-approach; recover the charge and weigh it in, or wait until the condition is gone
}

// What stands in the way of charging by superheat.
func ExampleRules_conditions() {
	for _, r := range charge.Rules() {
		if slices.Contains(r.Forbids, charge.Superheat) && r.Figure != "" {
			fmt.Printf("%s (%s)\n", r.Code, r.Figure)
		}
	}
	// Output:
	// run-short (15 min)
	// just-moved (15 min)
	// airflow-low (300 CFM (142 L/s))
	// outdoor-cold (55.0 °F (12.8 °C))
	// return-cold (70.0 °F (21.1 °C))
	// outdoor-above-table (115.0 °F (46.1 °C))
	// wet-bulb-below-table (50.0 °F (10.0 °C))
	// wet-bulb-above-table (76.0 °F (24.4 °C))
	// target-below-floor (5.0 °F (2.8 K))
}

func ExampleRules() {
	for _, r := range charge.Rules()[:3] {
		fmt.Printf("%s: %s [%s]\n", r.Code, r.Figure, r.Source)
	}
	// Output:
	// target-floor: 5.0 °F (2.8 K) [California Energy Commission, Reference Appendices 2008, RA3.2.2]
	// superheat-tolerance: 5.0 °F (2.8 K) [California Energy Commission, Reference Appendices 2008, RA3.2.2]
	// subcooling-tolerance: 3.0 °F (1.7 K) [California Energy Commission, Reference Appendices 2008, RA3.2.2]
}

// The unit's instructions state their own tolerance, and it comes first.
func ExampleTarget_WithTolerance() {
	label := quantity.FahrenheitDelta(9).PlusMinus(0)
	target, _ := charge.SubcoolingTarget(&label)
	target, err := target.WithTolerance(
		quantity.FahrenheitDelta(2),
		fact.Source{Title: "the unit's installation instructions", Standing: fact.Label},
	)
	fmt.Println(
		target.Value.Format(quantity.IP), "within", target.Tolerance.Format(quantity.IP), "by",
		target.ToleranceSource, err,
	)
	// Output: 9.0 °F within 2.0 °F by the unit's installation instructions <nil>
}

// A machine of 3 ton whose label cannot be read.
func ExampleEstimateCharge() {
	fmt.Println(charge.EstimateCharge(quantity.Tons(3)).Format(quantity.IP))
	// Output: 8.40 lb
}
