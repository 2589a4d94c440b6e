package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Spec is what a machine is designed to. Refrigerant, Capacity and Metering must be
// given; zero fields take the figures of an ordinary residential machine (common
// practice, no source). All states are those at RatingConditions.
type Spec struct {
	Refrigerant *refrigerant.Refrigerant
	// Capacity is the nominal cooling capacity, net of the blower's heat: 0.5 to 30
	// tons.
	Capacity quantity.Power
	Metering refrigerant.Metering

	// Airflow is the rated airflow indoors; 0 is 400 CFM per ton.
	Airflow quantity.VolumeFlow
	// OutdoorAirflow is that of the condenser; 0 is 950 CFM per ton.
	OutdoorAirflow quantity.VolumeFlow
	// Suction is the dew point at the suction port; 0 is 45 °F.
	Suction quantity.Temperature
	// Condensing is the bubble point at the liquid port above the outdoor dry bulb; 0 is
	// 20 °F. Older machines had 25 to 30, the best have 10 to 15.
	Condensing quantity.TemperatureDelta
	// Superheat is that at the suction port, and Subcooling that at the liquid port; 0 is
	// 12 °F and 10 °F.
	Superheat, Subcooling quantity.TemperatureDelta

	// Packaged is a machine in one housing, with short lines; else LineSet is the
	// length between the halves, 0 is 25 ft.
	Packaged bool
	LineSet  quantity.Length
	// HeatPump has an accumulator in the suction line; other machines have one where
	// Accumulator says so.
	HeatPump, Accumulator bool
	// Microchannel is a condenser of flat multiport tubes, which holds less than half of
	// what one of round tubes does.
	Microchannel bool

	// Compressor gives the efficiencies or the map; its Displacement is designed unless
	// there is a map.
	Compressor Compressor
	// ValveGradient is the Gradient of the valve; 0 is 6 °F for a TXV and 1 °F for an
	// EXV. ValveSize is its capacity full open over that at rating; 0 is 1.4.
	ValveGradient quantity.TemperatureDelta
	ValveSize     float64
	// MaxOperating is the valve's MOP, as the dew point; 0 is none.
	MaxOperating quantity.Temperature
	// HeadPressure is the discharge pressure, as its bubble point, that the outdoor fan
	// slows or cycles to hold; 0 is no control.
	HeadPressure quantity.Temperature

	// BlowerPower and FanPower are electric, at rated airflow; 0 is 365 W per 1000 CFM
	// (the default of AHRI 210/240 for a coil without a blower) and 75 W per ton.
	BlowerPower, FanPower quantity.Power
	// HighCutout and LowCutout are the bubble and dew temperatures of the pressure
	// switches; 0 is 150 °F and −4 °F (−20 °C).
	HighCutout, LowCutout quantity.Temperature
}

// DesignResidential returns an ordinary residential split system: the machine of a Spec with
// nothing but these three given. The errors are those of Design.
func DesignResidential(
	r *refrigerant.Refrigerant, capacity quantity.Power, m refrigerant.Metering,
) (*System, error) {
	return Design(Spec{Refrigerant: r, Capacity: capacity, Metering: m})
}

func (s Spec) check() error {
	if len(s.Refrigerant.Composition()) == 0 {
		return refrigerant.ErrNoRefrigerant
	}
	if s.Metering < refrigerant.FixedRestrictor || s.Metering > refrigerant.Capillary {
		return &RangeError{
			Quantity: "metering device", Value: s.Metering,
			Advice: "name it: FixedRestrictor, TXV, EXV or Capillary",
		}
	}
	if err := limit.Within(
		"nominal capacity", s.Capacity, quantity.Tons(0.5), quantity.Tons(30),
		"cooling capacity at the rating conditions",
	); err != nil {
		return err
	}
	tons := s.Capacity.Tons()
	if err := limit.Within(
		"rated airflow", s.Airflow, quantity.CFM(150*tons), quantity.CFM(700*tons),
		"usual is 350 to 450 CFM per ton",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"airflow of the condenser", s.OutdoorAirflow, quantity.CFM(400*tons),
		quantity.CFM(2500*tons), "usual is 700 to 1,200 CFM per ton",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"dew point at the suction port at rating", s.Suction, quantity.Fahrenheit(30),
		quantity.Fahrenheit(58), "usual is 40 to 50 °F",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"condensing above outdoor air at rating", s.Condensing, quantity.FahrenheitDelta(7),
		quantity.FahrenheitDelta(45), "usual is 15 to 30 °F",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"superheat at rating", s.Superheat, quantity.FahrenheitDelta(4),
		quantity.FahrenheitDelta(30), "at the suction port",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"subcooling at rating", s.Subcooling, quantity.FahrenheitDelta(2), s.Condensing*0.85,
		"the liquid cannot leave colder than the outdoor air",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"length of the line set", s.LineSet, quantity.Feet(1), quantity.Feet(250),
		"from the outdoor to the indoor half",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"gradient of the valve", s.ValveGradient, quantity.FahrenheitDelta(0.2),
		quantity.FahrenheitDelta(20), "the rise of superheat from closed to rated",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"size of the valve", quantity.Number(s.ValveSize), 1.02, 4, "full open over rated capacity",
	); err != nil {
		return err
	}
	for _, t := range []struct {
		name string
		v    quantity.Temperature
	}{
		{"bubble point that the head pressure is held at", s.HeadPressure},
		{"dew point at the MOP of the valve", s.MaxOperating},
		{"bubble point of the high-pressure switch", s.HighCutout},
		{"dew point of the low-pressure switch", s.LowCutout},
	} {
		if t.v == 0 {
			continue
		}
		if err := limit.Within(
			t.name, t.v, quantity.Fahrenheit(-40), quantity.Fahrenheit(200),
			"a temperature of saturation; 0 takes the usual one",
		); err != nil {
			return err
		}
	}
	for _, w := range []struct {
		name string
		v    quantity.Power
	}{{"power of the blower", s.BlowerPower}, {"power of the outdoor fan", s.FanPower}} {
		if err := limit.Within(
			w.name, w.v, 0, s.Capacity, "electric power at the rated airflow",
		); err != nil {
			return err
		}
	}
	return s.Compressor.check()
}

func (s Spec) withDefaults() Spec {
	tons := s.Capacity.Tons()
	fill := func(v *float64, value float64) {
		if *v == 0 {
			*v = value
		}
	}
	fill((*float64)(&s.Airflow), float64(quantity.CFM(400*tons)))
	fill((*float64)(&s.OutdoorAirflow), float64(quantity.CFM(950*tons)))
	fill((*float64)(&s.Suction), float64(quantity.Fahrenheit(45)))
	fill((*float64)(&s.Condensing), float64(quantity.FahrenheitDelta(20)))
	fill((*float64)(&s.Superheat), float64(quantity.FahrenheitDelta(12)))
	fill((*float64)(&s.Subcooling), float64(quantity.FahrenheitDelta(10)))
	if s.Packaged {
		fill((*float64)(&s.LineSet), float64(quantity.Feet(5)))
	}
	fill((*float64)(&s.LineSet), float64(quantity.Feet(25)))
	gradient := quantity.FahrenheitDelta(6)
	if s.Metering == refrigerant.EXV {
		gradient = quantity.FahrenheitDelta(1)
	}
	fill((*float64)(&s.ValveGradient), float64(gradient))
	fill(&s.ValveSize, 1.4)
	fill((*float64)(&s.BlowerPower), 0.365*s.Airflow.CFM())
	fill((*float64)(&s.FanPower), 75*tons)
	fill((*float64)(&s.HighCutout), float64(quantity.Fahrenheit(150)))
	fill((*float64)(&s.LowCutout), float64(quantity.Celsius(-20)))
	s.Compressor = s.Compressor.withDefaults()
	return s
}
