package refrigerant

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// An UnsuitableReason says why a refrigerant is none of comfort cooling. The names are
// stable.
type UnsuitableReason string

// The reasons.
const (
	// NoLiquidInSummer: it is no liquid at a condenser's temperature on a warm day, so that
	// there is no subcooling, and superheat follows the control of the gas cooler.
	NoLiquidInSummer UnsuitableReason = "no-liquid-in-summer"
	// InVacuum: it boils below the atmosphere in an evaporator for cooling air, as in
	// chillers, whose charge is told by level and temperature differences.
	InVacuum UnsuitableReason = "in-vacuum"
	// ToxicIndoors: class B does not go into the air stream of a house.
	ToxicIndoors UnsuitableReason = "toxic-indoors"
)

// An UnsuitableError says that the targets, tables and doses of comfort cooling do not
// hold for a refrigerant.
type UnsuitableError struct {
	Designation string
	Reason      UnsuitableReason
}

// Error implements error.
func (e *UnsuitableError) Error() string {
	why := map[UnsuitableReason]string{
		NoLiquidInSummer: "above its critical temperature on a warm day it is no liquid and has " +
			"no subcooling",
		InVacuum:     "it boils below atmospheric pressure in an evaporator that cools air",
		ToxicIndoors: "it is of higher toxicity and does not cool the air of a house directly",
	}[e.Reason]
	return fmt.Sprintf(
		"%s is not judged or dosed by the tables of comfort cooling: %s; "+
			"use the procedure of the unit's maker, or recover and weigh in",
		e.Designation, why,
	)
}

// Limits of comfort cooling: the condenser of a hot day, and the evaporator of the
// coldest supply air.
const (
	hotCondenser   quantity.Temperature = 273.15 + 60
	coolEvaporator quantity.Temperature = (40 + 459.67) / 1.8
)

// ComfortCooling returns nil where the targets and rules of comfort cooling can hold for
// r, and an *UnsuitableError where they cannot: where r is no liquid at 60 °C (140 °F),
// boils below one standard atmosphere at 40 °F, or is of class B of Standard 34. That
// a refrigerant passes does not make it one for any unit: the label names that.
//
// The error is ErrNoRefrigerant where nothing is known.
func (r *Refrigerant) ComfortCooling() error {
	if len(r.components()) == 0 {
		return ErrNoRefrigerant
	}
	if r.Critical().Temperature < hotCondenser {
		return &UnsuitableError{r.designation, NoLiquidInSummer}
	}
	if r.SafetyGroup().HigherToxicity() {
		return &UnsuitableError{r.designation, ToxicIndoors}
	}
	p, err := r.DewPressure(coolEvaporator)
	if err != nil {
		return err
	}
	if p < quantity.StandardAtmosphere {
		return &UnsuitableError{r.designation, InVacuum}
	}
	return nil
}
