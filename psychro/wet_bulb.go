package psychro

import "math"

// perfectGasWetBulb solves equation 33 or 35 for the wet bulb of air at t
// kelvin with humidity ratio w. Where the wick may be iced or wet, iced chooses.
func perfectGasWetBulb(water *boundary, t, w, p float64, iced bool) float64 {
	tc := t - zeroCelsius
	low, high := minTemperature-1, t
	if iced = iced || tc < 0 || w < driestWetWick(water, tc, p); iced {
		high = min(high, zeroCelsius)
	} else {
		low = zeroCelsius
	}
	latent, cpLiquid := evaporation0, cpWater
	if iced {
		latent, cpLiquid = sublimation0, cpIce
	}
	fall := cpLiquid - cpVapor // of the latent heat, per kelvin
	given := cpDryAir*tc + w*(latent+cpVapor*tc)
	perKelvin := cpDryAir + w*cpLiquid

	// The equation times p−pws, which takes its pole away: with ws = ε pws/(p−pws),
	//
	//	g(b) = (latent − fall b) ε pws(b) − (p − pws(b)) (given − perKelvin b)
	//
	// rises through its only zero. Halley's steps, cubic in convergence, kept in
	// a bracket that halves where a step would leave it.
	b := high
	for i := range 60 {
		bc := b - zeroCelsius
		pws, d1, d2 := water.pressure.withSlopes(b)
		a := (latent - fall*bc) * molarMassRatio
		q := given - perKelvin*bc
		g := a*pws - (p-pws)*q
		if g > 0 {
			high = b
		} else {
			low = b
		}
		g1 := (a+q)*d1 - fall*molarMassRatio*pws + (p-pws)*perKelvin
		g2 := (a+q)*d2 - 2*d1*(fall*molarMassRatio+perKelvin)
		step := g * g1 / (g1*g1 - 0.5*g*g2)
		// What is left after a step of Halley is less than its cube times 3e-3/K².
		if math.Abs(step) < 1e-3 {
			return max(low, min(high, b-step))
		}
		next := b - step
		if !(next > low && next < high) || i > 20 {
			next = 0.5 * (low + high)
		}
		b = next
	}
	return b
}

// driestWetWick is the perfect-gas case of the method of that name.
func driestWetWick(water *boundary, tc, p float64) float64 {
	return humidityRatioAtWetBulb(tc, 0, humidityRatioOf(water.atZero, p), false)
}
