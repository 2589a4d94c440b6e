package quantity

import "fmt"

// A System is a set of units to show values in.
type System int

const (
	// IP is inch-pound: °F, psig, CFM, ton, in. w.c.
	IP System = iota
	// SI is metric: °C, kPa, L/s, kW, Pa.
	SI
)

// String returns "IP" or "SI".
func (s System) String() string {
	if s == SI {
		return "SI"
	}
	return "IP"
}

// MarshalText implements encoding.TextMarshaler.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "IP" or "SI", in either case.
func (s *System) UnmarshalText(text []byte) error {
	switch string(text) {
	case "IP", "ip":
		*s = IP
	case "SI", "si":
		*s = SI
	default:
		return fmt.Errorf("quantity: unit system %.20q is neither IP nor SI", text)
	}
	return nil
}
