package quantity

// GaugePressure is a pressure above the atmosphere around the gauge, in pascals. A negative one is a vacuum.
type GaugePressure float64

var gaugePressureKind = kind{
	name: "gauge pressure",
	units: []unit{
		{symbol: "psig", scale: PSI, also: []string{"psi g", "psi(g)", "psi gauge"}},
		{symbol: "kPag", scale: 1e3, also: []string{"kPa gauge", "kPa(g)", "kPa g"}},
		{symbol: "barg", scale: 1e5, also: []string{"bar gauge", "bar(g)", "bar g"}},
		{symbol: "inHg vac", scale: -inchMercury, also: []string{"inHg vacuum", "in Hg vac", "in. Hg vac"}},
		{symbol: "Pag", scale: 1, also: []string{"Pa gauge", "Pa(g)"}},
	},
	si: 1, ip: 0, siDec: 1, ipDec: 1,
	difference: []unit{
		{symbol: "psi", scale: PSI, also: []string{"psid"}},
		{symbol: "kPa", scale: 1e3},
		{symbol: "bar", scale: 1e5},
		{symbol: "inHg", scale: inchMercury},
		{symbol: "Pa", scale: 1},
	},
}

// PSIG returns the gauge pressure of v pounds-force per square inch gauge.
func PSIG(v float64) GaugePressure { return GaugePressure(v * PSI) }

// PSIG returns g in pounds-force per square inch gauge.
func (g GaugePressure) PSIG() float64 { return float64(g) / PSI }

// KilopascalsGauge returns the gauge pressure of v kilopascals gauge.
func KilopascalsGauge(v float64) GaugePressure { return GaugePressure(v * 1e3) }

// KilopascalsGauge returns g in kilopascals gauge.
func (g GaugePressure) KilopascalsGauge() float64 { return float64(g) / 1e3 }

// BarGauge returns the gauge pressure of v bars gauge.
func BarGauge(v float64) GaugePressure { return GaugePressure(v * 1e5) }

// BarGauge returns g in bars gauge.
func (g GaugePressure) BarGauge() float64 { return float64(g) / 1e5 }

// Absolute returns the absolute pressure of g where the atmosphere is atm. Take
// atm from a barometer, or from AtmosphereAt the elevation of the site.
func (g GaugePressure) Absolute(atm Pressure) Pressure { return Pressure(g) + atm }

// PlusMinus pairs g with the standard uncertainty u.
func (g GaugePressure) PlusMinus(u GaugePressure) Uncertain[GaugePressure] {
	return Uncertain[GaugePressure]{g, abs(float64(u))}
}

// ParseGaugePressure reads a gauge pressure with its unit. The error is a *ParseError.
func ParseGaugePressure(text string) (GaugePressure, error) {
	si, err := gaugePressureKind.parse(text)
	return GaugePressure(si), err
}

// Format shows g in the unit that sys has for it, rounded for reading.
func (g GaugePressure) Format(sys System) string { return gaugePressureKind.format(float64(g), sys) }

// String is Format(SI).
func (g GaugePressure) String() string { return g.Format(SI) }

// MarshalText writes g in psig, exactly.
func (g GaugePressure) MarshalText() ([]byte, error) {
	return gaugePressureKind.appendExact(nil, float64(g))
}

// UnmarshalText is ParseGaugePressure.
func (g *GaugePressure) UnmarshalText(text []byte) error {
	si, err := gaugePressureKind.parse(string(text))
	if err != nil {
		return err
	}
	*g = GaugePressure(si)
	return nil
}

func (GaugePressure) kind() *kind { return &gaugePressureKind }
