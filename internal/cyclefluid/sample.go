package cyclefluid

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func (f *Fluid) sampleIsobars(r *refrigerant.Refrigerant) error {
	low, err := lowest(r)
	if err != nil {
		return err
	}
	f.logLow = math.Log(float64(low))
	step := (math.Log(nearest*f.CriticalPressure) - f.logLow) / (isobars - 1)
	f.perStep = 1 / step
	end := min(max(hottest, f.CriticalTemperature+clearOfDome), float64(r.Limits().MaxTemperature))

	rows := make([][]float64, isobars)
	for i := range rows {
		p := quantity.Pressure(math.Exp(f.logLow + float64(i)*step))
		if rows[i], err = f.sampleIsobar(r, p, end); err != nil {
			return err
		}
	}
	f.isobars = make([]knot, isobars)
	for i := range rows {
		k := &f.isobars[i]
		copy(k.value[:], rows[i])
		copy(k.slope[:], slopeAt(rows, i))
	}
	return nil
}

// lowest is the dew pressure at the coldest temperature; of a refrigerant that is not used
// so cold, such as a blend with carbon dioxide, the bubble pressure where its range begins.
func lowest(r *refrigerant.Refrigerant) (quantity.Pressure, error) {
	const clear = 0.1 // K above the end of the range
	least := r.Limits().MinTemperature + clear
	if least <= coldest || least > warmest {
		dew, err := r.DewPressure(coldest)
		if err != nil {
			return 0, err
		}
		if bubble, err := r.BubbleTemperature(dew); err == nil && bubble >= least {
			return dew, nil
		}
	}
	return r.BubblePressure(least)
}

// sampleIsobar fits the vapor at p through states at the Chebyshev points of
// temperature between the dew point and end.
func (f *Fluid) sampleIsobar(r *refrigerant.Refrigerant, p quantity.Pressure, end float64) ([]float64, error) {
	tb, err := r.BubbleTemperature(p)
	if err != nil {
		return nil, err
	}
	td, err := r.DewTemperature(p)
	if err != nil {
		return nil, err
	}
	liquid, err := r.SaturatedLiquid(tb)
	if err != nil {
		return nil, err
	}
	dew, err := r.SaturatedVapor(td)
	if err != nil {
		return nil, err
	}

	var states [degree]refrigerant.State
	for k := range states {
		share := (1 - math.Cos(math.Pi*float64(k+1)/degree)) / 2
		t := float64(td) + share*(end-float64(td))
		if states[k], err = r.State(p, quantity.Temperature(t)); err != nil {
			return nil, err
		}
	}
	span := float64(states[degree-1].Enthalpy - dew.Enthalpy)
	z := func(s *refrigerant.State) float64 {
		return float64(p) / (float64(s.Density) * f.gasConstant * float64(s.Temperature))
	}
	powers := mat.NewDense(degree, degree, nil)
	above := mat.NewDense(degree, 3, nil)
	for k := range states {
		s := &states[k]
		eta := float64(s.Enthalpy-dew.Enthalpy) / span
		power := 1.0
		for j := range degree {
			power *= eta
			powers.Set(k, j, power)
		}
		above.Set(k, 0, float64(s.Temperature-td))
		above.Set(k, 1, float64(s.Entropy-dew.Entropy))
		above.Set(k, 2, z(s)-z(&dew))
	}
	var fit mat.Dense
	if err := fit.Solve(powers, above); err != nil {
		return nil, err
	}
	row := []float64{
		float64(tb), float64(td),
		float64(liquid.Enthalpy), float64(dew.Enthalpy),
		float64(liquid.Entropy), float64(dew.Entropy),
		1 / float64(liquid.Density), z(&dew),
		span,
	}
	for c := range 3 {
		for j := range degree {
			row = append(row, fit.At(j, c))
		}
	}
	return row, nil
}

// press is the pressure, in Pa, over which the rise of the enthalpy of liquid is
// sampled: about as far as a liquid line is above its bubble point.
const press = 4e5

func (f *Fluid) sampleLiquid(r *refrigerant.Refrigerant) error {
	low, err := r.BubbleTemperature(quantity.Pressure(math.Exp(f.logLow)))
	if err != nil {
		return err
	}
	high := f.isobars[isobars-1].value[bubbleT]
	f.liquidLow = float64(low)
	step := (high - f.liquidLow) / (liquids - 1)
	f.perKelvin = 1 / step
	rows := make([][]float64, liquids)
	for i := range rows {
		t := quantity.Temperature(f.liquidLow + float64(i)*step)
		h, err := r.BubbleEnthalpy(t)
		if err != nil {
			return err
		}
		rho, err := r.BubbleDensity(t)
		if err != nil {
			return err
		}
		p, err := r.BubblePressure(t)
		if err != nil {
			return err
		}
		pressed, err := r.State(p+press, t)
		if err != nil {
			return err
		}
		rows[i] = []float64{
			float64(h), 1 / float64(rho), math.Log(float64(p)),
			float64(pressed.Enthalpy-h) / press,
		}
	}
	f.liquids = make([]liquidKnot, liquids)
	for i := range rows {
		copy(f.liquids[i].value[:], rows[i])
		copy(f.liquids[i].slope[:], slopeAt(rows, i))
	}
	return nil
}

// slopeAt returns the derivative per step of every column of rows at row i, by
// the five-point formula, or the one-sided one at the ends (Abramowitz and
// Stegun, table 25.2).
func slopeAt(rows [][]float64, i int) []float64 {
	start := max(0, min(i-2, len(rows)-5))
	weights := fivePoint[i-start]
	slope := make([]float64, len(rows[i]))
	for k, w := range weights {
		for c, v := range rows[start+k] {
			slope[c] += w / 12 * v
		}
	}
	return slope
}

var fivePoint = [5][5]float64{
	{-25, 48, -36, 16, -3},
	{-3, -10, 18, -6, 1},
	{1, -8, 0, 8, -1},
	{-1, 6, -18, 10, 3},
	{3, -16, 36, -48, 25},
}
