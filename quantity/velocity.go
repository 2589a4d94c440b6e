package quantity

// Velocity is a speed in meters per second.
type Velocity float64

var velocityKind = kind{
	name: "velocity",
	units: []unit{
		{symbol: "m/s", scale: 1},
		{symbol: "ft/min", scale: Foot / 60, also: []string{"fpm", "FPM"}},
		{symbol: "m/s", scale: 1},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 0,
}

// FeetPerMinute returns the velocity of v feet per minute.
func FeetPerMinute(v float64) Velocity { return Velocity(v * (Foot / 60)) }

// FeetPerMinute returns v in feet per minute.
func (v Velocity) FeetPerMinute() float64 { return float64(v) / (Foot / 60) }

// MetersPerSecond returns the velocity of v meters per second.
func MetersPerSecond(v float64) Velocity { return Velocity(v) }

// MetersPerSecond returns v in meters per second.
func (v Velocity) MetersPerSecond() float64 { return float64(v) }

// PlusMinus pairs v with the standard uncertainty u.
func (v Velocity) PlusMinus(u Velocity) Uncertain[Velocity] {
	return Uncertain[Velocity]{v, abs(float64(u))}
}

// ParseVelocity reads a velocity with its unit. The error is a *ParseError.
func ParseVelocity(text string) (Velocity, error) {
	si, err := velocityKind.parse(text)
	return Velocity(si), err
}

// Format shows v in the unit that sys has for it, rounded for reading.
func (v Velocity) Format(sys System) string { return velocityKind.format(float64(v), sys) }

// String is Format(SI).
func (v Velocity) String() string { return v.Format(SI) }

// MarshalText writes v in m/s, exactly.
func (v Velocity) MarshalText() ([]byte, error) { return velocityKind.appendExact(nil, float64(v)) }

// UnmarshalText is ParseVelocity.
func (v *Velocity) UnmarshalText(text []byte) error {
	si, err := velocityKind.parse(string(text))
	if err != nil {
		return err
	}
	*v = Velocity(si)
	return nil
}

func (Velocity) kind() *kind { return &velocityKind }
