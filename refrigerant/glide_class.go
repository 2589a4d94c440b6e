package refrigerant

import "github.com/satline/satline/quantity"

// A GlideClass says how far a refrigerant's dew point is from its bubble point,
// and so how much care its two columns need.
type GlideClass string

const (
	// PureFluid has one saturation temperature.
	PureFluid GlideClass = "pure fluid"
	// Azeotropic glides by less than 0.1 K at its boiling point at one atmosphere
	// and may be charged as vapor.
	Azeotropic GlideClass = "azeotropic"
	// NearAzeotropic glides by less than 1 K: one column does for most work,
	// but charge as liquid.
	NearAzeotropic GlideClass = "near-azeotropic"
	// Zeotropic glides by 1 K and more: dew column for superheat, bubble column
	// for subcooling, and charge as liquid only.
	Zeotropic GlideClass = "zeotropic"
)

// GlideClass classes r by its glide at 101.325 kPa, or, where r does not boil at
// that pressure, at its lowest saturation temperature. The bounds of 0.1 and 1 K
// are this package's own; Standard 34 numbers blends 400 and up as zeotropes and
// 500 and up as azeotropes without a figure.
func (r *Refrigerant) GlideClass() (GlideClass, error) {
	if r.Pure() {
		return PureFluid, nil
	}
	p := quantity.StandardAtmosphere
	if low, err := r.BubblePressure(r.Limits().MinTemperature); err != nil {
		return "", err
	} else if low > p {
		p = low
	}
	glide, err := r.Glide(p)
	switch {
	case err != nil:
		return "", err
	case glide < 0.1:
		return Azeotropic, nil
	case glide < 1:
		return NearAzeotropic, nil
	}
	return Zeotropic, nil
}
