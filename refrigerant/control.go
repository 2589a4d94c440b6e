package refrigerant

import "github.com/satline/satline/quantity/fact"

// Control is how the Montreal Protocol and its Kigali Amendment treat
// a refrigerant. It says what to expect of supply, not what is lawful at a site:
// dates and exceptions are local law.
type Control string

// The controlled families. A blend takes the strictest of its components.
const (
	// CFC: Annexes A and B. Production ended in 1996 in developed countries and
	// in 2010 elsewhere. What is left is recovered stock.
	CFC Control = "CFC"
	// HCFC: Annex C, group I. Production for new use ended in 2020 in developed
	// countries, with a service tail to 2030, and ends in 2030 elsewhere.
	// What is left is reclaimed.
	HCFC Control = "HCFC"
	// HFC: Annex F, the Kigali Amendment of 2016. In production under falling
	// quotas.
	HFC Control = "HFC"
	// NotControlled: in no annex. Local rules on fluorinated gases, on fire and
	// on pressure may still restrict it.
	NotControlled Control = "not controlled"
)

// Fact is what to expect of its supply, for the person holding the cylinder: "control.HFC".
func (c Control) Fact() fact.Fact {
	switch c {
	case CFC, HCFC, HFC:
		return fact.New(fact.Code("control." + string(c)))
	}
	return fact.New("control.none")
}

func (c Control) strictness() int {
	switch c {
	case CFC:
		return 3
	case HCFC:
		return 2
	case HFC:
		return 1
	}
	return 0
}

// Control returns the family that r is controlled as.
func (r *Refrigerant) Control() Control {
	strictest := NotControlled
	for _, c := range r.components() {
		if k := pureFactOf(c.Designation).control; k.strictness() > strictest.strictness() {
			strictest = k
		}
	}
	return strictest
}
