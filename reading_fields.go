package satline

import (
	"math"
	"sort"
	"time"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/thin"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A readingField is one reading of a visit: its names, its instrument, and the
// range outside which it is a slip of the pen and not a measurement.
type readingField struct {
	name string // as in the JSON form
	// check finds a value that cannot be; state gives one without an uncertainty that of its
	// instrument, and reports whether there is one.
	check func(r *Readings) *VisitError
	state func(r *Readings, in Instruments) bool
	has   func(*Readings) bool
	drop  func(*Readings)
	// copy takes the reading over, where there is one.
	copy func(to, from *Readings)
	// value is the reading as a value of a fact; false where there is none.
	value func(*Readings) (fact.Value, bool)
	// over replaces a reading that the log holds by its mean over a stretch of it, by the
	// last one logged where that holds none, and reports whether it stood still.
	over func(r *Readings, log []LogEntry, from, to time.Duration) (still bool)
	// add takes a reading into the mean of a slot of the log, and give returns it.
	add  func(r *Readings, to *slotMean)
	give func(r *Readings, from *slotMean)
}

// A fieldSet is a set of readings, by their places among the readingFields.
type fieldSet uint32

const allFields = ^fieldSet(0)

func (s fieldSet) has(i int) bool { return s>>i&1 == 1 }

// A slotMean is what one reading comes to over a slot of the log; its uncertainty is
// that of the last.
type slotMean struct {
	mean thin.Mean
	std  float64
}

// field is a reading from low to top, with an uncertainty of most, in the SI unit, at most, that
// stands still where it moves within that much.
func field[T quantity.Quantity](
	name string, at func(*Readings) *Reading[T], low, top, within T, most float64,
	std func(Instruments, T) float64,
) readingField {
	return readingField{
		name: name,
		check: func(r *Readings) *VisitError {
			p := at(r)
			switch u := p.of; {
			case !p.taken:
			case !(u.Value >= low && u.Value <= top):
				return outOfRange(
					name, u.Value, low, top, "read it again and check its unit, or leave it out",
				)
			case !(u.Std >= 0 && u.Std <= most):
				return outOfRange(
					name, limit.Spread[T](u.Std), limit.Spread[T](0), limit.Spread[T](most),
					adviceOnStd,
				)
			}
			return nil
		},
		state: func(r *Readings, in Instruments) bool {
			p := at(r)
			if p.taken && p.of.Std == 0 {
				p.of.Std = std(in, p.of.Value)
			}
			return p.taken
		},
		has:  func(r *Readings) bool { return at(r).taken },
		drop: func(r *Readings) { *at(r) = Reading[T]{} },
		copy: func(to, from *Readings) {
			if p := at(from); p.taken {
				*at(to) = *p
			}
		},
		value: func(r *Readings) (fact.Value, bool) {
			if p := at(r); p.taken {
				return fact.Measured(name, p.of), true
			}
			return fact.Value{}, false
		},
		over: func(r *Readings, log []LogEntry, from, to time.Duration) bool {
			return at(r).over(at, log, from, to, within)
		},
		add: func(r *Readings, to *slotMean) {
			if p := at(r); p.taken {
				to.mean.Add(float64(p.of.Value))
				to.std = p.of.Std
			}
		},
		give: func(r *Readings, from *slotMean) {
			if v, ok := from.mean.Value(); ok {
				*at(r) = ReadingOf(quantity.Uncertain[T]{Value: T(v), Std: from.std})
			}
		},
	}
}

// over is that of the field of the reading.
func (r *Reading[T]) over(
	at func(*Readings) *Reading[T], log []LogEntry, from, to time.Duration, within T,
) bool {
	var last Reading[T]
	for i := len(log) - 1; i >= 0 && !last.taken; i-- {
		last = *at(&log[i].Readings)
	}
	if !last.taken {
		return false
	}
	since := log[sort.Search(len(log), func(i int) bool { return log[i].At >= from }):]
	var usual [thin.Kept]charge.Sample[T]
	samples := usual[:0]
	for i := range since {
		if p := at(&since[i].Readings); p.taken && since[i].At <= to {
			samples = append(samples, charge.Sample[T]{At: since[i].At, Value: p.of.Value})
		}
	}
	mean, still, ok := charge.MeanOver(samples, from, to, within)
	if !ok {
		mean.Value = last.of.Value
	}
	mean.Std = math.Hypot(last.of.Std, mean.Std)
	*r = ReadingOf(mean)
	return still
}

// steadyWithin is how near to its end a temperature counts as settled: 1 °F, as
// a temperature because that is the type of the readings (common practice, no
// source).
const steadyWithin quantity.Temperature = 5. / 9

// Short names for the readings of a gauge, and of a pipe or of air.
type (
	gauge   = Reading[quantity.GaugePressure]
	degrees = Reading[quantity.Temperature]
)

func gaugeField(name string, topPSI float64, at func(*Readings) *gauge) readingField {
	return field(
		name, at, quantity.PSIG(-14.7), quantity.PSIG(topPSI), quantity.PSIG(2), 1e6,
		func(in Instruments, v quantity.GaugePressure) float64 {
			return math.Hypot(float64(in.Gauge), in.GaugePart*float64(v))
		},
	)
}

func clampField(name string, topCelsius float64, at func(*Readings) *degrees) readingField {
	return field(
		name, at, quantity.Celsius(-60), quantity.Celsius(topCelsius), steadyWithin, 30,
		func(in Instruments, _ quantity.Temperature) float64 { return float64(in.Clamp) },
	)
}

func airField(name string, wet bool, at func(*Readings) *degrees) readingField {
	return field(
		name, at, quantity.Celsius(-40), quantity.Celsius(75), steadyWithin, 30,
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
	gaugeField("suctionPressure", 1500, func(r *Readings) *gauge { return &r.SuctionPressure }),
	gaugeField("liquidPressure", 2500, func(r *Readings) *gauge { return &r.LiquidPressure }),
	gaugeField("dischargePressure", 2500, func(r *Readings) *gauge { return &r.DischargePressure }),
	clampField("suctionLine", 100, func(r *Readings) *degrees { return &r.SuctionLine }),
	clampField("bulbLine", 100, func(r *Readings) *degrees { return &r.BulbLine }),
	clampField("liquidAtValve", 110, func(r *Readings) *degrees { return &r.LiquidAtValve }),
	clampField("liquidLine", 110, func(r *Readings) *degrees { return &r.LiquidLine }),
	clampField("dischargeLine", 200, func(r *Readings) *degrees { return &r.DischargeLine }),
	airField("outdoorDryBulb", false, func(r *Readings) *degrees { return &r.OutdoorDryBulb }),
	airField("condenserLeaving", false, func(r *Readings) *degrees { return &r.CondenserLeaving }),
	airField("returnDryBulb", false, func(r *Readings) *degrees { return &r.ReturnDryBulb }),
	airField("returnWetBulb", true, func(r *Readings) *degrees { return &r.ReturnWetBulb }),
	airField("supplyDryBulb", false, func(r *Readings) *degrees { return &r.SupplyDryBulb }),
	airField("supplyWetBulb", true, func(r *Readings) *degrees { return &r.SupplyWetBulb }),
	field("airflow", func(r *Readings) *Reading[quantity.VolumeFlow] { return &r.Airflow },
		quantity.CFM(20), quantity.CFM(200000), quantity.CFM(50), 95,
		part[quantity.VolumeFlow](func(in *Instruments) float64 { return in.AirflowPart })),
	field("externalStatic",
		func(r *Readings) *Reading[quantity.StaticPressure] { return &r.ExternalStatic },
		quantity.InchesWater(0), quantity.InchesWater(10), quantity.InchesWater(0.05), 2500,
		part[quantity.StaticPressure](func(in *Instruments) float64 { return in.StaticPart })),
	field("power", func(r *Readings) *Reading[quantity.Power] { return &r.Power },
		quantity.Watts(10), quantity.Kilowatts(1000), quantity.Watts(100), 1e6,
		part[quantity.Power](func(in *Instruments) float64 { return in.PowerPart })),
	field("compressorCurrent",
		func(r *Readings) *Reading[quantity.Current] { return &r.CompressorCurrent },
		quantity.Amperes(0), quantity.Amperes(2000), quantity.Amperes(0.5), 2000,
		part[quantity.Current](func(in *Instruments) float64 { return in.CurrentPart })),
}
