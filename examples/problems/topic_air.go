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

// airProblem finds the humidity ratio, in turn from dry and wet bulb and from the
// relative humidity.
func airProblem(g *generator) (Problem, error) {
	if g.turn(2) == 1 {
		return relativeHumidityProblem(g)
	}
	return wetBulbProblem(g)
}

// dryAirUnit is how many of the unit of a humidity ratio a pound or kilogram of
// dry air takes for one of water.
func (g *generator) dryAirUnit() (whole float64, unit string) {
	if g.ip() {
		return 7000, "grains/lb of dry air"
	}
	return 1000, "g/kg of dry air"
}

// steamBetween is the saturation pressure of water as a student reads it, from
// difficulty 2 on halfway between two rows, and says how.
func (g *generator) steamBetween(t quantity.Temperature, places int) (v float64, how string, err error) {
	low := g.fromScale(math.Floor(g.scale(t) + 1e-6))
	below, err := g.steam(low, places)
	if err != nil || math.Abs(g.scale(t)-g.scale(low)) < 1e-6 {
		return below, fmt.Sprintf("At %s water has a saturation pressure of %s.", g.temperature(t), fixed(below, places)), err
	}
	above, err := g.steam(g.fromScale(g.scale(low)+1), places)
	scale := math.Pow10(places)
	v = math.Round(scale*(below+above)/2) / scale
	return v, fmt.Sprintf("%s lies halfway between two rows: (%s + %s) / 2 = %s.", g.temperature(t), fixed(below, places), fixed(above, places), fixed(v, places)), err
}

const steamSource = "steam table of the problem, from " + moistAirSource + ", equation 6"

// relativeHumidityProblem finds the humidity ratio from the relative humidity.
func relativeHumidityProblem(g *generator) (Problem, error) {
	dry := g.degrees(g.pick(70, 80, 1), g.pick(21, 27, 1))
	if g.difficulty >= 2 {
		dry = g.fromScale(g.scale(dry) + 0.5)
	}
	percent := g.pick(30, 70, 5)
	z, atm, place := g.place()
	const places = 4
	pws, how, err := g.steamBetween(dry, places)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.steamTable(g.fromScale(math.Floor(g.scale(dry)+1e-6)), g.fromScale(math.Ceil(g.scale(dry)-1e-6)), places)
	if err != nil {
		return Problem{}, err
	}
	pressure, unit := g.atmosphere(atm)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	whole, answerUnit := g.dryAirUnit()
	ratio := func(pw, p float64) float64 { return whole * 0.621945 * pw / (p - pw) }
	pw := math.Round(1e4*pws*percent/100) / 1e4
	a := numeric(ratio(pw, pressure), 0.01*ratio(pw, pressure), 1, answerUnit)
	p := Problem{
		Statement: fmt.Sprintf("The air of a room is at %s dry bulb and %s %% relative humidity %s, where the atmosphere is %s %s.", g.temperature(dry), number(percent), place, fixed(pressure, 2), unit),
		Given:     given("dry bulb", g.temperature(dry), "relative humidity", number(percent)+" %", "atmosphere", fixed(pressure, 2)+" "+unit),
		Ask:       "What is its humidity ratio, in " + answerUnit + "?",
		Tables:    []Table{tab},
		Air:       true,
		Elevation: z,
		plot: func(c *chart.Chart) error {
			air, err := psychro.FromRelativeHumidity(dry, percent/100, atm)
			if err != nil {
				return err
			}
			return c.AddState("room", air)
		},
		Steps: []Step{
			step(steamSource, "%s", how),
			step(definition, "The vapor has %s %% of that: %s × %s = %s %s.", number(percent), decimals(percent/100, 2), fixed(pws, places), fixed(pw, 4), unit),
			step(moistAirSource+", equation 20", "W = %s × 0.621945 × %s / (%s − %s) = %s.", decimals(whole, 0), fixed(pw, 4), fixed(pressure, 2), fixed(pw, 4), a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(ratio(pws, pressure), "the air was taken as saturated; the relative humidity was left out"),
			a.slip(whole*pw/pressure, "the factor 0.621945 was left out; a mole of water weighs less than one of air"),
			a.slip(ratio(pw, pressure)*percent/100, "the relative humidity was counted twice"),
			a.slip(ratio(pws-pw, pressure), "what the air could still take up, not what it holds"),
		},
		again: func() (float64, error) {
			air, err := psychro.FromRelativeHumidity(dry, percent/100, atm)
			return whole * air.HumidityRatio(), err
		},
	}
	if pressure != sea {
		p.Wrong = append(p.Wrong, a.slip(ratio(pw, sea), "the atmosphere of sea level was used; thin air holds more water by weight"))
	}
	return p, nil
}

// wetBulbProblem finds the humidity ratio from dry and wet bulb.
func wetBulbProblem(g *generator) (Problem, error) {
	wet := g.degrees(g.pick(58, 68, 1), g.pick(14, 20, 1))
	if g.difficulty >= 2 {
		wet = g.fromScale(g.scale(wet) + 0.5)
	}
	dry := g.fromScale(g.scale(wet) + g.either(g.pick(8, 16, 1), g.pick(4, 9, 1)))
	z, atm, place := g.place()
	const places = 4
	pws, how, err := g.steamBetween(wet, places)
	if err != nil {
		return Problem{}, err
	}
	pdry, _, err := g.steamBetween(dry, places)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.steamTable(g.fromScale(math.Floor(g.scale(wet)+1e-6)), g.fromScale(math.Ceil(g.scale(dry)-1e-6)), places)
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
	filled := fmt.Sprintf("((1093 − 0.556 × %s) × %s − 0.240 × (%s − %s)) / (1093 + 0.444 × %s − %s)", number(w), fixed(ws, 6), number(t), number(w), number(t), number(w))
	whole, answerUnit := g.dryAirUnit()
	if !g.ip() {
		filled = fmt.Sprintf("((2501 − 2.326 × %s) × %s − 1.006 × (%s − %s)) / (2501 + 1.86 × %s − 4.186 × %s)", number(w), fixed(ws, 6), number(t), number(w), number(t), number(w))
	}
	answer := ratio(ws, 1)
	a := numeric(whole*answer, 0.01*whole*answer, 1, answerUnit)
	p := Problem{
		Statement: fmt.Sprintf("Return air is at %s dry bulb and %s wet bulb %s, where the atmosphere is %s %s.", g.temperature(dry), g.temperature(wet), place, fixed(pressure, 2), unit),
		Given:     given("dry bulb", g.temperature(dry), "wet bulb", g.temperature(wet), "atmosphere", fixed(pressure, 2)+" "+unit),
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
			step(steamSource, "%s", how),
			step(moistAirSource+", equation 21", "Saturated at the wet bulb t*: Ws* = 0.621945 × %s / (%s − %s) = %s.", fixed(pws, places), fixed(pressure, 2), fixed(pws, places), fixed(ws, 6)),
			step(moistAirSource+", equation 33", "%s = %s = %s.", wetBulbFormula(g.sys), filled, decimals(answer, 5)),
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

// capacityProblem turns two air states and an airflow into cooling capacity. From
// difficulty 2 on the entering wet bulb lies halfway between two rows.
func capacityProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	var in, out psychro.Air
	var dryIn, wetIn, dryOut, wetOut float64
	for {
		wetIn, dryIn = g.either(g.pick(62, 68, 1), g.pick(16, 20, 1)), g.either(g.pick(74, 80, 1), g.pick(23, 27, 1))
		wetOut = g.either(g.pick(53, 57, 1), g.pick(11, 14, 1))
		dryOut = wetOut + g.either(1, 0.5)
		if g.difficulty >= 2 {
			wetIn += 0.5
		}
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
	between := ""
	if g.difficulty >= 2 {
		var rows [2]float64
		for i, w := range []float64{wetIn - 0.5, wetIn + 0.5} {
			row, err := psychro.FromWetBulb(g.fromScale(dryIn), g.fromScale(w), atm)
			if err != nil {
				return Problem{}, err
			}
			rows[i] = g.enthalpy(row)
		}
		places := int(g.either(2, 1))
		hi = (rows[0] + rows[1]) / 2
		between = fmt.Sprintf(", halfway between %s and %s", fixed(rows[0], places), fixed(rows[1], places))
	}
	hiText := fixed(hi, int(g.either(2, 1)))
	if math.Abs(figure(hiText)-hi) > 1e-6 { // half of the last place
		hiText = fixed(hi, int(g.either(3, 2)))
	}
	tab := g.enthalpyTable(wetOut-g.pick(0, 2, 1), math.Ceil(wetIn)+g.pick(0, 2, 1), []float64{dryOut, dryOut + 2, dryIn - 2, dryIn}, atm, place)
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
			factor, factorText, factorSource = 60/volume, fmt.Sprintf("60 / %s", fixed(volume, 1)), definition
			p.Statement = fmt.Sprintf("A blower %s moves %s of return air, which takes %s ft³ for a pound of dry air. %s", place, flowText(flow, g.sys), fixed(volume, 1), states)
		}
		a = numeric(factor*flow.CFM()*(hi-ho), 0.01*factor*flow.CFM()*(hi-ho), -2, "Btu/h")
		p.Steps = []Step{
			step(tableSource, "Entering %s Btu/lb%s; leaving %s Btu/lb.", hiText, between, fixed(ho, 2)),
			step(factorSource, "Q = %s × %s × (%s − %s) = %s.", factorText, decimals(flow.CFM(), 0), hiText, fixed(ho, 2), a.Text),
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
			factor, factorText, factorSource = 1/volume, fmt.Sprintf("1 / %s", fixed(volume, 3)), definition
			p.Statement = fmt.Sprintf("A blower %s moves %s of return air, which takes %s m³ for a kilogram of dry air. %s", place, flowText(flow, g.sys), fixed(volume, 3), states)
		}
		cubic := flow.LitersPerSecond() / 1000
		a = numeric(factor*cubic*(hi-ho), 0.01*factor*cubic*(hi-ho), 2, "kW")
		p.Steps = []Step{
			step(tableSource, "Entering %s kJ/kg%s; leaving %s kJ/kg.", hiText, between, fixed(ho, 1)),
			step(factorSource, "Q = %s × %s × (%s − %s) = %s.", factorText, decimals(cubic, 3), hiText, fixed(ho, 1), a.Text),
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

// airflowProblem finds the airflow from a known heat and a temperature rise, in
// turn of electric heat and of a furnace. From difficulty 2 on the rise has to be
// taken from two temperatures, among readings that are not needed.
func airflowProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	room := g.degrees(70, 20)
	sea, _ := g.atmosphere(quantity.StandardAtmosphere)
	here, unit := g.atmosphere(atm)
	// thin is how much lighter the air is than at sea level.
	thin := math.Round(1000*here/sea) / 1000
	p := Problem{Ask: "What is the airflow?"}
	var h heater
	var rise float64
	// A blower of a house moves from 600 to 2000 CFM (280 to 940 L/s).
	for flow := 0.0; flow < 600 || flow > 2000; flow = 3.412 * h.watts / (1.08 * rise * g.either(1, 1.8)) {
		if g.turn(2) == 1 {
			h, rise = g.furnace(), g.either(g.pick(40, 60, 5), g.pick(22, 32, 2))
		} else {
			h, rise = g.electricHeat(), g.either(g.pick(15, 40, 5), g.pick(8, 20, 2))
		}
	}
	p.Given, p.Steps, p.Caution = h.given, []Step{h.step}, h.caution
	supply := g.fromScale(g.scale(room) + rise)
	if g.difficulty >= 2 {
		p.Statement = fmt.Sprintf("%s The air returns at %s and leaves at %s, %s, measured out of sight of the heat. The blower's own heat is left aside.", h.statement, g.temperature(room), g.temperature(supply), place)
		p.Given = append(p.Given, given("return air", g.temperature(room), "supply air", g.temperature(supply), "outdoor air", g.temperature(g.degrees(g.pick(30, 50, 1), g.pick(0, 10, 1))))...)
		p.Steps = append(p.Steps, step(definition, "Temperature rise: %s − %s = %s.", g.temperature(supply), g.temperature(room), g.difference(rise)))
	} else {
		p.Statement = fmt.Sprintf("%s It warms the air by %s, from %s, %s. The blower's own heat is left aside.", h.statement, g.difference(rise), g.temperature(room), place)
		p.Given = append(p.Given, Given{"temperature rise", g.difference(rise)})
	}
	factor, source := g.either(1.08, 1.21), standardAir+", times the specific heat of moist air"
	if z != 0 {
		p.Given = append(p.Given, given("atmosphere", fixed(here, 2)+" "+unit, "atmosphere at sea level", fixed(sea, 2)+" "+unit)...)
	}
	altered := decimals(factor, 2)
	if z != 0 {
		altered = decimals(factor*thin, 3)
		p.Steps = append(p.Steps, step("perfect gas at one temperature", "The factor goes with the pressure of the atmosphere, which is %s %s at sea level: %s × %s / %s = %s.", fixed(sea, 2), unit, decimals(factor, 2), fixed(here, 2), fixed(sea, 2), altered))
	}
	heat := g.either(3.412, 1) * h.watts
	if h.btuh != 0 {
		heat = h.btuh
	}
	result := heat / (factor * thin * rise)
	a := numeric(result, 0.01*result, int(g.either(-1, 0)), "L/s")
	if g.ip() {
		a = numeric(result, 0.01*result, -1, "CFM")
	}
	p.Steps = append(p.Steps, step(source, "Airflow: %s / (%s × %s) = %s.", decimals(heat, 0), altered, number(rise), a.Text))
	p.Answer = a
	if z != 0 {
		p.Wrong = append(p.Wrong, a.slip(result*thin, "the factor of sea level was used; thin air carries less heat, so more of it has to move"))
	}
	p.Wrong = append(p.Wrong, a.slip(result*h.slip, h.mistake))
	if g.ip() {
		p.Wrong = append(p.Wrong, a.slip(result*1.08/4.5, "4.5 belongs to a difference of enthalpies, 1.08 to one of temperatures"))
		if h.btuh == 0 {
			p.Wrong = append(p.Wrong, a.slip(result/3.412, "watts were not turned into Btu/h"))
		} else {
			p.Wrong = append(p.Wrong, a.slip(result*1.08, "the factor was left out"))
		}
	} else {
		p.Wrong = append(p.Wrong,
			a.slip(result*3.412, "watts were turned into Btu/h, which the metric formula does not take"),
			a.slip(result*1.21, "the factor was left out"))
	}
	if g.difficulty >= 2 {
		p.Wrong = append(p.Wrong, a.slip(result*rise/g.scale(supply), "divided by the supply temperature itself; what counts is how far it is above the return"))
	}
	p.again = func() (float64, error) {
		air, err := psychro.FromHumidityRatio(room, 0.006, atm)
		if err != nil {
			return 0, err
		}
		warm, err := psychro.SensibleHeatCool(air, supply)
		if err != nil {
			return 0, err
		}
		flow := quantity.VolumeFlow(h.watts / float64(warm.Heat) * float64(air.SpecificVolume()))
		if g.ip() {
			return flow.CFM(), nil
		}
		return flow.LitersPerSecond(), nil
	}
	return p, nil
}

// A heater is what warms the air of an airflow problem, and how its heat is
// known.
type heater struct {
	statement string
	given     []Given
	step      Step
	watts     float64
	btuh      float64 // where the heat is stated in Btu/h
	slip      float64 // what the mistake makes of the airflow
	mistake   string
	caution   string
}

func (g *generator) electricHeat() heater {
	volts, amps := g.either(240, 230), g.pick(20, 60, 5)
	h := heater{
		statement: fmt.Sprintf("With only the electric heat on, the single-phase heater takes %s A at %s V.", number(amps), number(volts)),
		given:     given("voltage", number(volts)+" V", "current", number(amps)+" A"),
		watts:     volts * amps, slip: math.Sqrt(3), mistake: "√3 belongs to three phases; this heater is on one",
		caution: "the terminals are live while this is measured. Only a qualified person opens the panel.",
	}
	if g.ip() {
		h.step = step("definition; 1 W is 3.412 Btu/h", "Heat: %s V × %s A × 3.412 = %s Btu/h.", number(volts), number(amps), decimals(3.412*h.watts, 0))
	} else {
		h.step = step(definition, "Heat: %s V × %s A = %s W.", number(volts), number(amps), decimals(h.watts, 0))
	}
	return h
}

func (g *generator) furnace() heater {
	percent := g.pick(80, 95, 5)
	h := heater{
		slip: 100 / percent, mistake: "the fuel was taken for the heat; the rest of it leaves with the flue gas",
		caution: "a furnace burns gas and gives off carbon monoxide. Only a licensed person opens or adjusts the burner.",
	}
	if g.ip() {
		input := g.pick(40, 100, 10) * 1000
		h.btuh = input * percent / 100
		h.watts = quantity.BtuPerHour(h.btuh).Watts()
		h.statement = fmt.Sprintf("A gas furnace burns %s Btu/h, as clocked at the meter, and gives %s %% of it to the air.", number(input), number(percent))
		h.given = given("input", number(input)+" Btu/h", "efficiency", number(percent)+" %")
		h.step = step(definition, "Heat: %s Btu/h × %s = %s Btu/h.", number(input), decimals(percent/100, 2), number(h.btuh))
		return h
	}
	input := g.pick(12, 30, 2)
	h.watts = 1000 * input * percent / 100
	h.statement = fmt.Sprintf("A gas furnace burns %s kW, as clocked at the meter, and gives %s %% of it to the air.", number(input), number(percent))
	h.given = given("input", number(input)+" kW", "efficiency", number(percent)+" %")
	h.step = step(definition, "Heat: %s kW × %s × 1000 = %s W.", number(input), decimals(percent/100, 2), decimals(h.watts, 0))
	return h
}
