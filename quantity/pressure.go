package quantity

// Pressure is an absolute pressure in pascals.
type Pressure float64

var pressureKind = kind{
	name: "absolute pressure",
	units: []unit{
		{symbol: "kPa", scale: 1e3, also: []string{"kPa abs", "kPaa"}},
		{symbol: "psia", scale: PSI, also: []string{"psi abs"}},
		{symbol: "bar", scale: 1e5, also: []string{"bara", "bar abs"}},
		{symbol: "inHg", scale: inchMercury, also: []string{"in Hg", "in.Hg", "\"Hg"}},
		{symbol: "micron", scale: micronMercury, also: []string{"microns", "µmHg", "umHg", "µm Hg", "mTorr"}},
		{symbol: "MPa", scale: 1e6, also: []string{"MPa abs"}},
		{symbol: "atm", scale: 101325},
		{symbol: "Pa", scale: 1},
	},
	si: 0, ip: 1, siDec: 1, ipDec: 1,
	// A deep vacuum reads in pascals and microns.
	fineBelow: 500, fineSI: 7, fineIP: 4, fineSIDec: 1, fineIPDec: 0,
	difference: []unit{
		{symbol: "kPa", scale: 1e3},
		{symbol: "psi", scale: PSI, also: []string{"psid"}},
		{symbol: "bar", scale: 1e5},
		{symbol: "inHg", scale: inchMercury},
		{symbol: "micron", scale: micronMercury, also: []string{"microns"}},
		{symbol: "MPa", scale: 1e6},
		{symbol: "atm", scale: 101325},
		{symbol: "Pa", scale: 1},
	},
}

// Kilopascals returns the absolute pressure of v kilopascals.
func Kilopascals(v float64) Pressure { return Pressure(v * 1e3) }

// Kilopascals returns p in kilopascals.
func (p Pressure) Kilopascals() float64 { return float64(p) / 1e3 }

// PSIA returns the absolute pressure of v pounds-force per square inch absolute.
func PSIA(v float64) Pressure { return Pressure(v * PSI) }

// PSIA returns p in pounds-force per square inch absolute.
func (p Pressure) PSIA() float64 { return float64(p) / PSI }

// Bar returns the absolute pressure of v bars.
func Bar(v float64) Pressure { return Pressure(v * 1e5) }

// Bar returns p in bars.
func (p Pressure) Bar() float64 { return float64(p) / 1e5 }

// InchesHg returns the absolute pressure of v inches of mercury (conventional).
func InchesHg(v float64) Pressure { return Pressure(v * inchMercury) }

// InchesHg returns p in inches of mercury (conventional).
func (p Pressure) InchesHg() float64 { return float64(p) / inchMercury }

// Microns returns the absolute pressure of v microns of mercury, the measure of a deep vacuum.
func Microns(v float64) Pressure { return Pressure(v * micronMercury) }

// Microns returns p in microns of mercury, the measure of a deep vacuum.
func (p Pressure) Microns() float64 { return float64(p) / micronMercury }

// Pascals returns the absolute pressure of v pascals.
func Pascals(v float64) Pressure { return Pressure(v) }

// Pascals returns p in pascals.
func (p Pressure) Pascals() float64 { return float64(p) }

// Gauge returns what a gauge shows for p in the atmosphere atm.
func (p Pressure) Gauge(atm Pressure) GaugePressure { return GaugePressure(p - atm) }

// PlusMinus pairs p with the standard uncertainty u.
func (p Pressure) PlusMinus(u Pressure) Uncertain[Pressure] {
	return Uncertain[Pressure]{p, abs(float64(u))}
}

// ParsePressure reads an absolute pressure with its unit. The error is a *ParseError.
func ParsePressure(text string) (Pressure, error) {
	si, err := pressureKind.parse(text)
	return Pressure(si), err
}

// Format shows p in the unit that sys has for it, rounded for reading.
func (p Pressure) Format(sys System) string { return pressureKind.format(float64(p), sys) }

// String is Format(SI).
func (p Pressure) String() string { return p.Format(SI) }

// MarshalText writes p in kPa, exactly.
func (p Pressure) MarshalText() ([]byte, error) { return pressureKind.appendExact(nil, float64(p)) }

// UnmarshalText is ParsePressure.
func (p *Pressure) UnmarshalText(text []byte) error {
	si, err := pressureKind.parse(string(text))
	if err != nil {
		return err
	}
	*p = Pressure(si)
	return nil
}

func (Pressure) kind() *kind { return &pressureKind }
