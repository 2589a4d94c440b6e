package cycle_test

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// The theoretical single-stage cycle of the ASHRAE Handbook Fundamentals, chapter 2,
// example 1 (from memory): R-134a, evaporating at −20 °C, condensing at 30 °C, 50 kW. The
// book has 386.6, 423.1 and 241.7 kJ/kg, a COP of 3.97, 0.345 kg/s and a refrigerating
// efficiency of 0.78.
func Example_theoreticalCycle() {
	r, _ := refrigerant.Lookup("R-134a")
	cold, warm := quantity.Celsius(-20), quantity.Celsius(30)
	suction, _ := r.SaturatedVapor(cold)
	liquid, _ := r.SaturatedLiquid(warm)
	discharge, err := r.StateAtEntropy(liquid.Pressure, suction.Entropy)
	if err != nil {
		fmt.Println(err)
		return
	}
	effect := suction.Enthalpy - liquid.Enthalpy
	work := discharge.Enthalpy - suction.Enthalpy
	cop := float64(effect / work)
	carnot := float64(cold / (warm - cold))
	fmt.Printf("h1 %.1f, h2 %.1f, h3 %.1f kJ/kg\n", float64(suction.Enthalpy)/1e3,
		float64(discharge.Enthalpy)/1e3, float64(liquid.Enthalpy)/1e3)
	fmt.Printf("COP %.2f, flow %.3f kg/s, refrigerating efficiency %.2f\n", cop,
		50e3/float64(effect), cop/carnot)
	// Output:
	// h1 386.6, h2 423.1, h3 241.7 kJ/kg
	// COP 3.97, flow 0.345 kg/s, refrigerating efficiency 0.78
}

// The measured R-22 machine of the ASHRAE Handbook Fundamentals, chapter 2, example 5 (from
// memory): 7.0 kW; suction 304 kPa and −4 °C, discharge 1450 kPa and 82 °C, liquid 1410 kPa
// and 34 °C. The book has 47.9 kJ/kg of work in the compressor, and a flow of 0.0432 kg/s by
// the evaporator alone, without what the suction line adds.
func ExamplePoints_Analyze() {
	r, _ := refrigerant.Lookup("R-22")
	gauge := func(kPa float64) *quantity.Uncertain[quantity.GaugePressure] {
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: quantity.Kilopascals(kPa).Gauge(quantity.StandardAtmosphere), Std: 3e3,
		}
	}
	clamp := func(c float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(c), Std: 0.5}
	}
	p := cycle.Points{
		Refrigerant:     r,
		SuctionPressure: gauge(304), DischargePressure: gauge(1450), LiquidPressure: gauge(1410),
		SuctionLine: clamp(-4), DischargeLine: clamp(82), LiquidLine: clamp(34),
		AirCapacity: &quantity.Uncertain[quantity.Power]{Value: quantity.Kilowatts(7), Std: 100},
	}
	a, err := p.Analyze()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("superheat %s, subcooling %s\n", a.Superheat, a.Subcooling)
	fmt.Printf("compression ratio %.2f ± %.2f\n", a.CompressionRatio.Value, a.CompressionRatio.Std)
	fmt.Printf("isentropic efficiency %.2f ± %.2f\n", a.IsentropicEfficiency.Value,
		a.IsentropicEfficiency.Std)
	fmt.Printf("work %.1f kJ/kg\n", float64(a.Discharge.Enthalpy-a.Suction.Enthalpy)/1e3)
	fmt.Printf("flow %.4f ± %.4f kg/s\n", float64(a.Flow.Value), a.Flow.Std)
	// Output:
	// superheat 10.3 K ± 0.6 K, subcooling 2.6 K ± 0.5 K
	// compression ratio 4.77 ± 0.05
	// isentropic efficiency 0.86 ± 0.01
	// work 48.3 kJ/kg
	// flow 0.0425 ± 0.0006 kg/s
}

// The same machine with its one high-side gauge on the discharge port: the pressure at the
// liquid port follows by a correction, and the subcooling is less sure for it.
func ExamplePoints_Analyze_dischargePort() {
	r, _ := refrigerant.Lookup("R-22")
	gauge := func(kPa float64) *quantity.Uncertain[quantity.GaugePressure] {
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: quantity.Kilopascals(kPa).Gauge(quantity.StandardAtmosphere), Std: 3e3,
		}
	}
	clamp := func(c float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Celsius(c), Std: 0.5}
	}
	for _, liquid := range []*quantity.Uncertain[quantity.GaugePressure]{gauge(1410), nil} {
		p := cycle.Points{
			Refrigerant:     r,
			SuctionPressure: gauge(304), DischargePressure: gauge(1450), LiquidPressure: liquid,
			SuctionLine: clamp(-4), LiquidLine: clamp(34),
		}
		a, err := p.Analyze()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: drop %s, subcooling %s\n", a.HighSide, a.HighSideDrop, a.Subcooling)
	}
	// Output:
	// both: drop 40.0 kPa ± 4.2 kPa, subcooling 2.6 K ± 0.5 K
	// discharge: drop 39 kPa ± 21 kPa, subcooling 2.6 K ± 0.8 K
}

// What an ordinary three-ton machine does on a mild day, sound and short of charge.
func ExampleSystem_Solve() {
	r, _ := refrigerant.Lookup("R-410A")
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := cycle.Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(85),
		ReturnDryBulb:  quantity.Fahrenheit(76),
		ReturnWetBulb:  quantity.Fahrenheit(64),
	}
	for _, charge := range []float64{0, -0.15} {
		o, err := s.Solve(c, cycle.Faults{Charge: charge})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("charge %+3.0f %%: superheat %s, subcooling %s, %s net, EER %.1f\n", 100*charge,
			o.Superheat.Format(quantity.IP), o.Subcooling.Format(quantity.IP),
			o.NetCapacity.Format(quantity.IP), o.EER)
	}
	// Output:
	// charge  +0 %: superheat 8.1 °F, subcooling 10.4 °F, 36483 Btu/h net, EER 11.0
	// charge -15 %: superheat 20.5 °F, subcooling 3.0 °F, 33240 Btu/h net, EER 10.3
}

// A five-ton heat pump with a high-efficiency outdoor coil and a fan that holds the head.
func ExampleDesign() {
	r, _ := refrigerant.Lookup("R-454B")
	s, err := cycle.Design(cycle.Spec{
		Refrigerant: r, Capacity: quantity.Tons(5), Metering: refrigerant.TXV,
		Condensing: quantity.FahrenheitDelta(14), Subcooling: quantity.FahrenheitDelta(8),
		HeatPump: true, HeadPressure: quantity.Fahrenheit(85),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	o, err := s.Solve(cycle.RatingConditions(), cycle.Faults{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, condensing %s, EER %.1f\n", o.NetCapacity.Format(quantity.IP),
		o.Condensing.Format(quantity.IP), o.EER)
	// Output:
	// 60000 Btu/h, condensing 109.0 °F, EER 10.5
}

// A 0.067 in piston of R-22 at 115 °F condensing with 10 °F of subcooling.
func ExampleShortTube_Flow() {
	r, _ := refrigerant.Lookup("R-22")
	p, _ := r.BubblePressure(quantity.Fahrenheit(115))
	upstream, err := r.State(p, quantity.Fahrenheit(105))
	if err != nil {
		fmt.Println(err)
		return
	}
	piston := cycle.ShortTube{Diameter: quantity.Inches(0.067), Length: quantity.Inches(0.5)}
	flow, err := piston.Flow(r, upstream, quantity.PSIG(76).Absolute(quantity.StandardAtmosphere))
	fmt.Println(flow.Format(quantity.IP), err)
	// Output:
	// 420 lb/h <nil>
}

func ExampleCapillaryTube_Flow() {
	r, _ := refrigerant.Lookup("R-22")
	p, _ := r.BubblePressure(quantity.Fahrenheit(115))
	upstream, err := r.State(p, quantity.Fahrenheit(105))
	if err != nil {
		fmt.Println(err)
		return
	}
	tubes := cycle.CapillaryTube{Diameter: quantity.Inches(0.064), Length: quantity.Inches(60),
		Count: 4}
	flow, err := tubes.Flow(r, upstream, quantity.PSIG(76).Absolute(quantity.StandardAtmosphere))
	fmt.Println(flow.Format(quantity.IP), err)
	// Output:
	// 485 lb/h <nil>
}

// A valve set for 8 °F opens as its bulb warms.
func ExampleExpansionValve_Opening() {
	v := cycle.ExpansionValve{Superheat: quantity.FahrenheitDelta(8),
		Gradient: quantity.FahrenheitDelta(6), Rated: 0.7}
	for _, f := range []float64{2, 5, 8, 11} {
		fmt.Printf("%2.0f °F: %.2f\n", f, v.Opening(quantity.FahrenheitDelta(f), quantity.PSIA(85)))
	}
	// Output:
	// 2 °F: 0.01
	//  5 °F: 0.35
	//  8 °F: 0.70
	// 11 °F: 1.00
}

// The figures of a ten-coefficient map are invented.
func ExampleMap_At() {
	m := cycle.Map{
		Flow: [10]float64{250, 5.2, -1.1, 0.045, 0.002, 0.003, 0.0001, -0.00001, 0.00001,
			-0.00001},
		Power: [10]float64{620, -6.1, 12.4, -0.09, 0.11, 0.035, 0, 0, 0, 0},
		Units: cycle.MapIP, RatedSuperheat: quantity.FahrenheitDelta(20),
	}
	flow, power, err := m.At(quantity.Fahrenheit(45), quantity.Fahrenheit(115))
	fmt.Println(flow.Format(quantity.IP), power, err)
	// Output:
	// 496 lb/h 2.62 kW <nil>
}

// visit is one afternoon's readings of an invented machine.
func visit() (*cycle.System, cycle.Readings) {
	r, _ := refrigerant.Lookup("R-22")
	s, _ := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	gauge := func(psig float64) *quantity.Uncertain[quantity.GaugePressure] {
		return &quantity.Uncertain[quantity.GaugePressure]{Value: quantity.PSIG(psig),
			Std: float64(quantity.PSIG(0.6))}
	}
	clamp := func(f float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Fahrenheit(f), Std: 0.5}
	}
	return s, cycle.Readings{
		Conditions: cycle.Conditions{
			OutdoorDryBulb: quantity.Fahrenheit(88),
			ReturnDryBulb:  quantity.Fahrenheit(75),
			ReturnWetBulb:  quantity.Fahrenheit(65),
		},
		SuctionPressure: gauge(56), LiquidPressure: gauge(206),
		SuctionLine: clamp(63), LiquidLine: clamp(99), Supply: clamp(57),
	}
}

// The customer asks why it froze last night. The visit reads low on charge; fitted to it,
// the machine tells what the coil did at 60 °F outdoors, and what a filter or a pound would
// change.
func ExampleFit() {
	s, v := visit()
	f, err := cycle.Fit(s, v)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, u := range f.Unknowns() {
		if u.Learned() {
			fmt.Printf("%s %+.0f %% ± %.0f %%\n", u.Name, 100*u.Value, 100*u.Std)
		}
	}
	night := cycle.Conditions{OutdoorDryBulb: quantity.Fahrenheit(60),
		ReturnDryBulb: quantity.Fahrenheit(71), ReturnWetBulb: quantity.Fahrenheit(57)}
	p, err := f.Predict(night, cycle.Faults{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("tonight the suction is at", p.Evaporating.Format(quantity.IP))
	for _, x := range p.Extrapolating {
		fmt.Println("far from the visit:", x.Of, x.By)
	}
	// Output:
	// charge -23 % ± 4 %
	// evaporator -12 % ± 9 %
	// indoor airflow -23 % ± 10 %
	// tonight the suction is at 23.0 °F ± 4.1 °F
	// far from the visit: outdoor-dry-bulb -15.6 K
	// far from the visit: return-wet-bulb -4.4 K
}

// A clamp that shows what no machine has is named first.
func ExampleMisfitError() {
	s, v := visit()
	v.LiquidLine = new(quantity.Fahrenheit(195).PlusMinus(quantity.FahrenheitDelta(1)))
	_, err := cycle.Fit(s, v)
	var off *cycle.MisfitError
	if errors.As(err, &off) {
		fmt.Println("read again first:", off.Misses[0].Reading)
	}
	// Output:
	// read again first: liquid line temperature
}

func ExampleFitted_Predict() {
	s, v := visit()
	f, err := cycle.Fit(s, v)
	if err != nil {
		fmt.Println(err)
		return
	}
	pound := cycle.Faults{Charge: f.ChargeChange(quantity.Pounds(1), quantity.Pounds(6.5))}
	for _, c := range []struct {
		name    string
		changed cycle.Faults
	}{
		{"as found", cycle.Faults{}}, {"a pound more", pound},
		{"new filter", cycle.Faults{IndoorAirflow: 0.12}},
	} {
		p, err := f.Predict(v.Conditions, c.changed)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: superheat %s, subcooling %s\n", c.name, p.Superheat.Format(quantity.IP),
			p.Subcooling.Format(quantity.IP))
	}
	// Output:
	// as found: superheat 32.4 °F ± 2.4 °F, subcooling 0.0 °F ± 0.9 °F
	// a pound more: superheat 15 °F ± 16 °F, subcooling 7.3 °F ± 6.2 °F
	// new filter: superheat 33.4 °F ± 3.3 °F, subcooling 0.0 °F ± 1.6 °F
}

func ExampleFitted_Freeze() {
	s, v := visit()
	f, err := cycle.Fit(s, v)
	if err != nil {
		fmt.Println(err)
		return
	}
	night := cycle.Conditions{OutdoorDryBulb: quantity.Fahrenheit(60),
		ReturnDryBulb: quantity.Fahrenheit(70), ReturnWetBulb: quantity.Fahrenheit(56)}
	for _, hold := range []quantity.Temperature{0, quantity.Fahrenheit(95)} {
		z, err := f.WithHeadPressure(hold).Freeze(night, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("surface %s, suction %s\n", z.Surface.Format(quantity.IP),
			z.Evaporating.Format(quantity.IP))
	}
	// Output:
	// surface 30.0 °F ± 3.9 °F, suction 22.7 °F ± 4.1 °F
	// surface 33.6 °F ± 3.3 °F, suction 27.0 °F ± 2.9 °F
}

func ExampleDesignResidential() {
	r, _ := refrigerant.Lookup("R-22")
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("piston %.3f in, flow %s\n", s.ShortTube().Diameter.Inches(),
		s.RatedFlow().Format(quantity.IP))
	// Output:
	// piston 0.076 in, flow 544 lb/h
}

func ExampleRatingConditions() {
	c := cycle.RatingConditions()
	fmt.Println(c.OutdoorDryBulb.Format(quantity.IP), c.ReturnDryBulb.Format(quantity.IP),
		c.ReturnWetBulb.Format(quantity.IP))
	// Output:
	// 95.0 °F 80.0 °F 67.0 °F
}

// A machine with a coil of the size larger.
func ExampleSystem_Tuned() {
	r, _ := refrigerant.Lookup("R-410A")
	s, _ := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.TXV)
	large, err := s.Tuned(cycle.Tuning{CondenserUA: 0.25})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range []*cycle.System{s, large} {
		o, _ := m.Solve(cycle.RatingConditions(), cycle.Faults{})
		fmt.Printf("condensing %s, EER %.1f\n", o.Condensing.Format(quantity.IP), o.EER)
	}
	// Output:
	// condensing 115.0 °F, EER 9.8
	// condensing 112.9 °F, EER 10.1
}

// On a cool evening an outdoor fan that holds the head keeps the restrictor fed.
func ExampleSystem_WithHeadPressure() {
	r, _ := refrigerant.Lookup("R-22")
	s, _ := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	c := cycle.Conditions{OutdoorDryBulb: quantity.Fahrenheit(60),
		ReturnDryBulb: quantity.Fahrenheit(72), ReturnWetBulb: quantity.Fahrenheit(60)}
	for _, hold := range []quantity.Temperature{0, quantity.Fahrenheit(95)} {
		o, err := s.WithHeadPressure(hold).Solve(c, cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("fan at %.0f %%: suction at %s\n", 100*o.FanShare,
			o.Evaporating.Format(quantity.IP))
	}
	// Output:
	// fan at 100 %: suction at 33.0 °F
	// fan at 50 %: suction at 37.3 °F
}

func ExampleCompressor_IsentropicEfficiency() {
	var c cycle.Compressor // an ordinary one
	for _, ratio := range []float64{1.5, 2.8, 5} {
		fmt.Printf("pressure ratio %.1f: isentropic %.2f, volumetric %.2f\n", ratio,
			c.IsentropicEfficiency(ratio), c.VolumetricEfficiency(ratio))
	}
	// Output:
	// pressure ratio 1.5: isentropic 0.62, volumetric 0.96
	// pressure ratio 2.8: isentropic 0.68, volumetric 0.93
	// pressure ratio 5.0: isentropic 0.63, volumetric 0.89
}

// Hot suction gas is thin: the same map gives less flow. The figures of the map are invented.
func ExampleMap_AtState() {
	r, _ := refrigerant.Lookup("R-22")
	m := cycle.Map{
		Flow: [10]float64{250, 5.2, -1.1, 0.045, 0.002, 0.003, 0.0001, -0.00001, 0.00001,
			-0.00001},
		Power: [10]float64{620, -6.1, 12.4, -0.09, 0.11, 0.035, 0, 0, 0, 0},
		Units: cycle.MapIP, RatedSuperheat: quantity.FahrenheitDelta(20),
	}
	suction, _ := r.DewPressure(quantity.Fahrenheit(45))
	discharge, _ := r.DewPressure(quantity.Fahrenheit(115))
	for _, line := range []float64{55, 65, 85} {
		gas, _ := r.State(suction, quantity.Fahrenheit(line))
		flow, power, err := m.AtState(r, gas, discharge)
		fmt.Printf("%.0f °F: %s, %s %v\n", line, flow.Format(quantity.IP), power, err)
	}
	// Output:
	// 55 °F: 507 lb/h, 2.60 kW <nil>
	// 65 °F: 496 lb/h, 2.62 kW <nil>
	// 85 °F: 477 lb/h, 2.66 kW <nil>
}

func ExampleFitted_ChargeChange() {
	s, v := visit()
	f, err := cycle.Fit(s, v)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("two ounces are %.1f %% of a charge of 6 lb 8 oz\n",
		100*f.ChargeChange(quantity.Ounces(2), quantity.Pounds(6.5)))
	// Output:
	// two ounces are 1.9 % of a charge of 6 lb 8 oz
}

// A clamp that hangs loose on the liquid line fits no machine of the kind, and the misfit
// says so before a prediction is believed.
func ExampleFitted_Misfit() {
	s, v := visit()
	for _, off := range []float64{0, -30} {
		v := v
		v.LiquidLine = new(*v.LiquidLine)
		v.LiquidLine.Value = v.LiquidLine.Value.Add(quantity.FahrenheitDelta(off))
		f, err := cycle.Fit(s, v)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f °F off: misfit %.1f\n", off, f.Misfit())
	}
	// Output:
	// 0 °F off: misfit 1.3
	// -30 °F off: misfit 5.1
}

// What the fitted machine does at the visit, where no gauge or clamp reaches.
func ExampleFitted_Operating() {
	s, v := visit()
	f, err := cycle.Fit(s, v)
	if err != nil {
		fmt.Println(err)
		return
	}
	o := f.Operating()
	fmt.Printf("%s, enters the evaporator %.0f %% vapor, coil surface %s\n",
		o.Flow.Format(quantity.IP), 100*o.EvaporatorIn.Quality, o.CoilSurface.Format(quantity.IP))
	// Output:
	// 423 lb/h, enters the evaporator 23 % vapor, coil surface 38.5 °F
}

// Overcharged on a mild day, a fixed restrictor sends liquid back to the compressor.
func ExampleOperating_LiquidReturns() {
	r, _ := refrigerant.Lookup("R-22")
	s, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	if err != nil {
		fmt.Println(err)
		return
	}
	mild := cycle.Conditions{OutdoorDryBulb: quantity.Fahrenheit(75),
		ReturnDryBulb: quantity.Fahrenheit(72), ReturnWetBulb: quantity.Fahrenheit(60)}
	for _, f := range []cycle.Faults{{Charge: -0.1}, {Charge: 0.2}} {
		o, err := s.Solve(mild, f)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("charge %+.0f %%: superheat %s, liquid returns: %v\n", 100*f.Charge,
			o.Superheat.Format(quantity.IP), o.LiquidReturns())
	}
	// Output:
	// charge -10 %: superheat 14.9 °F, liquid returns: false
	// charge +20 %: superheat 0.0 °F, liquid returns: true
}

// What the design came to: the compressor, and the metering device of each kind.
func ExampleSystem_Compressor() {
	r, _ := refrigerant.Lookup("R-22")
	for _, m := range []refrigerant.Metering{
		refrigerant.FixedRestrictor, refrigerant.Capillary, refrigerant.TXV,
	} {
		s, err := cycle.DesignResidential(r, quantity.Tons(3), m)
		if err != nil {
			fmt.Println(err)
			return
		}
		o, err := s.Solve(cycle.RatingConditions(), cycle.Faults{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"%s: displaces %.1f cfm at a pressure ratio of %.2f\n", m,
			s.Compressor().Displacement.CFM(), o.PressureRatio(),
		)
		fmt.Printf(
			"  piston %.3f in, capillary %.3f in, valve for %s\n", s.ShortTube().Diameter.Inches(),
			s.CapillaryTube().Diameter.Inches(), s.ExpansionValve().Superheat.Format(quantity.IP),
		)
	}
	// Output:
	// fixed restrictor: displaces 6.1 cfm at a pressure ratio of 2.90
	//   piston 0.076 in, capillary 0.000 in, valve for 0.0 °F
	// capillary tube: displaces 6.1 cfm at a pressure ratio of 2.90
	//   piston 0.000 in, capillary 0.055 in, valve for 0.0 °F
	// TXV: displaces 6.1 cfm at a pressure ratio of 2.90
	//   piston 0.000 in, capillary 0.000 in, valve for 6.4 °F
}

// A machine that no constructor made, and readings that leave it open, have errors to tell by.
func ExampleFit_errors() {
	_, err := cycle.Fit(new(cycle.System), cycle.Readings{})
	fmt.Println(errors.Is(err, cycle.ErrNoSystem), errors.Is(err, cycle.ErrUnsettled))
	// Output: true false
}
