package live

import (
	"slices"

	"github.com/satline/satline/quantity"
)

// Units lists what the page offers beside the fields of each kind, in both systems of
// units, the usual one first.
func Units() map[string]map[quantity.System][]string {
	out := make(map[string]map[quantity.System][]string)
	for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
		power, mass := symbols[quantity.Power](sys), symbols[quantity.Mass](sys)
		for kind, units := range map[string][]string{
			"gauge":       symbols[quantity.GaugePressure](sys),
			"temperature": symbols[quantity.Temperature](sys),
			"difference":  symbols[quantity.TemperatureDelta](sys),
			"flow":        symbols[quantity.VolumeFlow](sys),
			"static":      symbols[quantity.StaticPressure](sys),
			"current":     symbols[quantity.Current](sys),
			"charge":      mass,
			// What is moved at a time is ounces or grams.
			"mass": {mass[1], mass[0], mass[3], mass[2]},
			// Electric power has one unit in both systems; capacity has those of the plate.
			"power":    among(power, "kW", "W"),
			"capacity": among(power, "kW", "ton", "kBtu/h"),
			// An elevation.
			"length":  among(symbols[quantity.Length](sys), "m", "ft"),
			"minutes": {"min", "h"},
		} {
			if out[kind] == nil {
				out[kind] = make(map[quantity.System][]string)
			}
			out[kind][sys] = units
		}
	}
	return out
}

func symbols[T quantity.Quantity](sys quantity.System) []string {
	var out []string
	for _, u := range quantity.Units[T](sys) {
		out = append(out, u.Symbol())
	}
	return out
}

// among leaves of a list those that are named.
func among(list []string, names ...string) []string {
	return slices.DeleteFunc(slices.Clone(list),
		func(s string) bool { return !slices.Contains(names, s) })
}
