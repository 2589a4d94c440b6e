package airside

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// FitCoil returns the coil that takes a flow of air, counted at its entering
// condition, from one state to the other with refrigerant at a temperature: the
// dew temperature at the suction pressure of a machine that runs steadily.
//
// Two numbers are measured, heat and leaving dry bulb, and two conductances
// follow. In humid air two coils may do the same, one with a colder surface and
// more bypass than the other; the one nearer to the usual ratio of the two sides
// is returned. A coil that stays dry shows only their sum; there the usual ratio is
// taken and Assumed says so. Where no coil does it the error is a *RangeError:
// the leaving air is colder than the refrigerant, it was warmed again after the
// coil, or a reading is wrong.
func FitCoil(
	entering, leaving psychro.Air, flow quantity.VolumeFlow, refrigerant quantity.Temperature,
) (Coil, error) {
	if err := checkPair(entering, leaving); err != nil {
		return Coil{}, err
	}
	if err := checkFit(entering, leaving.DryBulb(), flow, refrigerant); err != nil {
		return Coil{}, err
	}
	const roundoff = 1e-9
	if leaving.HumidityRatio() > entering.HumidityRatio()*(1+roundoff) {
		return Coil{}, &RangeError{
			Quantity: "humidity ratio of the leaving air",
			Value:    quantity.Number(leaving.HumidityRatio()),
			Max:      quantity.Number(entering.HumidityRatio()),
			Advice: "a cooling coil adds no water: is the supply wet bulb read too high, " +
				"or the coil wet from washing? FitCoilSplit needs no supply wet bulb",
		}
	}
	in := coil.NewAir(entering)
	m, tr := float64(entering.DryAirFlow(flow)), float64(refrigerant)
	if leaving.HumidityRatio() >= entering.HumidityRatio()*(1-roundoff) {
		return dryFit(&in, m, tr, float64(entering.DryBulb()), float64(leaving.DryBulb())), nil
	}
	c, err := FitCoilSplit(entering, leaving.DryBulb(), flow, refrigerant)
	if err != nil {
		return Coil{}, err
	}
	goal := [2]float64{
		-m * float64(coolingProcess(entering, leaving).Heat), float64(leaving.DryBulb()),
	}
	usual := [2]float64{math.Log(float64(c.AirSide)), math.Log(float64(c.RefrigerantSide))}
	x, ok := newtonFit(&in, m, tr, goal, usual)
	if !ok {
		x, ok = searchFit(&in, m, tr, goal, usual)
	}
	if !ok {
		return Coil{}, noCoil(leaving)
	}
	return Coil{
		AirSide:         quantity.Conductance(math.Exp(x[0])),
		RefrigerantSide: quantity.Conductance(math.Exp(x[1])),
		RatedDryAir:     quantity.MassFlow(m),
	}, nil
}

// dryFit takes the usual ratio of the sides, or as much more on the air side as
// keeps the surface at the dew point.
func dryFit(in *coil.Air, m, tr, entering, leaving float64) Coil {
	ua := m * in.HeatCapacity() * math.Log((entering-tr)/(leaving-tr))
	surface := 1 / (1 + usualSideRatio) // of the way from refrigerant to air
	surface = min(max(surface, (in.DewPoint()-tr)/(leaving-tr)), 0.99)
	return Coil{
		AirSide:         quantity.Conductance(ua / (1 - surface)),
		RefrigerantSide: quantity.Conductance(ua / surface),
		RatedDryAir:     quantity.MassFlow(m), Assumed: assumedSidesDry,
	}
}

func noCoil(leaving psychro.Air) error {
	return &RangeError{
		Quantity: "relative humidity of the leaving air",
		Value:    quantity.Number(leaving.RelativeHumidity()),
		Advice: "no coil at this refrigerant temperature leaves such air: " +
			"is the supply wet bulb right, the air mixed or warmed after the coil, " +
			"the suction pressure read at the same moment? FitCoilSplit needs no supply wet bulb",
	}
}

// FitCoilSplit is [FitCoil] without a supply wet bulb: of the two sides it takes
// the usual ratio.
func FitCoilSplit(
	entering psychro.Air, leaving quantity.Temperature, flow quantity.VolumeFlow,
	refrigerant quantity.Temperature,
) (Coil, error) {
	if err := checkFit(entering, leaving, flow, refrigerant); err != nil {
		return Coil{}, err
	}
	in := coil.NewAir(entering)
	m, tr := float64(entering.DryAirFlow(flow)), float64(refrigerant)
	cooled := func(lnUA float64) float64 {
		ua := math.Exp(lnUA)
		return float64(entering.DryBulb()) - in.Through(m, tr, ua, usualSideRatio*ua).T
	}
	middle := math.Log(m * in.HeatCapacity())
	ln, ok := rising(cooled, float64(entering.DryBulb()-leaving), middle-12, middle+6, 1e-11)
	if !ok {
		return Coil{}, &RangeError{
			Quantity: "leaving air",
			Value:    leaving,
			Min:      refrigerant,
			Max:      entering.DryBulb(),
			Advice: "no coil at this refrigerant temperature cools the air so: " +
				"is the supply thermometer wet, or the suction pressure of another moment?",
		}
	}
	ua := quantity.Conductance(math.Exp(ln))
	return Coil{
		AirSide:         ua,
		RefrigerantSide: usualSideRatio * ua,
		RatedDryAir:     quantity.MassFlow(m),
		Assumed:         assumedSides,
	}, nil
}

func checkFit(
	entering psychro.Air, leaving quantity.Temperature, flow quantity.VolumeFlow,
	refrigerant quantity.Temperature,
) error {
	if err := checkPass(entering, flow, refrigerant); err != nil {
		return err
	}
	if flow == 0 {
		return &RangeError{
			Quantity: "airflow",
			Value:    flow,
			Min:      quantity.CFM(1),
			Advice:   "without flow there is nothing to fit",
		}
	}
	const least = quantity.TemperatureDelta(0.1)
	return limit.Within(
		"leaving air", leaving, refrigerant.Add(least), entering.DryBulb().Add(-least),
		"a coil leaves air between the refrigerant and the entering air: "+
			"are return and supply swapped, the pressure of another moment, "+
			"or its atmosphere another?",
	)
}

// newtonFit solves for ln UA of both sides by Newton's method with differences,
// its steps held to a factor of e. The coil is smooth, so from the usual ratio
// some five steps do; it is false where they do not.
func newtonFit(in *coil.Air, m, tr float64, goal, x [2]float64) ([2]float64, bool) {
	miss := func(x [2]float64) [2]float64 {
		r := in.Through(m, tr, math.Exp(x[0]), math.Exp(x[1]))
		return [2]float64{r.Heat/goal[0] - 1, (r.T - goal[1]) / 10}
	}
	y := miss(x)
	for range 25 {
		if math.Abs(y[0])+math.Abs(y[1]) < 1e-11 {
			return x, true
		}
		const h = 1e-6
		a, b := miss([2]float64{x[0] + h, x[1]}), miss([2]float64{x[0], x[1] + h})
		j00, j01 := (a[0]-y[0])/h, (b[0]-y[0])/h
		j10, j11 := (a[1]-y[1])/h, (b[1]-y[1])/h
		det := j00*j11 - j01*j10
		if !(math.Abs(det) > 1e-12) {
			return x, false
		}
		dx, dy := (y[0]*j11-y[1]*j01)/det, (y[1]*j00-y[0]*j10)/det
		if size := max(math.Abs(dx), math.Abs(dy)); size > 1 {
			dx, dy = dx/size, dy/size
		}
		x[0] -= dx
		x[1] -= dy
		if math.Abs(x[0]) > 25 || math.Abs(x[1]) > 25 {
			return x, false
		}
		y = miss(x)
	}
	return x, math.Abs(y[0])+math.Abs(y[1]) < 1e-9
}

// searchFit is the slow and sure way: along the coils that take the right heat,
// outward from the usual ratio, to the nearest that leaves the air as cold.
func searchFit(in *coil.Air, m, tr float64, goal, start [2]float64) ([2]float64, bool) {
	const step, steps = 0.25, 24
	var x [2]float64
	// miss is how much too warm the air leaves with an air side of ln UA, and the
	// refrigerant side that the heat asks for; false where none gives it.
	miss := func(lnAir float64) (float64, bool) {
		ua := math.Exp(lnAir)
		lnRef, ok := rising(
			func(y float64) float64 { return in.Through(m, tr, ua, math.Exp(y)).Heat }, goal[0],
			start[1]-15, start[1]+15, 1e-12*math.Abs(goal[0]),
		)
		if !ok {
			return 0, false
		}
		x = [2]float64{lnAir, lnRef}
		return in.Through(m, tr, ua, math.Exp(lnRef)).T - goal[1], true
	}
	type end struct {
		at, miss float64
		ok       bool
	}
	look := func(at float64) end {
		y, ok := miss(at)
		return end{at, y, ok}
	}
	up := look(start[0])
	down := up
	for i := 1; i <= steps; i++ {
		for _, side := range []struct {
			last *end
			at   float64
		}{{&up, start[0] + step*float64(i)}, {&down, start[0] - step*float64(i)}} {
			next := look(side.at)
			last := *side.last
			*side.last = next
			if !last.ok || !next.ok || last.miss > 0 == (next.miss > 0) {
				continue
			}
			low, high := last, next
			for range 50 {
				mid := look((low.at + high.at) / 2)
				if !mid.ok {
					break
				}
				if mid.miss > 0 == (low.miss > 0) {
					low = mid
				} else {
					high = mid
				}
			}
			y, ok := miss(low.at)
			return x, ok && math.Abs(y) < 1e-6
		}
	}
	return x, false
}
