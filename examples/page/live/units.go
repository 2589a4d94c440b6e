package live

import (
	"slices"
	"strings"
	"time"

	"github.com/satline/satline/quantity"
)

// A Unit turns its numbers into those of SI: Zero + Scale × number.
type Unit struct {
	Symbol string  `json:"symbol"`
	Scale  float64 `json:"scale"`
	Zero   float64 `json:"zero,omitempty"`
}

// A measure is a quantity by its name, and how its texts are read.
type measure struct {
	name  string
	units func(quantity.System) []Unit
	parse func(string) (float64, error)
}

var measures = []measure{
	{"Duration", func(quantity.System) []Unit {
		return []Unit{{"min", 60, 0}, {"h", 3600, 0}, {"s", 1, 0}}
	}, func(text string) (float64, error) {
		d, err := time.ParseDuration(strings.NewReplacer("min", "m", " ", "").Replace(text))
		return d.Seconds(), err
	}},
	of[quantity.Temperature]("Temperature"),
	of[quantity.TemperatureDelta]("TemperatureDelta"),
	of[quantity.Pressure]("Pressure", "micron", "inHg"),
	of[quantity.GaugePressure]("GaugePressure"),
	of[quantity.StaticPressure]("StaticPressure"),
	of[quantity.Mass]("Mass"),
	of[quantity.VolumeFlow]("VolumeFlow"),
	of[quantity.Power]("Power"),
	of[quantity.Length]("Length"),
	of[quantity.Current]("Current"),
	of[quantity.Voltage]("Voltage"),
	of[quantity.Resistance]("Resistance"),
	of[quantity.Capacitance]("Capacitance"),
	of[quantity.Frequency]("Frequency"),
	of[quantity.Ratio]("Ratio"),
}

// of offers the units of a system and those that the trade reads in either.
func of[T quantity.Quantity](name string, also ...string) measure {
	return measure{
		name: name,
		units: func(sys quantity.System) []Unit {
			var out []Unit
			for _, u := range quantity.Units[T](sys) {
				zero := float64(u.Value(0))
				out = append(out, Unit{u.Symbol(), float64(u.Value(1)) - zero, zero})
			}
			for _, symbol := range also {
				if v, err := quantity.Parse[T]("1 " + symbol); err == nil {
					out = append(out, Unit{symbol, float64(v), 0})
				}
			}
			return out
		},
		parse: func(text string) (float64, error) {
			v, err := quantity.Parse[T](text)
			return float64(v), err
		},
	}
}

func measureOf(kind string) (measure, bool) {
	i := slices.IndexFunc(measures, func(m measure) bool { return m.name == kind })
	if i < 0 {
		return measure{}, false
	}
	return measures[i], true
}

func quantities() map[string]map[quantity.System][]Unit {
	out := map[string]map[quantity.System][]Unit{}
	for _, m := range measures {
		out[m.name] = map[quantity.System][]Unit{}
		for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
			out[m.name][sys] = m.units(sys)
		}
	}
	return out
}

// usual is the unit that a field is read in where that is not the one of its quantity: what
// is moved at a time is ounces or grams, a pipe or a bore is inches across, electric power is
// kilowatts and a vacuum microns. Common practice, no source.
func usual(path string) map[quantity.System]string {
	for end, units := range usualUnits {
		if strings.HasSuffix(path, end) {
			return map[quantity.System]string{quantity.IP: units[0], quantity.SI: units[1]}
		}
	}
	return nil
}

// usualUnits are those in inch-pound and SI, by how a path ends.
var usualUnits = map[string][2]string{
	"move":                    {"oz", "g"},
	".lineAdder.mass":         {"oz", "g"},
	"accessories.*.mass":      {"oz", "g"},
	".liquidDiameter":         {"in", "mm"},
	".restrictor":             {"in", "mm"},
	".nominalCapacity":        {"ton", "kW"},
	".power":                  {"kW", "kW"},
	"vacuum.readings.*.value": {"micron", "micron"},
	"vacuum.start":            {"micron", "micron"},
	"vacuum.level":            {"micron", "micron"},
}
