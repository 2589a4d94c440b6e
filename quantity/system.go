package quantity

import "strconv"

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

// MarshalText writes "IP" or "SI"; another value is a *NameError.
func (s System) MarshalText() ([]byte, error) {
	if s != IP && s != SI {
		return nil, noSystem(strconv.Itoa(int(s)))
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads "IP" or "SI", in either case. The error is a *NameError.
func (s *System) UnmarshalText(text []byte) error {
	switch string(text) {
	case "IP", "ip":
		*s = IP
	case "SI", "si":
		*s = SI
	default:
		return noSystem(string(text))
	}
	return nil
}

func noSystem(given string) error {
	return &NameError{Of: "system of units", Given: given, Known: []string{"IP", "SI"}}
}
