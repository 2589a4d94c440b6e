package main

import (
	"fmt"
	"strings"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// superheatProblem counts the suction line from the dew point. From difficulty
// 2 on the pressure lies between two rows and the other side of the machine is
// given too, for the student to leave aside. In turn it asks for the superheat
// and for the suction line at which it is right.
func superheatProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(34, 48, 2), g.pick(1, 9, 1))
	if g.difficulty >= 2 {
		sat = g.degrees(g.pick(35, 47, 2), g.pick(1.5, 8.5, 1))
	}
	rise := g.either(g.pick(5, 26, 1), g.pick(3, 14, 1))
	line := g.fromScale(g.scale(sat) + rise)
	p, err := f.DewPressure(sat)
	if err != nil {
		return Problem{}, err
	}
	site := g.gaugeSite()
	listed := g.listed(site, p)
	shown := site.shown(listed)
	misread, err := f.BubbleTemperature(p)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, site, sat, misread)
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, wrongAtmosphere, err := g.misreads(site, shown, f.DewTemperature)
	if err != nil {
		return Problem{}, err
	}
	_, how, _ := g.read(tab, site, dewColumn, listed)
	a := numeric(rise, reading, 1, g.deltaUnit())
	out := Problem{
		Statement: fmt.Sprintf("An %s machine %s shows %s at the suction port, and a clamp near the compressor reads %s on the suction line.", f.Designation(), site.text, g.pressure(shown), g.temperature(line)),
		Given:     g.givenAt(site, "refrigerant", f.Designation(), "suction pressure", g.pressure(shown), "suction line", g.temperature(line)),
		Ask:       "What is the superheat?",
		Tables:    []Table{tab},
		Steps: []Step{
			g.columnApplies(site, "The suction line carries vapor", "dew", shown),
			step(saturationSource, "In the dew column %s%s.", how, g.taken(how, sat)),
			step(definition, "Superheat is the line less the dew temperature: %s − %s = %s.", g.temperature(line), g.temperature(sat), a.Text),
		},
		Answer: a,
		again: func() (float64, error) {
			d, err := f.Superheat(g.gaugePressure(shown).Absolute(site.atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		if err := g.otherSide(&out, f, site, g.degrees(g.pick(98, 114, 1), g.pick(37, 46, 1)), "liquid"); err != nil {
			return Problem{}, err
		}
	}
	bubble, _, between := g.read(tab, site, bubbleColumn, listed)
	if g.turn(2) == 1 {
		out.Statement = fmt.Sprintf("An %s machine %s shows %s at the suction port. It is to run at %s of superheat.", f.Designation(), site.text, g.pressure(shown), g.difference(rise))
		g.askForLine(&out, "suction", rise, line)
		if between {
			out.Wrong = append(out.Wrong, out.Answer.slip(bubble+rise, "the bubble column was read for vapor"))
		}
		out.Wrong = append(out.Wrong,
			out.Answer.slip(g.scale(sat)-rise, "the superheat was taken off; that is how the liquid line is found from a subcooling"),
			out.Answer.slip(g.scale(sat), "the dew temperature itself; a line at it has no superheat"),
			out.Answer.slip(asAbsolute.at+rise, "the gauge reading was looked up as an absolute pressure"))
		if site.added != 0 {
			out.Wrong = append(out.Wrong, out.Answer.slip(wrongAtmosphere.at+rise, wrongAtmosphere.mistake))
		}
		return out, nil
	}
	if between {
		out.Wrong = append(out.Wrong, a.slip(g.scale(line)-bubble, "the bubble column was read for vapor"))
	}
	out.Wrong = append(out.Wrong,
		a.slip(-rise, "saturation less line: that is how subcooling is counted, on the other side"),
		a.slip(g.scale(line)-asAbsolute.at, "the gauge reading was looked up as an absolute pressure"),
		a.slip(g.scale(line), "the line temperature itself; superheat is a difference"),
	)
	if site.added != 0 {
		out.Wrong = append(out.Wrong, a.slip(g.scale(line)-wrongAtmosphere.at, wrongAtmosphere.mistake))
	}
	if g.ip() {
		out.Wrong = append(out.Wrong, a.slip(shown-g.scale(line), "the temperature was taken from the pressure; the pressure has to be turned into a temperature first"))
	}
	return out, nil
}

// askForLine turns a problem that asks for a superheat or subcooling about: it
// is given, and the temperature of the line is asked for.
func (g *generator) askForLine(p *Problem, side string, apart float64, line quantity.Temperature) {
	name, place, sign, way := "superheat", "above the dew", "+", 1.0
	if side == "liquid" {
		name, place, sign, way = "subcooling", "below the bubble", "−", -1
	}
	given := p.Given[:0:0]
	for _, v := range p.Given {
		if v.Name == side+" line" {
			v = Given{name + " wanted", g.difference(apart)}
		}
		given = append(given, v)
	}
	p.Given = given
	p.Ask = fmt.Sprintf("What does a clamp on the %s line show when the %s is %s?", side, name, g.difference(apart))
	a := numeric(g.scale(line), reading, 1, g.degreeUnit())
	from := g.fromScale(g.scale(line) - way*apart)
	p.Steps[len(p.Steps)-1] = step(definition, "The line stands %s %s temperature: %s %s %s = %s.", g.difference(apart), place, g.temperature(from), sign, g.difference(apart), a.Text)
	again := p.again
	p.again = func() (float64, error) {
		found, err := again()
		return g.scale(line) + way*(apart-found), err
	}
	p.Answer = a
}

// taken says what a reading between rows is taken for.
func (g *generator) taken(how string, t quantity.Temperature) string {
	if strings.HasSuffix(how, " "+g.temperature(t)) {
		return ""
	}
	return ", to the half degree " + g.temperature(t)
}

// otherSide adds readings of the other side of the machine, which the question
// does not need.
func (g *generator) otherSide(p *Problem, f *refrigerant.Refrigerant, site gaugeSite, sat quantity.Temperature, side string) error {
	look, apart := f.BubblePressure, -g.either(g.pick(6, 14, 1), g.pick(3, 8, 1))
	if side == "suction" {
		look, apart = f.DewPressure, -apart
	}
	pressure, err := look(sat)
	if err != nil {
		return err
	}
	p.Given = append(p.Given, given(side+" pressure", g.pressure(g.gauge(pressure, site.atm)), side+" line", g.temperature(g.fromScale(g.scale(sat)+apart)))...)
	return nil
}

// subcoolingProblem counts the liquid line from the bubble point, and asks in
// turn for the subcooling and for the line.
func subcoolingProblem(g *generator) (Problem, error) {
	f := g.fluid()
	sat := g.degrees(g.pick(96, 116, 2), g.pick(36, 47, 1))
	if g.difficulty >= 2 {
		sat = g.degrees(g.pick(97, 115, 2), g.pick(36.5, 46.5, 1))
	}
	fall := g.either(g.pick(4, 18, 1), g.pick(2, 10, 1))
	line := g.fromScale(g.scale(sat) - fall)
	outdoor := g.fromScale(g.scale(line) - g.either(g.pick(3, 12, 1), g.pick(2, 6, 1)))
	p, err := f.BubblePressure(sat)
	if err != nil {
		return Problem{}, err
	}
	site := g.gaugeSite()
	listed := g.listed(site, p)
	shown := site.shown(listed)
	misread, err := f.DewTemperature(p)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, site, sat, misread)
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, wrongAtmosphere, err := g.misreads(site, shown, f.BubbleTemperature)
	if err != nil {
		return Problem{}, err
	}
	_, how, _ := g.read(tab, site, bubbleColumn, listed)
	a := numeric(fall, reading, 1, g.deltaUnit())
	out := Problem{
		Statement: fmt.Sprintf("The liquid port of an %s machine %s shows %s; the liquid line beside it is at %s, and the air entering the condenser at %s.", f.Designation(), site.text, g.pressure(shown), g.temperature(line), g.temperature(outdoor)),
		Given:     g.givenAt(site, "refrigerant", f.Designation(), "liquid pressure", g.pressure(shown), "liquid line", g.temperature(line), "outdoor air", g.temperature(outdoor)),
		Ask:       "What is the subcooling?",
		Tables:    []Table{tab},
		Steps: []Step{
			g.columnApplies(site, "The liquid line carries liquid", "bubble", shown),
			step(saturationSource, "In the bubble column %s%s.", how, g.taken(how, sat)),
			step(definition, "Subcooling is the bubble temperature less the line: %s − %s = %s.", g.temperature(sat), g.temperature(line), a.Text),
		},
		Answer: a,
		again: func() (float64, error) {
			d, err := f.Subcooling(g.gaugePressure(shown).Absolute(site.atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		if err := g.otherSide(&out, f, site, g.degrees(g.pick(36, 46, 1), g.pick(2, 8, 1)), "suction"); err != nil {
			return Problem{}, err
		}
	}
	dew, _, between := g.read(tab, site, dewColumn, listed)
	if g.turn(2) == 1 {
		out.Statement = fmt.Sprintf("The liquid port of an %s machine %s shows %s, and the air entering the condenser is at %s. The label asks for %s of subcooling.", f.Designation(), site.text, g.pressure(shown), g.temperature(outdoor), g.difference(fall))
		g.askForLine(&out, "liquid", fall, line)
		if between {
			out.Wrong = append(out.Wrong, out.Answer.slip(dew-fall, "the dew column was read for liquid"))
		}
		out.Wrong = append(out.Wrong,
			out.Answer.slip(g.scale(sat)+fall, "the subcooling was added; that is how the suction line is found from a superheat"),
			out.Answer.slip(g.scale(sat), "the bubble temperature itself; a line at it has no subcooling"),
			out.Answer.slip(g.scale(outdoor)+fall, "the subcooling was added to the outdoor air; it counts from the bubble temperature"),
			out.Answer.slip(asAbsolute.at-fall, "the gauge reading was looked up as an absolute pressure"))
		if site.added != 0 {
			out.Wrong = append(out.Wrong, out.Answer.slip(wrongAtmosphere.at-fall, wrongAtmosphere.mistake))
		}
		return out, nil
	}
	if between {
		out.Wrong = append(out.Wrong, a.slip(dew-g.scale(line), "the dew column was read for liquid"))
	}
	out.Wrong = append(out.Wrong,
		a.slip(g.scale(line)-g.scale(outdoor), "the liquid line less the outdoor air: that is the approach"),
		a.slip(g.scale(sat)-g.scale(outdoor), "condensing less outdoor air; subcooling compares with the liquid line"),
		a.slip(-fall, "line less saturation: that is how superheat is counted, on the other side"),
		a.slip(asAbsolute.at-g.scale(line), "the gauge reading was looked up as an absolute pressure"),
	)
	if site.added != 0 {
		out.Wrong = append(out.Wrong, a.slip(wrongAtmosphere.at-g.scale(line), wrongAtmosphere.mistake))
	}
	return out, nil
}

// altitudeProblem finds what a sea-level table hides on a mountain, in turn for
// the superheat and the subcooling. From difficulty 2 on the student reads the
// atmosphere off a table; at 3 the pressure lies between two rows besides, among
// readings that are not needed.
func altitudeProblem(g *generator) (Problem, error) {
	f := g.fluid()
	elevation := quantity.Feet(g.pick(3000, 9000, 1000))
	if !g.ip() {
		elevation = quantity.Meters(g.pick(1000, 2800, 200))
	}
	atm := quantity.AtmosphereAt(elevation)
	short := g.gauge(quantity.StandardAtmosphere, atm)
	// way is that of the line from saturation: up on the suction side.
	name, side, column, way := "superheat", "suction", "dew", 1.0
	sat := g.degrees(g.pick(36, 46, 2), g.pick(2, 8, 1))
	between := g.either(1, 0.5) // two rows
	apart := g.either(g.pick(6, 16, 1), g.pick(3, 9, 1))
	pressureAt, temperatureAt, count := f.DewPressure, f.DewTemperature, f.Superheat
	if g.turn(2) == 1 {
		name, side, column, way = "subcooling", "liquid", "bubble", -1
		sat = g.degrees(g.pick(96, 112, 2), g.pick(36, 44, 1))
		pressureAt, temperatureAt, count = f.BubblePressure, f.BubbleTemperature, f.Subcooling
	}
	if g.difficulty >= 3 {
		sat = g.fromScale(g.scale(sat) + between)
	}
	p, err := pressureAt(sat)
	if err != nil {
		return Problem{}, err
	}
	atSea := g.gauge(p, quantity.StandardAtmosphere)
	shown := atSea + short
	line := g.fromScale(g.scale(sat) + way*apart)
	look := func(shown float64) (float64, error) {
		t, err := temperatureAt(g.gaugePressure(shown).Absolute(quantity.StandardAtmosphere))
		return g.scale(t), err
	}
	uncorrected, err := look(shown)
	if err != nil {
		return Problem{}, err
	}
	wrongWay, err := look(shown + short)
	if err != nil {
		return Problem{}, err
	}
	tab, err := g.saturationTable(f, g.seaLevel(), sat, g.fromScale(wrongWay))
	if err != nil {
		return Problem{}, err
	}
	asAbsolute, _, err := g.misreads(g.seaLevel(), shown, temperatureAt)
	if err != nil {
		return Problem{}, err
	}
	printed := dewColumn
	if way < 0 {
		printed = bubbleColumn
	}
	_, how, _ := g.read(tab, g.seaLevel(), printed, atSea)
	a := numeric(apart, reading, 1, g.deltaUnit())
	const atmosphereSource = moistAirSource + ", equation 3"
	from := func(sat float64) float64 { return way * (g.scale(line) - sat) }
	small, other := "smaller", "saturation less line: that is how subcooling is counted"
	first, second := g.temperature(line), g.temperature(sat)
	if way < 0 {
		small, other = "larger", "line less saturation: that is how superheat is counted"
		first, second = second, first
	}
	out := Problem{
		Statement: fmt.Sprintf("At %s above sea level the %s gauge of an %s machine shows %s and the %s line is at %s. The printed table is for sea level.",
			elevationText(elevation, g.sys), side, f.Designation(), g.pressure(shown), side, g.temperature(line)),
		Given:  given("refrigerant", f.Designation(), "elevation", elevationText(elevation, g.sys), side+" pressure", g.pressure(shown), side+" line", g.temperature(line)),
		Ask:    "What is the true " + name + "?",
		Tables: []Table{tab},
		Steps: []Step{
			step(atmosphereSource, "The atmosphere at %s is %s below that at sea level.", elevationText(elevation, g.sys), g.pressureDifference(short)),
			step(definition, "A gauge counts from the atmosphere around it. For the same absolute pressure one at sea level would show %s − %s = %s.", g.pressure(shown), g.pressureDifference(short), g.pressure(atSea)),
			step(saturationSource, "In the %s column %s%s.", column, how, g.taken(how, sat)),
			step(definition, "%s: %s − %s = %s.", sentence(name), first, second, a.Text),
		},
		Answer: a,
		Wrong: []Wrong{
			a.slip(from(uncorrected), "the gauge was read as at sea level; the "+name+" looks "+small+" than it is"),
			a.slip(from(wrongWay), "the difference was added instead of taken off"),
			a.slip(from(asAbsolute.at), "a whole atmosphere was taken off instead of the difference"),
			a.slip(-apart, other),
		},
		again: func() (float64, error) {
			d, err := count(g.gaugePressure(shown).Absolute(atm), line)
			return g.delta(d), err
		},
	}
	if g.difficulty >= 2 {
		out.Tables = append(out.Tables, g.atmosphereTable(elevation))
		out.Steps[0].Source = "atmosphere table of the problem, from " + atmosphereSource
	}
	if g.difficulty >= 3 {
		other, side := g.degrees(g.pick(98, 114, 1), g.pick(37, 46, 1)), "liquid"
		if way < 0 {
			other, side = g.degrees(g.pick(36, 46, 1), g.pick(2, 8, 1)), "suction"
		}
		if err := g.otherSide(&out, f, gaugeSite{atm: atm}, other, side); err != nil {
			return Problem{}, err
		}
	}
	if g.difficulty == 1 {
		out.Statement += fmt.Sprintf(" The atmosphere here is %s lower.", g.pressureDifference(short))
	}
	return out, nil
}
