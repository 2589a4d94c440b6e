package refrigerant_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/refrigerant"
)

func ExampleLookup() {
	r, err := refrigerant.Lookup("r454b")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r, r.Name())
	fmt.Println(r.SafetyGroup(), "flammable:", r.Flammable())
	fmt.Printf("GWP %.0f (AR4), %.0f (AR5)\n", r.GWP().AR4.Value, r.GWP().AR5.Value)
	// Output:
	// R-454B R-32/R-1234yf (68.9/31.1)
	// A2L flammable: true
	// GWP 466 (AR4), 467 (AR5)
}

func ExampleLookup_unknown() {
	_, err := refrigerant.Lookup("R-410")
	fmt.Println(err)
	fmt.Println(errors.Is(err, refrigerant.ErrUnknownRefrigerant))
	// Output:
	// unknown refrigerant "R-410"; did you mean R-410A or R-410B?
	// true
}

func ExampleNewBlend() {
	// Half of a charge of R-407C has leaked and was topped off with R-134a.
	r, err := refrigerant.NewBlend("what is in there now", []refrigerant.Component{
		{Designation: "R-407C", MassFraction: 0.5},
		{Designation: "R-134a", MassFraction: 0.5},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Name())
	fmt.Println(r.SafetyGroup())
	// Output:
	// R-32/R-125/R-134a (11.5/12.5/76)
	// unclassified
}

func ExampleRefrigerant_Control() {
	for _, designation := range []string{"R-12", "R-22", "R-410A", "R-290"} {
		r, _ := refrigerant.Lookup(designation)
		fmt.Printf("%s: %s\n", r, r.Control().Note())
	}
	// Output:
	// R-12: CFC, phased out: only recovered or reclaimed stock; local law decides what may be done with it
	// R-22: HCFC, production ended or ending: reclaimed stock for service only; local law decides
	// R-410A: HFC, being phased down: supply falls by quota, and local law may bar it from new equipment
	// R-290: not controlled by the Montreal Protocol; local law may still restrict it
}
