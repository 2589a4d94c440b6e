package refrigerant

import (
	"strings"

	"github.com/satline/satline/quantity"
)

// A GlideClass says how far a refrigerant's dew point is from its bubble point,
// and so how much care its two columns need.
type GlideClass string

// The classes.
const (
	// PureFluid has one saturation temperature.
	PureFluid GlideClass = "pure fluid"
	// Azeotropic blends are those that Standard 34 numbers from 500. They boil
	// like a pure fluid, near one pressure exactly so.
	Azeotropic GlideClass = "azeotropic"
	// NearAzeotropic glides by less than 1 K: one column does for most work,
	// but charge as liquid.
	NearAzeotropic GlideClass = "near-azeotropic"
	// Zeotropic glides by 1 K and more: dew column for superheat, bubble column
	// for subcooling, and charge as liquid only.
	Zeotropic GlideClass = "zeotropic"
)

// GlideClass classes r by its number, or by its glide at 101.325 kPa, or where r
// does not boil at that pressure at its lowest saturation temperature. The bound
// of 1 K is this package's own; Standard 34 gives no figure. The error is
// ErrNoRefrigerant, or that of Glide.
func (r *Refrigerant) GlideClass() (GlideClass, error) {
	if r.Pure() {
		return PureFluid, nil
	}
	if r.SafetyGroup() != Unclassified && strings.HasPrefix(r.designation, "R-5") {
		return Azeotropic, nil
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
	case glide < 1:
		return NearAzeotropic, nil
	}
	return Zeotropic, nil
}
