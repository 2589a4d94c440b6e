package main

import (
	"bytes"
	"errors"

	"github.com/satline/satline"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/psychro/chart"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/diagram"
	"github.com/satline/satline/report"
)

// pictures draws what the readings give to draw: a visit without a wet bulb has
// no psychrometric chart, and one without a clamp on the lines no cycle.
func pictures(v satline.Visit, a satline.Assessment) []report.Picture {
	var out []report.Picture
	if p, ok := airPicture(v, a); ok {
		out = append(out, p)
	}
	if p, ok := cyclePicture(v, a); ok {
		out = append(out, p)
	}
	return out
}

// airPicture marks the return and the supply air, and the coil between them.
func airPicture(v satline.Visit, a satline.Assessment) (report.Picture, bool) {
	r := &v.Readings
	pressure := a.Atmosphere.Pressure.Value
	c, err := chart.New(
		chart.Options{
			Title: satline.Word("picture.air", v.Language), Language: string(v.Language), System: v.Units,
			Pressure: pressure,
		},
	)
	if err != nil {
		return report.Picture{}, false
	}
	entering, ok := airOf(r.ReturnDryBulb.Get(), r.ReturnWetBulb.Get(), pressure)
	if !ok || c.AddState(satline.Word("picture.return", v.Language), entering) != nil {
		return report.Picture{}, false
	}
	if leaving, ok := airOf(r.SupplyDryBulb.Get(), r.SupplyWetBulb.Get(), pressure); ok &&
		c.AddState(satline.Word("picture.supply", v.Language), leaving) == nil {
		// Where the line through both meets no saturation, the states alone are
		// drawn.
		_ = c.AddCoil("", entering, leaving)
	}
	var svg bytes.Buffer
	if c.SVG(&svg, chart.Phone()) != nil {
		return report.Picture{}, false
	}
	return report.Picture{Caption: c.Describe(), SVG: svg.Bytes()}, true
}

func airOf(
	dry, wet *quantity.Uncertain[quantity.Temperature], p quantity.Pressure,
) (psychro.Air, bool) {
	if dry == nil || wet == nil {
		return psychro.Air{}, false
	}
	air, err := psychro.FromWetBulb(dry.Value, wet.Value, p)
	return air, err == nil
}

// cyclePicture draws the refrigerant's way through the machine as far as it was read:
// the suction line, the discharge line where there is a clamp on it, the liquid line,
// and behind the expansion device what the liquid's enthalpy makes of it.
func cyclePicture(v satline.Visit, a satline.Assessment) (report.Picture, bool) {
	r := &v.Readings
	fluid, err := refrigerant.Lookup(a.Refrigerant.Designation)
	if err != nil {
		return report.Picture{}, false
	}
	d, err := diagram.New(
		fluid,
		diagram.Options{
			Title:      satline.Word("picture.refrigerant", v.Language),
			Language:   string(v.Language),
			System:     v.Units,
			Atmosphere: a.Atmosphere.Pressure.Value,
		},
	)
	if err != nil {
		return report.Picture{}, false
	}
	at := func(gauge *quantity.Uncertain[quantity.GaugePressure]) quantity.Pressure {
		if gauge == nil {
			return 0
		}
		return gauge.Value.Absolute(a.Atmosphere.Pressure.Value)
	}
	low, liquidPort := at(r.SuctionPressure.Get()), at(r.LiquidPressure.Get())
	dischargePort := at(r.DischargePressure.Get())
	if liquidPort == 0 {
		liquidPort = dischargePort
	}
	if dischargePort == 0 {
		dischargePort = liquidPort
	}
	suction := vaporMark(v.Language, fluid, "picture.suction", low, r.SuctionLine.Get())
	discharge := vaporMark(
		v.Language, fluid, "picture.discharge", dischargePort, r.DischargeLine.Get(),
	)
	liquid := liquidMark(v.Language, fluid, liquidPort, r.LiquidLine.Get())
	if suction == nil || liquid == nil {
		return report.Picture{}, false
	}
	expanded, err := fluid.StateAtEnthalpy(low, liquid.State.Enthalpy)
	if err != nil {
		return report.Picture{}, false
	}
	inlet := diagram.Mark{Label: satline.Word("picture.inlet", v.Language), State: expanded}
	if discharge != nil {
		err = d.AddCycle(*suction, *discharge, *liquid, inlet)
	} else {
		err = errors.Join(
			d.AddState(suction.Label, suction.State), d.AddState(liquid.Label, liquid.State),
			d.AddState(inlet.Label, inlet.State),
			d.AddPath("", liquid.State, inlet.State, suction.State),
		)
	}
	var svg bytes.Buffer
	if err != nil || d.SVG(&svg, diagram.Phone()) != nil {
		return report.Picture{}, false
	}
	return report.Picture{Caption: d.Describe(), SVG: svg.Bytes()}, true
}

// vaporMark is the vapor in a line. Colder than its dew point it holds liquid, and
// pressure and temperature do not tell how much: the mark stays on the dew line and
// says so.
func vaporMark(
	in satline.Language, fluid *refrigerant.Refrigerant, name string, p quantity.Pressure,
	line *quantity.Uncertain[quantity.Temperature],
) *diagram.Mark {
	if p == 0 || line == nil {
		return nil
	}
	s, err := fluid.State(p, line.Value)
	if superheat, e := fluid.Superheat(p, line.Value); e == nil && superheat < 0 {
		name += "-wet"
		s, err = fluid.StateAtQuality(p, 1)
	}
	if err != nil {
		return nil
	}
	return &diagram.Mark{Label: satline.Word(name, in), State: s}
}

// liquidMark is the liquid in its line. Warmer than its bubble point it flashes, and the
// mark stays on the bubble line and says so.
func liquidMark(
	in satline.Language, fluid *refrigerant.Refrigerant, p quantity.Pressure,
	line *quantity.Uncertain[quantity.Temperature],
) *diagram.Mark {
	if p == 0 || line == nil {
		return nil
	}
	name := "picture.liquid"
	s, err := fluid.State(p, line.Value)
	if subcooling, e := fluid.Subcooling(p, line.Value); e == nil && subcooling < 0 {
		name = "picture.liquid-flashing"
		s, err = fluid.StateAtQuality(p, 0)
	}
	if err != nil {
		return nil
	}
	return &diagram.Mark{Label: satline.Word(name, in), State: s}
}
