package cycle

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Prediction is what a fitted machine will do, with the standard uncertainty of each
// figure.
type Prediction struct {
	// Operating is the best guess, in full.
	Operating Operating `json:"operating"`

	SuctionPressure quantity.Uncertain[quantity.Pressure]         `json:"suctionPressure"`
	LiquidPressure  quantity.Uncertain[quantity.Pressure]         `json:"liquidPressure"`
	Evaporating     quantity.Uncertain[quantity.Temperature]      `json:"evaporating"`
	Condensing      quantity.Uncertain[quantity.Temperature]      `json:"condensing"`
	Superheat       quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat"`
	Subcooling      quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling"`
	Supply          quantity.Uncertain[quantity.Temperature]      `json:"supply"`
	CoilSurface     quantity.Uncertain[quantity.Temperature]      `json:"coilSurface"`
	NetCapacity     quantity.Uncertain[quantity.Power]            `json:"netCapacity"`
	Power           quantity.Uncertain[quantity.Power]            `json:"power"`

	// Extrapolating lists what is further from the visit than it can speak for; the bands
	// are wider for it. Empty where nothing is.
	Extrapolating []Departure `json:"extrapolating,omitempty"`
}

// A Departure is how far a prediction is from the visit in one respect.
type Departure struct {
	Of string `json:"of"` // "outdoor-dry-bulb", "charge"
	// By is the difference of a temperature, Part that of anything else, as a
	// part of what it was at the visit; the other one is zero.
	By   quantity.TemperatureDelta `json:"by,omitzero"`
	Part float64                   `json:"part,omitzero"`
}

// Fact states the departure.
func (d Departure) Fact() fact.Fact {
	of := fact.Of("of", fact.Term("departure.of."+d.Of))
	switch {
	case d.By > 0:
		return fact.New("departure.warmer", of, fact.Amount("by", d.By))
	case d.By < 0:
		return fact.New("departure.colder", of, fact.Amount("by", -d.By))
	case d.Part < 0:
		return fact.New("departure.less", of, fact.Of("part", fact.Share(-d.Part)))
	}
	return fact.New("departure.more", of, fact.Of("part", fact.Share(d.Part)))
}

// Predict returns what the fitted machine does under conditions c. changed is what changes
// from the machine as it was found: Charge 0.05 is 5 % of the correct charge more, and
// IndoorAirflow 0.15 is a new filter. An airflow that c leaves at 0 is that of the visit.
//
// The band has three parts: what the fit left open, what a model of this kind is off by
// where it was fitted, and a growth of that with the distance from there (own judgement:
// see the table in the code; a test holds that 95 % bands cover machines with other laws).
//
// Conditions and changes have the ranges of System.Solve; beyond them the error is a
// *RangeError.
func (f *Fitted) Predict(c Conditions, changed Faults) (Prediction, error) {
	if !f.made() {
		return Prediction{}, ErrNoSystem
	}
	if c.Airflow == 0 {
		c.Airflow = f.at.Airflow
	}
	ps := f.parameters()
	x := make([]float64, len(ps))
	for i, u := range f.unknowns {
		x[i] = u.Value
	}
	base, err := f.solveAt(ps, x, c, changed)
	if err != nil {
		return Prediction{}, err
	}
	g := mat.NewDense(outputCount, len(ps), nil)
	was := outputs(&base)
	for k, p := range ps {
		moved := append([]float64(nil), x...)
		step := p.step(x[k], f.unknowns[k].Std)
		moved[k] += step
		o, err := f.solveAt(ps, moved, c, changed)
		if err != nil {
			continue
		}
		is := outputs(&o)
		for i := range is {
			g.Set(i, k, (is[i]-was[i])/step)
		}
	}
	var gc, full mat.Dense
	gc.Mul(g, f.cov)
	full.Mul(&gc, g.T())

	away, reasons := f.distance(c, changed)
	std := func(i int) float64 {
		d := doubts[i]
		own := d.here + d.perDistance*away
		if d.relative {
			own *= math.Abs(was[i])
		}
		return math.Hypot(own, math.Sqrt(max(full.At(i, i), 0)))
	}
	temperature := func(v quantity.Temperature, i int) quantity.Uncertain[quantity.Temperature] {
		return quantity.Uncertain[quantity.Temperature]{Value: v, Std: std(i)}
	}
	return Prediction{
		Operating: base,
		SuctionPressure: quantity.Uncertain[quantity.Pressure]{
			Value: base.Suction.Pressure,
			Std:   std(outSuctionP),
		},
		LiquidPressure: quantity.Uncertain[quantity.Pressure]{
			Value: base.Liquid.Pressure,
			Std:   std(outLiquidP),
		},
		Evaporating: temperature(base.Evaporating, outEvaporating),
		Condensing:  temperature(base.Condensing, outCondensing),
		Superheat: quantity.Uncertain[quantity.TemperatureDelta]{
			Value: base.Superheat,
			Std:   std(outSuperheat),
		},
		Subcooling: quantity.Uncertain[quantity.TemperatureDelta]{
			Value: base.Subcooling,
			Std:   std(outSubcooling),
		},
		Supply:      temperature(base.Supply, outSupply),
		CoilSurface: temperature(base.CoilSurface, outSurface),
		NetCapacity: quantity.Uncertain[quantity.Power]{
			Value: base.NetCapacity,
			Std:   std(outCapacity),
		},
		Power:         quantity.Uncertain[quantity.Power]{Value: base.Power, Std: std(outPower)},
		Extrapolating: reasons,
	}, nil
}

const (
	outSuctionP = iota
	outLiquidP
	outEvaporating
	outCondensing
	outSuperheat
	outSubcooling
	outSupply
	outSurface
	outCapacity
	outPower
	outputCount
)

func outputs(o *Operating) [outputCount]float64 {
	// Liquid in the suction gas counts as superheat a little below zero, so that a band goes
	// on where the superheat ends: a tenth of liquid for 3 K.
	superheat := float64(o.Superheat)
	if o.Suction.Quality < 1 {
		superheat -= 30 * (1 - o.Suction.Quality)
	}
	return [outputCount]float64{
		float64(o.Suction.Pressure), float64(o.Liquid.Pressure), float64(o.Evaporating),
		float64(o.Condensing), superheat, float64(o.Subcooling), float64(o.Supply),
		float64(o.CoilSurface), float64(o.NetCapacity), float64(o.Power),
	}
}

// doubts is what the model is off by, where it was fitted and per unit of distance from
// there: in K, or relative.
var doubts = [outputCount]struct {
	here, perDistance float64
	relative          bool
}{
	outSuctionP:    {0.015, 0.012, true},
	outLiquidP:     {0.012, 0.010, true},
	outEvaporating: {0.5, 0.4, false},
	outCondensing:  {0.5, 0.4, false},
	outSuperheat:   {0.8, 1.2, false},
	outSubcooling:  {0.5, 0.6, false},
	outSupply:      {0.5, 0.4, false},
	outSurface:     {0.7, 0.4, false},
	outCapacity:    {0.03, 0.02, true},
	outPower:       {0.02, 0.015, true},
}

// distance is how far conditions and changes are from the visit, in units of what a
// visit speaks for, and what is further than one such unit.
func (f *Fitted) distance(c Conditions, changed Faults) (float64, []Departure) {
	airflow := changed.IndoorAirflow
	if f.at.Airflow > 0 && c.Airflow > 0 {
		airflow += float64(c.Airflow/f.at.Airflow) - 1
	}
	stuck := 0.0
	if changed.ValveStuck {
		stuck = changed.ValveOpening/f.now.ValveOpening - 1
	}
	liquid := changed.LiquidRestriction / f.now.Liquid.Pressure
	suction := changed.SuctionRestriction / f.now.Suction.Pressure
	sum := 0.0
	var far []Departure
	for _, d := range []struct {
		Departure
		speak float64
	}{
		{Departure{Of: "outdoor-dry-bulb", By: c.OutdoorDryBulb.Sub(f.at.OutdoorDryBulb)}, 8},
		{Departure{Of: "return-wet-bulb", By: c.ReturnWetBulb.Sub(f.at.ReturnWetBulb)}, 3},
		{Departure{Of: "return-dry-bulb", By: c.ReturnDryBulb.Sub(f.at.ReturnDryBulb)}, 5},
		{Departure{Of: "indoor-airflow", Part: airflow}, 0.2},
		{Departure{Of: "charge", Part: changed.Charge}, 0.1},
		{Departure{Of: "outdoor-airflow", Part: changed.OutdoorAirflow}, 0.3},
		{Departure{Of: "metering", Part: changed.MeteringSize}, 0.15},
		{Departure{Of: "indoor-dirt", Part: changed.EvaporatorFouling}, 0.2},
		{Departure{Of: "outdoor-dirt", Part: changed.CondenserFouling}, 0.2},
		{Departure{Of: "outdoor-air-entering", By: changed.Recirculation}, 8},
		{Departure{Of: "liquid-line-drop", Part: float64(liquid)}, 0.1},
		{Departure{Of: "suction-line-drop", Part: float64(suction)}, 0.05},
		{Departure{Of: "compressor-leak", Part: changed.CompressorLeak}, 0.05},
		{Departure{Of: "non-condensables", Part: changed.NonCondensables}, 0.2},
		{Departure{Of: "bulb-off", Part: changed.BulbOff}, 0.2},
		{Departure{Of: "valve-setting", By: changed.ValveSetting}, 4},
		{Departure{Of: "valve-opening", Part: stuck}, 0.15},
	} {
		x := (float64(d.By) + d.Part) / d.speak
		sum += x * x
		if math.Abs(x) > 1 {
			far = append(far, d.Departure)
		}
	}
	return math.Sqrt(sum), far
}

// parameters are the unknowns of the machine. The errors of the air readings of the visit
// do not go along to other weather.
func (f *Fitted) parameters() []parameter {
	ps := parametersFor(f.system, &Readings{})
	for i := range ps {
		switch ps[i].name {
		case "outdoor dry bulb", "return dry bulb", "return wet bulb":
			ps[i].apply = func(float64, *Tuning, *Conditions, *Faults) {}
		}
	}
	return ps
}

// step is how far to move the unknown at x for its slope: as far as it is uncertain, so
// that a bend on the way is felt, but not beyond what a machine can be.
func (p *parameter) step(x, std float64) float64 {
	switch {
	case x+std <= p.high:
		return std
	case x-std >= p.low:
		return -std
	case p.high-x > x-p.low:
		return p.high - x
	}
	return p.low - x
}

// solveAt adds the changes to what the fit found.
func (f *Fitted) solveAt(
	ps []parameter, x []float64, c Conditions, changed Faults,
) (Operating, error) {
	var found Faults
	var t Tuning
	for i, p := range ps {
		p.apply(x[i], &t, &c, &found)
	}
	changed.Charge += found.Charge
	changed.IndoorAirflow = (1+changed.IndoorAirflow)*(1+found.IndoorAirflow) - 1
	changed.ValveSetting += found.ValveSetting
	tuned := *f.system
	tuned.plant.tune(&t)
	return tuned.Solve(c, changed)
}

// ChargeChange returns what a mass added to the machine, or recovered where it is
// negative, is in Faults.Charge: a share of the correct charge. Give the charge of the
// label where it is known; 0 takes the model's own count, which runs low.
func (f *Fitted) ChargeChange(added, label quantity.Mass) float64 {
	if !f.made() {
		return 0
	}
	const least = quantity.Mass(0.01) // no machine holds less
	if !(label >= least) {
		label = f.system.Charge()
	}
	return float64(added / label)
}
