package psychro

import (
	"math"

	"github.com/satline/satline/internal/base/root"
)

// The properties of moist air in the real-gas model, per kilogram of dry air.
// What has no closed form is found by steps with the slope of the perfect-gas
// relation, which is right to a few parts in a hundred, so that each step gains
// two digits and more.

// quasiNewton improves x until f(x) = 0, where slope is nearly that of f: until the
// steps no longer shrink.
func quasiNewton(f func(float64) float64, slope, x float64) float64 {
	last := math.Inf(1)
	for range 60 {
		next := x - f(x)/slope
		step := math.Abs(next - x)
		x = next
		if step < 1e-11*math.Abs(x) && step >= last || step == 0 {
			break
		}
		last = step
	}
	return x
}

// moleFraction is of the water in air of humidity ratio w.
func moleFraction(w float64) float64 { return w / (realMolarRatio + w) }

// humidityRatioOfFraction is its inverse.
func humidityRatioOfFraction(x float64) float64 { return realMolarRatio * x / (1 - x) }

// fractionAtRH is the mole fraction of water in air of relative humidity rh.
// Above the boiling point, where pure steam is the limit, it counts from the
// saturation pressure of pure water.
func (g *virialGas) fractionAtRH(t, rh, p float64) float64 {
	if p > g.pure.pressure.at(t) {
		return rh * g.saturationFraction(t, p, t < g.freezing.at(p))
	}
	return rh * g.pure.pressure.at(t) / p
}

func (g *virialGas) saturationHumidityRatio(t, p float64) (ws float64, ok bool) {
	if g.pure.pressure.at(t) >= p {
		return 0, false
	}
	return humidityRatioOfFraction(g.saturationFraction(t, p, t < g.freezing.at(p))), true
}

func (g *virialGas) humidityRatioAtRH(t, rh, p float64) (w float64, ok bool) {
	x := g.fractionAtRH(t, rh, p)
	if x >= 1 {
		return 0, false
	}
	return humidityRatioOfFraction(x), true
}

// temperatureAtRH repeats the inverse of the pure saturation curve with the
// enhancement factor of the temperature it gave before.
func (g *virialGas) temperatureAtRH(w, rh, p float64) float64 {
	x := moleFraction(w) / rh
	if x <= g.fractionAtRH(minTemperature, 1, p) {
		enhanced := g.fractionAtRH(minTemperature, 1, p) / g.pure.lowest
		return g.pure.temperatureAt(x / enhanced)
	}
	t := g.pure.temperatureAt(x * p)
	if t > maxTemperature {
		return t
	}
	for range 12 {
		next := g.pure.temperatureAt(g.pure.pressure.at(t) * x / g.fractionAtRH(t, 1, p))
		if math.Abs(next-t) < 1e-13*t {
			return next
		}
		t = next
	}
	// Within millikelvins of the ice point the steps may hop over it.
	return root.Rising(func(t float64) float64 { return g.fractionAtRH(t, 1, p) - x }, t-1, t+1)
}

func (g *virialGas) enthalpy(t, w, p float64) float64 {
	x := moleFraction(w)
	return g.molarEnthalpy(t, x, p) / ((1 - x) * molarMassDryAir)
}

func (g *virialGas) temperatureAtEnthalpy(h, w, p float64) float64 {
	guess := zeroCelsius + (h-w*evaporation0)/(cpDryAir+w*cpVapor)
	// Beyond the range, which the caller refuses, the guess is good enough.
	if !(guess > minTemperature-5 && guess < maxTemperature+5) {
		return guess
	}
	slope := cpDryAir + w*cpVapor
	return quasiNewton(func(t float64) float64 { return g.enthalpy(t, w, p) - h }, slope, guess)
}

func (g *virialGas) humidityRatioAtEnthalpy(t, h, p float64) float64 {
	slope := evaporation0 + cpVapor*(t-zeroCelsius)
	return quasiNewton(
		func(w float64) float64 { return g.enthalpy(t, w, p) - h }, slope,
		(h-cpDryAir*(t-zeroCelsius))/slope,
	)
}

func (g *virialGas) specificVolume(t, w, p float64) float64 {
	x := moleFraction(w)
	return 1 / (g.mix(t, x).density(t, p) * (1 - x) * molarMassDryAir)
}

// waterEnthalpy is of ice or liquid at t under the pressure p of the air.
func (g *virialGas) waterEnthalpy(t, p float64, ice bool) float64 {
	if ice {
		return g.iceEnthalpy.at(t) + g.iceEnthalpySlope.at(t)*(p-101325)
	}
	return g.water.enthalpy.at(t) + g.water.enthalpySlope.at(t)*(p-g.pure.pressure.at(t))
}

// humidityRatioAtWetBulb is equation 28 of the paper solved for the humidity
// ratio: the enthalpy of the air and of the water it takes up make that of
// saturated air at the wet bulb b.
func (g *virialGas) humidityRatioAtWetBulb(t, b, ws, p float64, iced bool) float64 {
	hw := g.waterEnthalpy(b, p, iced)
	hs := g.enthalpy(b, ws, p)
	slope := evaporation0 + cpVapor*(t-zeroCelsius) - hw
	return quasiNewton(
		func(w float64) float64 { return g.enthalpy(t, w, p) - hs - (w-ws)*hw }, slope,
		humidityRatioAtWetBulb(t-zeroCelsius, b-zeroCelsius, ws, iced),
	)
}

// wetBulb solves the same balance for the wet bulb.
func (g *virialGas) wetBulb(t, w, p float64, iced bool) float64 {
	freezing := g.freezing.at(p)
	low, high := minTemperature-1, t
	// The perfect gas is right about the wick but for a few millikelvins.
	if !iced && perfectGasWetBulb(g.pure, t, w, p, false) < zeroCelsius+0.1 {
		iced = t < freezing || w < g.driestWetWick(t, p)
	}
	if iced {
		high = min(high, freezing)
	} else {
		low = freezing
	}
	h := g.enthalpy(t, w, p)
	if boiling := g.pure.temperatureAt(p); high > boiling {
		high = boiling
	}
	excess := func(b float64) (f, slope float64) {
		pws := g.pure.pressure.at(b)
		if pws >= p {
			return math.Inf(1), 1
		}
		ws := humidityRatioOfFraction(g.saturationFraction(b, p, iced))
		hw := g.waterEnthalpy(b, p, iced)
		_, d := hylandWexlerLn(b)
		f = g.enthalpy(b, ws, p) + (w-ws)*hw - h
		slope = cpDryAir + cpVapor*ws +
			(evaporation0-hw+cpVapor*(b-zeroCelsius))*ws*(1+ws/realMolarRatio)*d
		return f, slope
	}
	b := max(low, min(high, perfectGasWetBulb(g.pure, t, w, p, iced)))
	last := math.Inf(1)
	for range 60 {
		f, slope := excess(b)
		if f > 0 {
			high = b
		} else {
			low = b
		}
		next := b - f/slope
		if !(next >= low && next <= high) {
			break
		}
		step := math.Abs(next - b)
		b = next
		if step < 1e-12*b && step >= last || step == 0 {
			return b
		}
		last = step
	}
	return root.Rising(func(b float64) float64 { f, _ := excess(b); return f }, low, high)
}

// driestWetWick is the case of the Model's method.
func (g *virialGas) driestWetWick(t, p float64) float64 {
	freezing := g.freezing.at(p)
	return g.humidityRatioAtWetBulb(
		t, freezing, humidityRatioOfFraction(g.saturationFraction(freezing, p, false)), p, false,
	)
}

// Calls that keep the model's dispatch small enough to inline.

func realFreezing(p float64) float64 { return realGas().freezing.at(p) }

func realEnthalpy(t, w, p float64) float64 { return realGas().enthalpy(t, w, p) }

func realSpecificVolume(t, w, p float64) float64 { return realGas().specificVolume(t, w, p) }

func realHumidityRatioAtWetBulb(t, b, ws, p float64, iced bool) float64 {
	return realGas().humidityRatioAtWetBulb(t, b, ws, p, iced)
}
