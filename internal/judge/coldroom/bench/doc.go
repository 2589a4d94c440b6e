// Package bench makes visits to cold rooms to try the judge by. Its machines are balanced as
// a catalog does it, part against part: a compressor by its capacity at two saturation
// temperatures, an evaporator by watts per degree at a superheat of 0.65 of its difference
// (EN 328), a condenser by watts per degree, a valve by the root of its pressure drop, and the
// charge by where it lies: receiver, condenser, line, evaporator. It shares no code with the
// model that the judge compares with, and no property of a refrigerant but its saturation.
// Figures are common practice, no source.
package bench
