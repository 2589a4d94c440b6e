package api

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A SaturationQuestion asks where a refrigerant boils and condenses: at a gauge
// pressure, at an absolute pressure or at a temperature, exactly one of them.
type SaturationQuestion struct {
	// Refrigerant by its ASHRAE 34 designation, in any usual spelling.
	Refrigerant string `json:"refrigerant"`
	// Gauge counts from the atmosphere of the site.
	Gauge *quantity.GaugePressure `json:"gauge,omitempty"`
	// Pressure is absolute.
	Pressure    *quantity.Pressure    `json:"pressure,omitempty"`
	Temperature *quantity.Temperature `json:"temperature,omitempty"`
	// Line is the temperature of the pipe at that pressure, for superheat and
	// subcooling.
	Line *quantity.Temperature `json:"line,omitempty"`
	At
}

// A SaturationAnswer has the temperatures at a pressure, or the pressures at a
// temperature.
type SaturationAnswer struct {
	// Refrigerant by its designation.
	Refrigerant string `json:"refrigerant"`
	// Pressure asked for, absolute.
	Pressure *quantity.Pressure `json:"pressure,omitempty"`
	// BubbleTemperature is where the liquid begins to boil, DewTemperature
	// where the vapor begins to condense.
	BubbleTemperature *quantity.Temperature `json:"bubbleTemperature,omitempty"`
	DewTemperature    *quantity.Temperature `json:"dewTemperature,omitempty"`
	// Glide is the dew less the bubble temperature.
	Glide *quantity.TemperatureDelta `json:"glide,omitempty"`
	// Superheat of the line, from the dew point; negative as it is.
	Superheat *quantity.TemperatureDelta `json:"superheat,omitempty"`
	// Subcooling of the line, from the bubble point; negative as it is.
	Subcooling *quantity.TemperatureDelta `json:"subcooling,omitempty"`

	// Temperature asked for.
	Temperature *quantity.Temperature `json:"temperature,omitempty"`
	// BubblePressure and DewPressure at that temperature, absolute.
	BubblePressure *quantity.Pressure `json:"bubblePressure,omitempty"`
	DewPressure    *quantity.Pressure `json:"dewPressure,omitempty"`
	// BubbleGauge and DewGauge are the same on a gauge at the site.
	BubbleGauge *quantity.GaugePressure `json:"bubbleGauge,omitempty"`
	DewGauge    *quantity.GaugePressure `json:"dewGauge,omitempty"`
}

// Saturation answers a SaturationQuestion. The error is a *QuestionError or that of
// package refrigerant.
func Saturation(q SaturationQuestion) (SaturationAnswer, error) {
	fluid, err := refrigerant.Lookup(q.Refrigerant)
	if err != nil {
		return SaturationAnswer{}, err
	}
	atmosphere, err := q.atmosphere()
	if err != nil {
		return SaturationAnswer{}, err
	}
	out := SaturationAnswer{Refrigerant: fluid.Designation()}
	switch {
	case !one(q.Gauge != nil, q.Pressure != nil, q.Temperature != nil),
		q.Temperature != nil && q.Line != nil:
		return out, &QuestionError{"gauge",
			"give exactly one of gauge, pressure and temperature; line goes with a pressure"}
	case q.Gauge != nil:
		return out, out.atPressure(fluid, q.Gauge.Absolute(atmosphere), q.Line)
	case q.Pressure != nil:
		return out, out.atPressure(fluid, *q.Pressure, q.Line)
	}
	return out, out.atTemperature(fluid, *q.Temperature, atmosphere)
}

func (a *SaturationAnswer) atPressure(fluid *refrigerant.Refrigerant, p quantity.Pressure,
	line *quantity.Temperature) error {
	bubble, err := fluid.BubbleTemperature(p)
	if err != nil {
		return err
	}
	dew, err := fluid.DewTemperature(p)
	if err != nil {
		return err
	}
	a.Pressure, a.BubbleTemperature, a.DewTemperature, a.Glide = &p, &bubble, &dew, new(
		dew.Sub(bubble),
	)
	if line != nil {
		a.Superheat, a.Subcooling = new(line.Sub(dew)), new(bubble.Sub(*line))
	}
	return nil
}

func (a *SaturationAnswer) atTemperature(fluid *refrigerant.Refrigerant, t quantity.Temperature,
	atmosphere quantity.Pressure) error {
	bubble, err := fluid.BubblePressure(t)
	if err != nil {
		return err
	}
	dew, err := fluid.DewPressure(t)
	if err != nil {
		return err
	}
	a.Temperature, a.BubblePressure, a.DewPressure = &t, &bubble, &dew
	a.BubbleGauge = new(quantity.GaugePressure(bubble - atmosphere))
	a.DewGauge = new(quantity.GaugePressure(dew - atmosphere))
	return nil
}
