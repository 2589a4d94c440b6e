package diagnose

const (
	NextToEmpty       Code = "next-to-empty"
	NotPumping        Code = "not-pumping"
	ClampsSwapped     Code = "clamps-swapped"
	AirSensorsSwapped Code = "air-sensors-swapped"
)
