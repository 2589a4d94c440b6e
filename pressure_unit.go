package satline

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// A gaugeUnit is a unit that gauges show.
type gaugeUnit struct {
	name string
	of   func(float64) quantity.GaugePressure
	in   func(quantity.GaugePressure) float64
}

var gaugeUnits = []gaugeUnit{
	{"psig", quantity.PSIG, quantity.GaugePressure.PSIG},
	{"barg", quantity.BarGauge, quantity.GaugePressure.BarGauge},
	{"kPag", quantity.KilopascalsGauge, quantity.GaugePressure.KilopascalsGauge},
}

// inAnotherUnit is the error of two pressures that were written in another unit than the gauges
// show: as written the liquid would be far hotter than it condenses, or nothing would boil at all,
// and with the same numbers in the other unit both suit their lines. high is that of the high
// side, read in field. nil where that is not so.
func (p *prepared) inAnotherUnit(r *Readings, high *gaugeReading, field string) *VisitError {
	if high == nil || !r.SuctionPressure.taken || !r.SuctionLine.taken || !r.LiquidLine.taken {
		return nil
	}
	low := r.SuctionPressure.of.Value
	const farHotter = quantity.TemperatureDelta(-25)
	if _, subcooling, ok := p.atLines(r, low, high.Value); ok && subcooling > farHotter {
		return nil
	}
	for _, written := range gaugeUnits {
		for _, meant := range gaugeUnits {
			a, b := written.in(low), written.in(high.Value)
			if written.name == meant.name || !p.suitsLines(r, meant.of(a), meant.of(b)) {
				continue
			}
			return &VisitError{
				Field: field, Kind: FieldContradictory,
				Problem: fmt.Sprintf(
					"%.4g %s does not go with a liquid line at %s; in %s, %.4g and %.4g suit both "+
						"lines: write the unit that the gauges show", b, written.name,
					quantity.InBoth(r.LiquidLine.of.Value), meant.name, a, b,
				),
			}
		}
	}
	return nil
}

// atLines is the superheat and the subcooling that two pressures make of the lines; false where
// there is no saturation.
func (p *prepared) atLines(
	r *Readings, low, high quantity.GaugePressure,
) (superheat, subcooling quantity.TemperatureDelta, ok bool) {
	atm := p.atmosphere.Pressure.Value
	dew, err := p.fluid.DewTemperature(low.Absolute(atm))
	if err != nil {
		return 0, 0, false
	}
	bubble, err := p.fluid.BubbleTemperature(high.Absolute(atm))
	if err != nil {
		return 0, 0, false
	}
	return r.SuctionLine.of.Value.Sub(dew), bubble.Sub(r.LiquidLine.of.Value), true
}

// suitsLines says that two pressures make of the lines what machines read: common practice, no
// source.
func (p *prepared) suitsLines(r *Readings, low, high quantity.GaugePressure) bool {
	superheat, subcooling, ok := p.atLines(r, low, high)
	return ok && superheat > -2 && superheat < 20 && subcooling > -3 && subcooling < 25
}
