package main

import (
	"fmt"
	"math"
	"strconv"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
)

// cycleProblem follows the refrigerant around the machine by its enthalpies: how
// much must circulate, and at difficulty 3 what the compressor does to it.
func cycleProblem(g *generator) (Problem, error) {
	f := g.fluid()
	boiling, condensing := g.degrees(g.pick(36, 46, 2), g.pick(2, 8, 1)), g.degrees(g.pick(100, 120, 5), g.pick(38, 48, 2))
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
	h1, h2, h4 := h(s.suction), h(s.discharge), h(s.liquid)
	unit := "Btu/lb"
	if !g.ip() {
		unit = "kJ/kg"
	}
	row := func(what string, at quantity.Temperature, s refrigerant.State) []string {
		return []string{what, g.temperature(at), strconv.FormatFloat(h(s), 'f', 1, 64)}
	}
	p := Problem{
		Given: given("refrigerant", f.Designation(), "boiling (dew point)", g.temperature(boiling), "suction line", g.temperature(suctionLine),
			"condensing (bubble point)", g.temperature(condensing), "liquid line", g.temperature(liquidLine), "capacity", g.capacity(capacity)),
		Tables: []Table{{
			Caption: fmt.Sprintf("Enthalpy of %s, %s, 200 kJ/kg (85.98 Btu/lb) for saturated liquid at 0 °C (32 °F)", f.Designation(), unit),
			Head:    []string{"state", "at", "enthalpy"},
			Rows: [][]string{
				row("saturated liquid", boiling, s.coldLiquid), row("saturated vapor", boiling, s.coldVapor),
				row("vapor in the suction line", suctionLine, s.suction), row("vapor discharged", g.fromScale(math.Round(g.scale(s.discharge.Temperature))), s.discharge),
				row("saturated liquid", condensing, s.hotLiquid), row("liquid in the liquid line", liquidLine, s.liquid),
			},
		}},
		Cycle: f,
		marks: []diagram.Mark{
			{Label: "suction line", State: s.suction}, {Label: "discharge", State: s.discharge},
			{Label: "liquid line", State: s.liquid}, {Label: "entering the coil", State: s.inlet},
		},
	}
	const tableSource = "enthalpy table of the problem, from the refrigerant's equation of state"
	p.Steps = []Step{
		step("energy balance of an expansion device", "Nothing is added or taken in the expansion device, so the refrigerant enters the coil with the enthalpy of the liquid line, %s %s.", decimals(h4, 1), unit),
		step(tableSource, "A %s takes up %s − %s = %s %s in the coil and the suction line.", g.massName(), decimals(h1, 1), decimals(h4, 1), decimals(h1-h4, 1), unit),
	}
	p.Statement = fmt.Sprintf("The refrigerant of an %s machine takes up %s on its way from the expansion device to the clamp on the suction line. It boils at %s (dew point) and is at %s in the suction line; it condenses at %s (bubble point) and is at %s in the liquid line.",
		f.Designation(), g.capacity(capacity), g.temperature(boiling), g.temperature(suctionLine), g.temperature(condensing), g.temperature(liquidLine))
	heat, flowUnit := capacity.BtuPerHour(), "lb/h"
	if !g.ip() {
		heat, flowUnit = 1000*capacity.Kilowatts(), "g/s"
	}
	a := numeric(heat/(h1-h4), 0.01*heat/(h1-h4), 0, flowUnit)
	p.Ask = "How much refrigerant circulates, in " + flowUnit + "?"
	shown := decimals(heat, 0)
	if g.difficulty >= 3 {
		work := capacity.Watts() * (h2 - h1) / (h1 - h4)
		a = numeric(work, 0.02*work, -1, "W")
		p.Ask = "What power does the compressor give to the refrigerant, in watts?"
		p.Steps = append(p.Steps,
			step(tableSource, "The compressor adds %s − %s = %s %s.", decimals(h2, 1), decimals(h1, 1), decimals(h2-h1, 1), unit),
			step("energy balance", "Both go with the same flow, so the power is to the capacity, %s W, as the one is to the other: %s × %s / %s = %s.", decimals(capacity.Watts(), 0), decimals(capacity.Watts(), 0), decimals(h2-h1, 1), decimals(h1-h4, 1), a.Text))
		p.Wrong = []Wrong{
			a.slip(capacity.Watts()*(h2-h4)/(h1-h4), "the heat that the condenser gives off; the compressor is the smaller part of it"),
			a.slip(capacity.Watts()*(h2-h1)/(h2-h4), "the capacity was divided by what the condenser gives off instead of what the coil takes up"),
			a.slip(capacity.Watts()*(h1-h4)/(h2-h1), "the ratio was turned over"),
			a.slip(capacity.Watts()*(h2-h(s.coldVapor))/(h1-h4), "compression was counted from saturated vapor; what enters is superheated"),
		}
		p.again = func() (float64, error) {
			// What is compressed, per kilogram, from the states themselves.
			effect := s.estimate()
			return capacity.Watts() * float64(s.discharge.Enthalpy-s.suction.Enthalpy) / effect, nil
		}
	} else {
		p.Steps = append(p.Steps, step("energy balance", "%s / %s = %s.", shown, decimals(h1-h4, 1), a.Text))
		p.Wrong = []Wrong{
			a.slip(heat/(h2-h4), "discharge less liquid: that is what the condenser gives off"),
			a.slip(heat/(h2-h1), "discharge less suction: that is what the compressor adds"),
			a.slip(heat/(h(s.coldVapor)-h(s.coldLiquid)), "vapor less liquid at the boiling temperature; part of the liquid has boiled away in the expansion device already"),
			a.slip(heat/h1, "the liquid was not taken off"),
		}
		if g.ip() {
			p.Wrong = append(p.Wrong, a.slip(heat/60/(h1-h4), "that is a minute's worth"))
		}
		p.again = func() (float64, error) {
			flow := quantity.MassFlow(capacity.Watts() / s.estimate())
			if g.ip() {
				return flow.PoundsPerHour(), nil
			}
			return 1000 * flow.KilogramsPerSecond(), nil
		}
	}
	p.Answer = a
	return p, nil
}

// cycleStates are those around the machine, and the saturated ones of the table.
type cycleStates struct {
	suction, discharge, liquid, inlet refrigerant.State
	coldLiquid, coldVapor, hotLiquid  refrigerant.State
	superheat                         quantity.TemperatureDelta
	coolLiquid                        refrigerant.State // saturated, as warm as the liquid line
}

// cycleStates compresses at an isentropic efficiency of 0.7 (common practice,
// no source).
func (g *generator) cycleStates(f *refrigerant.Refrigerant, boiling, condensing, suctionLine, liquidLine quantity.Temperature) (cycleStates, error) {
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
	return float64(s.coldVapor.Enthalpy-s.coolLiquid.Enthalpy) + float64(s.coldVapor.Cp)*float64(s.superheat)
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
