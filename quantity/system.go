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

// String returns "IP" or "SI". What is neither shows values as IP does.
func (s System) String() string {
	switch s {
	case IP:
		return "IP"
	case SI:
		return "SI"
	}
	return "unknown system of units"
}

// MarshalText writes "IP" or "SI"; another value is an error.
func (s System) MarshalText() ([]byte, error) {
	if s != IP && s != SI {
		return nil, fmt.Errorf("quantity: unit system %d is neither IP nor SI", int(s))
	}
	return []byte(s.String()), nil
}

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
