package psychro

import (
	"fmt"
	"math"
	"time"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
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
	WetBulbAboveDryBulb DoubtCode = "wetBulbAboveDryBulb"
	// WetBulbAtDryBulb: the two agree as well as they can be read, so the air is
	// saturated or the wick is dry.
	WetBulbAtDryBulb DoubtCode = "wetBulbAtDryBulb"
	// WetBulbTooLow: lower than perfectly dry air would bring it.
	WetBulbTooLow DoubtCode = "wetBulbTooLow"
	// WickFreezing: a wet bulb within 0.3 K of 0 °C stays there while its water
	// freezes or its ice melts.
	WickFreezing DoubtCode = "wickFreezing"
	// WickDrying: the wet bulb drifts up to a steady dry bulb.
	WickDrying DoubtCode = "wickDrying"
	// WickSettling: the wet bulb still falls; it is to be read at its lowest.
	WickSettling DoubtCode = "wickSettling"
	// SupplyReadsSaturated: the dry bulb after a coil was likely read with the
	// wick on, for a coil that bypasses any air leaves it at 85 to 95 %.
	SupplyReadsSaturated DoubtCode = "supplyReadsSaturated"
	// SupplyWetterThanReturn: a cooling coil adds no water.
	SupplyWetterThanReturn DoubtCode = "supplyWetterThanReturn"
	// SupplyColderThanCoil: air is no colder than the coil that cooled it; its
	// wet bulb was likely taken for its dry bulb.
	SupplyColderThanCoil DoubtCode = "supplyColderThanCoil"
)

// Says is one sentence on what is wrong.
func (d Doubt) Says(sys quantity.System) string {
	a, b := d.Reading.Format(sys), d.Against.Format(sys)
	switch d.Code {
	case WetBulbAboveDryBulb:
		return fmt.Sprintf(
			"The wet bulb, %s, is above the dry bulb, %s, by more than the thermometers can err; "+
				"evaporation only cools.",
			a, b,
		)
	case WetBulbAtDryBulb:
		return fmt.Sprintf(
			"The wet bulb, %s, and the dry bulb, %s, agree as well as they can be read: "+
				"the air is saturated, or the wick is dry.",
			a, b,
		)
	case WetBulbTooLow:
		return fmt.Sprintf(
			"The wet bulb, %s, is lower than the %s that perfectly dry air would bring it to.", a,
			b,
		)
	case WickFreezing:
		return fmt.Sprintf(
			"The wet bulb, %s, is where a wick freezes and thaws; "+
				"it stays there whatever the humidity until that is over.",
			a,
		)
	case WickDrying:
		return fmt.Sprintf(
			"The wet bulb has drifted up to %s from %s while the dry bulb was steady: "+
				"the wick dries out.",
			a, b,
		)
	case WickSettling:
		return fmt.Sprintf("The wet bulb, %s, still falls from %s; it counts at its lowest.", a, b)
	case SupplyReadsSaturated:
		return fmt.Sprintf(
			"The supply dry bulb, %s, is its wet bulb, %s: air leaves a coil at 85 to 95 %%, "+
				"not saturated.",
			a, b,
		)
	case SupplyWetterThanReturn:
		return fmt.Sprintf(
			"The supply air has a dew point of %s, the return air of %s: "+
				"a cooling coil adds no water.",
			a, b,
		)
	case SupplyColderThanCoil:
		return fmt.Sprintf(
			"The supply air, %s, is colder than the coil, %s, which cooled it.", a, b,
		)
	}
	return string(d.Code)
}

// Do is one sentence on what to do about it.
func (d Doubt) Do() string {
	switch d.Code {
	case WetBulbAboveDryBulb:
		return "See whether the two readings are swapped, " +
			"then hold both thermometers dry in the same air and compare them."
	case WetBulbAtDryBulb:
		return "Wet the wick and read again; in dry weather a wet bulb that does not fall means " +
			"a dry wick."
	case WetBulbTooLow:
		return "Hold both thermometers dry in the same air and compare them."
	case WickFreezing:
		return "Wait until the wet bulb moves on, look whether the wick is ice or water, " +
			"and say which."
	case WickDrying:
		return "Wet the wick with clean water near the wet-bulb temperature and take the lowest " +
			"reading."
	case WickSettling:
		return "Keep the air moving until the wet bulb no longer falls."
	case SupplyReadsSaturated:
		return "Take the wick off, dry the probe and read the supply dry bulb again."
	case SupplyWetterThanReturn:
		return "Read both wet bulbs again with the same thermometer; look for a humidifier, " +
			"a wet duct, or outdoor air let in between."
	case SupplyColderThanCoil:
		return "Take the wick off, dry the probe and read the supply dry bulb again; " +
			"check the coil temperature."
	}
	return ""
}

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
