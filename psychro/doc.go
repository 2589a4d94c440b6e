// Package psychro computes the properties of moist air and what happens to it
// in an air conditioner.
//
// An [Air] is made from what is known, most often dry bulb, wet bulb and the
// pressure of the place, and answers for the rest:
//
//	p := quantity.AtmosphereAt(quantity.Feet(6000))
//	air, err := psychro.FromWetBulb(quantity.Fahrenheit(83), quantity.Fahrenheit(69), p)
//	air.RelativeHumidity()
//
// # Per kilogram of dry air
//
// Humidity ratio, enthalpy and specific volume are counted per kilogram of dry
// air, not of the mixture. The dry air passes through a coil unchanged while
// water leaves it, so on that basis the balances are sums. Enthalpy is zero for
// dry air at 0 °C and for liquid water at 0 °C.
//
// # Ice
//
// Below the triple point, 0.01 °C, saturation is over ice. A wet bulb below
// 0 °C is that of an iced wick, and [Air.WetBulbIced] says so. Around 0 °C one
// state of air has two wet bulbs: the ice on a frozen wick and the water on a
// wet one come to rest at temperatures up to 0.7 K apart in air of 10 °C, for
// the heat of fusion lies between them. An Air made from an iced wet bulb
// remembers it; any other Air answers with the wick that is wet.
//
// # Models
//
// The functions of the package use perfect gases, as most of the trade does:
// ASHRAE Handbook Fundamentals (2017), chapter 1, "Psychrometrics", whose equation
// numbers the comments give. [RealGas] has the same constructors as methods and
// gives Airs with the same methods, computed with the virial model of ASHRAE
// RP-1485. From −30 to 60 °C at sea level the two differ by up to 0.7 % in the
// humidity ratio at a given relative humidity, and by 0.03 K in the wet bulb.
//
// # Range
//
// From −100 to 200 °C and 20 to 200 kPa. What lies outside, and what is no air at
// all, is a [RangeError] that says what to mend. A state that is inside always has
// an answer: every solver is bracketed.
package psychro
