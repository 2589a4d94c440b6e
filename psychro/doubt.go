package psychro

import (
	"math"
	"time"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Doubt is a reason not to trust a reading of air.
type Doubt struct {
	Code DoubtCode `json:"code"`
	// Reading and Against are the two temperatures at odds.
	Reading quantity.Temperature `json:"reading"`
	Against quantity.Temperature `json:"against"`
}

// A DoubtCode names a kind of doubt. It is stable.
type DoubtCode string

// The doubts. All thresholds are common practice without a source unless the
// comment names one.
const (
	// WetBulbAboveDryBulb: by more than the thermometers can err.
	WetBulbAboveDryBulb DoubtCode = "wet-bulb-above-dry-bulb"
	// WetBulbAtDryBulb: the two agree as well as they can be read, so the air is
	// saturated or the wick is dry.
	WetBulbAtDryBulb DoubtCode = "wet-bulb-at-dry-bulb"
	// WetBulbTooLow: lower than perfectly dry air would bring it.
	WetBulbTooLow DoubtCode = "wet-bulb-too-low"
	// WickFreezing: a wet bulb within 0.3 K of 0 °C stays there while its water
	// freezes or its ice melts.
	WickFreezing DoubtCode = "wick-freezing"
	// WickDrying: the wet bulb drifts up to a steady dry bulb.
	WickDrying DoubtCode = "wick-drying"
	// WickSettling: the wet bulb still falls; it is to be read at its lowest.
	WickSettling DoubtCode = "wick-settling"
	// SupplyReadsSaturated: the dry bulb after a coil was likely read with the
	// wick on, for a coil that bypasses any air leaves it at 85 to 95 %.
	SupplyReadsSaturated DoubtCode = "supply-reads-saturated"
	// SupplyWetterThanReturn: a cooling coil adds no water.
	SupplyWetterThanReturn DoubtCode = "supply-wetter-than-return"
	// SupplyColderThanCoil: air is no colder than the coil that cooled it; its
	// wet bulb was likely taken for its dry bulb.
	SupplyColderThanCoil DoubtCode = "supply-colder-than-coil"
)

// Says is the doubt as a fact, "doubt.wick-drying", with the two temperatures.
func (d Doubt) Says() fact.Fact {
	return fact.New(
		fact.Code("doubt."+string(d.Code)), fact.Amount("a", d.Reading),
		fact.Amount("b", d.Against),
	)
}

// Mend is what to do about it, "doubt.wick-drying.mend".
func (d Doubt) Mend() fact.Fact { return fact.New(fact.Code("doubt." + string(d.Code) + ".mend")) }

// Doubts returns what speaks against a reading of a psychrometer, the gravest
// first, or nil. Of what is no number nothing is said: Measure refuses it.
func (ps Psychrometer) Doubts(r Reading) []Doubt {
	var d []Doubt
	dry, wet := r.DryBulb.Value, r.WetBulb.Value
	if !finite.Is(dry) || !finite.Is(wet) {
		return nil
	}
	tolerance := r.tolerance()
	switch excess := float64(wet - dry); {
	case excess > tolerance+roundingK:
		d = append(d, Doubt{WetBulbAboveDryBulb, wet, dry})
	case math.Abs(excess) <= max(tolerance, 0.1):
		d = append(d, Doubt{WetBulbAtDryBulb, wet, dry})
	default:
		if ps.Model.checkReadings("", dry, r.Pressure.Value) != nil ||
			checkTemperature("", float64(wet)) != nil {
			break
		}
		if lowest := ps.driest(r, 1); float64(wet-lowest) < -tolerance {
			d = append(d, Doubt{WetBulbTooLow, wet, lowest})
		}
	}
	if math.Abs(wet.Celsius()) <= 0.3 && dry > wet {
		d = append(d, Doubt{WickFreezing, wet, quantity.Celsius(0)})
	}
	return d
}

// A WickSample is one pair of readings of a series.
type WickSample struct {
	At               time.Duration
	DryBulb, WetBulb quantity.Temperature
}

// WickDoubts returns what a series of readings in the same air, in order of
// time, tells of the wick: that it dries out, or that it has not settled yet. A
// drift counts when a straight line through the depression (dry less wet bulb)
// moves by more than 0.5 K over the series, by more than three standard errors
// of that line, and by more than twice what the dry bulb moves. It wants five
// samples; with fewer it is nil.
func WickDoubts(series []WickSample) []Doubt {
	n := float64(len(series))
	if n < 5 {
		return nil
	}
	line := func(value func(WickSample) float64) (move, standardError float64) {
		var st, sv float64
		for _, s := range series {
			st += s.At.Seconds()
			sv += value(s)
		}
		mt, mv := st/n, sv/n
		var stt, stv, svv float64
		for _, s := range series {
			dt, dv := s.At.Seconds()-mt, value(s)-mv
			stt += dt * dt
			stv += dt * dv
			svv += dv * dv
		}
		if !(stt > 0) {
			return 0, 0
		}
		span := series[len(series)-1].At.Seconds() - series[0].At.Seconds()
		slope := stv / stt
		rest := max(0, svv-slope*stv)
		return slope * span, span * math.Sqrt(rest/(n-2)/stt)
	}
	depression, noise := line(func(s WickSample) float64 { return float64(s.DryBulb - s.WetBulb) })
	dry, _ := line(func(s WickSample) float64 { return float64(s.DryBulb) })
	if !(math.Abs(depression) > max(0.5, 3*noise, 2*math.Abs(dry))) {
		return nil
	}
	first, last := series[0].WetBulb, series[len(series)-1].WetBulb
	if depression < 0 {
		return []Doubt{{WickDrying, last, first}}
	}
	return []Doubt{{WickSettling, last, first}}
}

// CoilDoubts returns what speaks against the readings before and after a coil
// that cools. The temperature of the coil surface, or the evaporating
// temperature of its refrigerant, is 0 where it is not known. An air that cannot
// be is left to [Psychrometer.Doubts].
func (ps Psychrometer) CoilDoubts(entering, leaving Reading, coil quantity.Temperature) []Doubt {
	var d []Doubt
	if dry := leaving.DryBulb; coil > 0 && finite.Is(coil) && finite.Is(dry.Value) &&
		float64(coil-dry.Value) > saturatedWithin*dry.Std {
		d = append(d, Doubt{SupplyColderThanCoil, dry.Value, coil})
	}
	in, inErr := ps.Measure(entering)
	out, outErr := ps.Measure(leaving)
	if inErr != nil || outErr != nil {
		return d
	}
	if depression := float64(leaving.DryBulb.Value - leaving.WetBulb.Value); depression <= max(
		leaving.tolerance(), 0.1,
	) &&
		in.Air.RelativeHumidity() < 0.95 {
		d = append(d, Doubt{SupplyReadsSaturated, leaving.DryBulb.Value, leaving.WetBulb.Value})
	}
	if excess := out.HumidityRatio.Value - in.HumidityRatio.Value; excess > max(
		2*math.Hypot(in.HumidityRatio.Std, out.HumidityRatio.Std), 0.01*in.HumidityRatio.Value,
	) {
		d = append(d, Doubt{SupplyWetterThanReturn, out.DewPoint.Value, in.DewPoint.Value})
	}
	return d
}
