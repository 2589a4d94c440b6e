package refrigerant

import (
	"strings"

	"github.com/satline/satline/internal/base/enum"
)

// Metering is an expansion device.
type Metering int

// The expansion devices.
const (
	// FixedRestrictor is a piston or a short tube.
	FixedRestrictor Metering = iota + 1
	// TXV is a thermostatic expansion valve, which holds the superheat at its bulb.
	TXV
	// EXV is an electronic expansion valve, which holds it without the droop of a TXV.
	EXV
	// Capillary is a long thin tube.
	Capillary
)

var meteringNames = []string{"not stated", "fixed restrictor", "TXV", "EXV", "capillary tube"}

// String returns "fixed restrictor", "TXV", "EXV" or "capillary tube".
func (m Metering) String() string { return enum.Name(meteringNames, m) }

// Fixed reports whether the opening is always the same: a restrictor or a capillary tube.
func (m Metering) Fixed() bool { return m == FixedRestrictor || m == Capillary }

// MarshalText writes the name of String; what is no metering device is an error.
func (m Metering) MarshalText() ([]byte, error) {
	return enum.Text("metering device", meteringNames, m)
}

// UnmarshalText reads the names that String returns, "not stated" among them, and "piston",
// "orifice", "fixed orifice", "short tube", "fixed", "capillary", "TEV" and "EEV".
func (m *Metering) UnmarshalText(text []byte) error {
	switch strings.ToLower(strings.TrimSpace(string(text))) {
	case "piston", "orifice", "fixed orifice", "short tube", "fixed":
		*m = FixedRestrictor
		return nil
	case "capillary":
		*m = Capillary
		return nil
	case "tev":
		*m = TXV
		return nil
	case "eev":
		*m = EXV
		return nil
	}
	return enum.Parse("metering device", meteringNames, text, m)
}
