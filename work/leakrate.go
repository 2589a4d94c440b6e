package work

import (
	"fmt"
	"slices"
	"time"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A LeakMethod is one of the two ways in which 40 CFR 82.152 works out a leak rate. An owner
// keeps to one for all appliances of a site.
type LeakMethod int

// The methods.
const (
	// Annualizing counts the last addition over the days since the one before it.
	Annualizing LeakMethod = iota + 1
	// RollingAverage adds up what was added in the last 365 days, or since the last leak was
	// mended.
	RollingAverage
)

var leakMethodNames = []string{"not stated", "annualizing", "rolling average"}

// String returns the name of the method.
func (m LeakMethod) String() string { return enum.Name(leakMethodNames, m) }

// MarshalText writes the name of the method.
func (m LeakMethod) MarshalText() ([]byte, error) {
	return enum.Text("method of a leak rate", leakMethodNames, m)
}

// UnmarshalText reads what MarshalText writes.
func (m *LeakMethod) UnmarshalText(text []byte) error {
	return enum.Parse("method of a leak rate", leakMethodNames, text, m)
}

// An Addition is refrigerant that brought an appliance back to its full charge.
type Addition struct {
	On   time.Time     `json:"on"`
	Mass quantity.Mass `json:"mass"`
	// Repaired says that the leak was mended then, and proved so.
	Repaired bool `json:"repaired,omitzero"`
}

const aYear = 365 // days, as 40 CFR 82.152 counts

// LeakRate is the share of the full charge that an appliance loses in a year, by one of the
// methods of 40 CFR 82.152 and 84.102, at its last addition. The additions stand in order of
// time; those of one day count as one. Where nothing was added before, the annualizing method
// takes 365 days.
//
// The error is a *quantity.RangeError.
func LeakRate(full quantity.Mass, additions []Addition, method LeakMethod) (quantity.Ratio, error) {
	most := quantity.Kilograms(1e6)
	if !(full > 0 && full <= most) {
		return 0, &quantity.RangeError{Quantity: "full charge", Value: full, Max: most,
			Advice: "it is above zero: by the maker, by weight, or by calculation"}
	}
	if _, err := method.MarshalText(); err != nil || method == 0 {
		return 0, &quantity.RangeError{Quantity: "method of a leak rate", Value: method,
			Advice: "it is Annualizing or RollingAverage"}
	}
	var days []Addition
	for i, a := range additions {
		switch {
		case !(a.Mass >= 0 && a.Mass <= most):
			return 0, &quantity.RangeError{Quantity: fmt.Sprintf("addition %d", i+1), Value: a.Mass,
				Min: quantity.Mass(0), Max: most, Advice: "it is what the scale showed"}
		case i > 0 && a.On.Before(additions[i-1].On):
			return 0, &quantity.RangeError{Quantity: fmt.Sprintf("date of addition %d", i+1),
				Value: a.On, Min: additions[i-1].On, Advice: "put the additions in order of time"}
		case len(days) > 0 && daysBetween(days[len(days)-1].On, a.On) == 0:
			days[len(days)-1].Mass += a.Mass
			days[len(days)-1].Repaired = days[len(days)-1].Repaired || a.Repaired
		default:
			days = append(days, a)
		}
	}
	days = slices.DeleteFunc(days, func(a Addition) bool { return a.Mass == 0 && !a.Repaired })
	if len(days) == 0 {
		return 0, nil
	}
	last := days[len(days)-1]
	sum, span := last.Mass, aYear
	for i := len(days) - 2; i >= 0; i-- {
		since := daysBetween(days[i].On, last.On)
		if method == Annualizing {
			span = max(min(since, aYear), 1)
			break
		}
		if since >= aYear || days[i].Repaired {
			break
		}
		sum += days[i].Mass
	}
	return quantity.Ratio(float64(sum) / float64(full) * aYear / float64(span)), nil
}

// daysBetween counts midnights.
func daysBetween(a, b time.Time) int {
	day := func(t time.Time) time.Time {
		return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
	}
	return int(day(b).Sub(day(a)).Hours() / 24)
}

// The rules on leaks. Their text was read in secondary print; the section comes before it.
var (
	ozoneRule = fact.Source{
		Title: "40 CFR 82.157, with the leak rate of 82.152", Standing: fact.Published,
	}
	climateRule = fact.Source{
		Title: "40 CFR 84.106, from January 1, 2026", Standing: fact.Published,
	}
)

var (
	ozoneLeast   = quantity.Pounds(50)
	climateLeast = quantity.Pounds(15)
	climateFrom  = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
)

// climateGWP is the global warming potential above which 40 CFR 84.106 counts what is no
// hydrofluorocarbon and holds none.
const climateGWP = 53

// ozoneDepleting are refrigerants of class I and II, 40 CFR 82 subpart A, appendices A and B.
var ozoneDepleting = []string{
	"R-11", "R-12", "R-13", "R-21", "R-22", "R-113", "R-114", "R-115", "R-123", "R-124", "R-141b",
	"R-142b",
}

// triggers are the leak rates above which a leak has to be mended, the same in both rules.
var triggers = map[Use]quantity.Ratio{
	ComfortCooling: 0.10, LightComfortCooling: 0.10, OtherUse: 0.10,
	CommercialRefrigeration: 0.20, IndustrialProcess: 0.30,
}

// chronic is the share of the full charge in a calendar year from which a leaking appliance is
// reported.
const chronic = 1.25

// A LeakVerdict is the leak rate of an appliance against the federal rule. State and local law
// may ask for more.
type LeakVerdict struct {
	// Applies says whether a federal rule on leaks applies to the appliance.
	Applies   bool           `json:"applies"`
	Method    LeakMethod     `json:"method"`
	Full      quantity.Mass  `json:"full"`
	Rate      quantity.Ratio `json:"rate"`
	Threshold quantity.Ratio `json:"threshold"`
	// Over says that the rate is above the threshold; Chronic that 125 % of the charge or more
	// was added in the calendar year of the last addition.
	Over    bool        `json:"over"`
	Chronic bool        `json:"chronic,omitzero"`
	Source  fact.Source `json:"source,omitzero"`
	Says    fact.Fact   `json:"says"`
}

// JudgeLeak works out the leak rate and holds it against the threshold of the rule that applies
// to the refrigerant, the size and the use at the last addition. The error is that of LeakRate,
// or one of refrigerant.Lookup.
func JudgeLeak(m Machine, full quantity.Mass, additions []Addition, method LeakMethod) (LeakVerdict,
	error) {
	fluid, err := refrigerant.Lookup(m.Equipment.Refrigerant)
	if err != nil {
		return LeakVerdict{}, err
	}
	rate, err := LeakRate(full, additions, method)
	if err != nil {
		return LeakVerdict{}, err
	}
	use := m.Use
	if use == 0 {
		use = ComfortCooling
	}
	v := LeakVerdict{Method: method, Full: full, Rate: rate, Threshold: triggers[use]}
	if len(additions) == 0 {
		v.Says = fact.New("leak.none")
		return v, nil
	}
	last := additions[len(additions)-1].On
	gwp := fluid.GWP()
	warms := gwp.US != nil || gwp.AR4.Value > climateGWP
	depletes := slices.ContainsFunc(fluid.Composition(), func(c refrigerant.Component) bool {
		return slices.Contains(ozoneDepleting, c.Designation)
	})
	switch {
	case depletes && full >= ozoneLeast:
		v.Applies, v.Source = true, ozoneRule
	case !depletes && full >= climateLeast && use != LightComfortCooling &&
		warms && !last.Before(climateFrom):
		v.Applies, v.Source = true, climateRule
	}
	year := quantity.Mass(0)
	for _, a := range additions {
		if a.On.Year() == last.Year() {
			year += a.Mass
		}
	}
	v.Over = v.Applies && rate > v.Threshold
	v.Chronic = v.Applies && float64(year) >= chronic*float64(full)
	values := []fact.Value{
		fact.Of("method", fact.Term("leak-method."+method.String())), fact.Amount("rate", rate),
		fact.Amount("full", full), fact.Amount("threshold", v.Threshold),
	}
	code := fact.Code("leak.not-bound")
	switch {
	case v.Chronic:
		code = "leak.chronic"
	case v.Over:
		code = "leak.over"
	case v.Applies:
		code = "leak.under"
	}
	v.Says = fact.New(code, values...)
	return v, nil
}
