package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Map is a maker's map of a compressor by ANSI/AHRI Standard 540: ten
// coefficients each for flow and power, over the dew points of suction S and
// discharge D:
//
//	X = C1 + C2·S + C3·D + C4·S² + C5·S·D + C6·D² + C7·S³ + C8·D·S² + C9·S·D² + C10·D³
//
// The map is measured with the suction gas at one superheat or one temperature. At
// another the flow follows the density of the gas to three quarters, and the power
// the flow and the ideal work: Dabiri and Rice, "A compressor simulation model with
// corrections for the level of suction gas superheat", ASHRAE Transactions 87(2),
// 1981. Outside the envelope the volume flow and the isentropic efficiency of its
// nearest edge are kept, because a cubic tells nothing there.
type Map struct {
	// Flow and Power are C1 to C10. Power is in watts.
	Flow, Power [10]float64
	// Units says what S, D and the flow are in.
	Units MapUnits
	// RatedSuperheat is that of the suction gas in the map's tests, or, where it is
	// 0, RatedReturnGas is its temperature.
	RatedSuperheat quantity.TemperatureDelta
	RatedReturnGas quantity.Temperature
	// Envelope is where the map was measured; zero fields take −25 to 13 °C (−13 to
	// 55 °F) for suction and 25 to 66 °C (77 to 150 °F) for discharge.
	Envelope MapEnvelope
}

// MapUnits are the units of a map's coefficients.
type MapUnits int

// The units of maps.
const (
	// MapIP has temperatures in °F and flow in lb/h.
	MapIP MapUnits = iota
	// MapSI has temperatures in °C and flow in g/s.
	MapSI
)

// A MapEnvelope bounds the dew points of suction and discharge.
type MapEnvelope struct {
	LowSuction, HighSuction, LowDischarge, HighDischarge quantity.Temperature
}

func (e MapEnvelope) withDefaults() MapEnvelope {
	for _, f := range []struct {
		field *quantity.Temperature
		value float64
	}{{&e.LowSuction, -25}, {&e.HighSuction, 13}, {&e.LowDischarge, 25}, {&e.HighDischarge, 66}} {
		if *f.field == 0 {
			*f.field = quantity.Celsius(f.value)
		}
	}
	return e
}

// At returns flow and power at dew points of suction and discharge, with the suction
// gas as in the map's tests. The error is a *RangeError outside the envelope.
func (m *Map) At(
	suction, discharge quantity.Temperature,
) (quantity.MassFlow, quantity.Power, error) {
	if err := m.check(); err != nil {
		return 0, 0, err
	}
	e := m.Envelope.withDefaults()
	const advice = "outside its envelope a compressor map is a cubic and nothing more"
	if err := limit.Within(
		"suction dew point of a compressor map", suction, e.LowSuction, e.HighSuction, advice,
	); err != nil {
		return 0, 0, err
	}
	if err := limit.Within(
		"discharge dew point of a compressor map", discharge, e.LowDischarge, e.HighDischarge,
		advice,
	); err != nil {
		return 0, 0, err
	}
	flow, power := m.polynomials(float64(suction), float64(discharge))
	if !(flow > 0 && power > 0) {
		return 0, 0, m.none(flow)
	}
	return quantity.MassFlow(flow), quantity.Power(power), nil
}

// check refuses a map that is none: no coefficients, or such as no map has.
func (m *Map) check() error {
	if m == nil {
		return &RangeError{
			Quantity: "compressor map",
			Advice:   "give the ten coefficients each for flow and power",
		}
	}
	const most = 1e9
	for _, c := range [...][10]float64{m.Flow, m.Power} {
		for _, v := range c {
			if err := limit.Within(
				"coefficient of a compressor map", quantity.Number(v), -most, most,
				"take it from the maker's sheet by AHRI Standard 540",
			); err != nil {
				return err
			}
		}
	}
	if err := limit.Within(
		"units of a compressor map", quantity.Number(m.Units), quantity.Number(MapIP),
		quantity.Number(MapSI), "take MapIP or MapSI",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"superheat of a compressor map's tests", m.RatedSuperheat, 0, 60,
		"usual is 11 K (20 °F); where the return gas is stated, leave it 0",
	); err != nil {
		return err
	}
	if m.RatedReturnGas != 0 {
		if err := limit.Within(
			"return gas of a compressor map's tests", m.RatedReturnGas, quantity.Celsius(-60),
			quantity.Celsius(60), "usual is 18 °C (65 °F)",
		); err != nil {
			return err
		}
	}
	return m.Envelope.check()
}

func (e MapEnvelope) check() error {
	e = e.withDefaults()
	const advice = "a dew point of the maker's sheet; zero fields take the usual ones"
	for _, b := range []struct {
		name      string
		low, high quantity.Temperature
	}{{"suction", e.LowSuction, e.HighSuction}, {"discharge", e.LowDischarge, e.HighDischarge}} {
		if err := limit.Within(
			"lowest "+b.name+" of a compressor map's envelope", b.low, quantity.Celsius(-100),
			quantity.Celsius(150), advice,
		); err != nil {
			return err
		}
		if err := limit.Within(
			"highest "+b.name+" of a compressor map's envelope", b.high, b.low,
			quantity.Celsius(150), advice,
		); err != nil {
			return err
		}
	}
	return nil
}

// none is the error of a map that has a flow or a power of nothing or less.
func (m *Map) none(flow float64) error {
	return &RangeError{
		Quantity: "flow of a compressor map",
		Value:    quantity.MassFlow(flow),
		Min:      quantity.MassFlow(0),
		Advice: "flow or power comes out at nothing or less: " +
			"are the ten coefficients in order, and of the units stated?",
	}
}

// AtState is At with the suction gas in a state of its own, and the discharge by its
// pressure. The error is a *RangeError, or refrigerant.ErrNoRefrigerant.
func (m *Map) AtState(
	r *refrigerant.Refrigerant, suction refrigerant.State, discharge quantity.Pressure,
) (quantity.MassFlow, quantity.Power, error) {
	td, err := r.DewTemperature(suction.Pressure)
	if err != nil {
		return 0, 0, err
	}
	tc, err := r.DewTemperature(discharge)
	if err != nil {
		return 0, 0, err
	}
	flow, power, err := m.At(td, tc)
	if err != nil {
		return 0, 0, err
	}
	rated, err := r.State(suction.Pressure, m.ratedGas(td))
	if err != nil {
		return 0, 0, err
	}
	ideal, err := idealWork(r, suction, discharge)
	if err != nil {
		return 0, 0, err
	}
	ratedIdeal, err := idealWork(r, rated, discharge)
	if err != nil {
		return 0, 0, err
	}
	k := superheatFactor(float64(suction.Density / rated.Density))
	return flow * quantity.MassFlow(k), power * quantity.Power(k*ideal/ratedIdeal), nil
}

func idealWork(
	r *refrigerant.Refrigerant, from refrigerant.State, to quantity.Pressure,
) (float64, error) {
	s, err := r.StateAtEntropy(to, from.Entropy)
	return float64(s.Enthalpy - from.Enthalpy), err
}

// superheatFactor is the flow over that of the map where the suction gas has ratio
// times the density of the map's.
func superheatFactor(ratio float64) float64 {
	const share = 0.75 // Dabiri and Rice (1981)
	return 1 + share*(ratio-1)
}

func (m *Map) ratedGas(dew quantity.Temperature) quantity.Temperature {
	if m.RatedSuperheat != 0 || m.RatedReturnGas == 0 {
		return dew.Add(m.RatedSuperheat)
	}
	return max(m.RatedReturnGas, dew)
}

// polynomials evaluates both at dew points in K, in kg/s and W.
func (m *Map) polynomials(suction, discharge float64) (flow, power float64) {
	s, d, unit := suction-273.15, discharge-273.15, 1e-3
	if m.Units == MapIP {
		s, d, unit = s*1.8+32, d*1.8+32, quantity.Pound/3600
	}
	terms := [10]float64{1, s, d, s * s, s * d, d * d, s * s * s, d * s * s, s * d * d, d * d * d}
	for i, t := range terms {
		flow += m.Flow[i] * t
		power += m.Power[i] * t
	}
	return flow * unit, power
}

// inside returns the dew points in K that the envelope has nearest to suction and
// discharge.
func (m *Map) inside(suction, discharge float64) (ts, tc float64) {
	e := m.Envelope.withDefaults()
	return min(max(suction, float64(e.LowSuction)), float64(e.HighSuction)),
		min(max(discharge, float64(e.LowDischarge)), float64(e.HighDischarge))
}

// at returns flow, and work per mass of it, for the solver, at any state.
func (m *Map) at(
	f *cyclefluid.Fluid, in, out *cyclefluid.Isobar, s *cyclefluid.State, ideal float64,
) (flow, work float64) {
	ts, tc := m.inside(in.Dew.T, out.Dew.T)
	flow, power := m.polynomials(ts, tc)
	// A cubic may come to nothing in a corner where nobody measured.
	flow, power = max(flow, 1e-5), max(power, 1)
	// What the map was measured with, at the edge of the envelope if beyond.
	low, high := in, out
	var edge [2]cyclefluid.Isobar
	if ts != in.Dew.T {
		f.Set(&edge[0], f.DewPressure(ts))
		low = &edge[0]
	}
	if tc != out.Dew.T {
		f.Set(&edge[1], f.DewPressure(tc))
		high = &edge[1]
	}
	rated := low.VaporAt(float64(m.ratedGas(quantity.Temperature(ts))))
	ratedIdeal := high.AtEntropy(rated.S).H - rated.H
	k := superheatFactor(rated.V / s.V)
	if low != in {
		k = rated.V / s.V
	}
	return flow * max(k, 0.05), power / flow * ideal / ratedIdeal
}

// scaled returns m for a machine k times the size.
func (m *Map) scaled(k float64) *Map {
	big := *m
	for i := range big.Flow {
		big.Flow[i] *= k
		big.Power[i] *= k
	}
	return &big
}
