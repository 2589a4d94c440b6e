package satline

import (
	"math"
	"sort"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A readingField is one reading of a visit: its names, its instrument, and the
// range outside which it is a slip of the pen and not a measurement.
type readingField struct {
	name string // as in the JSON form
	// check finds a value that cannot be; state gives one without an uncertainty that of its
	// instrument.
	check func(r *Readings) *VisitError
	state func(r *Readings, in Instruments)
	has   func(*Readings) bool
	drop  func(*Readings)
	// copy takes the reading over, where there is one.
	copy func(to, from *Readings)
	// value is the reading as a value of a fact; false where there is none.
	value func(*Readings) (fact.Value, bool)
	// over replaces the reading by its mean over a stretch of the log, by the last
	// one logged where that holds none, and reports whether it stood still; ok is
	// false where the log does not hold it at all.
	over func(r *Readings, log []LogEntry, from, to time.Duration) (still, ok bool)
	// add takes a reading into the mean of a slot of the log, and give returns it.
	add  func(r *Readings, to *slotMean)
	give func(r *Readings, from *slotMean)
}

// A slotMean is what one reading comes to over a slot of the log; its uncertainty is
// that of the last.
type slotMean struct {
	mean thin.Mean
	std  float64
}

func field[T quantity.Quantity](
	name string, at func(*Readings) **quantity.Uncertain[T], low, top, within T,
	std func(Instruments, T) float64,
) readingField {
	return readingField{
		name: name,
		check: func(r *Readings) *VisitError {
			u := *at(r)
			switch most := float64(top - low); {
			case u == nil:
			case !(u.Value >= low && u.Value <= top):
				return outOfRange(
					name, u.Value, low, top, "read it again and check its unit, or leave it out",
				)
			case !(u.Std >= 0 && u.Std <= most):
				return outOfRange(
					name, quantity.Number(u.Std), quantity.Number(0), quantity.Number(most),
					adviceOnStd,
				)
			}
			return nil
		},
		state: func(r *Readings, in Instruments) {
			p := at(r)
			if *p == nil {
				return
			}
			u := **p
			if u.Std == 0 {
				u.Std = std(in, u.Value)
			}
			*p = &u
		},
		has:  func(r *Readings) bool { return *at(r) != nil },
		drop: func(r *Readings) { *at(r) = nil },
		copy: func(to, from *Readings) {
			if p := *at(from); p != nil {
				*at(to) = new(*p)
			}
		},
		value: func(r *Readings) (fact.Value, bool) {
			if p := *at(r); p != nil {
				return fact.Measured(name, *p), true
			}
			return fact.Value{}, false
		},
		over: func(r *Readings, log []LogEntry, from, to time.Duration) (still, ok bool) {
			mean, still := meanOf(at, log, from, to, within)
			if mean != nil {
				*at(r) = mean
			}
			return still, mean != nil
		},
		add: func(r *Readings, to *slotMean) {
			if p := *at(r); p != nil {
				to.mean.Add(float64(p.Value))
				to.std = p.Std
			}
		},
		give: func(r *Readings, from *slotMean) {
			if v, ok := from.mean.Value(); ok {
				*at(r) = &quantity.Uncertain[T]{Value: T(v), Std: from.std}
			}
		},
	}
}

// meanOf is the mean of a reading over a stretch of the log, the last one logged where that
// holds none, and whether it stood still; nil where the log does not hold it at all.
func meanOf[T quantity.Quantity](
	at func(*Readings) **quantity.Uncertain[T], log []LogEntry, from, to time.Duration, within T,
) (*quantity.Uncertain[T], bool) {
	var last *quantity.Uncertain[T]
	for i := len(log) - 1; i >= 0 && last == nil; i-- {
		last = *at(&log[i].Readings)
	}
	if last == nil {
		return nil, false
	}
	since := log[sort.Search(len(log), func(i int) bool { return log[i].At >= from }):]
	var usual [thin.Kept]charge.Sample[T]
	samples := usual[:0]
	for i := range since {
		if p := *at(&since[i].Readings); p != nil && since[i].At <= to {
			samples = append(samples, charge.Sample[T]{At: since[i].At, Value: p.Value})
		}
	}
	mean, still, ok := charge.MeanOver(samples, from, to, within)
	if !ok {
		mean = quantity.Uncertain[T]{Value: last.Value}
	}
	mean.Std = math.Hypot(last.Std, mean.Std)
	return &mean, still
}

// steadyWithin is how near to its end a temperature counts as settled: 1 °F, as
// a temperature because that is the type of the readings (common practice, no
// source).
const steadyWithin quantity.Temperature = 5. / 9

func gaugeField(
	name string, top quantity.GaugePressure, at func(*Readings) **gaugeReading,
) readingField {
	return field(
		name, at, quantity.PSIG(-14.7), top, quantity.PSIG(2),
		func(in Instruments, v quantity.GaugePressure) float64 {
			return math.Hypot(float64(in.Gauge), in.GaugePart*float64(v))
		},
	)
}

func clampField(
	name string, top quantity.Temperature, at func(*Readings) **temperatureReading,
) readingField {
	return field(
		name, at, quantity.Celsius(-60), top, steadyWithin,
		func(in Instruments, _ quantity.Temperature) float64 { return float64(in.Clamp) },
	)
}

func airField(name string, wet bool, at func(*Readings) **temperatureReading) readingField {
	return field(
		name, at, quantity.Celsius(-40), quantity.Celsius(75), steadyWithin,
		func(in Instruments, _ quantity.Temperature) float64 {
			if wet {
				return float64(in.WetBulb)
			}
			return float64(in.Thermometer)
		},
	)
}

// part is an uncertainty in proportion to the value, for readings whose instruments are
// specified so.
func part[T quantity.Quantity](of func(*Instruments) float64) func(Instruments, T) float64 {
	return func(in Instruments, v T) float64 { return of(&in) * math.Abs(float64(v)) }
}

var readingFields = []readingField{
	gaugeField("suctionPressure", quantity.PSIG(1500),
		func(r *Readings) **gaugeReading { return &r.SuctionPressure }),
	gaugeField("liquidPressure", quantity.PSIG(2500),
		func(r *Readings) **gaugeReading { return &r.LiquidPressure }),
	gaugeField("dischargePressure", quantity.PSIG(2500),
		func(r *Readings) **gaugeReading { return &r.DischargePressure }),
	clampField("suctionLine", quantity.Celsius(100),
		func(r *Readings) **temperatureReading { return &r.SuctionLine }),
	clampField("bulbLine", quantity.Celsius(100),
		func(r *Readings) **temperatureReading { return &r.BulbLine }),
	clampField("liquidAtValve", quantity.Celsius(110),
		func(r *Readings) **temperatureReading { return &r.LiquidAtValve }),
	clampField("liquidLine", quantity.Celsius(110),
		func(r *Readings) **temperatureReading { return &r.LiquidLine }),
	clampField("dischargeLine", quantity.Celsius(200),
		func(r *Readings) **temperatureReading { return &r.DischargeLine }),
	airField("outdoorDryBulb", false,
		func(r *Readings) **temperatureReading { return &r.OutdoorDryBulb }),
	airField("condenserLeaving", false,
		func(r *Readings) **temperatureReading { return &r.CondenserLeaving }),
	airField("returnDryBulb", false,
		func(r *Readings) **temperatureReading { return &r.ReturnDryBulb }),
	airField("returnWetBulb", true,
		func(r *Readings) **temperatureReading { return &r.ReturnWetBulb }),
	airField("supplyDryBulb", false,
		func(r *Readings) **temperatureReading { return &r.SupplyDryBulb }),
	airField("supplyWetBulb", true,
		func(r *Readings) **temperatureReading { return &r.SupplyWetBulb }),
	field(
		"airflow",
		func(r *Readings) **quantity.Uncertain[quantity.VolumeFlow] { return &r.Airflow },
		quantity.CFM(20), quantity.CFM(200000), quantity.CFM(50),
		part[quantity.VolumeFlow](func(in *Instruments) float64 { return in.AirflowPart }),
	),
	field(
		"externalStatic",
		func(r *Readings) **quantity.Uncertain[quantity.StaticPressure] {
			return &r.ExternalStatic
		},
		quantity.InchesWater(0), quantity.InchesWater(10), quantity.InchesWater(0.05),
		part[quantity.StaticPressure](func(in *Instruments) float64 { return in.StaticPart }),
	),
	field(
		"power", func(r *Readings) **quantity.Uncertain[quantity.Power] { return &r.Power },
		quantity.Watts(10), quantity.Kilowatts(1000), quantity.Watts(100),
		part[quantity.Power](func(in *Instruments) float64 { return in.PowerPart }),
	),
	field(
		"compressorCurrent",
		func(r *Readings) **quantity.Uncertain[quantity.Current] { return &r.CompressorCurrent },
		quantity.Amperes(0), quantity.Amperes(2000), quantity.Amperes(0.5),
		part[quantity.Current](func(in *Instruments) float64 { return in.CurrentPart }),
	),
}

func fieldNamed(name string) readingField {
	for _, f := range readingFields {
		if f.name == name {
			return f
		}
	}
	panic("satline: no reading is named " + name)
}
