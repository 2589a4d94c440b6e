package cycle

import "github.com/satline/satline/internal/enum"

// Metering is an expansion device. Packages satline and charge have the same names, and
// count a capillary as a fixed restrictor, for it is charged as one.
type Metering int

// The expansion devices.
const (
	// FixedRestrictor is a piston or short tube: see ShortTube.
	FixedRestrictor Metering = iota + 1
	// TXV is a thermostatic expansion valve, which holds the superheat at its bulb: see
	// ExpansionValve.
	TXV
	// EXV is an electronic expansion valve, which holds it without the droop of a TXV.
	EXV
	// Capillary is a long thin tube: see CapillaryTube.
	Capillary
)

var meteringNames = []string{"not stated", "fixed restrictor", "TXV", "EXV", "capillary tube"}

// String returns "fixed restrictor", "TXV", "EXV" or "capillary tube".
func (m Metering) String() string { return enum.Name(meteringNames, m) }

// MarshalText writes the name of String; what is no metering device is an error.
func (m Metering) MarshalText() ([]byte, error) {
	return enum.Text("metering device", meteringNames, m)
}

// UnmarshalText accepts the names that String returns.
func (m *Metering) UnmarshalText(text []byte) error {
	return enum.Parse("metering device", meteringNames, text, m)
}
