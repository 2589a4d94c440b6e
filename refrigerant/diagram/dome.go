package diagram

import (
	"errors"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A spot is a place on the plane of the diagram.
type spot struct {
	p quantity.Pressure
	h quantity.SpecificEnthalpy
}

// A dome is the two-phase region: the bubble line from cold to critical, and the dew
// line likewise.
type dome struct {
	bubble, dew []spot
	critical    spot
	// criticalEntropy parts vapor from liquid above the critical pressure.
	criticalEntropy quantity.SpecificEntropy
	coldest         quantity.Temperature
}

// domeOf follows both lines up to the critical point. Steps shorten towards it, where
// the lines bend: enthalpy there goes with a fractional power of the temperature
// still missing.
func domeOf(r *refrigerant.Refrigerant) (dome, error) {
	c := r.Critical()
	cold := r.Limits().MinTemperature
	d := dome{coldest: cold}
	var lastLiquid, lastVapor refrigerant.State
	const steps = 64
	for i := steps; i > 0; i-- {
		u := float64(i) / steps
		t := c.Temperature - (c.Temperature-cold)*quantity.Temperature(u*u)
		if near := float64(1 - t/c.Temperature); near < 3e-3 && i > 1 && i%2 == 0 {
			continue // solved from the equation, and so taken sparingly
		}
		liquid, errLiquid := r.SaturatedLiquid(t)
		vapor, errVapor := r.SaturatedVapor(t)
		if errLiquid != nil || errVapor != nil {
			if i == steps {
				return dome{}, errors.Join(errLiquid, errVapor)
			}
			continue
		}
		d.bubble = append(d.bubble, spot{liquid.Pressure, liquid.Enthalpy})
		d.dew = append(d.dew, spot{vapor.Pressure, vapor.Enthalpy})
		lastLiquid, lastVapor = liquid, vapor
	}
	d.setCritical(r, lastLiquid, lastVapor)
	d.bubble, d.dew = append(d.bubble, d.critical), append(d.dew, d.critical)
	return d, nil
}

// setCritical takes a state so near the critical point that the solver finds it, or,
// where it does not, the middle between the ends of the lines.
func (d *dome) setCritical(r *refrigerant.Refrigerant, liquid, vapor refrigerant.State) {
	c := r.Critical()
	d.critical = spot{c.Pressure, (liquid.Enthalpy + vapor.Enthalpy) / 2}
	d.criticalEntropy = (liquid.Entropy + vapor.Entropy) / 2
	for _, beyond := range []float64{1e-6, 1e-5, 1e-4} {
		s, err := r.State(
			c.Pressure*quantity.Pressure(1+beyond), c.Temperature*quantity.Temperature(1+beyond),
		)
		if err == nil && math.Abs(float64(s.Density/c.Density)-1) < 0.2 {
			d.critical.h, d.criticalEntropy = s.Enthalpy, s.Entropy
			return
		}
	}
}

// within returns the least and greatest enthalpy of the dome above a pressure.
func (d dome) within(low quantity.Pressure) (least, most quantity.SpecificEnthalpy) {
	least, most = d.critical.h, d.critical.h
	for _, line := range [][]spot{d.bubble, d.dew} {
		for _, s := range line {
			if s.p >= low {
				least, most = min(least, s.h), max(most, s.h)
			}
		}
	}
	return least, most
}
