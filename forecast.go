package satline

import (
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// A Scenario is weather, use or work to ask about. What is left zero stays as
// in the visit.
type Scenario struct {
	Name           string               `json:"name"`
	OutdoorDryBulb quantity.Temperature `json:"outdoorDryBulb,omitzero"`
	ReturnDryBulb  quantity.Temperature `json:"returnDryBulb,omitzero"`
	ReturnWetBulb  quantity.Temperature `json:"returnWetBulb,omitzero"`
	// Airflow through the indoor coil: what a new filter would give.
	Airflow quantity.VolumeFlow `json:"airflow,omitzero"`
	// Added is refrigerant moved before; what is recovered is negative.
	Added quantity.Mass `json:"added,omitzero"`
	// HeadPressure is the condensing temperature that a fan-cycling or
	// head-pressure control holds, 50 to 150 °F; zero for none.
	HeadPressure quantity.Temperature `json:"headPressure,omitzero"`
}

// CoolNight is the question a frozen coil asks: 60 °F outdoors, and a house
// that has cooled down to 70 °F with a 58 °F wet bulb.
func CoolNight() Scenario {
	return Scenario{Name: "a cool night", OutdoorDryBulb: quantity.Fahrenheit(60), ReturnDryBulb: quantity.Fahrenheit(70), ReturnWetBulb: quantity.Fahrenheit(58)}
}

// An Outlook is what the machine of a visit will do in a Scenario, by a model
// of the whole machine that was fitted to the visit. Every value has its
// standard uncertainty.
type Outlook struct {
	Scenario    Scenario                                      `json:"scenario"`
	Superheat   quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat"`
	Subcooling  quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling"`
	Evaporating quantity.Uncertain[quantity.Temperature]      `json:"evaporating"`
	Condensing  quantity.Uncertain[quantity.Temperature]      `json:"condensing"`
	CoilSurface quantity.Uncertain[quantity.Temperature]      `json:"coilSurface"`
	Supply      quantity.Uncertain[quantity.Temperature]      `json:"supply"`
	Capacity    quantity.Uncertain[quantity.Power]            `json:"capacity"`
	// FreezeChance is the probability that the coil grows ice.
	FreezeChance float64 `json:"freezeChance"`
	// Extrapolating lists what is further from the visit than it can speak for.
	Extrapolating []string `json:"extrapolating,omitempty"`
	// Says is the outlook in sentences, in the units of the visit.
	Says []string `json:"says"`
}

// Forecast fits a model of the whole machine to the visit and answers what it
// will do in other weather, with another airflow or charge, or under a control.
// It takes a few times as long as Assess.
//
// It needs the nominal capacity, the outdoor dry bulb, the return dry and wet
// bulb, and the suction pressure; the more readings there are, the narrower the
// answer. The error is a *VisitError.
func Forecast(v Visit, scenarios ...Scenario) ([]Outlook, error) {
	j, err := prepare(v)
	if err != nil {
		return nil, err
	}
	if err := j.takeSettled(); err != nil {
		return nil, err
	}
	if err := j.derive(); err != nil {
		return nil, err
	}
	j.doubt()
	fitted, seen, err := j.fit()
	if err != nil {
		return nil, err
	}
	var out []Outlook
	for i, s := range scenarios {
		o, err := j.outlook(fitted, seen, s)
		if err != nil {
			return nil, rangeProblem(fmt.Sprintf("scenario %d", i+1), err)
		}
		out = append(out, o)
	}
	return out, nil
}

func (j *job) fit() (*cycle.Fitted, cycle.Conditions, error) {
	r, e := &j.readings, &j.visit.Equipment
	switch {
	case e.NominalCapacity == 0:
		return nil, cycle.Conditions{}, missing("equipment.nominalCapacity", "a forecast starts from the size of the machine")
	case r.OutdoorDryBulb == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SuctionPressure == nil:
		return nil, cycle.Conditions{}, missing("readings", "a forecast needs outdoorDryBulb, returnDryBulb, returnWetBulb and suctionPressure")
	}
	for _, d := range j.doubts {
		if gravest([]Doubt{d}, "outdoorDryBulb", "returnDryBulb", "returnWetBulb", "suctionPressure", "liquidPressure", "suctionLine") == Impossible {
			return nil, cycle.Conditions{}, &VisitError{Field: "readings", Problem: "they cannot be true together: " + d.Text + "; " + d.Mend}
		}
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: j.fluid,
		Capacity:    e.NominalCapacity,
		Metering:    cycleMetering[e.Metering],
		Airflow:     e.Label.RatedAirflow,
	})
	if err != nil {
		return nil, cycle.Conditions{}, rangeProblem("equipment", err)
	}
	seen := cycle.Conditions{
		OutdoorDryBulb: r.OutdoorDryBulb.Value,
		ReturnDryBulb:  r.ReturnDryBulb.Value,
		ReturnWetBulb:  r.ReturnWetBulb.Value,
		Elevation:      j.elevation(),
	}
	visit := cycle.Visit{
		OutdoorStd:        quantity.TemperatureDelta(r.OutdoorDryBulb.Std),
		DryBulbStd:        quantity.TemperatureDelta(r.ReturnDryBulb.Std),
		WetBulbStd:        quantity.TemperatureDelta(r.ReturnWetBulb.Std),
		SuctionPressure:   r.SuctionPressure,
		LiquidPressure:    r.LiquidPressure,
		DischargePressure: r.DischargePressure,
		SuctionLine:       r.SuctionLine,
		LiquidLine:        r.LiquidLine,
		DischargeLine:     r.DischargeLine,
		Supply:            r.SupplyDryBulb,
		CondenserLeaving:  r.CondenserLeaving,
		Power:             r.Power,
	}
	if r.Airflow != nil {
		seen.Airflow = r.Airflow.Value
		visit.AirflowStd = r.Airflow.Std / float64(r.Airflow.Value)
	}
	visit.Conditions = seen
	fitted, err := cycle.Fit(system, visit)
	if err != nil {
		return nil, seen, rangeProblem("readings", err)
	}
	return fitted, seen, nil
}

func (j *job) outlook(fitted *cycle.Fitted, seen cycle.Conditions, s Scenario) (Outlook, error) {
	at, changed := seen, cycle.Faults{}
	for _, c := range []struct {
		to   *quantity.Temperature
		from quantity.Temperature
	}{{&at.OutdoorDryBulb, s.OutdoorDryBulb}, {&at.ReturnDryBulb, s.ReturnDryBulb}, {&at.ReturnWetBulb, s.ReturnWetBulb}} {
		if c.from != 0 {
			*c.to = c.from
		}
	}
	if s.Airflow != 0 {
		at.Airflow = s.Airflow
	}
	if s.Added != 0 {
		changed.Charge = fitted.ChargeChange(s.Added, j.visit.Equipment.Label.Charge)
	}
	if s.HeadPressure != 0 {
		if low, high := quantity.Fahrenheit(50), quantity.Fahrenheit(150); !(s.HeadPressure >= low && s.HeadPressure <= high) {
			return Outlook{}, &quantity.RangeError{Quantity: "condensing temperature that the head is held at", Value: s.HeadPressure, Min: low, Max: high, Advice: "give the setting of the control as a saturation temperature, or 0 for no control"}
		}
		fitted = fitted.WithHeadPressure(s.HeadPressure)
	}
	p, err := fitted.Predict(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	freeze, err := fitted.Freeze(at, changed)
	if err != nil {
		return Outlook{}, err
	}
	o := Outlook{
		Scenario: s, Superheat: p.Superheat, Subcooling: p.Subcooling, Evaporating: p.Evaporating, Condensing: p.Condensing,
		CoilSurface: freeze.Surface, Supply: p.Supply, Capacity: p.NetCapacity, FreezeChance: freeze.Probability,
	}
	sys := j.visit.Units
	o.Says = []string{
		fmt.Sprintf("superheat %s, subcooling %s, capacity %s", p.Superheat.Format(sys), p.Subcooling.Format(sys), p.NetCapacity.Format(sys)),
		fmt.Sprintf("evaporating at %s, the coldest surface of the coil at %s: the chance that it grows ice is %s", p.Evaporating.Format(sys), freeze.Surface.Format(sys), chance(freeze.Probability)),
	}
	if freeze.Outdoor != nil {
		o.Says = append(o.Says, "it freezes at "+freeze.Outdoor.Format(sys)+" outdoors and colder, all else as here")
	}
	if freeze.WetBulb != nil {
		o.Says = append(o.Says, "it freezes at a return wet bulb of "+freeze.WetBulb.Format(sys)+" and drier, all else as here")
	}
	if freeze.Airflow != nil {
		o.Says = append(o.Says, fmt.Sprintf("it freezes at %.0f %% of this airflow and less", 100**freeze.Airflow))
	}
	if p.Superheat.Value-2*quantity.TemperatureDelta(p.Superheat.Std) < 0 {
		o.Says = append(o.Says, "liquid may come back to the compressor there")
	}
	for _, x := range p.Extrapolating {
		o.Extrapolating = append(o.Extrapolating, x.Text(sys))
		o.Says = append(o.Says, "this is far from what was seen, and the more uncertain for it: "+x.Text(sys))
	}
	return o, nil
}

// chance writes a probability; nothing that a model says is certain.
func chance(p float64) string {
	switch {
	case p < 0.01:
		return "below 1 %"
	case p > 0.99:
		return "above 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

// elevation is that of the site, or the one that its barometer stands for.
func (j *job) elevation() quantity.Length {
	site := j.visit.Site
	switch {
	case site.Barometer == nil && site.Elevation == nil:
		return 0
	case site.Barometer == nil:
		return *site.Elevation
	}
	low, high := quantity.Meters(-1000), quantity.Meters(6000)
	for range 60 {
		middle := (low + high) / 2
		if quantity.AtmosphereAt(middle) > *site.Barometer {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

var cycleMetering = map[Metering]cycle.Metering{
	FixedRestrictor: cycle.FixedRestrictor,
	TXV:             cycle.TXV,
	EXV:             cycle.EXV,
}
