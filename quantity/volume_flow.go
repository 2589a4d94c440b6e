package quantity

// VolumeFlow is a volume flow in cubic meters per second.
type VolumeFlow float64

var volumeFlowKind = kind{
	name: "volume flow",
	units: []unit{
		{symbol: "L/s", scale: 1e-3, also: []string{"l/s"}},
		{symbol: "CFM", scale: Foot * Foot * Foot / 60, also: []string{"cfm", "ft3/min", "ft³/min"}},
		{symbol: "m³/h", scale: 1.0 / 3600, also: []string{"m3/h", "m3/hr"}},
		{symbol: "m³/s", scale: 1, also: []string{"m3/s"}},
	},
	si: 0, ip: 1, siDec: 0, ipDec: 0,
}

// LitersPerSecond returns the volume flow of v liters per second.
func LitersPerSecond(v float64) VolumeFlow { return VolumeFlow(v * 1e-3) }

// LitersPerSecond returns v in liters per second.
func (v VolumeFlow) LitersPerSecond() float64 { return float64(v) / 1e-3 }

// CFM returns the volume flow of v cubic feet per minute at the condition of the air itself.
func CFM(v float64) VolumeFlow { return VolumeFlow(v * (Foot * Foot * Foot / 60)) }

// CFM returns v in cubic feet per minute at the condition of the air itself.
func (v VolumeFlow) CFM() float64 { return float64(v) / (Foot * Foot * Foot / 60) }

// CubicMetersPerHour returns the volume flow of v cubic meters per hour.
func CubicMetersPerHour(v float64) VolumeFlow { return VolumeFlow(v * (1.0 / 3600)) }

// CubicMetersPerHour returns v in cubic meters per hour.
func (v VolumeFlow) CubicMetersPerHour() float64 { return float64(v) / (1.0 / 3600) }

// CubicMetersPerSecond returns the volume flow of v cubic meters per second.
func CubicMetersPerSecond(v float64) VolumeFlow { return VolumeFlow(v) }

// CubicMetersPerSecond returns v in cubic meters per second.
func (v VolumeFlow) CubicMetersPerSecond() float64 { return float64(v) }

// PlusMinus pairs v with the standard uncertainty u.
func (v VolumeFlow) PlusMinus(u VolumeFlow) Uncertain[VolumeFlow] {
	return Uncertain[VolumeFlow]{v, abs(float64(u))}
}

// ParseVolumeFlow reads a volume flow with its unit. The error is a *ParseError.
func ParseVolumeFlow(text string) (VolumeFlow, error) {
	si, err := volumeFlowKind.parse(text)
	return VolumeFlow(si), err
}

// Format shows v in the unit that sys has for it, rounded for reading.
func (v VolumeFlow) Format(sys System) string { return volumeFlowKind.format(float64(v), sys) }

// String is Format(SI).
func (v VolumeFlow) String() string { return v.Format(SI) }

// MarshalText writes v in L/s, exactly.
func (v VolumeFlow) MarshalText() ([]byte, error) { return volumeFlowKind.appendExact(nil, float64(v)) }

// UnmarshalText is ParseVolumeFlow.
func (v *VolumeFlow) UnmarshalText(text []byte) error {
	si, err := volumeFlowKind.parse(string(text))
	if err != nil {
		return err
	}
	*v = VolumeFlow(si)
	return nil
}

func (VolumeFlow) kind() *kind { return &volumeFlowKind }
