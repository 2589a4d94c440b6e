package airside

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Coil is a cooling coil, known by two conductances: it predicts leaving air
// and surface temperature at another entering air, airflow and refrigerant
// temperature. Make one with [FitCoil] from a measurement of the coil itself, or
// with [RatedCoil] from its capacity.
//
// The model is the enthalpy potential with a Lewis number of 1 at one
// refrigerant temperature (Threlkeld, "Thermal Environmental Engineering", 2nd
// ed. 1970, chapter 12; Braun, Klein and Mitchell, ASHRAE Transactions 95(2),
// 1989), integrated along a coil that is dry, then wet where its surface is
// below the dew point. The air-side conductance rises with the mass flow to the
// power 0.672 (Gray and Webb, 8th International Heat Transfer Conference, 1986;
// from memory), the refrigerant side is taken as constant. The superheated end of
// a coil is not told apart: the more superheat, the colder the refrigerant looks
// that would do the same.
type Coil struct {
	// AirSide is between air and surface at RatedDryAir.
	AirSide quantity.Conductance `json:"airSide"`
	// RefrigerantSide is between surface and refrigerant, the metal counted in.
	RefrigerantSide quantity.Conductance `json:"refrigerantSide"`
	RatedDryAir     quantity.MassFlow    `json:"ratedDryAir"`
	// Assumed is what was taken for granted where the measurement did not
	// give it, "assumed.sides"; empty where nothing was.
	Assumed fact.Code `json:"assumed,omitzero"`
}

// usualSideRatio is the refrigerant-side over the air-side conductance of a
// finned tube coil where only their sum is known: two thirds of the resistance
// of the dry coil is on the air side. Common practice, no source; with it a rated
// coil meets the table of target splits best.
const usualSideRatio = 2.0

// What is taken for granted of a coil.
const (
	assumedSides      fact.Code = "assumed.sides"
	assumedSidesRated fact.Code = "assumed.sides-and-rating" // refrigerant at 45 °F when rated
	assumedSidesDry   fact.Code = "assumed.sides-less-where-wet"
)

// A Passage is what a coil does to a stream of air.
type Passage struct {
	Entering psychro.Air `json:"entering"`
	Leaving  psychro.Air `json:"leaving"`
	// Split is entering less leaving dry bulb.
	Split    quantity.TemperatureDelta `json:"split"`
	Capacity Capacity                  `json:"capacity"`
	// Surface is the coldest surface, where the air leaves; SurfaceEntering the
	// warmest.
	Surface         quantity.Temperature `json:"surface"`
	SurfaceEntering quantity.Temperature `json:"surfaceEntering"`
	// WetShare is the share of the coil that is wet, 0 to 1.
	WetShare float64 `json:"wetShare"`
}

// Through predicts what the coil does to a flow of air, counted at its entering
// condition, with refrigerant at a temperature. A refrigerant warmer than the
// air heats it. The error is a *RangeError, also where the coil would make fog,
// which the model does not follow: in air far hotter and damper than that of a
// building, on a surface far colder than it.
func (c Coil) Through(
	entering psychro.Air, flow quantity.VolumeFlow, refrigerant quantity.Temperature,
) (Passage, error) {
	if err := c.check(); err != nil {
		return Passage{}, err
	}
	if err := checkPass(entering, flow, refrigerant); err != nil {
		return Passage{}, err
	}
	in := coil.NewAir(entering)
	r := c.solve(&in, float64(entering.DryAirFlow(flow)), float64(refrigerant))
	leaving, err := entering.Model().
		FromHumidityRatio(quantity.Temperature(r.T), max(0, r.W), entering.Pressure())
	if err != nil {
		return Passage{}, fog(refrigerant)
	}
	capacity, err := CapacityOf(entering, leaving, flow)
	if err != nil {
		return Passage{}, fog(refrigerant)
	}
	return Passage{
		Entering: entering, Leaving: leaving,
		Split:           entering.DryBulb().Sub(leaving.DryBulb()),
		Capacity:        capacity,
		Surface:         quantity.Temperature(r.Surface),
		SurfaceEntering: quantity.Temperature(r.SurfaceEntering),
		WetShare:        r.Wet,
	}, nil
}

// fog is the error of air that a coil takes to where it is no air: the share that
// meets the cold surface and the share that passes hold more water together than
// their mean can.
func fog(refrigerant quantity.Temperature) error {
	return &RangeError{
		Quantity: "refrigerant temperature", Value: refrigerant,
		Advice: "in air so much hotter and so damp the coil makes fog, which the model does not " +
			"follow; give cooler or drier air, or a refrigerant nearer to it",
	}
}

func (c Coil) solve(in *coil.Air, dryAir, refrigerant float64) coil.Result {
	return in.Through(dryAir, refrigerant, c.airUA(dryAir), float64(c.RefrigerantSide))
}

// airUA is the conductance on the side of the air at a flow.
func (c Coil) airUA(dryAir float64) float64 {
	ua := coil.AirUA(float64(c.AirSide), dryAir, float64(c.RatedDryAir))
	if dryAir == 0 {
		// Conductance falls slower than the flow, so air that all but stands
		// comes to the refrigerant: any conductance gives that limit.
		ua = float64(c.AirSide)
	}
	return ua
}

func (c Coil) check() error {
	const most = 1e7
	for _, side := range []struct {
		name  string
		value quantity.Conductance
	}{{"air-side conductance", c.AirSide}, {"refrigerant-side conductance", c.RefrigerantSide}} {
		if !(side.value > 0 && side.value <= most) {
			return &RangeError{
				Quantity: side.name,
				Value:    side.value,
				Min:      quantity.WattsPerKelvin(0),
				Max:      quantity.WattsPerKelvin(most),
				Advice:   "make the coil with FitCoil or RatedCoil",
			}
		}
	}
	if !(c.RatedDryAir > 0 && c.RatedDryAir <= most) {
		return &RangeError{
			Quantity: "rated dry air flow",
			Value:    c.RatedDryAir,
			Min:      quantity.MassFlow(0),
			Advice:   "make the coil with FitCoil or RatedCoil",
		}
	}
	return nil
}

func checkPass(
	entering psychro.Air, flow quantity.VolumeFlow, refrigerant quantity.Temperature,
) error {
	if err := checkPair(entering, entering); err != nil {
		return err
	}
	if err := limit.Within(
		"airflow", flow, 0, largestFlow, "it is the volume per time at the entering condition",
	); err != nil {
		return err
	}
	return limit.Within(
		"refrigerant temperature", refrigerant, quantity.Celsius(-80), quantity.Celsius(90),
		"take the dew temperature at the suction pressure; "+
			"the pressure counts from the atmosphere of the site",
	)
}

// RatedCoil returns a coil of common make for a capacity: it gives that total
// capacity to air of 80 °F dry bulb and 67 °F wet bulb at sea level, the usual
// rating condition (AHRI Standard 210/240, test A), with refrigerant at 45 °F
// (common practice, no source). Use it where nothing was measured: at 400 CFM
// per ton, with a compressor that gains 2 % per °F and the heat of a blower, its
// split is that of Table RA3.2-3 within 1.9 °F from 72 to 82 °F dry bulb and 58
// to 70 °F wet bulb. The error is a *RangeError where the airflow could not carry
// the capacity.
func RatedCoil(total quantity.Power, airflow quantity.VolumeFlow) (Coil, error) {
	if err := limit.Within(
		"capacity", total, quantity.Watts(100), quantity.Kilowatts(1000),
		"it is the nominal total capacity",
	); err != nil {
		return Coil{}, err
	}
	entering, err := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	if err != nil {
		return Coil{}, err
	}
	const rating = quantity.Temperature(7.2222222222 + 273.15) // 45 °F
	if err := checkPass(entering, airflow, rating); err != nil {
		return Coil{}, err
	}
	in := coil.NewAir(entering)
	m := float64(entering.DryAirFlow(airflow))
	heat := func(lnUA float64) float64 {
		ua := math.Exp(lnUA)
		return in.Through(m, float64(rating), ua, usualSideRatio*ua).Heat
	}
	const usual = 0.1 // W/K per W, near what 400 CFM per ton comes to
	ln, ok := risingFrom(
		math.Log(usual*float64(total)), func(ln float64) float64 { return heat(ln) - float64(total) },
		math.Log(1), math.Log(1e6), 1e-12*float64(total),
	)
	if !ok {
		return Coil{}, &RangeError{
			Quantity: "airflow for the capacity", Value: airflow,
			Advice: fmt.Sprintf(
				"air of 80/67 °F over refrigerant of 45 °F gives up to %v at this airflow; "+
					"400 CFM per ton is usual",
				quantity.Power(heat(math.Log(1e6))),
			),
		}
	}
	ua := quantity.Conductance(math.Exp(ln))
	return Coil{
		AirSide:         ua,
		RefrigerantSide: usualSideRatio * ua,
		RatedDryAir:     quantity.MassFlow(m),
		Assumed:         assumedSidesRated,
	}, nil
}
