package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// formulas are the relations with factors that nobody knows by heart, for the
// topics of the set. What a word means, as superheat, is left to the student.
func (s Set) formulas() []string {
	units := s.Options.Units
	choose := func(ip, si string) string {
		if units == quantity.IP {
			return ip
		}
		return si
	}
	byTopic := map[string][]string{
		"air": {
			choose(
				"Humidity ratio of air whose vapor has the pressure pw, in an atmosphere p: W = 0.621945 pw / (p − pw), in lb for a lb of dry air. 1 lb is 7000 grains.",
				"Humidity ratio of air whose vapor has the pressure pw, in an atmosphere p: W = 0.621945 pw / (p − pw), in kg for a kg of dry air.",
			),
			fmt.Sprintf(
				"The same from dry bulb t and wet bulb t*, %s, where Ws* is that of air saturated at t*: %s.",
				choose("°F", "°C"),
				wetBulbFormula(units),
			),
		},
		"capacity": {
			choose(
				"Total heat, Btu/h, of standard air: 4.5 × CFM × difference of enthalpy, Btu/lb. Of air that takes v ft³ for a lb of dry air: 60 / v in place of 4.5.",
				"Total heat, kW, of standard air: 1.2 × m³/s × difference of enthalpy, kJ/kg. Of air that takes v m³ for a kg of dry air: 1 / v in place of 1.2.",
			),
		},
		"airflow": {
			choose(
				"Sensible heat, Btu/h, of standard air: 1.08 × CFM × difference of temperature, °F. The factor goes with the pressure of the atmosphere.",
				"Sensible heat, W, of standard air: 1.21 × L/s × difference of temperature, K. The factor goes with the pressure of the atmosphere.",
			),
		},
	}
	if units == quantity.IP {
		const watt = "1 W is 3.412 Btu/h."
		byTopic["cycle"] = []string{watt}
		byTopic["airflow"] = append(byTopic["airflow"], watt)
	}
	var out []string
	told := map[string]bool{}
	for _, p := range s.Problems {
		for _, f := range byTopic[p.Topic] {
			if !told[f] {
				out = append(out, f)
				told[f] = true
			}
		}
	}
	return out
}

// wetBulbFormula is equation 33 of the moist air source, on the scale of the
// units.
func wetBulbFormula(units quantity.System) string {
	if units == quantity.IP {
		return "W = ((1093 − 0.556 t*) Ws* − 0.240 (t − t*)) / (1093 + 0.444 t − t*)"
	}
	return "W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)"
}
