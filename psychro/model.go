package psychro

// A Model is a set of relations that moist air is computed with. The functions
// of the package use PerfectGas; the methods of a Model have the same names.
// An Air keeps the model it was made with.
type Model uint8

const (
	// PerfectGas treats dry air and water vapor as perfect gases, with the
	// saturation pressure of Hyland and Wexler (1983): ASHRAE Handbook
	// Fundamentals, chapter 1. At sea level it is within 0.7 % of the humidity
	// ratio of real air.
	PerfectGas Model = iota
)

var modelNames = [...]string{PerfectGas: "perfect gas"}

// String returns "perfect gas" or the name of the other model.
func (m Model) String() string {
	if int(m) < len(modelNames) {
		return modelNames[m]
	}
	return "unknown model"
}
