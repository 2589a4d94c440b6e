package airside

import (
	"math"

	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// A Bypass describes a wet coil by one surface temperature, the apparatus dew
// point, and the share of the air that passes it untouched.
type Bypass struct {
	ApparatusDewPoint quantity.Uncertain[quantity.Temperature] `json:"apparatusDewPoint"`
	// Factor is from 0, all air meets the coil, to 1.
	Factor    float64 `json:"factor"`
	FactorStd float64 `json:"factorStd"`
}

// BypassOf returns the bypass between two states of air: where the line through
// them meets saturation, see psychro.ApparatusDewPoint. The error is a
// *RangeError where the coil is dry or the line misses the curve.
func BypassOf(entering, leaving psychro.Air) (Bypass, error) {
	adp, factor, err := psychro.ApparatusDewPoint(entering, leaving)
	if err != nil {
		return Bypass{}, err
	}
	return Bypass{ApparatusDewPoint: adp.PlusMinus(0), Factor: factor}, nil
}

// MeasureBypass is [BypassOf] from readings, with uncertainties. A line that
// runs nearly along the saturation curve makes them large, and a supply wet bulb
// a few tenths off can make it miss the curve.
func MeasureBypass(r CapacityReadings) (Bypass, error) {
	if err := r.check(); err != nil {
		return Bypass{}, err
	}
	x, std := r.inputs()
	y, c, err := propagate(x, std, func(x inputs) (outputs, error) {
		entering, leaving, err := r.states(x)
		if err != nil {
			return outputs{}, err
		}
		adp, factor, err := psychro.ApparatusDewPoint(entering, leaving)
		return outputs{float64(adp), factor}, err
	})
	if err != nil {
		return Bypass{}, err
	}
	return Bypass{
		ApparatusDewPoint: quantity.Temperature(y[0]).
			PlusMinus(quantity.TemperatureDelta(c.std(0))),
		Factor: y[1], FactorStd: c.std(1),
	}, nil
}

// At returns the bypass factor at another airflow, given as a multiple of the
// one it was found at: more air passes more of it by. The bypass falls
// exponentially with the transfer units of the air side, and those fall with the
// flow to the power 0.328 (Gray and Webb, 8th International Heat Transfer
// Conference, 1986; from memory). Without flow nothing passes by, nor of a Bypass whose
// factor is no number.
func (b Bypass) At(flow float64) float64 {
	switch {
	case !(b.Factor > 0) || !(flow > 0):
		return 0
	case b.Factor >= 1:
		return 1
	}
	return math.Pow(b.Factor, math.Pow(flow, coil.AirflowExponent-1))
}

// Leaving returns the air that leaves a coil with this bypass when the
// apparatus dew point and the entering air are others. The error is a
// *RangeError.
func (b Bypass) Leaving(
	entering psychro.Air, apparatusDewPoint quantity.Temperature,
) (psychro.Air, error) {
	process, err := psychro.CoolAndDehumidify(entering, apparatusDewPoint, b.Factor)
	return process.End, err
}
