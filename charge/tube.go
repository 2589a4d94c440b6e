package charge

import (
	"fmt"
	"math"
	"strings"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
)

// A Temper is how a copper tube was finished, which decides its wall.
type Temper int

// The tempers of ASTM B280.
const (
	// Annealed tube comes soft, in coils: line sets.
	Annealed Temper = iota + 1
	// Drawn tube comes hard, in straight lengths.
	Drawn
)

// String returns "annealed" or "drawn".
func (t Temper) String() string { return enum.Name(temperNames, t) }

// MarshalText writes the name of the temper.
func (t Temper) MarshalText() ([]byte, error) { return enum.Text("temper", temperNames, t) }

// UnmarshalText reads what MarshalText writes.
func (t *Temper) UnmarshalText(text []byte) error {
	return enum.Parse("temper", temperNames, text, t)
}

var temperNames = []string{"not-stated", "annealed", "drawn"}

// A Tube is a copper tube for refrigerant by its outside diameter and wall. Air
// conditioning tube is named by its true outside diameter, plumbing tube is not.
type Tube struct {
	Outside quantity.Length
	Wall    quantity.Length
}

// Bore returns the inside diameter, and 0 of a tube that is all wall.
func (t Tube) Bore() quantity.Length { return max(0, finite.OrZero(t.Outside-2*t.Wall)) }

// VolumeOf returns the inside volume of a length of t, and 0 of what is no length.
func (t Tube) VolumeOf(length quantity.Length) quantity.Volume {
	bore := float64(t.Bore())
	return finite.OrZero(quantity.Volume(math.Pi / 4 * bore * bore * float64(length)))
}

// Tubes returns the tubes of ASTM B280 in a temper, smallest first; none for a
// temper that does not exist.
func Tubes(temper Temper) []Tube {
	var out []Tube
	for _, s := range tubeSizes {
		if wall := s.wall(temper); wall > 0 {
			out = append(out, Tube{quantity.Inches(s.outside), quantity.Inches(wall)})
		}
	}
	return out
}

// TubeOf returns the tube of ASTM B280 with an outside diameter, given to a
// quarter of a millimeter: 3/8 in and 9.5 mm are the same. The error is a
// *RangeError that lists the sizes; make a Tube of its diameter and wall for
// other pipe.
func TubeOf(outside quantity.Length, temper Temper) (Tube, error) {
	const near = quantity.Length(0.25e-3)
	tubes := Tubes(temper)
	for _, t := range tubes {
		if d := t.Outside - outside; d >= -near && d <= near {
			return t, nil
		}
	}
	if len(tubes) == 0 {
		return Tube{}, &RangeError{
			Quantity: "temper of the tube",
			Value:    temper,
			Advice:   "it is annealed in coils and drawn in straight lengths",
		}
	}
	var sizes []string
	for _, t := range tubes {
		sizes = append(sizes, fmt.Sprintf("%.5g", t.Outside.Inches()))
	}
	return Tube{}, &RangeError{
		Quantity: "outside diameter of a tube", Value: across(outside),
		Advice: "ASTM B280 has, in inches, " + strings.Join(
			sizes, ", ",
		) + "; measure across the outside, without insulation",
	}
}

// across shows a length as a diameter.
type across quantity.Length

// String returns millimeters and inches.
func (a across) String() string {
	l := quantity.Length(a)
	return fmt.Sprintf("%.2f mm (%.3f in)", l.Millimeters(), l.Inches())
}

func (t Tube) check() error {
	const largest = quantity.Length(0.3)
	if !(t.Outside > 0 && t.Outside <= largest && t.Wall > 0 && t.Bore() > 0) {
		return &RangeError{
			Quantity: "bore of the tube",
			Value:    across(t.Bore()),
			Min:      across(0),
			Max:      across(largest),
			Advice:   "give outside diameter and wall, or take the tube from TubeOf",
		}
	}
	return nil
}
