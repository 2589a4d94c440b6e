package quantity

// HeatingValue is the heat that a volume of fuel gas gives when it burns, in
// joules per cubic meter. The gas utility states it for the gas as it is
// metered.
type HeatingValue float64

var heatingValueKind = kind{
	name: "heating value",
	units: []unit{
		{symbol: "MJ/m³", scale: 1e6, also: []string{"MJ/m3"}},
		{symbol: "Btu/ft³", scale: BTU / (Foot * Foot * Foot), also: []string{"Btu/ft3", "Btu/cu ft"}},
		{symbol: "J/m³", scale: 1, also: []string{"J/m3"}},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 0,
}

// BtuPerCubicFoot returns the heating value of v British thermal units per cubic
// foot.
func BtuPerCubicFoot(v float64) HeatingValue { return HeatingValue(v * (BTU / (Foot * Foot * Foot))) }

// BtuPerCubicFoot returns h in British thermal units per cubic foot.
func (h HeatingValue) BtuPerCubicFoot() float64 { return float64(h) / (BTU / (Foot * Foot * Foot)) }

// MegajoulesPerCubicMeter returns the heating value of v megajoules per cubic
// meter.
func MegajoulesPerCubicMeter(v float64) HeatingValue { return HeatingValue(v * 1e6) }

// MegajoulesPerCubicMeter returns h in megajoules per cubic meter.
func (h HeatingValue) MegajoulesPerCubicMeter() float64 { return float64(h) / 1e6 }

// PlusMinus pairs h with the standard uncertainty u.
func (h HeatingValue) PlusMinus(u HeatingValue) Uncertain[HeatingValue] {
	return Uncertain[HeatingValue]{h, abs(float64(u))}
}

// ParseHeatingValue reads a heating value with its unit. The error is a
// *ParseError.
func ParseHeatingValue(text string) (HeatingValue, error) {
	si, err := heatingValueKind.parse(text)
	return HeatingValue(si), err
}

// Format shows h in the unit that sys has for it, rounded for reading.
func (h HeatingValue) Format(sys System) string { return heatingValueKind.format(float64(h), sys) }

// String is Format(SI).
func (h HeatingValue) String() string { return h.Format(SI) }

// MarshalText writes h in MJ/m³, exactly.
func (h HeatingValue) MarshalText() ([]byte, error) {
	return heatingValueKind.appendExact(nil, float64(h))
}

// UnmarshalText is ParseHeatingValue.
func (h *HeatingValue) UnmarshalText(text []byte) error {
	si, err := heatingValueKind.parse(string(text))
	if err != nil {
		return err
	}
	*h = HeatingValue(si)
	return nil
}

func (HeatingValue) kind() *kind { return &heatingValueKind }
