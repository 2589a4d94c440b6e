// Package cyclefluid is a refrigerant as a system solver needs it: a few
// thousand lookups per solution, in plain SI floats, without allocation and
// without errors.
//
// A Fluid is a refrigerant.StateTable with an answer everywhere, for a solver tries
// states that a machine does not reach: pressures beyond the table are taken at its
// end, vapor and liquid beyond their last temperature with the heat capacity there, and
// the two phases of a blend in a straight line between bubble and dew point. All results
// are continuous, and those of the table with their first and second derivatives, which
// Newton's method wants.
package cyclefluid
