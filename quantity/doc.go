// Package quantity gives every physical value that crosses a public boundary
// of the module a type of its own.
//
// Each type is a float64 in the SI base unit of its dimension, with
// constructors and accessors named after the unit, as time.Duration has
// seconds and hours:
//
//	t := quantity.Fahrenheit(71)
//	fmt.Println(t.Celsius())
//
// The types keep apart what looks alike and is not:
//
//   - A [Temperature] is a point on a scale; a [TemperatureDelta] is a difference.
//     A superheat is never a Temperature, and 10 °F of superheat is not −12 °C.
//   - A [Pressure] is absolute; a [GaugePressure] is counted from the atmosphere
//     around the gauge. The only way from one to the other names that
//     atmosphere, because a gauge read at 6,000 ft is about 2.9 psi off from
//     sea level, and a saturation temperature moves with it.
//   - A [StaticPressure] is the small pressure of a duct, against the room.
//
// # Text
//
// All types marshal to and from text, and so to and from JSON strings:
// "71 °F", "71 F", "16.7 °C", "68.5 psig", "4 ton". A bare number is an error,
// because a number without a unit is the commonest wrong reading of all. The
// comment of each parser lists the units and spellings that it takes; [Parse] reads
// any type. Lengths and masses also read in two steps and in fractions:
// "6 lb 4 oz", "1 1/8 in". MarshalText writes one unit per type, with digits enough
// that reading the text back gives the same bits; what is no number, infinite or
// below absolute zero is an error there as it is in a text that is read.
//
// Format writes for people, in either system. A [Style] says more: a decimal comma, a
// unit and its decimals, one unit for a value and its uncertainty. [Units] lists what
// to offer where a value is entered.
//
// # Validity
//
// Constructors do arithmetic only. They accept any float64, as time.Duration
// does; packages that compute with a value check its range and return a
// *[RangeError]. Here and in the other packages, what returns no error is such
// arithmetic, or works on values that were checked before: given NaN it gives NaN.
// What returns an error yields neither NaN nor an infinity, and parsing never does.
package quantity

//go:generate go run ./internal/unitgen
