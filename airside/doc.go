// Package airside answers the question that comes before the charge: is it the
// refrigerant, or is it the air?
//
// It judges the temperature split of a cooling coil against its target, works
// out airflow by the methods a technician has, turns two states of air and an
// airflow into capacity, fits a coil at one condition and predicts it at
// another, tells how near a coil is to freezing, and reads the static pressures
// of the duct side.
//
// Flows and states are those of the air itself, wherever it is: the 1.08, 0.68
// and 4.5 of the trade are sea-level figures, and [FactorsOf] computes what
// they are at the density of the place.
//
// # Uncertainty
//
// A reading comes as a quantity.Uncertain; results carry standard uncertainties
// combined to first order (JCGM 100:2008, GUM, equation 10), the readings taken
// as independent. Sensitivities are central differences of the same function
// that gives the value.
//
// # Air first
//
// The targets here are general ones. What the manufacturer states for the unit
// outranks them.
package airside
