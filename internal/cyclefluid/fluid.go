package cyclefluid

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

const (
	coldest = 215.0 // K, dew point of the first isobar: −58 °C
	warmest = 250.0 // K, bubble point of the first isobar at most: a coil short of refrigerant is as cold
	hottest = 480.0 // K, end of the vapor polynomials where the equation goes so far
	nearest = 0.97  // of the critical pressure: last isobar

	clearOfDome = 40.0 // K above the critical point, where that is beyond hottest

	isobars = 96
	liquids = 96
	degree  = 7 // of the vapor polynomials
)

// A Fluid is one refrigerant, sampled. It is immutable.
type Fluid struct {
	Designation                           string
	CriticalTemperature, CriticalPressure float64
	gasConstant                           float64 // J/(kg K)

	logLow, perStep float64 // grid in ln p
	isobars         []knot

	liquidLow, perKelvin float64 // grid in temperature
	liquids              []liquidKnot
}

// What is interpolated along ln p, by column: at the bubble and the dew point temperature,
// enthalpy, entropy, then the volume of liquid and the compressibility factor of vapor;
// the enthalpy from the dew point to the end of the vapor polynomials; and these, of
// temperature, entropy and compressibility factor, above the dew point.
const (
	bubbleT = iota
	dewT
	bubbleH
	dewH
	bubbleS
	dewS
	bubbleV
	dewZ
	spanH
	vaporT
	vaporS = vaporT + degree
	vaporZ = vaporS + degree
	rowLen = vaporZ + degree
)

type knot struct{ value, slope [rowLen]float64 }

// A liquidKnot has enthalpy, volume and log of pressure at the bubble point,
// and the rise of enthalpy with pressure.
type liquidKnot struct{ value, slope [4]float64 }

// New samples r. It fails for a refrigerant that does not condense at the
// temperatures of an air-cooled machine.
func New(r *refrigerant.Refrigerant) (*Fluid, error) {
	c := r.Critical()
	if c.Temperature < needed {
		return nil, &quantity.RangeError{
			Quantity: "critical temperature of " + r.Designation(),
			Value:    c.Temperature,
			Min:      quantity.Temperature(needed),
			Advice:   "above it nothing condenses in outdoor air; this model is of a subcritical machine",
		}
	}
	f := &Fluid{
		Designation:         r.Designation(),
		CriticalTemperature: float64(c.Temperature),
		CriticalPressure:    float64(c.Pressure),
		gasConstant:         molarGasConstant / r.MolarMass(),
	}
	if err := f.sampleIsobars(r); err != nil {
		return nil, fmt.Errorf("%s: %w", f.Designation, err)
	}
	if err := f.sampleLiquid(r); err != nil {
		return nil, fmt.Errorf("%s: %w", f.Designation, err)
	}
	return f, nil
}

// needed is the lowest critical temperature of a machine that rejects heat to
// outdoor air of 52 °C by condensing.
const needed = quantity.Temperature(335)

const molarGasConstant = 8.31446261815324 // J/(mol K)

// LowPressure and HighPressure are the ends of the isobars.
func (f *Fluid) LowPressure() float64 { return math.Exp(f.logLow) }

// HighPressure is the end of the isobars, a little below the critical pressure.
func (f *Fluid) HighPressure() float64 {
	return math.Exp(f.logLow + float64(len(f.isobars)-1)/f.perStep)
}
