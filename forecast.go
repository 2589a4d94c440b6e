package satline

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/normal"
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

func (j *job) outlook(fit *fitting, s Scenario) (Outlook, error) {
	fitted, seen := fit.machine, fit.seen
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
		const least, most = -0.6, 1 // of the whole charge, as for cycle.Faults
		label := j.visit.Equipment.Label.Charge
		changed.Charge = fitted.ChargeChange(s.Added, label)
		if !(changed.Charge >= least && changed.Charge <= most) {
			perKilogram := fitted.ChargeChange(quantity.Kilograms(1), label)
			return Outlook{}, &quantity.RangeError{Quantity: "refrigerant added", Value: s.Added, Min: quantity.Kilograms(least / perKilogram), Max: quantity.Kilograms(most / perKilogram), Advice: "what is recovered is negative; the model goes from 40 % of a charge to twice as much"}
		}
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
	now := at == seen && changed == (cycle.Faults{}) && s.HeadPressure == 0
	superheat, subcooling := widened(p.Superheat, fit.off.superheat), widened(p.Subcooling, fit.off.subcooling)
	evaporating, surface := widened(p.Evaporating, fit.off.evaporating), widened(freeze.Surface, fit.off.evaporating)
	bySurface := normal.Below(-float64(surface.Value.Sub(airside.Freezing)) / surface.Std)
	byRule := airside.IcingChance(evaporating)
	o := Outlook{
		Scenario: s, Superheat: superheat, Subcooling: subcooling, Evaporating: evaporating, Condensing: p.Condensing,
		CoilSurface: surface, Supply: p.Supply, Capacity: p.NetCapacity, FreezeChance: max(bySurface, byRule), Believe: fit.believe,
	}
	sys := j.visit.Units
	beside := func(have bool, measured string) string {
		if !now || !have {
			return ""
		}
		return " (measured " + measured + ")"
	}
	d := &j.derived
	boils := "the refrigerant boils at " + evaporating.Format(sys) + beside(d.EvaporatingDew != nil, formatted(d.EvaporatingDew, sys))
	coldest := "the coldest surface of the coil is at " + surface.Format(sys)
	o.Says = []string{fmt.Sprintf("%s: the chance of ice on the coil is %s", willFreeze(o.FreezeChance), normal.Percent(o.FreezeChance))}
	if o.FreezeChance < 0.01 {
		o.Says = append(o.Says, boils, coldest)
	} else {
		o.Says = append(o.Says,
			fmt.Sprintf("%s: by %s, the chance is %s", boils, airside.IcingText(sys), normal.Percent(byRule)),
			fmt.Sprintf("%s: the chance that it is below freezing is %s", coldest, normal.Percent(bySurface)))
	}
	o.Says = append(o.Says,
		fmt.Sprintf("superheat %s%s, subcooling %s%s, capacity %s",
			superheat.Format(sys), beside(d.Superheat != nil, formatted(d.Superheat, sys)),
			subcooling.Format(sys), beside(d.Subcooling != nil, formatted(d.Subcooling, sys)), rounded(p.NetCapacity, sys).Format(sys)))
	if o.FreezeChance < 0.5 {
		o.Says = append(o.Says, surfaceFreezes(freeze, sys)...)
	}
	if liquid := normal.Below(-float64(superheat.Value) / superheat.Std); superheat.Value <= 0 {
		o.Says = append(o.Says, "no superheat is left there: liquid is likely to come back to the compressor")
	} else if liquid >= 0.1 {
		o.Says = append(o.Says, "the chance that liquid comes back to the compressor there is "+normal.Percent(liquid))
	}
	var far []string
	for _, x := range p.Extrapolating {
		text := x.Text(sys)
		o.Extrapolating = append(o.Extrapolating, text)
		far = append(far, strings.TrimSuffix(text, thanSeen))
	}
	if len(far) > 0 {
		o.Says = append(o.Says, "far from what was seen, and the more uncertain for it: "+listed(far)+thanSeen)
	}
	return o, nil
}

// thanSeen is how a departure from the visit ends.
const thanSeen = " than at the visit"

// willFreeze answers the question of a forecast.
func willFreeze(chance float64) string {
	switch {
	case chance > 0.9:
		return "it will freeze"
	case chance > 0.5:
		return "it will probably freeze"
	case chance > 0.1:
		return "it may freeze"
	}
	return "it is not likely to freeze"
}

// surfaceFreezes says what would bring the coldest surface to freezing.
func surfaceFreezes(freeze cycle.FreezeForecast, sys quantity.System) []string {
	var at []string
	if freeze.Outdoor != nil {
		at = append(at, freeze.Outdoor.Format(sys)+" outdoors")
	}
	if freeze.WetBulb != nil {
		at = append(at, "a return wet bulb of "+freeze.WetBulb.Format(sys))
	}
	if freeze.Airflow != nil {
		at = append(at, fmt.Sprintf("%.0f %% of this airflow", 100**freeze.Airflow))
	}
	switch len(at) {
	case 0:
		return nil
	case 1:
		return []string{"all else as here, " + at[0] + " would bring that surface to freezing"}
	}
	return []string{"all else as here, any one of these would bring that surface to freezing: " + listed(at)}
}

func formatted[T quantity.Quantity](u *quantity.Uncertain[T], sys quantity.System) string {
	if u == nil {
		return ""
	}
	return u.Value.Format(sys)
}

// rounded shows a power to the place of its uncertainty.
func rounded(u quantity.Uncertain[quantity.Power], sys quantity.System) quantity.Uncertain[quantity.Power] {
	unit := float64(quantity.Watts(1))
	if sys == quantity.IP {
		unit = float64(quantity.BtuPerHour(1))
	}
	step := unit * math.Pow(10, math.Floor(math.Log10(max(u.Std/unit, 1))))
	return quantity.Uncertain[quantity.Power]{Value: quantity.Power(to(float64(u.Value), step)), Std: to(u.Std, step)}
}

// widened is a value whose uncertainty covers what the fitted machine is off by at the
// visit: it will not be off by less elsewhere.
func widened[T quantity.Quantity](u quantity.Uncertain[T], off float64) quantity.Uncertain[T] {
	u.Std = math.Hypot(u.Std, off)
	return u
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
