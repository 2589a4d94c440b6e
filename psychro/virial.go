package psychro

import (
	"math"
	"sync"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/fluiddata"
)

// The real-gas model: S. Herrmann, H.-J. Kretzschmar and D. P. Gatley,
// "Thermodynamic Properties of Real Moist Air, Dry Air, Steam, Water, and Ice
// (RP-1485)", HVAC&R Research 15(5), 2009, pp. 961-986. Air and water vapor are
// one gas whose pressure is a series in density,
//
//	p = ρRT (1 + Bρ + Cρ²)
//
// with B and C from the collisions of two and of three molecules, air with air,
// air with water and water with water.

// gasConstant is that of the mixture in J/(mol K), as the paper has it.
const gasConstant = 8.314472

const (
	molarMassWater  = 0.018015268
	molarMassDryAir = 0.028966 // with the carbon dioxide of the 2000s
	realMolarRatio  = molarMassWater / molarMassDryAir
	cubicCentimeter = 1e-6
)

// A virialGas holds what the model needs, in functions of temperature. SI units,
// per mole.
type virialGas struct {
	baa, baw, bww          curve
	caaa, caaw, caww, cwww curve
	airEnthalpy            curve   // of dry air as a perfect gas
	airDatum               float64 // of dry air at 0 °C and 101325 Pa
	henry                  curve   // 1/Pa, solubility of air in water

	iceEnthalpy, iceVolume, iceCompressibility, iceEnthalpySlope curve

	water    *saturatedWater
	pure     *boundary
	freezing curve // of pressure
}

// realGas makes the model at first use, which takes a few milliseconds.
var realGas = sync.OnceValue(func() *virialGas {
	steam, ok := fluiddata.Pure("R-718")
	if !ok {
		panic("psychro: no equation of state of water")
	}
	of := func(f func(t float64) float64) curve { return newCurve(f, minTemperature-3, 10, 31) }
	second := func(f func(t float64) (b, c float64)) curve {
		return of(func(t float64) float64 { b, _ := f(t); return b })
	}
	third := func(f func(t float64) (b, c float64)) curve {
		return of(func(t float64) float64 { _, c := f(t); return c })
	}
	ofAir, ofSteam := virialOf(&dryAir), virialOf(steam)
	g := &virialGas{
		baa:         second(ofAir),
		caaa:        third(ofAir),
		bww:         second(ofSteam),
		cwww:        third(ofSteam),
		baw:         of(virialAirWater),
		caaw:        of(virialAirAirWater),
		caww:        of(virialAirWaterWater),
		airEnthalpy: of(dryAirIdealEnthalpy),
		water:       water95(),
		pure:        if97Boundary(),
	}
	ice := func(field func(iceState) float64) curve {
		return of(func(t float64) float64 { return field(iceAt(min(t, triplePoint+5), 101325)) })
	}
	g.iceEnthalpy = ice(func(s iceState) float64 { return s.enthalpy })
	g.iceVolume = ice(func(s iceState) float64 { return s.volume })
	g.iceCompressibility = ice(func(s iceState) float64 { return s.compressibility })
	g.iceEnthalpySlope = ice(func(s iceState) float64 { return s.enthalpySlope })
	g.henry = newCurve(func(t float64) float64 {
		ln, _ := if97Ln(t)
		return airSolubility(t, math.Exp(ln))
	}, triplePoint, 10, 21)
	g.airDatum = g.molarEnthalpy(zeroCelsius, 0, 101325)
	g.freezing = newCurve(func(p float64) float64 {
		return root.Rising(func(t float64) float64 {
			return math.Log(g.saturationFraction(t, p, true) / g.saturationFraction(t, p, false))
		}, triplePoint-0.1, triplePoint+0.1)
	}, 0.9*minPressure, 20e3, 10)
	return g
})

// virialAirWater is the second virial coefficient of air with water: A. H.
// Harvey and P. H. Huang, Int. J. Thermophys. 28, 2007, pp. 556-565.
func virialAirWater(t float64) float64 {
	u := math.Log(t / 100)
	return cubicCentimeter *
		(66.5687*math.Exp(-0.237*u) - 238.834*math.Exp(-1.048*u) - 176.755*math.Exp(-3.183*u))
}

// virialAirAirWater and virialAirWaterWater are the third virial coefficients of
// the mixture: R. W. Hyland and A. Wexler, ASHRAE Transactions 89(2A), 1983, pp.
// 520-535, as refitted by H. F. Nelson and H. J. Sauer, HVAC&R Research 8, 2002,
// pp. 311-334.
func virialAirAirWater(t float64) float64 {
	r := 1 / t
	return cubicCentimeter * cubicCentimeter *
		(482.737 + r*(105678+r*(-65639400+r*(29444200000+r*-3193170000000))))
}

func virialAirWaterWater(t float64) float64 {
	r := 1 / t
	return -1e6 * cubicCentimeter * cubicCentimeter * math.Exp(
		-10.72887+r*(3478.04+r*(-383383+r*33406000)),
	)
}

// airSolubility is the mole fraction of air that water takes up per pascal of air
// above it, from the Henry constants of nitrogen, oxygen and argon: IAPWS
// guideline G7-04, equation 3, with the air of RP-1485 and its factor 1/1.01325,
// an atmosphere taken for a bar, which its tables are computed with and which is
// 3 parts in 10⁷ of the saturation they give.
func airSolubility(t, pws float64) float64 {
	tr := t / 647.096
	inverse := 0.0
	for _, gas := range [...]struct{ share, a, b, c float64 }{
		{0.7812, -9.67578, 4.72162, 11.70585}, {0.2095, -9.44833, 4.43822, 11.42005},
		{0.0093, -8.40954, 4.29587, 10.52779},
	} {
		k := pws * math.Exp(
			gas.a/tr+gas.b*math.Pow(1-tr, 0.355)/tr+gas.c*math.Pow(tr, -0.41)*math.Exp(1-tr),
		)
		inverse += gas.share / k
	}
	return inverse / 1.01325
}

// mixture is B and C of a composition, with their slopes in temperature where
// they are asked for.
type mixture struct{ b, c, bSlope, cSlope float64 }

// mix weighs the coefficients for a mole fraction x of water.
func (g *virialGas) mix(t, x float64) mixture {
	a := 1 - x
	return mixture{
		b: a*a*g.baa.at(t) + 2*a*x*g.baw.at(t) + x*x*g.bww.at(t),
		c: a*a*a*g.caaa.at(t) + 3*a*a*x*g.caaw.at(t) + 3*a*x*x*g.caww.at(t) + x*x*x*g.cwww.at(t),
	}
}

// mixWithSlopes is mix, and the slopes.
func (g *virialGas) mixWithSlopes(t, x float64) (m mixture) {
	a := 1 - x
	add := func(b *curve, share float64) {
		v, slope, _ := b.withSlopes(t)
		m.b += share * v
		m.bSlope += share * slope
	}
	add(&g.baa, a*a)
	add(&g.baw, 2*a*x)
	add(&g.bww, x*x)
	add3 := func(c *curve, share float64) {
		v, slope, _ := c.withSlopes(t)
		m.c += share * v
		m.cSlope += share * slope
	}
	add3(&g.caaa, a*a*a)
	add3(&g.caaw, 3*a*a*x)
	add3(&g.caww, 3*a*x*x)
	add3(&g.cwww, x*x*x)
	return m
}

// density solves the series for the moles per m³ at t and p.
func (m mixture) density(t, p float64) float64 {
	z := p / (gasConstant * t)
	rho := z
	for range 30 {
		f := rho*(1+rho*(m.b+rho*m.c)) - z
		step := f / (1 + rho*(2*m.b+rho*3*m.c))
		rho -= step
		if math.Abs(step) < 1e-15*rho {
			break
		}
	}
	return rho
}

// molarEnthalpy is in J per mole of the mixture, from the data of the two pure
// equations: equation 9 of the paper.
func (g *virialGas) molarEnthalpy(t, x, p float64) float64 {
	m := g.mixWithSlopes(t, x)
	rho := m.density(t, p)
	return (1-x)*(g.airEnthalpy.at(t)-g.airDatum) + x*molarMassWater*g.water.idealEnthalpy.at(t) +
		gasConstant*t*rho*(m.b-t*m.bSlope+rho*(m.c-0.5*t*m.cSlope))
}

// saturationFraction is the mole fraction of water in air over ice or liquid
// water at t and p, p above the saturation pressure of pure water: its mole
// fraction with perfect gases times the enhancement factor f. The chemical
// potential of water is the same in both phases, which gives
//
//	ln f = Poynting + ln(1 − dissolved air) − ln φ(p) + ln φ(pws)
//
// with the fugacity coefficient φ of water in the mixture to the second order in
// pressure (Hyland and Wexler 1983, equation 18; RP-1485, equation 17).
func (g *virialGas) saturationFraction(t, p float64, ice bool) float64 {
	var pws, volume, compressibility, henry float64
	if ice {
		ln, _ := sublimationLn(t)
		pws = math.Exp(ln)
		volume, compressibility = g.iceVolume.at(t), g.iceCompressibility.at(t)
	} else {
		ln, _ := if97Ln(t)
		pws = math.Exp(ln)
		volume, compressibility = g.water.volume.at(t), g.water.compressibility.at(t)
		henry = g.henry.at(t)
	}
	return pws / p * g.enhancement(t, p, pws, volume, compressibility, henry)
}

func (g *virialGas) enhancement(t, p, pws, volume, compressibility, henry float64) float64 {
	baa, baw, bww := g.baa.at(t), g.baw.at(t), g.bww.at(t)
	caaa, caaw, caww, cwww := g.caaa.at(t), g.caaw.at(t), g.caww.at(t), g.cwww.at(t)
	rt := gasConstant * t
	over := p - pws
	poynting := molarMassWater * volume * over * (1 - 0.5*compressibility*over) / rt
	q, qws := p/rt, pws/rt
	pure := qws*bww + 0.5*qws*qws*(cwww-bww*bww)
	f := 1.0
	for range 100 {
		x := min(1, f*pws/p)
		a := 1 - x
		s := a*baw + x*bww
		b := a*a*baa + 2*a*x*baw + x*x*bww
		c := a*a*a*caaa + 3*a*a*x*caaw + 3*a*x*x*caww + x*x*x*cwww
		three := a*a*caaw + 2*a*x*caww + x*x*cwww
		lnPhi := q*(2*s-b) + 0.5*q*q*(3*three-2*c-4*b*s+3*b*b)
		next := math.Exp(poynting + math.Log1p(-henry*a*p) - lnPhi + pure)
		done := math.Abs(next-f) <= 2e-16*f
		f = next
		if done {
			break
		}
	}
	return f
}
