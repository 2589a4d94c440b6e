package psychro

import (
	"math"
	"sync"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
)

// The IAPWS formulations: sublimation pressure after R14-08(2011), equation 6,
// and water at saturation from IAPWS-95, R6-95(2018), by equal Gibbs energies.

// sublimationLn returns ln(p/Pa) over ice at t kelvin, and its slope per kelvin.
// The release gives it from 50 to 273.16 K.
func sublimationLn(t float64) (ln, slope float64) {
	theta := t / triplePoint
	lnTheta := math.Log(theta)
	for _, term := range [...]struct{ a, b float64 }{
		{-0.212144006e2, 0.333333333e-2}, {0.273203819e2, 0.120666667e1},
		{-0.610598130e1, 0.170333333e1},
	} {
		v := term.a * math.Exp(term.b*lnTheta)
		ln += v
		slope += v * term.b
	}
	ln /= theta
	slope = (slope/theta - ln) / t
	return ln + math.Log(triplePressure), slope
}

// saturatedWater is IAPWS-95 along the saturation curve from 273.16 K, in
// functions of temperature.
type saturatedWater struct {
	lnPressure      curve // ln Pa
	enthalpy        curve // J/kg, of the liquid
	volume          curve // m³/kg, of the liquid
	compressibility curve // 1/Pa, of the liquid at constant temperature
	enthalpySlope   curve // J/(kg Pa), of the liquid at constant temperature
	idealEnthalpy   curve // J/kg, of the vapor as a perfect gas, from minTemperature
}

// water95 solves the saturation curve once, at first use.
var water95 = sync.OnceValue(func() *saturatedWater {
	model, err := fluiddata.NewModel([]string{"R-718"}, []float64{1})
	if err != nil {
		panic("psychro: the equation of state of water: " + err.Error())
	}
	system, molar := vle.New(model), model.MolarMass()
	at := func(t float64) (w saturatedState) {
		pt, err := system.BubbleT(t)
		if err != nil {
			panic("psychro: saturated water: " + err.Error())
		}
		s := model.At(t, pt.RhoLiquid)
		v := 1 / pt.RhoLiquid
		expansion := s.DpDT / s.DpDrho // −(∂ρ/∂T)p
		return saturatedState{
			math.Log(pt.P), s.H / molar, v / molar, v / s.DpDrho, v * (1 - t*v*expansion) / molar,
		}
	}
	// The datum of IAPWS-95: no internal energy and no entropy in liquid at the
	// triple point.
	triple := at(triplePoint)
	datum := triple.enthalpy - math.Exp(triple.lnPressure)*triple.volume

	const width, cells = 10, 21
	w := &saturatedWater{}
	nodes := map[float64]saturatedState{}
	of := func(field func(saturatedState) float64) curve {
		return newCurve(func(t float64) float64 {
			s, ok := nodes[t]
			if !ok {
				s = at(t)
				nodes[t] = s
			}
			return field(s)
		}, triplePoint, width, cells)
	}
	w.lnPressure = of(func(s saturatedState) float64 { return s.lnPressure })
	w.enthalpy = of(func(s saturatedState) float64 { return s.enthalpy - datum })
	w.volume = of(func(s saturatedState) float64 { return s.volume })
	w.compressibility = of(func(s saturatedState) float64 { return s.compressibility })
	w.enthalpySlope = of(func(s saturatedState) float64 { return s.enthalpySlope })
	// RP-1485 counts this part with the gas constant of the mixture, which puts the
	// vapor 30 J/kg above that of IAPWS-95.
	w.idealEnthalpy = newCurve(func(t float64) float64 {
		return (model.At(t, 1e-9).H/molar - datum) * (gasConstant / model.GasConstant())
	}, minTemperature-3, width, 31)
	return w
})

type saturatedState struct{ lnPressure, enthalpy, volume, compressibility, enthalpySlope float64 }

// ln returns ln(p/Pa) of saturation at t kelvin, and its slope per kelvin.
func (w *saturatedWater) ln(t float64) (ln, slope float64) {
	ln, slope, _ = w.lnPressure.withSlopes(t)
	return ln, slope
}

// iapwsBoundary joins the two releases 0.4 mK below the triple point: R14-08 takes
// 611.657 Pa for its pressure, of which IAPWS-95 itself is 4 parts in 10⁶ short.
var iapwsBoundary = sync.OnceValue(func() *boundary { return joined(water95().ln) })
