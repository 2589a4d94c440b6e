package refrigerant_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
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
		{Designation: "R-407C", MassFraction: 0.5}, {Designation: "R-134a", MassFraction: 0.5},
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
		fmt.Println(r, r.Control(), r.Control().Fact().Code)
	}
	// Output:
	// R-12 CFC control.CFC
	// R-22 HCFC control.HCFC
	// R-410A HFC control.HFC
	// R-290 not controlled control.none
}

func ExampleAll() {
	flammable := 0
	for _, r := range refrigerant.All() {
		if r.Flammable() {
			flammable++
		}
	}
	fmt.Println(len(refrigerant.All()), "refrigerants,", flammable, "of them flammable")
	// Output:
	// 181 refrigerants, 73 of them flammable
}

func ExampleRefrigerant_NormalBoilingPoint() {
	for _, designation := range []string{"R-22", "R-410A", "R-290", "R-744"} {
		r, _ := refrigerant.Lookup(designation)
		boiling, err := r.NormalBoilingPoint()
		if err != nil {
			fmt.Printf("%-6v %6.2f g/mol  none: solid at one atmosphere\n", r, 1000*r.MolarMass())
			continue
		}
		fmt.Printf("%-6v %6.2f g/mol  %s\n", r, 1000*r.MolarMass(), boiling.Format(quantity.IP))
	}
	// Output:
	// R-22    86.47 g/mol  -41.5 °F
	// R-410A  72.59 g/mol  -60.6 °F
	// R-290   44.10 g/mol  -43.8 °F
	// R-744   44.01 g/mol  none: solid at one atmosphere
}

func ExampleRefrigerant_Composition() {
	r, _ := refrigerant.Lookup("R-448A")
	moles := r.MoleFractions()
	for i, c := range r.Composition() {
		fmt.Printf(
			"%-11s %4.1f %% of the mass, %4.1f %% of the molecules\n", c.Designation,
			100*c.MassFraction, 100*moles[i],
		)
	}
	// Output:
	// R-32        26.0 % of the mass, 43.1 % of the molecules
	// R-125       26.0 % of the mass, 18.7 % of the molecules
	// R-1234yf    20.0 % of the mass, 15.1 % of the molecules
	// R-134a      21.0 % of the mass, 17.8 % of the molecules
	// R-1234ze(E)  7.0 % of the mass,  5.3 % of the molecules
}

func ExampleRefrigerant_GWP() {
	r, _ := refrigerant.Lookup("R-454C")
	g := r.GWP().AR4
	fmt.Printf("%.0f by the %s\n", g.Value, g.Source)
	fmt.Println(g.Note)
	// Output:
	// 148 by the IPCC Fourth Assessment Report (2007), Working Group I, table 2.14, 100 years, without feedbacks
	// R-1234yf not listed; from Regulation (EU) No 517/2014, annex II, from memory
}

func ExampleRefrigerant_Hazards() {
	r, _ := refrigerant.Lookup("R-744")
	for _, h := range r.Hazards() {
		if h.Pressure > 0 {
			fmt.Printf("%s at %.0f psia\n", h.Code, h.Pressure.PSIA())
			continue
		}
		fmt.Println(h.Code)
	}
	// Output:
	// poisons-breath
	// high-pressure-at-rest at 853 psia
	// trapped-liquid
	// dry-ice at 75 psia
	// pressure-and-cold
	// vapor-collects-low
}

func ExampleRefrigerant_ComfortCooling() {
	for _, name := range []string{"R-454B", "R-744", "R-1233zd(E)"} {
		r, _ := refrigerant.Lookup(name)
		err := r.ComfortCooling()
		var unsuitable *refrigerant.UnsuitableError
		if errors.As(err, &unsuitable) {
			fmt.Println(name, unsuitable.Reason)
			continue
		}
		fmt.Println(name, "can be judged")
	}
	// Output:
	// R-454B can be judged
	// R-744 no-liquid-in-summer
	// R-1233zd(E) in-vacuum
}

func ExampleRefrigerant_OpeningSteps() {
	// A leaking joint of an R-454B machine is to be brazed.
	r, _ := refrigerant.Lookup("R-454B")
	for i, s := range r.OpeningSteps(true) {
		optional := ""
		if s.Optional {
			optional = " (left to choice)"
		}
		fmt.Printf("%d %s%s\n", i+1, s.Fact().Code, optional)
	}
	// Output:
	// 1 opening.no-ignition
	// 2 opening.detector
	// 3 opening.remove-all
	// 4 opening.evacuate
	// 5 opening.sweep (left to choice)
	// 6 opening.evacuate (left to choice)
	// 7 opening.nitrogen-flowing
	// 8 opening.open
	// 9 opening.pressure-test
	// 10 opening.evacuate-and-hold
	// 11 opening.charge-and-label
}

func ExampleRefrigerant_RoomCharge() {
	// A wall unit with R-32 in a closed bedroom of 12 ft by 14 ft.
	r, _ := refrigerant.Lookup("R-32")
	limit, err := r.RoomCharge(quantity.SquareFeet(12*14), refrigerant.OnWall)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: at most %.1f lb\n", limit.Fact().Code, limit.Most.Pounds())
	fmt.Println("lower flammability limit", limit.Limit.Density)
	// Output:
	// room.by-area: at most 9.0 lb
	// lower flammability limit 0.307 kg/m³
}

func ExampleRefrigerant_RoomFloor() {
	// 6 lb 4 oz of R-454B after a long line set; the lowest opening is a register at the floor.
	r, _ := refrigerant.Lookup("R-454B")
	limit, err := r.RoomFloor(quantity.Pounds(6.25), refrigerant.OnFloor)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: at least %.0f ft²\n", limit.Rule, limit.Floor.SquareFeet())
	// Output:
	// by-area: at least 807 ft²
}

func ExampleRefrigerant_FlammabilityLimit() {
	r, _ := refrigerant.Lookup("R-410A")
	_, err := r.FlammabilityLimit()
	fmt.Println(errors.Is(err, refrigerant.ErrNotFlammable))
	// Output:
	// true
}

func ExampleRefrigerant_Sources() {
	r, _ := refrigerant.Lookup("R-410A")
	for _, s := range r.Sources() {
		fmt.Println(s)
	}
	// Output:
	// R-32: R. Tillner-Roth and A. Yokozeki, "An international standard equation of state for difluoromethane (R-32) for temperatures from the triple point at 136.34 K to 435 K and pressures up to 70 MPa", J. Phys. Chem. Ref. Data 26, 1997, pp. 1273-1328, doi:10.1063/1.556002
	// R-125: Eric W. Lemmon and Richard T Jacobsen, "A New Functional Form and New Fitting Techniques for Equations of State with Application to Pentafluoroethane (HFC-125)", J. Phys. Chem. Ref. Data 34, 2005, pp. 69-108, doi:10.1063/1.1797813
	// R-32 with R-125: Eric W. Lemmon and Richard T. Jacobsen, "Equations of State for Mixtures of R-32, R-125, R-134a, R-143a, and R-152a", J. Phys. Chem. Ref. Data 33, 2004, pp. 593-620, doi:10.1063/1.1649997
}

func ExampleRefrigerant_Limits() {
	r, _ := refrigerant.Lookup("R-410A")
	l := r.Limits()
	fmt.Println(l.MinTemperature.Format(quantity.IP), "to", l.MaxTemperature.Format(quantity.IP))
	// Output:
	// -118.6 °F to 323.3 °F
}

func ExampleRefrigerant_SafetyGroup() {
	for _, name := range []string{"R-410A", "R-32", "R-290", "R-717"} {
		r, err := refrigerant.Lookup(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		g := r.SafetyGroup()
		fmt.Printf(
			"%s %s: flammable %v, toxicity higher %v\n", r, g, g.Flammable(), g.HigherToxicity(),
		)
	}
	// Output:
	// R-410A A1: flammable false, toxicity higher false
	// R-32 A2L: flammable true, toxicity higher false
	// R-290 A3: flammable true, toxicity higher false
	// R-717 B2L: flammable true, toxicity higher true
}

func ExampleRefrigerant_GlideClass() {
	for _, name := range []string{"R-32", "R-507A", "R-410A", "R-407C"} {
		r, err := refrigerant.Lookup(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		class, err := r.GlideClass()
		fmt.Println(r, class, err)
	}
	// Output:
	// R-32 pure fluid <nil>
	// R-507A azeotropic <nil>
	// R-410A near-azeotropic <nil>
	// R-407C zeotropic <nil>
}

// A caution is a fact: a program reads its code, and a person its sentence.
func ExampleHazard_Fact() {
	r, err := refrigerant.Lookup("R-32")
	if err != nil {
		panic(err)
	}
	fmt.Println(r.Hazards()[0].Fact().Code)
	// Output: caution.burns-slowly
}
