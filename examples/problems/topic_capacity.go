package main

import (
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
)

// capacityProblem turns two air states and an airflow into cooling capacity. From
// difficulty 2 on the entering wet bulb lies halfway between two rows.
func capacityProblem(g *generator) (Problem, error) {
	z, atm, place := g.place()
	var in, out psychro.Air
	var dryIn, wetIn, dryOut, wetOut float64
	for {
		wetIn, dryIn = g.either(
			g.pick(62, 68, 1),
			g.pick(16, 20, 1),
		), g.either(
			g.pick(74, 80, 1),
			g.pick(23, 27, 1),
		)
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
		sensible := float64(
			in.Enthalpy()-out.Enthalpy(),
		) - 2501e3*(in.HumidityRatio()-out.HumidityRatio())
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
		between = fmt.Sprintf(
			", halfway between %s and %s",
			fixed(rows[0], places),
			fixed(rows[1], places),
		)
	}
	hiText := fixed(hi, int(g.either(2, 1)))
	if math.Abs(figure(hiText)-hi) > 1e-6 { // half of the last place
		hiText = fixed(hi, int(g.either(3, 2)))
	}
	tab := g.enthalpyTable(
		wetOut-g.pick(0, 2, 1),
		math.Ceil(wetIn)+g.pick(0, 2, 1),
		[]float64{dryOut, dryOut + 2, dryIn - 2, dryIn},
		atm,
		place,
	)
	p := Problem{
		Given: given(
			"airflow",
			flow.Format(g.sys),
			"entering",
			fmt.Sprintf(
				"%s %s dry bulb, %s %s wet bulb",
				number(dryIn),
				g.degreeUnit(),
				number(wetIn),
				g.degreeUnit(),
			),
			"leaving",
			fmt.Sprintf(
				"%s %s dry bulb, %s %s wet bulb",
				number(dryOut),
				g.degreeUnit(),
				number(wetOut),
				g.degreeUnit(),
			),
		),
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
	states := fmt.Sprintf(
		"The air enters a coil at %s %s dry bulb and %s %s wet bulb and leaves it at %s %s dry bulb and %s %s wet bulb.",
		number(
			dryIn,
		),
		g.degreeUnit(),
		number(wetIn),
		g.degreeUnit(),
		number(dryOut),
		g.degreeUnit(),
		number(wetOut),
		g.degreeUnit(),
	)
	// The mass flow of dry air is that of standard air, or from the volume of the
	// air itself where the air is thin.
	const tableSource = "enthalpy table of the problem, from " + moistAirSource + ", equations 30 and 33"
	volume := g.either(
		in.SpecificVolume().CubicMetersPerKilogram()*16.018463,
		in.SpecificVolume().CubicMetersPerKilogram(),
	)
	volume = math.Round(g.either(10, 1000)*volume) / g.either(10, 1000)
	var a Answer
	if g.ip() {
		factor, factorText, factorSource := 4.5, "4.5", standardAir
		p.Statement = fmt.Sprintf(
			"A blower moves %s of standard air at sea level. %s",
			flow.Format(g.sys),
			states,
		)
		if z != 0 {
			factor, factorText, factorSource = 60/volume, fmt.Sprintf(
				"60 / %s",
				fixed(volume, 1),
			), definition
			p.Statement = fmt.Sprintf(
				"A blower %s moves %s of return air, which takes %s ft³ for a pound of dry air. %s",
				place,
				flow.Format(g.sys),
				fixed(volume, 1),
				states,
			)
		}
		a = numeric(factor*flow.CFM()*(hi-ho), 0.01*factor*flow.CFM()*(hi-ho), -2, "Btu/h")
		p.Steps = []Step{
			step(
				tableSource,
				"Entering %s Btu/lb%s; leaving %s Btu/lb.",
				hiText,
				between,
				fixed(ho, 2),
			),
			step(
				factorSource,
				"Q = %s × %s × (%s − %s) = %s.",
				factorText,
				decimals(flow.CFM(), 0),
				hiText,
				fixed(ho, 2),
				a.Text,
			),
		}
		p.Wrong = []Wrong{
			a.slip(
				factor*0.24*flow.CFM()*(dryIn-dryOut),
				"the sensible part alone, from the dry bulbs; the water taken out is missing",
			),
			a.slip(
				1.08*flow.CFM()*(hi-ho),
				"1.08 belongs to a difference of temperatures, 4.5 to one of enthalpies",
			),
			a.slip(
				factor*flow.CFM()*(wetIn-wetOut),
				"wet bulb temperatures were taken for enthalpies",
			),
			a.slip(factor*flow.CFM()*hi, "the leaving air was not taken off"),
		}
		if z != 0 {
			p.Wrong = append(
				[]Wrong{
					a.slip(
						4.5*flow.CFM()*(hi-ho),
						"4.5 is for standard air; thin air carries less for each cubic foot",
					),
				},
				p.Wrong...)
		}
	} else {
		factor, factorText, factorSource := 1.2, "1.2", standardAir
		p.Statement = fmt.Sprintf("A blower moves %s of standard air at sea level. %s", flow.Format(g.sys), states)
		if z != 0 {
			factor, factorText, factorSource = 1/volume, fmt.Sprintf("1 / %s", fixed(volume, 3)), definition
			p.Statement = fmt.Sprintf("A blower %s moves %s of return air, which takes %s m³ for a kilogram of dry air. %s", place, flow.Format(g.sys), fixed(volume, 3), states)
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
