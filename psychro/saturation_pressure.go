package psychro

import "github.com/satline/satline/quantity"

// A Saturation is an equation for the pressure at which pure water is in
// equilibrium with its vapor, over liquid water from the triple point up and over
// ice below it. From −60 to 200 °C the three agree to 3.3 parts in 10⁴.
type Saturation uint8

const (
	// HylandWexler is the equation of ASHRAE Handbook Fundamentals, chapter 1:
	// R. W. Hyland and A. Wexler, ASHRAE Transactions 89(2A), 1983, p. 500.
	HylandWexler Saturation = iota
	// IAPWS is the international standard: over water IAPWS-95, R6-95(2018), by
	// equal Gibbs energies of its phases; over ice R14-08(2011).
	IAPWS
	// IF97 is the international standard for industrial use, R7-97(2012), over
	// water, and R14-08(2011) over ice: what RP-1485 and the tables of ASHRAE
	// Handbook Fundamentals since 2009 are computed with.
	IF97
)

// String returns "Hyland-Wexler", "IAPWS" or "IF97".
func (s Saturation) String() string {
	return nameOf(saturationNames[:], s, "unknown saturation equation")
}

// MarshalText writes the name of String; what is none of the equations is an error.
func (s Saturation) MarshalText() ([]byte, error) {
	return writeName("saturation equation", saturationNames[:], s)
}

// UnmarshalText reads the names that String returns.
func (s *Saturation) UnmarshalText(text []byte) error {
	return readName("saturation equation", saturationNames[:], text, s)
}

var saturationNames = [...]string{HylandWexler: "Hyland-Wexler", IAPWS: "IAPWS", IF97: "IF97"}

func (s Saturation) boundary() *boundary {
	switch s {
	case IAPWS:
		return iapwsBoundary()
	case IF97:
		return if97Boundary()
	}
	return hylandWexlerBoundary()
}

// Pressure returns the saturation pressure at t, from −100 to 200 °C; beyond, it
// is a *RangeError.
func (s Saturation) Pressure(t quantity.Temperature) (quantity.Pressure, error) {
	if err := checkTemperature("saturation temperature", float64(t)); err != nil {
		return 0, err
	}
	return quantity.Pressure(s.boundary().pressure.at(float64(t))), nil
}

// Temperature returns the temperature at which the saturation pressure is p: the
// boiling point, or the frost point. It is a *RangeError where Pressure would be.
func (s Saturation) Temperature(p quantity.Pressure) (quantity.Temperature, error) {
	b := s.boundary()
	low, high := b.lowest, b.pressure.at(maxTemperature)
	if !(float64(p) >= low*(1-1e-12) && float64(p) <= high*(1+1e-12)) {
		return 0, &RangeError{
			Quantity: "saturation pressure", Value: p, Min: quantity.Pressure(low),
			Max:    quantity.Pressure(high),
			Advice: "these are the pressures at −100 and 200 °C, where the equations end",
		}
	}
	return quantity.Temperature(b.temperatureAt(float64(p))), nil
}
