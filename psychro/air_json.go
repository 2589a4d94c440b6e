package psychro

import (
	"encoding/json"
	"fmt"

	"github.com/satline/satline/quantity"
)

// airJSON is an Air as JSON: what it is made of, exactly.
type airJSON struct {
	DryBulb       quantity.Temperature `json:"dryBulb"`
	HumidityRatio float64              `json:"humidityRatio"`
	Pressure      quantity.Pressure    `json:"pressure"`
	Model         Model                `json:"model,omitzero"`
	IcedWetBulb   bool                 `json:"icedWetBulb,omitzero"`
}

// MarshalJSON writes dry bulb, humidity ratio (kilograms per kilogram of dry air)
// and pressure, with the model where it is not PerfectGas, so that reading them back
// gives an equal Air. The zero Air is null.
func (a Air) MarshalJSON() ([]byte, error) {
	if !a.IsValid() {
		return []byte("null"), nil
	}
	return json.Marshal(airJSON{a.DryBulb(), a.w, a.Pressure(), a.model, a.iced})
}

// UnmarshalJSON reads what MarshalJSON writes. What is no state of air is refused
// with the *RangeError of FromHumidityRatio.
func (a *Air) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		return nil
	}
	var in airJSON
	if err := json.Unmarshal(text, &in); err != nil {
		return fmt.Errorf("psychro: air: %w", err)
	}
	read, err := in.Model.FromHumidityRatio(in.DryBulb, in.HumidityRatio, in.Pressure)
	if err != nil {
		return err
	}
	// Iced or wet is a question only where a wick can be iced at all.
	if _, ok := read.IcedWetBulb(); ok && in.IcedWetBulb {
		read.iced = true
	}
	*a = read
	return nil
}
