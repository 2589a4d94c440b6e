package airside

import (
	"fmt"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// RPM is a fan's speed in turns per minute.
type RPM float64

// String returns the speed with its unit.
func (n RPM) String() string { return fmt.Sprintf("%.0f rpm", float64(n)) }

// FanSpeedReading is a fan's speed now and at a point where its flow was
// measured, in the same ducts with the same filter and coil.
type FanSpeedReading struct {
	Known      quantity.Uncertain[quantity.VolumeFlow] `json:"known"`
	KnownSpeed RPM                                     `json:"knownSpeed"`
	Speed      RPM                                     `json:"speed"`
	SpeedStd   RPM                                     `json:"speedStd,omitzero"`
	Air        AirAt                                   `json:"air"`
}

// Airflow returns the flow by the first fan law: in one system the flow at the
// condition of the air goes with the speed, whatever the density (ANSI/AMCA
// Standard 210, fan laws; from memory). A speed changes the load of the motor
// with its third power, see [FanLaws]. The error is a *RangeError.
func (f FanSpeedReading) Airflow() (Airflow, error) {
	if err := f.Air.check("duct"); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"known flow", f.Known, quantity.CFM(1), largestFlow, "measure it once by another method",
	); err != nil {
		return Airflow{}, err
	}
	if err := checkSpeed("known speed", f.KnownSpeed); err != nil {
		return Airflow{}, err
	}
	if err := checkSpeed("speed", f.Speed); err != nil {
		return Airflow{}, err
	}
	if !(f.SpeedStd >= 0 && f.SpeedStd <= maxSpeed) {
		return Airflow{}, &RangeError{
			Quantity: "standard uncertainty of the speed",
			Value:    f.SpeedStd,
			Min:      RPM(0),
			Advice:   "a tachometer is good to about 1 rpm",
		}
	}
	var x, std inputs
	var names [maxInputs]string
	f.Air.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(f.Known.Value), f.Known.Std, "known"
	x[4], std[4], names[4] = float64(f.Speed), float64(f.SpeedStd), "speed"
	return measureAirflow(ByFanSpeed, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		air, err := f.Air.state(&x)
		return x[3] * x[4] / float64(f.KnownSpeed), air, err
	})
}

const maxSpeed RPM = 30000

func checkSpeed(name string, n RPM) error {
	return limit.Within(name, n, 1, maxSpeed, "it is turns per minute of the fan, not of the motor")
}
