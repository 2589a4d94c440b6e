package coil

import "math"

// AirflowExponent is the power of the air's mass flow that the air-side
// coefficient of a plain-finned tube coil rises with: Gray and Webb, "Heat
// transfer and friction correlations for plate finned-tube heat exchangers
// having plain fins", 8th International Heat Transfer Conference 1986, has a
// j-factor that falls with the Reynolds number to the power 0.328 (from memory),
// so the coefficient rises with 1 − 0.328.
const AirflowExponent = 0.672

// AirUA returns the air-side conductance at a flow of dry air, from that at
// another.
func AirUA(rated, dryAir, ratedDryAir float64) float64 {
	if !(dryAir > 0 && ratedDryAir > 0) {
		return 0
	}
	return rated * math.Pow(dryAir/ratedDryAir, AirflowExponent)
}
