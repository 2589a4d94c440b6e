package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// place is where a moist air problem happens: at sea level, and from difficulty
// 3 on a mountain.
func (g *generator) place() (z quantity.Length, atm quantity.Pressure, text string) {
	if g.difficulty < 3 {
		return 0, quantity.StandardAtmosphere, "at sea level"
	}
	z = quantity.Feet(g.pick(4000, 7000, 1000))
	if !g.ip() {
		z = quantity.Meters(g.pick(1200, 2100, 300))
	}
	return z, quantity.AtmosphereAt(z), "at " + elevationText(z, g.sys)
}

// atmosphere is in psia or kPa, rounded as it is printed.
func (g *generator) atmosphere(p quantity.Pressure) (v float64, unit string) {
	if g.ip() {
		return math.Round(1e2*p.PSIA()) / 1e2, "psia"
	}
	return math.Round(1e2*p.Kilopascals()) / 1e2, "kPa"
}

// airProblem finds the humidity ratio from dry and wet bulb.
func airProblem(g *generator) (Problem, error) {
	wet := g.degrees(g.pick(58, 68, 1), g.pick(14, 20, 1))
	dry := g.fromScale(g.scale(wet) + g.either(g.pick(8, 16, 1), g.pick(4, 9, 1)))
	z, atm, place := g.place()
	const places = 4
	pws, err := g.steam(wet, places)
	if err != nil {
		return Problem{}, err
	}
	pdry, err := g.steam(dry, places)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.steamTable(wet, dry, places)
	if err != nil {
		return Problem{}, err
	}
	pressure, unit := g.atmosphere(atm)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	t, w := g.scale(dry), g.scale(wet)
	saturated := func(pws, p float64) float64 { return 0.621945 * pws / (p - pws) }
	// ratio is equation 33; turn is −1 where the sign of its last term is mistaken.
	ratio := func(ws, turn float64) float64 {
		if g.ip() {
			return ((1093-0.556*w)*ws - turn*0.240*(t-w)) / (1093 + 0.444*t - w)
		}
		return ((2501-2.326*w)*ws - turn*1.006*(t-w)) / (2501 + 1.86*t - 4.186*w)
	}
	ws := math.Round(1e6*saturated(pws, pressure)) / 1e6
	formula := "W = ((1093 − 0.556 t*) Ws* − 0.240 (t − t*)) / (1093 + 0.444 t − t*)"
	filled := fmt.Sprintf("((1093 − 0.556 × %s) × %s − 0.240 × (%s − %s)) / (1093 + 0.444 × %s − %s)", number(w), decimals(ws, 6), number(t), number(w), number(t), number(w))
	whole, answerUnit := 7000.0, "grains/lb of dry air"
	if !g.ip() {
		formula = "W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)"
		filled = fmt.Sprintf("((2501 − 2.326 × %s) × %s − 1.006 × (%s − %s)) / (2501 + 1.86 × %s − 4.186 × %s)", number(w), decimals(ws, 6), number(t), number(w), number(t), number(w))
		whole, answerUnit = 1000, "g/kg of dry air"
	}
	answer := ratio(ws, 1)
	a := numeric(whole*answer, 0.01*whole*answer, 1, answerUnit)
	p := Problem{
		Statement: fmt.Sprintf("Return air is at %s dry bulb and %s wet bulb %s, where the atmosphere is %s %s.", g.temperature(dry), g.temperature(wet), place, decimals(pressure, 3), unit),
		Given:     given("dry bulb", g.temperature(dry), "wet bulb", g.temperature(wet), "atmosphere", decimals(pressure, 3)+" "+unit),
		Ask:       "What is its humidity ratio, in " + answerUnit + "?",
		Tables:    []Table{tab},
		Air:       true,
		Elevation: z,
		plot: func(c *chart.Chart) error {
			air, err := psychro.FromWetBulb(dry, wet, atm)
			if err != nil {
				return err
			}
			return c.AddState("return", air)
		},
		Steps: []Step{
			step(moistAirSource+", equation 21", "Saturated at the wet bulb t*: Ws* = 0.621945 × %s / (%s − %s) = %s.", decimals(pws, places), decimals(pressure, 3), decimals(pws, places), decimals(ws, 6)),
			step(moistAirSource+", equation 33", "%s = %s = %s.", formula, filled, decimals(answer, 5)),
			step(definition, "That is %s × %s = %s.", decimals(answer, 5), decimals(whole, 0), a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(whole*ws, "the air was taken as saturated at the wet bulb"),
			a.slip(whole*saturated(pdry, pressure), "the saturation pressure at the dry bulb was used: that is saturated air at the dry bulb"),
			a.slip(whole*ratio(ws, -1), "the term with the wet bulb depression was added; unsaturated air holds less than Ws*"),
		},
		again: func() (float64, error) {
			air, err := psychro.FromWetBulb(dry, wet, atm)
			return whole * air.HumidityRatio(), err
		},
	}
	if g.ip() {
		p.Wrong = append(p.Wrong, a.slip(1000*answer, "a pound has 7000 grains; 1000 is for grams and kilograms"))
	} else {
		p.Wrong = append(p.Wrong, a.slip(whole*1.006*(t-w)/2501, "the wet bulb depression alone; that is how much water the air could still take up"))
	}
	if pressure != sea {
		p.Wrong = append(p.Wrong, a.slip(whole*ratio(saturated(pws, sea), 1), "the atmosphere of sea level was used; thin air holds more water by weight"))
	}
	return p, nil
}

// capacityProblem turns two air states and an airflow into cooling capacity.
func capacityProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	var in, out psychro.Air
	var dryIn, wetIn, dryOut, wetOut float64
	for {
		wetIn, dryIn = g.either(g.pick(62, 68, 1), g.pick(16, 20, 1)), g.either(g.pick(74, 80, 1), g.pick(23, 27, 1))
		wetOut = g.either(g.pick(53, 57, 1), g.pick(11, 14, 1))
		dryOut = wetOut + g.either(1, 0.5)
		var err error
		if in, err = psychro.FromWetBulb(g.fromScale(dryIn), g.fromScale(wetIn), atm); err != nil {
			return Problem{}, err
		}
		if out, err = psychro.FromWetBulb(g.fromScale(dryOut), g.fromScale(wetOut), atm); err != nil {
			return Problem{}, err
		}
		// A coil that cools takes water out, seldom less than a twentieth or more
		// than half of its capacity, and the line through both airs meets the
		// saturation curve.
		if _, _, err := psychro.ApparatusDewPoint(in, out); err != nil {
			continue
		}
		sensible := float64(in.Enthalpy()-out.Enthalpy()) - 2501e3*(in.HumidityRatio()-out.HumidityRatio())
		if share := sensible / float64(in.Enthalpy()-out.Enthalpy()); share < 0.95 && share > 0.5 {
			break
		}
	}
	flow := quantity.CFM(g.pick(800, 1600, 100))
	if !g.ip() {
		flow = quantity.LitersPerSecond(g.pick(350, 750, 50))
	}
	hi, ho := g.enthalpy(in), g.enthalpy(out)
	tab := g.enthalpyTable(wetOut-g.pick(0, 2, 1), wetIn+g.pick(0, 2, 1), []float64{dryOut, dryOut + 2, dryIn - 2, dryIn}, atm, place)
	p := Problem{
		Given: given("airflow", flowText(flow, g.sys),
			"entering", fmt.Sprintf("%s %s dry bulb, %s %s wet bulb", number(dryIn), g.degreeUnit(), number(wetIn), g.degreeUnit()),
			"leaving", fmt.Sprintf("%s %s dry bulb, %s %s wet bulb", number(dryOut), g.degreeUnit(), number(wetOut), g.degreeUnit())),
		Ask:       "What is the total cooling capacity?",
		Tables:    []Table{tab},
		Air:       true,
		Elevation: z,
		plot: func(c *chart.Chart) error {
			if err := c.AddState("entering", in); err != nil {
				return err
			}
			if err := c.AddState("leaving", out); err != nil {
				return err
			}
			return c.AddCoil("", in, out)
		},
	}
	states := fmt.Sprintf("The air enters a coil at %s %s dry bulb and %s %s wet bulb and leaves it at %s %s dry bulb and %s %s wet bulb.",
		number(dryIn), g.degreeUnit(), number(wetIn), g.degreeUnit(), number(dryOut), g.degreeUnit(), number(wetOut), g.degreeUnit())
	// The mass flow of dry air is that of standard air, or from the volume of the
	// air itself where the air is thin.
	const tableSource = "enthalpy table of the problem, from " + moistAirSource + ", equations 30 and 33"
	volume := g.either(in.SpecificVolume().CubicMetersPerKilogram()*16.018463, in.SpecificVolume().CubicMetersPerKilogram())
	volume = math.Round(g.either(10, 1000)*volume) / g.either(10, 1000)
	var a Answer
	if g.ip() {
		factor, factorText, factorSource := 4.5, "4.5", standardAir
		p.Statement = fmt.Sprintf("A blower moves %s of standard air at sea level. %s", flowText(flow, g.sys), states)
		if z != 0 {
			factor, factorText, factorSource = 60/volume, fmt.Sprintf("60 / %s", number(volume)), definition
			p.Statement = fmt.Sprintf("A blower %s moves %s of return air, which takes %s ft³ for a pound of dry air. %s", place, flowText(flow, g.sys), number(volume), states)
		}
		a = numeric(factor*flow.CFM()*(hi-ho), 0.01*factor*flow.CFM()*(hi-ho), -2, "Btu/h")
		p.Steps = []Step{
			step(tableSource, "Entering %s Btu/lb, leaving %s Btu/lb.", decimals(hi, 2), decimals(ho, 2)),
			step(factorSource, "Q = %s × %s × (%s − %s) = %s.", factorText, decimals(flow.CFM(), 0), decimals(hi, 2), decimals(ho, 2), a.Text),
		}
		p.Wrong = []Wrong{
			a.slip(factor*0.24*flow.CFM()*(dryIn-dryOut), "the sensible part alone, from the dry bulbs; the water taken out is missing"),
			a.slip(1.08*flow.CFM()*(hi-ho), "1.08 belongs to a difference of temperatures, 4.5 to one of enthalpies"),
			a.slip(factor*flow.CFM()*(wetIn-wetOut), "wet bulb temperatures were taken for enthalpies"),
			a.slip(factor*flow.CFM()*hi, "the leaving air was not taken off"),
		}
		if z != 0 {
			p.Wrong = append([]Wrong{a.slip(4.5*flow.CFM()*(hi-ho), "4.5 is for standard air; thin air carries less for each cubic foot")}, p.Wrong...)
		}
	} else {
		factor, factorText, factorSource := 1.2, "1.2", standardAir
		p.Statement = fmt.Sprintf("A blower moves %s of standard air at sea level. %s", flowText(flow, g.sys), states)
		if z != 0 {
			factor, factorText, factorSource = 1/volume, fmt.Sprintf("1 / %s", decimals(volume, 3)), definition
			p.Statement = fmt.Sprintf("A blower %s moves %s of return air, which takes %s m³ for a kilogram of dry air. %s", place, flowText(flow, g.sys), decimals(volume, 3), states)
		}
		cubic := flow.LitersPerSecond() / 1000
		a = numeric(factor*cubic*(hi-ho), 0.01*factor*cubic*(hi-ho), 1, "kW")
		p.Steps = []Step{
			step(tableSource, "Entering %s kJ/kg, leaving %s kJ/kg.", decimals(hi, 1), decimals(ho, 1)),
			step(factorSource, "Q = %s × %s × (%s − %s) = %s.", factorText, decimals(cubic, 3), decimals(hi, 1), decimals(ho, 1), a.Text),
		}
		p.Wrong = []Wrong{
			a.slip(factor*1.006*cubic*(dryIn-dryOut), "the sensible part alone, from the dry bulbs; the water taken out is missing"),
			a.slip(cubic*(hi-ho), "cubic meters were taken for kilograms"),
			a.slip(factor*1.006*cubic*(wetIn-wetOut), "wet bulb temperatures were taken for dry ones"),
			a.slip(factor*cubic*hi, "the leaving air was not taken off"),
		}
		if z != 0 {
			p.Wrong = append([]Wrong{a.slip(1.2*cubic*(hi-ho), "1.2 is for standard air; thin air carries less for each cubic meter")}, p.Wrong...)
		}
	}
	p.Answer = a
	p.again = func() (float64, error) {
		dryAir := float64(in.DryAirFlow(flow))
		if z == 0 {
			dryAir = float64(flow) * g.either(0.075*16.018463, 1.2)
		}
		watts := dryAir * float64(in.Enthalpy()-out.Enthalpy())
		if g.ip() {
			return quantity.Watts(watts).BtuPerHour(), nil
		}
		return watts / 1000, nil
	}
	return p, nil
}

// airflowProblem finds the airflow from electric heat and a temperature rise.
func airflowProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	volts, amps := g.either(240, 230), g.pick(20, 60, 5)
	rise := g.either(g.pick(15, 40, 5), g.pick(8, 20, 2))
	room := g.degrees(70, 20)
	watts := volts * amps
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	here, unit := g.atmosphere(atm)
	// thin is how much lighter the air is than at sea level.
	thin := math.Round(1000*here/sea) / 1000
	p := Problem{
		Statement: fmt.Sprintf("With only the electric heat on, the heater takes %s A at %s V and warms the air by %s, from %s, %s. The blower's own heat is left aside.", number(amps), number(volts), g.difference(rise), g.temperature(room), place),
		Given:     given("voltage", number(volts)+" V", "current", number(amps)+" A", "temperature rise", g.difference(rise)),
		Ask:       "What is the airflow?",
	}
	factor, source := g.either(1.08, 1.21), standardAir+", times the specific heat of moist air"
	if z != 0 {
		p.Given = append(p.Given, Given{"atmosphere", decimals(here, 2) + " " + unit})
	}
	altered := decimals(factor, 2)
	heat := watts
	var a Answer
	if g.ip() {
		heat = 3.412 * watts
		p.Steps = append(p.Steps, step("definition; 1 W is 3.412 Btu/h", "Heat: %s V × %s A × 3.412 = %s Btu/h.", number(volts), number(amps), decimals(heat, 0)))
	} else {
		p.Steps = append(p.Steps, step(definition, "Heat: %s V × %s A = %s W.", number(volts), number(amps), decimals(heat, 0)))
	}
	if z != 0 {
		altered = decimals(factor*thin, 3)
		p.Steps = append(p.Steps, step("perfect gas at one temperature", "The factor goes with the pressure of the atmosphere: %s × %s / %s = %s.", decimals(factor, 2), decimals(here, 2), decimals(sea, 2), altered))
	}
	result := heat / (factor * thin * rise)
	if g.ip() {
		a = numeric(result, 0.01*result, -1, "CFM")
	} else {
		a = numeric(result, 0.01*result, 0, "L/s")
	}
	p.Steps = append(p.Steps, step(source, "Airflow: %s / (%s × %s) = %s.", decimals(heat, 0), altered, number(rise), a.Text))
	p.Answer = a
	if z != 0 {
		p.Wrong = append(p.Wrong, a.slip(result*thin, "the factor of sea level was used; thin air carries less heat, so more of it has to move"))
	}
	p.Wrong = append(p.Wrong, a.slip(result*math.Sqrt(3), "√3 belongs to three phases; this heater is on one"))
	if g.ip() {
		p.Wrong = append(p.Wrong,
			a.slip(result/3.412, "watts were not turned into Btu/h"),
			a.slip(result*1.08/4.5, "4.5 belongs to a difference of enthalpies, 1.08 to one of temperatures"))
	} else {
		p.Wrong = append(p.Wrong,
			a.slip(result*3.412, "watts were turned into Btu/h, which the metric formula does not take"),
			a.slip(result*1.21, "the factor was left out"))
	}
	p.again = func() (float64, error) {
		air, err := psychro.FromHumidityRatio(room, 0.006, atm)
		if err != nil {
			return 0, err
		}
		warm, err := psychro.SensibleHeatCool(air, g.fromScale(g.scale(room)+rise))
		if err != nil {
			return 0, err
		}
		flow := quantity.VolumeFlow(watts / float64(warm.Heat) * float64(air.SpecificVolume()))
		if g.ip() {
			return flow.CFM(), nil
		}
		return flow.LitersPerSecond(), nil
	}
	return p, nil
}
