package satline

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// A readingField is one reading of a visit: its names, its instrument, and the
// range outside which it is a slip of the pen and not a measurement.
type readingField struct {
	name  string // as in the JSON form
	label string // as in the trade
	// prepare fills in the instrument's uncertainty and checks the range.
	prepare func(*Readings, Instruments, quantity.Pressure) error
	// show returns the reading in a system of units, "" where there is none.
	show func(*Readings, quantity.System) string
	// copy takes the reading from one set into another.
	copy func(to, from *Readings)
}

func field[T quantity.Quantity](name, label string, at func(*Readings) **quantity.Uncertain[T], low, top T, std func(Instruments, T) float64) readingField {
	return readingField{
		name: name, label: label,
		prepare: func(r *Readings, in Instruments, _ quantity.Pressure) error {
			p := at(r)
			if *p == nil {
				return nil
			}
			u := **p
			path := "readings." + name
			if !(u.Value >= low && u.Value <= top) {
				sys := quantity.SI
				return &VisitError{Field: path, Problem: fmt.Sprintf("%v is out of range; valid from %s (%s) to %s (%s)", u.Value,
					low.Format(sys), low.Format(quantity.IP), top.Format(sys), top.Format(quantity.IP))}
			}
			if !(u.Std >= 0 && finite(u.Std)) {
				return &VisitError{Field: path, Problem: "its uncertainty is negative or not a number"}
			}
			if u.Std == 0 {
				u.Std = std(in, u.Value)
			}
			*p = &u
			return nil
		},
		show: func(r *Readings, sys quantity.System) string {
			if p := *at(r); p != nil {
				return p.Format(sys)
			}
			return ""
		},
		copy: func(to, from *Readings) { *at(to) = *at(from) },
	}
}

func gaugeField(name, label string, at func(*Readings) **gaugeReading, top quantity.GaugePressure) readingField {
	return field(name, label, at, quantity.PSIG(-14.7), top, func(in Instruments, _ quantity.GaugePressure) float64 { return float64(in.Gauge) })
}

func clampField(name, label string, at func(*Readings) **temperatureReading, top quantity.Temperature) readingField {
	return field(name, label, at, quantity.Celsius(-60), top, func(in Instruments, _ quantity.Temperature) float64 { return float64(in.Clamp) })
}

func airField(name, label string, at func(*Readings) **temperatureReading, wet bool) readingField {
	return field(name, label, at, quantity.Celsius(-40), quantity.Celsius(75), func(in Instruments, _ quantity.Temperature) float64 {
		if wet {
			return float64(in.WetBulb)
		}
		return float64(in.Thermometer)
	})
}

// share is an uncertainty in proportion to the value, for readings whose
// instruments are specified so (common practice, no source).
func share[T quantity.Quantity](fraction float64) func(Instruments, T) float64 {
	return func(_ Instruments, v T) float64 { return fraction * max(float64(v), -float64(v)) }
}

var readingFields = []readingField{
	gaugeField("suctionPressure", "suction pressure", func(r *Readings) **gaugeReading { return &r.SuctionPressure }, quantity.PSIG(1500)),
	gaugeField("liquidPressure", "liquid pressure", func(r *Readings) **gaugeReading { return &r.LiquidPressure }, quantity.PSIG(2500)),
	gaugeField("dischargePressure", "discharge pressure", func(r *Readings) **gaugeReading { return &r.DischargePressure }, quantity.PSIG(2500)),
	clampField("suctionLine", "suction line", func(r *Readings) **temperatureReading { return &r.SuctionLine }, quantity.Celsius(100)),
	clampField("liquidLine", "liquid line", func(r *Readings) **temperatureReading { return &r.LiquidLine }, quantity.Celsius(110)),
	clampField("dischargeLine", "discharge line", func(r *Readings) **temperatureReading { return &r.DischargeLine }, quantity.Celsius(200)),
	airField("outdoorDryBulb", "outdoor dry bulb", func(r *Readings) **temperatureReading { return &r.OutdoorDryBulb }, false),
	airField("condenserLeaving", "air leaving the condenser", func(r *Readings) **temperatureReading { return &r.CondenserLeaving }, false),
	airField("returnDryBulb", "return dry bulb", func(r *Readings) **temperatureReading { return &r.ReturnDryBulb }, false),
	airField("returnWetBulb", "return wet bulb", func(r *Readings) **temperatureReading { return &r.ReturnWetBulb }, true),
	airField("supplyDryBulb", "supply dry bulb", func(r *Readings) **temperatureReading { return &r.SupplyDryBulb }, false),
	airField("supplyWetBulb", "supply wet bulb", func(r *Readings) **temperatureReading { return &r.SupplyWetBulb }, true),
	field("airflow", "indoor airflow", func(r *Readings) **quantity.Uncertain[quantity.VolumeFlow] { return &r.Airflow },
		quantity.CFM(20), quantity.CFM(200000), share[quantity.VolumeFlow](0.07)),
	field("externalStatic", "external static pressure", func(r *Readings) **quantity.Uncertain[quantity.StaticPressure] { return &r.ExternalStatic },
		quantity.InchesWater(0), quantity.InchesWater(10), share[quantity.StaticPressure](0.05)),
	field("power", "electric power", func(r *Readings) **quantity.Uncertain[quantity.Power] { return &r.Power },
		quantity.Watts(10), quantity.Kilowatts(1000), share[quantity.Power](0.03)),
	field("compressorCurrent", "compressor current", func(r *Readings) **quantity.Uncertain[quantity.Current] { return &r.CompressorCurrent },
		quantity.Amperes(0.1), quantity.Amperes(2000), share[quantity.Current](0.03)),
}
