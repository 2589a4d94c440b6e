package cycle

import (
	"fmt"
	"strings"
)

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

var meteringNames = [...]string{"not stated", "fixed restrictor", "TXV", "EXV", "capillary tube"}

// String returns "fixed restrictor", "TXV", "EXV" or "capillary tube".
func (m Metering) String() string {
	if m < FixedRestrictor || m > Capillary {
		return meteringNames[0]
	}
	return meteringNames[m]
}

// MarshalText implements encoding.TextMarshaler.
func (m Metering) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText accepts the names that String returns.
func (m *Metering) UnmarshalText(text []byte) error {
	for i := range Capillary + 1 {
		if strings.EqualFold(meteringNames[i], string(text)) {
			*m = i
			return nil
		}
	}
	return fmt.Errorf("metering device %.40q is not known; write one of %s", text, strings.Join(meteringNames[1:], ", "))
}
