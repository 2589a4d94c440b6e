package main

import (
	"fmt"

	"github.com/satline/satline/quantity"
)

// At is the atmosphere of a question: the barometer, or the standard atmosphere
// at an elevation, or that at sea level.
type At struct {
	// Elevation above sea level; the atmosphere follows from it.
	Elevation *quantity.Length `json:"elevation,omitempty"`
	// Barometer is the pressure of the air as read at the site itself.
	Barometer *quantity.Pressure `json:"barometer,omitempty"`
}

func (a At) atmosphere() (quantity.Pressure, error) {
	switch {
	case a.Barometer != nil && a.Elevation != nil:
		return 0, &questionError{"barometer", "give elevation or barometer, not both"}
	case a.Barometer != nil:
		if p := *a.Barometer; !(p >= quantity.Kilopascals(50) && p <= quantity.Kilopascals(110)) {
			return 0, &questionError{"barometer", fmt.Sprintf("%v is out of range; valid from 50.0 kPa to 110.0 kPa, as read at the site itself", p)}
		}
		return *a.Barometer, nil
	case a.Elevation != nil:
		if e := *a.Elevation; !(e >= quantity.Meters(-450) && e <= quantity.Meters(5500)) {
			return 0, &questionError{"elevation", fmt.Sprintf("%v is out of range; valid from -450.00 m to 5500.00 m (-1476 ft to 18045 ft)", e)}
		}
		return quantity.AtmosphereAt(*a.Elevation), nil
	}
	return quantity.StandardAtmosphere, nil
}
