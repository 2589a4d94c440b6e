package heatpump

import (
	"math"

	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// Places of the readings in the errors of the features.
const (
	rEvaporating = iota
	rCondensing
	rSuctionLine
	rLiquidLine
	rDischarge
	rOutdoor
	rReturn
	rSupply
	rLeaving
	rAirflow
	rPower
	readings
)

// made is how features follow from readings, but for the two in per cent.
var made = [signature.Features][readings]float64{
	signature.EvaporatingUnder: {rOutdoor: 1, rEvaporating: -1},
	signature.Superheat:        {rSuctionLine: 1, rEvaporating: -1},
	signature.CondensingOver:   {rCondensing: 1, rReturn: -1},
	signature.Subcooling:       {rCondensing: 1, rLiquidLine: -1},
	signature.DischargeOver:    {rDischarge: 1, rCondensing: -1},
	signature.Rise:             {rSupply: 1, rReturn: -1},
	signature.OutdoorDrop:      {rOutdoor: 1, rLeaving: -1},
	signature.Airflow:          {rAirflow: 1},
	signature.Power:            {rPower: 1},
}

// An observation is the features of a case, those that its readings give.
type observation struct {
	weather signature.Weather
	has     [signature.Features]bool
	value   [signature.Features]float64
	noise   [signature.Features][signature.Features]float64
}

// observe makes the features of the readings, with the saturation temperatures that the gauges
// come to.
func observe(
	c *modes.Case, evaporating, condensing *quantity.Uncertain[quantity.Temperature],
) *observation {
	var value, std [readings]float64
	var known [readings]bool
	set := func(i int, r *quantity.Uncertain[quantity.Temperature]) {
		if r != nil {
			value[i], std[i], known[i] = float64(r.Value), r.Std, true
		}
	}
	set(rEvaporating, evaporating)
	set(rCondensing, condensing)
	set(rSuctionLine, c.SuctionLine)
	set(rLiquidLine, c.LiquidLine)
	set(rDischarge, c.DischargeLine)
	set(rOutdoor, c.OutdoorDryBulb)
	set(rReturn, c.ReturnDryBulb)
	set(rSupply, c.SupplyDryBulb)
	set(rLeaving, c.CondenserLeaving)
	if tons := c.NominalCapacity.Tons(); tons > 0 {
		if a := c.Airflow; a != nil && a.Value > 0 {
			value[rAirflow] = 100 * math.Log(a.Value.CFM()/(400*tons))
			std[rAirflow], known[rAirflow] = 100*a.Std/float64(a.Value), true
		}
		if p := c.Power; p != nil && p.Value > 0 {
			value[rPower] = 100 * math.Log(p.Value.Watts()/(1000*tons))
			std[rPower], known[rPower] = 100*p.Std/float64(p.Value), true
		}
	}
	o := &observation{weather: signature.Weather{Outdoor: usualOutdoor, Return: usualReturn}}
	if known[rOutdoor] {
		o.weather.Outdoor = value[rOutdoor]
	}
	if known[rReturn] {
		o.weather.Return = value[rReturn]
	}
	for f := range made {
		o.has[f] = true
		for r, k := range made[f] {
			o.has[f] = o.has[f] && (k == 0 || known[r])
			o.value[f] += k * value[r]
		}
	}
	for f := range made {
		for g := range made {
			for r := range readings {
				o.noise[f][g] += made[f][r] * made[g][r] * std[r] * std[r]
			}
		}
	}
	if doubt := inTheCold(o.weather.Outdoor); doubt > 0 {
		for _, f := range []signature.Feature{signature.EvaporatingUnder, signature.Superheat} {
			o.noise[f][f] += doubt * doubt
		}
	}
	return o
}

// inTheCold is how far the model is off the evaporating temperature and the superheat in K, one
// standard deviation, at an outdoor temperature in K. Heating charts that come with machines of
// R-410A have them evaporate 13 to 17 °F under outdoor air of 10 to 30 °F and up to 21 °F under
// 0 °F; the model has 15 °F at 30 °F, but 9 °F at 0 °F, with a superheat behind a valve that
// grows to 19 °F.
func inTheCold(outdoor float64) float64 {
	const from, perKelvin = 270.0, 0.17
	return max(0, perKelvin*(from-outdoor))
}

const (
	usualOutdoor = 276.0 // K, where nobody read it
	usualReturn  = 294.0
)

// count is how many features there are.
func (o *observation) count() int {
	n := 0
	for _, has := range o.has {
		if has {
			n++
		}
	}
	return n
}

// tails is the degrees of freedom of the Student t that stands for the Gaussian, as in
// package diagnose (Lange, Little and Taylor 1989, JASA 84:881-896).
const tails = 10

type covariance = [signature.Features][signature.Features]float64

// likelihood is the logarithm of the density of what was read where a row is true.
func (o *observation) likelihood(mean [signature.Features]float64, cov *covariance) float64 {
	n, logDet, d2 := o.whiten(mean, cov)
	return -0.5*logDet - 0.5*(tails+float64(n))*math.Log1p(d2/(tails-2)) - 0.919*float64(n)
}

// distance is how many standard deviations what was read is from a mean.
func (o *observation) distance(mean [signature.Features]float64, cov *covariance) float64 {
	_, _, d2 := o.whiten(mean, cov)
	return math.Sqrt(d2)
}

// whiten returns the number of features, the logarithm of the determinant of their covariance
// and the squared distance by it.
func (o *observation) whiten(
	mean [signature.Features]float64, cov *covariance,
) (n int, logDet, d2 float64) {
	var l [signature.Features][signature.Features]float64
	var z [signature.Features]float64
	var at [signature.Features]int
	for f := range o.has {
		if o.has[f] {
			at[n] = f
			n++
		}
	}
	for i := range n {
		for j := range i + 1 {
			sum := cov[at[i]][at[j]] + o.noise[at[i]][at[j]]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i > j {
				l[i][j] = sum / l[j][j]
			} else {
				l[i][i] = math.Sqrt(max(sum, 1e-6))
			}
		}
		z[i] = o.value[at[i]] - mean[at[i]]
		for k := range i {
			z[i] -= l[i][k] * z[k]
		}
		z[i] /= l[i][i]
		logDet += 2 * math.Log(l[i][i])
		d2 += z[i] * z[i]
	}
	return n, logDet, d2
}
