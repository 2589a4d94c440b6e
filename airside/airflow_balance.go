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

// RefrigerantBalance is a capacity known from the refrigerant side, with the air
// before and after the coil.
type RefrigerantBalance struct {
	// Capacity of the coil, see [RefrigerantCapacity].
	Capacity   quantity.Uncertain[quantity.Power]    `json:"capacity"`
	Return     AirReading                            `json:"return"`
	Supply     AirReading                            `json:"supply"`
	Atmosphere quantity.Uncertain[quantity.Pressure] `json:"atmosphere"`
}

// Airflow returns the flow, counted at the return condition, that carries the
// capacity. The error is a *RangeError where the air is not cooled.
func (b RefrigerantBalance) Airflow() (Airflow, error) {
	r := CapacityReadings{Return: b.Return, Supply: b.Supply, Atmosphere: b.Atmosphere}
	if err := r.check(); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"capacity on the refrigerant side", b.Capacity, quantity.Watts(10),
		quantity.Kilowatts(10000), "see RefrigerantCapacity",
	); err != nil {
		return Airflow{}, err
	}
	x, std := r.inputs()
	names := capacityReadings
	x[4], std[4], names[4] = float64(b.Capacity.Value), b.Capacity.Std, "capacity"
	return measureAirflow(
		ByRefrigerant,
		x,
		std,
		&names,
		func(x inputs) (float64, psychro.Air, error) {
			entering, leaving, err := r.states(x)
			if err != nil {
				return 0, entering, err
			}
			heat := -float64(coolingProcess(entering, leaving).Heat)
			if !(heat > 0) {
				return 0, entering, &RangeError{
					Quantity: "heat taken from the air",
					Value:    quantity.SpecificEnthalpy(heat),
					Min:      quantity.SpecificEnthalpy(0),
					Advice:   "the air is not cooled: are return and supply swapped?",
				}
			}
			return x[4] / heat * float64(entering.SpecificVolume()), entering, nil
		},
	)
}

// SplitBackwards is a temperature split on a coil that is known.
type SplitBackwards struct {
	Coil Coil `json:"coil"`
	// CoilStd is the relative standard uncertainty of the coil's conductances;
	// zero means 0.10 for one that was fitted and 0.20 for one of which
	// something was assumed (common practice, no source).
	CoilStd     float64                                  `json:"coilStd,omitzero"`
	Return      AirAt                                    `json:"return"`
	Supply      quantity.Uncertain[quantity.Temperature] `json:"supply"`
	Evaporating quantity.Uncertain[quantity.Temperature] `json:"evaporating"`
}

// Airflow returns the flow, counted at the return condition, at which the coil
// cools the air from return to supply: less air is cooled further. It rests on
// the coil being clean and fed with liquid throughout; where the superheat is
// high it reads too much air. The error is a *RangeError where no flow does it.
func (s SplitBackwards) Airflow() (Airflow, error) {
	if err := s.Coil.check(); err != nil {
		return Airflow{}, err
	}
	if err := s.Return.check("return"); err != nil {
		return Airflow{}, err
	}
	if err := airTemperature("supply dry bulb", s.Supply); err != nil {
		return Airflow{}, err
	}
	if err := airTemperature("evaporating temperature", s.Evaporating); err != nil {
		return Airflow{}, err
	}
	coilStd, err := s.Coil.relativeStd(s.CoilStd)
	if err != nil {
		return Airflow{}, err
	}
	var x, std inputs
	var names [maxInputs]string
	s.Return.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(s.Supply.Value), s.Supply.Std, "supplyDryBulb"
	x[4], std[4], names[4] = float64(s.Evaporating.Value), s.Evaporating.Std, "evaporating"
	x[5], std[5], names[5] = 1, coilStd, "coil"
	a, err := measureAirflow(BySplit, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		entering, err := s.Return.state(&x)
		if err != nil {
			return 0, entering, err
		}
		c := s.Coil.scaled(x[5])
		in := coil.NewAir(entering)
		leaving := func(ln float64) float64 {
			return c.solve(&in, float64(c.RatedDryAir)*math.Exp(ln), x[4]).T
		}
		ln, ok := rising(leaving, x[3], -4, 3, 1e-11)
		if !ok {
			return 0, entering, &RangeError{
				Quantity: "supply dry bulb",
				Value:    quantity.Temperature(x[3]),
				Min:      quantity.Temperature(leaving(-4)),
				Max:      quantity.Temperature(leaving(3)),
				Advice: fmt.Sprintf(
					"no flow of this air over refrigerant of %v leaves so: "+
						"is the suction pressure of the same moment, or the coil another?",
					quantity.Temperature(x[4]),
				),
			}
		}
		flow := float64(c.RatedDryAir) * math.Exp(ln)
		return flow * float64(entering.SpecificVolume()), entering, nil
	})
	if err == nil && s.Coil.Assumed != "" {
		a.Notes = append(a.Notes, fact.New(s.Coil.Assumed))
	}
	return a, err
}
