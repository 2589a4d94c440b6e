package quantity

// Power is a rate of energy in watts: heat moved or electricity used.
type Power float64

var powerKind = kind{
	name: "power",
	units: []unit{
		{symbol: "kW", scale: 1e3, also: []string{"kilowatt", "kilowatts"}},
		{symbol: "Btu/h", scale: BTU / 3600, also: []string{"Btu/hr", "Btuh", "Btu per hour"}},
		{symbol: "ton", scale: 12000 * BTU / 3600, also: []string{"tons", "TR", "ton of refrigeration", "tons of refrigeration"}},
		{symbol: "kBtu/h", scale: 1000 * BTU / 3600, also: []string{"kBtuh", "kBtu/hr", "MBH"}},
		{symbol: "hp", scale: 745.69987158227022},
		{symbol: "W", scale: 1, also: []string{"watt", "watts"}},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 0,
}

// Kilowatts returns the power of v kilowatts.
func Kilowatts(v float64) Power { return Power(v * 1e3) }

// Kilowatts returns p in kilowatts.
func (p Power) Kilowatts() float64 { return float64(p) / 1e3 }

// BtuPerHour returns the power of v British thermal units per hour.
func BtuPerHour(v float64) Power { return Power(v * (BTU / 3600)) }

// BtuPerHour returns p in British thermal units per hour.
func (p Power) BtuPerHour() float64 { return float64(p) / (BTU / 3600) }

// Tons returns the power of v tons of refrigeration, 12,000 Btu/h each.
func Tons(v float64) Power { return Power(v * (12000 * BTU / 3600)) }

// Tons returns p in tons of refrigeration, 12,000 Btu/h each.
func (p Power) Tons() float64 { return float64(p) / (12000 * BTU / 3600) }

// Watts returns the power of v watts.
func Watts(v float64) Power { return Power(v) }

// Watts returns p in watts.
func (p Power) Watts() float64 { return float64(p) }

// PlusMinus pairs p with the standard uncertainty u.
func (p Power) PlusMinus(u Power) Uncertain[Power] { return Uncertain[Power]{p, abs(float64(u))} }

// ParsePower reads a power with its unit. The error is a *ParseError.
func ParsePower(text string) (Power, error) {
	si, err := powerKind.parse(text)
	return Power(si), err
}

// Format shows p in the unit that sys has for it, rounded for reading.
func (p Power) Format(sys System) string { return powerKind.format(float64(p), sys) }

// String is Format(SI).
func (p Power) String() string { return p.Format(SI) }

// MarshalText writes p in kW, exactly.
func (p Power) MarshalText() ([]byte, error) { return powerKind.appendExact(nil, float64(p)) }

// UnmarshalText is ParsePower.
func (p *Power) UnmarshalText(text []byte) error {
	si, err := powerKind.parse(string(text))
	if err != nil {
		return err
	}
	*p = Power(si)
	return nil
}

func (Power) kind() *kind { return &powerKind }
