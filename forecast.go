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
	// Added is refrigerant moved before, up to as much again as the machine holds; what
	// is recovered is negative, and less than 60 % of it.
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
	// FreezeChance is the probability that the coil grows ice: that by its coldest
	// surface or that by airside.IcingRule, whichever is larger.
	FreezeChance float64 `json:"freezeChance"`
	// Extrapolating lists what is further from the visit than it can speak for.
	Extrapolating []string `json:"extrapolating,omitempty"`
	// Says is the outlook in sentences, in the units of the visit; the first is
	// whether the coil freezes.
	Says []string `json:"says"`
	// Believe says how far to believe it: what it stands on, and where the fitted
	// model misses the visit; what forbids to build on it comes first. It is the same
	// for all scenarios of a visit.
	Believe []string `json:"believe"`
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
	fit, err := j.fit()
	if err != nil {
		return nil, err
	}
	if err := j.compare(fit); err != nil {
		return nil, err
	}
	var out []Outlook
	for i, s := range scenarios {
		o, err := j.outlook(fit, s)
		if err != nil {
			return nil, rangeProblem(fmt.Sprintf("scenario %d", i+1), err)
		}
		out = append(out, o)
	}
	return out, nil
}

// A fitting is the model of the whole machine that was fitted to a visit.
type fitting struct {
	machine *cycle.Fitted
	seen    cycle.Conditions
	// off is how far the machine is off the visit, in K, beyond its own uncertainty.
	off     struct{ superheat, subcooling, evaporating float64 }
	believe []string
}

func (j *job) fit() (*fitting, error) {
	r, e := &j.readings, &j.visit.Equipment
	switch {
	case j.visit.Conditions.Heating:
		return nil, &VisitError{Field: "conditions.heating", Problem: "a forecast is of cooling; put the machine into cooling and read again"}
	case e.NominalCapacity == 0:
		return nil, missing("equipment.nominalCapacity", "a forecast starts from the size of the machine")
	case r.OutdoorDryBulb == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SuctionPressure == nil:
		return nil, missing("readings", "a forecast needs outdoorDryBulb, returnDryBulb, returnWetBulb and suctionPressure")
	}
	for _, d := range j.doubts {
		if gravest([]Doubt{d}, "outdoorDryBulb", "returnDryBulb", "returnWetBulb", "suctionPressure", "liquidPressure", "suctionLine") == Impossible {
			return nil, &VisitError{Field: "readings", Problem: "they cannot be true together: " + d.Text + "; " + d.Mend}
		}
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: j.fluid,
		Capacity:    e.NominalCapacity,
		Metering:    cycleMetering[e.Metering],
		Airflow:     e.Label.RatedAirflow,
	})
	if err != nil {
		return nil, rangeProblem("equipment", err)
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
		return nil, rangeProblem("readings", err)
	}
	return &fitting{machine: fitted, seen: seen}, nil
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
