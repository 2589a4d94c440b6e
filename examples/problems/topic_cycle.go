package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

const cycleSource = "enthalpy table of the problem, from the refrigerant's equation of state"

// cycleProblem follows the refrigerant around the machine by its enthalpies: how
// much circulates, from difficulty 2 on what the condenser gives off, and at 3
// what the compressor adds.
func cycleProblem(g *generator) (Problem, error) {
	f := g.fluid()
	boiling, condensing := g.degrees(
		g.pick(36, 46, 2),
		g.pick(2, 8, 1),
	), g.degrees(
		g.pick(100, 120, 5),
		g.pick(38, 48, 2),
	)
	suctionLine := g.fromScale(g.scale(boiling) + g.either(g.pick(8, 16, 2), g.pick(5, 9, 1)))
	liquidLine := g.fromScale(g.scale(condensing) - g.either(g.pick(6, 14, 2), g.pick(3, 8, 1)))
	capacity := quantity.Tons(g.pick(1.5, 5, 0.5))
	if !g.ip() {
		capacity = quantity.Kilowatts(g.pick(4, 16, 1))
	}
	s, err := g.cycleStates(f, boiling, condensing, suctionLine, liquidLine)
	if err != nil {
		return Problem{}, err
	}
	h := func(s refrigerant.State) float64 { return g.specific(s.Enthalpy) }
	h1, h4 := h(s.suction), h(s.liquid)
	unit := "Btu/lb"
	if !g.ip() {
		unit = "kJ/kg"
	}
	row := func(what string, at quantity.Temperature, s refrigerant.State) []string {
		return []string{what, g.temperature(at), fixed(h(s), 1)}
	}
	p := Problem{
		Given: given(
			"refrigerant",
			f.Designation(),
			"boiling (dew point)",
			g.temperature(boiling),
			"suction line",
			g.temperature(suctionLine),
			"condensing (bubble point)",
			g.temperature(condensing),
			"liquid line",
			g.temperature(liquidLine),
			"capacity",
			g.capacity(capacity),
		),
		Tables: []Table{{
			Caption: fmt.Sprintf(
				"Enthalpy of %s, %s, 200 kJ/kg (85.98 Btu/lb) for saturated liquid at 0 °C (32 °F)",
				f.Designation(),
				unit,
			),
			Head: []string{"state", "at", "enthalpy"},
			Rows: [][]string{
				row(
					"saturated liquid",
					boiling,
					s.coldLiquid,
				), row("saturated vapor", boiling, s.coldVapor),
				row(
					"vapor in the suction line",
					suctionLine,
					s.suction,
				), row("vapor discharged", g.fromScale(math.Round(g.scale(s.discharge.Temperature))), s.discharge),
				row(
					"saturated liquid",
					condensing,
					s.hotLiquid,
				), row("liquid in the liquid line", liquidLine, s.liquid),
			},
		}},
		Cycle: f,
		marks: []diagram.Mark{
			{Label: "suction line", State: s.suction}, {Label: "discharge", State: s.discharge},
			{Label: "liquid line", State: s.liquid}, {Label: "entering the coil", State: s.inlet},
		},
	}
	p.Steps = []Step{
		step(
			"energy balance of an expansion device",
			"Nothing is added or taken in the expansion device, so the refrigerant enters the coil with the enthalpy of the liquid line, %s %s.",
			fixed(h4, 1),
			unit,
		),
		step(
			cycleSource,
			"A %s takes up %s − %s = %s %s in the coil and the suction line.",
			g.massName(),
			fixed(h1, 1),
			fixed(h4, 1),
			fixed(h1-h4, 1),
			unit,
		),
	}
	p.Statement = fmt.Sprintf(
		"The refrigerant of an %s machine takes up %s on its way from the expansion device to the clamp on the suction line. It boils at %s (dew point) and is at %s in the suction line; it condenses at %s (bubble point) and is at %s in the liquid line.",
		f.Designation(),
		g.capacity(capacity),
		g.temperature(boiling),
		g.temperature(suctionLine),
		g.temperature(condensing),
		g.temperature(liquidLine),
	)
	s.capacity = capacity
	switch {
	case g.difficulty == 1 || g.difficulty == 2 && g.turn(2) == 1:
		g.askForFlow(&p, s, unit)
	case g.difficulty == 2 || g.turn(2) == 1:
		g.askForCondenser(&p, s, unit)
	default:
		g.askForWork(&p, s, unit)
	}
	return p, nil
}

// askForFlow asks how much refrigerant circulates.
func (g *generator) askForFlow(p *Problem, s cycleStates, unit string) {
	h1, h2, h4 := g.specific(
		s.suction.Enthalpy,
	), g.specific(
		s.discharge.Enthalpy,
	), g.specific(
		s.liquid.Enthalpy,
	)
	heat, flowUnit := s.capacity.BtuPerHour(), "lb/h"
	if !g.ip() {
		heat, flowUnit = 1000*s.capacity.Kilowatts(), "g/s"
	}
	a := numeric(heat/(h1-h4), 0.01*heat/(h1-h4), int(g.either(0, 1)), flowUnit)
	p.Ask = "How much refrigerant circulates, in " + flowUnit + "?"
	filled := fmt.Sprintf("%s / %s", decimals(heat, 0), fixed(h1-h4, 1))
	if !g.ip() {
		filled += " (1 kW is 1000 W, and 1 kJ/kg is 1 J/g)"
	}
	p.Steps = append(p.Steps, step("energy balance", "%s = %s.", filled, a.Text))
	p.Wrong = []Wrong{
		a.slip(heat/(h2-h4), "discharge less liquid: that is what the condenser gives off"),
		a.slip(heat/(h2-h1), "discharge less suction: that is what the compressor adds"),
		a.slip(
			heat/(g.specific(s.coldVapor.Enthalpy)-g.specific(s.coldLiquid.Enthalpy)),
			"vapor less liquid at the boiling temperature; part of the liquid has boiled away in the expansion device already",
		),
		a.slip(heat/h1, "the liquid was not taken off"),
	}
	if g.ip() {
		p.Wrong = append(p.Wrong, a.slip(heat/60/(h1-h4), "that is a minute's worth"))
	}
	p.again = func() (float64, error) {
		flow := quantity.MassFlow(s.capacity.Watts() / s.estimate())
		if g.ip() {
			return flow.PoundsPerHour(), nil
		}
		return 1000 * flow.KilogramsPerSecond(), nil
	}
	p.Answer = a
}

// askForCondenser asks for the heat that the condenser gives off.
func (g *generator) askForCondenser(p *Problem, s cycleStates, unit string) {
	h1, h2, h4 := g.specific(
		s.suction.Enthalpy,
	), g.specific(
		s.discharge.Enthalpy,
	), g.specific(
		s.liquid.Enthalpy,
	)
	heat, places, heatUnit := s.capacity.BtuPerHour(), -2, "Btu/h"
	if !g.ip() {
		heat, places, heatUnit = s.capacity.Kilowatts(), 1, "kW"
	}
	rejected := heat * (h2 - h4) / (h1 - h4)
	a := numeric(rejected, 0.01*rejected, places, heatUnit)
	p.Ask = "How much heat does the refrigerant give off between the compressor and the clamp on the liquid line? No heat is lost elsewhere."
	p.Steps = append(
		p.Steps,
		step(
			cycleSource,
			"There a %s gives off %s − %s = %s %s.",
			g.massName(),
			fixed(h2, 1),
			fixed(h4, 1),
			fixed(h2-h4, 1),
			unit,
		),
		step(
			"energy balance",
			"The same flow passes both, so: %s × %s / %s = %s.",
			g.capacity(s.capacity),
			fixed(h2-h4, 1),
			fixed(h1-h4, 1),
			a.Text,
		),
	)
	p.Wrong = []Wrong{
		a.slip(heat, "what the coil takes up; the work of the compressor leaves with it"),
		a.slip(heat*(h2-h1)/(h1-h4), "what the compressor adds, without what the coil takes up"),
		a.slip(
			heat*(h1-h4)/(h2-h4),
			"the ratio was turned over; a condenser gives off more than the coil takes up",
		),
		a.slip(
			heat*(h2-g.specific(s.hotLiquid.Enthalpy))/(h1-h4),
			"counted to saturated liquid; it is subcooled before it leaves",
		),
	}
	p.again = func() (float64, error) {
		// What the coil takes up, estimated, and the work beside it.
		work := float64(s.discharge.Enthalpy - s.suction.Enthalpy)
		watts := s.capacity.Watts() * (1 + work/s.estimate())
		if g.ip() {
			return quantity.Watts(watts).BtuPerHour(), nil
		}
		return watts / 1000, nil
	}
	p.Answer = a
}

// askForWork asks for the power of the compressor.
func (g *generator) askForWork(p *Problem, s cycleStates, unit string) {
	h1, h2, h4 := g.specific(
		s.suction.Enthalpy,
	), g.specific(
		s.discharge.Enthalpy,
	), g.specific(
		s.liquid.Enthalpy,
	)
	watts := s.capacity.Watts()
	work := watts * (h2 - h1) / (h1 - h4)
	a := numeric(work, 0.02*work, -1, "W")
	p.Ask = "What power does the compressor give to the refrigerant, in watts?"
	p.Steps = append(
		p.Steps,
		step(
			cycleSource,
			"The compressor adds %s − %s = %s %s.",
			fixed(h2, 1),
			fixed(h1, 1),
			fixed(h2-h1, 1),
			unit,
		),
	)
	if g.ip() {
		p.Steps = append(
			p.Steps,
			step(
				"definition; 1 W is 3.412 Btu/h",
				"The capacity is %s / 3.412 = %s W.",
				decimals(s.capacity.BtuPerHour(), 0),
				decimals(watts, 0),
			),
		)
	}
	p.Steps = append(
		p.Steps,
		step(
			"energy balance",
			"Both go with the same flow, so the power is to the capacity as the one is to the other: %s × %s / %s = %s.",
			decimals(watts, 0),
			fixed(h2-h1, 1),
			fixed(h1-h4, 1),
			a.Text,
		),
	)
	p.Wrong = []Wrong{
		a.slip(
			watts*(h2-h4)/(h1-h4),
			"the heat that the condenser gives off; the compressor is the smaller part of it",
		),
		a.slip(
			watts*(h2-h1)/(h2-h4),
			"the capacity was divided by what the condenser gives off instead of what the coil takes up",
		),
		a.slip(watts*(h1-h4)/(h2-h1), "the ratio was turned over"),
		a.slip(
			watts*(h2-g.specific(s.coldVapor.Enthalpy))/(h1-h4),
			"compression was counted from saturated vapor; what enters is superheated",
		),
	}
	if g.ip() {
		p.Wrong = append(p.Wrong, a.slip(3.412*work, "that is in Btu/h"))
	}
	p.again = func() (float64, error) {
		return watts * float64(s.discharge.Enthalpy-s.suction.Enthalpy) / s.estimate(), nil
	}
	p.Answer = a
}

// cycleStates are those around the machine, and the saturated ones of the table.
type cycleStates struct {
	capacity                          quantity.Power
	suction, discharge, liquid, inlet refrigerant.State
	coldLiquid, coldVapor, hotLiquid  refrigerant.State
	superheat                         quantity.TemperatureDelta
	coolLiquid                        refrigerant.State // saturated, as warm as the liquid line
}

// cycleStates compresses at an isentropic efficiency of 0.7 (common practice,
// no source).
func (g *generator) cycleStates(
	f *refrigerant.Refrigerant,
	boiling, condensing, suctionLine, liquidLine quantity.Temperature,
) (cycleStates, error) {
	s := cycleStates{superheat: suctionLine.Sub(boiling)}
	low, err := f.DewPressure(boiling)
	if err != nil {
		return s, err
	}
	high, err := f.BubblePressure(condensing)
	if err != nil {
		return s, err
	}
	if s.suction, err = f.State(low, suctionLine); err != nil {
		return s, err
	}
	ideal, err := f.StateAtEntropy(high, s.suction.Entropy)
	if err != nil {
		return s, err
	}
	if s.discharge, err = f.StateAtEnthalpy(high, s.suction.Enthalpy+(ideal.Enthalpy-s.suction.Enthalpy)/0.7); err != nil {
		return s, err
	}
	if s.liquid, err = f.State(high, liquidLine); err != nil {
		return s, err
	}
	if s.inlet, err = f.StateAtEnthalpy(low, s.liquid.Enthalpy); err != nil {
		return s, err
	}
	if s.coldLiquid, err = f.SaturatedLiquid(boiling); err != nil {
		return s, err
	}
	if s.coldVapor, err = f.SaturatedVapor(boiling); err != nil {
		return s, err
	}
	if s.hotLiquid, err = f.SaturatedLiquid(condensing); err != nil {
		return s, err
	}
	s.coolLiquid, err = f.SaturatedLiquid(liquidLine)
	return s, err
}

// estimate is what a kilogram takes up, J, from saturated states alone: the
// vapor warmed at its specific heat, less liquid whose enthalpy goes with its
// temperature and hardly with its pressure.
func (s cycleStates) estimate() float64 {
	return float64(
		s.coldVapor.Enthalpy-s.coolLiquid.Enthalpy,
	) + float64(
		s.coldVapor.Cp,
	)*float64(
		s.superheat,
	)
}

func (g *generator) specific(h quantity.SpecificEnthalpy) float64 {
	if g.ip() {
		return math.Round(10*h.BtuPerPound()) / 10
	}
	return math.Round(10*h.KilojoulesPerKilogram()) / 10
}

func (g *generator) massName() string {
	if g.ip() {
		return "pound"
	}
	return "kilogram"
}

func (g *generator) capacity(q quantity.Power) string {
	if g.ip() {
		return decimals(q.BtuPerHour(), 0) + " Btu/h"
	}
	return number(q.Kilowatts()) + " kW"
}
