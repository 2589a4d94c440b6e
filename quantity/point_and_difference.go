package quantity

// Sub returns the difference t − u.
func (t Temperature) Sub(u Temperature) TemperatureDelta { return TemperatureDelta(t - u) }

// Add returns the temperature d above t.
func (t Temperature) Add(d TemperatureDelta) Temperature { return t + Temperature(d) }

// Kelvin is KelvinDelta: on a difference the name of the unit is enough.
func (t TemperatureDelta) Kelvin() float64 { return t.KelvinDelta() }

// Celsius is CelsiusDelta.
func (t TemperatureDelta) Celsius() float64 { return t.CelsiusDelta() }

// Fahrenheit is FahrenheitDelta.
func (t TemperatureDelta) Fahrenheit() float64 { return t.FahrenheitDelta() }

// SpecificHeat is a heat capacity per mass, which has the unit of an entropy.
type SpecificHeat = SpecificEntropy
