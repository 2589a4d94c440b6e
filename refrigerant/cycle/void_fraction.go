package cycle

import "math"

// Where liquid and vapor flow together the vapor is faster, so that the pipe holds
// more liquid than the quality tells. Zivi, "Estimation of steady-state steam
// void-fraction by means of the principle of minimum entropy production", Journal
// of Heat Transfer 86, 1964, has the velocities in the ratio of the densities to
// the power −1/3, hence the share α of the volume that is vapor:
//
//	α = x / (x + k·(1−x)),   k = (ρv/ρl)^(2/3).
//
// It needs nothing but the densities. Against weighed charges it counts too little
// liquid (Rice, "The effect of void fraction correlation and heat flux assumption on
// refrigerant charge inventory predictions", ASHRAE Transactions 93(1), 1987, has
// the models that see mass flux 10 to 30 % above it), so that charges are used
// here as shares of the correct one, and not as kilograms off a scale.

// twoPhaseDensity returns the mean density of refrigerant that boils or condenses
// evenly along a pipe between qualities x1 and x2, in kg/m³.
func twoPhaseDensity(x1, x2, liquid, vapor float64) float64 {
	k := math.Cbrt(vapor / liquid)
	k *= k
	x1, x2 = min(max(x1, 0), 1), min(max(x2, 0), 1)
	var void float64
	if d := x2 - x1; math.Abs(d) < 1e-4 {
		x := (x1 + x2) / 2
		void = x / (x + k*(1-x))
	} else {
		// The mean of α over x, in closed form.
		c := 1 - k
		void = 1/c - k/(c*c)*math.Log((k+c*x2)/(k+c*x1))/d
	}
	return liquid + void*(vapor-liquid)
}
